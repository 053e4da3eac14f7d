"""The shop's own settings: how prices come from costs, taxes, labour, papers. All of it the owner's input."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import Literal, TypeVar

from .problem import refused
from .terms import Calendar
from .value import Value, changed

PriceKind = Literal["parts", "freight", "labour", "fees"]
"""What a sum on a quote is for; taxes say yes or no to each."""


class MarkupBand(Value, frozen=True, kw_only=True):
    """From this unit cost on (shop's currency), the unit price is the cost times `multiplier`."""

    from_cost: Decimal
    multiplier: Decimal


class CategoryBands(Value, frozen=True, kw_only=True):
    """Markup bands of their own for the parts of a category, instead of the general ones."""

    category: str
    bands: tuple[MarkupBand, ...]


class PriceEnding(Value, frozen=True, kw_only=True):
    """Unit prices from `from_price` on are raised to the next amount that ends so ('0.95', '0.50'). Never lowered, and
    never above the list price where the shop caps there."""

    endings: tuple[Decimal, ...]
    from_price: Decimal = Decimal(0)


FeeOf = Literal["document", "labour", "parts", "labour and parts", "piece"]
"""What a fee by rule is reckoned on: once for the document, per cent of a sum, or so much for each piece."""


class FeeRule(Value, frozen=True, kw_only=True):
    """A fee by rule beside the supplies fee (disposal of old oil or batteries, say), from a day on.

    'document' and 'piece' charge `charge`, the others `percent` of the sum. `categories` empty: every part counts. At
    most `most` for the document. A fee of nothing is not printed. Of entries of one name the newest that has started
    holds; one with neither charge nor percent ends it. Some places refuse such fees or cap them: the owner asks.
    """

    name: str
    of: FeeOf
    starts_on: date
    charge: Decimal = Decimal(0)
    percent: Decimal = Decimal(0)
    categories: tuple[str, ...] = ()
    most: Decimal | None = None


class DepositRule(Value, frozen=True, kw_only=True):
    """What the shop asks before it orders: per cent of parts before tax, or of everything with tax, rounded once.

    Nothing where it comes to less than `from_amount`. A deposit is the customer's money until the work is billed.
    """

    percent: Decimal
    of: Literal["special-order parts", "parts", "everything"] = "special-order parts"
    from_amount: Decimal = Decimal(0)


class Tolerance(Value, frozen=True, kw_only=True):
    """How far a line's price may rise over what was approved without being asked anew. Zero unless the shop says so.

    The smaller of the two where both are given. Rules of a place may set less: the owner asks.
    """

    percent: Decimal = Decimal(0)
    amount: Decimal = Decimal(0)


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
    """The taxes and fees a document is charged by. Frozen into each quote, so that a later change of the settings never
    changes what a customer was told. `tax_exempt`: no tax is charged, and the paper says so."""

    taxes: tuple[Tax, ...] = ()
    supplies: Supplies | None = None
    fee_rules: tuple[FeeRule, ...] = ()
    tax_exempt: bool = False


Named = TypeVar("Named", Tax, FeeRule)


def name_key(name: str) -> str:
    """A tax's or fee's name as it is compared: capital letters and blanks make no other tax of it."""
    return "".join(name.split()).casefold()


def alike_named(entries: Iterable[Named]) -> tuple[Named, ...]:
    """The entries, those of one name with the spelling of the first that starts, so that one replaces the other."""
    every = tuple(entries)
    first: dict[str, str] = {}
    for one in sorted(every, key=lambda one: one.starts_on):
        first.setdefault(name_key(one.name), one.name)
    return tuple(changed(one, name=first[name_key(one.name)]) for one in every)


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

    `floor_bands`: a band never sells below the dearest price of the band under it. `special_order_terms` stand on each
    line that is a special order. `law_text`: what the law of the place may require of estimates, in the owner's words.
    `paper_size` blank: by the locale.
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
    category_bands: tuple[CategoryBands, ...] = ()
    floor_bands: bool = False
    price_ending: PriceEnding | None = None
    fee_rules: tuple[FeeRule, ...] = ()
    deposit: DepositRule | None = None
    tolerance: Tolerance = Tolerance()
    special_order_terms: tuple[str, ...] = ()
    law_text: tuple[str, ...] = ()
    paper_size: Literal["", "letter", "A4"] = ""

    @property
    def charge_rules(self) -> ChargeRules:
        """Taxes and fees as they stand, for a customer who is not exempt. Names are made alike here and not where a
        frozen quote is added up: what a customer was told stays."""
        taxes, fees = alike_named(self.taxes), alike_named(self.fee_rules)
        return ChargeRules(taxes=taxes, supplies=self.supplies, fee_rules=fees)

    def __post_init__(self) -> None:
        bands = self.markup_bands
        if not bands or list(bands) != sorted(bands, key=lambda band: band.from_cost):
            raise refused("settings-contradict", found="markup_bands must be given in rising order of from_cost")
