"""What must hold of any job: a bridge sums to the cent, every grouping comes to the same, whole numbers are exact."""

import random
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.margin import By
from sourcing.basics.money import from_minor, percent_of, share_out
from sourcing.basics.order import PurchaseOrder, Receipt, ReceiptLine
from sourcing.basics.value import changed
from sourcing.margins.bought import book_of
from sourcing.margins.bridge import bridge
from sourcing.margins.came import as_came, lines_that_came
from sourcing.margins.groups import counted, grouped, low_lines, named_leaks
from sourcing.margins.job_lines import job_lines
from sourcing.margins.job_margin import OwnersRules, job_margin, leaks_of, line_margin
from sourcing.margins.line import LineFigures
from sourcing.margins.minor import minor, part_of, shared
from sourcing.margins.names import NO_LEAKS, NOT_USED, PRICE, SENT_BACK
from sourcing.margins.ordered import as_ordered
from sourcing.ordering.receiving import charged_for
from tests.builders import usd
from tests.margins.facts import (
    JOB,
    bill,
    bought,
    charge,
    facts,
    freight,
    order,
    purchase,
    quote,
    quoted,
    receipt,
    went_back,
)
from tests.margins.many_jobs import many

MONEY = st.integers(0, 50_000).map(lambda cents: f"{Decimal(cents) / 100:.2f}")
PIECES = st.integers(1, 6)


@st.composite
def a_job(draw: st.DrawFn) -> list[LineFigures]:
    """A job of up to four parts and a freight line, bought, received, sent back and billed in any way."""
    count = draw(st.integers(1, 4))
    pieces = [(needed := draw(PIECES), needed + draw(st.integers(0, 3))) for _ in range(count)]
    labels = [draw(st.sampled_from((str(at), chr(64 + at)))) for at in range(1, count + 1)]
    parts = [
        quoted(label, draw(MONEY), draw(MONEY), draw(MONEY), quantity=needed)
        for label, (needed, _) in zip(labels, pieces, strict=True)
    ]
    of = quote(*parts, freight("9", draw(MONEY)))
    rate = draw(st.sampled_from((Decimal(1), Decimal("0.7313"))))
    one = _order(draw, labels, pieces, rate)
    came = [_receipt(draw, one, paper, rate) for paper in range(draw(st.integers(0, 3)))]
    back = []
    if draw(st.booleans()):
        back.append(went_back(draw(st.sampled_from(("credited", "refused", "lost"))), pieces=draw(PIECES)))
    cancelled = {at: 0 for at in range(1, count + 1) if draw(st.integers(0, 5)) == 0}
    billed = bill(of, *[changed(line, parts_price=usd(draw(MONEY))) for line in of.lines if draw(st.booleans())])
    taken = [line.label for line in of.lines if draw(st.integers(0, 4))]
    job = facts(of, taken, billed if draw(st.booleans()) else None)
    return job_lines(job, book_of([purchase(one, *came, back=back, pieces=cancelled)], "USD"))


def _order(draw: st.DrawFn, labels: list[str], pieces: list[tuple[int, int]], rate: Decimal) -> PurchaseOrder:
    lines = []
    for at, (label, (needed, ordered)) in enumerate(zip(labels, pieces, strict=True), 1):
        line = bought(at, label, draw(MONEY), draw(MONEY), needed, ordered)
        there = changed(line.goods, amount=(line.goods.amount / rate).quantize(Decimal("0.01")), currency="CAD")
        lines.append(changed(line, goods=there if rate != 1 else line.goods))
    charges = [charge("freight", draw(MONEY)), charge("pick-up", draw(MONEY)), charge("handling", draw(MONEY))]
    fields = {"currency": "USD" if rate == 1 else "CAD", "rate": draw(st.sampled_from((rate, None)))}
    discount = draw(st.sampled_from((Decimal(0), Decimal("2.5"))))
    return order(*lines, charges=charges, discount_percent=discount, **fields)


def _receipt(draw: st.DrawFn, one: PurchaseOrder, paper: int, rate: Decimal) -> Receipt:
    lines = [
        ReceiptLine(line=line.line, quantity=(many := draw(st.integers(0, 8))), unit_price=Decimal(draw(MONEY)),
                    damaged=draw(st.integers(0, many)), on_paper=draw(st.sampled_from((None, many, many + 1))))
        for line in one.lines
    ]  # fmt: skip
    return receipt(
        one, lines, draw(MONEY), paper=f"DN-{paper}", rate=rate * draw(st.sampled_from((Decimal(1), Decimal("1.1"))))
    )


@settings(max_examples=300, deadline=None)
@given(a_job())
def test_a_bridge_sums_to_the_cent(lines: list[LineFigures]) -> None:
    """Line by line and for the job, whatever happened: quoted, plus every step, is what is earned by now."""
    for line in lines:
        assert line.price - line.cost + sum(step.amount for step in line.steps) == line.earned
    found = bridge(lines, "USD")
    if found is not None:
        assert found.start.earned.amount + sum(step.amount.amount for step in found.steps) == found.end.earned.amount
        assert not found.steps or found.steps[-1].after == found.end.earned


def _back_of_unused(line: LineFigures) -> int:
    paid = [step for step in line.steps if step.amount < 0 and step.name in {*NOT_USED, PRICE}]
    if not any(step.name in NOT_USED for step in paid):
        return 0
    back = sum(step.amount for step in line.steps if step.name == SENT_BACK)
    return min(back, -sum(step.amount for step in paid))


