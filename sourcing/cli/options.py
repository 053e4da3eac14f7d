"""Options that several commands share, and what they turn into."""

from __future__ import annotations

import getpass
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeVar

import typer

if TYPE_CHECKING:
    from ..actions.desk import Desk

W = TypeVar("W", bound=str)

MOST_COUNT = 9
"""Digits of a count: more is a slip of the hand."""

Database = Annotated[
    str,
    typer.Option(
        "--database", envvar="SOURCING_DATABASE", help="File that holds the shop's data, or a database address."
    ),
]
At = Annotated[
    datetime | None,
    typer.Option(
        "--at",
        envvar="SOURCING_AT",
        formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M", "%Y-%m-%d"],
        help="Work as if it were this moment. Left out: now.",
    ),
]
Who = Annotated[
    str, typer.Option("--who", envvar="SOURCING_WHO", help="Who does it. Left out: the name you are logged in as.")
]
Json = Annotated[bool, typer.Option("--json", help="Print the result as JSON.")]
Day = Annotated[
    datetime | None,
    typer.Option("--need-by", formats=["%Y-%m-%d"], help="Day by which the parts must be in the shop."),
]
Xlsx = Annotated[Path | None, typer.Option("--xlsx", help="Also write it as a workbook to this file.")]

DEFAULT_DATABASE = "sourcing.db"


def desk(database: str, at: datetime | None, who: str) -> Desk:
    """The open desk for these options."""
    from ..actions.desk import open_desk
    from ..basics.contradiction import FIRST_YEAR, LAST_YEAR
    from ..basics.problem import refused

    moment = at or datetime.now().replace(second=0, microsecond=0)
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise refused("moment-far-off", found=moment.date(), first=FIRST_YEAR, last=LAST_YEAR)
    return open_desk(database, moment, who or _login_name())


def pairs(texts: list[str], example: str = "1=2") -> dict[str, str]:
    """'1=2' style arguments as a dict, in order."""
    from ..basics.problem import refused

    result = {}
    for text in texts:
        key, sign, value = text.rpartition("=")
        if not sign or not key or not value:
            raise refused("not-a-pair", found=text, example=example)
        result[key.strip()] = value.strip()
    return result


def amount(text: str) -> Decimal:
    """An amount of money as typed: digits with a point."""
    from ..basics.money import is_amount
    from ..basics.problem import refused

    try:
        number = Decimal(text)
    except InvalidOperation:
        raise refused("not-an-amount", found=_short(text)) from None
    if not is_amount(number) or "e" in text.lower():
        raise refused("not-an-amount", found=_short(text))
    return number


def measure(text: str) -> Decimal:
    """A length as typed: digits with a point, or a fraction as rules show it ('9-1/2', '3/8')."""
    from fractions import Fraction

    from ..basics.problem import refused

    whole, _, part = text.strip().rpartition("-") if "/" in text else ("", "", text.strip())
    try:
        if "/" not in part:
            return Decimal(part)
        exact = Fraction(part) + int(whole or 0)
        return Decimal(exact.numerator) / Decimal(exact.denominator)
    except (ArithmeticError, ValueError):
        raise refused("not-a-measure", found=text) from None


def one_word(text: str, option: str, known: Sequence[W]) -> W:
    """The known word that was typed, whatever its case. Refuses others, naming those known."""
    from ..basics.problem import refused

    for word in known:
        if word == text.strip().casefold():
            return word
    raise refused("unknown-word", found=text, column=option, known=", ".join(known))


def count(text: str) -> int:
    """A whole number as typed."""
    from ..basics.problem import refused

    if not text.isascii() or not text.isdecimal() or len(text) > MOST_COUNT:
        raise refused("count-below-one", found=_short(text))
    return int(text)


def _short(text: str) -> str:
    """What was typed, cut where it is too long for a sentence."""
    return text if len(text) <= 30 else f"{text[:27]}..."


def _login_name() -> str:
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):  # no login name on this machine, as in a bare container
        return "unknown"
