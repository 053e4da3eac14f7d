"""Every known way in which a part number gets damaged, and what may be done about it: never an equal number by guess.

Sources of the classes: "ISMP" = ISMP Medication Safety Alert 12 January 2000, quoting Bell Laboratories on I/1, O/0,
Z/2, 1/7; "Verhoeff" = J. Verhoeff, Error Detecting Decimal Codes (1969), as quoted by N. R. Wagner; "Ziemann" =
Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016); "Abeysooriya" = Abeysooriya et al., PLoS Computational Biology
17(7) (2021); "Damerau" = Damerau (1964) as quoted in Computational Linguistics 41(1) (2015); "KB 269370" = Microsoft on
fifteen digits; "measured" = what a spreadsheet or reader was seen to do; "common practice" = no source.
"""

from typing import NamedTuple

import pytest

from sourcing.basics.part_number import number_key
from sourcing.matching.numbers.damage import explain
from sourcing.matching.numbers.doubtful import doubtful, doubtful_numbers
from sourcing.matching.numbers.near_numbers import NearNumbers


class Case(NamedTuple):
    """A class of damage: ours, what came, and what is said of it.

    `same`: the keys are equal. `kind`: what `explain` says. `doubt`: what `doubtful` says of what came. `near`: whether
    the look-up finds ours; a claim or a count is found as 'more after the number', since it has keys alone.
    """

    name: str
    ours: str
    came: str
    same: bool = False
    kind: str = ""
    doubt: str = ""
    near: bool = False


SAME_KEY = [
    Case("case", "ab12345", "AB12345", same=True),  # common practice
    Case("punctuation dropped", "123-4567", "1234567", same=True),  # common practice
    Case("typographic dash", "123-4567", "123–4567", same=True),  # common practice
    Case("full-width digits", "123-4567", "１２３－４５６７", same=True),  # Unicode (from memory)
    Case("surrounding blank, no-break space or quote", "12345", "'\N{NO-BREAK SPACE}12345 '", same=True),  # measured
    Case("thousands separator", "12345", "12,345", same=True),  # common practice
    Case("plus sign", "+44123", "44123", same=True),  # measured
]
CANDIDATES = [
    Case("O/0", "AB0123", "ABO123", kind="look-alike character", near=True),  # ISMP; Crockford base 32
    Case("I/1", "A1234", "AI234", kind="look-alike character", near=True),  # ISMP; Crockford base 32
    Case("l/1", "A1234", "Al234", kind="look-alike character", near=True),  # ISMP; Crockford base 32
    Case("Z/2", "A2345", "AZ345", kind="weak look-alike character", near=True),  # ISMP
    Case("1/7", "1234567", "7234567", kind="one character different", near=True),  # ISMP; two valid numbers
    Case("S/5", "A5123", "AS123", kind="weak look-alike character", near=True),  # common practice
    Case("B/8", "A8123", "AB123", kind="weak look-alike character", near=True),  # common practice
    Case("D/0 and Q/0", "AD123", "A0123", kind="weak look-alike character", near=True),  # Q: ISO 3779; D: practice
    Case("G/6", "AG123", "A6123", kind="weak look-alike character", near=True),  # common practice
    Case("6/G 4/A 7/T U/V C/G E/F", "AU123", "AV123", kind="one character different", near=True),  # common practice
    Case("0/8/9 misread", "1234907", "1234987", kind="one character different", near=True),  # common practice
    Case("single substitution", "1234567", "1234967", kind="one character different", near=True),  # Verhoeff 60-95 %
    Case("adjacent transposition", "1234567", "1243567", kind="neighbours swapped", near=True),  # Verhoeff 10-20 %
    Case("digit left out", "1234567", "123567", kind="character left out", near=True),  # Verhoeff 10-20 %
    Case("digit doubled", "1234567", "12334567", kind="character doubled", near=True),  # Verhoeff 10-20 %
    Case("digit added", "1234567", "12384567", kind="character added", near=True),  # Verhoeff 10-20 %
    Case("twin error", "1233567", "1244567", kind="pair of equal characters different"),  # Verhoeff 0.5-1.5 %
    Case("jump transposition", "1234567", "1432567", kind="swapped across a character"),  # Verhoeff 0.5-1.5 %
    Case("jump twin", "1232567", "1434567", kind="pair of equal characters different"),  # Verhoeff below 1 %
    Case("phonetic (thirty/thirteen)", "130", "113"),  # Verhoeff 0.5-1.5 %; too short to compare
    Case("one error in a misspelt word", "bearing", "bearng", kind="character left out", near=True),  # Damerau
    Case("leading zeros lost", "0012345", "12345", kind="leading zeros", near=True),  # measured
    Case("E read as exponent", "123E5", "12300000", kind="read as a power of ten", near=True),  # Ziemann
    Case("decimal tail", "1.10", "1.1", kind="zeros after the point"),  # measured
    Case(".50", ".50", "0.5", kind="zeros after the point"),  # measured
    Case("prefix of a distributor", "A12345", "DST-A12345", kind="more before the number", near=True),  # practice
]
OTHER_ARTICLES = [
    Case("suffix variant", "A12345B", "A12345", kind="more after the number", near=True),  # error analysis
    Case("superseded", "A12345", "A12345S", kind="more after the number", near=True),  # common practice
    Case("left / right", "A12345L", "A12345R", kind="left and right", near=True),  # common practice
    Case("pack quantity", "A12345-12", "A12345", kind="count after the number", near=True),  # error analysis
    Case("remanufactured", "X12345", "X12345 (remanufactured)", kind="claim beside it", near=True),  # error analysis
    Case("compatible", "X12345", "compatible X12345", kind="claim beside it", near=True),  # error analysis
    Case("for X", "X12345", "for X12345", kind="claim beside it", near=True),  # error analysis
    Case("suffix of a distributor", "A12345", "A12345-DST", kind="more after the number", near=True),  # practice
]
BEYOND_READING = [
    Case("scientific notation of a long number", "123456789012", "1.23457E+11", doubt="scientific notation"),  # Ziemann
    Case("more than 15 digits", "1234567890123456789", "1234567890123450000", doubt="digits lost"),  # KB 269370
    Case("more than 15 digits, shown short", "1234567890123456789", "1.23456789012346E+018",
         doubt="scientific notation"),  # measured
    Case("trailing .0", "12345", "12345.0", kind="point and zero at the end", doubt="point and zero", near=True),
    Case("date", "MAR-14", "14-Mar", doubt="date"),  # Ziemann; Abeysooriya
    Case("date", "MAR-14", "2014-03-14", doubt="date"),  # Ziemann; Abeysooriya
    Case("fraction", "1/2", "02-Jan", doubt="date"),  # Ziemann
    Case("ISO date-like number", "2024-05-01", "2024-05-01", same=True, doubt="date"),  # measured
    Case("boolean", "TRUE", "True", same=True, doubt="truth value"),  # measured
    Case("NA / null / None / nan", "NA", "nan", doubt="no number"),  # measured
    Case("NA / null / None / nan", "N/A", "NA", same=True, doubt="no number"),  # measured
    Case("infinity", "inf", "inf", same=True, doubt="infinity"),  # measured
    Case("infinity", "1e400", "9999-12-31", doubt="date"),  # measured
    Case("formula", "=A1", "=A1", same=True, doubt="formula"),  # measured
    Case("formula", "-12+3", "-12+3", same=True, doubt="formula"),  # measured
]  # fmt: skip
LOST = [
    Case("hex", "0x1F", "31"),  # measured in a reader
    Case("boolean", "TRUE", "1"),  # measured
    Case("date serial number", "10-12", "45942"),  # Abeysooriya; told by its column, see below
    Case("formula", "-12+3", "-9"),  # measured
]
EVERY = [*SAME_KEY, *CANDIDATES, *OTHER_ARTICLES, *BEYOND_READING, *LOST]


