"""What may be confirmed, changed and cancelled of an order, and what is refused."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as some

from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from sourcing.ordering.changes import cancelled_pieces, changed_pieces, changes_of, check_confirmed, what_differs
from sourcing.ordering.order_now import order_now
from tests.ordering.order_values import event, line, order

NOW = order_now(order())
FIRST_GONE = order_now(order(), (event("cancelled", LineEvent(line=1, pieces=0)),))
ALL_GONE = order_now(order(), (event("cancelled", LineEvent(line=1, pieces=0), LineEvent(line=2, pieces=0)),))


def refusal(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of the first problem."""
    return caught.value.problems[0].code


@pytest.mark.parametrize(
    ("said", "code"),
    [
        (LineEvent(line=9, latest=date(2026, 3, 9)), "no-such-order-line"),
        (LineEvent(line=1), "nothing-confirmed"),
        (LineEvent(line=1, unit_price=Decimal("-1")), "charged-below-zero"),
        (LineEvent(line=1, earliest=date(2026, 3, 9), latest=date(2026, 3, 8)), "days-turned-round"),
        (LineEvent(line=1, latest=date(2025, 3, 18)), "day-before-order"),
    ],
)
def test_a_word_that_can_not_be_is_refused(said: LineEvent, code: str) -> None:
    """Each with its own sentence."""
    with pytest.raises(Refused) as caught:
        check_confirmed(NOW, [said])
    assert refusal(caught) == code


def test_nothing_can_be_confirmed_of_what_is_cancelled() -> None:
    """Neither the line nor the whole order."""
    with pytest.raises(Refused, match="line 1 of order PO-2026-0001 is cancelled"):
        check_confirmed(FIRST_GONE, [LineEvent(line=1, latest=date(2026, 3, 9))])
    with pytest.raises(Refused, match="nothing of order PO-2026-0001 is wanted"):
        check_confirmed(ALL_GONE, [])


def test_no_line_named_is_as_ordered() -> None:
    """Nothing differs then."""
    assert check_confirmed(NOW, []) == ()
    assert what_differs(NOW, event("confirmed")) == ()
    same = LineEvent(line=1, unit_price=Decimal("139"), number="nw 77120", latest=date(2026, 3, 4))
    assert what_differs(NOW, event("confirmed", same)) == ()


def test_a_risen_price_is_told_with_both_figures() -> None:
    """139.00 to 152.90 is 13.90, 10 %; a price for 100 pieces is told as such, and what the line costs more."""
    (words,) = what_differs(NOW, event("confirmed", LineEvent(line=1, unit_price=Decimal("152.90"))))
    assert words == (
        "PO-2026-0001 line 1, NW-77120: 152.90 USD each is confirmed, 139.00 was ordered: "
        "13.90 more, 10.00 %; 13.90 USD more for 1"
    )
    hundred = order_now(order(line(1, "KR-5", 50, "8.00", "4.00", price_basis=100)))
    (words,) = what_differs(hundred, event("confirmed", LineEvent(line=1, unit_price=Decimal("7.00"))))
    assert "7.00 USD per 100 is confirmed, 8.00 was ordered: 1.00 less, 12.50 %; 0.50 USD less for 50" in words


def test_another_number_is_never_silent() -> None:
    """The customer's yes is for the number ordered."""
    (words,) = what_differs(NOW, event("confirmed", LineEvent(line=1, number="CV-B880K")))
    assert words.endswith("CV-B880K is confirmed instead of NW-77120")


def test_a_second_word_is_told_against_the_order_and_the_first() -> None:
    """Misheard, then put right: 139.00 was ordered, not 152.90, and the yes is for NW-77120."""
    first = event("confirmed", LineEvent(line=1, unit_price=Decimal("152.90"), number="CV-B880K"))
    now = order_now(order(), (first,))
    other = LineEvent(line=1, unit_price=Decimal("141.00"), number="CV-B880L")
    assert [words.partition("NW-77120: ")[2] for words in what_differs(now, event("confirmed", other))] == [
        "141.00 USD each is confirmed, 139.00 was ordered: 2.00 more, 1.44 %; 2.00 USD more for 1; "
        "before he had said 152.90",
        "CV-B880L is confirmed instead of NW-77120; before he had said CV-B880K",
    ]
    right = LineEvent(line=1, unit_price=Decimal("139.00"), number="NW-77120")
    assert [words.partition("NW-77120: ")[2] for words in what_differs(now, event("confirmed", right))] == [
        "139.00 USD each is confirmed, as ordered; before he had said 152.90",
        "NW-77120 is confirmed, as ordered; before he had said CV-B880K",
    ]
    assert len(what_differs(now, first)) == 2  # the same again is still not as ordered


