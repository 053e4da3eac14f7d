"""What did not come as ordered: each cause once, and all of it together no more than was charged too much."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.landed_cost import CostLine
from sourcing.basics.money import Money, percent_of
from sourcing.basics.order import Came, PaperCharge, Receipt
from sourcing.basics.value import changed
from sourcing.ordering.claims import claimable, claimed, credited, differences, paper_total
from sourcing.ordering.order_now import good_pieces, open_pieces
from sourcing.ordering.receiving import LineCame, goods_at
from tests.builders import usd
from tests.ordering_receipts.goods import back, bought, came, cancelled, codes, confirmed, in_euro, now_of

ALL = {1: LineCame(pieces=2), 2: LineCame(pieces=30), 3: LineCame(pieces=1)}


def test_what_comes_as_ordered_differs_in_nothing() -> None:
    now = now_of()
    assert differences(now, [came(now, "D1", ALL, "14.95", supplier_total=usd("153.45"))]) == ()


@pytest.mark.parametrize(
    ("line", "found"),
    [
        (LineCame(pieces=2, price=Decimal("10.50")), [("price", "1.00")]),
        (LineCame(pieces=2, price=Decimal("9.00")), [("price", "-2.00")]),
        (LineCame(pieces=2, on_paper=3), [("short", "10.00")]),
        (LineCame(pieces=2, on_paper=1), [("short", None)]),
        (LineCame(pieces=2, damaged=1), [("damaged", "10.00"), ("", None)]),
        (LineCame(pieces=2, number="X-1", came="another part"), [("number", "20.00"), ("", None)]),
        (LineCame(pieces=2, number="X-1", came="not wanted", under_number=1), [("number", "10.00"), ("", None)]),
        (LineCame(pieces=2, number="X-1", came="same part"), [("number", None)]),
        (LineCame(pieces=3), [("over", "10.00")]),
        (LineCame(pieces=3, on_paper=2), [("short", None), ("over", "0.00")]),
        (LineCame(pieces=3, keeps_more=True), [("over", None)]),
        # 3 at 12.00 charged, 2 good at 10.00 owed: 16.00, in two causes and not twice.
        (LineCame(pieces=2, on_paper=3, price=Decimal("12.00")), [("price", "6.00"), ("short", "10.00")]),
        (LineCame(pieces=2, damaged=1, price=Decimal("8.00")), [("price", "-4.00"), ("damaged", "8.00"), ("", None)]),
    ],
)
def test_each_cause_of_one_line(line: LineCame, found: list[tuple[str, str | None]]) -> None:
    """Two belts at 10.00 were ordered."""
    now = now_of(bought(lines=bought().lines[:1]))
    assert codes(differences(now, [came(now, "D1", {1: line})])) == found


def test_a_price_per_hundred_and_a_discount_are_rounded_as_the_order_is() -> None:
    """30 at 46.00 per hundred: 13.80, 10 % off 1.38; ordered 13.50 less 1.35. Half up, each once."""
    keepers = changed(bought().lines[1], goods=usd("12.15"))
    now = now_of(bought(lines=(keepers,), discount_percent=Decimal(10)))
    receipt = came(now, "D1", {2: LineCame(pieces=30, price=Decimal("46.00"))})
    assert codes(differences(now, [receipt])) == [("price", "0.27")]


def test_a_price_is_compared_with_the_one_confirmed() -> None:
    now = now_of(None, confirmed(1, "10.60"))
    receipt = came(now, "D1", {1: LineCame(pieces=2, price=Decimal("10.80"))}, "14.95")
    assert codes(differences(now, [receipt]))[0] == ("price", "0.40")


def test_pieces_that_came_over_several_papers_are_over_once() -> None:
    """2 ordered: 1, then 2, then 1: 1 too much on the second paper, 1 on the third."""
    now = now_of(bought(lines=bought().lines[:1]))
    papers = [came(now, f"D{at}", {1: LineCame(pieces=count)}) for at, count in enumerate((1, 2, 1))]
    over = [(one.paper, one.amount) for one in differences(now, papers) if one.kind == "over"]
    assert over == [("D1", usd("10.00")), ("D2", usd("10.00"))]


def test_goods_of_a_cancelled_line_that_are_charged() -> None:
    now = now_of(None, cancelled(2))
    receipt = came(now, "D1", {2: LineCame(pieces=0, on_paper=30)})
    assert codes(differences(now, [receipt]))[0] == ("short", "13.50")


def test_freight_within_the_order_over_two_papers_is_no_difference() -> None:
    """A delivery note without freight and the freight on the second paper: one freight, as ordered."""
    now = now_of()
    papers = [came(now, "D1", {1: LineCame(pieces=2)}), came(now, "D2", {3: LineCame(pieces=1)}, "14.95")]
    assert not [one for one in differences(now, papers) if one.kind == "freight"]


def test_a_second_freight_counts_as_far_as_the_terms_do_not_allow_it() -> None:
    now = now_of()
    papers = [came(now, "D1", {1: LineCame(pieces=2)}, "14.95"), came(now, "D2", {3: LineCame(pieces=1)}, "14.95")]
    for later, beyond in (("0", ["14.95"]), ("9.95", ["5.00"]), ("14.95", [])):
        found = [one for one in differences(now, papers, Decimal(later)) if one.kind == "freight"]
        assert [str(one.amount.amount) for one in found if one.amount] == beyond
    (told,) = [one for one in differences(now, papers) if one.kind == "freight"]
    assert told.paper == "D2" and "flat 14.95 USD per order; no more later" in told.what


def test_the_shops_own_drive_allows_no_freight_on_a_paper() -> None:
    drive = (CostLine(name="Pick-up, miles", kind="pick-up", amount=usd("33.35"), rule="46 miles"),)
    now = now_of(bought(charges=drive))
    found = differences(now, [came(now, "D1", ALL, "5.00")])
    assert codes(found) == [("freight", "5.00")]


def test_charges_the_order_does_not_have() -> None:
    """Handling of 3.00 is in the order once; 5.00 is 2.00 more, and a second time all of it; fuel is nowhere in it."""
    handling = CostLine(name="Handling fee", kind="handling", amount=usd("3.00"), rule="per order")
    now = now_of(bought(charges=(*bought().charges, handling)))
    charges = (PaperCharge(name="Handling", amount=usd("5.00")), PaperCharge(name="Fuel", amount=usd("1.20")))
    first = came(now, "D1", ALL, "14.95", other_charges=charges)
    again = came(now, "D2", {1: LineCame(pieces=0, on_paper=1)}, other_charges=charges[:1])
    found = [one for one in differences(now, [first, again]) if one.kind == "charge"]
    assert [(one.paper, str(one.amount)) for one in found] == [
        ("D1", "2.00 USD"), ("D1", "1.20 USD"), ("D2", "5.00 USD")
    ]  # fmt: skip


def test_a_charge_for_an_old_part_that_was_not_stated() -> None:
    now = now_of()
    lines = {1: LineCame(pieces=2, core=Decimal("8.00")), 3: LineCame(pieces=1, core=Decimal("30.00"))}
    found = [one for one in differences(now, [came(now, "D1", lines)]) if one.kind == "charge"]
    assert [(one.line, one.amount) for one in found] == [(1, usd("8.00")), (3, usd("5.00"))]


def test_a_total_that_its_lines_do_not_come_to_is_asked_about_and_not_claimed() -> None:
    """20.00 + 13.50 + 80.00 goods, 25.00 old part, 14.95 freight: 153.45."""
    now = now_of()
    receipt = came(now, "D1", ALL, "14.95", supplier_total=usd("155.45"))
    assert paper_total(now, receipt) == usd("153.45")
    (one,) = differences(now, [receipt])
    assert (one.kind, one.amount) == ("total", usd("2.00"))
    assert one.what == "paper D1 says 155.45 USD in all, its lines come to 153.45 USD"
    assert claimed([one], "USD") == usd("0.00")


def test_a_currency_that_moved_is_told_and_nobody_is_asked_for_it() -> None:
    now = now_of(in_euro("1.10"))
    found = differences(now, [came(now, "D1", ALL, "14.95", rate=Decimal("1.16"))])
    assert codes(found) == [("rate", None)]
    assert found[0].what == "1 EUR is 1.16 USD on paper D1, 1.10 when ordered"


def test_freight_in_another_currency_is_compared_within_what_rounding_hides() -> None:
    """14.95 EUR is kept as 16.45 USD, which is 14.954 EUR: not a cent of that is anybody's fault."""
    now = now_of(in_euro("1.10"))
    assert not differences(now, [came(now, "D1", ALL, "14.95")])
    assert codes(differences(now, [came(now, "D1", ALL, "16.95")])) == [("freight", "2.00")]


