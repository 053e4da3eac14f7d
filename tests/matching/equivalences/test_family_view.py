"""One number looked up: whose it is, how each number is reached, and what a drawing needs."""

from itertools import pairwise

from sourcing.basics.equivalence import Bench
from sourcing.basics.family_view import FamilyView
from sourcing.basics.value import from_json, to_json
from sourcing.matching.equivalences.family_view import family_view
from sourcing.matching.equivalences.graph import graph_of
from tests.builders import number, statement

from .tables import about, ours, random_table, table

OLD, NEW, OTHER, WRONG = number("10", "Norrowby"), number("20", "Norrowby"), number("C1"), number("10", "Dunmarrow")
KIT = number("K1", "Norrowby")
SAID = (
    statement(ours(), "same part", OLD, "maker"),
    statement(OLD, "superseded by", NEW, "maker"),
    about(statement(OLD, "same part", OTHER, "supplier"), machine="NW-826"),
    statement(OLD, "must not", WRONG),
    about(statement(KIT, "kit contains", OLD), count=2),
    statement(ours(), "must not", OTHER),
)
GRAPH = graph_of(table(*SAID))


def test_the_family_stands_by_steps_with_path_standing_and_ban() -> None:
    """Our part first; whether sold, newest, forbidden, asked is said of each."""
    (family,) = family_view(GRAPH, "1-0", sold={"10", "20"}, maker="NORROWBY").families
    assert [one.number for one in family.members] == [ours(), OLD, NEW, OTHER]
    assert [one.standing for one in family.members] == ["fitted", "maker", "maker", "supplier"]
    assert [one.sold for one in family.members] == [False, True, True, False]
    assert [one.steps for one in family.members] == [0, 1, 2, 2]
    by_number = {one.number.printed: one for one in family.members}
    assert by_number["20"].newest and not by_number["10"].newest and by_number["10"].asked
    assert by_number["C1"].forbidden == SAID[5] and by_number["C1"].conditions == ("machine NW-826",)
    assert by_number["20"].path.links == SAID[:2]


def test_banned_numbers_without_a_path_and_kits_stand_beside() -> None:
    """Neither is a member."""
    (family,) = family_view(GRAPH, "BELT").families
    assert [(one.number, one.statement) for one in family.banned] == [(WRONG, SAID[3])]
    assert [(one.number, one.count) for one in family.in_kits] == [(KIT, 2)]
    assert {one.sold for one in family.members} == {None} and not family.dead_ends


def test_edges_name_their_ends_and_which_are_on_a_path() -> None:
    """Every statement between members once."""
    (family,) = family_view(GRAPH, "BELT").families
    for edge in family.edges:
        assert family.members[edge.left].number.node == edge.statement.left.node
        assert family.members[edge.right].number.node == edge.statement.right.node
    assert [(edge.statement, edge.on_path) for edge in family.edges] == [
        (SAID[0], True), (SAID[1], True), (SAID[2], True), (SAID[5], False),
    ]  # fmt: skip


def test_a_number_of_several_makers_or_parts_shows_every_family() -> None:
    """Without a maker both are meant; a number of no part of ours starts by itself."""
    two = graph_of(table(*SAID, statement(ours("OTHER"), "same part", WRONG), codes=("BELT", "OTHER")))
    parts = [one.part.code for one in family_view(two, "10").families if one.part]
    assert parts == ["BELT", "OTHER"]
    (alone,) = family_view(GRAPH, "K1").families
    assert alone.part is None and [(one.number, one.count) for one in alone.contents] == [(OLD, 2)]
    assert family_view(GRAPH, "nothing").families == () and family_view(GRAPH, "--").families == ()


def test_the_same_number_of_another_maker_that_no_part_bears_is_shown_too() -> None:
    """Dunmarrow's 10 is not our Norrowby 10, and must not serve for it."""
    ours_, alone = family_view(GRAPH, "10").families
    assert ours_.part and ours_.part.code == "BELT" and alone.part is None
    assert [one.number for one in alone.members] == [WRONG]


def test_of_very_many_families_some_are_left_out_and_counted() -> None:
    """Thirty parts under one number."""
    codes = [f"P{at}" for at in range(30)]
    view = family_view(graph_of(table(*(statement(ours(code), "same part", OLD) for code in codes), codes=codes)), "10")
    assert len(view.families) + view.left_out == 30 and view.left_out > 0


def test_an_older_number_leads_to_our_part() -> None:
    """It is not a number of ours, but shows where it went."""
    older = number("5", "Norrowby")
    (family,) = family_view(graph_of(table(*SAID, statement(older, "superseded by", OLD))), "5").families
    assert family.part is None and ours() in [one.number for one in family.members]


def test_a_dead_end_is_told_where_sales_are_known() -> None:
    """The newest is not sold: the one before counts, the end is said."""
    (family,) = family_view(GRAPH, "BELT", sold={"10"}).families
    assert [one.number for one in family.members if one.newest] == [OLD]
    assert [one.number for one in family.dead_ends] == [NEW]


def test_a_forbidden_number_is_never_the_newest_nor_a_way_into_a_kit() -> None:
    """Though it is sold and a kit holds it."""
    ban, kit = statement(ours(), "must not", NEW), statement(KIT, "kit contains", NEW)
    graph = graph_of(table(*SAID[:2], ban, kit))
    (family,) = family_view(graph, "BELT", sold={"10", "20"}).families
    assert [one.number for one in family.members if one.newest] == [OLD]
    assert family.in_kits == () and family.members[-1].forbidden == ban


def test_a_machine_on_the_bench_leaves_aside_what_is_not_for_it() -> None:
    """And says why."""
    (family,) = family_view(GRAPH, "BELT", bench=Bench(machine="NW-724")).families
    assert OTHER not in [one.number for one in family.members]
    assert [one.statement for one in family.not_followed] == [SAID[2]]


def test_the_order_of_the_table_does_not_matter_and_a_view_survives_json() -> None:
    """Members, paths, bans; edges stand in the order of the table."""
    for seed in range(20):
        made = random_table(seed)
        backwards = table(*made.statements[::-1], codes=[one.code for one in made.parts])
        one, other = (family_view(graph_of(each), "P0", sold={"100", "103"}) for each in (made, backwards))
        for left, right in zip(one.families, other.families, strict=True):
            assert (left.members, left.banned, left.dead_ends) == (right.members, right.banned, right.dead_ends)
        assert from_json(to_json(one), FamilyView) == one


def test_a_family_too_large_to_show_says_how_many_are_left_out() -> None:
    """A chain of a thousand numbers."""
    chain = [number(str(at), "Norrowby") for at in range(1000)]
    links = [statement(one, "superseded by", other) for one, other in pairwise(chain)]
    graph = graph_of(table(statement(ours(), "same part", chain[0]), *links))
    (family,) = family_view(graph, "BELT", sold={"999"}).families
    assert len(family.members) + family.left_out == 1001 and family.left_out > 0
    assert family.members[-1].steps == len(family.members) - 1