def test_a_later_day_is_told_against_the_last_word_and_the_need() -> None:
    """18 March after 4 March, needed by 6 March; a sooner day is no alarm."""
    late = what_differs(NOW, event("confirmed", LineEvent(line=1, latest=date(2026, 3, 18))))
    assert [words.partition("here ")[2] for words in late] == [
        "2026-03-18 at the latest, 2026-03-04 was said before, the day has moved 1 time",
        "2026-03-18 at the latest, needed by 2026-03-06",
    ]
    assert what_differs(NOW, event("confirmed", LineEvent(line=1, latest=date(2026, 3, 3)))) == ()
    assert len(what_differs(NOW, event("confirmed", LineEvent(line=1, latest=date(2026, 3, 5))))) == 1


@pytest.mark.parametrize(
    ("pieces", "code"),
    [
        ({2: 6}, "more-than-approved"),
        ({2: 2}, "fewer-than-came"),
        ({2: 3}, "not-whole-packs"),
        ({2: 0}, "no-pieces-left"),
        ({2: 4}, "order-says-so"),
        ({1: 1, 2: 4}, "order-says-so"),
        ({7: 1}, "no-such-order-line"),
    ],
)
def test_a_change_that_may_not_be_is_refused(pieces: dict[int, int], code: str) -> None:
    """Approved are four keepers in packs of two; three have come by mistake, so four is the least."""
    came = {2: 3} if code == "fewer-than-came" else {2: 2}
    with pytest.raises(Refused) as caught:
        changed_pieces(NOW, pieces, {1: 1, 2: 4}, came, {})
    assert refusal(caught) == code


def test_a_change_says_pieces_and_a_price_only_where_one_changes() -> None:
    """Down to a pack of two at the price for two."""
    assert changed_pieces(NOW, {2: 2}, {2: 4}, {}, {2: Decimal("16.50")}) == (
        LineEvent(line=2, pieces=2, unit_price=Decimal("16.50")),
    )
    assert changed_pieces(NOW, {2: 2}, {2: 4}, {}, {}) == (LineEvent(line=2, pieces=2),)


def test_a_cancelled_line_can_not_be_changed_back() -> None:
    """Its yes may be ordered on elsewhere by now."""
    with pytest.raises(Refused) as caught:
        changed_pieces(FIRST_GONE, {1: 1}, {1: 1}, {}, {})
    assert refusal(caught) == "line-cancelled"


def test_cancelling_leaves_what_came() -> None:
    """Nothing came of the belt, two of four keepers did; named or not, both are cancelled down to that."""
    gone = (LineEvent(line=1, pieces=0), LineEvent(line=2, pieces=2))
    assert cancelled_pieces(NOW, [], {2: 2}) == gone
    assert cancelled_pieces(NOW, [2, 1, 2], {2: 2}) == gone
    assert cancelled_pieces(NOW, [], {2: 4}) == gone[:1]
    assert cancelled_pieces(FIRST_GONE, [], {}) == (LineEvent(line=2, pieces=0),)


@pytest.mark.parametrize(("lines", "came"), [([2], {2: 4}), ([2], {2: 6}), ([], {1: 1, 2: 4}), ([1, 2], {2: 4})])
def test_what_has_come_can_not_be_cancelled(lines: list[int], came: dict[int, int]) -> None:
    """It goes back by a return; a line named with others spoils the whole word, so that nothing is half done."""
    with pytest.raises(Refused) as caught:
        cancelled_pieces(NOW, lines, came)
    assert refusal(caught) == "nothing-to-cancel"


def test_cancelling_twice_is_told() -> None:
    """The line, and the whole order."""
    with pytest.raises(Refused, match=r"line 1 .* is cancelled"):
        cancelled_pieces(FIRST_GONE, [1], {})
    with pytest.raises(Refused, match="nothing of order"):
        cancelled_pieces(ALL_GONE, [], {})


def test_changes_are_counted_without_confirmations() -> None:
    """The supplier's word is no change of ours."""
    change, cancel = event("changed", LineEvent(line=2, pieces=2)), event("cancelled", LineEvent(line=1, pieces=0))
    assert changes_of(order_now(order(), (event("confirmed"), change, cancel))) == (change, cancel)


@given(some.dictionaries(some.integers(1, 2), some.integers(-2, 12), min_size=1), some.integers(0, 12))
def test_no_change_ever_passes_the_yes_or_what_came(pieces: dict[int, int], came: int) -> None:
    """Whatever is asked: what is taken lies between what came and what is approved, in whole packs."""
    approved = {1: 1, 2: 4}
    try:
        said = changed_pieces(NOW, pieces, approved, {2: came}, {})
    except Refused:
        return
    for one in said:
        assert one.pieces is not None and 1 <= one.pieces <= approved[one.line]
        if one.line == 2:
            assert one.pieces >= came and (one.pieces % 2 == 0 or one.pieces == came)


def test_a_price_of_nothing_is_asked_about() -> None:
    """A slip of the hand, or a blank that was meant: kept only with words why."""
    free = LineEvent(line=1, unit_price=Decimal(0))
    with pytest.raises(Refused, match="is confirmed at a price of 0"):
        check_confirmed(NOW, [free], " ")
    assert check_confirmed(NOW, [free], "a gift for the last one that broke") == (free,)
