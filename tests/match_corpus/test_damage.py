"""Damaged numbers: each class does what it says, and what stands behind a damaged number is laid on purpose."""

from functools import cache

import pytest

from tests.match_corpus.chance import Chance
from tests.match_corpus.corpus import Corpus
from tests.match_corpus.damage import CLASSES
from tests.match_corpus.damaged import key, make_damaged

BY_NAME = {one.name: one for one in CLASSES}

CASES = [
    ("case", "AB-123", "ab-123"),
    ("punctuation dropped", "12-34 5", "12345"),
    ("full-width digits", "12-3", "１２－３"),
    ("O/0", "AB0123", "ABO123"),
    ("I/1", "A1234", "AI234"),
    ("S/5", "A5123", "AS123"),
    ("B/8", "A8123", "AB123"),
    ("twin error", "1233", "12"),
    ("phonetic", "A30", "A13"),
    ("leading zeros lost", "0012345", "12345"),
    ("E read as exponent", "123E5", "12300000"),
    ("scientific notation", "123456789012", "1.23457E+11"),
    ("more than 15 digits", "1234567890123456789", "1234567890123450000"),
    ("trailing .0", "12345", "12345.0"),
    ("thousands separator", "123456", "123,456"),
    ("date", "MAR-14", "14-Mar"),
    ("date serial number", "10-12", "45942"),
    ("ISO date-like number", "2024-11-15", "15/11/2024"),
    ("plus sign", "+44123", "44123"),
    ("formula", "-12+3", "-9"),
    ("decimal tail", "1.10", "1.1"),
    (".50", ".50", "0.5"),
    ("hex", "0x1F", "31"),
]
"""Spreadsheet classes as Ziemann et al. 2016, Abeysooriya et al. 2021 and readers of tables were seen to do them."""


@cache
def _made(seed: int) -> Corpus:
    return make_damaged(seed, 2500, 3000)


@pytest.mark.parametrize(("name", "number", "damaged"), CASES)
def test_a_class_damages_as_it_says(name: str, number: str, damaged: str) -> None:
    """The published example; a twin error leaves the rest and changes both twins alike."""
    found = BY_NAME[name].harm(number, Chance("one"))
    if name == "twin error":
        assert found.startswith(damaged)
        assert found[2] == found[3] != "3"
    else:
        assert found == damaged


def test_every_class_occurs() -> None:
    """Over two seeds."""
    seen = {kind.split(",")[0] for seed in (1, 2) for kind in _made(seed).kinds}
    assert not {one.name for one in CLASSES} - seen


def test_a_number_borne_by_another_part_stands_in_the_parts_and_its_description_differs() -> None:
    """Whoever trusts the number takes the wrong part; whoever reads on can see it."""
    made = _made(1)
    bearers: dict[str, set[int]] = {}
    for at, part in enumerate(made.parts):
        bearers.setdefault(key(part.number), set()).add(at)
    rows = [row for row, kind in enumerate(made.kinds) if kind.endswith("has that number")]
    assert len(rows) > 100
    for row in rows:
        others = bearers[key(made.sheet[row].number)] - made.gold[row]
        assert others
        right = {made.parts[at].description.lower() for at in made.gold[row]}
        assert all(made.parts[at].description.lower() not in right for at in others)


def test_harmless_classes_keep_the_key() -> None:
    """Case, blanks, signs: the number is the part's number."""
    made = _made(1)
    harmless = {one.name for one in CLASSES if one.is_harmless} - {"full-width digits"}
    rows = [row for row, kind in enumerate(made.kinds) if kind in harmless]
    assert len(rows) > 50
    for row in rows:
        (place,) = made.gold[row]
        assert key(made.sheet[row].number) == key(made.parts[place].number)


def test_another_thing_has_no_part() -> None:
    """Other suffix, side or pack, refurbished, made to replace: none of them is the part whose number it resembles."""
    made = _made(1)
    others = [row for row, kind in enumerate(made.kinds) if kind.startswith("another thing")]
    assert len({made.kinds[row] for row in others}) == 5
    assert not set(others) & set(made.gold)
