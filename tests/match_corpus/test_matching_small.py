"""Matching on small made-up catalogues of every kind: nothing wrong by itself, the right part near the top."""

from decimal import Decimal

import pytest

from sourcing.basics.part_number import maker_key, number_keys
from sourcing.matching.numbers.doubtful import doubtful_numbers
from sourcing.matching.sheet_match import Columns, match_rows
from tests.match_corpus import judge
from tests.match_corpus.judge import Line
from tests.match_corpus.worlds import corpus
from tests.match_corpus.writing import Listing


def columns(table: tuple[Listing, ...]) -> Columns:
    """As the command makes them of a file."""
    numbers = [one.number for one in table]
    damaged = {at: numbers[at] for at in doubtful_numbers(numbers)}
    prices = [one.price.lstrip("$").replace(",", "") for one in table]
    return Columns(
        numbers=[[key] if key and at not in damaged else [] for at, key in enumerate(number_keys(numbers))],
        makers=[[maker_key(one.maker)] if one.maker else [] for one in table],
        description=[one.description for one in table],
        price=[None if not price else Decimal(price) for price in prices],
        damaged=damaged,
    )


@pytest.mark.parametrize("world", ["W1", "W2", "W3", "W4"])
def test_nothing_wrong_by_itself_and_the_right_part_near_the_top(world: str) -> None:
    """Of 400 rows; how good it is on long ones, the benchmark says."""
    made = corpus(world, 100, 400, 600)
    found = match_rows(columns(made.sheet), columns(made.parts), [str(at) for at in range(len(made.parts))])
    lines = [Line(one.row, int(one.part), one.tier, one.score, one.rank, one.against) for one in found if one.part]
    assert not judge.wrong_automatic(made.gold, lines)
    five = {one.row for one in lines if one.rank <= 5 and one.part in made.gold.get(one.row, ())}
    assert len(five) / len(made.gold) > (0.8 if world == "W4" else 0.95)
    firsts = [one for one in lines if one.rank == 1 and one.score >= 0.95]
    right = sum(one.part in made.gold.get(one.row, ()) for one in firsts)
    assert right / len(firsts) > (0.85 if world == "W4" else 0.97)
