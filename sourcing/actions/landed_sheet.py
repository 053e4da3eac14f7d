"""A whole sheet at the door: every offer ordered alone in its fewest pieces, with its cost and its day."""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator

from ..basics.collecting import without_collecting
from ..basics.landed_cost import Arrival, OrderItem
from ..basics.landed_view import LandedRow, LandedSheet, Reason
from ..basics.money import Money, from_minor, zero
from ..basics.offer import Offer
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.value import changed
from ..landed_cost.arrival import arrivals_at, deliveries_of
from ..landed_cost.charges import refusal
from ..landed_cost.door import Door
from ..landed_cost.figures import figures
from ..landed_cost.freight import Unknown, freight_by_value
from ..landed_cost.order import landed_order
from ..landed_cost.order_freight import freight_lines
from ..landed_cost.prepared import prepared
from ..landed_cost.quantity import pieces_to_order
from ..landed_cost.quick import QuickDoor
from ..storage.offers import offers_of_sheet
from ..storage.sheets import kept_sheets
from .basis_notes import basis_notes
from .desk import Desk, shop_now
from .sorted_offers import ShopAt, why_not

Row = tuple[Offer, int | None, Money | None, Arrival | None, str, str]
"""Offer, pieces, cost, arrival, why it has no cost, and the same without what is its own, for counting."""

ITS_NUMBER = "\0"
"""Stands for a supplier's number in kept words; no number holds it."""


def landed_sheet(desk: Desk, supplier: str, tell: Callable[[str], None] = lambda _: None) -> LandedSheet:
    """Every offer of the supplier's newest sheet at the desk's moment, in the order of its rows.

    What has no cost says why. Refuses a supplier without a sheet.
    """
    with without_collecting(), desk.store.reading() as connection:
        here = ShopAt(at=desk.at, shop=shop_now(connection, desk.at))
        kept = [one for one in kept_sheets(connection, desk.at.date()) if one.supplier == supplier and one.is_newest]
        if not kept:
            raise refused("no-sheet-of-supplier", found=supplier)
        tell(f"reading {kept[0].offers:,} offers")
        offers = offers_of_sheet(connection, kept[0].sheet)
        tell(f"landing {len(offers):,} offers")
        return _sheet(kept[0], here, list(land_offers(offers, here, supplier)))


def land_offers(offers: Iterable[Offer], here: ShopAt, supplier: str) -> Iterator[Row]:
    """Each offer of the supplier with its cost and day, or why there is none."""
    if supplier not in here.shop.terms:
        words = f"there are no terms for {supplier}"
        yield from ((offer, None, None, None, words, words) for offer in offers)
        return
    if here.shut(supplier):
        yield from (_not_priced(offer, why_not(here, offer)) for offer in offers)
        return
    landing = _Landing(here, here.door(supplier))
    for offer in offers:
        yield landing.row(offer)


