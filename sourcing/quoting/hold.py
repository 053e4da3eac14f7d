"""Whether an approved line may still be ordered as it was approved, or waits for a new answer.

A yes covers that number at that price by that date. A person may have decided to hold the price all the same: that
covers a dearer part up to what it cost on the day of the decision, and a later day only where the customer said yes to
it.
"""

from collections.abc import Callable
from datetime import date, datetime, timedelta

from ..basics.alarm import Decision
from ..basics.money import Money
from ..basics.quote import Quote, QuoteLine
from ..basics.settings import Tolerance
from ..basics.value import Value
from .number_approved import covers_number
from .tolerance import line_at, rises_too_far

BENCH_DAYS = 1
"""The parts must be here a day before the machine is to be ready (common practice, no source)."""

LONGEST_CLOSED = 60
"""Nobody shuts a shop for so many days on end and names a day in it."""

FRIDAY, SATURDAY = 4, 5


class Covered(Value, frozen=True, kw_only=True):
    """The last day the customer's yes covers; `printed`: the last day of the parts on the paper she answered to, None
    where it names none; `ready_by`: the machine's day there, where that is what `day` comes from."""

    day: date
    printed: date | None
    ready_by: date | None = None

    def words(self) -> str:
        """The day, with what her paper says where that is another day."""
        if self.day == self.printed:
            return str(self.day)
        said = f"says the parts by {self.printed}" if self.printed else "names no day of the parts"
        if self.ready_by:
            return f"{self.day} (the customer's paper {said} and the machine by {self.ready_by})"
        return f"{self.day} (the customer's paper {said}, and the answer came later)"


class Today(Value, frozen=True, kw_only=True):
    """What is known of the line today beside its price; None: not known or not asked.

    `unit_cost`: the goods of one piece in the shop's currency, without freight and other charges. `latest`: the last
    day the parts would be here, `covered` what the customer's yes covers of days. `approved`: the line's amount in
    that yes, None where it is the line's own. `tolerance` is the quote's.
    """

    unit_cost: Money | None = None
    latest: date | None = None
    covered: Covered | None = None
    approved: Money | None = None
    tolerance: Tolerance = Tolerance()
    number: str = ""


NOTHING_KNOWN = Today()


def why_held(
    line: QuoteLine,
    price_now: Money | None,
    missing: str,
    decision: Decision | None = None,
    today: Today = NOTHING_KNOWN,
) -> str:
    """Why the line waits; blank where the customer's yes still covers it.

    `line` is the whole line of the newest revision, however many of its pieces are to be ordered still.
    `price_now` is what one piece would be priced at on today's cost, None where the offer is not there any more;
    `missing` says why not. `decision` is the last way out taken for the line. Without `today` nothing is held for its
    day, and a decision to hold does not cover a risen price, for what the part costs is not known.
    """
    if price_now is None:
        return f"the offer it was quoted on can't be had: {missing}"
    if today.number and not covers_number(line, today.number, decision):
        return f"approved was {line.number}, now the number is {today.number}"
    why = _price_held(line, price_now, decision, today)
    return why or _day_held(decision, today)


def covered_by(
    quote: Quote,
    answered_at: datetime | None = None,
    wanted: date | None = None,
    is_worked: Callable[[date], bool] = lambda day: True,
) -> Covered | None:
    """The last day the customer's yes covers: the last of the days printed, or the last day the shop works before the
    machine is to be ready where that is later, but not past `wanted`, the day the job wants its parts by, for the bench
    may need the days after it; None where the paper names no day. `is_worked`: whether the shop works that day.

    The days printed count from the moment of the quote, so they move on by the working days (Monday to Friday, part of
    a day counts as one) that the customer took for the yes: her waiting is no lateness of the shop's.
    """
    printed = quote.arrives[1] if quote.arrives else None
    moved = _moved_on(printed, quote.made_at, answered_at) if printed else None
    bench = _bench_day(quote.ready_by, is_worked) if quote.ready_by else None
    bench = min(bench, wanted) if bench and wanted else bench
    if bench is not None and (moved is None or bench > moved):
        return Covered(day=bench, printed=printed, ready_by=quote.ready_by)
    return Covered(day=moved, printed=printed) if moved is not None else None


def _bench_day(ready_by: date, is_worked: Callable[[date], bool]) -> date:
    """The machine is mended on a day the shop works: a holiday before it is none on which parts may come yet."""
    day = ready_by - timedelta(days=BENCH_DAYS)
    for _ in range(LONGEST_CLOSED):
        if is_worked(day):
            return day
        day -= timedelta(days=1)
    return ready_by - timedelta(days=BENCH_DAYS)


def _moved_on(day: date, made_at: datetime, answered_at: datetime | None) -> date:
    if answered_at is None or answered_at <= made_at:
        return day
    whole = [made_at.date() + timedelta(days=at) for at in range((answered_at.date() - made_at.date()).days)]
    begun = answered_at.weekday() < SATURDAY and answered_at.time() > made_at.time()
    took = sum(1 for one in whole if one.weekday() < SATURDAY) + begun
    for _ in range(took):
        day += timedelta(days={FRIDAY: 3, SATURDAY: 2}.get(day.weekday(), 1))
    return day


def goods_of(line: QuoteLine, unit_cost: Money) -> Money:
    """The goods of the pieces the line needs, rounded once at the line."""
    return (unit_cost * line.quantity).rounded()


def covers_cost(decision: Decision | None, line: QuoteLine, unit_cost: Money | None) -> bool:
    """Whether a person decided on this very price at a cost no lower than this one.

    A price to ask is another one than the line's until the customer has said yes to it, so it covers nothing before.
    """
    if decision is None or unit_cost is None or decision.up_to_cost is None:
        return False
    return decision.held_price == line.unit_price and goods_of(line, unit_cost) <= decision.up_to_cost


def covers_day(decision: Decision | None, latest: date) -> bool:
    """Whether the customer said yes to a day no earlier than this one."""
    return decision is not None and decision.latest is not None and latest <= decision.latest


def _price_held(line: QuoteLine, price_now: Money, decision: Decision | None, today: Today) -> str:
    too_far = rises_too_far(line, price_now, today.approved, today.tolerance)
    if not too_far or covers_cost(decision, line, today.unit_cost):
        return ""
    why = f"its price would now be {price_now} each, approved was {line.unit_price}"
    if today.approved is not None and today.approved != line.price:
        why = f"the line would now be {line_at(line, price_now)} before tax, approved was {today.approved}"
    if decision is None or decision.held_price != line.unit_price or decision.up_to_cost is None:
        return why
    now = goods_of(line, today.unit_cost) if today.unit_cost else "not known"
    return f"{why}, and it was to be held up to a cost of {decision.up_to_cost} only, now {now}"


def _day_held(decision: Decision | None, today: Today) -> str:
    if today.latest is None or today.covered is None or today.latest <= today.covered.day:
        return ""
    if covers_day(decision, today.latest):
        return ""
    return f"it would be here by {today.latest}, approved was by {today.covered.words()}"
