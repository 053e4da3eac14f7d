"""The shop's own settings: how prices come from costs, taxes, labour, papers. All of it the owner's input."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .problem import refused
from .terms import Calendar
from .value import Value

PriceKind = Literal["parts", "freight", "labour", "fees"]
"""What a sum on a quote is for; taxes say yes or no to each."""


class MarkupBand(Value, frozen=True, kw_only=True):
    """From this unit cost on (shop's currency), the unit price is the cost times `multiplier`."""

    from_cost: Decimal
    multiplier: Decimal


class Tax(Value, frozen=True, kw_only=True):
    """A tax the owner charges from a day on, in per cent, on the kinds of line she names."""

    name: str
    percent: Decimal
    on: tuple[PriceKind, ...]
    starts_on: date


class Supplies(Value, frozen=True, kw_only=True):
    """The shop-supplies fee: per cent of labour, at most `most`. Some places refuse or cap such fees."""

    percent_of_labour: Decimal
    most: Decimal


class ChargeRules(Value, frozen=True, kw_only=True):
    """The taxes and the supplies fee a document is charged by. Frozen into each quote, so that a later change of the
    settings never changes what a customer was told."""

    taxes: tuple[Tax, ...] = ()
    supplies: Supplies | None = None


class Shop(Value, frozen=True, kw_only=True):
    """Who writes the papers."""

    name: str
    address: tuple[str, ...] = ()
    telephone: str = ""
    email: str = ""


class Settings(Value, frozen=True, kw_only=True):
    """Everything the owner decides. Money is in `currency`; rates per hour; per cent as printed (7 is 7 %).

    `freight_to_customer`: 'billed' puts inbound freight on the quote at cost on a line of its own, 'carried'
    leaves it to the markup. `mileage_rate` is per mile, `rate_per_km` per km; where one is not stated the other holds,
    converted. A `mileage_rate` or `clerk_cost` of 0 is none stated, and what needs it when goods are picked up is not
    known; a `rate_per_km` of 0 says that driving costs nothing.
    `time_zone` is the shop's (IANA name); it is needed as soon as a supplier has one. `margin_floor_percent`: parts
    margin under which the owner is warned.
    """

    shop: Shop
    currency: str
    locale: str
    markup_bands: tuple[MarkupBand, ...]
    labour_rate: Decimal
    technician_cost: Decimal
    clerk_cost: Decimal = Decimal(0)
    mileage_rate: Decimal = Decimal(0)
    rate_per_km: Decimal | None = None
    cap_at_list_price: bool = True
    margin_floor_percent: Decimal = Decimal(0)
    freight_to_customer: Literal["billed", "carried"] = "billed"
    supplies: Supplies | None = None
    taxes: tuple[Tax, ...] = ()
    quote_valid_days: int = 7
    calendar: Calendar = Calendar()
    terms_text: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    cautions_dated: date | None = None
    time_zone: str = ""

    @property
    def charge_rules(self) -> ChargeRules:
        """Taxes and supplies fee as they stand."""
        return ChargeRules(taxes=self.taxes, supplies=self.supplies)

    def __post_init__(self) -> None:
        bands = self.markup_bands
        if not bands or list(bands) != sorted(bands, key=lambda band: band.from_cost):
            raise refused("settings-contradict", found="markup_bands must be given in rising order of from_cost")
