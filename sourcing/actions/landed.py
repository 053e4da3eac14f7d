"""What an offer costs at the door in any quantity, and what a placed order would cost there now."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime

from sqlalchemy import Connection

from ..basics.landed_cost import LandedOrder, OrderItem
from ..basics.landed_view import LandedAgain, LandedOffer
from ..basics.offer import Offer
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.part_number import number_key
from ..basics.problem import Refused, refused
from ..basics.value import changed
from ..landed_cost.door import Door
from ..landed_cost.one_more import Land, next_cheaper, one_more, tried_to
from ..landed_cost.quantity import pieces_to_order
from ..storage.numbers import nearest
from ..storage.offers import newest_number_keys, offers_by_keys
from ..storage.orders import order as stored_order
from .basis_notes import basis_notes
from .desk import Desk, shop_now
from .land import land_at
from .order_differences import less, order_differences
from .sorted_offers import ShopAt, not_at_the_door, why_not
from .terms_ahead import terms_ahead


def landed_offers(desk: Desk, supplier: str, number: str, quantity: int = 1) -> tuple[LandedOffer, ...]:
    """The offers of that number, supplier's or maker's, on the supplier's newest sheet; each ordered alone.

    More than one where several rows bear the number: which of them is meant is for a person to say. Refuses a quantity
    below one, a supplier nothing is known of, and a number the sheet does not have.
    """
    if quantity < 1:
        raise refused("quantity-below-one", found=quantity)
    with desk.store.reading() as connection:
        here = ShopAt(at=desk.at, shop=shop_now(connection, desk.at))
        offers = _offers_numbered(connection, supplier, number, desk.at.date())
        if not offers:
            raise _not_on_sheet(connection, supplier, number, desk.at.date())
        notes = terms_ahead(connection, here, supplier)
        return tuple(_landed_offer(here, offer, quantity, notes) for offer in offers)


def landed_again(desk: Desk, number: str) -> LandedAgain:
    """A placed order worked out anew at the desk's moment: by the terms, rates and newest sheet that hold then."""
    with desk.store.reading() as connection:
        order = stored_order(connection, number)
        here = ShopAt(at=desk.at, shop=shop_now(connection, desk.at))
        rows = {
            line.supplier_number: _offers_numbered(connection, order.supplier, line.supplier_number, desk.at.date())
            for line in order.lines
        }
        return _again(here, order, rows, terms_ahead(connection, here, order.supplier))


def _offers_numbered(connection: Connection, supplier: str, number: str, day: date) -> list[Offer]:
    offers = offers_by_keys(connection, {number_key(number)}, day)
    return sorted((one for one in offers if one.supplier == supplier), key=lambda one: one.identity)


def _not_on_sheet(connection: Connection, supplier: str, number: str, day: date) -> Refused:
    keys = [key for key, _, whose in newest_number_keys(connection, day) if whose == supplier]
    if not keys:
        return refused("no-sheet-of-supplier", found=supplier)
    near = nearest(number_key(number), keys)
    return refused("number-not-on-sheet", found=number, supplier=supplier, suggestions=near)


def cannot_be_landed(offer: Offer) -> bool:
    """Whether nothing can be worked out for it: no net price, not sold by the piece, no longer to be had."""
    return not offer.breaks or offer.sold_by != "piece" or offer.no_longer_available


def _landed_offer(here: ShopAt, offer: Offer, quantity: int, notes: tuple[str, ...]) -> LandedOffer:
    bare = LandedOffer(
        offer=offer,
        supplier_name=here.supplier_name(offer.supplier),
        quantity=quantity,
        why_not=why_not(here, offer),
        notes=notes,
    )
    if cannot_be_landed(offer) or offer.supplier not in here.shop.terms or not_at_the_door(here, offer):
        return bare
    return _with_costs(bare, here.door(offer.supplier), here.at)


def _with_costs(bare: LandedOffer, door: Door, at: datetime) -> LandedOffer:
    offer, quantity = bare.offer, bare.quantity
    item = OrderItem(need="", offer=offer, needed=quantity, ordered=pieces_to_order(offer, quantity))
    planned = land_at([item], door, at)
    land, open_questions = _landing(door, at), planned.landed.open_questions
    return changed(
        bare,
        why_not="; ".join(words for words in (bare.why_not, *open_questions, planned.landed.refusal) if words),
        landed=planned.landed,
        arrival=planned.arrival,
        notes=(*bare.notes, *basis_notes([door], at.date(), planned.arrival.latest)),
        one_more=one_more(planned.landed, 0, door.terms, land),
        cheaper=next_cheaper(planned.landed, 0, door.terms, land),
        tried_to=tried_to(planned.landed, 0, door.terms),
    )


def _landing(door: Door, at: datetime) -> Land:
    def land(items: Sequence[OrderItem]) -> LandedOrder:
        return land_at(items, door, at).landed

    return land


def _again(
    here: ShopAt, order: PurchaseOrder, rows: Mapping[str, Sequence[Offer]], notes: tuple[str, ...]
) -> LandedAgain:
    terms = here.shop.terms.get(order.supplier)
    questions = [] if terms else [f"there are no terms for {order.supplier} on {here.at.date()}"]
    items: list[OrderItem] = []
    for line in order.lines:
        item = _item_now(here, line, rows[line.supplier_number])
        if isinstance(item, str):
            questions.append(f"line {line.line}, {line.supplier_number}: {item}")
        else:
            items.append(item)
    planned = land_at(items, here.door(order.supplier), here.at) if items and not questions else None
    now = planned.landed if planned else None
    if planned:
        notes += basis_notes([here.door(order.supplier)], here.at.date(), planned.arrival.latest)
    if now:
        questions += [*now.open_questions, *([now.refusal] if now.refusal else [])]
    return LandedAgain(
        order=order.number,
        supplier=order.supplier,
        supplier_name=order.supplier_name,
        placed_at=order.placed_at,
        at=here.at,
        terms_from=terms.starts_on if terms else None,
        kept=order.landed_total,
        now=now,
        arrival=planned.arrival if planned else None,
        differences=order_differences(order, now),
        difference=less(now.total, order.landed_total) if now and not questions else None,
        open_questions=tuple(questions),
        notes=notes,
    )


def _item_now(here: ShopAt, line: PurchaseOrderLine, rows: Sequence[Offer]) -> OrderItem | str:
    """The line's pieces of the offer as it stands on the newest sheet, or why they can't be ordered of it."""
    same = [one for one in rows if _same_offer(one, line)]
    if len(same) != 1:
        return "not on the newest sheet" if not same else f"{len(same)} rows of the newest sheet bear the number"
    offer = same[0]
    why = why_not(here, offer)
    if why:
        return why
    pieces = pieces_to_order(offer, line.ordered)
    if pieces != line.ordered:
        return f"{line.ordered} pieces were ordered, now it would have to be {pieces}"
    need = f"{line.job}/{line.label}"
    return OrderItem(need=need, offer=offer, needed=line.needed, ordered=line.ordered)


def _same_offer(offer: Offer, line: PurchaseOrderLine) -> bool:
    return (offer.supplier_number, offer.maker_number) == (line.supplier_number, line.maker_number)
