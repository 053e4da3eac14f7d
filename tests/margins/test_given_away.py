"""Extras given away and discounts in the margins: named, in the sums to the cent, and never told twice."""

from datetime import datetime
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.bill import Bill, GivenAway, Off
from sourcing.basics.margin import JobMargin
from sourcing.basics.margin_facts import BillFacts, JobFacts
from sourcing.basics.money import Money, from_minor
from sourcing.basics.quote import Quote
from sourcing.basics.value import changed, from_json, to_json
from sourcing.margins.bought import book_of
from sourcing.margins.groups import counted, grouped, low_lines, named_leaks
from sourcing.margins.job_lines import job_lines
from sourcing.margins.job_margin import OwnersRules, job_margin
from sourcing.margins.names import CHARGES, COUNTER, GIVEN_AWAY, NOT_BILLED
from sourcing.quoting.off import less_off
from tests.builders import usd
from tests.margins.facts import (
    bought,
    charge,
    document,
    facts,
    freight,
    order,
    plain,
    purchase,
    quote,
    quoted,
    receipt,
    whole_bill,
)

BELT = quoted("1", "177.66", "126.90", "14.95", freight=usd("14.95"), hours=Decimal("1.5"), labour_price=usd("144.00"))
ORDER = order(bought(1, "1", "126.90", "14.95"), charges=[charge("freight", "14.95")])
CAME = purchase(ORDER, receipt(ORDER, freight="14.95"))
RULES = OwnersRules(floor_percent=Decimal(10), technician_cost=Decimal(40))


def extra(cost: str = "1.20", price: str | None = "3.00", what: str = "cable clip") -> GivenAway:
    """An extra given away on the job."""
    return GivenAway(
        job="2026-0001", what=what, cost=usd(cost), price=None if price is None else usd(price), words="it broke",
        at=datetime(2026, 3, 9, 15, 0), who="Piet Halloway-Rusk",
    )  # fmt: skip


def billed(of: Quote, *amounts: tuple[str, str]) -> BillFacts:
    """The bill of all lines with so much off these, as margins read it."""
    lines, off = less_off(of.lines, Off(amounts=tuple((at, Decimal(one)) for at, one in amounts), words="said"), of.job)
    bill: Bill = changed(whole_bill(of, *lines), off=off, total=document(lines))
    return from_json(to_json(bill), BillFacts)


def made(job: JobFacts) -> JobMargin:
    """Its margin, the belt ordered and here."""
    return job_margin(job, book_of([CAME], "USD"), RULES)


def leaks(found: JobMargin) -> dict[tuple[str, str, str], Money]:
    """Amount by name, line and where it stands."""
    return {(one.name, one.label, one.when): one.amount for one in found.leaks}


def check_bridge(found: JobMargin) -> None:
    """Quoted plus every step is received, to the cent."""
    assert found.bridge is not None
    moved = sum((step.amount.amount for step in found.bridge.steps), Decimal(0))
    assert found.bridge.start.earned.amount + moved == found.bridge.end.earned.amount


JOB = facts(quote(BELT, freight("2", "14.95")))


def test_an_extra_given_away_is_a_leak_of_its_cost() -> None:
    """The price never charged stands in the words, apart; the belt's own margin does not move."""
    before, found = made(JOB), made(changed(JOB, given_away=(extra(),)))
    assert leaks(found) == {(GIVEN_AWAY, "extra 1", "after the quote"): usd("1.20")}
    assert found.leaks[0].why == (
        "cable clip, cost 1.20, fitted without a yes and never billed; price never charged 3.00"
    )
    assert found.lines[:2] == before.lines and found.lines[2].title == "cable clip"
    assert [stage for stage, _ in found.parts] == ["quoted", "ordered", "received"]
    parts, whole, old = dict(found.parts), dict(found.whole), dict(before.whole)
    assert parts["quoted"] == dict(before.parts)["quoted"]
    assert parts["received"].earned == dict(before.parts)["received"].earned - usd("1.20")
    assert whole["received"].earned == old["received"].earned - usd("1.20")
    assert found.left is not None and before.left is not None and found.left == before.left - usd("1.20")
    assert "cable clip: given away at a cost of 1.20 USD" in found.notes[0]
    check_bridge(found)


def test_a_price_that_nobody_said_is_not_nothing() -> None:
    found = made(changed(JOB, given_away=(extra(price=None),)))
    assert found.leaks[0].why.endswith("price not known")


