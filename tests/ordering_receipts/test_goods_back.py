"""Old parts and goods on their way back: what waits and until when, which step can follow, what should come for it."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.claim import GoodsBackOpen
from sourcing.basics.order import GoodsBack, Receipt
from sourcing.basics.problem import Refused
from sourcing.basics.terms import CoreReturn, Returns, Terms
from sourcing.basics.value import changed
from sourcing.ordering.goods_back import Kind, goods_back_open, refuse_step, standing
from sourcing.ordering.receiving import LineCame
from tests.builders import terms, usd
from tests.ordering_receipts.goods import back, bought, came, cancelled, now_of

STARTER = {3: LineCame(pieces=1)}
STATED = terms(
    "stonegarth",
    core_return=CoreReturn(within_days=30),
    return_terms=Returns(returnable=True, restocking_percent=Decimal(15), within_days=14),
)


def waiting(receipts: list[Receipt], *steps: GoodsBack, by: Terms | None = STATED) -> tuple[GoodsBackOpen, ...]:
    """What waits on the order."""
    return goods_back_open([bought()], receipts, steps, {"stonegarth": by} if by else {})


def refused_as(receipts: list[Receipt], step: GoodsBack, *before: GoodsBack) -> str:
    """The kind of problem the step is refused with; blank where it can follow."""
    kind: Kind = step.kind
    try:
        refuse_step(standing(now_of(), step.line, kind, receipts, before), step)
    except Refused as refusal:
        return refusal.problems[0].code
    return ""


def test_an_old_part_waits_from_the_day_the_new_one_came() -> None:
    """Thirty days from 4 March; 25.00 to come back."""
    (one,) = waiting([came(now_of(), "D1", STARTER)])
    assert (one.kind, one.waits, one.pieces, one.number) == ("core", "to be sent", 1, "NW-60031")
    assert (one.since, one.due, one.expected) == (date(2026, 3, 4), date(2026, 4, 3), usd("25.00"))


def test_without_terms_no_last_day_is_made_up() -> None:
    assert waiting([came(now_of(), "D1", STARTER)], by=None)[0].due is None
    assert waiting([came(now_of(), "D1", STARTER)], by=terms("stonegarth"))[0].due is None


def test_no_old_part_waits_where_the_paper_charged_none() -> None:
    now = now_of()
    assert not waiting([came(now, "D1", {1: LineCame(pieces=2), 3: LineCame(pieces=1, core=Decimal(0))})])
    assert not waiting([came(now, "D1", {3: LineCame(pieces=1, damaged=1)})], back(3, "goods", "sent"))[1:]


def test_sent_waits_for_credit_and_credited_waits_for_nothing() -> None:
    receipts = [came(now_of(), "D1", STARTER)]
    (one,) = waiting(receipts, back(3, "core", "sent"))
    assert (one.waits, one.since, one.due, one.expected) == ("for credit", date(2026, 3, 6), None, usd("25.00"))
    assert not waiting(receipts, back(3, "core", "sent"), back(3, "core", "credited", credit=usd("25.00")))
    assert not waiting(receipts, back(3, "core", "sent"), back(3, "core", "refused"))
    assert not waiting(receipts, back(3, "core", "lost"))
    assert not waiting(receipts, back(3, "core", "sent"), back(3, "core", "lost"))


def test_pieces_at_fault_wait_to_go_back_at_what_was_charged_for_them() -> None:
    """One of four damaged, one under another number, and one more than the two ordered is one of the good ones."""
    lines = {1: LineCame(pieces=5, damaged=1, number="X-1", under_number=1, came="another part")}
    found = waiting([came(now_of(), "D1", lines)])
    assert [(one.pieces, one.number, one.expected, one.fee) for one in found] == [
        (1, "NW-77120", usd("10.00"), None), (1, "X-1", usd("10.00"), None), (1, "NW-77120", usd("10.00"), None)
    ]  # fmt: skip
    assert {one.due for one in found} == {date(2026, 3, 18)}
    assert [one.why for one in found][1] == "came instead of NW-77120 on paper D1: another part"


def test_what_was_not_charged_brings_nothing_back() -> None:
    (one,) = waiting([came(now_of(), "D1", {1: LineCame(pieces=3, on_paper=2)})])
    assert one.expected == usd("0.00") and one.why == "more than ordered, on paper D1"


def test_what_is_kept_beyond_the_order_waits_for_nothing() -> None:
    assert not waiting([came(now_of(), "D1", {1: LineCame(pieces=3, keeps_more=True)})])


def test_good_pieces_go_back_only_if_somebody_sends_them_and_less_the_fee() -> None:
    """15 % of 10.00 stays with the supplier."""
    receipts = [came(now_of(), "D1", {1: LineCame(pieces=2)})]
    assert not waiting(receipts)
    (one,) = waiting(receipts, back(1, "goods", "sent"))
    assert (one.expected, one.fee) == (usd("8.50"), usd("1.50"))
    silent = terms("stonegarth")
    assert waiting(receipts, back(1, "goods", "sent"), by=silent)[0].expected is None


def test_what_is_at_fault_later_is_not_what_was_sent_before() -> None:
    """A good piece was sent back on 6 March; the damaged one that came on 10 March still waits."""
    now = now_of()
    late = changed(came(now, "D2", {1: LineCame(pieces=1, damaged=1)}), at=came(now, "D1", STARTER).at.replace(day=10))
    found = waiting([came(now, "D1", {1: LineCame(pieces=2)}), late], back(1, "goods", "sent"))
    assert [(one.waits, one.expected) for one in found] == [("to be sent", usd("10.00")), ("for credit", usd("8.50"))]


def test_the_earliest_last_day_stands_first_and_what_has_none_last() -> None:
    now = now_of()
    lines = {1: LineCame(pieces=2, damaged=1), 3: LineCame(pieces=1)}
    found = waiting([came(now, "D1", lines)], back(1, "goods", "sent"))
    assert [(one.kind, one.waits) for one in found] == [("core", "to be sent"), ("goods", "for credit")]
    assert [one.kind for one in waiting([came(now, "D1", lines)])] == ["goods", "core"]


def test_a_cancelled_piece_that_comes_all_the_same_goes_back() -> None:
    """One of two was cancelled after the first came; the second is more than is wanted."""
    now = now_of()
    receipts = [came(now, "D1", {1: LineCame(pieces=1)}), came(now, "D2", {1: LineCame(pieces=1)})]
    one_left = cancelled(1)
    event = changed(one_left, lines=(changed(one_left.lines[0], pieces=1),))
    (one,) = goods_back_open([bought()], receipts, (), {"stonegarth": STATED}, [event])
    assert (one.pieces, one.why) == (1, "more than ordered, on paper D2")


@pytest.mark.parametrize(
    ("step", "before", "code"),
    [
        (back(3, "core", "sent", 2), [], "back-more-than-came"),
        (back(3, "core", "sent"), [back(3, "core", "sent")], "back-more-than-came"),
        (back(3, "core", "credited", credit=usd("25.00")), [], "credit-without-sending"),
        (back(3, "core", "refused"), [], "credit-without-sending"),
        (back(3, "core", "refused", 2), [back(3, "core", "sent")], "credit-without-sending"),
        (back(3, "core", "credited"), [back(3, "core", "sent")], "credit-not-said"),
        (back(3, "core", "lost"), [back(3, "core", "lost")], "back-more-than-came"),
        (back(3, "core", "sent", 0), [], "pieces-missing"),
        (back(1, "core", "sent"), [], "no-old-part"),
        (back(1, "goods", "sent", 3), [], "back-more-than-came"),
        (back(1, "goods", "lost"), [], "back-more-than-came"),
        (back(2, "goods", "sent"), [], "back-more-than-came"),
        (back(1, "goods", "sent", credit=usd("1.00")), [], "amount-with-wrong-step"),
        (back(1, "goods", "sent", fee=usd("1.00")), [], "amount-with-wrong-step"),
        (back(1, "goods", "refused", freight=usd("1.00")), [back(1, "goods", "sent")], "amount-with-wrong-step"),
        (back(1, "goods", "sent", freight=usd("-1.00")), [], "back-below-zero"),
        (back(3, "core", "sent"), [], ""),
        (back(1, "goods", "sent", 2, freight=usd("4.00")), [], ""),
        (back(1, "goods", "credited", credit=usd("0.00")), [back(1, "goods", "sent")], ""),
    ],
)
def test_a_step_that_can_not_follow_is_refused(step: GoodsBack, before: list[GoodsBack], code: str) -> None:
    """Two belts and a starter with an old part came; no keepers."""
    receipts = [came(now_of(), "D1", {1: LineCame(pieces=2), 3: LineCame(pieces=1)})]
    assert refused_as(receipts, step, *before) == code


STEPS = st.tuples(st.sampled_from(["sent", "credited", "refused", "lost"]), st.integers(1, 4))


@given(st.lists(st.tuples(st.integers(1, 4), st.integers(0, 4)), min_size=1, max_size=4), st.lists(STEPS, max_size=10))
def test_every_piece_is_in_one_place(deliveries: list[tuple[int, int]], steps: list[Any]) -> None:
    """Whatever is recorded and not refused: sent, given up and unsent make all that came; no more settled than sent."""
    now = now_of()
    receipts = [
        came(now, f"D{at}", {1: LineCame(pieces=pieces, damaged=min(damaged, pieces))})
        for at, (pieces, damaged) in enumerate(deliveries)
    ]
    done: list[GoodsBack] = []
    for word, pieces in steps:
        step = back(1, "goods", word, pieces, credit=usd("1.00") if word == "credited" else None)
        if not refused_as(receipts, step, *done):
            done.append(step)
    found = standing(now, 1, "goods", receipts, done)
    every = sum(lot.pieces for pile in (found.must_go, found.may_go) for lot in pile.lots)
    assert every == sum(pieces for pieces, _ in deliveries)
    for pile in (found.must_go, found.may_go):
        assert pile.sent + pile.given_up + pile.unsent == sum(lot.pieces for lot in pile.lots)
        assert 0 <= pile.settled <= pile.sent
        assert sum(lot.pieces for lot in pile.waiting()) == pile.unsent
        assert sum(lot.pieces for lot in pile.on_the_way()) == pile.uncredited
    sent = sum(step.pieces for step in done if step.step == "sent")
    assert found.must_go.sent + found.may_go.sent == sent