class _Landing:
    """One supplier's door and days, made ready for many offers."""

    def __init__(self, here: ShopAt, door: Door) -> None:
        self._here, self._door = here, door
        self._quick, self._days = QuickDoor(door), arrivals_at(door, here.at)
        self._open_duties: dict[tuple[str, str], str] = {}
        never = None if door.terms.freight else freight_by_value(zero(door.terms.currency), door)
        self._unknown_freight = never.what if isinstance(never, Unknown) else ""

    def row(self, offer: Offer) -> Row:
        """The offer's row."""
        terms, why = self._door.terms, why_not(self._here, offer)
        if why:
            return _not_priced(offer, why)
        item = OrderItem(need="", offer=offer, needed=1, ordered=pieces_to_order(offer, 1))
        arrival, cents = self._days.of(offer, item.ordered), self._quick.landed(offer, 1)
        if cents is None:
            return offer, item.ordered, None, arrival, *self._why_unpriced(item)
        deliveries = deliveries_of([arrival], terms.split)
        if deliveries > 1:
            return offer, item.ordered, landed_order([item], self._door, deliveries).total, arrival, "", ""
        return offer, item.ordered, from_minor(cents, self._door.currency), arrival, "", ""

    def _why_unpriced(self, item: OrderItem) -> tuple[str, str]:
        """In full, and without the goods' own number and value, so that the same reason is counted once."""
        terms, one = self._door.terms, figures(item, prepared(self._door))
        words = refusal(from_minor(one.value, terms.currency), terms)
        if words:
            return words, f"alone below the minimum order of {terms.minimum_order} {terms.currency}"
        if self._unknown_freight and not terms.duty_rates:
            return self._unknown_freight, self._unknown_freight
        _, unknown = freight_lines([item], [one], prepared(self._door), 1)
        number, found = item.offer.supplier_number, [each.what for each in unknown]
        if len(one.duty_percents) > 1:
            found.insert(0, self._open_duty(item).replace(ITS_NUMBER, number))
        short = "; ".join(found).replace(f" {number} ", " the goods ").replace(f" {number}:", " the goods:")
        return "; ".join(found), re.sub(r" (?:of|for) [\d.]+ \w+(?=$|;)", "", short)

    def _open_duty(self, item: OrderItem) -> str:
        """What of the duty is not known, as a landed order says it; worked out once for each origin and tariff code."""
        key = item.offer.origin, item.offer.tariff_code
        if key not in self._open_duties:
            same = changed(item, offer=changed(item.offer, supplier_number=ITS_NUMBER))
            self._open_duties[key] = landed_order([same], self._door).missing[0].what
        return self._open_duties[key]


def _sheet(kept: KeptSheet, here: ShopAt, rows: list[Row]) -> LandedSheet:
    return LandedSheet(
        supplier=kept.supplier,
        supplier_name=here.supplier_name(kept.supplier),
        sheet=kept.sheet,
        file=kept.file,
        sheet_date=kept.sheet_date,
        at=here.at,
        offers=len(rows),
        priced=sum(row[2] is not None for row in rows),
        dated=sum(row[3] is not None and row[3].known for row in rows),
        not_priced=_reasons(row[5] for row in rows if row[2] is None),
        not_dated=_reasons(_no_day(row[3]) for row in rows if row[3] is not None and not row[3].known),
        rows=tuple(map(_landed_row, rows)),
        notes=_notes(kept.supplier, here, rows),
    )


def _notes(supplier: str, here: ShopAt, rows: list[Row]) -> tuple[str, ...]:
    """Of the rate and the public holidays that every row rests on; nothing where no row has a cost."""
    if supplier not in here.shop.terms or here.shut(supplier):
        return ()
    days = [row[3].latest for row in rows if row[3] is not None and row[3].latest is not None]
    return basis_notes([here.door(supplier)], here.at.date(), max(days, default=None))


def _reasons(words: Iterable[str]) -> tuple[Reason, ...]:
    """Most first, ties in order of words."""
    counted = sorted(Counter(words).items(), key=lambda one: (-one[1], one[0]))
    return tuple(Reason(words=reason, offers=offers) for reason, offers in counted)


def _not_priced(offer: Offer, why: str) -> Row:
    instead = offer.superseded_by
    short = why.replace(f" names {instead} instead", " names another instead") if instead else why
    return offer, None, None, None, why, short


def _no_day(arrival: Arrival) -> str:
    """Why no day is known, without the pieces of each offer: the same reason is counted once."""
    return re.sub(r"^stock \d+ of \d+", "stock too small", arrival.steps[-1])


def _landed_row(row: Row) -> LandedRow:
    offer, pieces, landed, arrival, why, _ = row
    return LandedRow(
        worksheet=offer.source.worksheet,
        row=offer.source.row,
        supplier_number=offer.supplier_number,
        maker=offer.maker,
        maker_number=offer.maker_number,
        description=offer.description,
        pieces=pieces,
        landed=landed,
        earliest=arrival.earliest if arrival else None,
        latest=arrival.latest if arrival else None,
        why_not=why,
        no_day=arrival.steps[-1] if arrival and not arrival.known else "",
    )
