"""One number looked up in the small table that a walk finds around it, against the whole table: the same answer."""

import random
from collections.abc import Sequence
from itertools import pairwise
from typing import get_args

import pytest

from sourcing.basics.equivalence import Bench, EquivalenceTable, MakerAlias, OurPart, Relation, Standing, Statement
from sourcing.basics.part_number import OURS, number_key
from sourcing.basics.value import changed
from sourcing.matching.equivalences import around
from sourcing.matching.equivalences.around import Around, Tie
from sourcing.matching.equivalences.family_view import family_view
from sourcing.matching.equivalences.graph import graph_of
from sourcing.matching.equivalences.makers import Makers
from tests.builders import number, statement
from tests.matching.equivalences.tables import about, ours, table

ALIASES = (MakerAlias(alias="Norrowby Parts", maker="Norrowby"), MakerAlias(alias="OSV", maker="Ostrevik"))
SPELLINGS = ("Norrowby", "NORROWBY PARTS", "Norrowby Parts", "Ostrevik", "osv", "Corrivane", "")
BENCHES = (None, Bench(machine="SB 800", serial="150"))


def small_around(whole: EquivalenceTable, asked: str, most_at_once: int = 1000) -> EquivalenceTable | None:
    """The table of what the walk finds; None where it gave up."""
    walk = Around(Makers(whole.aliases), number_key(asked))
    while keys := walk.wanted():
        if walk.too_wide:
            return None
        keys = keys[:most_at_once]
        walk.take(keys, [tie for tie in ties(whole.statements) if {tie.left_key, tie.right_key}.intersection(keys)])
    return changed(
        whole,
        statements=tuple(one for one in whole.statements if one.number in walk.statements),
        parts=tuple(one for one in whole.parts if number_key(one.code) in walk.codes),
    )


def ties(statements: Sequence[Statement]) -> list[Tie]:
    """What each statement ties."""
    return [
        Tie(one.number or 0, one.left.maker, one.left.key, one.relation, one.right.maker, one.right.key)
        for one in statements
    ]


def random_whole(seed: int) -> EquivalenceTable:
    """A loose table of every relation, under several spellings of makers, with machines and doubts, numbered."""
    chance = random.Random(seed)
    codes = [f"P{at}" for at in range(chance.randint(1, 5))]
    # Few different figures, so that one number stands under several makers.
    numbers = [number(f"1-0{at % 9}", chance.choice(SPELLINGS)) for at in range(14)]
    every = [*map(ours, codes), *numbers]
    said = []
    for at in range(chance.randint(5, 22)):
        left, right = chance.sample(every, 2)
        relation = chance.choices(get_args(Relation), [4, 4, 2, 4, 2])[0]
        machine, standing = chance.choice(["", "", "SB 800", "SB 900"]), chance.choice(get_args(Standing))
        one = statement(left, relation, right, standing)
        count = chance.randint(1, 3) if relation == "kit contains" else 1
        doubt = chance.choice(["", "", "", "it slipped"])
        said.append(about(one, machine=machine, count=count, doubt=doubt, number=100 - at))
    return changed(table(*said, codes=codes), aliases=ALIASES)


@pytest.mark.parametrize("bench", BENCHES)
def test_a_look_up_in_the_small_table_says_what_the_whole_one_says(bench: Bench | None) -> None:
    """Random tables: every number and every code, with and without a maker, with what is sold and without."""
    smaller = 0
    for seed in range(150):
        whole = random_whole(seed)
        graph = graph_of(whole)
        sold = {node[1] for node in graph.links.nodes[::2]}
        for asked in sorted({key for _, key in graph.links.nodes}):
            small = small_around(whole, asked)
            assert small is not None
            smaller += len(small.statements) < len(whole.statements)
            near = graph_of(small)
            for maker in ("", "Norrowby", "osv", OURS):
                told = family_view(graph, asked, sold, bench, maker)
                assert family_view(near, asked, sold, bench, maker) == told, (seed, asked, maker)
            assert family_view(near, asked, None, bench) == family_view(graph, asked, None, bench)
    assert smaller > 500, "the walk takes nearly everything: the tables are too dense to show anything"


def test_keys_told_one_by_one_lead_to_the_same_as_all_at_once() -> None:
    """How many keys are asked for at a time is the database's matter."""
    for seed in range(40):
        whole = random_whole(seed)
        assert small_around(whole, "100", most_at_once=1) == small_around(whole, "100")


def test_kits_that_hold_the_same_bolt_are_not_walked_through() -> None:
    """A bolt in a kit of another machine ties the two kits' other contents to nothing."""
    kit, other, bolt = number("K-1", "Norrowby"), number("K-2", "Norrowby"), number("B-6", "Corrivane")
    belt = number("NW-1", "Norrowby")
    said = [
        statement(ours(), "same part", belt),
        statement(kit, "kit contains", belt),
        statement(kit, "kit contains", bolt),
        statement(other, "kit contains", bolt),
        statement(other, "kit contains", number("C-9", "Corrivane")),
    ]
    whole = table(*(about(one, number=at) for at, one in enumerate(said, 1)))
    small = small_around(whole, "BELT")
    assert small is not None
    assert [one.number for one in small.statements] == [1, 2]


def test_what_an_older_number_of_the_part_must_not_be_replaced_by_is_found_from_a_substitute() -> None:
    """The number looked up serves for our part; our part's older number has a must-not of its own."""
    old, serves, never = (number(f"N-{at}", "Norrowby") for at in (1, 2, 3))
    said = [
        statement(ours(), "substitute", serves),
        statement(old, "superseded by", ours()),
        statement(old, "must not", never),
    ]
    whole = table(*(about(one, number=at) for at, one in enumerate(said, 1)))
    assert small_around(whole, "N-2") == whole


def test_a_number_nobody_names_and_a_blank_one_find_nothing() -> None:
    """Our own code without a statement finds its part."""
    whole = table(codes=("BELT", "IDLER"))
    assert small_around(whole, "idler") == changed(whole, parts=(OurPart(code="IDLER", name="IDLER"),))
    assert small_around(whole, " - ") == changed(whole, parts=())


def test_a_very_long_chain_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """A step of it costs a question to the database: the whole table is read instead."""
    monkeypatch.setattr(around, "MOST_STEPS", 5)
    chain = [number(f"N-{at}", "Norrowby") for at in range(30)]
    pairs = pairwise(chain)
    said = [about(statement(one, "superseded by", two), number=at) for at, (one, two) in enumerate(pairs)]
    assert small_around(table(*said), "N-0") is None
    assert small_around(table(*said[:3]), "N-0") == table(*said[:3], codes=())