def test_freight_is_not_compared_where_the_orders_rate_was_never_kept() -> None:
    now = now_of(changed(in_euro("1.10"), rate=None))
    assert not differences(now, [came(now, "D1", ALL, "99.00", rate=Decimal("1.10"))])


def test_what_was_given_back_is_off_the_claim_but_never_more_than_it() -> None:
    now = now_of(bought(lines=bought().lines[:1]))
    found = differences(now, [came(now, "D1", {1: LineCame(pieces=2, damaged=1, price=Decimal("11.00"))})])
    assert claimed(found, "USD") == usd("12.00")
    assert credited(found, [back(1, "goods", "credited", credit=usd("6.00"))], "USD") == usd("6.00")
    assert credited(found, [back(1, "goods", "credited", credit=usd("30.00"))], "USD") == usd("10.00")
    assert credited(found, [back(1, "core", "credited", credit=usd("6.00"))], "USD") == usd("0.00")


@st.composite
def lines_that_came(draw: st.DrawFn) -> LineCame:
    """Any line: short, over, damaged, wrong, at any price."""
    pieces = draw(st.integers(0, 9))
    wrong = draw(st.integers(0, pieces))
    kinds: tuple[Came, ...] = ("another part", "not wanted")
    return LineCame(
        pieces=pieces,
        on_paper=draw(st.integers(1 if not pieces else 0, 12)),
        damaged=draw(st.integers(0, pieces - wrong)),
        number="X-1" if wrong else "",
        under_number=wrong or None,
        came=draw(st.sampled_from(kinds)) if wrong else "as ordered",
        price=Decimal(draw(st.integers(0, 2_000))) / 100,
    )


