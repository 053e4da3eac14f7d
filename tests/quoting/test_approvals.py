"""Answers: who may give them, what they cover, when they carry over; silence is never a yes."""

from datetime import date, datetime, timedelta

import pytest

from sourcing.basics.job import Customer, Machine
from sourcing.basics.problem import Refused
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.settings import Shop
from sourcing.basics.value import changed
from sourcing.quoting.approvals import (
    Given,
    answers,
    check_freight_line,
    how_given,
    record_answers,
    standing_answers,
)
from sourcing.quoting.totals import document_total, total_of
from tests.builders import usd
from tests.quoting.test_pricing_and_totals import DAY, line, settings

MADE = datetime(2026, 3, 4, 10, 0)
GIVEN = Given(who="Maud Tilbrook", how="telephone", at=MADE + timedelta(hours=1), taken_by="Piet")


def quote(*more: QuoteLine, revision: int = 1) -> Quote:
    """A quote with one agreed line, two add-ons and whatever else."""
    lines = (line("1", "109.00", "1.5"), line("A", "25.60", "0.3"), line("B", "38.25", "0.2"), *more)
    rules = settings().charge_rules
    everything = document_total(lines, rules, DAY, "USD")
    return Quote(
        job="2026-0001",
        revision=revision,
        shop=Shop(name="Wickenby Yard Machine Repair"),
        customer=Customer(name="Maud Tilbrook", may_also_approve=("Silas Tilbrook",)),
        machine=Machine(description="Snow thrower"),
        complaint="",
        made_at=MADE,
        valid_to=date(2026, 3, 11),
        locale="en_US",
        currency="USD",
        lines=lines,
        agreed_total=document_total(lines[:1], rules, DAY, "USD"),
        everything_total=everything,
        add_on_prices=(),
        arrives=None,
        terms_text=(),
        cautions=(),
        cautions_dated=None,
        warnings=(),
        charge_rules=rules,
    )


def test_a_yes_a_no_and_a_silence() -> None:
    """Three lines, two answers: the third waits."""
    asked = quote()
    kept = record_answers(asked, ["agreed", "A"], ["B"], GIVEN, ())
    assert [(one.label, one.answer, str(one.amount.amount)) for one in kept] == [
        ("1", "approved", "253.00"),
        ("A", "approved", "54.40"),
        ("B", "declined", "57.45"),
    ]
    holding = standing_answers(asked, kept[:2], {1: asked})
    found = answers(asked, holding, total_of(asked, holding))
    assert found.of("B") == "waiting"
    assert found.extra == found.approved_total - asked.agreed_total.total


def test_no_extra_is_told_before_the_agreed_work_is_approved() -> None:
    """A alone: there is no agreed total it could be extra to."""
    asked = quote()
    holding = standing_answers(asked, record_answers(asked, ["A"], [], GIVEN, ()), {1: asked})
    assert answers(asked, holding, total_of(asked, holding)).extra == usd("0.00")


@pytest.mark.parametrize(
    ("yes", "no", "change", "words"),
    [
        (["Z"], [], {}, "has no line 'Z'; answer one of: agreed, 1, A, B"),
        (["A"], ["A"], {}, "both a yes and a no"),
        ([], [], {}, "no line of job 2026-0001 was answered"),
        (["A"], [], {"who": "Someone Else"}, "Someone Else is not named as someone who may answer"),
        (["A"], [], {"at": datetime(2026, 3, 12, 9, 0)}, "was valid to 2026-03-11"),
        (["A"], [], {"at": datetime(2026, 3, 4, 9, 59)}, "before the quote"),
        ([], ["1"], {}, "already on a purchase order"),
    ],
)
def test_what_is_refused(yes: list[str], no: list[str], change: dict[str, object], words: str) -> None:
    """One sentence each. Line 1 is ordered already."""
    with pytest.raises(Refused, match=words):
        record_answers(quote(), yes, no, changed(GIVEN, **change), ["1"])


def test_someone_named_beforehand_may_answer_and_the_last_day_counts() -> None:
    """Case and spaces of the name set aside."""
    late = changed(GIVEN, who="silas tilbrook", at=datetime(2026, 3, 11, 23, 59))
    assert record_answers(quote(), ["A"], [], late, ())[0].who == "silas tilbrook"


def test_an_approval_carries_over_only_where_the_line_is_the_same() -> None:
    """Price, hours, number: any change asks again."""
    first = quote()
    kept = record_answers(first, ["agreed", "A", "B"], [], GIVEN, ())
    dearer = line("B", "38.26", "0.2")
    second = changed(first, revision=2, lines=(first.lines[0], first.lines[1], dearer))
    holding = standing_answers(second, kept, {1: first})
    assert set(holding) == {"1", "A"}


def test_the_last_answer_counts() -> None:
    """A yes taken back before it is ordered."""
    asked = quote()
    kept = record_answers(asked, ["A"], [], GIVEN, ()) + record_answers(asked, [], ["A"], GIVEN, ())
    assert standing_answers(asked, kept, {1: asked})["A"].answer == "declined"


def test_extra_parts_need_a_yes_to_their_freight() -> None:
    """Freight has a line of its own: D."""
    asked = quote(line("D", freight="14.95"))
    with pytest.raises(Refused, match="line A can't be ordered without the freight on line D"):
        check_freight_line(asked, {"1": "approved", "A": "approved"})
    check_freight_line(asked, {"1": "approved", "A": "approved", "D": "approved"})
    check_freight_line(asked, {"1": "approved", "A": "declined"})


def test_how_an_answer_came() -> None:
    """Known words only."""
    assert how_given(" Telephone ") == "telephone"
    with pytest.raises(Refused, match="'shouted' is not one of the words for 'how'"):
        how_given("shouted")
