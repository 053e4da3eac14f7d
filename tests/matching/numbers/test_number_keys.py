"""The key of a number, alone and in columns."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.part_number import number_key, number_keys


@pytest.mark.parametrize(
    ("text", "key"),
    [("nw-40388 ", "NW40388"), ("NW 403.88", "NW40388"), ("NW_40388", "NW40388"), ("0123", "0123"), ("", ""),
     ("--", ""), ("Ö-12", "Ö12"), ("12²", "12²")],
)  # fmt: skip
def test_case_blanks_and_punctuation_are_set_aside_and_nothing_else(text: str, key: str) -> None:
    """Leading zeros stay; a superscript two is no two."""
    assert number_key(text) == key


def test_full_width_signs_are_the_plain_ones() -> None:
    """Unicode block 'Halfwidth and Fullwidth Forms', FF01-FF5E: each lies 0xFEE0 above its ASCII sign."""
    wide = "".join(chr(code) for code in range(0xFF01, 0xFF5F))
    assert number_key(wide) == number_key("".join(chr(code) for code in range(0x21, 0x7F)))
    assert number_key("ｎｗ－４０３８８") == "NW40388"


@pytest.mark.parametrize("other", ["О", "Ⅰ", "①", "٣", "ﬁ5"])
def test_no_other_foreign_sign_becomes_a_plain_one(other: str) -> None:
    """A Cyrillic O, a Roman one, a circled one, an Arabic-Indic three stay what they are."""
    assert number_key(f"A{other}1") not in {f"A{sign}1" for sign in "O0I13"}


@given(st.lists(st.one_of(st.text(), st.text(alphabet="aZ09-_ .\n\r\x1fßſÅ１Ａ－İŉ"), st.from_regex(r"[A-Z0-9-]*"))))
def test_a_column_gives_the_keys_of_its_texts(texts: list[str]) -> None:
    """Whatever the texts hold, line ends and signs whose capital is two letters too."""
    assert number_keys(texts) == [number_key(text) for text in texts]


def test_a_long_column_with_one_odd_text() -> None:
    """Longer than what is joined at one time; one text has a line end of its own."""
    texts = [f"nw-{at}" for at in range(45_000)] + ["a\nb", "Ｘ1"] + [f"{at} x" for at in range(5)]
    assert number_keys(texts) == [number_key(text) for text in texts]
