"""Part numbers: text as it stood, and the marks of a number that a spreadsheet has damaged.

The kinds of damage follow Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016) and Abeysooriya et al., PLoS
Computational Biology 17(7) (2021), who counted names turned into dates and floating-point numbers by spreadsheets.
"""

import re
from collections.abc import Sequence
from decimal import Decimal

from .cells import Bad, says_no_longer_available
from .worksheet import Cell, text_of

MONTHS = "Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Sept|Oct|Nov|Dec|Mrz|Mär|Mai|Okt|Dez"  # as spreadsheets write them
DATE = re.compile(rf"\d{{1,2}}[-.]\s?(?:{MONTHS})(?:[-. ]\d{{2,4}})?|(?:{MONTHS})[- ]\d{{2,4}}")
DAY = re.compile(
    r"(?:19|20)\d\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])(?: \d\d:\d\d:\d\d)?"
    r"|\d{1,2}/\d{1,2}/(?:19|20)\d\d|(?:0?[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])\.(?:19|20)\d\d"
)
EXPONENT = re.compile(r"\d(?:[.,]\d+)?E[+-]\d+|\d[.,]\d+E\d+")
ERROR = re.compile(r"#(?:REF!|N/A|NAME\?|VALUE!|DIV/0!|NUM!|NULL!)|#{3,}|TRUE|FALSE")
FORMULA_TEXT = re.compile(r'="([^"]*)"')
"""How exports keep a spreadsheet from changing a number: the text is between the quotes."""
PLAIN = re.compile(
    r"(?=[^0-9]*[0-9])(?:[A-Z][A-Z0-9./-]{0,24}(?: [A-Z0-9./-]{1,8}){0,3}"
    r"|(?![0-9]E-)[0-9][A-Z0-9]{0,24}(?:-[A-Z0-9]{3,20})?)"
)
"""Numbers in capitals and digits that none of the patterns above can match: the common case, taken as they are.
A spreadsheet's dates begin with a digit or have a small letter; its exponents have a sign or a decimal mark."""
NOTHING = frozenset({"-", "--", "–", "—", "n/a", "none", "null", "keine"})
LONGEST = 60


def became_date(text: str) -> bool:
    """Whether the text is what a spreadsheet shows for a date: '5-Mar', 'Mar-14', '05.03.2026'.

    Only the spellings spreadsheets write: 'DEC-14' in capitals stays a number.
    """
    return bool(DATE.fullmatch(text) or DAY.fullmatch(text))


def parse_numbers(cells: Sequence[Cell]) -> list[str | Bad]:
    """A column of numbers: as `parse_other_number`, each different cell once."""
    plain = PLAIN.fullmatch
    known: dict[Cell, str | Bad] = {
        cell: cell if isinstance(cell, str) and plain(cell) else parse_other_number(cell)
        for cell in dict.fromkeys(cells)
    }
    return list(map(known.__getitem__, cells))


def parse_number(cell: Cell) -> str | Bad:
    """The number as printed, '' for a blank cell; a damaged one is a problem, never an offer."""
    text = text_of(cell)
    if isinstance(cell, Decimal):
        return _from_number_cell(cell, text)
    if formula := FORMULA_TEXT.fullmatch(text):
        text = formula[1].strip()
    text = text.removeprefix("'")
    if text and text[0] in "0123456789MJFASONDT#" and _is_damaged(text):
        return Bad("number-damaged", found=text)
    if len(text) > LONGEST:
        return Bad("number-too-long", found=text)
    return text


def _is_damaged(text: str) -> bool:
    return bool(became_date(text) or EXPONENT.fullmatch(text) or ERROR.fullmatch(text))


def _from_number_cell(cell: Decimal, text: str) -> str | Bad:
    """A fraction or a minus in a number cell: the spreadsheet made a number of it and may have dropped zeros."""
    if "E" in text or cell < 0 or cell != cell.to_integral_value():
        return Bad("number-damaged", found=text)
    return text


def parse_other_number(cell: Cell) -> str | Bad:
    """A maker's or a superseding number; 'n/a' and dashes mean there is none."""
    number = parse_number(cell)
    return "" if isinstance(number, str) and number.casefold() in NOTHING else number


def without_float_tail(numbers: Sequence[str | Bad]) -> list[str | Bad]:
    """Numbers without '.0' where every one in the column ends so: one blank cell made the exporter write floats."""
    texts = [number for number in numbers if number]
    if len(texts) < 5 or not all(isinstance(text, str) and re.fullmatch(r"\d+\.0", text) for text in texts):
        return list(numbers)
    return [number.removesuffix(".0") if isinstance(number, str) else number for number in numbers]


def lost_zeros(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Where a leading zero was lost: the column's all-digit numbers have one length, some begin with 0, this is short.

    Only where at least nine in ten all-digit numbers have that length; otherwise lengths simply differ.
    """
    zeros = {len(text) for text in numbers if isinstance(text, str) and text[:1] == "0" and text.isdigit()}
    if len(zeros) != 1:
        return {}
    width = zeros.pop()
    digits = [(at, text) for at, text in enumerate(numbers) if isinstance(text, str) and text.isdigit()]
    short = [(at, text) for at, text in digits if len(text) < width]
    whole = sum(len(text) == width for _, text in digits)
    if whole < 9 * len(short) or whole + len(short) < len(digits):
        return {}
    return {at: Bad("number-lost-zero", found=text, suggestions=(text.zfill(width),)) for at, text in short}


USE = re.compile(
    r"(?:please )?(?:use|see|order|now|superseded by|replaced by|repl\.? by|ersetzt durch|siehe|->|→)\s+", re.I
)


def parse_superseded_by(cell: Cell) -> str | Bad:
    """The superseding number without 'use' or 'see'; '' where there is none or the part is no longer available."""
    if says_no_longer_available(cell):
        return ""
    number = parse_other_number(cell)
    return USE.sub("", number, count=1) if isinstance(number, str) and USE.match(number) else number
