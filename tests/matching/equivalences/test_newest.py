"""The newest number that is sold: down the chain, around loops, past what nobody sells, never what must not serve."""

import random

import networkx as nx  # type: ignore[import-untyped]
import pytest

from sourcing.basics.equivalence import Bench, MakerAlias, Statement
from sourcing.basics.part_number import PartNumber
from sourcing.basics.value import changed
from sourcing.matching.equivalences.graph import graph_of
from sourcing.matching.equivalences.newest import newest
from tests.builders import number, statement

from .tables import about, ours, table

OLD, NEW, NEWER = (number(one, "Norrowby") for one in ("10", "20", "30"))
CHAIN = (
    statement(ours(), "same part", OLD, "maker"),
    statement(OLD, "superseded by", NEW, "maker"),
    statement(NEW, "superseded by", NEWER, "supplier"),
)


def orderable(start: PartNumber, sold: set[str], *more: Statement) -> list[str]:
    """The newest numbers sold, as printed."""
    found = newest(graph_of(table(*CHAIN, *more)), start, sold)
    return [one.number.printed for one in found.orderable]


def test_the_end_of_the_chain_where_it_is_sold() -> None:
    """From any number of it and from our own code."""
    for start in (ours(), OLD, NEW, NEWER):
        assert orderable(start, {"10", "20", "30"}) == ["30"]


def test_the_last_one_sold_where_the_end_is_not() -> None:
    """The end is told as a dead end with its chain; the weakest step is told too."""
    found = newest(graph_of(table(*CHAIN)), OLD, {"20"})
    assert [one.number for one in found.orderable] == [NEW]
    (dead,) = found.dead_ends
    assert dead.number == NEWER and dead.path.standing == "supplier" and len(dead.path.links) == 2
    assert newest(graph_of(table(*CHAIN)), OLD, ()).orderable == ()


def test_an_older_number_is_never_the_newest() -> None:
    """Superseding goes one way."""
    assert orderable(NEW, {"10"}) == []


def test_a_chain_that_forks_gives_both() -> None:
    """A person chooses; the better path stands first."""
    fork = statement(OLD, "superseded by", number("40", "Norrowby"), "fitted")
    assert orderable(OLD, {"10", "20", "30", "40"}, fork) == ["40", "30"]


def test_in_a_loop_all_that_are_sold_count() -> None:
    """Nobody can say which is newer."""
    back = statement(NEWER, "superseded by", NEW)
    assert sorted(orderable(OLD, {"10", "20", "30"}, back)) == ["20", "30"]


def test_what_must_not_serve_is_not_the_newest_nor_followed() -> None:
    """The shop tried it."""
    assert orderable(OLD, {"10", "20", "30"}, statement(OLD, "must not", NEW)) == ["10"]
    assert orderable(ours(), {"10", "20", "30"}, statement(ours(), "must not", NEWER)) == ["20"]


def test_sold_may_be_said_by_maker_under_any_of_his_names() -> None:
    """Or by the number's key alone; another maker's same number is not sold."""
    graph = graph_of(changed(table(*CHAIN), aliases=(MakerAlias(alias="NWB", maker="Norrowby"),)))
    assert newest(graph, OLD, {("nwb", "30")}).orderable[0].number == NEWER
    assert newest(graph, OLD, {("ostrevik", "30")}).orderable == ()


def test_a_step_for_another_machine_is_not_taken() -> None:
    """Serial breaks: one model, several lists."""
    step = about(statement(NEWER, "superseded by", number("50", "Norrowby")), machine="NW-826", serial_from="2000")
    graph = graph_of(table(*CHAIN, step))
    sold = {"30", "50"}
    assert newest(graph, OLD, sold, Bench(machine="NW-826", serial="1999")).orderable[0].number == NEWER
    assert newest(graph, OLD, sold, Bench(machine="NW-826", serial="2000")).orderable[0].number.printed == "50"


def test_a_number_nobody_speaks_of() -> None:
    """Nothing is found."""
    assert newest(graph_of(table(*CHAIN)), number("99", "Norrowby"), {"99"}).orderable == ()


@pytest.mark.parametrize("seed", range(120))
def test_newest_as_the_reference_finds_it(seed: int) -> None:
    """networkx: those sold after which nothing sold comes that does not lead back; ends are nodes nothing follows."""
    chance = random.Random(seed)
    every = [number(str(at), "Norrowby") for at in range(10)]
    links = [statement(chance.choice(every), "superseded by", chance.choice(every)) for _ in range(12)]
    links = [one for one in links if one.left != one.right]
    sold = {one.key for one in every if chance.random() < 0.4}
    graph = nx.DiGraph((one.left.key, one.right.key) for one in links)
    start = links[0].left
    reached = {start.key, *nx.descendants(graph, start.key)}
    after = {one: nx.descendants(graph, one) for one in reached}
    expected = {one for one in reached & sold if all(one in after[later] for later in after[one] & sold)}
    found = newest(graph_of(table(*links)), start, sold)
    assert {one.number.key for one in found.orderable} == expected
    ends = {one for one in reached - sold if not graph.out_degree(one)}
    assert {one.number.key for one in found.dead_ends} == ends
