"""Landed cost looked at by itself: one offer in a quantity, a placed order worked out again, a whole sheet."""

from datetime import date, datetime

from .landed_cost import Arrival, LandedOrder, OneMore
from .money import Money
from .offer import Offer
from .value import Value


class LandedOffer(Value, frozen=True, kw_only=True):
    """One offer ordered alone for so many pieces.

    `why_not`: why it can't be ordered or ranked as it stands; blank: it can. `landed` and `arrival` are None where
    nothing can be worked out. `one_more` is the next quantity, `cheaper` the fewest pieces more for no more money, None
    where none up to `tried_to` pieces is. `notes`: what to mind though it can be ordered.
    """

    offer: Offer
    supplier_name: str
    quantity: int
    why_not: str = ""
    landed: LandedOrder | None = None
    arrival: Arrival | None = None
    one_more: OneMore | None = None
    cheaper: OneMore | None = None
    tried_to: int | None = None
    notes: tuple[str, ...] = ()


class CostDifference(Value, frozen=True, kw_only=True):
    """One part of an order's cost as kept on it and as it is worked out now; None: there is no such line, or it is not
    known. `difference` is now less kept, None as soon as one of them is not known."""

    name: str
    kept: Money | None
    now: Money | None
    difference: Money | None
    rule: str = ""


class LandedAgain(Value, frozen=True, kw_only=True):
    """A placed order at the door by the terms and sheet of a day, beside what was kept on it, in the shop's currency.

    `terms_from`: since when the terms hold that it was worked out by; None: there are none. `differences` sum to both
    totals. `open_questions`: what keeps it from being worked out whole; then `now` is what is known so far, or None.
    """

    order: str
    supplier: str
    supplier_name: str
    placed_at: datetime
    at: datetime
    terms_from: date | None
    kept: Money
    now: LandedOrder | None
    arrival: Arrival | None
    differences: tuple[CostDifference, ...]
    difference: Money | None
    open_questions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


class LandedRow(Value, frozen=True, kw_only=True):
    """An offer of a sheet at the door, ordered alone in its fewest pieces. `why_not`: why `landed` is None; `no_day`:
    why an offer with pieces has no `latest`."""

    worksheet: str
    row: int
    supplier_number: str
    maker: str
    maker_number: str
    description: str
    pieces: int | None
    landed: Money | None
    earliest: date | None
    latest: date | None
    why_not: str = ""
    no_day: str = ""


class Reason(Value, frozen=True, kw_only=True):
    """Why offers could not be priced or dated, and how many."""

    words: str
    offers: int


class LandedSheet(Value, frozen=True, kw_only=True):
    """Every offer of a supplier's sheet at the door. `not_priced` and `not_dated` count by reason, most first. `notes`:
    what to mind of all of them."""

    supplier: str
    supplier_name: str
    sheet: int
    file: str
    sheet_date: date
    at: datetime
    offers: int
    priced: int
    dated: int
    not_priced: tuple[Reason, ...]
    not_dated: tuple[Reason, ...]
    rows: tuple[LandedRow, ...]
    notes: tuple[str, ...] = ()
