"""A basket: needs, offers, terms and rates in one file, to be compared and planned without the shop's database."""

from datetime import date, datetime
from decimal import Decimal

from .equivalence import Standing
from .offer import Offer
from .plan import PlanNeed, PlanWishes
from .rate import Rate
from .terms import Calendar, Terms
from .value import Value


class BasketShop(Value, frozen=True, kw_only=True):
    """What landed cost and date need of the shop, as in its settings: `mileage_rate` per mile, `rate_per_km` per km,
    `clerk_cost` per hour of driving, all in the basket's currency. A `mileage_rate` or `clerk_cost` of 0 is none
    stated, a `rate_per_km` of 0 says that driving costs nothing."""

    name: str = ""
    time_zone: str = ""
    calendar: Calendar = Calendar()
    mileage_rate: Decimal = Decimal(0)
    rate_per_km: Decimal | None = None
    clerk_cost: Decimal = Decimal(0)


class BasketOffer(Offer, frozen=True, kw_only=True):
    """An offer and which part it is for: the file's word, as no number is matched here.

    In a file `currency` left out is that of the supplier's terms, and `source` left out is the file and the offer's
    place in it. `standing` says how far it is trusted that it is the part; `priced_on` is the day of the price, left
    out: the day of planning.
    """

    our_part: str
    standing: Standing = "unchecked"
    priced_on: date | None = None

    def offer(self) -> Offer:
        """The offer alone, with the day of the price as the day of its sheet."""
        return Offer(**{name: getattr(self, name) for name in Offer.__struct_fields__})


class Basket(Value, frozen=True, kw_only=True):
    """All a comparison or plan needs. `currency` is the shop's; `at` the moment of ordering on the shop's clock.

    In a file `at` left out is now, and in an entry of `suppliers` `name` left out is the short name, `starts_on` left
    out is always.
    """

    currency: str
    at: datetime
    needs: tuple[PlanNeed, ...]
    offers: tuple[BasketOffer, ...] = ()
    suppliers: tuple[Terms, ...] = ()
    rates: tuple[Rate, ...] = ()
    shop: BasketShop = BasketShop()
    wishes: PlanWishes = PlanWishes()
