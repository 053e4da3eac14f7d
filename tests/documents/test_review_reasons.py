"""Reasons under the heading that is true of them, by the sentences matching itself makes."""

from sourcing.documents.review_reasons import ONLY_IN_WORDS, for_and_against
from sourcing.matching.sheet_match import Columns, match_rows

AGREES = "Auger drive belt B36 left"


def said(words: str, key: str = "NW40388") -> tuple[str, str]:
    """What speaks for and against a row of these words and this number being the belt."""
    row = Columns(numbers=[[key]], makers=[["norrowby"]], description=[words], price=[None])
    part = Columns(numbers=[["NW40388"]], makers=[["norrowby"]], description=[AGREES], price=[None], size=["B36"])
    (one,) = match_rows(row, part, ["BELT"], (), 5)
    return for_and_against(one.reasons, one.against)


def test_where_all_agrees_nothing_stands_against() -> None:
    speaks_for, against = said(AGREES)
    assert speaks_for.startswith("same number NW40388; same maker; descriptions agree") and "same size" in speaks_for
    assert against == ""


def test_what_agrees_is_never_headed_as_speaking_against() -> None:
    """Another section and the other side beside number and maker that agree."""
    speaks_for, against = said("Auger drive belt A36 right")
    assert "same number" in speaks_for and "same maker" in speaks_for and "descriptions agree" in speaks_for
    assert "right against left" in against and "different section" in against
    assert not any(words in against for words in ("same number", "same maker", "descriptions agree"))


def test_a_near_number_is_why_it_is_asked_about() -> None:
    speaks_for, _ = said(AGREES, "NW40338")
    assert speaks_for.startswith("near number: NW40338 against NW40388")


def test_what_is_kept_from_the_bulk_says_why() -> None:
    assert for_and_against(("near number: A1 against A2", "same maker"), against=True)[1] == ONLY_IN_WORDS
    assert for_and_against(("same maker",), against=False) == ("same maker", "")
