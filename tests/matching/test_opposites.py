"""Words that no part is at once, words denied on one side, and one word in the place of another."""

import pytest

from sourcing.matching.opposites import excluded, replaced


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        ("Gas cap non-vented", "Gas cap vented", "vented against none"),
        ("Gas cap unvented", "Gas cap vented", "vented against none"),
        ("Carburetor without primer", "Carburetor with primer", "primer against none"),
        ("Ignition coil w/o diode", "Ignition coil with a diode", "diode against none"),
        ("Zündkerze nicht entstört", "Zündkerze entstört", "entstort against none"),
        ("Lame sans ailettes 48 cm", "Lame avec ailettes 48 cm", "ailettes against none"),
        ("Seilzug Kupplung", "Seilzug Bremse", "kupplung against bremse"),
        ("Joint d'échappement", "Joint d'admission", "echappement against admission"),
        ("Blade clockwise", "Blade counterclockwise", "clockwise against counterclockwise"),
        ("Switch N.O. no", "Switch nc", "no against nc"),
        ("Air filter, not washable", "Air filter", ""),
        ("Pin, not sold singly", "Pin, sold in tens", "sold against none"),
        ("Wheel, part no 12345", "Wheel 12345", ""),
        ("Belt, not matched", "Belts, matched", ""),
        ("Kit without gasket", "Kit without gasket, new", ""),
        ("Auger drive belt", "Auger belt", ""),
        ("unit price", "it price", ""),
    ],
)
def test_what_no_part_is_at_once(one: str, other: str, said: str) -> None:
    """Whichever of the two says it."""
    assert excluded(one, other) == said
    assert bool(excluded(other, one)) == bool(said)


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        ("Carburetor winter", "Carburetor, summer", "winter against summer"),
        ("Fil nylon 2,4 carré", "Fil nylon 2,4 rond", "carré against rond"),
        ("Compatible belt", "Replacement belt", ""),
        ("Carb, 208 cc engine", "Carburetor 208 cc engine", ""),
        ("Bumper grey", "Bumper gray", ""),
        ("Belt keepers", "Belt keeper", ""),
        ("Auger belt", "Auger belt long", ""),
        ("Heavy auger belt", "Auger drive pulley", ""),
        ("Keilriemen", "Belt", ""),
        ("", "Belt", ""),
    ],
)
def test_one_word_in_the_place_of_another(one: str, other: str, said: str) -> None:
    """All else the same; a spelling or a short form is the same word."""
    assert replaced(one, other) == said
    assert bool(replaced(other, one)) == bool(said)


def test_a_hostile_text_ends() -> None:
    """What a cell holds at most."""
    for piece in ("not ", "no-", "without a ", "un"):
        assert excluded(piece * 32_000, piece * 32_000) == ""
