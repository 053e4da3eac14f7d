"""Whole sheets: what matches by itself, what waits for a person, what is like nothing."""

from collections.abc import Sequence
from decimal import Decimal

import pytest

from sourcing.basics.match import RowMatch
from sourcing.basics.part_number import maker_key, number_key
from sourcing.matching.sheet_match import Columns, match_rows

Row = tuple[str, str, str, str]

PARTS: tuple[Row, ...] = (
    ("NW-40388", "Norrowby", "Auger drive belt 5/8 x 91 in wrapped", "119.00"),
    ("NW-40338", "Norrowby", "Auger drive belt 5/8 x 90 in wrapped", "109.00"),
    ("NW-31207", "Norrowby", "Belt keeper left hand", "8.90"),
    ("NW-31208", "Norrowby", "Belt keeper right hand", "8.90"),
    ("NW-66120", "Norrowby", "Electric starter 120 V", "140.00"),
    ("OV 20 417", "Ostrevik", "Gearbox seal kit", "22.00"),
    ("0012345", "Dunmarrow", "Shear pin 1/4 x 2 in pack of 10", "12.00"),
)


def columns(rows: Sequence[Row]) -> Columns:
    """Rows as columns; a blank price is none."""
    return Columns(
        numbers=[[number_key(row[0])] if row[0] else [] for row in rows],
        makers=[[maker_key(row[1])] if row[1] else [] for row in rows],
        description=[row[2] for row in rows],
        price=[Decimal(row[3]) if row[3] else None for row in rows],
    )


def best(*row: str) -> RowMatch:
    """What is likeliest for one row among the parts."""
    others: tuple[Row, ...] = (("ZZ-1", "Corrivane", "Fuel cap vented", "4.10"),)
    one: Row = (row[0], row[1], row[2], row[3])
    found = match_rows(columns([one, *others]), columns(PARTS), [part[0] for part in PARTS])
    return next(match for match in found if match.row == 0 and match.rank <= 1)


def test_same_number_and_maker_with_nothing_against_it_is_automatic() -> None:
    """Case and punctuation are set aside; the reasons say why."""
    found = best("nw 40388", "NORROWBY", "belt, auger drive, 5/8 x 91 in", "115.00")
    assert (found.tier, found.part, found.against) == ("automatic", "NW-40388", False)
    assert found.score > 0.95 and "same number NW40388" in found.reasons


@pytest.mark.parametrize(
    ("description", "price", "word"),
    [
        ("belt, auger drive, 5/8 x 90 in", "115.00", "length differs: 2286 mm against 2311 mm"),
        ("auger drive belt 5/8 x 91 in, remanufactured", "115.00", "used or remanufactured"),
        ("cover for auger drive belt 5/8 x 91 in", "115.00", "for, or in place of, something else"),
        ("auger drive belt 5/8 x 91 in kit", "115.00", "kit or set"),
        ("auger drive belt 5/8 x 91 in type 2", "115.00", ""),
        ("auger drive belt 5/8 x 91 in", "11.50", "beyond four times"),
        ("auger drive belt 5/8 x 91 in NW-40388-K", "115.00", "an ending more"),
        ("auger drive belt 5/8 x 91 in NW-40383", "115.00", ""),
        ("chrome ball bearing", "115.00", "little in common"),
    ],
)
def test_the_same_number_waits_where_anything_contradicts(description: str, price: str, word: str) -> None:
    """A number may be damaged so that it lands on a sister's: nothing in the number shows that."""
    found = best("NW-40388", "Norrowby", description, price)
    assert found.tier == "candidate"
    assert not word or any(word in reason for reason in found.reasons), found.reasons


def test_left_is_not_right() -> None:
    """LH against RH under the number of the other hand."""
    found = best("NW-31208", "Norrowby", "Belt keeper LH", "8.90")
    assert found.tier != "automatic"


def test_another_makers_number_waits() -> None:
    """The same digits of another maker."""
    found = best("NW-40388", "Dunmarrow", "Auger drive belt 5/8 x 91 in wrapped", "119.00")
    assert found.tier != "automatic" and any("other maker" in reason for reason in found.reasons)


def test_two_rows_under_one_number_wait() -> None:
    """One of them must be another thing."""
    rows = columns([("NW-66120", "Norrowby", "Electric starter 120 V", "140.00")] * 2)
    found = match_rows(rows, columns(PARTS), [part[0] for part in PARTS], most=1)
    assert [one.tier for one in found] == ["candidate", "candidate"]


