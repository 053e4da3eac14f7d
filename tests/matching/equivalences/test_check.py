"""The check of the whole table: each kind of finding with the statements involved, and nothing else."""

import random
from collections.abc import Iterable

import networkx as nx  # type: ignore[import-untyped]
import pytest

from sourcing.basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Statement
from sourcing.basics.part_number import OURS
from sourcing.basics.table_finding import FINDING_KINDS, Finding, FindingKind
from sourcing.basics.value import changed
from sourcing.matching.equivalences.check import check_table
from tests.builders import number, statement

from .tables import about, ours, random_table, table

OLD, NEW, NEWER, OTHER = (number(one, "Norrowby") for one in ("10", "20", "30", "40"))
SAME = statement(ours(), "same part", OLD)


def found(
    *statements: Statement, sold: Iterable[str] | None = None, codes: tuple[str, ...] = ("BELT",)
) -> list[Finding]:
    """What the check finds in these statements."""
    return list(check_table(table(*statements, codes=codes), None if sold is None else set(sold)))


def test_nothing_is_found_where_nothing_is_wrong() -> None:
    """Superseded and stated the same is no contradiction."""
    assert found(SAME, statement(OLD, "superseded by", NEW), statement(OLD, "same part", NEW), sold=["20"]) == []


def test_same_part_and_must_not_through_a_path() -> None:
    """The ban and the path between, in order."""
    ban, more = statement(ours(), "must not", NEW), statement(OLD, "same part", NEW)
    (one,) = found(SAME, more, ban)
    assert one.kind == "same part and must not" and one.statements == (ban, SAME, more)
    assert one.words == "Norrowby 20 is said to be the same part as BELT, and that it must not"


def test_a_must_not_against_a_path_that_leads_the_other_way_is_none() -> None:
    """The newer for the older, and that the older must not serve for the newer."""
    assert found(statement(OLD, "superseded by", NEW), statement(NEW, "must not", OLD)) == []


def test_contradictions_too_many_to_walk_are_told_without_their_path(monkeypatch: pytest.MonkeyPatch) -> None:
    """What no statements tie is none, however little is walked."""
    monkeypatch.setattr("sourcing.matching.equivalences.check_ties.MOST_WALKED", 0)
    ban, apart = statement(ours(), "must not", NEW), statement(ours(), "must not", NEWER)
    (one,) = found(SAME, statement(OLD, "same part", NEW), ban, apart)
    assert one.statements == (ban,) and "many statements" in one.words


def test_a_loop_of_supersessions_names_its_numbers() -> None:
    """What only leads into the loop is not part of it."""
    round_ = (statement(NEW, "superseded by", NEWER), statement(NEWER, "superseded by", NEW))
    (one,) = found(statement(OLD, "superseded by", NEW), *round_)
    assert one.kind == "loop of supersession" and one.statements == round_
    assert one.words == "supersessions come round: Norrowby 20 -> Norrowby 30 -> Norrowby 20"


def test_a_kit_that_contains_itself() -> None:
    """Through another kit."""
    (one,) = found(statement(OLD, "kit contains", NEW), statement(NEW, "kit contains", OLD))
    assert one.kind == "kit contains itself" and len(one.statements) == 2


def test_one_number_of_two_parts_and_two_parts_tied() -> None:
    """With the way from one to the other."""
    keeper = statement(ours("KEEPER"), "same part", NEW)
    joined = statement(OLD, "superseded by", NEW)
    (one,) = found(SAME, joined, keeper, codes=("BELT", "KEEPER"))
    assert one.kind == "one number of two parts" and one.words == "Norrowby 20 is tied to BELT and to KEEPER"
    assert one.statements in ((SAME, joined, keeper), (keeper, joined, SAME))
    direct = statement(ours(), "same part", ours("KEEPER"))
    (two,) = found(direct, codes=("BELT", "KEEPER"))
    assert two.kind == "two of our parts tied together" and two.statements == (direct,)


def test_a_substitute_of_two_parts_is_no_finding() -> None:
    """It may serve for both."""
    both = (statement(ours(), "substitute", OLD), statement(ours("KEEPER"), "substitute", OLD))
    assert found(*both, codes=("BELT", "KEEPER")) == []


# B36 and 4L390 lie 36 in inside / 39 in outside; B36 has the wider section (ARPM/RMA IP-20 and IP-23).
def test_sizes_that_disagree_along_a_path() -> None:
    """Our part's size against a designation that is a number, with the statements between."""
    part = OurPart(code="BELT", name="Auger drive belt", size="B36")
    wrong, right = number("4L390", "Corrivane"), number("B36", "Dunmarrow")
    ties = (statement(OLD, "same part", wrong), statement(OLD, "same part", right))
    (one, *rest) = check_table(EquivalenceTable(parts=(part,), statements=(SAME, *ties)))
    assert one.kind == "sizes disagree" and one.statements == (SAME, ties[0]) and one.parts == (part,)
    assert {each.kind for each in rest} <= {"sizes disagree"}
    assert check_table(EquivalenceTable(parts=(part,), statements=(SAME, ties[1]))) == ()


def test_figures_alone_are_no_size() -> None:
    """A maker's number 6203 may be anything; with a suffix it is read (ISO 15: 6203 and 6204 differ in bore)."""
    assert found(statement(number("6203", "Norrowby"), "superseded by", number("6204", "Norrowby"))) == []
    (one,) = found(statement(number("6203-2RS", "Norrowby"), "superseded by", number("6204-2RS", "Norrowby")))
    assert one.kind == "sizes disagree"


