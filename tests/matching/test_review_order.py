"""What is worth most is judged first; what a person has settled is not asked again."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.judgement import RowKeys
from sourcing.basics.value import changed
from sourcing.matching.review_order import InQueue, in_order, worth
from sourcing.matching.settled_rows import SettledRows


def waiting(candidate: int, price: str | None, asked: int, **more: float) -> InQueue:
    """A candidate of a row of its own, unless `row` says otherwise."""
    values = {"row": candidate, "rank": 1, "score": 0.5} | more
    return InQueue(
        candidate=candidate,
        row=int(values["row"]),
        price=None if price is None else Decimal(price),
        asked=asked,
        score=values["score"],
        rank=int(values["rank"]),
    )


def order(*every: InQueue) -> list[int]:
    """The candidates in their order."""
    return [one.candidate for one in in_order(every)]


def test_worth_is_price_times_asked() -> None:
    assert worth(Decimal("126.90"), 3) == Decimal("380.70")


def test_a_part_never_asked_for_counts_as_a_tenth() -> None:
    assert worth(Decimal("126.90"), 0) == Decimal("12.690")
    assert order(waiting(1, "100", 0), waiting(2, "11", 1), waiting(3, "9.99", 1)) == [2, 1, 3]


def test_without_a_price_there_is_no_worth_and_it_comes_last() -> None:
    """Not zero: among themselves those asked for most come first."""
    assert worth(None, 5) is None
    assert order(waiting(1, None, 9), waiting(2, "0.01", 0), waiting(3, None, 10)) == [2, 3, 1]
    assert order(waiting(1, None, 9), waiting(2, "0", 1)) == [2, 1]


def test_a_row_stays_whole_and_is_worth_what_its_likeliest_part_is() -> None:
    """The second part of row 1 is asked for often: that does not lift the row."""
    rows = (waiting(1, "10", 1, row=1), waiting(2, "10", 99, row=1, rank=2), waiting(3, "20", 1, row=2))
    assert order(*rows) == [3, 1, 2]


def test_the_score_decides_between_rows_worth_the_same() -> None:
    assert order(waiting(1, "10", 1, score=0.6), waiting(2, "10", 1, score=0.9)) == [2, 1]


def test_a_row_none_of_whose_parts_is_likely_comes_after_all_likely_ones() -> None:
    """Whatever it is worth; a row with one likely part is likely."""
    unlikely = changed(waiting(1, "500", 9), likely=False)
    other = changed(waiting(2, "10", 1, row=2), likely=False)
    assert order(unlikely, other, waiting(3, None, 0), waiting(4, "10", 1, row=2, rank=2)) == [2, 4, 3, 1]


ROWS = st.lists(
    st.tuples(st.sampled_from(["1", "2", None]), st.integers(0, 2), st.integers(1, 3), st.integers(1, 3)), max_size=8
)


@given(ROWS, st.randoms())
def test_the_order_given_does_not_matter(rows: list[tuple[str | None, int, int, int]], dice: object) -> None:
    every = [waiting(at, price, asked, row=row, rank=rank) for at, (price, asked, row, rank) in enumerate(rows)]
    shuffled = list(every)
    dice.shuffle(shuffled)  # type: ignore[attr-defined]
    assert in_order(shuffled) == in_order(every)


def row(supplier: str = "stonegarth", number: str = "S1", maker: str = "", makers_number: str = "") -> RowKeys:
    """The keys of a row."""
    return RowKeys(supplier=supplier, supplier_key=number, maker=maker, maker_number_key=makers_number)


def settled(said: str, of: RowKeys, part: str = "BELT") -> SettledRows:
    """One answer given."""
    found = SettledRows()
    found.add(of, part, said)  # type: ignore[arg-type]
    return found


def test_a_no_settles_the_part_and_a_yes_the_row() -> None:
    assert settled("no", row()).settled(row(), "BELT")
    assert not settled("no", row()).settled(row(), "KEEPER")
    assert settled("yes", row()).settled(row(), "KEEPER")


def test_a_makers_number_is_the_same_at_every_supplier() -> None:
    """Whether it stands in a column of its own or is the only number of the row."""
    found = settled("no", row(maker="norrowby", makers_number="N1"))
    assert found.settled(row("pellbrook", "P9", "norrowby", "N1"), "BELT")
    assert found.settled(row("pellbrook", "N1", "norrowby"), "BELT")
    assert not found.settled(row("pellbrook", "N1", "ostrevik"), "BELT")
    assert not found.settled(row("pellbrook", "N1"), "BELT")


def test_a_suppliers_own_number_is_his_alone() -> None:
    assert not settled("no", row()).settled(row("pellbrook"), "BELT")


def test_a_makers_number_that_a_sheet_leaves_out_does_not_bring_it_back() -> None:
    """But another number of the maker beside the supplier's is another question."""
    found = settled("no", row(maker="norrowby", makers_number="N1"))
    assert found.settled(row(maker="norrowby"), "BELT")
    assert not found.settled(row(maker="norrowby", makers_number="N2"), "BELT")


def test_blank_numbers_settle_nothing() -> None:
    assert not settled("no", row(number="")).settled(row(number=""), "BELT")


def test_a_yes_to_the_parts_own_number_is_for_the_row_that_reads_so() -> None:
    """The table ties the number already: in other words, or at another supplier, it asks; no other part does."""
    found = SettledRows(lambda number, part: (number, part) == (("norrowby", "N1"), "BELT"))
    here = changed(row(maker="norrowby", makers_number="N1"), reads="belt guard")
    found.add(here, "BELT", "yes")
    assert found.settled(here, "BELT") and found.settled(here, "KEEPER")
    assert not found.settled(changed(here, reads="belt"), "BELT")
    other = row("pellbrook", "P9", "norrowby", "N1")
    assert not found.settled(other, "BELT") and found.settled(other, "KEEPER")
