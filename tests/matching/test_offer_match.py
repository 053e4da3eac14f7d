"""What may match by itself, what waits for a person, and what is held back."""

import pytest
from rapidfuzz.distance import OSA

from sourcing.basics.equivalence import EquivalenceTable, OurPart, Statement
from sourcing.basics.number_rule import NumberRule
from sourcing.basics.part_number import OURS, number_key
from sourcing.basics.value import changed
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families
from sourcing.matching.look_alikes import look_alike, near_keys
from sourcing.matching.numbers.after_spreadsheet import spreadsheet_made
from sourcing.matching.offer_match import Known, OfferMatch, match_offer
from tests.builders import number, offer, statement

PARTS = (OurPart(code="BELT", name="Belt", size="B36"), OurPart(code="KEEPER", name="Keeper"))
BELT, KEEPER = number("BELT", OURS), number("KEEPER", OURS)
MAKER = number("NW-40388", "Norrowby")
TABLE: tuple[Statement, ...] = (
    statement(BELT, "same part", MAKER, "maker"),
    statement(MAKER, "same part", number("CV-B36K", "Corrivane"), "fitted"),
    statement(MAKER, "same part", number("DM-77120", "Dunmarrow"), "supplier"),
    statement(KEEPER, "same part", number("NW-31207", "Norrowby"), "maker"),
)


def match(more: tuple[Statement, ...] = (), **fields: object) -> OfferMatch:
    """Match an offer against the belt."""
    every = families(EquivalenceTable(parts=PARTS, statements=TABLE + more))
    return match_offer(offer(**fields), every["BELT"], Known(bearers(every.values())))  # type: ignore[arg-type]


@pytest.mark.parametrize("printed", ["NW-40388", "nw 40388", "NW40388", " Nw.40388 "])
def test_the_same_key_and_maker_match_by_themselves(printed: str) -> None:
    """Case, spaces and punctuation are set aside."""
    assert match(number=printed, maker="NORROWBY").tier == "automatic"


# One damaged character each: the families of damage are common practice, no source.
@pytest.mark.parametrize("printed", ["NW-4O388", "NW-40338", "NW-40838", "NW-4038", "NW-403888", "NW-040388", "40388"])
def test_a_different_character_is_a_different_part(printed: str) -> None:
    """O for 0, another digit, a swap, a lost or doubled digit, an added zero, a lost prefix: no match by themselves."""
    assert match(number=printed, maker="Norrowby").tier == "none"


def test_another_makers_same_number_waits_for_a_person() -> None:
    """Same digits, other maker."""
    found = match(number="NW-40388", maker="Dunmarrow")
    assert found.tier == "candidate" and "names Dunmarrow" in found.reasons[0]


def test_without_a_maker_the_number_must_be_unmistakable() -> None:
    """Automatic while one part bears it; a question as soon as two do."""
    assert match(number="NW-40388").tier == "automatic"
    twin = statement(KEEPER, "same part", number("NW 40388", "Dunmarrow"), "maker")
    assert match((twin,), number="NW-40388").tier == "candidate"


def test_a_suppliers_word_alone_is_not_enough() -> None:
    """Standing 'supplier' waits; 'fitted' does not."""
    assert match(number="DM-77120", maker="Dunmarrow").tier == "candidate"
    assert match(number="CV-B36K", maker="Corrivane").tier == "automatic"


def test_must_not_beats_a_good_path() -> None:
    """Even the maker's own path."""
    ban = statement(BELT, "must not", number("CV-B36K", "Corrivane"))
    found = match((ban,), number="CV-B36K", maker="Corrivane")
    assert found.vetoed and "must not" in found.reasons[0]


def test_a_size_that_differs_holds_the_right_number_back() -> None:
    """The row says 4L390 under the right number: a person must look."""
    found = match(number="NW-40388", maker="Norrowby", description="BELT 4L390")
    assert found.tier == "candidate" and found.vetoed and "different section" in found.reasons[0]


def test_a_size_that_agrees_makes_no_match() -> None:
    """Right size, unknown number: nothing follows."""
    assert match(number="ZZ-1", maker="Corrivane", description="Belt B36 aramid").tier == "none"


