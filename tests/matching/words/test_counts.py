"""Counts of pieces in words: what is unmistakable counts, sizes and names do not."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.matching.words.counts import counts
from sourcing.matching.words.sold_as import NUMBERS, number_said
from sourcing.matching.words.text import plain, unaccented


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Zündkerze, 4er", 4),
        ("wire connector 10er", 10),
        ("Scherstift 10er Pack", 10),
        ("3er-Satz Keilriemen", 3),
        ("Shear pin x10", 10),
        ("Shear pin, x10, zinc plated", 10),
        ("Shear pin (x 10)", 10),
        ("Shear pin (10x)", 10),
        ("Shear pin (10)", 10),
        ("set of four", 4),
        ("Satz zu vier", 4),
        ("Satz zu je 4", 4),
        ("jeu de quatre", 4),
        ("boîte de dix", 10),
        ("juego de cuatro", 4),
        ("caja de 25", 25),
        ("set van vier", 4),
        ("doos van tien", 10),
        ("Scherstift VE 10", 10),
        ("Scherstift, VE: 10 Stk.", 10),
        ("Pin, Pack 10", 10),
        ("vendu par 10", 10),
        ("sold by 10", 10),
        ("10/pk", 10),
        ("24/case", 24),
        ("10 per box", 10),
        ("10 pro Packung", 10),
        ("Karton zu 10", 10),
        ("fünf Stück", 5),
        ("a dozen", 12),
        ("2 dozen", 24),
        ("two dozen", 24),
        ("half dozen", 6),
        ("halbes Dutzend", 6),
        ("une douzaine", 12),
        ("media docena", 6),
    ],
)
def test_counts_in_five_languages(text: str, count: int) -> None:
    """With and without accents, in capitals and not."""
    for written in (plain(text), unaccented(text), plain(text.upper())):
        assert counts(written)[0] == {count}


@pytest.mark.parametrize(
    "text",
    [
        "M8x10",
        "bolt M8 x 10",
        "bolt 1/4 unc x10",
        "bolt hex x10",
        "1/2 x 10",
        "belt x38",
        "belt (38)",
        "8er Schraube",
        "Schlüssel 10er",
        "10er Schlüssel",
        "type (2)",
        "size (8)",
        "Blade (21 in)",
        "10x zoom",
        "(10x) optical zoom",
        "Xperia X10 phone",
        "PK 10",
        "6 PK 2120",
        "VE10",
        "OV-VE 100",
        "pack of 2.5",
        "case of 12 x 40 mm",
        "battery pack 10",
        "10 set screws",
        "Phone 12 Pro case",
        "Kit A 4",
        "sold in 3 colours",
        "jump pack 12",
        "M8-10er",
        "0/pk",
        "Ersatz 5",
    ],
)
def test_sizes_and_names_are_no_counts(text: str) -> None:
    """They are left in the text as they stand."""
    assert counts(plain(text)) == (frozenset(), plain(text))


def test_two_counts_are_both_told() -> None:
    """Which of them the price is for, nobody knows."""
    assert counts("set of 2, 10/pk")[0] == {2, 10}


def test_numbers_in_words() -> None:
    """With their accents and without."""
    assert {number_said(unaccented(word)) for word in NUMBERS} == {2, 3, 4, 5, 6, 7, 8, 9, 10, 12}
    assert number_said("fünf") == number_said("funf") == number_said("5") == 5


@given(st.text(max_size=80))
def test_any_text_is_read(text: str) -> None:
    """Never raises; a count is a positive number."""
    assert all(count > 0 for count in counts(plain(text))[0])
