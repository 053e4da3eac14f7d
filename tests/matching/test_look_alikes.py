"""Near numbers on the comparison: found as by brute force, and weighed by how crowded they are."""

from random import Random

import pytest
from rapidfuzz.distance import OSA

from sourcing.basics.equivalence import EquivalenceTable, OurPart, Statement
from sourcing.basics.part_number import OURS
from sourcing.matching.equivalences.family import Family
from sourcing.matching.equivalences.graph import families
from sourcing.matching.look_alikes import by_chance, look_alike, most_slips, near_keys, near_lengths
from tests.builders import number, offer, statement

PARTS = (OurPart(code="BELT", name="Auger drive belt", size="B36"),)
BELT, MAKER = number("BELT", OURS), number("NW-40388", "Norrowby")


def family(*more: Statement) -> Family:
    """The belt with its maker's number and more."""
    said = (statement(BELT, "same part", MAKER, "maker"), *more)
    return families(EquivalenceTable(parts=PARTS, statements=said))["BELT"]


@pytest.mark.parametrize("seed", range(5))
def test_near_keys_are_those_of_brute_force(seed: int) -> None:
    """Every pair compared (reference: rapidfuzz's optimal string alignment distance), repeated keys and all."""
    random = Random(seed)
    ours = family(
        statement(MAKER, "same part", number("2041", "Ostrevik"), "maker"),
        statement(MAKER, "same part", number("20417", "Ostrevik"), "maker"),
        statement(MAKER, "same part", number("CV-B36K-0041", "Corrivane"), "maker"),
    )
    bases = ["NW40388", "20417", "CVB36K0041", "2041", "BELT"]
    keys = [_damaged(random.choice(bases), random) for _ in range(2000)]
    own = [key for key in ours.number_keys() if len(key) >= 5]
    brute = {
        key: {one for one in own if OSA.distance(key, one) <= most_slips(one)} for key in set(keys) - ours.number_keys()
    }
    found = near_keys(ours, [key for key in keys if len(key) in near_lengths(ours)])
    assert {key: set(near) for key, near in found.items()} == {key: some for key, some in brute.items() if some}
    assert found


def _damaged(key: str, random: Random) -> str:
    for _ in range(random.randrange(4)):
        at = random.randrange(len(key))
        other = random.choice("0123456789BW")
        swapped = key[:at] + key[at : at + 2][::-1] + key[at + 2 :]
        changed = [key[:at] + other + key[at + 1 :], key[:at] + key[at + 1 :], key[:at] + other + key[at:], swapped]
        key = random.choice(changed) or "X"
    return key


def test_one_near_number_among_few_is_shown_by_itself() -> None:
    """Seven characters, and nothing else like it on any sheet."""
    keys = near_keys(family(), ["NW40338", "QX1", "DM77120"])
    found = look_alike(offer(number="NW-40338", maker="Norrowby"), family(), keys)
    assert found is not None and found.reasons == ("looks like Norrowby NW-40388: 1 character different",)


def test_in_a_crowd_a_near_number_says_nothing_by_itself() -> None:
    """Eight numbers stand one character from ours: seven at least are other articles."""
    crowd = [f"NW4038{figure}" for figure in "01234567"]
    keys = near_keys(family(), crowd)
    assert set(keys) == set(crowd)

    def shown(words: str) -> bool:
        return look_alike(offer(number="NW-40383", maker="Norrowby", description=words), family(), keys) is not None

    assert not shown("") and not shown("Wheel nut M10") and not shown("item 40383")
    assert shown("Belt, auger drive") and shown("Keilriemen") and shown("V-belt B36")


def test_numbers_given_out_at_random_crowd_by_their_count() -> None:
    """45 numbers of five figures are one figure from ours: of 20,000 among 100,000, nine by chance."""
    keys = "\n".join(f"{at:05d}" for at in range(0, 100_000, 5))
    assert by_chance("40388", keys) == pytest.approx(9.0)
    assert by_chance("NW40388", keys) == 0.0


def test_words_that_agree_come_first_and_another_maker_last() -> None:
    """The score orders the list."""
    keys = near_keys(family(), ["NW40338"])

    def points(maker: str, words: str) -> float:
        found = look_alike(offer(number="NW-40338", maker=maker, description=words), family(), keys)
        return found.score if found else 0.0

    assert points("Norrowby", "Auger belt") > points("Norrowby", "") > points("Dunmarrow", "")


def test_what_looks_like_a_forbidden_number_is_no_candidate() -> None:
    """Nobody looks for what must not serve."""
    ban = statement(BELT, "must not", number("NW-99120", "Norrowby"), "maker")
    replaced = statement(MAKER, "superseded by", number("NW-99120", "Norrowby"), "maker")
    assert not near_keys(family(replaced, ban), ["NW99121"])
    assert near_keys(family(replaced), ["NW99121"])


def test_two_slips_are_near_only_in_a_long_number() -> None:
    """CVB36K0041 has ten characters, NW40388 seven."""
    ours = family(statement(MAKER, "same part", number("CV-B36K-0041", "Corrivane"), "maker"))
    assert set(near_keys(ours, ["CVB36K0014", "CVB37K0042", "NW40399", "NW40378"])) == {
        "CVB36K0014",
        "CVB37K0042",
        "NW40378",
    }
