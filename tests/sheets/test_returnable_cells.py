"""Whether a part is taken back: the sense of a header may be turned round, and a blank is never a no.

The words are common practice in the trade, no source.
"""

import re

import pytest

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.returnable_cells import is_turned_round, parse_returnable
from sourcing.sheets.headers.header_keys import spellings
from sourcing.sheets.headers.header_words import WORDS

SAYS_NO = re.compile(
    r"\b(?:non|not|no|nicht|keine?|ausgeschlossen|sans|pas|sin|niet|geen|nc ?nr)\b|^nonreturnable$|^nc"
)


@pytest.mark.parametrize("header", ["Returnable", "Returnable (Y/N)", "Retournierbar", "Returns allowed", "R/NR?"])
def test_yes_and_no_under_a_plain_header(header: str) -> None:
    assert parse_returnable(["Y", "no", "x", "", "-", "n/a"], header) == [True, False, True, None, None, None]


@pytest.mark.parametrize(
    "header", ["NCNR", "NC/NR", "Non-Returnable", "NON_RETURNABLE", "NonReturnable", "No returns", "Keine Rückgabe",
    "Keine Rueckgabe",
               "Nicht retournierbar", "Non retournable", "Sans retour", "Sin devolución", "No se admiten devoluciones",
               "Niet retourneerbaar",
               "Not returnable", "NR", "N/R", "Vom Umtausch ausgeschlossen"],
)  # fmt: skip
def test_yes_and_no_are_turned_round_where_the_header_says_no(header: str) -> None:
    assert parse_returnable(["Y", "no", "x", "", "-"], header) == [False, True, False, None, None]


@pytest.mark.parametrize("header", ["Returnable", "NCNR", "Returnable / Non-returnable"])
@pytest.mark.parametrize(
    ("word", "returnable"),
    [
        ("NR", False), ("NCNR", False), ("Non-Returnable", False), ("No returns", False), ("keine Rückgabe", False),
        ("sans retour", False), ("sin devolución", False), ("geen retour", False), ("final sale.", False),
        ("Returnable", True), ("Rückgabe möglich", True), ("retornable", True),
    ],
)  # fmt: skip
def test_words_that_say_it_in_full_hold_under_any_header(header: str, word: str, returnable: bool) -> None:
    assert parse_returnable([word], header) == [returnable]


@pytest.mark.parametrize(
    ("word", "header"), [("R", "Returnable"), ("30 days", "Returnable"), ("HAZ", "Returnable"),
    ("Y", "Returnable / Non-returnable")]
)  # fmt: skip
def test_what_may_be_two_things_is_left_open(word: str, header: str) -> None:
    (found,) = parse_returnable([word], header)
    assert isinstance(found, Bad) and found.code == "yes-or-no-unreadable"


def test_every_header_word_has_the_sense_its_words_say() -> None:
    """A negative that the program took for a plain yes would call every part returnable that is not."""
    texts = [text for words in WORDS["returnable"] for text in spellings(words)]
    assert len(texts) > 40
    for text in (re.sub(r" (?:yes no|oui non|ja nein|ja nee)$", "", text) for text in texts):
        assert is_turned_round(text) is bool(SAYS_NO.search(text.replace("/", " "))), text
