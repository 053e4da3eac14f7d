"""Whether an approved line may be ordered as approved: number, price and date, and what a decision covers."""

from datetime import date, datetime, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.alarm import Decision
from sourcing.basics.money import from_minor
from sourcing.basics.quote import Quote
from sourcing.basics.settings import Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.hold import Covered, Today, covered_by, why_held
from tests.builders import usd
from tests.quoting.alarm_values import BEHIND, COVERED, belt, decided, quote

DEARER = Today(unit_cost=usd("139.59"))


def test_a_price_no_higher_than_approved_is_covered() -> None:
    """The same and a lower one; a cent more is held, with both figures."""
    assert why_held(belt(), usd("177.66"), "") == ""
    assert why_held(belt(), usd("170.00"), "") == ""
    assert why_held(belt(), usd("177.67"), "") == "its price would now be 177.67 USD each, approved was 177.66 USD"


def test_an_offer_that_is_gone_is_held_whatever_was_decided() -> None:
    """A decision about a price does not bring goods back."""
    why = why_held(belt(), None, "no longer available", decided())
    assert why == "the offer it was quoted on can't be had: no longer available"


def test_a_price_held_is_covered_up_to_its_cost_and_not_a_cent_further() -> None:
    """139.59 is what was shown when it was decided; 139.60 is a new question, and the sentence says both."""
    assert why_held(belt(), usd("195.43"), "", decided(), DEARER) == ""
    why = why_held(belt(), usd("195.44"), "", decided(), Today(unit_cost=usd("139.60")))
    assert why.endswith("and it was to be held up to a cost of 139.59 USD only, now 139.60 USD")


@pytest.mark.parametrize(
    "decision",
    [
        None,
        decided(held_price=usd("170.00")),  # of another revision: not the price approved here
        decided("ask", held_price=usd("195.43")),  # the customer has not said yes to it
        decided(up_to_cost=None),
    ],
)
def test_what_covers_no_risen_price(decision: Decision | None) -> None:
    """No decision, one about another price, a price that is only to be asked, one without a cost."""
    assert why_held(belt(), usd("195.43"), "", decision, DEARER)


def test_a_price_asked_and_approved_covers_the_cost_it_stands_on() -> None:
    """Once the line stands at the asked price, its cost is what was decided on."""
    asked = decided("ask", held_price=usd("195.43"))
    assert why_held(belt("195.43"), usd("195.44"), "", asked, DEARER) == ""


def test_a_rise_within_the_tolerance_is_not_held() -> None:
    """5.00 on the line: 182.66 passes, 182.67 waits."""
    today = Today(tolerance=Tolerance(amount=Decimal("5.00")))
    assert why_held(belt(), usd("182.66"), "", None, today) == ""
    assert why_held(belt(), usd("182.67"), "", None, today)


def test_the_tolerance_is_for_the_line_and_not_for_each_piece() -> None:
    """Four pieces at 1.25 more are 5.00 more."""
    today = Today(tolerance=Tolerance(amount=Decimal("5.00")))
    assert why_held(belt(quantity=4), usd("178.91"), "", None, today) == ""
    assert why_held(belt(quantity=4), usd("178.92"), "", None, today)


def test_rises_over_revisions_are_reckoned_together_from_the_amount_approved() -> None:
    """Approved at 321.66, carried at 326.66 within 10.00: 331.66 passes, a cent more waits and says both amounts."""
    today = Today(approved=usd("321.66"), tolerance=Tolerance(amount=Decimal("10.00")))
    assert why_held(belt("182.66"), usd("187.66"), "", None, today) == ""
    why = why_held(belt("182.66"), usd("187.67"), "", None, today)
    assert why == "the line would now be 331.67 USD before tax, approved was 321.66 USD"


def test_a_lower_price_said_since_is_what_a_rise_counts_from() -> None:
    """Approved at 321.66, then quoted at 311.66: the shop has promised less, so 311.67 waits though it was approved."""
    today = Today(approved=usd("321.66"))
    assert why_held(belt("167.66"), usd("167.66"), "", None, today) == ""
    assert why_held(belt("167.66"), usd("167.67"), "", None, today)


def test_a_later_day_is_held_until_the_customer_said_yes_to_it() -> None:
    """A decision without her yes names no day; with it, it covers that day and none later."""
    late = Today(latest=date(2026, 3, 18), covered=COVERED)
    why = "it would be here by 2026-03-18, approved was by 2026-03-12"
    assert why_held(belt(), usd("177.66"), "", None, late) == why
    assert why_held(belt(), usd("177.66"), "", decided(), late) == why
    agreed = decided(latest=date(2026, 3, 18), agreed_by="Maud Tilbrook")
    assert why_held(belt(), usd("177.66"), "", agreed, late) == ""
    later = Today(latest=date(2026, 3, 19), covered=COVERED)
    assert why_held(belt(), usd("177.66"), "", agreed, later)


