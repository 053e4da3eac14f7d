"""The words for where a job is, as a table: what happened, what it is called, since when, who waits for whom."""

from datetime import date, datetime, timedelta
from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.approval import AnswerWord
from sourcing.basics.job_state import Came, JobFacts, LineFacts, StateWord
from sourcing.basics.value import changed
from sourcing.quoting.states import job_state
from tests.builders import usd

MONDAY = datetime(2026, 3, 2, 9, 0)
TODAY = date(2026, 3, 6)


def day(count: int) -> datetime:
    """So many days after the machine came in."""
    return MONDAY + timedelta(days=count)


def line(label: str, answer: AnswerWord, pieces: int = 1, **fields: Any) -> LineFacts:
    """A line with a part unless `pieces` is 0; answered on day 3 where it is answered."""
    answered = None if answer == "waiting" else day(3)
    return LineFacts(label=label, needed=pieces, answer=answer, **{"answered_at": answered, **fields})


def on_order(label: str, *came: tuple[int, int], pieces: int = 1, **fields: Any) -> LineFacts:
    """An approved line ordered on day 4, and what came on which day."""
    goods = tuple(Came(at=day(at), pieces=some) for at, some in came)
    ordered: dict[str, Any] = {"order": "PO-2026-0001", "ordered_at": day(4), "supplier": "Pellbrook", "came": goods}
    return line(label, fields.pop("answer", "approved"), pieces, **{**ordered, **fields})


def job(*lines: LineFacts, **fields: Any) -> JobFacts:
    """A job quoted on day 1 where it has lines, the paper not yet given."""
    quoted = {"quoted_at": day(1), "valid_to": date(2026, 3, 9)} if lines else {}
    made: dict[str, Any] = {"job": "2026-0001", "customer": "Greta Lindqvare", "taken_in_at": MONDAY, **quoted}
    return JobFacts(**{**made, "lines": lines, **fields})


GIVEN: dict[str, Any] = {"given_at": day(2)}
A_WAITS, A_YES, A_NO, ONE_YES = (
    line("A", "waiting"),
    line("A", "approved"),
    line("A", "declined"),
    line("1", "approved"),
)
ONE_WAITS, ONE_NO, LABOUR = line("1", "waiting"), line("1", "declined"), line("1", "approved", 0)

TABLE: list[tuple[str, JobFacts, StateWord, datetime]] = [
    ("nothing happened yet", job(), "taken in", MONDAY),
    ("a quote lies in the drawer", job(ONE_WAITS), "quoted", day(1)),
    ("the customer has the paper", job(ONE_WAITS, **GIVEN), "waiting for answer", day(2)),
    ("one line declined, one not answered", job(ONE_NO, A_WAITS, **GIVEN), "waiting for answer", day(2)),
    ("answered though nobody noted the giving", job(ONE_NO, A_WAITS), "waiting for answer", day(3)),
    ("every line declined", job(ONE_NO, A_NO, **GIVEN), "declined", day(3)),
    ("one yes, one not answered", job(ONE_YES, A_WAITS, **GIVEN), "approved in part", day(3)),
    ("one yes, one no", job(ONE_YES, A_NO), "approved in part", day(3)),
    ("every line approved", job(ONE_YES, A_YES), "approved", day(3)),
    ("approved, and no part is needed", job(LABOUR), "approved", day(3)),
    ("one of two parts is on order", job(on_order("1"), A_YES), "ordered in part", day(4)),
    ("all parts approved are on order", job(on_order("1"), A_NO), "ordered", day(4)),
    ("a line that waits is no part to order", job(on_order("1"), A_WAITS, **GIVEN), "ordered", day(4)),
    ("labour beside the ordered part", job(on_order("1"), line("2", "approved", 0)), "ordered", day(4)),
    ("one piece of two came", job(on_order("1", (5, 1), pieces=2)), "received in part", day(5)),
    ("one line came, one is not ordered", job(on_order("1", (5, 1)), A_YES), "received in part", day(5)),
    ("one line came, the other not", job(on_order("1", (5, 1)), on_order("A")), "received in part", day(5)),
    ("the last piece came", job(on_order("1", (5, 1), (7, 1), pieces=2)), "all received", day(7)),
    ("more came than was needed", job(on_order("1", (5, 1), (7, 9))), "all received", day(5)),
    ("it came and went back", job(on_order("1", (5, 1), (6, -1))), "received in part", day(5)),
    ("it went back and came again", job(on_order("1", (5, 1), (6, -1), (8, 1))), "all received", day(8)),
    ("asked anew after it was ordered", job(on_order("1", answer="waiting")), "ordered", day(4)),
    ("billed", job(on_order("1", (5, 1)), billed_at=day(9)), "closed", day(9)),
    ("billed before everything came", job(on_order("1"), billed_at=day(9)), "closed", day(9)),
]  # fmt: skip


