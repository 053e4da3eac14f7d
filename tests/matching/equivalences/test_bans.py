"""Must-not beats every path: stated of any number of the family, of older ones, and of what lies behind."""

from sourcing.basics.equivalence import Bench, MakerAlias
from sourcing.basics.value import changed
from sourcing.matching.equivalences.family import Family
from sourcing.matching.equivalences.graph import families
from sourcing.matching.equivalences.number_book import bearers_of
from sourcing.matching.offer_match import Known, OfferMatch, match_offer
from tests.builders import number, offer, statement

from .tables import about, ours, table

OWN, WRONG, BEHIND = number("10", "Norrowby"), number("11", "Norrowby"), number("12", "Corrivane")


def family(*statements: object) -> Family:
    """The family of the belt."""
    return families(table(*statements))["BELT"]  # type: ignore[arg-type]


def test_what_lies_only_behind_a_forbidden_number_is_forbidden_with_it() -> None:
    """The path to it leads through what must not serve."""
    found = family(
        statement(ours(), "same part", OWN),
        statement(OWN, "same part", WRONG),
        statement(WRONG, "same part", BEHIND),
        ban := statement(OWN, "must not", WRONG),
    )
    assert found.forbidden[BEHIND.node] == ban and found.forbidden[WRONG.node] == ban
    assert OWN.node not in found.forbidden


def test_another_way_around_the_forbidden_number_serves() -> None:
    """Even if its standing is worse."""
    found = family(
        statement(ours(), "same part", WRONG),
        statement(WRONG, "same part", BEHIND),
        statement(ours(), "substitute", BEHIND, "supplier"),
        statement(ours(), "must not", WRONG),
    )
    assert BEHIND.node not in found.forbidden
    assert found.paths[BEHIND.node].standing == "supplier"


def test_what_was_said_of_an_older_number_holds_for_the_newer() -> None:
    """Tried on the old number, which ours has replaced since."""
    older = number("9", "Norrowby")
    found = family(
        statement(ours(), "same part", OWN),
        statement(older, "superseded by", OWN),
        statement(OWN, "same part", WRONG),
        statement(older, "must not", WRONG),
    )
    assert WRONG.node in found.forbidden and older.node not in found.paths


def test_a_ban_of_a_substitutes_other_user_does_not_reach_us() -> None:
    """What the substitute also serves for is another part."""
    other = number("77", "Dunmarrow")
    found = family(statement(ours(), "substitute", OWN), statement(other, "substitute", OWN))
    assert not found.forbidden
    banned = family(
        statement(ours(), "substitute", OWN), statement(other, "substitute", OWN), statement(other, "must not", WRONG)
    )
    assert WRONG.node not in banned.forbidden


def test_a_ban_for_one_machine_spares_the_others() -> None:
    """Without a machine it stands; on the machine it stands; on another it does not."""
    ban = about(statement(ours(), "must not", OWN), machine="NW-826")
    graph = families(table(statement(ours(), "same part", OWN), ban)).graph
    assert OWN.node in graph.family("BELT").forbidden
    assert OWN.node in graph.family("BELT", Bench(machine="nw826")).forbidden
    assert OWN.node not in graph.family("BELT", Bench(machine="NW-724")).forbidden


def match(maker: str, *aliases: MakerAlias) -> OfferMatch:
    """An offer of the forbidden number, from a row that names this maker."""
    tied = (statement(ours(), "same part", WRONG), statement(ours(), "must not", WRONG))
    every = families(changed(table(*tied), aliases=aliases))
    return match_offer(offer(number="11", maker=maker), every["BELT"], Known(bearers_of(every.graph)))


def test_a_forbidden_number_is_held_back_under_every_name_of_its_maker() -> None:
    """Also where the row names none: it may be that one."""
    alias = MakerAlias(alias="Norrowby Mfg.", maker="Norrowby")
    for found in (match("Norrowby"), match("NORROWBY MFG", alias), match("")):
        assert found.tier == "candidate" and found.vetoed, found
    assert match("Ostrevik").vetoed is False
