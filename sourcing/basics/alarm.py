"""An alarm: what is known now differs from what the customer approved; the three ways out, and which one was taken."""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .margin import Margin
from .money import Money
from .value import Value

Way = Literal["hold", "ask", "switch"]
"""Hold the price and carry the difference; ask the customer anew; switch to another offer at the price approved."""


class Differs(Value, frozen=True, kw_only=True):
    """One thing that is not as approved. `words` is a whole sentence for the clerk, with both figures."""

    what: Literal["price", "number", "date", "gone"]
    approved: str
    now: str
    words: str


class WayOut(Value, frozen=True, kw_only=True):
    """One way out of an alarm. `total` is what the customer would pay for all approved lines with tax, `extra` its
    difference to what she approved; `margin` is of all approved parts with freight, and `line_margin` of this line.

    `asks` is the question to the customer, blank where none is needed; `tells` what she must be told all the same.
    `why_not`: why it can't be taken, blank where it can. Supplier and number are those that would be ordered from.
    """

    way: Way
    total: Money | None
    extra: Money | None
    extra_percent: Decimal | None
    margin: Margin | None
    line_margin: Margin | None
    latest: date | None
    asks: str = ""
    tells: str = ""
    supplier: str = ""
    supplier_name: str = ""
    supplier_number: str = ""
    why_not: str = ""
    notes: tuple[str, ...] = ()


class Alarm(Value, frozen=True, kw_only=True):
    """A line whose yes no longer covers what is known. `order` is blank before it is ordered."""

    job: str
    revision: int
    label: str
    title: str
    order: str
    differs: tuple[Differs, ...]
    approved_total: Money
    margin_as_approved: Margin
    ways: tuple[WayOut, ...]
    notes: tuple[str, ...] = ()


class Decision(Value, frozen=True, kw_only=True):
    """The way out a person took for a line: kept for ever, the last one of a line holds.

    'hold' and 'switch': the unit price `held_price` stays, whatever the part costs, up to `up_to_cost` (landed cost of
    the line in the shop's currency; dearer than that is a new alarm) and, for a date, up to `latest`. 'switch' orders
    from `supplier` under `supplier_number`.
    """

    job: str
    revision: int
    label: str
    way: Way
    at: datetime
    who: str
    words: str = ""
    held_price: Money | None = None
    up_to_cost: Money | None = None
    latest: date | None = None
    supplier: str = ""
    supplier_number: str = ""
