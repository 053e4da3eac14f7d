"""A supplier's terms: freight, minimums, cut-off, transit, currency, duty, and how long a sheet's prices hold."""

from datetime import date, time
from decimal import Decimal
from typing import Literal

from .freight import Freight
from .terms_checks import TermsRefused, contradictions
from .value import Value

CUT_OFF_NOT_KNOWN = time(0, 0)
"""The cut-off of a supplier whose cut-off nobody knows: every order counts from the next day on."""


class Calendar(Value, frozen=True, kw_only=True):
    """Working days: week days worked, the country and region whose public holidays are kept, own closing days."""

    week: tuple[Literal["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"], ...] = (
        "Mon",
        "Tue",
        "Wed",
        "Thu",
        "Fri",
    )
    country: str = ""
    region: str = ""
    closed: tuple[date, ...] = ()


class OrderDiscount(Value, frozen=True, kw_only=True):
    """From this value of goods on (after line discounts, supplier's currency), so many per cent off the whole order."""

    from_value: Decimal
    percent: Decimal


class CashDiscount(Value, frozen=True, kw_only=True):
    """Per cent off the supplier's bill if it is paid within so many days. Never part of the landed cost: told apart."""

    percent: Decimal
    within_days: int


class DutyRate(Value, frozen=True, kw_only=True):
    """Duty in per cent on goods of that origin and tariff code; a blank field fits every offer.

    The entry that says most wins: the longest `tariff` that the code begins with, then the one that names the origin.
    """

    percent: Decimal
    origin: str = ""
    tariff: str = ""


class EntryFee(Value, frozen=True, kw_only=True):
    """A fee for bringing an order into the country: `charge`, and `percent` of `of`, between `least` and `most`.

    `charge`, `least` and `most` are in `currency` (ISO 4217; blank: the supplier's). `of` 'goods' is the goods after
    all discounts, 'duty' the duty of the order.
    """

    name: str
    charge: Decimal = Decimal(0)
    percent: Decimal = Decimal(0)
    of: Literal["goods", "duty"] = "goods"
    least: Decimal | None = None
    most: Decimal | None = None
    currency: str = ""


TaxedPart = Literal["goods", "freight", "duty", "fees"]
"""What a tax may be due on. 'fees' are handling, small-order, entry and payment fees."""


class TaxPaid(Value, frozen=True, kw_only=True):
    """A tax the shop pays on its purchases and can't recover, in per cent of the sum of `on`.

    `uplift_percent` raises the base by so much of goods and freight before the tax is taken, and is no cost itself.
    """

    name: str
    percent: Decimal
    on: tuple[TaxedPart, ...] = ("goods", "freight", "duty")
    uplift_percent: Decimal = Decimal(0)


class Split(Value, frozen=True, kw_only=True):
    """What happens when part of an order has to wait: `sends` all of it together, or each part as soon as it is ready.

    `later_charge` (supplier's currency): freight of each later delivery, beyond the first. Nothing for 'together'.
    """

    sends: Literal["together", "as ready"] = "together"
    later_charge: Decimal = Decimal(0)


class Returns(Value, frozen=True, kw_only=True):
    """Whether goods go back, at what loss and until when. `returnable` None: not known, and said so.

    `restocking_percent` of the goods and `freight` (shop's currency) are what the shop loses; None: not known.
    `within_days` from the day they came.
    """

    returnable: bool | None = None
    restocking_percent: Decimal | None = None
    freight: Decimal | None = None
    within_days: int | None = None


class CoreReturn(Value, frozen=True, kw_only=True):
    """How a core charge comes back: within so many days, at the shop's `freight` (shop's currency; None: not known)."""

    within_days: int | None = None
    freight: Decimal | None = None


class Terms(Value, frozen=True, kw_only=True):
    """What holds with one supplier from `starts_on`, until a later entry.

    Money is in `currency`. `freight` None: not known, and every result says so. With `minimum_order` and no
    `small_order_fee` an order below it is refused. `duty_percent` None: none is due (the goods are in the
    country), beyond what `duty_rates` says. `duty_on` says whether freight is dutiable too. Where goods have
    different rates, duty on freight is taken at the highest and duty on the order discount at the lowest.
    `breaks` is how the price breaks of its sheets are meant. `order_days`: the days of the week on which the supplier
    takes orders; none: every working day. `cut_off` is on the supplier's clock in `time_zone` (IANA name; blank: the
    shop's). Midnight: it is not known. `entry_fee` is a flat one per order; `entry_fees` hold the others.
    `transit_days` is working days on the road, least and most. `dispatch_days` is working days to dispatch what is in
    stock when the sheet does not say.
    `prices_hold_days` None: until the next sheet.
    """

    supplier: str
    name: str
    starts_on: date
    currency: str
    freight: Freight | None = None
    minimum_order: Decimal | None = None
    small_order_fee: Decimal | None = None
    handling: Decimal = Decimal(0)
    discount_percent: Decimal = Decimal(0)
    duty_percent: Decimal | None = None
    entry_fee: Decimal = Decimal(0)
    cut_off: time = time(12, 0)
    dispatch_days: int = 0
    transit_days: tuple[int, int] = (1, 5)
    calendar: Calendar = Calendar()
    prices_hold_days: int | None = None
    returns: str = ""
    address: tuple[str, ...] = ()
    breaks: Literal["all pieces", "pieces above"] = "all pieces"
    order_discounts: tuple[OrderDiscount, ...] = ()
    cash_discount: CashDiscount | None = None
    handling_per_line: Decimal = Decimal(0)
    duty_rates: tuple[DutyRate, ...] = ()
    duty_on: Literal["goods", "goods and freight"] = "goods"
    entry_fees: tuple[EntryFee, ...] = ()
    payment_percent: Decimal = Decimal(0)
    tax: TaxPaid | None = None
    split: Split = Split()
    return_terms: Returns = Returns()
    core_return: CoreReturn = CoreReturn()
    time_zone: str = ""
    order_days: tuple[Literal["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"], ...] = ()

    def __post_init__(self) -> None:
        if not self._can_be_worked_with():
            raise TermsRefused(self.supplier, contradictions(self))

    def _can_be_worked_with(self) -> bool:
        """Whether the rules can be worked out at all. More is checked when a person enters terms: those that are kept
        already must still be read."""
        freight, least, most = self.freight, *self.transit_days
        if freight is None or least > most:
            return least <= most
        if freight.rule == "pick-up":
            return freight.round_trip_miles is not None or freight.round_trip_km is not None
        if freight.rule == "flat":
            return freight.charge is not None
        starts = [band.from_value for band in freight.bands]
        return starts == sorted(starts) and (freight.rule != "by order value" or bool(starts))
