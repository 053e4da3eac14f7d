"""What words on a sheet say of cord, cover, cogs, side and count, in five languages; common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.asked import Asked
from sourcing.matching.identity.said_of import asked_by, said_of


@pytest.mark.parametrize(
    ("text", "cord", "cover", "cogs"),
    [
        ("Belt B88 aramid cord, wrapped", "aramid", "wrapped", ""),
        ("V-BELT POLYESTER RAW EDGE COGGED", "polyester", "raw edge", "cogged"),
        ("Keilriemen B88 ummantelt, Aramidzugstrang", "aramid", "wrapped", ""),
        ("Keilriemen flankenoffen, formgezahnt, Polyester", "polyester", "raw edge", "cogged"),
        ("Courroie B88 aramide enveloppée", "aramid", "wrapped", ""),
        ("Courroie flancs nus crantée", "", "raw edge", "cogged"),
        ("Correa trapezoidal dentada, poliéster, envuelta", "polyester", "wrapped", "cogged"),
        ("V-snaar omwikkeld, aramide, getand", "aramid", "wrapped", "cogged"),
        ("aramid cord, polyester-cotton fabric cover", "aramid", "", ""),
        ("Aramid cord belt, replaces polyester", "aramid", "", ""),
        ("Belt, individually wrapped", "", "", ""),
        ("AK88", "", "", ""),
        ("Belt B88", "", "", ""),
    ],
)
def test_how_a_belt_is_made(text: str, cord: str, cover: str, cogs: str) -> None:
    """K in a designation is no cord, a fabric cover no cord either, and packing no cover."""
    said = said_of(text)
    assert (said.cord.value, said.cover.value, said.cogs.value) == (cord, cover, cogs)


@pytest.mark.parametrize(
    "text",
    [
        "non-aramid cord",
        "no aramid",
        "without aramid cord",
        "ohne Aramid",
        "sans aramide",
        "sin aramida",
        "geen aramide",
    ],
)
def test_a_denied_word_is_not_said(text: str) -> None:
    said = said_of(text).cord
    assert said.value == "" and said.denied == ("aramid",)


@pytest.mark.parametrize(
    "text", ["aramid or polyester cord", "for aramid belts", "replaces aramid cord", "aramid type", "aramid optional"]
)
def test_an_unclear_word_is_a_doubt(text: str) -> None:
    """It neither meets nor contradicts what is asked."""
    said = said_of(text).cord
    assert said.value == "" and not said.denied and said.doubt


@pytest.mark.parametrize(
    ("text", "side"),
    [
        ("Keeper LH", "left"),
        ("Keeper, left-hand side", "left"),
        ("Halter links", "left"),
        ("Support gauche", "left"),
        ("Soporte izquierdo", "left"),
        ("Keeper R/H", "right"),
        ("Halter, rechte Seite", "right"),
        ("Support côté droit", "right"),
        ("Soporte derecha", "right"),
        ("Houder rechts", "right"),
        ("Roller chain 40, 44 links", ""),
        ("connecting links", ""),
        ("right angle drive", ""),
        ("Copyright 2026", ""),
        ("Bolt, left hand thread", ""),
        ("Keeper, left and right", ""),
        ("Keeper, fits either side", ""),
    ],
)
def test_sides(text: str, side: str) -> None:
    """Links of a chain and a thread's direction are no side."""
    assert said_of(text).side.value == side


@pytest.mark.parametrize(("text", "number"), [("Keeper", "NW-31207L"), ("Keeper", "NW-31207-R"), ("Keeper, L", "NW-1")])
def test_a_letter_is_only_a_question(text: str, number: str) -> None:
    """L or R on a number may mean a side, or nothing."""
    side = said_of(text, numbers=(number,)).side
    assert side.value == "" and "may mean a side" in side.doubt


@pytest.mark.parametrize(
    ("text", "sold_as", "pieces"),
    [
        ("Belt, each", "each", 0),
        ("Belt keeper, pair", "pair", 2),
        ("Riemenhalter, Paar", "pair", 2),
        ("Belts, set of 2, matched", "matched set", 2),
        ("matched pair", "matched set", 2),
        ("3er-Satz Keilriemen satzkonstant", "matched set", 3),
        ("jeu de 2 courroies appariées", "matched set", 2),
        ("juego de 3 correas emparejadas", "matched set", 3),
        ("set van 2, op elkaar afgestemd", "matched set", 2),
        ("Belt set of two", "set", 2),
        ("each, not matched", "each", 0),
        ("Carburetor rebuild kit", "kit", 0),
        ("Ersatzriemen", "", 0),
        ("Set screw 1/4-20", "", 0),
        ("Belt set", "", 0),
        ("vendu par 10", "", 0),
        ("one of a pair", "", 0),
        ("colour matched cover", "", 0),
    ],
)
def test_how_it_is_sold(text: str, sold_as: str, pieces: int) -> None:
    said = said_of(text)
    assert (said.sold_as.value, said.pieces if sold_as else 0) == (sold_as, pieces)


def test_loose_belts_deny_that_they_are_matched() -> None:
    said = said_of("each, not matched").sold_as
    assert said.denied == ("matched set",) and said.text == "each, not matched"


def test_a_lists_words_ask() -> None:
    """What is in doubt is left blank."""
    assert asked_by("wrapped, aramid cord, matched set of 2") == Asked(
        cord="aramid", cover="wrapped", sold_as="matched set", pieces=2
    )
    assert asked_by("aramid or polyester") == Asked()


@given(st.text(max_size=60), st.text(max_size=20))
def test_any_text_can_be_read(text: str, number: str) -> None:
    """Never raises, and never says a value and a doubt about the same thing."""
    said = said_of(text, numbers=(number,))
    for word in (said.cord, said.cover, said.cogs, said.side, said.sold_as):
        assert not (word.value and word.doubt)
