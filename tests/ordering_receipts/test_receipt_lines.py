"""What may be taken in against an order, the same paper under other writing, and freight shared over what came."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.order import ReceiptLine
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.ordering.order_now import good_pieces, open_pieces
from sourcing.ordering.receiving import LineCame, freight_shares, receipt_lines, same_paper
from tests.builders import usd
from tests.ordering_receipts.goods import bought, came, cancelled, confirmed, now_of


def refused_as(lines: dict[int, LineCame], *events: object) -> str:
    """The kind of problem these lines are refused with."""
    with pytest.raises(Refused) as caught:
        receipt_lines(now_of(None, *events), lines)  # type: ignore[arg-type]
    return caught.value.problems[0].code


def test_price_and_old_part_are_the_orders_where_nothing_is_said() -> None:
    """The charge for an old part follows the pieces the paper charges."""
    (line,) = receipt_lines(now_of(), {3: LineCame(pieces=1)})
    assert (line.unit_price, line.core_charge) == (Decimal("80.00"), usd("25.00"))
    (two,) = receipt_lines(now_of(), {3: LineCame(pieces=1, on_paper=2)})
    assert two.core_charge == usd("50.00")
    assert receipt_lines(now_of(), {1: LineCame(pieces=2)})[0].core_charge is None


def test_a_confirmed_price_is_the_one_agreed() -> None:
    (line,) = receipt_lines(now_of(None, confirmed(1, "10.60")), {1: LineCame(pieces=2)})
    assert line.unit_price == Decimal("10.60")


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        ({9: LineCame(pieces=1)}, "no-such-order-line"),
        ({1: LineCame(pieces=0)}, "nothing-received"),
        ({1: LineCame(pieces=-1)}, "nothing-received"),
        ({1: LineCame(pieces=2, price=Decimal("-0.01"))}, "charged-below-zero"),
        ({3: LineCame(pieces=1, core=Decimal(-1))}, "charged-below-zero"),
        ({1: LineCame(pieces=2, damaged=3)}, "more-than-came"),
        ({1: LineCame(pieces=2, damaged=-1)}, "more-than-came"),
        ({1: LineCame(pieces=2, damaged=1, number="X-1", came="another part")}, "more-than-came"),
        ({1: LineCame(pieces=2, number="X-1", under_number=3, came="another part")}, "more-than-came"),
        ({1: LineCame(pieces=2, number="X-1", under_number=0, came="another part")}, "more-than-came"),
        ({1: LineCame(pieces=2, under_number=1)}, "more-than-came"),
    ],
)
def test_counts_that_can_not_hold_are_refused(lines: dict[int, LineCame], code: str) -> None:
    assert refused_as(lines) == code


def test_a_cancelled_line_takes_nothing_in_but_may_be_charged() -> None:
    """What the paper charges all the same is a difference, so it must be possible to say it."""
    assert refused_as({2: LineCame(pieces=30)}, cancelled(2)) == "line-was-cancelled"
    (line,) = receipt_lines(now_of(None, cancelled(2)), {2: LineCame(pieces=0, on_paper=30)})
    assert (line.quantity, line.charged_pieces, line.good) == (0, 30, 0)


@pytest.mark.parametrize(
    ("line", "good", "wrong"),
    [
        (LineCame(pieces=2), 2, 0),
        (LineCame(pieces=2, damaged=2), 0, 0),
        (LineCame(pieces=2, number="X", came="same part", damaged=1), 1, 0),
        (LineCame(pieces=2, number="X", came="another part"), 0, 2),
        (LineCame(pieces=2, number="X", came="not wanted", under_number=1), 1, 1),
        (LineCame(pieces=5, number="X", came="another part", under_number=2, damaged=1), 2, 2),
    ],
)
def test_only_good_pieces_of_the_right_part_count(line: LineCame, good: int, wrong: int) -> None:
    """Damaged ones and those under a number that does not count leave the line open."""
    now = now_of()
    receipt = came(now, "D1", {1: line})
    assert (receipt.lines[0].good, receipt.lines[0].wrong) == (good, wrong)
    assert open_pieces(now, good_pieces([receipt])).get(1, 0) == max(2 - good, 0)


@pytest.mark.parametrize("again", ["DN-88213", "dn 88213", "DN88213", " dn.88213 "])
def test_the_same_paper_under_another_writing(again: str) -> None:
    receipt = came(now_of(), "DN-88213", {1: LineCame(pieces=2)})
    assert same_paper([receipt], again) == receipt
    assert same_paper([receipt], "DN-88231") is None


def test_freight_by_value_and_by_weight() -> None:
    """By value 20.00 against 80.00; by weight 2 x 0.4 kg against 3.2 kg."""
    now = now_of()
    receipt = came(now, "D1", {1: LineCame(pieces=2), 3: LineCame(pieces=1)}, "10.00")
    assert freight_shares(now.order, receipt) == {1: usd("2.00"), 3: usd("8.00")}
    by_weight = changed(receipt, freight_by="weight")
    assert freight_shares(now.order, by_weight) == {1: usd("2.00"), 3: usd("8.00")}
    one = came(now, "D1", {1: LineCame(pieces=1), 3: LineCame(pieces=1)}, "9.00", freight_by="weight")
    assert freight_shares(now.order, one) == {1: usd("1.00"), 3: usd("8.00")}


def test_a_weight_nobody_knows_is_never_taken_as_nothing() -> None:
    first, *rest = bought().lines
    now = now_of(bought(lines=(changed(first, weight_kg=None), *rest)))
    receipt = came(now, "D1", {1: LineCame(pieces=2), 3: LineCame(pieces=1)}, "9.00", freight_by="weight")
    with pytest.raises(Refused, match="what line 1 weighs"):
        freight_shares(now.order, receipt)
    without = came(now, "D2", {3: LineCame(pieces=1)}, "9.00", freight_by="weight")
    assert freight_shares(now.order, without) == {3: usd("9.00")}


@given(
    pieces=st.dictionaries(st.sampled_from([1, 2, 3]), st.integers(1, 60), min_size=1),
    cents=st.integers(0, 20_000),
    by=st.sampled_from(["value", "weight"]),
)
def test_freight_shares_sum_to_the_freight(pieces: dict[int, int], cents: int, by: str) -> None:
    """To the cent, whatever came; share_out's largest remainder."""
    now = now_of()
    lines = {at: LineCame(pieces=count) for at, count in pieces.items()}
    receipt = came(now, "D1", lines, str(Decimal(cents) / 100), freight_by=by)
    shares = freight_shares(now.order, receipt)
    assert sum(share.minor() for share in shares.values()) == cents and set(shares) == set(pieces)


def test_a_receipt_kept_before_these_fields_reads_as_all_good() -> None:
    old = ReceiptLine(line=1, quantity=2, unit_price=Decimal("10.00"))
    assert (old.good, old.wrong, old.charged_pieces) == (2, 0, 2)
