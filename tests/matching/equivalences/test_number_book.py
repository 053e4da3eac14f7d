"""The book of all numbers says what the families say, and a table that ties everything to everything ends too."""

import pytest

from sourcing.basics.equivalence import OurPart
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families, graph_of
from sourcing.matching.equivalences.number_book import NO_PATH, NumberBook, bearers_of, number_book, path_words
from tests.builders import number, statement

from .tables import ours, random_table, table

OWN, WRONG = number("10", "Norrowby"), number("11", "Norrowby")


def rows(book: NumberBook) -> list[tuple[object, ...]]:
    """The book row by row, sorted."""
    return sorted(zip(*book.columns().values(), strict=True), key=repr)


@pytest.mark.parametrize("seed", range(60))
def test_the_book_says_what_the_families_say(seed: int) -> None:
    """Every number with its part, standing, length, conditions and bans."""
    every = families(random_table(seed, parts=4))
    expected: list[tuple[object, ...]] = []
    for code, family in every.items():
        for node, path in family.paths.items():
            told = (path.standing, len(path.links), bool(path.conditions), node in family.forbidden)
            expected.append((*node, code, *told))
        for node, ban in family.forbidden.items():
            if node not in family.paths:
                expected.append((*node, code, ban.counts_as, NO_PATH, False, True))
    assert rows(number_book(every.graph)) == sorted(expected, key=repr)


@pytest.mark.parametrize("seed", range(60))
def test_bearers_from_the_book_are_those_of_the_families(seed: int) -> None:
    """A number that only must not serve is nobody's."""
    every = families(random_table(seed, parts=4))
    assert bearers_of(every.graph) == bearers(every.values())


def test_the_words_of_a_path() -> None:
    """Link by link; blank where there is none; our own code is our own."""
    said = statement(ours(), "same part", OWN, "maker")
    graph = families(table(said)).graph
    assert path_words(graph, "BELT", number("10", "NORROWBY")) == f"NORROWBY 10: {said}"
    assert path_words(graph, "BELT", ours()) == "BELT: our own number"
    assert path_words(graph, "BELT", WRONG) == ""


def test_a_tangle_gives_nothing_that_could_match_by_itself() -> None:
    """Four hundred parts tied to one number: their numbers stay unchecked, and no key is one part's alone."""
    codes = [f"P{at}" for at in range(400)]
    said = [statement(ours(code), "same part", OWN, "maker") for code in codes]
    lone = statement(ours("BELT"), "same part", WRONG, "maker")
    graph = families(table(*said, lone, codes=[*codes, "BELT"])).graph
    book = number_book(graph)
    assert book.tangled == tuple(sorted(codes))
    assert {row[3] for row in rows(book) if row[2] in codes} == {"unchecked"}
    assert {row[3] for row in rows(book) if row[2] == "BELT"} == {"maker", "fitted"}
    found = bearers_of(graph)
    assert all(len(found[code]) >= 2 for code in codes) and found["11"] == {"BELT"}
    assert len(book.part) < 400 * 60


def test_a_part_no_statement_names_bears_its_own_code() -> None:
    """And a table without statements has a book."""
    book = number_book(families(table()).graph)
    assert rows(book) == [("(ours)", "BELT", "BELT", "fitted", 0, False, False)]
    assert OurPart(code="BELT", name="BELT") in families(table()).graph.parts.values()


def test_of_one_graph_the_book_is_written_once() -> None:
    """Matching a sheet asks for it several times; another graph, even of the same table, has its own."""
    graph, other = graph_of(random_table(1)), graph_of(random_table(1))
    assert number_book(graph) is number_book(graph)
    assert number_book(other) is not number_book(graph) and number_book(other).columns() == number_book(graph).columns()
