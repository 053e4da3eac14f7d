"""A purchase order as it stands now, after what was confirmed, changed and cancelled."""

from datetime import date, datetime
from decimal import Decimal

from .money import Money, total
from .order import OrderEvent, PurchaseOrder, PurchaseOrderLine
from .part_number import number_key
from .value import Value


class SaidDays(Value, frozen=True, kw_only=True):
    """First and last day at the shop as somebody said them: `said_by` blank is our own reckoning by the terms."""

    earliest: date
    latest: date
    at: datetime
    said_by: str = ""


class LineNow(Value, frozen=True, kw_only=True):
    """A line of an order as it stands after what happened since. `line` is as it was placed.

    `pieces` are wanted now (0: cancelled), `goods` what they cost at `unit_price`, after discount, in the supplier's
    currency. `number` is what the supplier says he sends. `days` are all days ever said, the last one last.
    """

    line: PurchaseOrderLine
    pieces: int
    unit_price: Decimal
    goods: Money
    number: str
    days: tuple[SaidDays, ...] = ()

    @property
    def cancelled(self) -> bool:
        """Whether nothing of it is wanted any more."""
        return self.pieces == 0

    @property
    def sends(self) -> str:
        """The other number the supplier says he sends; blank where it is the one ordered, his or the maker's."""
        ordered = {number_key(self.line.supplier_number), number_key(self.line.maker_number)}
        return "" if number_key(self.number) in ordered else self.number

    @property
    def latest(self) -> date | None:
        """The last day by the last word; None where no day was ever said."""
        return self.days[-1].latest if self.days else None


class OrderNow(Value, frozen=True, kw_only=True):
    """An order as it stands now: as placed, with everything that happened to it. `events` are oldest first."""

    order: PurchaseOrder
    lines: tuple[LineNow, ...]
    events: tuple[OrderEvent, ...] = ()

    def line(self, at: int) -> LineNow | None:
        """The line of that number, or None."""
        return next((one for one in self.lines if one.line.line == at), None)

    @property
    def wanted(self) -> dict[int, int]:
        """Pieces wanted now by line number; cancelled lines are left out."""
        return {one.line.line: one.pieces for one in self.lines if one.pieces}

    @property
    def goods_total(self) -> Money:
        """What the wanted pieces cost, in the supplier's currency."""
        return total((one.goods for one in self.lines), self.order.currency)

    @property
    def cancelled(self) -> bool:
        """Whether nothing of it is wanted any more."""
        return not self.wanted

    @property
    def confirmed(self) -> bool:
        """Whether the supplier has confirmed it at all."""
        return any(one.what == "confirmed" for one in self.events)
