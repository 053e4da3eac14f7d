"""What the lines of an order cost as it stands now, in whole minor units of the shop's currency."""

from collections.abc import Collection, Mapping, Sequence
from decimal import Decimal

from ..basics.margin_facts import OrderedLine, Purchase
from ..basics.value import Value
from .minor import ONE, half_up, minor, part_of, reader, shared

ROUNDING = 2
"""Minor units by which the shares of single charges may differ from those of their sum."""

OLD_CARRIER = "Freight"
OLD_FEE = "Small-order fee"
"""The names these charges had in orders kept before kinds were written down."""


class AsOrdered(Value, frozen=True, kw_only=True, gc=False):
    """A line as ordered. `goods` is for all pieces, `surplus` what of it goes on the shelf, `need` the rest of it,
    `charges` all the rest of its landed cost. Of the charges, `carrier`, `drive` and `small` are its shares of the
    carrier's freight, of the shop's own drive and of the small-order fee; `papers` its share of what a supplier's paper
    may state beside goods and freight (handling, small-order fee)."""

    line: OrderedLine
    pieces: int
    goods: int
    surplus: int
    need: int
    charges: int
    carrier: int
    drive: int
    small: int
    papers: int


def as_ordered(purchase: Purchase, places: int, came: Collection[int]) -> list[AsOrdered]:
    """The lines still wanted, and those of which something came (`came`, line numbers)."""
    read, pieces = reader(places), purchase.pieces
    kept = [line for line in purchase.order.lines if pieces.get(line.line, line.ordered) or line.line in came]
    placed = [read[line.goods_cost.amount] for line in kept]
    goods = placed if not purchase.goods else _goods(kept, placed, purchase, places)
    surplus = _surplus(kept, purchase, (goods, placed), read)
    charges = _charges(kept, placed, purchase, read)
    kinds = _by_kind(purchase, places)
    # By the goods as placed, as the order itself shared them: a price confirmed since moves no charge between lines.
    carrier, drive, small = [shared(one, placed) for one in kinds[:3]]
    carrier = _within(carrier, charges)
    papers = small if kinds[3] == kinds[2] else shared(kinds[3], placed)
    papers = _within(papers, [most - one for most, one in zip(charges, carrier, strict=True)])
    return [
        AsOrdered(
            line=line,
            pieces=pieces.get(line.line, line.ordered) if pieces else line.ordered,
            goods=goods[at],
            surplus=surplus[at],
            need=goods[at] - surplus[at],
            charges=charges[at],
            carrier=carrier[at],
            drive=drive[at],
            small=small[at],
            papers=papers[at],
        )
        for at, line in enumerate(kept)
    ]


def _goods(kept: Sequence[OrderedLine], placed: Sequence[int], purchase: Purchase, places: int) -> list[int]:
    """As placed, or in proportion to what it costs now in the supplier's currency."""
    found = []
    for line, was in zip(kept, placed, strict=True):
        now, before = purchase.goods.get(line.line), Decimal(line.goods.amount)
        if now is None:
            found.append(was)
        elif before:
            found.append(half_up(was * now / before))
        else:
            found.append(minor(now * (purchase.order.rate or ONE), places))
    return found


def _surplus(
    kept: Sequence[OrderedLine],
    purchase: Purchase,
    of: tuple[Sequence[int], Sequence[int]],
    read: Mapping[str, int],
) -> list[int]:
    goods, placed = of
    found = [read[line.surplus_cost.amount] for line in kept]
    if any(found):
        found = [part_of(one, *of) if one else 0 for one, *of in zip(found, goods, placed, strict=True)]
    for at, line in enumerate(kept if purchase.pieces else ()):
        pieces = purchase.pieces.get(line.line, line.ordered)
        if pieces != line.ordered:
            found[at] = part_of(goods[at], max(0, pieces - line.needed), pieces)
    return found


def _charges(
    kept: Sequence[OrderedLine],
    placed: Sequence[int],
    purchase: Purchase,
    read: Mapping[str, int],
) -> list[int]:
    """Each line's own; where lines were cancelled, the order's charges fall on those that are left."""
    own = [read[line.landed.amount] - one for line, one in zip(kept, placed, strict=True)]
    lines = purchase.order.lines
    if len(kept) == len(lines):
        return own
    every = sum(read[line.landed.amount] - read[line.goods_cost.amount] for line in lines)
    more = shared(every - sum(own), placed)
    return [mine + share for mine, share in zip(own, more, strict=True)]


def _within(shares: list[int], room: Sequence[int]) -> list[int]:
    """The shares of one charge, none a cent or two above all that its line bears.

    An order shares all its charges as one sum, and each kind is shared here by itself: a line may get a cent of one
    kind too much. That cent is the line's that has the most left.
    """
    for at, most in enumerate(room):
        over = shares[at] - most
        if 0 < over <= ROUNDING:
            to = max(range(len(room)), key=lambda one: room[one] - shares[one])
            if room[to] - shares[to] >= over:
                shares = [one - over * (at == where) + over * (to == where) for where, one in enumerate(shares)]
    return shares


def _by_kind(purchase: Purchase, places: int) -> tuple[int, int, int, int]:
    """The order's carrier freight, own drive, small-order fee, and what a supplier's paper states beside freight.

    That is the small-order fee and handling whatever they are called there, and every other charge that a paper names
    as the order does. The shop's own drive stands on no paper of a supplier.
    """
    carrier = drive = small = others = 0
    named = {charge.name.casefold() for receipt in purchase.receipts for charge in receipt.other_charges}
    for one in purchase.order.charges:
        amount = minor(one.amount.amount, places)
        if one.kind == "freight" or (not one.kind and one.name == OLD_CARRIER):
            carrier += amount
        elif one.is_freight:
            drive += amount
        elif one.kind == "small-order fee" or (not one.kind and one.name == OLD_FEE):
            small += amount
        elif one.kind == "handling" or named.intersection((one.name.casefold(), one.kind)):
            others += amount
    return carrier, drive, small, small + others
