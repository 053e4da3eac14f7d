"""What may stand on a bill, and what it comes to: to the cent, never above what was approved or said."""

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.bill import Bill, LeftOut
from sourcing.basics.problem import Refused
from sourcing.basics.settings import Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.bill import Billed, make_bill, offered_with_tax
from sourcing.quoting.totals import total_of
from tests.builders import usd
from tests.quoting.bill_values import FRIDAY, LINES, MONDAY, RULES, answer, deposit, made, quote


def bill(of: Billed) -> Bill:
    """The bill written on Friday."""
    return make_bill(of, "B-2026-0001", FRIDAY, "Oona Brandeth")


def codes(of: Billed) -> list[tuple[str, str]]:
    """What stands in the way: code and sentence."""
    with pytest.raises(Refused) as caught:
        bill(of)
    return [(one.code, one.what) for one in caught.value.problems]


def test_the_worked_day_to_the_cent() -> None:
    """Without C: tax 13.84 once on the document and not 13.85, total 413.19; the freight of A and B stays whole."""
    found = bill(made())
    assert [one.label for one in found.lines] == ["1", "2", "A", "B", "D"]
    assert (found.total.before_tax, found.total.taxes[0].amount) == (usd("399.35"), usd("13.84"))
    assert (found.total.total, found.due) == (usd("413.19"), usd("413.19"))
    assert found.total.taxes[0].taxable == usd("197.75")


def test_a_declined_line_stays_with_the_price_offered_and_the_customers_word() -> None:
    """147.20 before tax, and 156.54 as the difference of two totals.

    With C: labour 192.00, supplies 9.60 (2.40 more), tax on 218.15 is 15.27 (6.94 more): 147.20 + 2.40 + 6.94.
    """
    (found,) = bill(made()).declined
    assert (found.label, found.offered, found.offered_with_tax) == ("C", usd("147.20"), usd("156.54"))
    assert found.words == "Leave the bar for the spring."
    assert found.if_declined == "The housing wears until it is replaced."


def test_an_agreed_line_declined_is_offered_at_the_difference_of_two_totals() -> None:
    """278.48 less 9.95 and 0.70 tax on it; 278.48 less 253.00, supplies 7.20 and tax 7.63."""
    found = bill(made(no="12C"))
    assert [(one.label, one.offered_with_tax) for one in found.declined][:2] == [
        ("1", usd("267.83")),
        ("2", usd("10.65")),
    ]


def test_who_approved_what_stands_on_the_bill() -> None:
    """An earlier yes that carried over keeps its own day and revision."""
    one = answer(LINES[0], revision=1, at=MONDAY, how="in person", contact="")
    of = made()
    found = bill(changed(of, holding={**of.holding, "1": one}, answered={**of.answered, 1: quote(revision=1)}))
    first, second = found.approvals[:2]
    assert (first.label, first.revision, first.at, first.how) == ("1", 1, MONDAY, "in person")
    assert (second.revision, second.contact, second.taken_by) == (2, "555-0142", "Piet Halloway-Rusk")
    assert [one.label for one in found.approvals] == [one.label for one in found.lines]


def test_the_owners_side_is_not_on_it() -> None:
    """Whatever stood behind a line."""
    assert all(one.behind is None for one in bill(made()).lines)


@pytest.mark.parametrize("case", ["no answer", "withdrawn", "replaced"])
def test_a_line_without_an_answer_that_holds_stops_the_bill(case: str) -> None:
    """Silence is no yes, and a yes taken back is silence."""
    of = made()
    holding = dict(of.holding)
    if case == "no answer":
        del holding["A"]
    else:
        holding["A"] = changed(holding["A"], holds=case)
    assert codes(changed(of, holding=holding)) == [
        ("not-approved-for-bill", "line A of job 2026-0001 is waiting, so it can't be billed")
    ]


def test_every_line_in_the_way_is_told_at_once() -> None:
    """One look, everything to do."""
    of = made()
    holding = {label: one for label, one in of.holding.items() if label not in "AB"}
    missing = {"1": "its part was never ordered"}
    assert [code for code, _ in codes(changed(of, holding=holding, missing=missing))] == [
        "not-received-for-bill", "not-approved-for-bill", "not-approved-for-bill", "freight-without-goods",
    ]  # fmt: skip


def test_a_declined_line_needs_no_goods() -> None:
    """What is missing for C does not matter."""
    assert bill(made(missing={"C": "its part was never ordered"})).due == usd("413.19")


