"""An alarm: what is known now differs from what the customer approved; the three ways out, and which one was taken."""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .approval import How
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
    `why_not`: why it can't be taken, blank where it can. Supplier and supplier's number are those that would be ordered
    from, `number` is what the customer would get. `unit_price` is before tax, `goods` what the needed pieces cost in
    the shop's currency without freight and other charges; None: not known.
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
    number: str = ""
    unit_price: Money | None = None
    goods: Money | None = None
    why_not: str = ""
    notes: tuple[str, ...] = ()


class Alarm(Value, frozen=True, kw_only=True):
    """A line whose yes no longer covers what is known. `order` is blank and `order_line` None before it is ordered."""

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
    order_line: int | None = None


class Decision(Value, frozen=True, kw_only=True):
    """The way out a person took for a line: kept for ever, the last one of a line holds.

    'hold' and 'switch': the unit price `held_price` stays, whatever the part costs, up to `up_to_cost`: the goods of
    the needed pieces in the shop's currency, without freight and other charges (dearer than that is a new alarm); for
    'ask' they are the price to ask and the cost it stands on. `landed_cost` is that of the line on the day of the
    decision. 'switch' orders from `supplier` under `supplier_number`.

    `agreed_by`, with `agreed_how` and `agreed_contact`, is who said yes to what the way out asks of the customer;
    blank: nobody yet. Only then are `latest`, the last day, and `number`, another number, covered by the decision.
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
    landed_cost: Money | None = None
    number: str = ""
    agreed_by: str = ""
    agreed_how: How | Literal[""] = ""
    agreed_contact: str = ""
