"""A must-not met from the side of the forbidden number: which of our parts it protects, by which statement."""

import pytest

from sourcing.basics.equivalence import Bench
from sourcing.basics.part_number import PartNumber
from sourcing.basics.value import changed
from sourcing.documents.family_text import family_text
from sourcing.matching.equivalences.family_view import family_view
from sourcing.matching.equivalences.graph import graph_of
from sourcing.matching.equivalences.must_nots import must_nots, perhaps
from tests.builders import number, statement
from tests.matching.equivalences.tables import ours, table
from tests.matching.equivalences.test_around import random_whole

OLD, NEW, BAD = number("NW-1", "Norrowby"), number("NW-2", "Norrowby"), number("DL-4L88", "Dunmarrow")


@pytest.mark.parametrize("seed", range(400, 430))
def test_what_it_protects_is_what_every_family_forbids(seed: int) -> None:
    """Random tables: the families of all parts, looked through for the number, say the same."""
    graph = graph_of(random_whole(seed))
    families = {code: graph.family(code) for code in graph.parts}
    bans = {node for family in families.values() for node in family.forbidden}
    for node in sorted(bans):
        place = graph.links.index[node]
        said = must_nots(graph, [place])
        told = {one.part.code for one in said if one.part}
        direct = {
            code
            for code, family in families.items()
            if node in family.forbidden and graph.node(family.forbidden[node].right) == node
        }
        assert told == direct, (seed, node)


def test_a_number_that_only_must_not_serve_says_for_what() -> None:
    """Said of an older number of the part, whoever asks under whatever maker; not on another machine's bench."""
    said = changed(statement(OLD, "must not", BAD), number=6, machine="NW-826")
    graph = graph_of(table(statement(ours(), "same part", NEW), statement(OLD, "superseded by", NEW), said))
    for maker in ("", "Dunmarrow"):
        view = family_view(graph, "dl 4l88", maker=maker)
        assert [(one.part and one.part.code, one.statement.number) for one in view.must_not] == [("BELT", 6)]
    text = " ".join(family_text(view).split())
    assert (
        "It must not serve for our part BELT: statement 6: Dunmarrow DL-4L88 must not serve for Norrowby NW-1" in text
    )
    assert family_view(graph, "DL-4L88", bench=Bench(machine="NW-700")).must_not == ()
    assert family_view(graph, "NW-2").must_not == ()


def test_a_number_of_an_unknown_maker_may_be_the_forbidden_one() -> None:
    graph = graph_of(table(statement(ours(), "must not", number("4L390"))))
    (found,) = must_nots(graph, perhaps(graph, PartNumber(printed="4L390", maker="Corrivane")))
    assert found.part and found.part.code == "BELT"


def test_a_must_not_about_nobodys_number_is_told_without_a_part() -> None:
    view = family_view(graph_of(table(statement(OLD, "must not", BAD))), "DL-4L88")
    assert [one.part for one in view.must_not] == [None]
    assert "It must not serve: Dunmarrow DL-4L88 must not serve for Norrowby NW-1" in " ".join(
        family_text(view).split()
    )
