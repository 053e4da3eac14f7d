"""What changed between two offers of one number. Exact throughout; a per cent is rounded once, for show."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import get_args

from ..basics.change import Changed, ChangeKind, Figure, PriceChange, SheetPart, WordChange
from ..basics.offer import Offer, PriceBreak
from ..basics.part_number import number_key

Values = tuple[Decimal | None, Decimal | None]

RANK: Mapping[ChangeKind, int] = {kind: at for at, kind in enumerate(get_args(ChangeKind))}
COMPARED = (
    *("breaks", "list_price", "currency", "price_basis", "pack", "order_multiple", "minimum", "core_charge"),
    *("superseded_by", "no_longer_available", "sold_by", "discount_code"),
)
SOLD = {
    "pack": "pack",
    "price basis": "price_basis",
    "order multiple": "order_multiple",
    "minimum": "minimum",
    "sold by": "sold_by",
}


def difference(before: Offer, now: Offer) -> Changed | None:
    """How the offer changed; None where nothing that is compared did."""
    if all(getattr(before, name) == getattr(now, name) for name in COMPARED):
        return None
    words = [*_sold(before, now), *_named(before, now)]
    kinds = {*_standing(before, now), *_of_words(words)}
    # Where the pack changed, what a piece costs is told even if it costs the same.
    prices = list(_prices(before, now, "sold differently" in kinds))
    moved = _moved(prices)
    kinds |= {*_of_moves(moved), *_of_prices(prices, bool(before.breaks or now.breaks))}
    if before.currency != now.currency:
        kinds.add("currency changed")
    if not kinds:
        return None
    return Changed(
        before=part_of(before),
        now=part_of(now),
        kinds=tuple(sorted(kinds, key=RANK.__getitem__)),
        prices=tuple(prices),
        words=tuple(words),
        headline=_headline(moved),
    )


def part_of(offer: Offer) -> SheetPart:
    """The offer as one sheet lists it, with its net price at the least quantity."""
    return SheetPart(
        supplier_number=offer.supplier_number,
        worksheet=offer.source.worksheet,
        row=offer.source.row,
        currency=offer.currency,
        maker=offer.maker,
        maker_number=offer.maker_number,
        description=offer.description,
        price=offer.breaks[0].price if offer.breaks else None,
        price_basis=offer.price_basis,
        list_price=offer.list_price,
        core_charge=offer.core_charge,
        superseded_by=offer.superseded_by,
        no_longer_available=offer.no_longer_available,
    )


def per_piece(price: PriceChange) -> tuple[int, int, int]:
    """What a piece cost and costs as whole numbers of one unit, and how many of that unit are 1 of the currency.

    Whole numbers and not fractions, which take ten times as long: 10.00 for 3 pieces has no exact decimal. For a
    price that is known on both sheets.
    """
    assert price.before is not None and price.now is not None
    return _whole(price.before, price.now, (price.before_basis, price.now_basis))


def _whole(before: Decimal, now: Decimal, bases: tuple[int, int]) -> tuple[int, int, int]:
    old, old_parts = before.as_integer_ratio()
    new, new_parts = now.as_integer_ratio()
    unit = old_parts * bases[0] * new_parts * bases[1]
    return old * new_parts * bases[1], new * old_parts * bases[0], unit


def move(price: PriceChange) -> Fraction:
    """By how many per cent of its old price a piece became dearer, exact. For a price known on both sheets, not 0."""
    was, is_now, _ = per_piece(price)
    return Fraction(100 * (is_now - was), was)


def tenths(percent: Fraction) -> Decimal:
    """Half up, away from zero at the tie, to one decimal."""
    return _tenths(percent.numerator, percent.denominator)


def _tenths(part: int, whole: int) -> Decimal:
    """The same of a quotient; `whole` is more than 0."""
    size = (20 * abs(part) + whole) // (2 * whole)
    return Decimal(-size if part < 0 else size).scaleb(-1)


def _standing(before: Offer, now: Offer) -> Iterator[ChangeKind]:
    """Whether it can still be ordered under this number."""
    renamed = _renamed(before, now)
    other = renamed and bool(number_key(now.superseded_by) or now.no_longer_available)
    if other:
        yield "superseded"
    if now.no_longer_available and not before.no_longer_available:
        yield "no longer available"
    if (before.no_longer_available or renamed) and not other and not now.no_longer_available:
        yield "came back"


def _renamed(before: Offer, now: Offer) -> bool:
    """Whether the new sheet names another number instead of this one than the old, or none any more."""
    if before.superseded_by == now.superseded_by:
        return False
    return number_key(before.superseded_by) != number_key(now.superseded_by)


def _prices(before: Offer, now: Offer, tell: bool) -> Iterator[PriceChange]:
    """Every price that changed, if they can be compared: one currency, both by the piece. Net prices come first.

    `tell`: the one at the least quantity also where it did not change.
    """
    if before.currency != now.currency or before.sold_by != now.sold_by:
        return
    bases = (before.price_basis, now.price_basis)
    for at, quantity in enumerate(_quantities(before.breaks, now.breaks)):
        old, new = _at(before.breaks, quantity), _at(now.breaks, quantity)
        if (tell and at == 0) or _differs(old, new, bases):
            yield _price("net price", (old, new), bases, quantity)
    if _differs(before.list_price, now.list_price, bases):
        yield _price("list price", (before.list_price, now.list_price), bases)
    if before.core_charge != now.core_charge:
        yield _price("core charge", (before.core_charge, now.core_charge), (1, 1))


def _differs(before: Decimal | None, now: Decimal | None, bases: tuple[int, int]) -> bool:
    """Whether a piece costs something else now, or the price came or went."""
    if before is None or now is None or bases[0] == bases[1]:
        return before != now
    was, is_now, _ = _whole(before, now, bases)
    return was != is_now


def _price(figure: Figure, values: Values, bases: tuple[int, int], quantity: int | None = None) -> PriceChange:
    before, now = values
    percent = None
    if before and now is not None:
        was, is_now, _ = _whole(before, now, bases)
        percent = _tenths(100 * (is_now - was), was)
    return PriceChange(
        figure=figure,
        before=before,
        now=now,
        before_basis=bases[0],
        now_basis=bases[1],
        from_quantity=quantity,
        percent=percent,
    )


def _quantities(before: Sequence[PriceBreak], now: Sequence[PriceBreak]) -> list[int]:
    """The quantities from which either sheet has a price of its own, where both have one; else the least."""
    if len(before) == len(now) == 1 and before[0].from_quantity == now[0].from_quantity:
        return [now[0].from_quantity]
    if not before or not now:
        return [one.from_quantity for one in (before or now)[:1]]
    least = max(before[0].from_quantity, now[0].from_quantity)
    every = {one.from_quantity for one in (*before, *now)}
    return sorted(one for one in every if one >= least)


def _at(breaks: Sequence[PriceBreak], quantity: int) -> Decimal | None:
    """The price of that many pieces; None where the sheet has none."""
    return next((one.price for one in reversed(breaks) if one.from_quantity <= quantity), None)


def _moved(prices: Iterable[PriceChange]) -> list[PriceChange]:
    """The prices known on both sheets that moved: of the net prices, else the list price."""
    known = [one for one in prices if one.before is not None and one.now is not None]
    moved = [one for one in known if _differs(one.before, one.now, (one.before_basis, one.now_basis))]
    net = [one for one in moved if one.figure == "net price"]
    return net or [one for one in moved if one.figure == "list price"]


def _headline(moved: Sequence[PriceChange]) -> PriceChange | None:
    """The one that moved most per cent, of equal ones the first."""
    if len(moved) < 2:
        return moved[0] if moved else None
    return max(moved, key=lambda one: abs(move(one)) if one.before else Fraction(0))


def _of_moves(moved: Iterable[PriceChange]) -> Iterator[ChangeKind]:
    ups = set()
    for one in moved:
        was, is_now, _ = per_piece(one)
        ups.add(is_now > was)
    if ups:
        yield "rose and fell" if len(ups) == 2 else "rose" if True in ups else "fell"


def _of_prices(prices: Iterable[PriceChange], has_net: bool) -> Iterator[ChangeKind]:
    """What the prices say that came or went. The told price of an unchanged pack says nothing."""
    for one in prices:
        if one.figure == "core charge":
            yield "core charge changed"
        elif one.before is None or one.now is None:
            beside = has_net and one.figure == "list price"
            yield "list price changed" if beside else "price gone" if one.now is None else "price appeared"


def _sold(before: Offer, now: Offer) -> Iterator[WordChange]:
    """In which amounts it is sold, where that changed."""
    for what, name in SOLD.items():
        old, new = getattr(before, name), getattr(now, name)
        if old != new:
            yield WordChange(what=what, before=str(old), now=str(new))
    if before.breaks and now.breaks and before.breaks[0].from_quantity != now.breaks[0].from_quantity:
        least = (str(one.breaks[0].from_quantity) for one in (before, now))
        yield WordChange(what="price from", before=next(least), now=next(least))


def _named(before: Offer, now: Offer) -> Iterator[WordChange]:
    """The number and the code named beside the price, where they changed."""
    if _renamed(before, now):
        yield WordChange(what="superseded by", before=before.superseded_by, now=now.superseded_by)
    if before.discount_code != now.discount_code:
        yield WordChange(what="discount code", before=before.discount_code, now=now.discount_code)


def _of_words(words: Iterable[WordChange]) -> Iterator[ChangeKind]:
    for one in words:
        if one.what == "discount code":
            yield "discount code changed"
        elif one.what != "superseded by":
            yield "sold differently"