@pytest.mark.parametrize(
    ("answered", "by"),
    [
        (None, "2026-03-11"),
        ("2026-03-09T10:00", "2026-03-11"),  # at once
        ("2026-03-09T16:00", "2026-03-12"),  # the cut-off may lie between
        ("2026-03-10T09:00", "2026-03-12"),
        ("2026-03-10T11:00", "2026-03-13"),
        ("2026-03-11T16:00", "2026-03-16"),  # three working days on from Wednesday
        ("2026-03-16T09:00", "2026-03-18"),  # the week-end between is no working time
    ],
)
def test_the_days_printed_move_on_by_the_time_the_customer_took(answered: str | None, by: str) -> None:
    """Quoted on Monday 9 March at ten for Wednesday the 11th."""
    at = datetime.fromisoformat(answered) if answered else None
    found = covered_by(quote(), at)
    assert found is not None and found.day == date.fromisoformat(by) and found.printed == date(2026, 3, 11)
    moved = " (the customer's paper says the parts by 2026-03-11, and the answer came later)"
    assert found.words() == (by if by == "2026-03-11" else f"{by}{moved}")


def test_the_day_the_machine_is_wanted_counts_where_it_is_later() -> None:
    """The parts a day before it; an earlier wish does not undo a day that was printed and approved."""
    printed = date(2026, 3, 11)
    later = covered_by(quote(ready_by=date(2026, 3, 20)))
    assert later == Covered(day=date(2026, 3, 19), printed=printed, ready_by=date(2026, 3, 20))
    assert (
        later.words() == f"2026-03-19 (the customer's paper says the parts by {printed} and the machine by 2026-03-20)"
    )
    assert covered_by(quote(ready_by=date(2026, 3, 10))) == Covered(day=printed, printed=printed)
    assert covered_by(quote(arrives=None)) is None


def test_a_day_the_shop_is_closed_is_never_the_last_one_covered() -> None:
    """Ready on Tuesday 17 March, Monday a holiday: the parts by Friday the 13th. A shop never open keeps the day."""
    monday = date(2026, 3, 16)
    found = covered_by(quote(ready_by=date(2026, 3, 17)), None, None, lambda day: day != monday and day.weekday() < 5)
    assert found is not None and found.day == date(2026, 3, 13)
    never = covered_by(quote(ready_by=date(2026, 3, 17)), None, None, lambda day: False)
    assert never is not None and never.day == monday


def test_past_the_days_printed_the_parts_are_covered_to_the_day_they_are_wanted() -> None:
    """Common practice, no source: who wants the parts by the 16th for the 20th needs the days between at the bench."""
    ready = quote(ready_by=date(2026, 3, 20))
    assert _day(ready, wanted=date(2026, 3, 16)) == date(2026, 3, 16)
    assert _day(ready, wanted=date(2026, 3, 10)) == date(2026, 3, 11), "what was printed stays approved"
    assert _day(ready, wanted=date(2026, 3, 25)) == date(2026, 3, 19)
    assert _day(quote(), wanted=date(2026, 3, 25)) == date(2026, 3, 11)


@given(st.integers(0, 40_000), st.integers(1, 40_000), st.integers(1, 9))
def test_holding_covers_exactly_what_costs_no_more(cost: int, decided_cost: int, pieces: int) -> None:
    """For any cost in cents: covered where the goods of the line are at or under the decision's, else held."""
    line, most = belt(quantity=pieces), from_minor(decided_cost * pieces, "USD")
    today = Today(unit_cost=from_minor(cost, "USD"))
    held = why_held(line, usd("999.99"), "", decided(up_to_cost=most), today)
    assert (held == "") == (cost <= decided_cost)


@given(st.integers(0, 400), st.integers(0, 23))
def test_a_later_answer_never_brings_the_day_forward(hours: int, more: int) -> None:
    """The day covered rises with the time the customer took, and is never a Saturday or Sunday."""
    first, second = (covered_by(quote(), quote().made_at + timedelta(hours=some)) for some in (hours, hours + more))
    assert first is not None and second is not None
    assert first.day <= second.day and second.day.weekday() < 5


def test_another_number_is_held_whatever_it_costs() -> None:
    """Another maker's number, or another letter, waits though it costs less; the same written otherwise does not."""
    for number in ("Norrowby NW-77120", "norrowby nw77120"):
        assert why_held(belt(), usd("177.66"), "", None, Today(number=number)) == ""
    for number in ("Ostrevik OV-20417", "Norrowby NW-77120A", "Ostrevik NW-77120"):
        why = why_held(belt(), usd("100.00"), "", decided(), Today(number=number))
        assert why == f"approved was Norrowby NW-77120, now the number is {number}"


def test_a_number_is_covered_by_a_decision_only_with_the_customers_yes() -> None:
    """Decided by the shop alone it waits; agreed to, it goes."""
    today = Today(number="Ostrevik OV-20417")
    alone = decided(number="Ostrevik OV-20417")
    assert why_held(belt(), usd("177.66"), "", alone, today)
    agreed = changed(alone, agreed_by="Maud Tilbrook", agreed_how="telephone")
    assert why_held(belt(), usd("177.66"), "", agreed, today) == ""


def test_a_sheet_that_leaves_the_maker_out_names_the_same_number() -> None:
    """Only where the number alone is the supplier's own for the line and ends the number approved."""
    assert why_held(belt(), usd("177.66"), "", None, Today(number="NW-77120")) == ""
    own = changed(BEHIND, supplier_number="SG-100")
    assert why_held(belt(behind=own), usd("177.66"), "", None, Today(number="SG-100"))
    assert why_held(belt(behind=own), usd("177.66"), "", None, Today(number="NW-77120"))


def _day(of: Quote, wanted: date) -> date | None:
    found = covered_by(of, None, wanted)
    return found.day if found else None