@given(st.lists(lines_that_came(), min_size=1, max_size=5), st.sampled_from([1, 7, 100]), st.integers(0, 40))
def test_what_is_claimed_of_goods_is_what_was_paid_too_much(some: list[LineCame], basis: int, discount: int) -> None:
    """Paid, less the good pieces wanted (as far as charged) at the lower of both prices: to the cent, line by line."""
    full = Money(amount=Decimal(60) / basis, currency="USD").rounded()
    goods = full - percent_of(full, Decimal(discount))
    line = changed(bought().lines[0], ordered=6, price_basis=basis, goods=goods)
    now = now_of(bought(lines=(line,), discount_percent=Decimal(discount)))
    papers: list[Receipt] = []
    for at, one in enumerate(some):
        before = good_pieces(papers).get(1, 0)
        papers.append(came(now, f"D{at}", {1: one}))
        (kept,) = papers[-1].lines
        wanted = min(kept.good, max(6 - before, 0))
        agreed = min(kept.unit_price, Decimal("10.00"))
        paid = goods_at(now.order, 1, kept.charged_pieces, kept.unit_price)
        owed = goods_at(now.order, 1, min(wanted, kept.charged_pieces), agreed)
        mine = [found for found in differences(now, papers) if found.paper == f"D{at}" and found.kind != "freight"]
        assert claimed(mine, "USD") == paid - owed, (codes(mine), kept)
        assert all(found in mine for found in claimable(mine))


@given(st.lists(st.dictionaries(st.sampled_from([1, 2, 3]), lines_that_came(), min_size=1), max_size=6))
def test_the_pieces_of_any_deliveries_add_up(some: list[dict[int, LineCame]]) -> None:
    """Good, damaged and wrong are all that came; open is what is wanted less the good ones, never below nothing."""
    now = now_of()
    papers = [came(now, f"D{at}", lines) for at, lines in enumerate(some)]
    for line in (one for paper in papers for one in paper.lines):
        assert line.good + line.damaged + line.wrong == line.quantity
    for at, wanted in now.wanted.items():
        good = sum(line.good for paper in papers for line in paper.lines if line.line == at)
        assert open_pieces(now, good_pieces(papers)).get(at, 0) == max(wanted - good, 0)
