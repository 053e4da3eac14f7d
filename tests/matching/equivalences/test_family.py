"""Paths of statements: the best one wins, directions hold, loops end, must-not beats all."""

import random

from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.part_number import OURS
from sourcing.basics.value import changed
from sourcing.matching.equivalences.family import Family, bearers
from sourcing.matching.equivalences.graph import families
from tests.builders import number, statement

PART = OurPart(code="BELT", name="Belt", size="B36")
OUR = number("BELT", OURS)


def family(*statements: object) -> Family:
    """The family of the one part under these statements."""
    return families(EquivalenceTable(parts=(PART,), statements=statements))["BELT"]  # type: ignore[arg-type]


def test_same_part_goes_both_ways_and_superseded_only_forward() -> None:
    """A newer number serves for the older; the older is not offered for the newer."""
    old, new, older = number("10", "Norrowby"), number("20", "Norrowby"), number("5", "Norrowby")
    found = family(
        statement(old, "same part", OUR),
        statement(old, "superseded by", new),
        statement(older, "superseded by", old),
    )
    assert old.node in found.paths and new.node in found.paths
    assert older.node not in found.paths


def test_a_substitute_is_one_way_and_keeps_its_condition() -> None:
    """Right serves where left is asked for, under the condition."""
    own, instead = number("10", "Norrowby"), number("S1", "Corrivane")
    found = family(statement(OUR, "same part", own), statement(own, "substitute", instead, condition="idler moved out"))
    assert found.paths[instead.node].conditions == ("idler moved out",)
    back = family(statement(OUR, "same part", instead), statement(own, "substitute", instead))
    assert own.node not in back.paths


def test_the_weakest_link_decides_and_the_better_path_wins() -> None:
    """Two ways to one number: the longer one of good standing beats the shorter doubtful one."""
    first, second = number("10", "Norrowby"), number("20", "Corrivane")
    found = family(
        statement(OUR, "same part", second, "unchecked"),
        statement(OUR, "same part", first, "maker"),
        statement(first, "same part", second, "fitted"),
    )
    assert found.paths[second.node].standing == "maker"
    assert len(found.paths[second.node].links) == 2


def test_a_doubted_statement_counts_as_unchecked() -> None:
    """Whoever stated it, until the doubt is answered."""
    own, other = number("10", "Norrowby"), number("20", "Corrivane")
    doubted = changed(statement(OUR, "same part", own, "maker"), doubt="the old belt was longer")
    found = family(doubted, statement(OUR, "same part", other, "supplier"), statement(other, "same part", own))
    assert found.paths[own.node].standing == "supplier"
    assert family(doubted).paths[own.node].standing == "unchecked"


def test_a_loop_of_supersessions_ends() -> None:
    """One supplier's sheet by mistake points back."""
    first, second = number("10", "Norrowby"), number("10A", "Norrowby")
    found = family(
        statement(OUR, "same part", first),
        statement(first, "superseded by", second),
        statement(second, "superseded by", first),
    )
    assert set(found.paths) == {OUR.node, first.node, second.node}


def test_must_not_is_kept_from_any_number_of_the_family() -> None:
    """Tried, does not fit: said about the maker's number, it holds for our part."""
    own, wrong = number("10", "Norrowby"), number("11", "Norrowby")
    found = family(
        statement(OUR, "same part", own),
        statement(own, "same part", wrong, "maker"),
        statement(own, "must not", wrong),
    )
    assert wrong.node in found.forbidden


def test_the_order_of_the_table_never_matters() -> None:
    """Shuffled statements give the same paths."""
    chance = random.Random(7)
    numbers = [number(str(at), chance.choice(["Norrowby", "Corrivane"])) for at in range(12)]
    table = [statement(OUR, "same part", numbers[0])]
    for _ in range(40):
        left, right = chance.sample(numbers, 2)
        relation = chance.choice(["same part", "superseded by", "substitute"])
        standing = chance.choice(["fitted", "maker", "supplier", "unchecked"])
        table.append(statement(left, relation, right, standing))  # type: ignore[arg-type]
    first = family(*table)
    for _ in range(20):
        chance.shuffle(table)
        again = family(*table)
        assert again.paths == first.paths


def test_a_key_that_two_parts_bear_is_known_as_such() -> None:
    """The same digits under two makers tied to two of our parts."""
    other = OurPart(code="KEEPER", name="Keeper")
    table = EquivalenceTable(
        parts=(PART, other),
        statements=(
            statement(OUR, "same part", number("1234", "Norrowby")),
            statement(number("KEEPER", OURS), "same part", number("12-34", "Corrivane")),
        ),
    )
    assert bearers(families(table).values())["1234"] == {"BELT", "KEEPER"}
