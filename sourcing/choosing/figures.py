"""The figures an offer is ranked by, worked out once for each offer, and the order they give.

Amounts are whole minor units (cents) of the shop's currency: a landed cost has no parts of one. Only what waiting costs
may have some, where the stated price of a day has.
"""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from ..basics.choice import Priced, RankWishes
from ..basics.currency import minor_units
from ..basics.equivalence import STANDINGS
from ..basics.landed_cost import CostLine
from ..basics.money import Money, round_half_up
from ..basics.value import Value

SHELF = "pieces for the shelf"
NEVER = date.max
"""Stands for a last day that is not known, so that it sorts after every known one."""

Key = tuple[int | Decimal, date, int, str, tuple[str, str, str, int], int]
"""What decides between two offers, in this order: what it counts, the last day, the standing, the supplier's name, and
where it stands on which sheet."""


class Figures(Value, frozen=True, kw_only=True):
    """`counted` is the landed cost and, where a price of waiting is stated, the days times that price. Not rounded.

    `each` is the goods of one ordered piece, without any charge. `days` None: no last day is known. `currency` is the
    shop's. `parts` sum to `total`: goods of the pieces needed, of those for the shelf, and each kind of charge.
    """

    priced: Priced
    total: int
    latest: date
    days: int | None
    waiting: Decimal | None
    counted: int | Decimal
    each: Decimal
    currency: str
    parts: dict[str, int]
    key: Key


def figures(one: Priced, wishes: RankWishes, asked_on: date) -> Figures:
    """The figures of an offer. With a price of waiting, a last day that is not known counts no day: set it aside."""
    cost, last, item = one.landed.total, one.arrival.latest, one.landed.items[0]
    total, digits = cost.minor(), minor_units(cost.currency)
    days = (last - asked_on).days if last else None
    waiting = None if wishes.value_per_day is None else wishes.value_per_day.scaleb(digits) * (days or 0)
    counted = total if waiting is None else total + waiting
    latest = last or NEVER
    return Figures(
        priced=one,
        total=total,
        latest=latest,
        days=days,
        waiting=waiting,
        counted=counted,
        each=item.goods_cost.amount.scaleb(digits) / item.item.ordered,
        currency=cost.currency,
        parts=_parts(one, 10**digits),
        key=key(one, counted, latest),
    )


def _parts(one: Priced, minor: int) -> dict[str, int]:
    """By part, in minor units; every line is rounded to them."""
    shelf = int(one.landed.items[0].surplus_cost.amount * minor)
    parts = {"goods": -shelf, SHELF: shelf}
    for line in one.landed.lines:
        name = line.kind or _unsaid_kind(line)
        if name == "discount":
            name = "goods"
        parts[name] = parts.get(name, 0) + int(line.amount.amount * minor)
    return parts


def _unsaid_kind(line: CostLine) -> str:
    """What a line without a kind is for, by its name."""
    return "goods" if line.name.startswith(("Goods", "Discount")) else line.name.lower()


def key(one: Priced, counted: int | Decimal, latest: date) -> Key:
    """What the offer is ordered by if it counts so much."""
    offer = one.offer
    return counted, latest, STANDINGS.index(one.standing), one.supplier_name, offer.identity, offer.source.sheet


def in_order(some: Sequence[Priced], wishes: RankWishes, asked_on: date) -> list[Figures]:
    """The offers from first to last. The order they come in never matters."""
    return sorted((figures(one, wishes, asked_on) for one in some), key=lambda one: one.key)


def whole(amount: int | Decimal) -> int:
    """Whole minor units, for showing: half up where there is part of one."""
    return amount if isinstance(amount, int) else int(round_half_up(amount, 0))


def plainly(amount: int | Decimal, currency: str) -> str:
    """An amount of minor units as it is read: 1250 US cents are '12.50'."""
    cents, digits = whole(amount), minor_units(currency)
    if not digits:
        return str(cents)
    text = str(abs(cents)).rjust(digits + 1, "0")
    return f"{'-' if cents < 0 else ''}{text[:-digits]}.{text[-digits:]}"


def spoken(amount: int | Decimal, currency: str) -> str:
    """The amount with its currency: '12.50 USD'."""
    return f"{plainly(amount, currency)} {currency}"


def money(amount: int | Decimal, currency: str) -> Money:
    """Minor units as money, rounded."""
    return Money(amount=Decimal(whole(amount)).scaleb(-minor_units(currency)), currency=currency)
