"""What an offer costs at the door in any quantity, and what a placed order would cost there now."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime

from sqlalchemy import Connection

from ..basics.landed_cost import CostLine, LandedOrder, OrderItem
from ..basics.landed_view import CostDifference, LandedAgain, LandedOffer
from ..basics.money import Money, total
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
from .desk import Desk, shop_now
from .land import land_at
from .sorted_offers import ShopAt, why_not


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
        return tuple(_landed_offer(here, offer, quantity) for offer in offers)


def landed_again(desk: Desk, number: str) -> LandedAgain:
    """A placed order worked out anew at the desk's moment: by the terms, rates and newest sheet that hold then."""
    with desk.store.reading() as connection:
        order = stored_order(connection, number)
        here = ShopAt(at=desk.at, shop=shop_now(connection, desk.at))
        rows = {
            line.supplier_number: _offers_numbered(connection, order.supplier, line.supplier_number, desk.at.date())
            for line in order.lines
        }
        return _again(here, order, rows)


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


def _landed_offer(here: ShopAt, offer: Offer, quantity: int) -> LandedOffer:
    bare = LandedOffer(
        offer=offer,
        supplier_name=here.supplier_name(offer.supplier),
        quantity=quantity,
        why_not=why_not(here, offer),
    )
    if cannot_be_landed(offer) or offer.supplier not in here.shop.terms:
        return bare
    return _with_costs(bare, here.shop.door(offer.supplier, here.at), here.at)


def _with_costs(bare: LandedOffer, door: Door, at: datetime) -> LandedOffer:
    offer, quantity = bare.offer, bare.quantity
    item = OrderItem(need="", offer=offer, needed=quantity, ordered=pieces_to_order(offer, quantity))
    planned = land_at([item], door, at)
    land, open_questions = _landing(door, at), planned.landed.open_questions
    return LandedOffer(
        offer=offer,
        supplier_name=bare.supplier_name,
        quantity=quantity,
        why_not="; ".join(words for words in (bare.why_not, *open_questions, planned.landed.refusal) if words),
        landed=planned.landed,
        arrival=planned.arrival,
        one_more=one_more(planned.landed, 0, door.terms, land),
        cheaper=next_cheaper(planned.landed, 0, door.terms, land),
        tried_to=tried_to(planned.landed, 0, door.terms),
    )


def _landing(door: Door, at: datetime) -> Land:
    def land(items: Sequence[OrderItem]) -> LandedOrder:
        return land_at(items, door, at).landed

    return land


def _again(here: ShopAt, order: PurchaseOrder, rows: Mapping[str, Sequence[Offer]]) -> LandedAgain:
    terms = here.shop.terms.get(order.supplier)
    questions = [] if terms else [f"there are no terms for {order.supplier} on {here.at.date()}"]
    items: list[OrderItem] = []
    for line in order.lines:
        item = _item_now(here, line, rows[line.supplier_number])
        if isinstance(item, str):
            questions.append(f"line {line.line}, {line.supplier_number}: {item}")
        else:
            items.append(item)
    planned = land_at(items, here.shop.door(order.supplier, here.at), here.at) if items and not questions else None
    now = planned.landed if planned else None
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
        differences=tuple(_differences(order, now)),
        difference=_less(now.total, order.landed_total) if now and not questions else None,
        open_questions=tuple(questions),
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


def _differences(order: PurchaseOrder, now: LandedOrder | None) -> Iterator[CostDifference]:
    """The goods of each line after discount, then every charge by its name; kept ones first."""
    for at, line in enumerate(order.lines):
        item = now.items[at] if now else None
        name = f"Goods {line.supplier_number}"
        yield _difference(name, line.goods_cost, item.goods_cost if item else None, _goods_rule(now, name, at))
    kept = _by_name(order.charges)
    charges = _by_name(charge_lines(now)) if now else {}
    for name in dict.fromkeys((*kept, *charges)):
        rules = [line.rule for line in charge_lines(now) if line.name == name] if now else []
        was, is_now = kept.get(name), charges.get(name)
        one = _difference(name, was, is_now, "; ".join(rules))
        # A charge that is gone, or new, differs by all of it; but only where nothing of the order is left open.
        if now and not now.missing and (was is None or is_now is None):
            one = changed(one, difference=is_now if was is None else -was)
        yield one


def charge_lines(order: LandedOrder) -> list[CostLine]:
    """The lines of an order that are not its goods after line discount: those a purchase order keeps as charges."""
    return [line for line in order.lines if not line.name.startswith(("Goods", "Discount"))]


def _goods_rule(now: LandedOrder | None, name: str, at: int) -> str:
    lines = [line for line in now.lines if line.name.startswith("Goods")] if now else []
    return lines[at].rule if at < len(lines) and lines[at].name == name else ""


def _by_name(lines: Sequence[CostLine]) -> dict[str, Money]:
    found: defaultdict[str, list[Money]] = defaultdict(list)
    for line in lines:
        found[line.name].append(line.amount)
    return {name: total(some, some[0].currency) for name, some in found.items()}


def _difference(name: str, kept: Money | None, now: Money | None, rule: str) -> CostDifference:
    return CostDifference(name=name, kept=kept, now=now, difference=_less(now, kept), rule=rule)


def _less(now: Money | None, kept: Money | None) -> Money | None:
    """None where one is not known, or where the shop's currency has changed since."""
    if now is None or kept is None or now.currency != kept.currency:
        return None
    return now - kept
