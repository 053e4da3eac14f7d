"""Paths against networkx, a general graph library: what is reached, how weak the best path is, how long, how barred."""

from typing import Any

import networkx as nx  # type: ignore[import-untyped]
import pytest

from sourcing.basics.equivalence import STANDINGS, EquivalenceTable, Statement
from sourcing.basics.part_number import OURS
from sourcing.matching.equivalences.graph import families

from .tables import random_table

SEEDS = range(150)
Graph = Any
"""A graph of networkx, which has no types."""


def drawn(statements: tuple[Statement, ...]) -> Graph:
    """The statements to follow as a graph of networkx."""
    graph: Graph = nx.MultiDiGraph()
    for one in statements:
        cost = (STANDINGS.index(one.counts_as), bool(one.holds_when))
        if one.relation in ("same part", "superseded by", "substitute"):
            graph.add_edge(one.left.node, one.right.node, cost=cost)
        if one.relation == "same part":
            graph.add_edge(one.right.node, one.left.node, cost=cost)
    return graph


def within(graph: Graph, standing: int, conditional: bool) -> Graph:
    """Only what is stated so well or better."""
    good = [
        (one, other, key)
        for one, other, key, (weak, under) in graph.edges(keys=True, data="cost")
        if weak <= standing and under <= conditional
    ]
    return graph.edge_subgraph(good)


def best(graph: Graph, start: object, goal: object) -> tuple[int, bool, int]:
    """The weakest standing, whether under a condition, and the length of the best path; by trying every level."""
    for standing in range(len(STANDINGS)):
        for conditional in (False, True):
            some = within(graph, standing, conditional)
            if start in some and goal in some and nx.has_path(some, start, goal):
                return standing, conditional, nx.shortest_path_length(some, start, goal)
    raise AssertionError


def forbidden(table: EquivalenceTable, graph: Graph, start: tuple[str, str]) -> set[tuple[str, str]]:
    """What must not serve by a statement about what is reached or about an older number of the part's own."""
    reached = {start, *(nx.descendants(graph, start) if start in graph else ())}
    back: Graph = nx.MultiDiGraph()
    for one in table.statements:
        if one.relation in ("same part", "superseded by"):
            back.add_edge(one.right.node, one.left.node)
        if one.relation == "same part":
            back.add_edge(one.left.node, one.right.node)
    reached |= nx.descendants(back, start) if start in back else set()
    return {one.right.node for one in table.statements if one.relation == "must not" and one.left.node in reached}


@pytest.mark.parametrize("seed", SEEDS)
def test_best_paths_are_those_of_the_reference(seed: int) -> None:
    """Every number is reached as networkx says, by the weakest link, conditions and length it says; around bans."""
    table = random_table(seed)
    graph = drawn(table.statements)
    for code, family in families(table).items():
        start = (OURS, code)
        bans = forbidden(table, graph, start)
        reached = {start, *(nx.descendants(graph, start) if start in graph else ())}
        assert set(family.paths) == reached
        clear = graph.subgraph(set(graph) - (bans - {start}))
        free = {start, *(nx.descendants(clear, start) if start in clear else ())}
        assert set(family.forbidden) == bans | (reached - free)
        for node in reached - {start}:
            path, where = family.paths[node], clear if node in free else graph
            told = STANDINGS.index(path.standing), bool(path.conditions), len(path.links)
            assert told == best(where, start, node)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_path_is_a_walk_from_our_part_to_the_number(seed: int) -> None:
    """Each statement starts where the one before ended; only 'same part' is read backwards."""
    for code, family in families(random_table(seed)).items():
        for node, path in family.paths.items():
            here = (OURS, code)
            for link in path.links:
                ends = (link.left.node, link.right.node)
                assert here == ends[0] or (here == ends[1] and link.relation == "same part")
                here = ends[1] if here == ends[0] else ends[0]
            assert here == node == family.printed[node].node
