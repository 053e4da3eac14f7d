"""What the words of an offer say beside a number that agrees: another article, another size, or the same in German."""

from datetime import date

import pytest

from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.judgement import RowYes
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families
from sourcing.matching.offer_match import Known, OfferMatch, match_offer
from tests.builders import number, offer, statement
from tests.matching.test_offer_match import BELT, MAKER, PARTS, match


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("Wheel nut M10", "another article: nut, wheel, where ours is belt"),
        ("Belt guard", "another article: it names guard"),
        ("Riemenhalter", "another article"),
        ("Belt kit", "a kit or set, where ours is none"),
        ("Belt, replacement for Norrowby NW-40388", "in place of another: 'replacement'"),
    ],
)
def test_another_article_under_the_makers_number_is_not_ranked(words: str, why: str) -> None:
    """Maker and number agree, and the row's words name another thing: for a person, held back."""
    found = match(number="NW-40388", maker="Norrowby", description=words)
    assert found.tier == "candidate" and found.vetoed
    assert any(why in reason for reason in found.reasons), found.reasons


@pytest.mark.parametrize("words", ["Keilriemen", "Belt for 724", "Belt with guard", "Set of 2 belts", "Courroie"])
def test_the_same_article_in_other_words_is_automatic_without_a_warning(words: str) -> None:
    """In five languages it is known to be a belt."""
    found = match(number="NW-40388", maker="Norrowby", description=words)
    assert found.tier == "automatic" and found.warnings == ()


def test_a_short_number_without_maker_and_words_asks() -> None:
    """Four figures alone are borne by many things; seven characters are not, nor does the size come by chance."""
    said = (
        statement(BELT, "same part", number("7045", "Norrowby"), "maker"),
        statement(BELT, "same part", number("B36", "Corrivane"), "maker"),
    )
    every = families(EquivalenceTable(parts=PARTS, statements=said))

    def tier(printed: str) -> str:
        return match_offer(offer(number=printed), every["BELT"], Known(bearers(every.values()))).tier

    assert tier("7045") == "candidate" and tier("B36") == "automatic"


def test_a_bearings_own_number_says_its_size() -> None:
    """Nobody entered a size; under number 6203 the row sells a 6204 (20 mm bore against 17 mm, ISO 15)."""
    parts = (OurPart(code="BELT", name="Idler bearing"), OurPart(code="KEEPER", name="Keeper"))
    said = (statement(BELT, "same part", number("6203", "Corrivane"), "maker"),)
    every = families(EquivalenceTable(parts=parts, statements=said))
    known = Known(bearers(every.values()))

    def tier(words: str) -> str:
        return match_offer(offer(number="6203", maker="Corrivane", description=words), every["BELT"], known).tier

    assert tier("Bearing 6204-2RS") == "candidate" and tier("Ball bearing 6203") == "automatic"


def test_opposite_words_hold_back_unless_a_substitute_was_stated() -> None:
    """Steel for poly under one number is a question; whoever stated a substitute of poly knew what it is."""
    parts = (OurPart(code="BELT", name="Steel skid shoe"), OurPart(code="KEEPER", name="Keeper"))
    other = number("NW-53408", "Norrowby")
    said = (statement(BELT, "same part", MAKER, "maker"), statement(MAKER, "substitute", other, "fitted"))
    every = families(EquivalenceTable(parts=parts, statements=said))

    def found(printed: str) -> OfferMatch:
        row = offer(number=printed, maker="Norrowby", description="Skid shoe, poly")
        return match_offer(row, every["BELT"], Known(bearers(every.values())))

    assert found("NW-40388").vetoed and "poly against steel" in found("NW-40388").reasons
    assert found("NW-53408").tier == "automatic"


@pytest.mark.parametrize(
    ("name", "words", "why"),
    [
        ("Idler pulley 3/8 bore", "Idler pulley 17 mm bore", "sizes that may differ: 17 mm against 3/8"),
        ("Skid shoe left", "Skid shoe LH/RH", "one is for both sides"),
    ],
)
def test_another_size_or_side_under_the_makers_number_is_held_back(name: str, words: str, why: str) -> None:
    """As in whole sheets, by the same rule."""
    parts = (OurPart(code="BELT", name=name), OurPart(code="KEEPER", name="Keeper"))
    every = families(EquivalenceTable(parts=parts, statements=(statement(BELT, "same part", MAKER, "maker"),)))
    row = offer(number="NW-40388", maker="Norrowby", description=words)
    found = match_offer(row, every["BELT"], Known(bearers(every.values())))
    assert found.vetoed and any(why in reason for reason in found.reasons), found