def dearer(by: str, tolerance: Tolerance) -> Billed:
    """The belt's line costs more in the newest revision than in the one that was approved."""
    belt = changed(LINES[0], unit_price=usd("109.00") + usd(by), parts_price=usd("109.00") + usd(by))
    newest = quote(belt, *LINES[1:], revision=3, tolerance=tolerance)
    holding = {one.label: answer(one, "declined" if one.label == "C" else "approved") for one in LINES}
    return made(newest, holding=holding, answered={2: quote()}, told=usd("413.19"))


PERCENT, AMOUNT = Tolerance(percent=Decimal(2)), Tolerance(amount=Decimal("5.00"))
BOTH = Tolerance(percent=Decimal(2), amount=Decimal("5.00"))


@pytest.mark.parametrize(
    ("tolerance", "by", "allowed"),
    [
        (Tolerance(), "0.01", False),
        (Tolerance(), "0.00", True),
        (PERCENT, "5.06", True),  # 2 % of the line's 253.00
        (PERCENT, "5.07", False),
        (AMOUNT, "5.00", True),
        (AMOUNT, "5.01", False),
        (BOTH, "5.00", True),  # the smaller of the two
        (BOTH, "5.01", False),
    ],
)
def test_never_above_what_was_approved_but_for_the_shops_tolerance(
    tolerance: Tolerance, by: str, allowed: bool
) -> None:
    """Zero unless the shop says so; to the cent."""
    of = dearer(by, tolerance)
    if allowed:
        assert bill(of).lines[0].price == usd("253.00") + usd(by)
    else:
        assert [code for code, _ in codes(of)] == ["above-approved"]


def test_a_lower_price_is_billed_lower() -> None:
    """The newest paper says less: less is billed."""
    assert bill(dearer("-9.00", Tolerance())).lines[0].price == usd("244.00")


def test_a_fee_that_rose_after_the_yes_is_no_way_around_it() -> None:
    """No line is dearer, yet the total is: supplies at 6 % come to 11.52 and not the 9.60 the customer was told."""
    assert RULES.supplies is not None
    rules = changed(RULES, supplies=changed(RULES.supplies, percent_of_labour=Decimal(6)))
    of = made(quote(rules=rules), told=usd("413.19"))
    assert codes(of) == [
        ("bill-above-told", "the bill of job 2026-0001 would come to 415.11 USD; the customer was told 413.19 USD")
    ]
    assert bill(changed(of, told=usd("415.11"))).due == usd("415.11")
    assert bill(changed(of, told=None)).due == usd("415.11"), "records from before totals were kept"


def test_goods_that_did_not_come_are_not_billed() -> None:
    """What is missing is said."""
    assert codes(made(missing={"B": "nothing good has come on PO-2026-0002"})) == [
        ("not-received-for-bill", "line B of job 2026-0001 can't be billed: nothing good has come on PO-2026-0002")
    ]


def test_another_number_that_came_needs_the_customers_yes() -> None:
    """The same part by the table is not the part she said yes to; with her yes the bill says what was fitted."""
    assert codes(made(other_number={"1": "OV-20417"})) == [
        (
            "other-number-for-bill",
            "line 1 of job 2026-0001 can't be billed: OV-20417 came, the customer said yes to Norrowby Belt",
        )
    ]
    found = bill(made(agreed_number={"1": "OV-20417"}))
    assert found.lines[0].number == "OV-20417"
    assert found.notes == ("Line 1: you agreed to OV-20417 in place of Norrowby Belt.",)


def test_a_line_left_out_is_recorded_and_not_billed() -> None:
    """413.19 without B: its 57.45, 0.96 of supplies and its tax 2.68 (7 % of 159.50 is 11.165, so 11.17 - 13.84)."""
    left = LeftOut(labels=("B",), words="The supplier has none before summer.")
    found = bill(made(missing={"B": "its part was never ordered"}, left_out=left, told=usd("413.19")))
    assert [one.label for one in found.lines] == ["1", "2", "A", "D"]
    assert [(one.label, one.title, one.words) for one in found.not_done] == [
        ("B", "Idler", "The supplier has none before summer.")
    ]
    assert found.due == usd("413.19") - usd("57.45") - usd("0.96") - usd("2.67")


