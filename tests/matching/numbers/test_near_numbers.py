"""Near numbers against rapidfuzz going through the whole table."""

import random

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from sourcing.matching.numbers import near_numbers
from sourcing.matching.numbers.near_numbers import NearNumbers
from sourcing.matching.numbers.slip_kinds import KINDS, SHORTEST, slip_kind, slips_allowed

# At most 18, fewer than `CROWDED`: nothing may be passed over.
KEYS = st.lists(
    st.one_of(
        st.text(alphabet="01A", min_size=3, max_size=7),
        st.text(alphabet="0158OIB", min_size=4, max_size=10),
        st.builds("NW{}{}".format, st.integers(0, 99_999_999), st.sampled_from(["", "A", "B", "LH", "RH"])),
        st.builds("{}E{}".format, st.integers(1, 40), st.integers(1, 4)),
        st.builds("{}".format, st.integers(1, 40).map(lambda figures: figures * 10_000)),
        st.text(alphabet="ÄÖ1２é", min_size=4, max_size=8),
    ),
    max_size=18,
)


def brute(queries: list[str], keys: list[str]) -> set[tuple[int, int]]:
    """Every pair of different keys within the slips allowed, by rapidfuzz alone."""
    return {
        (at, place)
        for at, query in enumerate(queries)
        for place, key in enumerate(keys)
        if query != key
        and min(len(query), len(key)) >= SHORTEST
        and OSA.distance(query, key) <= slips_allowed(query, key)
    }


@settings(max_examples=300, deadline=None)
@given(queries=KEYS, keys=KEYS)
@example(queries=["0000", "OOOOO"], keys=["00000", "0OO0"])
def test_it_finds_what_rapidfuzz_finds_and_what_the_kinds_name(queries: list[str], keys: list[str]) -> None:
    """No near key is missed, none is invented, and slips and kinds are those of the slow twin."""
    found = NearNumbers(keys).near(queries, most=1_000)
    pairs = set(zip(found["query"].tolist(), found["key"].tolist(), strict=True))
    assert len(pairs) == len(found)
    assert brute(queries, keys) <= pairs
    for query, key, slips, kind in found[["query", "key", "slips", "kind"]].itertuples(index=False):
        assert slips == OSA.distance(queries[query], keys[key])
        assert kind == slip_kind(queries[query], keys[key]) and kind in KINDS
    known = {
        (at, place)
        for at, query in enumerate(queries)
        for place, key in enumerate(keys)
        if (kind := slip_kind(query, key)) and "different" not in kind and "swapped across" not in kind
    }
    assert known <= pairs  # look-alikes, zeros, powers of ten, glued ends: by the slow twin too


def table(count: int, seed: int) -> list[str]:
    """An invented catalogue: makers' letters, running figures, generations."""
    dice = random.Random(seed)
    return sorted({
        f"{dice.choice(['NW', 'OS', 'CV', ''])}{dice.randrange(10**6):06d}{dice.choice(['', '', 'A', 'B', 'X1'])}"
        for _ in range(count)
    })  # fmt: skip


def test_a_catalogue_is_searched_without_loss() -> None:
    """3,000 keys, 200 of them with a random slip, in several rounds of queries."""
    keys, dice = table(3_000, 1), random.Random(2)
    queries = [with_slip(dice.choice(keys), dice) for _ in range(200)]
    found = NearNumbers(keys).near(queries, most=10_000)
    pairs = set(zip(found["query"].tolist(), found["key"].tolist(), strict=True))
    missed = brute(queries, keys) - pairs
    assert all(OSA.distance(queries[query], keys[key]) == 2 for query, key in missed)
    assert len(missed) < 0.01 * len(pairs)  # two slips where the table is crowded are passed over


def with_slip(key: str, dice: random.Random) -> str:
    """One figure changed, left out, added or swapped."""
    at, figure = dice.randrange(len(key) - 1), dice.choice("0123456789")
    swapped = key[:at] + key[at + 1] + key[at] + key[at + 2 :]
    return dice.choice(
        [key[:at] + figure + key[at + 1 :], key[:at] + key[at + 1 :], key[:at] + figure + key[at:], swapped]
    )


def test_rounds_of_queries_give_what_one_round_gives(monkeypatch: pytest.MonkeyPatch) -> None:
    """Places of queries go on from round to round."""
    keys = table(500, 3)
    queries = [with_slip(key, random.Random(key)) for key in keys[:100]]
    whole = NearNumbers(keys).near(queries)
    monkeypatch.setattr(near_numbers, "QUERIES_AT_ONCE", 7)
    assert NearNumbers(keys).near(queries).equals(whole)
    assert whole["query"].max() > 90


def test_the_likeliest_come_first_and_no_more_than_asked() -> None:
    """A look-alike before a swap, a swap before a lost figure, that before a changed one."""
    keys = ["NW40389", "NW4038", "NW40838", "NW40388", "NW4O888"]
    found = NearNumbers(keys).near(["NW4O388"], most=8)
    assert keys[found["key"][0]] == "NW40388"
    found = NearNumbers(keys).near(["NW40388"], most=2)
    assert [(keys[key], kind) for key, kind in zip(found["key"], found["kind"], strict=True)] == [
        ("NW40838", "neighbours swapped"), ("NW4038", "character doubled"),
    ]  # fmt: skip


def test_a_key_that_two_makers_bear_is_listed_for_both() -> None:
    """`most` counts different keys."""
    found = NearNumbers(["40388", "77777", "40388"]).near(["40338"], most=1)
    assert found["key"].tolist() == [0, 2] and found["crowd"].tolist() == [1, 1]


def test_the_crowd_says_how_many_are_as_near() -> None:
    """Nine other figures at the end, one look-alike."""
    keys = [f"4038{figure}" for figure in range(10)] + ["4O388"]
    found = NearNumbers(keys).near(["40388"], most=20)
    by_kind = dict(zip(found["kind"], found["crowd"], strict=True))
    assert by_kind["one character different"] == 10  # the look-alike is one slip away too
    assert by_kind["look-alike character"] == 1
    assert NearNumbers(keys).neighbours(["40388", "99999", "12"]).tolist() == [10, 0, 0]


def test_empty_tables_and_odd_keys() -> None:
    """Nothing in, nothing out; blanks, short and endless keys are near nothing."""
    for keys, queries in (([], ["40388"]), (["40388"], []), ([], []), (["", "123", "9" * 100], ["", "124", "9" * 99])):
        found = NearNumbers(keys).near(queries)
        assert len(found) == 0 and list(found.columns) == ["query", "key", "slips", "kind", "crowd"]


def test_a_beginning_that_hundreds_share_says_nothing() -> None:
    """'NW403' begins 100 keys: none is proposed for it, and a slip in the number is still found."""
    keys = [f"NW403{figures:02d}" for figures in range(100)]
    index = NearNumbers(keys)
    assert len(index.near(["NW403"], most=1_000)) == 0
    assert "NW40388" in {keys[place] for place in index.near(["NW4O388"])["key"]}


def test_places_are_whole_numbers_for_indexing() -> None:
    """Columns are ready for take and merge."""
    found = NearNumbers(["NW40388"]).near(["NW40338"])
    assert all(found[name].dtype == np.int64 for name in ("query", "key", "slips", "crowd"))