def test_numbers_tied_to_two_parts_are_a_contradiction() -> None:
    """The supplier's row ties the belt's number to the keeper's."""
    found = match(number="NW-31207", maker_number="NW-40388", maker="Norrowby")
    assert found.tier == "candidate" and found.vetoed


def test_near_numbers_are_listed_for_a_person_with_size_and_score() -> None:
    """The near number that is a wrong belt is shown, held back, and never ranked."""
    every = families(EquivalenceTable(parts=PARTS, statements=TABLE))
    wrong = offer(number="NW-40338", maker="Norrowby", description="Belt, auger drive, 4L390 1/2 x 39")
    keys = near_keys(every["BELT"], ["NW40338", "NW99999", "NW40388"])
    assert set(keys) == {"NW40338"}
    near = look_alike(wrong, every["BELT"], keys)
    assert near is not None and near.vetoed
    assert near.near == MAKER and "1 character different" in near.reasons[0]
    assert 0 < near.score < 1


def test_edit_distance_is_rapidfuzz_osa() -> None:
    """A swap of neighbours is one slip, as in the restricted Damerau-Levenshtein distance (reference: rapidfuzz)."""
    assert OSA.distance(number_key("NW-40838"), number_key("NW-40388")) == 1


def test_a_suppliers_own_number_says_nothing_on_anothers_sheet() -> None:
    """Two suppliers may use one number for two things: only the sheet of the supplier it belongs to speaks of it."""
    own = statement(BELT, "same part", number("S-77210", "stonegarth"), "fitted")
    every = families(EquivalenceTable(parts=PARTS, statements=(*TABLE, own)))
    known = Known(bearers(every.values()), {one: frozenset((one,)) for one in ("stonegarth", "pellbrook")})

    def tier(supplier: str) -> str:
        one = changed(offer(number="S-77210"), supplier=supplier)
        return match_offer(one, every["BELT"], known).tier

    assert tier("stonegarth") == "automatic"
    assert tier("pellbrook") == "none"


def test_a_confirmed_prefix_is_taken_off() -> None:
    """Only that supplier's, and only once somebody has confirmed it."""
    every = families(EquivalenceTable(parts=PARTS, statements=TABLE))
    one = changed(offer(number="PB-NW-40388", maker="Norrowby"), supplier="pellbrook")
    plain = Known(bearers(every.values()))
    rule = NumberRule(supplier="pellbrook", kind="prefix", text="PB-")
    ruled = Known(plain.bearers, rules={"pellbrook": (rule,)})
    assert match_offer(one, every["BELT"], plain).tier == "none"
    assert match_offer(one, every["BELT"], ruled).tier == "automatic"
    other = changed(one, supplier="stonegarth")
    assert match_offer(other, every["BELT"], ruled).tier == "none"


def test_no_sheet_speaks_of_our_own_codes() -> None:
    """A row that calls its maker '(ours)' names nobody."""
    assert match(number="BELT", maker="(ours)").tier == "none"
    assert match(number="BELT").tier == "none"


@pytest.mark.parametrize(
    ("maker", "words", "said"),
    [
        ("", "Wheel nut M10 zinc", "is hardly about"),
        ("Norrowby", "Belt, left", ""),
        ("Norrowby", "Belt, remanufactured", "used or remanufactured"),
    ],
)
def test_words_may_hold_a_number_back(maker: str, words: str, said: str) -> None:
    """A row without a maker must be about the part; whoever its maker is, used is not new."""
    found = match(number="NW-40388", maker=maker, description=words)
    assert found.tier == ("candidate" if said else "automatic")
    assert not said or any(said in reason for reason in found.reasons)


def test_a_suppliers_number_beside_a_blank_makers_number_is_his_own() -> None:
    """The sheet has a column for makers' numbers; this row leaves it blank."""
    every = families(EquivalenceTable(parts=PARTS, statements=TABLE))
    one = offer(number="NW-40388", maker="Norrowby", description="Belt")
    plain = Known(bearers(every.values()))
    two = Known(plain.bearers, two_columns=frozenset((one.source.sheet,)))
    assert match_offer(one, every["BELT"], plain).tier == "automatic"
    assert match_offer(one, every["BELT"], two).tier == "candidate"


