"""What of an order did not come as ordered, and the paper that claims it of the supplier."""

from sqlalchemy import Connection

from ..basics.claim import Claim
from ..basics.money import Money
from ..basics.order import Difference, PurchaseOrder
from ..basics.problem import refused
from ..basics.value import Value
from ..ordering.claims import claimable, claimed, credited, differences, without_claim
from ..ordering.order_now import order_now
from ..storage.after_order import events, goods_back
from ..storage.orders import order, receipts
from ..storage.shop import settings_on
from .desk import Desk
from .receive import later_charge


class OrderDifferences(Value, frozen=True, kw_only=True):
    """Every difference of an order so far, what of it can be claimed in the supplier's currency, and what of that was
    given back already for pieces at fault."""

    order: str
    supplier_name: str
    differences: tuple[Difference, ...]
    claimed: Money
    credited: Money

    @property
    def lines(self) -> tuple[tuple[Difference, str], ...]:
        """Each difference, and why its amount is not in what is claimed; blank where it is, or there is none."""
        return tuple((one, without_claim(one)) for one in self.differences)


def differences_of(desk: Desk, number: str) -> OrderDifferences:
    """What did not come as ordered, paper by paper, then what is still open."""
    with desk.store.reading() as connection:
        bought = order(connection, number)
        found = _differences(connection, desk, bought)
        return OrderDifferences(
            order=number,
            supplier_name=bought.supplier_name,
            differences=found,
            claimed=claimed(found, bought.currency),
            credited=credited(found, goods_back(connection, number), bought.currency),
        )


def claim(desk: Desk, number: str) -> Claim:
    """The claim for what cost more than agreed so far. Refuses where nothing did. It is kept in no other place: the
    receipts say it anew whenever it is asked for."""
    with desk.writing("claim") as pen:
        bought = order(pen.connection, number)
        found = _differences(pen.connection, desk, bought)
        lines = claimable(found)
        if not lines:
            raise refused("nothing-to-claim", order=number)
        shop = settings_on(pen.connection, desk.at.date()).shop
        whole = claimed(found, bought.currency)
        for job in sorted({line.job for line in bought.lines if line.line in {one.line for one in lines}}):
            pen.note(job, f"claim of {whole} on {number} written for {bought.supplier_name}")
        if not any(one.line for one in lines):
            pen.note(number, f"claim of {whole} written for {bought.supplier_name}")
        return Claim(
            order=number,
            ordered_on=bought.placed_at.date(),
            supplier_name=bought.supplier_name,
            supplier_address=bought.supplier_address,
            shop_name=shop.name,
            shop_address=shop.address,
            shop_telephone=shop.telephone,
            shop_email=shop.email,
            currency=bought.currency,
            made_at=desk.at,
            made_by=desk.who,
            lines=lines,
            told=tuple(one for one in found if one not in lines and one.kind not in ("rate", "")),
            claimed=whole,
            credited=credited(found, goods_back(pen.connection, number), bought.currency),
        )


def _differences(connection: Connection, desk: Desk, bought: PurchaseOrder) -> tuple[Difference, ...]:
    now = order_now(bought, events(connection, bought.number))
    return differences(now, receipts(connection, bought.number), later_charge(connection, desk, bought))
