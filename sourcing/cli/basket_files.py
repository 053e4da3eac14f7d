"""What the commands that work on a basket share: the option, and the basket read at the moment that was asked."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from ..basics.basket import Basket
    from ..basics.choice import Comparison, RankWishes

BasketFile = Annotated[
    Path | None,
    typer.Option("--file", help="Work on this basket (JSON) instead of the shop's data; the README shows one."),
]


def basket_of(file: Path, at: datetime | None) -> Basket:
    """The basket, at the moment of `--at`, else the file's own, else now."""
    from ..actions.basket_read import read_basket

    return read_basket(file, at, datetime.now().replace(second=0, microsecond=0))


def comparison_of(file: Path, need: str, quantity: int | None, at: datetime | None, wishes: RankWishes) -> Comparison:
    """The comparison of one need of a basket."""
    from ..actions.basket import compare_basket

    return compare_basket(basket_of(file, at), need, quantity, wishes)
