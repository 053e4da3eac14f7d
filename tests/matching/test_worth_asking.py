"""What is asked about in spite of a low score: damaged numbers; where no maker is named, words or sizes that agree."""

from decimal import Decimal

import pytest

from sourcing.basics.match import RowMatch
from sourcing.matching.sheet_match import Columns, match_rows
from sourcing.matching.worth_asking import worth_asking

PARTS = Columns(
    numbers=[["NW40388", "BELTAUGER"], ["NW52626", "BARSCRAPER"], ["CVA64K", "BELTPTO"]],
    makers=[["norrowby"], ["norrowby"], ["corrivane"]],
    description=["Auger drive belt B36 aramid cord, wrapped", "Scraper bar 26 in", "PTO belt A64 aramid wrapped"],
    price=[Decimal(120), Decimal(44), Decimal(40)],
    size=["B36", "", "A64"],
)
CODES = ["BELT-AUGER", "BAR-SCRAPER", "BELT-PTO"]
Row = tuple[list[str], list[str], str, str]
OWN: Row = (["P0001"], [], "Auger drive belt B36 aramid wrapped", "99")
"""A row under the supplier's own number, and below it others that are as near to the same part."""
RIVALS: list[Row] = [
    (["P0008"], [], "Auger drive belt B36 aramid wrapped", "98"),
    (["NW40388"], ["norrowby"], "Auger drive belt B36", "118"),
]


def asked(*rows: Row) -> list[tuple[RowMatch, bool]]:
    """Every pair of these rows with our parts, and whether a person is asked about it in spite of its score."""
    numbers, makers, words, prices = zip(*rows, strict=True)
    columns = Columns(numbers=numbers, makers=makers, description=words, price=[Decimal(one) for one in prices])
    found = [one for one in match_rows(columns, PARTS, CODES) if one.part]
    return [(one, _asked(one, columns)) for one in found]


def _asked(one: RowMatch, rows: Columns) -> bool:
    part = CODES.index(one.part)
    numbers = rows.numbers[one.row], PARTS.numbers[part]
    return bool(worth_asking(one.facts, one.against, numbers, (PARTS.size[part], rows.description[one.row])))


def of_first_row(found: list[tuple[RowMatch, bool]]) -> dict[str, bool]:
    """The parts of the first row, and whether they are asked about."""
    return {one.part: ask for one, ask in found if one.row == 0}


def test_words_that_agree_are_asked_about_though_other_rows_are_as_near() -> None:
    """One part under three numbers on one sheet: each is the others' rival, and none is dropped for it."""
    found = asked(OWN, *RIVALS)
    (own,) = [one for one, _ in found if one.row == 0 and one.part == "BELT-AUGER"]
    assert own.tier == "none", "without rivals' weight on it the score would do, and this test would show nothing"
    assert of_first_row(found)["BELT-AUGER"]
    assert not of_first_row(found).get("BELT-PTO"), "another section"


def test_a_standard_size_that_agrees_is_asked_about_in_another_language() -> None:
    german: Row = (["KR1"], [], "Keilriemen Schneckenantrieb B36 Aramid", "99")
    assert of_first_row(asked(german, *RIVALS))["BELT-AUGER"]
    other: Row = (["KR1"], [], "Keilriemen Schneckenantrieb B37 Aramid", "99")
    assert not of_first_row(asked(other, *RIVALS)).get("BELT-AUGER")


@pytest.mark.parametrize(
    ("number", "expected"),
    [
        ("NW4O388", True),  # a letter for a zero
        ("NW40338", False),  # one figure for another: a sister part differs so
        ("NW52388", False),
    ],
)
def test_a_damaged_number_of_the_same_maker(number: str, expected: bool) -> None:
    row = ([number], ["norrowby"], "Keilriemen", "99")
    assert of_first_row(asked(row, *RIVALS)).get("BELT-AUGER", False) is expected


def test_another_maker_and_another_number_of_the_same_maker_are_not() -> None:
    """Whoever names the maker and a number of his that is not ours means another article."""
    for maker in ("norrowby", "dunmarrow"):
        row = (["NW99999"], [maker], OWN[2], "99")
        assert not of_first_row(asked(row, *RIVALS)).get("BELT-AUGER")


def test_swapped_neighbours_are_asked_about_unless_something_speaks_against_them() -> None:
    """Sister parts have such numbers by chance; a letter for a zero is hardly ever one."""
    near, same_maker, words = 5, 0, 5
    facts = (near, 4, 2, same_maker, words, 5, 5, *([0] * 12))
    for number, against, expected in [
        ("NW40838", False, True), ("NW40838", True, False), ("NW4O388", True, True), ("NW40398", False, False),
    ]:  # fmt: skip
        why = worth_asking(facts, against, ([number], ["NW40388"]), ("B36", "Belt"))
        assert ("may be a damaged one of ours" in why) is expected
    assert not worth_asking((), False, (["NW4O388"], ["NW40388"]), ("", "")), "a pair nobody compared"