def test_a_near_number_is_a_candidate_with_the_place_that_differs() -> None:
    """Never more than a candidate, whatever else agrees."""
    found = best("NW-6612O", "Norrowby", "Electric starter 120 V", "140.00")
    assert (found.tier, found.part) == ("candidate", "NW-66120")
    assert any("O where 0 stands" in reason for reason in found.reasons)


def test_lost_zeros_are_a_candidate() -> None:
    """12345 for 0012345: a spreadsheet's doing, for a person to see."""
    found = best("12345", "Dunmarrow", "Shear pin 1/4 x 2 in pack of 10", "12.00")
    assert (found.tier, found.part) == ("candidate", "0012345")


def test_a_damaged_number_is_told_and_not_used() -> None:
    """The description may still lead to a part; the number does not."""
    rows = Columns(
        numbers=[[]],
        makers=[["norrowby"]],
        description=["Electric starter 120 V"],
        price=[None],
        damaged={0: "1.2E+11"},
    )
    (found,) = match_rows(rows, columns(PARTS), [part[0] for part in PARTS], most=1)
    assert found.tier != "automatic" and "1.2E+11 is damaged and counts as none" in found.reasons[-1]


def test_rows_like_nothing_and_empty_tables() -> None:
    """One line each, never a failure."""
    assert best("QX-1", "Corrivane", "", "").tier == "none"
    assert match_rows(columns([]), columns(PARTS), [part[0] for part in PARTS]) == []
    (alone,) = match_rows(columns([PARTS[0]]), columns([]), [])
    assert (alone.part, alone.tier, alone.rank) == ("", "none", 0)
    (blank,) = match_rows(columns([("", "", "", "")]), columns([("", "", "", "")]), ["x"])
    assert blank.tier == "none"


def test_the_order_of_rows_and_parts_decides_nothing() -> None:
    """The same answers, turned round."""
    rows: list[Row] = [*PARTS[:4], ("NW-6612O", "Norrowby", "Starter 120 V", "140.00")]
    codes = [part[0] for part in PARTS]
    straight = match_rows(columns(rows), columns(PARTS), codes, most=1)
    turned = match_rows(columns(rows[::-1]), columns(PARTS[::-1]), codes[::-1], most=1)
    by_row = {len(rows) - 1 - one.row: (one.part, one.tier, one.score) for one in turned}
    assert {one.row: (one.part, one.tier, one.score) for one in straight} == by_row


def test_a_refused_pair_does_not_return() -> None:
    """The person's no, by position."""
    rows = columns([("NW-6612O", "Norrowby", "Electric starter 120 V", "140.00")])
    codes = [part[0] for part in PARTS]
    found = match_rows(rows, columns(PARTS), codes, answers={(0, 4): False})
    assert all(one.part != "NW-66120" for one in found)


def alone(row: Row, part: Row) -> RowMatch:
    """The one part against the one row, beside others that are like neither."""
    others: tuple[Row, ...] = (("ZZ-1", "Corrivane", "Fuel cap vented", "4.10"), ("ZZ-22", "Corrivane", "Muffler", ""))
    found = match_rows(columns([row, others[0]]), columns([part, others[1]]), ["part", "other"])
    return next(one for one in found if one.row == 0 and one.rank <= 1)


@pytest.mark.parametrize(
    ("row", "part"),
    [
        ("Shear bolt M8x40", "Shear bolt M8x45"),
        ("Auger belt 88", "Auger belt 90"),
        ("Saw chain .325 .050 72DL", "Saw chain .325 .058 72DL"),
        ("Saw chain 3/8 72 DL", "Saw chain 3/8 66 DL"),
        ("Saw chain 3/8 pitch", "Saw chain 1/4 pitch"),
        ("Skid shoe pair", "Skid shoe"),
        ("Shear pin 10/pk", "Shear pin"),
        ("Skid shoe LHS", "Skid shoe RHS"),
        ("Skid shoe", "Skid shoe LH"),
        ("Auger gear", "Auger belt"),
        ("Auger belt, not NW-40388", "Auger belt"),
        ("Auger belt cogged", "Auger belt wrapped"),
        ("Valve intake", "Valve exhaust"),
        ("Engine valve spring retainer intake", "Engine valve spring retainer exhaust"),
        ("Auger drive belt wrapped 4L390", "Auger drive belt wrapped B36"),
        ("Starter 110/220 V", "Starter 12/24 V"),
        ("Oil seal 17 x 40 x 12 mm", "Oil seal 20 x 40 x 12 mm"),
        ("Spindle ¾ in", "Spindle ¼ in"),
    ],
)
def test_under_one_number_small_differences_ask(row: str, part: str) -> None:
    """The same number and maker, and one thing that may make it two articles."""
    assert alone(("40388", "Norrowby", row, ""), ("40388", "Norrowby", part, "")).tier == "candidate"