def test_words_that_share_none_and_one_in_anothers_place_are_told() -> None:
    """The number decides, and a person is told; a plural or another spelling shares the word."""
    parts = (OurPart(code="BELT", name="Paddles, rubber"), OurPart(code="KEEPER", name="Keeper"))
    every = families(EquivalenceTable(parts=parts, statements=(statement(BELT, "same part", MAKER, "maker"),)))

    def warned(words: str) -> tuple[str, ...]:
        row = offer(number="NW-40388", maker="Norrowby", description=words)
        found = match_offer(row, every["BELT"], Known(bearers(every.values())))
        assert found.tier == "automatic"
        return found.warnings

    assert warned("Paddle, rubbers") == warned("Rubber paddle, grooved and thick") == ()
    assert warned("Paddle, vulcanised")[0].startswith("its words differ from ours in one: vulcanised against rubber")
    assert warned("Schaufelgummi")[0].startswith("its words 'Schaufelgummi' share none with ours")


KIT = (OurPart(code="BELT", name="Carburettor gasket kit"), OurPart(code="KEEPER", name="Keeper"))


def carb_kit(words: str, *yes: RowYes, maker: str = "Norrowby") -> OfferMatch:
    """A row under the number a maker's statement ties to the gasket kit."""
    every = families(EquivalenceTable(parts=KIT, statements=(statement(BELT, "same part", MAKER, "maker"),)))
    row = offer(number="NW-40388", maker=maker, description=words)
    judged = {(row.supplier, "NW40388"): yes}
    return match_offer(row, every["BELT"], Known(bearers(every.values()), judged=judged))


def said_yes(words: str, why: str = "same bag", part: str = "BELT", maker: str = "Norrowby") -> RowYes:
    """Oona Brandeth's yes to the row with that description."""
    row = offer(number="NW-40388", maker=maker, description=words)
    fields = {"supplier": row.supplier, "supplier_number": "nw 40388", "maker": maker, "maker_number": ""}
    return RowYes(**fields, description=words, part=part, who="Oona Brandeth", on=date(2026, 3, 2), words=why)


@pytest.mark.parametrize(
    "words", ["Vergaser-Dichtsatz", "Vergaserdichtsatz", "Joint carburateur", "Joints carburateur"]
)
def test_a_gasket_in_other_languages_is_the_gasket(words: str) -> None:
    """The German and French words are common practice, no source."""
    assert carb_kit(words).tier == "automatic"


@pytest.mark.parametrize("words", ["CARB KIT", "Vergaser", "Kit, carburettor"])
def test_what_its_words_do_not_name_is_a_question_and_no_other_article(words: str) -> None:
    """The maker's number is tied by the maker's statement: words that say less may mean the same."""
    found = carb_kit(words)
    assert found.tier == "candidate" and not found.vetoed
    assert found.reasons == ("ours is gasket, which its words do not name: whether they mean it is not known",)


def test_a_persons_yes_to_the_very_row_lets_it_match_with_her_name() -> None:
    """For a question and for words that speak against it alike; what they say stays beside her name."""
    asked = carb_kit("CARB KIT", said_yes("Carb  kit", why=""))
    assert asked.tier == "automatic" and asked.on_word_of is not None
    assert asked.warnings[0].startswith("judged to be BELT by Oona Brandeth on 2026-03-02 (although: ours is gasket")
    held = carb_kit("Carburettor bowl", said_yes("Carburettor bowl"))
    assert held.tier == "automatic" and "same bag (although: by its words another article" in held.warnings[0]


@pytest.mark.parametrize(
    "yes",
    [
        said_yes("Carburettor bowl", why=""),
        said_yes("Carburettor bowl, small"),
        said_yes("Carburettor bowl", part="KEEPER"),
        said_yes("Carburettor bowl", maker="Dunmarrow"),
    ],
)
def test_a_yes_without_a_reason_or_to_another_row_covers_nothing(yes: RowYes) -> None:
    """Other words on a later sheet, another part, another maker, or no reason for what speaks against it."""
    found = carb_kit("Carburettor bowl", yes)
    assert found.tier == "candidate" and found.vetoed


def test_no_yes_covers_a_size_or_a_must_not() -> None:
    """Words may be read otherwise by a person; a section of a published standard and our own must-not may not."""
    every = families(EquivalenceTable(parts=PARTS, statements=(statement(BELT, "same part", MAKER, "maker"),)))
    row = offer(number="NW-40388", maker="Norrowby", description="Used belt A36")
    yes = said_yes("Used belt A36")
    found = match_offer(row, every["BELT"], Known(bearers(every.values()), judged={(row.supplier, "NW40388"): (yes,)}))
    assert found.tier == "candidate" and found.vetoed and "section" in found.reasons[0], found.reasons