@pytest.mark.parametrize(("what", "facts", "words", "since"), TABLE, ids=[row[0] for row in TABLE])
def test_what_happened_says_where_the_job_is(what: str, facts: JobFacts, words: StateWord, since: datetime) -> None:
    """The furthest thing that happened gives the words."""
    found = job_state(facts, TODAY)
    assert (found.words, found.since) == (words, since), what


def test_every_word_is_in_the_table() -> None:
    """A state nobody can reach would be a word of no use."""
    assert {row[2] for row in TABLE} == set(get_args(StateWord))


NEXT: list[tuple[JobFacts, str, str]] = [
    (job(), "us", "write the quote: sourcing quote 2026-0001"),
    (job(ONE_WAITS), "us", "give Greta Lindqvare the quote, line 1 to be answered: sourcing given 2026-0001"),
    (
        job(ONE_WAITS, A_WAITS, **GIVEN),
        "the customer",
        "ask Greta Lindqvare about lines 1, A; record the answer: sourcing answer 2026-0001",
    ),
    (job(ONE_NO), "us", "give the machine back; close the job: sourcing bill 2026-0001"),
    (job(ONE_NO, held=usd("40.00")), "us", "give back 40.00 USD of the deposit: sourcing deposit 2026-0001 --back"),
    (job(ONE_YES, A_WAITS, **GIVEN), "us", "order line 1: sourcing order 2026-0001"),
    (
        job(line("1", "approved", held="not as approved"), A_YES, line("B", "approved", held="not as approved")),
        "us",
        "lines 1, B are not as approved; decide what is to be done about them: sourcing alarms 2026-0001; "
        "order line A: sourcing order 2026-0001",
    ),
    (
        job(on_order("1", held="not as approved"), A_WAITS, **GIVEN),
        "us",
        "line 1 is not as approved; decide what is to be done about it: sourcing alarms 2026-0001",
    ),
    (
        job(line("A", "approved", held="which part"), **GIVEN),
        "us",
        "settle which part line A is to have: 'sourcing identity 2026-0001 A'",
    ),
    (
        job(line("1", "approved", held="its freight"), line("2", "waiting", 0), **GIVEN),
        "us",
        "get an answer to the freight without which line 1 can't be ordered: sourcing answer 2026-0001",
    ),
    (
        job(line("1", "approved", held="its old part")),
        "us",
        "tell the customer in a new quote that the old part of line 1 goes back: sourcing quote 2026-0001",
    ),
    (
        job(line("1", "approved", held="a new quote")),
        "us",
        "line 1 is to be bought elsewhere; write that quote: sourcing quote 2026-0001",
    ),
    (
        job(on_order("1"), A_WAITS, **GIVEN),
        "the customer",
        "ask Greta Lindqvare about line A; record the answer: sourcing answer 2026-0001",
    ),
    (job(on_order("1")), "the supplier", "Pellbrook has line 1 on PO-2026-0001, no day is promised"),
    (
        job(on_order("1", expected=date(2026, 3, 6))),
        "the supplier",
        "Pellbrook has line 1 on PO-2026-0001, promised for 2026-03-06",
    ),
    (
        job(on_order("1", expected=date(2026, 3, 5))),
        "the supplier",
        "Pellbrook has line 1 on PO-2026-0001, promised for 2026-03-05; that day is past: ask",
    ),
    (
        job(on_order("1", (5, 1))),
        "us",
        "do the work, give Greta Lindqvare the machine, and write the bill: sourcing bill 2026-0001",
    ),
    (job(ONE_YES, billed_at=day(9)), "nobody", "nothing is left to do"),
    (
        job(ONE_YES, billed_at=day(9), waiting_back=1),
        "us",
        "see what must still go back to suppliers or be credited: sourcing going-back",
    ),
    (
        job(ONE_YES, billed_at=day(9), held=usd("1.00")),
        "us",
        "give back 1.00 USD of the deposit: sourcing deposit 2026-0001 --back",
    ),
]


