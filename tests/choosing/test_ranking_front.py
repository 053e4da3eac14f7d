"""The front of cost and day, and who is first at which price of a day, against going through all pairs and prices."""

from decimal import Decimal
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.choice import Priced, RankWishes
from sourcing.choosing.front import day_spans
from sourcing.choosing.ranking import rank
from tests.choosing.priced_values import ASKED, priced

NOTHING = RankWishes()


def drawn(some: list[tuple[int, int | None]]) -> list[Priced]:
    """Offers from (cents, days)."""
    return [
        priced(f"s{at}", goods=str(Decimal(cents) / 100), days=days, number=f"N{at}")
        for at, (cents, days) in enumerate(some)
    ]


FEW = st.lists(st.tuples(st.integers(100, 112), st.one_of(st.none(), st.integers(0, 6))), min_size=1, max_size=9)
SPREAD = st.lists(st.tuples(st.integers(100, 400), st.integers(0, 12)), min_size=1, max_size=9)


def beats(one: Priced, other: Priced) -> bool:
    """At least as good in both and better in one; a day that is not known beats no other."""
    mine, theirs = one.arrival.latest, other.arrival.latest
    if mine is None or theirs is None:
        return False
    cost, costs = one.landed.total.amount, other.landed.total.amount
    return cost <= costs and mine <= theirs and (cost < costs or mine < theirs)


@given(FEW)
def test_the_front_is_what_no_other_beats(some: list[tuple[int, int | None]]) -> None:
    """All pairs, with many ties in cost, in day and in both."""
    ranked = rank(drawn(some), NOTHING, ASKED).ranked
    for one in ranked:
        beaten = any(beats(other.priced, one.priced) for other in ranked)
        assert one.on_front == (one.priced.arrival.latest is not None and not beaten)


@given(FEW, st.sampled_from((None, Decimal("0.01"), Decimal(3))))
def test_the_price_of_a_day_does_not_move_the_front(some: list[tuple[int, int | None]], value: Decimal | None) -> None:
    dated = [one for one in drawn(some) if one.arrival.latest]
    plain, priced_days = (
        {one.priced.offer.supplier for one in rank(dated, wishes, ASKED).ranked if one.on_front}
        for wishes in (NOTHING, RankWishes(value_per_day=value))
    )
    assert plain == priced_days


@given(SPREAD)
def test_the_spans_say_who_is_first_at_every_price_of_a_day(some: list[tuple[int, int]]) -> None:
    """Ranked anew at both ends of each span: the offer named is first at both; no gap between two."""
    offers = drawn(list(some))
    spans = day_spans(rank(offers, NOTHING, ASKED).ranked)
    assert spans[0].from_price.amount == 0 and spans[-1].to_price is None
    for span, after in pairwise(spans):
        assert span.to_price and span.to_price.minor() + 1 == after.from_price.minor()
    for span in spans:
        far = Decimal(1000)
        for price in (span.from_price.amount, span.to_price.amount if span.to_price else far):
            first = rank(offers, RankWishes(value_per_day=price), ASKED).ranked[0]
            assert first.priced.supplier_name == span.supplier_name


def test_spans_by_hand() -> None:
    """100.00 in 10 days, 112.00 in 3, 140.00 in 1: 12.00 over 7 days is 1.7143, 28.00 over 2 days is 14.00 a day.

    At 14.00 the sooner one is first already, for both count the same.
    """
    ranked = rank(drawn([(10000, 10), (11200, 3), (14000, 1), (15000, 2)]), NOTHING, ASKED).ranked
    said = [(one.supplier_name, str(one.from_price), str(one.to_price)) for one in day_spans(ranked)]
    assert said == [
        ("S0", "0.00 USD", "1.71 USD"),
        ("S1", "1.72 USD", "13.99 USD"),
        ("S2", "14.00 USD", "None"),
    ]


def test_without_any_day_there_are_no_spans() -> None:
    assert day_spans(rank(drawn([(100, None)]), NOTHING, ASKED).ranked) == ()
    assert day_spans(()) == ()
