"""What a kit holds and which kits hold a part; a kit is never the part itself."""

import random

import networkx as nx  # type: ignore[import-untyped]
import pytest

from sourcing.basics.equivalence import Bench, Statement
from sourcing.basics.part_number import PartNumber
from sourcing.matching.equivalences.graph import Graph, families, graph_of
from sourcing.matching.equivalences.kits import kit_contents, kits_holding
from tests.builders import number, statement

from .tables import about, ours, table

KIT, SUB, BOLT, NUT = (number(one, "Norrowby") for one in ("K1", "K2", "B1", "N1"))


def holds(kit: PartNumber, count: int, item: PartNumber) -> Statement:
    """A kit holds so many."""
    return about(statement(kit, "kit contains", item), count=count)


def counted(graph: Graph, kit: PartNumber, bench: Bench | None = None) -> dict[str, int | None]:
    """How many of each."""
    return {one.number.printed: one.count for one in kit_contents(graph.links, graph.links.index[kit.node], bench)}


def test_kits_in_kits_are_counted_through_and_ways_added() -> None:
    """2 x 3 bolts in the inner kits and one more."""
    graph = graph_of(table(holds(KIT, 2, SUB), holds(SUB, 3, BOLT), holds(KIT, 1, BOLT), holds(SUB, 1, NUT)))
    assert counted(graph, KIT) == {"K2": 2, "B1": 7, "N1": 2}
    assert counted(graph, SUB) == {"B1": 3, "N1": 1}
    assert counted(graph, BOLT) == {}


def test_the_same_kit_under_another_number_holds_the_same() -> None:
    """Said twice of one kit it counts once; said differently there is no count."""
    other = number("NK", "Corrivane")
    same = statement(KIT, "same part", other)
    graph = graph_of(table(same, holds(KIT, 2, BOLT), holds(other, 2, BOLT), holds(other, 1, NUT)))
    assert counted(graph, KIT) == counted(graph, other) == {"B1": 2, "N1": 1}
    differ = graph_of(table(same, holds(KIT, 2, BOLT), holds(other, 4, BOLT), holds(BOLT, 3, NUT)))
    assert counted(differ, KIT) == {"B1": None, "N1": None}


def test_a_kit_that_contains_itself_ends() -> None:
    """Through another kit."""
    graph = graph_of(table(holds(KIT, 2, SUB), holds(SUB, 2, KIT), holds(SUB, 1, BOLT)))
    assert counted(graph, KIT) == {"K2": 2, "B1": 2}
    inner = graph_of(table(holds(KIT, 2, SUB), holds(SUB, 3, BOLT), holds(BOLT, 1, SUB)))
    assert counted(inner, KIT) == {"K2": 2, "B1": 6}


def test_a_kit_of_the_part_is_listed_and_never_a_member() -> None:
    """With how many are in it, kits of kits too, and by which statements."""
    said = (statement(ours(), "same part", BOLT), holds(SUB, 3, BOLT), holds(KIT, 2, SUB))
    graph = families(table(*said)).graph
    family = graph.family("BELT")
    assert KIT.node not in family.paths and SUB.node not in family.paths
    listed = kits_holding(graph.links, family.reach.way)
    assert [(one.number, one.count, one.links) for one in listed] == [
        (SUB, 3, (said[1],)),
        (KIT, 6, (said[2], said[1])),
    ]


def test_what_a_kit_holds_on_another_machine_does_not_count() -> None:
    """The statement names the machine."""
    graph = graph_of(table(about(holds(KIT, 2, BOLT), machine="NW-826"), holds(KIT, 1, NUT)))
    assert counted(graph, KIT, Bench(machine="NW-724")) == {"N1": 1}
    assert counted(graph, KIT) == {"B1": 2, "N1": 1}


@pytest.mark.parametrize("seed", range(60))
def test_counts_are_sums_over_all_ways(seed: int) -> None:
    """networkx lists every simple path; the count is the sum of their products."""
    chance = random.Random(seed)
    pairs = {tuple(sorted(chance.sample(range(8), 2))) for _ in range(12)}
    graph = nx.DiGraph()
    for one, other in pairs:
        graph.add_edge(str(one), str(other), count=chance.randint(1, 4))
    said = [
        holds(number(one, "Norrowby"), count, number(other, "Norrowby"))
        for one, other, count in graph.edges(data="count")
    ]
    start = said[0].left
    expected: dict[str, int | None] = {}
    for item in nx.descendants(graph, start.printed):
        total = 0
        for way in nx.all_simple_edge_paths(graph, start.printed, item):
            product = 1
            for one, other in way:
                product *= graph.edges[one, other]["count"]
            total += product
        expected[item] = total
    assert counted(graph_of(table(*said)), start) == expected