@pytest.mark.parametrize(("facts", "waits_for", "next_step"), NEXT)
def test_who_waits_for_whom(facts: JobFacts, waits_for: str, next_step: str) -> None:
    """And one thing to do."""
    found = job_state(facts, TODAY)
    assert (found.waits_for, found.next_step) == (waits_for, next_step)


def test_an_expired_quote_is_said_beside_and_is_ours_to_write_anew() -> None:
    """On its last day it holds; the day after it does not, and the word for the state stays."""
    facts = job(ONE_WAITS, **GIVEN)
    last, after = job_state(facts, date(2026, 3, 9)), job_state(facts, date(2026, 3, 10))
    assert (last.words, last.waits_for, last.beside) == ("waiting for answer", "the customer", ())
    assert (after.words, after.waits_for) == ("waiting for answer", "us")
    assert after.beside == ("the quote expired on 2026-03-09",)
    assert after.next_step == "the quote has expired; write it anew: sourcing quote 2026-0001"


def test_a_quote_whose_lines_are_answered_can_not_expire() -> None:
    """The yes was given in time."""
    assert job_state(job(ONE_YES, A_NO), date(2026, 12, 1)).beside == ()


def test_what_lags_behind_is_said() -> None:
    """Goods on the way do not hide that a line still waits, or that they are late."""
    late = on_order("1", expected=date(2026, 3, 5))
    found = job_state(job(late, A_WAITS, line("B", "waiting"), **GIVEN), TODAY)
    assert found.beside == ("lines A, B wait for an answer", "line 1 was promised for 2026-03-05 and is late")
    assert job_state(job(on_order("1", (5, 1)), A_WAITS), TODAY).beside == ("line A waits for an answer",)


ANSWERS = st.sampled_from(get_args(AnswerWord))
LINES = st.lists(st.tuples(ANSWERS, st.integers(0, 3), st.booleans(), st.integers(0, 4)), min_size=1, max_size=5)


@given(LINES, st.booleans())
def test_never_all_received_while_an_approved_part_is_missing(
    rows: list[tuple[AnswerWord, int, bool, int]], given_out: bool
) -> None:
    """Whatever happened: 'all received' and 'ordered' are only said where it is so, and silence is never approved."""
    lines = []
    for at, (answer, needed, ordered, pieces) in enumerate(rows, 1):
        if needed and ordered:
            lines.append(on_order(str(at), *([(5, pieces)] if pieces else []), pieces=needed, answer=answer))
        else:
            lines.append(line(str(at), answer, needed))
    found = job_state(job(*lines, **(GIVEN if given_out else {})), TODAY)
    wanted = [one for one in lines if one.order or (one.needed and one.answer == "approved")]
    short = [one for one in wanted if sum(came.pieces for came in one.came) < one.needed]
    assert (found.words == "all received") == (bool([one for one in wanted if one.order]) and not short)
    if found.words == "ordered":
        assert all(one.order for one in wanted)
    if found.words == "approved":
        assert all(one.answer == "approved" for one in lines)
    if any(one.answer == "waiting" for one in lines):
        assert "wait" in found.words or "quoted" in found.words or any("an answer" in one for one in found.beside)


def test_a_bill_outweighs_all_else() -> None:
    """Closed is closed."""
    for _, facts, _, _ in TABLE:
        assert job_state(changed(facts, billed_at=day(30)), TODAY).words == "closed"


def test_each_order_is_told_with_its_own_supplier_and_day() -> None:
    """One clause for each; one whose day is past comes first."""
    larkmoor: dict[str, Any] = {"order": "PO-2026-0002", "supplier": "Larkmoor"}
    facts = job(
        on_order("1", expected=date(2026, 3, 9)),
        on_order("2", expected=date(2026, 3, 5), **larkmoor),
        on_order("A", expected=date(2026, 3, 9)),
    )
    assert job_state(facts, TODAY).next_step == (
        "Larkmoor has line 2 on PO-2026-0002, promised for 2026-03-05; that day is past: ask; "
        "Pellbrook has lines 1, A on PO-2026-0001, promised for 2026-03-09"
    )
