"""A maker under all his names."""

import random

from sourcing.basics.equivalence import EquivalenceTable, MakerAlias
from sourcing.basics.part_number import OURS
from sourcing.basics.value import changed
from sourcing.matching.equivalences.graph import families
from sourcing.matching.equivalences.makers import Makers
from tests.builders import number, statement

from .tables import ours, table


def alias(name: str, maker: str) -> MakerAlias:
    """Another name of a maker."""
    return MakerAlias(alias=name, maker=maker)


def test_every_spelling_gives_the_key_of_the_shops_name() -> None:
    """Case and punctuation are set aside, a chain of aliases is followed, others stay themselves."""
    makers = Makers([alias("NWB", "Norrowby Mfg"), alias("Norrowby-Mfg.", "Norrowby")])
    assert {makers.key(name) for name in ("nwb", "NORROWBY MFG", "Norrowby", "N.W.B.")} == {"norrowby"}
    assert makers.key("Ostrevik") == "ostrevik" and makers.key("") == "" and makers.key(OURS) == OURS


def test_what_is_told_two_ways_resolves_to_nothing() -> None:
    """An alias of two makers, and names that come round: each stays itself, whatever leads there."""
    makers = Makers([alias("NWB", "Norrowby"), alias("NWB", "Ostrevik"), alias("nb", "NWB")])
    assert makers.key("NWB") == "nwb" and makers.key("nb") == "nwb"
    loop = Makers([alias("a", "b"), alias("b", "c"), alias("c", "b")])
    assert [loop.key(name) for name in "abc"] == ["a", "b", "c"]


def test_the_order_of_aliases_does_not_matter() -> None:
    """Shuffled chains, forks and loops."""
    chance = random.Random(4)
    names = [f"maker {at}" for at in range(12)]
    every = [alias(*chance.sample(names, 2)) for _ in range(9)]
    first = [Makers(every).key(name) for name in names]
    for _ in range(30):
        chance.shuffle(every)
        assert [Makers(every).key(name) for name in names] == first


def test_ours_is_nobodys_alias() -> None:
    """However it came into the table."""
    assert Makers([alias("Norrowby", OURS), alias(OURS, "Ostrevik")]).key("Norrowby") == "norrowby"


def test_statements_under_two_names_of_a_maker_meet() -> None:
    """The table's families use the aliases."""
    said = (
        statement(ours(), "same part", number("10", "Norrowby Mfg")),
        statement(number("10", "NORROWBY"), "same part", number("20", "Corrivane")),
    )
    apart: EquivalenceTable = table(*said)
    joined = changed(apart, aliases=(alias("Norrowby Mfg", "Norrowby"),))
    assert ("corrivane", "20") not in families(apart)["BELT"].paths
    assert len(families(joined)["BELT"].paths[("corrivane", "20")].links) == 2
