"""What of the approved lines is still to be ordered: no piece twice, none forgotten."""

from hypothesis import given
from hypothesis import strategies as some

from sourcing.ordering.purchase import Wanted, still_to_order


def wanted(label: str, part: str, pieces: int, job: str = "2026-0001") -> Wanted:
    """An approved line."""
    return Wanted(job=job, revision=1, label=label, part=part, quantity=pieces)


def left(lines: list[Wanted], standing: dict[tuple[str, str, str], int]) -> dict[str, int]:
    """Pieces to order by label."""
    return {one.wanted.label: one.pieces for one in still_to_order(lines, standing) if one.pieces}


def test_a_line_that_stands_on_an_order_is_not_ordered_again() -> None:
    """Nor where a pack brought more than was approved."""
    lines = [wanted("1", "BELT", 1), wanted("2", "PIN", 2)]
    assert left(lines, {}) == {"1": 1, "2": 2}
    assert left(lines, {("2026-0001", "1", "BELT"): 1, ("2026-0001", "2", "PIN"): 10}) == {}


def test_the_rest_of_a_line_is_ordered() -> None:
    """Two approved, one stands after a part cancellation; four approved by a later revision, two stand."""
    assert left([wanted("1", "KEEPER", 2)], {("2026-0001", "1", "KEEPER"): 1}) == {"1": 1}
    assert left([wanted("1", "KEEPER", 4)], {("2026-0001", "1", "KEEPER"): 2}) == {"1": 2}


def test_two_lines_of_one_part_do_not_share_an_order() -> None:
    """Line A's pins are ordered although line 1's stand already, and a pack's surplus is nobody's."""
    lines = [wanted("1", "PIN", 2), wanted("A", "PIN", 2)]
    assert left(lines, {("2026-0001", "1", "PIN"): 10}) == {"A": 2}


def test_another_part_under_the_same_label_is_another_line() -> None:
    """The job was changed: the bearing now stands where the belt stood."""
    assert left([wanted("1", "IDLER", 1)], {("2026-0001", "1", "BELT"): 1}) == {"1": 1}


def test_a_line_that_moved_up_counts_as_ordered_and_that_is_said() -> None:
    """Line 1 was taken out of the job, so line 2 is line 1 now: its belt is on order already."""
    (one,) = still_to_order([wanted("1", "BELT", 1)], {("2026-0001", "2", "BELT"): 1})
    assert one.pieces == 0
    assert one.counted == ("1 ordered as line 2 of job 2026-0001 count for line 1",)


def test_an_order_of_another_job_counts_for_nothing() -> None:
    """Each customer's yes is for her own machine."""
    assert left([wanted("1", "BELT", 1)], {("2026-0002", "1", "BELT"): 1}) == {"1": 1}


KEYS = some.tuples(some.just("2026-0001"), some.sampled_from("123A"), some.sampled_from(("BELT", "PIN")))


@given(
    some.dictionaries(some.sampled_from("12A"), some.tuples(some.sampled_from(("BELT", "PIN")), some.integers(1, 5))),
    some.dictionaries(KEYS, some.integers(1, 5)),
)
def test_never_more_than_approved_on_order(
    lines: dict[str, tuple[str, int]], standing: dict[tuple[str, str, str], int]
) -> None:
    """Whatever stands: a line is ordered up to what was approved and no further; asked again, nothing is left."""
    asked = [wanted(label, part, pieces) for label, (part, pieces) in lines.items()]
    more = {one.wanted.key: one.pieces for one in still_to_order(asked, standing)}
    for one in asked:
        assert standing.get(one.key, 0) + more.get(one.key, 0) <= max(one.quantity, standing.get(one.key, 0))
    after = {key: standing.get(key, 0) + more.get(key, 0) for key in {*standing, *more}}
    assert not [one for one in still_to_order(asked, after) if one.pieces]