@pytest.mark.parametrize("case", EVERY, ids=lambda case: f"{case.name}: {case.came}")
def test_what_is_said_of_each_class_of_damage(case: Case) -> None:
    """Equal keys only where nothing but dress differs, or where what came is doubtful and so matches nothing."""
    came, ours = number_key(case.came), number_key(case.ours)
    assert (came == ours) is case.same
    reason = explain(came, ours, case.came, case.ours)
    assert (reason.kind if reason else "", reason.against if reason else False) == (
        case.kind,
        case.kind in {one.kind for one in OTHER_ARTICLES},
    )
    doubt = doubtful(case.came)
    assert (doubt.kind if doubt else "") == case.doubt
    found = NearNumbers([ours]).near([came])
    assert len(found) == case.near
    if case.near and case not in OTHER_ARTICLES and case.kind != "point and zero at the end":
        assert list(found["kind"]) == [case.kind]


@pytest.mark.parametrize("case", [*CANDIDATES, *OTHER_ARTICLES, *LOST], ids=lambda case: case.name)
def test_damage_that_can_be_read_is_never_an_equal_number(case: Case) -> None:
    """A question, never a match."""
    assert number_key(case.came) != number_key(case.ours)


def test_a_day_count_is_told_by_the_dashed_numbers_beside_it() -> None:
    """45942 is 12 October 2025 (Abeysooriya: dates kept as five-digit numbers); alone it is a number."""
    found = doubtful_numbers(["10-14", "11-20", "45942", "3-17"])
    assert {at: doubt.kind for at, doubt in found.items()} == {2: "day count"}
    assert not doubtful_numbers(["45942", "45943", "10-14"])
