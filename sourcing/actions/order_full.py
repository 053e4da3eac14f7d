"""One purchase order with all about it: as it stands, what he confirmed otherwise, deliveries, what goes back."""

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.order import Difference, GoodsBack, Receipt
from ..basics.order_now import OrderNow
from ..basics.value import Value, changed
from ..ordering.goods_back import goods_back_open
from ..ordering.order_now import good_pieces, open_pieces, order_now
from ..storage.after_order import events, goods_back
from ..storage.orders import every_receipt, order, receipts
from ..storage.shop import terms_on
from .confirmed_number import confirmed_otherwise
from .desk import Desk
from .goods_back import not_used


class OrderFull(Value, frozen=True, kw_only=True):
    """`left`: pieces still to come by line, `came` good pieces that came. `otherwise`: what the supplier confirmed
    otherwise than it was ordered, one sentence each. `receipts` count; `aside` were set aside, with the words why."""

    now: OrderNow
    left: dict[int, int]
    came: dict[int, int]
    otherwise: tuple[str, ...]
    receipts: tuple[Receipt, ...]
    aside: tuple[tuple[Receipt, Receipt], ...]
    went_back: tuple[GoodsBack, ...]
    waits_back: tuple[GoodsBackOpen, ...]

    @property
    def jobs(self) -> tuple[str, ...]:
        """The jobs it has goods for."""
        return tuple(sorted({line.job for line in self.now.order.lines}))


def order_full(desk: Desk, number: str) -> OrderFull:
    """Refuses an unknown number."""
    with desk.store.reading() as connection:
        bought = order(connection, number)
        happened, came = events(connection, number), receipts(connection, number)
        now, back = order_now(bought, happened), goods_back(connection, number)
        terms = terms_on(connection, desk.at.date())
        return OrderFull(
            now=now,
            left=open_pieces(now, good_pieces(came)),
            came=good_pieces(came),
            otherwise=_otherwise(connection, now),
            receipts=tuple(came),
            aside=_set_aside(every_receipt(connection, number)),
            went_back=tuple(back),
            waits_back=goods_back_open([bought], came, back, terms, happened, not_used(connection, desk.at.date())),
        )


def goods_only(differences: tuple[Difference, ...]) -> tuple[Difference, ...]:
    """What differs of the goods themselves, without any amount: for who may not see what the shop pays."""
    kinds = ("damaged", "number", "over", "short")
    return tuple(changed(one, amount=None) for one in differences if one.kind in kinds)


def of_papers(differences: tuple[Difference, ...]) -> tuple[Difference, ...]:
    """What differs of what came. That something is still to come is no difference of a paper."""
    return tuple(one for one in differences if one.paper)


def _otherwise(connection: Connection, now: OrderNow) -> tuple[str, ...]:
    """Of every confirmation what was otherwise than the order stood before it, the newest word last."""
    found: list[str] = []
    for at, event in enumerate(now.events):
        if event.what == "confirmed":
            before = order_now(now.order, now.events[:at])
            found += [one for one in confirmed_otherwise(connection, before, event) if one not in found]
    return tuple(found)


def _set_aside(every: list[Receipt]) -> tuple[tuple[Receipt, Receipt], ...]:
    """Receipts that were set aside, each with the word that did."""
    standing: dict[str, Receipt] = {}
    found = []
    for one in every:
        if one.sets_aside:
            found.append((standing.pop(one.sets_aside), one))
        else:
            standing[one.paper] = one
    return tuple(found)