def test_a_chain_that_ends_where_nobody_sells() -> None:
    """Unless the end is sold under another number, or the supersession goes on; only where sales are known."""
    end = statement(OLD, "superseded by", NEW)
    (one,) = found(SAME, end, sold=["10"])
    assert one.kind == "nobody sells it" and one.statements == (end,)
    assert found(SAME, end, statement(OTHER, "same part", NEW), sold=["40"]) == []
    assert found(SAME, end, statement(NEW, "superseded by", NEWER), sold=["30"]) == []
    assert found(SAME, end) == []


def test_doubts_and_statements_about_a_machine_nobody_can_name() -> None:
    """Each told by itself."""
    doubted = about(SAME, doubt="the old belt was longer")
    no_machine = about(SAME, serial_from="1000")
    no_maker = about(statement(OLD, "same part", number("7")), machine="NW-826")
    assert [one.kind for one in found(doubted)] == ["doubted"]
    assert [one.kind for one in found(no_machine)] == ["machine without maker"]
    assert [one.kind for one in found(no_maker)] == ["machine without maker"]


def test_makers_names_that_contradict_one_another() -> None:
    """An alias of two makers; names that come round."""
    every = [("NWB", "Norrowby"), ("N.W.B.", "Ostrevik"), ("a", "b"), ("b", "a"), ("c", "a")]
    aliases = tuple(MakerAlias(alias=one, maker=other) for one, other in every)
    told = check_table(changed(table(), aliases=aliases))
    assert [(one.kind, len(one.aliases)) for one in told] == [("one alias, two makers", 2), ("loop of makers", 2)]


def test_what_may_send_a_wrong_part_stands_first() -> None:
    """In the order of the kinds."""
    ban = statement(ours(), "must not", OLD)
    told = found(about(SAME, doubt="why"), ban, statement(OLD, "superseded by", NEW), sold=())
    assert [one.kind for one in told] == ["same part and must not", "nobody sells it", "doubted"]
    assert set(FINDING_KINDS) == set(FindingKind.__args__)  # type: ignore[attr-defined]


@pytest.mark.parametrize("seed", range(80))
def test_loops_and_contradictions_as_the_reference_finds_them(seed: int) -> None:
    """networkx: knots are strongly connected components; a must-not contradicts where a path leads to it."""
    made = random_table(seed, statements=40)
    chain, ahead = nx.DiGraph(), nx.DiGraph()
    for one in made.statements:
        if one.relation == "superseded by":
            chain.add_edge(one.left.node, one.right.node)
        if one.relation != "must not":
            ahead.add_edge(one.left.node, one.right.node)
        if one.relation == "same part":
            ahead.add_edge(one.right.node, one.left.node)
    told = check_table(made)
    knots = [one for one in nx.strongly_connected_components(chain) if len(one) > 1]
    loops = [one for one in told if one.kind == "loop of supersession"]
    assert len(loops) == len(knots)
    for loop in loops:
        nodes = [one.left.node for one in loop.statements]
        assert [one.right.node for one in loop.statements] == [*nodes[1:], nodes[0]]
        assert any(set(nodes) <= knot for knot in knots)
    bans = [one for one in made.statements if one.relation == "must not"]
    expected = [
        one
        for one in bans
        if one.left.node in ahead and one.right.node in ahead and nx.has_path(ahead, one.left.node, one.right.node)
    ]
    found = [one for one in told if one.kind == "same part and must not"]
    said = [str(ban) for one in found for ban in one.statements if ban.relation == "must not"]
    assert sorted(map(str, expected)) == sorted(said)
    assert len(found) == len({frozenset((one.left.node, one.right.node)) for one in expected})


@pytest.mark.parametrize("seed", range(80))
def test_a_number_of_two_parts_is_found_wherever_there_is_one(seed: int) -> None:
    """networkx: some number is reached from two of our parts by same part and superseded by, or none is."""
    made = random_table(seed, numbers=20, statements=25, parts=3)
    graph = nx.DiGraph()
    graph.add_nodes_from((OURS, part.code) for part in made.parts)
    for one in made.statements:
        if one.relation in ("same part", "superseded by"):
            graph.add_edge(one.left.node, one.right.node)
        if one.relation == "same part":
            graph.add_edge(one.right.node, one.left.node)
    reached = [{(OURS, part.code), *nx.descendants(graph, (OURS, part.code))} for part in made.parts]
    shared = any(one & other for at, one in enumerate(reached) for other in reached[:at])
    kinds = {one.kind for one in check_table(made)}
    assert shared == bool(kinds & {"one number of two parts", "two of our parts tied together"})


def test_a_long_loop_is_shown_in_part() -> None:
    """How much is left out is said; nothing recurses."""
    every = [number(str(at), "Norrowby") for at in range(5000)]
    links = [statement(one, "superseded by", other) for one, other in zip(every, [*every[1:], every[0]], strict=True)]
    random.Random(1).shuffle(links)
    (one,) = found(*links)
    assert len(one.statements) + one.more == 5000 and one.more > 4000 and "more" in one.words


def test_one_contradiction_is_told_once() -> None:
    """However many must-nots say it, and in whichever direction."""
    one, other = number("NW-1", "Norrowby"), number("OS-2", "Ostrevik")
    bans = (
        statement(one, "must not", other),
        statement(one, "must not", other, "maker"),
        statement(other, "must not", one),
    )
    (told,) = check_table(table(statement(one, "same part", other), *bans))
    assert set(told.statements) == {statement(one, "same part", other), *bans}