@settings(max_examples=200, deadline=None)
@given(a_job())
def test_losses_after_the_quote_are_the_steps_below_nothing(lines: list[LineFigures]) -> None:
    """But for earnings that fell away with work not done, and what of a part not used went back for credit. Shares of
    freight give as much as they take."""
    lost = sum(leak.amount.amount for leak in leaks_of(lines, "USD") if leak.when == "after the quote")
    fell = [step.amount for line in lines for step in line.steps if step.amount < 0 and step.name not in NO_LEAKS]
    assert lost == from_minor(-sum(fell) - sum(_back_of_unused(line) for line in lines), "USD").amount
    assert sum(line.freight_share for line in lines) == 0
    assert all(leak.amount.amount > 0 for leak in leaks_of(lines, "USD"))


@settings(max_examples=200, deadline=None)
@given(a_job())
def test_a_line_is_judged_alike_wherever_it_is_looked_at(lines: list[LineFigures]) -> None:
    """Freight billed apart: by line, under the floor, and in the job's own table, with nothing lost in all."""
    ready, floors = counted(lines, {JOB: Decimal(30)}), {JOB: Decimal(30)}
    by_line = {group.name: group for group in grouped(ready, "line", {}, "USD").groups}
    made = {line.label: line_margin(line, OwnersRules(floor_percent=Decimal(30)), "USD") for line in lines}
    low = low_lines(ready, floors, "USD")
    assert [one.margin for one in low] == [made[one.label].stages[-1][1] for one in low]
    assert {one.label for one in low} == {label for label, one in made.items() if one.below_floor}
    for label, one in made.items():
        group = by_line[f"{JOB} line {label}"]
        for stage, figure in one.stages:
            assert getattr(group, stage) == figure
        if one.stages[-1][0] == "received":
            assert group.known == group.received
    assert grouped(ready, "line", {}, "USD").whole.known == grouped(ready, "job", {}, "USD").whole.known


def test_every_grouping_comes_to_the_same() -> None:
    """By job, supplier, category, month or line: the same cents, and the same as the jobs one by one."""
    made = list(many(40, 8))
    book = book_of([one for _, some in made for one in some], "USD")
    lines = [line for job, _ in made for line in job_lines(job, book)]
    floors = {job.quote.job: Decimal(30) for job, _ in made}
    ready = counted(lines, floors)
    ways: tuple[By, ...] = ("job", "supplier", "category", "month", "line")
    known = []
    for by in ways:
        found = grouped(ready, by, {}, "USD")
        for read in ("quoted", "known", "received", "ordered"):
            whole = getattr(found.whole, read)
            assert sum(getattr(group, read).earned.amount for group in found.groups) == whole.earned.amount
            assert sum(getattr(group, read).price.amount for group in found.months) == whole.price.amount
        known.append(found.whole.known)
        assert sum(group.lines for group in found.groups) == found.whole.lines == len(lines)
        assert sum(group.leaked.amount for group in found.groups) == found.whole.leaked.amount
        assert sum(leak.amount.amount for leak in named_leaks(ready, "USD")) == found.whole.leaked.amount
    assert len(set(known)) == 1
    each = [job_margin(job, book, OwnersRules()).bridge for job, _ in made]
    assert sum(one.end.earned.amount for one in each if one) == found.whole.known.earned.amount
    low = low_lines(ready, floors, "USD")
    assert len(low) == found.whole.under_floor > 0
    assert [one.margin.margin_percent for one in low] == sorted(
        (one.margin.margin_percent for one in low), key=lambda percent: (percent is not None, percent)
    )


@given(st.integers(-10_000, 10_000), st.lists(st.integers(0, 500), max_size=12))
def test_shares_are_those_of_money(amount: int, weights: list[int]) -> None:
    """The same largest remainder, to the cent, as `share_out` gives."""
    assert [from_minor(one, "USD") for one in shared(amount, weights)] == share_out(from_minor(amount, "USD"), weights)


@given(st.integers(-10_000, 10_000), st.integers(0, 99), st.integers(1, 99))
def test_a_part_is_rounded_half_up_as_money_is(amount: int, part: int, whole: int) -> None:
    exact = from_minor(amount, "USD") * Decimal(part)
    hundredths = changed(exact, amount=exact.amount / whole).rounded()
    assert from_minor(part_of(amount, part, whole), "USD") == hundredths
    assert from_minor(part_of(amount, part, 100), "USD") == percent_of(from_minor(amount, "USD"), Decimal(part))


@given(st.data())
def test_a_receipt_charges_what_ordering_says_it_charges(data: st.DataObject) -> None:
    """The same rule in whole minor units: price basis, discount, a price as ordered."""
    dice = random.Random(data.draw(st.integers()))
    line = changed(
        bought(1, "1", "12.34", ordered=3, needed=3),
        price_basis=dice.choice((1, 100)),
        unit_price=Decimal(dice.randrange(10_000)) / 1000,
    )
    one = order(line, discount_percent=Decimal(dice.choice(("0", "2.5", "33.3"))))
    price = dice.choice((line.unit_price, Decimal(dice.randrange(100_000)) / 1000))
    came = ReceiptLine(line=1, quantity=dice.choice((3, 7)), unit_price=price)
    mine = purchase(one, receipt(one, [came]))
    found = as_came(mine, as_ordered(mine, 2, lines_that_came(mine.receipts)), "USD")
    assert found[1].goods == minor(charged_for(one, came, came.charged_pieces).amount, 2)