def test_what_can_not_be_left_out() -> None:
    """Without a reason, a line that is not there, a line that is declined."""
    assert codes(made(left_out=LeftOut(labels=("B",), words=" ")))[0][0] == "not-done-why"
    assert codes(made(left_out=LeftOut(labels=("X",), words="gone")))[0][0] == "not-done-unknown"
    assert codes(made(left_out=LeftOut(labels=("C",), words="gone")))[0][0] == "not-done-unknown"


def test_a_line_without_an_answer_is_left_out_as_that_and_needs_no_reason() -> None:
    """It is billed no more than before, and stands on the paper neither as approved nor as declined."""
    of = made(left_out=LeftOut(labels=("B",)))
    waiting = {label: one for label, one in of.holding.items() if label != "B"}
    found = bill(changed(of, holding=waiting))
    assert [line.label for line in found.lines] == ["1", "2", "A", "D"]
    assert [(one.label, one.answered) for one in found.not_done] == [("B", False)]
    assert "B" not in [one.label for one in found.declined]


def test_freight_is_not_billed_for_nothing() -> None:
    """With A and B left out the freight of the extra parts has nothing to carry; with one of them it stays whole."""
    both = LeftOut(labels=("A", "B"), words="they came broken")
    assert codes(made(left_out=both)) == [
        (
            "freight-without-goods",
            "line D of job 2026-0001 is freight, and no line with a part that it was for is billed",
        )
    ]
    found = bill(made(left_out=LeftOut(labels=("A", "B", "D"), words="they came broken")))
    assert found.due == usd("278.48")


def test_nothing_approved_makes_a_bill_of_nothing() -> None:
    """The machine goes back: no fee is charged, the declined work stays on record, a deposit is owed."""
    found = bill(made(no="12ABCD", deposits=(deposit("40.00"),)))
    assert (found.lines, found.total.total, found.due) == ((), usd("0.00"), usd("-40.00"))
    assert len(found.declined) == 6


@pytest.mark.parametrize(
    ("amounts", "due"),
    [
        ((), "413.19"),
        (("113.10",), "300.09"),
        (("113.10", "-13.10"), "313.19"),
        (("413.19",), "0.00"),
        (("500.00",), "-86.81"),
    ],
)
def test_deposits_come_off(amounts: tuple[str, ...], due: str) -> None:
    """What was given back no longer counts; below zero it is owed to the customer. A deposit bears no tax."""
    found = bill(made(deposits=tuple(map(deposit, amounts))))
    assert (found.due, found.total.total) == (usd(due), usd("413.19"))


def test_an_exempt_customer_pays_no_tax_and_the_bill_says_why() -> None:
    """399.35 and not a cent more."""
    exempt = quote(rules=changed(RULES, tax_exempt=True))
    of = changed(exempt, customer=changed(exempt.customer, tax_exempt=True, exempt_because="Farm certificate 17"))
    found = bill(made(of))
    assert (found.due, found.total.taxes, found.exempt_because) == (usd("399.35"), (), "Farm certificate 17")
    assert found.tax_exempt


@given(
    st.lists(st.sampled_from(["approved", "declined", "waiting"]), min_size=6, max_size=6),
    st.sets(st.sampled_from("12ABCD")),
)
def test_nothing_is_ever_billed_that_was_not_approved(words: list[Any], missing: set[str]) -> None:
    """Whatever was answered and whatever came: a bill holds approved lines whose goods are here, or there is none."""
    newest = quote()
    answers = dict(zip((one.label for one in newest.lines), words, strict=True))
    holding = {one.label: answer(one, answers[one.label]) for one in newest.lines if answers[one.label] != "waiting"}
    of = made(newest, holding=holding, missing=dict.fromkeys(missing, "its part was never ordered"))
    try:
        found = bill(of)
    except Refused:
        return
    assert "waiting" not in words
    assert {one.label for one in found.lines} == {label for label, word in answers.items() if word == "approved"}
    assert not missing & {one.label for one in found.lines}
    assert {one.label for one in found.declined} == {label for label, word in answers.items() if word == "declined"}


@given(st.sampled_from([one.label for one in LINES]))
def test_the_price_offered_is_a_difference_of_two_totals(label: str) -> None:
    """For an add-on beside the agreed lines, for an agreed line among them."""
    of = quote()
    agreed = of.labels("agreed")
    more, less = (
        ((*agreed, label), agreed) if not label.isdigit() else (agreed, [one for one in agreed if one != label])
    )
    assert offered_with_tax(of, label) == total_of(of, more).total - total_of(of, less).total
