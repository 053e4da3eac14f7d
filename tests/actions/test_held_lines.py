"""What is truly next for a job of which a line is not as approved: one rule for page, lists and job."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions import held_lines
from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record
from sourcing.actions.decide import decide
from sourcing.actions.desk import Desk
from sourcing.actions.evaluate import Catalogue
from sourcing.actions.identity import add_evidence, take_evidence_back
from sourcing.actions.job_list import JobsAsked, jobs_asked, waiting
from sourcing.actions.job_states import job_list, state_of, whole_job
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.basics.evidence import Evidence
from sourcing.basics.job_state import HeldFor, JobFacts, JobState
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import priced
from tests.actions.test_alarms import BELT, KEEPER, LINES, MONDAY, TUESDAY, approved, tuesday
from tests.journeys.belt_job import approved as approved_belt
from tests.journeys.belt_job import paper, three_numbers
from tests.journeys.small_shop import desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import yes

DEARER = BELT.replace("126.90", "139.59")
DECIDE = "line 1 is not as approved; decide what is to be done about it: sourcing alarms {}"


def told(desk: Desk, number: str) -> JobState:
    """The job's state as the first page, both lists and the head of the job's page tell it: the same everywhere."""
    first = [row.state for part in waiting(desk) for row in part.rows if row.job == number]
    listed = [row.state for row in jobs_asked(desk, JobsAsked(words=number)).rows]
    every = [row.state for row in job_list(desk).jobs if row.job == number]
    assert first == listed == every == [state_of(desk, number)] == [whole_job(desk, number).state]
    return first[0]


def test_a_line_that_became_dearer_is_decided_before_it_is_ordered(tmp_path: Path) -> None:
    """The other line can be ordered meanwhile; once it is decided both can."""
    desk, number = approved(tmp_path)
    assert told(desk, number).next_step == f"order lines 1, 2: sourcing order {number}"
    desk = tuesday(tmp_path, DEARER, KEEPER)
    state = told(desk, number)
    assert state.waits_for == "us"
    assert state.next_step == f"{DECIDE.format(number)}; order line 2: sourcing order {number}"
    decide(desk, number, "1", "hold", words="our word counts")
    assert told(desk, number).next_step == f"order lines 1, 2: sourcing order {number}"


def test_goods_on_order_that_will_be_otherwise_wait_for_us_and_not_for_the_supplier(tmp_path: Path) -> None:
    desk, number = approved(tmp_path)
    (order,) = place_orders(desk, [number]).orders
    assert told(desk, number).waits_for == "the supplier"
    desk = desk_at(tmp_path, TUESDAY)
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, unit_price=Decimal("160.00")),), said_by="Rilla"))
    assert [one.label for one in alarms(desk, number)] == ["1"]
    state = told(desk, number)
    assert (state.waits_for, state.next_step) == ("us", DECIDE.format(number))


def test_a_line_whose_evidence_contradicts_itself_is_settled_first(tmp_path: Path) -> None:
    """Once the wrong list is taken back it is to be ordered."""
    desk, number = three_numbers(tmp_path)
    approved_belt(desk, number)
    add_evidence(
        desk, number, "1", Evidence(kind="component list", maker="Norrowby", number="NW-22203", model="OV-88T")
    )
    assert told(desk, number).next_step == f"settle which part line 1 is to have: 'sourcing identity {number} 1'"
    take_evidence_back(desk, number, "1", 5, "read from the page of another gearbox")
    assert told(desk, number).next_step == f"order line 1: sourcing order {number}"


def test_what_is_remembered_is_looked_at_anew_after_a_sheet_and_after_a_deed_of_the_job(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Not after a deed of another job; in another hour again, for a cut-off may have passed."""
    _, number = approved(tmp_path)
    desk = desk_at(tmp_path, TUESDAY)
    other = take_in(desk, tmp_path, LINES)
    looked: list[str] = []
    true = held_lines.held_lines

    def looking(found: Catalogue, facts: JobFacts) -> dict[str, HeldFor]:
        looked.append(facts.job)
        return true(found, facts)

    monkeypatch.setattr(held_lines, "held_lines", looking)
    told(desk, number)
    told(desk, number)
    assert looked == [number]
    write_quote(desk, other, paper)
    assert told(desk, number) and looked == [number]
    sheet(desk, tmp_path, "stonegarth", "2026-03-03", [DEARER, KEEPER])
    assert DECIDE.format(number) in told(desk, number).next_step and looked == [number] * 2
    decide(desk, number, "1", "hold", words="our word counts")
    assert "not as approved" not in told(desk, number).next_step and looked == [number] * 3
    told(Desk(store=desk.store, at=datetime(2026, 3, 3, 10, 0), who=desk.who), number)
    assert looked == [number] * 4


def test_a_deposit_for_the_old_part_of_which_the_customer_was_not_told_holds_the_order(tmp_path: Path) -> None:
    """A newer sheet asks it at the same price. Told on a new revision it is asked anew, and then it is ordered."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", date(2026, 3, 1), priced("NW-77120", "126.90"))
    number = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\n')
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    desk = desk_at(tmp_path, TUESDAY)
    keep(desk, "stonegarth", date(2026, 3, 3), priced("NW-77120", "126.90", core_charge=Decimal("25.00")))
    with pytest.raises(Refused, match="line 1 of job 2026-0001 can't be ordered yet: the supplier asks a deposit"):
        place_orders(desk, [number])
    assert told(desk, number).next_step == (
        f"tell the customer in a new quote that the old part of line 1 goes back: sourcing quote {number}"
    )
    new = write_quote(desk, number, paper)
    assert new.is_new and new.frozen.quote.lines[0].core_words
    assert told(desk, number).next_step.startswith("give Maud Tilbrook the quote, line 1 to be answered")
    record(desk, number, yes("agreed"))
    assert len(place_orders(desk, [number]).orders) == 1