def test_a_size_in_the_parts_name_holds_back_too() -> None:
    """Nobody entered it in the column of sizes, but the name says it for certain."""
    parts = (OurPart(code="BELT", name="Auger belt A42"), OurPart(code="KEEPER", name="Keeper"))
    every = families(EquivalenceTable(parts=parts, statements=TABLE))
    found = match_offer(
        offer(number="NW-40388", maker="Norrowby", description="Belt A44"),
        every["BELT"],
        Known(bearers(every.values())),
    )
    assert found.tier == "candidate" and found.vetoed


def test_a_number_a_spreadsheet_may_have_made_of_another_asks() -> None:
    """12345 is ours and so is 012345: the row may mean either."""
    parts = (OurPart(code="BELT", name="Belt"), OurPart(code="KEEPER", name="Keeper"))
    said = (
        statement(number("BELT", OURS), "same part", number("12345", "Norrowby"), "maker"),
        statement(number("KEEPER", OURS), "same part", number("012345", "Norrowby"), "maker"),
    )
    every = families(EquivalenceTable(parts=parts, statements=said))
    keys = sorted(bearers(every.values()))
    made = {keys[at]: others for at, others in spreadsheet_made(keys).items()}
    known = Known(bearers(every.values()), spreadsheet=made)
    found = match_offer(offer(number="12345", maker="Norrowby", description="Belt"), every["BELT"], known)
    assert found.tier == "candidate" and "of 012345" in found.reasons[0]


def test_words_that_differ_are_said_beside_a_makers_number() -> None:
    """The maker's number decides, in any language; nothing is silent."""
    found = match(number="NW-40388", maker="Norrowby", description="Cinghia trapezoidale")
    assert found.tier == "automatic" and any("Cinghia trapezoidale" in words for words in found.warnings)
    assert match(number="NW-40388", maker="Norrowby", description="V-belt B36").warnings == ()


@pytest.mark.parametrize(
    ("name", "words", "tier"),
    [
        ("Auger drive belt", "Mower deck belt", "candidate"),
        ("Idler bearing", "Bearing puller", "candidate"),
        ("Spark plug", "Spark arrestor", "candidate"),
        ("Auger drive belt", "Belt, auger", "automatic"),
        ("Auger drive belt", "", "automatic"),
    ],
)
def test_one_word_is_not_enough_where_no_maker_is_named(name: str, words: str, tier: str) -> None:
    """Half of the shorter one's words may be chance."""
    parts = (OurPart(code="BELT", name=name), OurPart(code="KEEPER", name="Keeper"))
    every = families(EquivalenceTable(parts=parts, statements=TABLE))
    found = match_offer(offer(number="NW-40388", description=words), every["BELT"], Known(bearers(every.values())))
    assert found.tier == tier


def test_a_number_behind_a_forbidden_one_says_through_which_it_is_reached() -> None:
    """The statement speaks of the number in between, not of this one."""
    between, behind = number("CV-B36K", "Corrivane"), number("OV-2000", "Ostrevik")
    more = (statement(BELT, "must not", between), statement(between, "same part", behind, "maker"))
    found = match(more, number="OV-2000", maker="Ostrevik")
    assert found.vetoed and "Ostrevik OV-2000 is reached only through Corrivane CV-B36K" in found.reasons[0]
    direct = match(more, number="CV-B36K", maker="Corrivane")
    assert direct.reasons[0].startswith("Corrivane CV-B36K must not serve for BELT")


def test_conditions_that_cannot_both_hold_make_a_path_a_question() -> None:
    """A substitute with a spacer, and its substitute without one."""
    one, other = number("NW-5001", "Norrowby"), number("NW-5002", "Norrowby")
    more = (
        changed(statement(MAKER, "substitute", one, "maker"), condition="with spacer"),
        changed(statement(one, "substitute", other, "maker"), condition="without spacer"),
    )
    assert match(more, number="NW-5001", maker="Norrowby").tier == "automatic"
    found = match(more, number="NW-5002", maker="Norrowby")
    assert found.tier == "candidate" and "contradict each other: 'with spacer' and 'without spacer'" in found.reasons[0]