@pytest.mark.parametrize("number", ["608", "A36", "6203", "40388"])
@pytest.mark.parametrize(("row", "part"), [("", ""), ("Ball bearing", ""), ("", "Air filter")])
def test_a_short_number_without_maker_or_words_asks(number: str, row: str, part: str) -> None:
    """Too many things bear it."""
    assert alone((number, "", row, ""), (number, "Norrowby", part, "")).tier == "candidate"


def test_a_number_that_two_makers_parts_bear_asks_where_no_maker_is_named() -> None:
    """It may be either's, however well the words fit one of them."""
    parts = columns([("40388", "Norrowby", "Auger belt", "9.00"), ("40388", "Ostrevik", "Spark plug", "3.00")])
    found = match_rows(columns([("40388", "", "Auger belt", "9.00")]), parts, ["belt", "plug"])
    assert [one.tier for one in found if one.part == "belt"] == ["candidate"]


def test_names_that_begin_alike_are_not_one_maker() -> None:
    """Nor is an abbreviation: a person says so once, as another name of the maker."""
    for maker in ("Norrowby Pumps", "NRB"):
        assert alone(("40388", maker, "Auger belt", ""), ("40388", "Norrowby", "Auger belt", "")).tier == "candidate"


@pytest.mark.parametrize(
    ("words", "part"), [("Tire 15 600 6", "15600"), ("Bolt M8 100", "M8100"), ("V-belt 13 1000 Li", "131000")]
)
def test_plain_numbers_side_by_side_are_no_part_number(words: str, part: str) -> None:
    """Only letters before figures, or figures before an ending, are a number written with a gap."""
    found = alone(("", "", words, ""), (part, "Norrowby", "", ""))
    assert not any("stands in the description" in reason for reason in found.reasons)


def test_another_makers_number_among_a_parts_is_not_the_rows() -> None:
    """The part bears Norrowby 40388 and an Ostrevik number; Ostrevik 40388 is neither."""
    part = Columns(
        numbers=[["40388", "OV20417"]],
        makers=[["norrowby", "ostrevik"]],
        description=["Auger belt"],
        price=[None],
        owners=[{"40388": frozenset(("norrowby",)), "OV20417": frozenset(("ostrevik",))}],
    )
    (found,) = match_rows(columns([("40388", "Ostrevik", "Auger belt", "")]), part, ["belt"])
    assert found.tier != "automatic" and found.against
    assert any("other maker" in reason for reason in found.reasons)


@pytest.mark.parametrize("piece", ["1", "1,", "1/2 x ", "a1-", "1 ", "pack of ", "5/8x", "()a", "é"])
def test_hostile_descriptions_end(piece: str) -> None:
    """Hundreds of thousands of characters of one kind: an answer, and no failure."""
    assert alone(("40388", "Norrowby", piece * 60_000, ""), ("40388", "Norrowby", "Auger belt", "")).tier != "automatic"


def test_a_part_whose_words_are_nearer_makes_the_number_a_question() -> None:
    """The number may be damaged so that it is its sister's: the words say which part it is."""
    parts = columns(
        [
            ("NW-66120", "Norrowby", "Electric starter", "140.00"),
            ("NW-77310", "Norrowby", "Electric starter with cord and mounting bolts", "140.00"),
        ]
    )
    row = columns([("NW-66120", "Norrowby", "Electric starter with cord and mounting bolts", "140.00")])
    found = match_rows(row, parts, ["plain", "whole"])
    assert {one.part: one.tier for one in found}["plain"] == "candidate"


def test_a_number_a_spreadsheet_may_have_made_of_another_part_asks() -> None:
    """12345 is one part's, 0012345 another's; the sheet has lost its zeros."""
    parts = columns([("12345", "Dunmarrow", "Shear pin", "2.00"), ("0012345", "Dunmarrow", "Spark plug", "4.00")])
    found = match_rows(columns([("12345", "Dunmarrow", "Shear pin", "2.00")]), parts, ["pin", "plug"], most=1)
    assert [one.tier for one in found] == ["candidate"]
    assert "a spreadsheet may have made this number of 0012345" in found[0].reasons
