"""Inbound freight on lines of its own where it is billed: for the agreed lines, and once for all add-ons together.

The add-ons' freight does not shrink when one of them is declined, so it has its own yes or no. Where freight is carried
it stands on no line; how much of it the markup must bear is for the owner to know.
"""

from collections.abc import Sequence
from string import ascii_uppercase
from typing import Literal

from ..basics.job import Job
from ..basics.money import Money, total
from ..basics.quote import QuoteLine
from ..basics.settings import Settings
from ..basics.value import changed
from .bought import Bought
from .freight_at_cost import with_cases
from .lines import plain_line

AGREED = "Inbound freight"
EXTRAS = "Inbound freight for the extra parts, charged once"
FURTHER = {AGREED: "Inbound freight of a further order", EXTRAS: "Inbound freight for the further extra parts"}
"""Beside freight that was billed before for parts ordered already."""


def freight_way(job: Job, settings: Settings) -> Literal["billed", "carried"]:
    """The job's own word, else the shop's."""
    return job.freight_to_customer or settings.freight_to_customer


def with_freight(lines: Sequence[QuoteLine], bought: Bought, way: str, currency: str) -> list[QuoteLine]:
    """The lines with those of freight behind the others of their kind. What was billed before for parts that stand on
    an order, or whose price was promised, stays as it was approved."""
    agreed = [line for line in lines if line.kind == "agreed"]
    extras = [line for line in lines if line.kind == "add-on"]
    alone, together = bought.freight(currency) if way == "billed" else (total((), currency),) * 2
    more = together - alone if any(line.part for line in extras) else total((), currency)
    own, further = (
        _freight(title, amount, some, bought)
        for some, title, amount in ((agreed, AGREED, alone), (extras, EXTRAS, more))
    )
    if not bought.promised:
        _at_cost(own, further, bought)
    agreed, extras = agreed + own, extras + further
    return [
        *(changed(line, label=str(at)) for at, line in enumerate(agreed, 1)),
        *(changed(line, label=label) for label, line in zip(add_on_labels(len(extras)), extras, strict=True)),
    ]


def carried_freight(bought: Bought, way: str, currency: str) -> Money:
    """What of the freight stands on no line: all of it where it is carried, nothing where it is billed."""
    _, together = bought.freight(currency)
    return together if way == "carried" else total((), currency)


def add_on_labels(how_many: int) -> list[str]:
    """'A' to 'Z', then 'AA', 'AB': a job's 26 add-ons and the freight line behind them."""
    starts = ("", *ascii_uppercase)
    every = (f"{start}{letter}" for start in starts for letter in ascii_uppercase)
    return [label for _, label in zip(range(how_many), every, strict=False)]


def _at_cost(own: list[QuoteLine], further: list[QuoteLine], bought: Bought) -> None:
    """Put to the new line of each kind, which is its last, with which parts it comes to less."""
    kept = [sum(one.kind == kind for one in bought.kept_freight) for kind in ("agreed", "add-on")]
    new = [some[-1] if len(some) > before else None for some, before in zip((own, further), kept, strict=True)]
    for some, line in zip((own, further), with_cases(new[0], new[1], bought.freight_choices), strict=True):
        if line is not None:
            some[-1] = line


def _freight(title: str, amount: Money, lines: Sequence[QuoteLine], bought: Bought) -> list[QuoteLine]:
    """What was billed before, for parts ordered already or promised at their price; then the freight of the others."""
    kind = "agreed" if title == AGREED else "add-on"
    parts = [line.label for line in lines if line.part]
    promised = [label for label in parts if label in bought.promised]
    settled = [label for label in parts if label in bought.settled or label in promised]
    still_open = [label for label in parts if label not in settled]
    kept = [one for one in bought.kept_freight if one.kind == kind]
    if promised:
        amount = amount - total((one.freight_price for one in kept), amount.currency)
    if amount.amount <= 0 or (promised and not still_open):
        return kept
    line = plain_line("1" if title == AGREED else "A", FURTHER[title] if kept else title, amount.currency)
    if title == EXTRAS:
        line = changed(
            line,
            why="needed as soon as any of the extra parts is ordered",
            if_declined="the extra parts can't be ordered",
        )
    if not kept:
        return [changed(line, freight_price=amount)]
    # Only beside another freight line must each say which parts it brings; alone it is for all of them.
    before = [changed(one, freight_for=one.freight_for or tuple(settled)) for one in kept]
    return [*before, changed(line, freight_price=amount, freight_for=tuple(still_open))]
