"""Which article a description names: the same one in another language, or another under the same number.

What is a part of what, and how five languages say it, is common practice, no source.
"""

import pytest

from sourcing.matching.articles import another_article, named, not_named


@pytest.mark.parametrize(
    ("row", "ours", "word"),
    [
        ("Wheel nut M10", "Auger drive belt", "nut, wheel, where ours is belt"),
        ("Carburetor gasket", "Carburetor", "gasket"),
        ("Vergaserdichtung", "Carburetor", "gasket"),
        ("Joint de carburateur", "Carburetor", "gasket"),
        ("Junta del carburador", "Carburetor", "gasket"),
        ("Carburateur pakking", "Carburetor", "gasket"),
        ("Auger gearbox seal", "Auger gearbox", "seal"),
        ("Belt guard screw", "Belt keeper", "guard"),
        ("Wheel bearing puller", "Idler bearing", "puller"),
        ("Spark arrestor", "Spark plug", "arrestor"),
        ("Drive chain #40", "Drive shaft, left", "chain"),
        ("Carburetor float bowl", "Carburetor", "bowl"),
        ("Kettenrad 10 Zähne", "Drive chain", "sprocket"),
    ],
)
def test_another_article_under_one_number_is_seen(row: str, ours: str, word: str) -> None:
    """The row under our part's number names another thing."""
    found = another_article(row, ours)
    assert found and word in found


@pytest.mark.parametrize(
    ("row", "ours"),
    [
        ("Keilriemen Schneckenantrieb B36 Aramid", "Auger drive belt"),
        ("Courroie trapézoïdale", "Auger drive belt"),
        ("Riemenhalter Motor", "Belt keeper"),
        ("Zündkerze", "Spark plug"),
        ("Carburetor with gasket", "Carburetor"),
        ("Carburetor w/gasket, bowl not included", "Carburetor"),
        ("Belt for 724 with guard", "Belt"),
        ("Gasket for carburetor", "Carburetor gasket"),
        ("Gear case gasket", "Gasket"),
        ("Bearing 6203, 2 rubber seals", "Idler bearing"),
        ("V-belt B36, aramid cord, wrapped cover", "Auger drive belt"),
        ("Friction wheel, steel hub", "Friction wheel"),
        ("Shear bolt", "Shear pin"),
        ("Flanged idler", "Idler pulley"),
        ("Filtereinsatz", "Air filter"),
        ("Cinghia trapezoidale", "Auger drive belt"),
        ("", "Auger drive belt"),
        ("item 17", "Auger drive belt"),
    ],
)
def test_the_same_article_in_other_words_is_no_other(row: str, ours: str) -> None:
    """What it is with, what it is for and what it is made of do not make it another article."""
    assert another_article(row, ours) == another_article(ours, row) == ""


@pytest.mark.parametrize(
    ("row", "ours", "word"),
    [("Carburetor", "Vergaser-Dichtungssatz", "gasket"), ("Belt", "Belt keeper", "keeper")],
)
def test_what_the_row_does_not_name_is_not_known(row: str, ours: str, word: str) -> None:
    """The larger article, or less words for the same: no other article by its words, and a question."""
    assert another_article(row, ours) == ""
    assert not_named(row, ours) == f"ours is {word}, which its words do not name: whether they mean it is not known"
    assert not_named(ours, ours) == not_named("", ours) == ""


def test_compounds_name_both_their_parts() -> None:
    """A German word is several."""
    assert named("Filtereinsatz, Durchmesser 40")[0] == set()
    assert named("Vergaserdichtungssatz")[0] == {"gasket", "carburetor"}
    assert named("Vergaserdichtung")[0] == {"gasket", "carburetor"}
    assert named("Keilriemenscheibe")[0] == {"pulley"}