def test_an_extra_is_never_under_the_floor_and_keeps_no_stage_waiting() -> None:
    """Lines under the floor are prices to look at; and a job of which nothing is ordered has not 'ordered' one."""
    job = changed(JOB, given_away=(extra(),))
    ready = counted(job_lines(job, book_of([CAME], "USD")), {"2026-0001": Decimal(90)})
    assert [low.label for low in low_lines(ready, {"2026-0001": Decimal(90)}, "USD")] == ["1"]
    waiting = job_margin(job, book_of([], "USD"), RULES)
    assert [stage for stage, _ in waiting.parts] == ["quoted"]
    assert not any("lines ordered" in note and note.startswith("2 of 3") for note in waiting.notes)


def test_an_extra_in_another_currency_is_told_and_not_counted() -> None:
    abroad = changed(extra(), cost=Money(amount=Decimal("1.20"), currency="EUR"), price=None)
    found = made(changed(JOB, given_away=(abroad,)))
    assert found.leaks == () and "in another currency: not counted" in found.notes[0]


def test_a_discount_on_parts_is_the_step_between_quoted_and_billed() -> None:
    """5.00 off the belt, in the line's price on the bill."""
    of = quote(BELT, freight("2", "14.95"))
    found = made(facts(of, billed=billed(of, ("1", "5.00"))))
    assert leaks(found) == {(COUNTER, "1", "after the quote"): usd("5.00")}
    check_bridge(found)


def test_a_discount_on_labour_is_told_beside_the_margin_on_parts() -> None:
    """200.00 off: 177.66 off the belt, 22.34 off labour. In all 200.00, and the whole job is down by as much."""
    of = quote(BELT, freight("2", "14.95"))
    before, found = made(facts(of, billed=billed(of))), made(facts(of, billed=billed(of, ("1", "200.00"))))
    assert leaks(found) == {
        (COUNTER, "1", "after the quote"): usd("177.66"),
        (COUNTER, "1", "beside the margin"): usd("22.34"),
    }
    assert dict(found.whole)["received"].earned == dict(before.whole)["received"].earned - usd("200.00")
    assert found.bridge is not None and found.left == found.bridge.end.earned
    check_bridge(found)


def test_a_discount_on_a_line_of_labour_alone_is_told() -> None:
    """It has no margin on parts, so it gets a row of nothing with its leak."""
    of = quote(BELT, freight("2", "14.95"), plain("3", title="Clean", hours=Decimal(1), labour_price=usd("96.00")))
    found = made(facts(of, billed=billed(of, ("3", "6.00"))))
    assert leaks(found) == {(COUNTER, "3", "beside the margin"): usd("6.00")}
    assert found.lines[-1].title == "Clean"
    check_bridge(found)


def test_freight_taken_off_at_the_counter_is_not_told_twice() -> None:
    """It was billed as quoted and then taken off: a discount, and no freight that nobody billed."""
    of = quote(BELT, freight("2", "14.95"))
    found = made(facts(of, billed=billed(of, ("2", "14.95"))))
    assert leaks(found) == {(COUNTER, "2", "after the quote"): usd("14.95")}
    left_off = from_json(to_json(whole_bill(of, BELT)), BillFacts)
    assert NOT_BILLED in {one.name for one in made(facts(of, billed=left_off)).leaks}
    check_bridge(found)


def test_names_that_were_there_before_stay() -> None:
    """Nothing given away and nothing taken off changes nothing."""
    assert made(JOB).leaks == () and CHARGES not in {one.name for one in made(JOB).leaks}


@given(
    costs=st.lists(st.integers(1, 5_000), max_size=4),
    off=st.lists(st.integers(0, 32_166), min_size=1, max_size=1),
    freight_off=st.integers(0, 1_495),
)
def test_given_away_and_taken_off_add_up_in_every_sum(costs: list[int], off: list[int], freight_off: int) -> None:
    """The bridge closes, the leaks are what was given, and the groups come to the same as the job."""
    of = quote(BELT, freight("2", "14.95"))
    amounts = [("1", off[0]), ("2", freight_off)]
    asked = [(label, str(from_minor(cents, "USD").amount)) for label, cents in amounts if cents]
    given_away = tuple(extra(str(from_minor(cost, "USD").amount), what=f"clip {at}") for at, cost in enumerate(costs))
    job = changed(facts(of, billed=billed(of, *asked)), given_away=given_away)
    found = made(job)
    check_bridge(found)
    lost = sum(one.amount.minor() for one in found.leaks)
    assert lost == sum(costs) + sum(cents for _, cents in amounts)
    ready = counted(job_lines(job, book_of([CAME], "USD")), {"2026-0001": Decimal(10)})
    whole = grouped(ready, "supplier", {}, "USD").whole
    assert found.bridge is not None and whole.known.earned == found.bridge.end.earned
    assert whole.leaked.minor() == lost == sum(one.amount.minor() for one in named_leaks(ready, "USD"))
