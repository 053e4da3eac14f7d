"""What choosing gives: one part's offers in order with reasons, and the plan of orders for many needs."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .asked import Asked
from .equivalence import Bench, Path, Standing
from .evidence import AcceptedAnyway
from .landed_cost import Arrival, LandedOrder
from .money import Money
from .offer import Offer
from .problem import refused
from .value import Value


class Asks(Value, frozen=True, kw_only=True):
    """What a job's line asks of offers, which rejected ones a person took for it, and what is doubtful about it.

    `warnings` are sentences: evidence that contradicts itself or the line, an asked attribute said in two ways. `bench`
    is the machine it is for, None where its model is not known. `contradicted`: why nothing is ordered for the line
    until a person has settled which part it is; blank: nothing is in the way.
    """

    asked: Asked = Asked()
    overrides: tuple[AcceptedAnyway, ...] = ()
    warnings: tuple[str, ...] = ()
    bench: Bench | None = None
    contradicted: str = ""

    @property
    def doubts(self) -> tuple[str, ...]:
        """Why nothing is ordered for it yet first, then the warnings."""
        if not self.contradicted or any(self.contradicted in words for words in self.warnings):
            return self.warnings
        return (f"nothing is ordered for it yet: {self.contradicted}", *self.warnings)


class Priced(Value, frozen=True, kw_only=True):
    """An offer that matches, with its cost and date for the asked quantity, ordered alone."""

    offer: Offer
    supplier_name: str
    path: Path
    matched_number: str
    landed: LandedOrder
    arrival: Arrival
    warnings: tuple[str, ...] = ()

    @property
    def standing(self) -> Standing:
        """The standing of the path."""
        return self.path.standing


class RankWishes(Value, frozen=True, kw_only=True):
    """What the user asks of the offers of one part beside what the part must be.

    `only_in_time`: what is not surely here by `need_by` is set aside; without it, it is only told. `trusted_only`:
    standings 'fitted' and 'maker'. `in_stock_only`: the sheet says that all ordered pieces are there.
    `without_surplus`: nothing beyond the need. `value_per_day` is the stated price of a calendar day of waiting (shop's
    currency), counted from the day of asking to the last day; then landed cost plus waiting decides. Refuses a price
    below zero and `only_in_time` without a day.
    """

    need_by: date | None = None
    only_in_time: bool = False
    trusted_only: bool = False
    in_stock_only: bool = False
    without_surplus: bool = False
    value_per_day: Decimal | None = None

    def __post_init__(self) -> None:
        price = self.value_per_day
        if price is not None and not (price.is_finite() and price >= 0):
            raise refused("value-per-day", found=price)
        if self.only_in_time and self.need_by is None:
            raise refused("in-time-without-day")


class RankedOffer(Value, frozen=True, kw_only=True):
    """A place in the order: 1 is cheapest at the door, or at the door and by the price of waiting where one is stated.

    `on_front`: no other ranked offer is both cheaper at the door and sooner, equal in one and better in the other
    counting as both; offers equal in both stand on it together, one without a last day never. `days` is calendar days
    from the day of asking to the last day, `waiting` what they cost at the stated price, `counted` landed cost and
    waiting together; `days` None: no last day is known, the others None: no price is stated.
    """

    place: int
    priced: Priced
    on_front: bool
    in_time: bool | None
    reason: str
    days: int | None = None
    waiting: Money | None = None
    counted: Money | None = None


class OpenOffer(Value, frozen=True, kw_only=True):
    """An offer that can't be ranked for something is not known. It stands beneath the ranked ones.

    `least` is what is known of its landed cost and the least of what is missing, `most` the same with the most; None
    where no most is given. `best_place` and `worst_place` are where it would stand among the ranked offers at its least
    and at its most; None where that can't be said. `reason` is all that in words.
    """

    priced: Priced
    least: Money
    most: Money | None
    best_place: int | None
    worst_place: int | None
    reason: str

    def may_come_first(self, counted: Money) -> bool:
        """Whether, for all that is known, it may stand before or beside a first place that counts so much."""
        if self.best_place is not None:
            return self.best_place == 1
        return self.least.amount <= counted.amount


class SetAside(Value, frozen=True, kw_only=True):
    """An offer that is shown and not ranked, with the reason.

    `rejected`: it contradicts what is asked; only a named person's word for a job's line lets it in.
    """

    offer: Offer
    supplier_name: str
    reason: str
    rejected: bool = False


class Ranking(Value, frozen=True, kw_only=True):
    """The offers of one part in order, those beneath them, and those the wishes took out, each with its reason."""

    ranked: tuple[RankedOffer, ...]
    open_offers: tuple[OpenOffer, ...] = ()
    set_aside: tuple[SetAside, ...] = ()


Figure = Literal["landed cost", "freight", "price"]
"""What of an offer may move: all of its cost at the door, its freight alone, or the price on the sheet."""


class TurningPoint(Value, frozen=True, kw_only=True):
    """How far one figure may move before the first place changes hands, all else staying as it is.

    Of the offer at `place` 1 the figure rises: `by` is the most at which it is first still. Of the one at place 2 it
    falls: `by` is the least at which it is first. One minor unit of `by.currency` further or less it is the other way
    round. `per`: the price is for so many pieces. `by` None: no movement does it (within any sensible size).
    """

    figure: Figure
    place: Literal[1, 2]
    supplier_name: str
    by: Money | None
    per: int
    words: str


class DaySpan(Value, frozen=True, kw_only=True):
    """The offer that comes first at any price of a day of waiting from `from_price` to `to_price`, both included.

    In whole minor units of the shop's currency; `to_price` None: at any higher price. `place` is its place in the
    ranking it stands beside.
    """

    from_price: Money
    to_price: Money | None
    place: int
    supplier_name: str
    total: Money
    latest: date


class Candidate(Value, frozen=True, kw_only=True):
    """An offer that may or may not be the part: a person judges. `vetoed`: its size speaks against it, in numbers."""

    offer: Offer
    supplier_name: str
    reasons: tuple[str, ...]
    vetoed: bool
    score: float


class Comparison(Value, frozen=True, kw_only=True):
    """All that is known of one part's offers, for one quantity, at one moment.

    `asks` is what the need asks of them, in words; `warnings` is what is doubtful about the need itself. `asked_on` is
    the day from which waiting counts.
    """

    asked: str
    our_part: str
    name: str
    quantity: int
    need_by: date | None = None
    ranked: tuple[RankedOffer, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    candidates: tuple[Candidate, ...] = ()
    notes: tuple[str, ...] = ()
    asks: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    wishes: RankWishes = RankWishes()
    asked_on: date | None = None
    open_offers: tuple[OpenOffer, ...] = ()
    turning_points: tuple[TurningPoint, ...] = ()
    day_spans: tuple[DaySpan, ...] = ()
