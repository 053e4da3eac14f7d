"""Part numbers: text as it stood, and the marks of a number that a spreadsheet has damaged.

The kinds of damage follow Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016) and Abeysooriya et al., PLoS
Computational Biology 17(7) (2021), who counted names turned into dates and floating-point numbers by spreadsheets.
"""

import re
from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from decimal import Decimal
from string import ascii_uppercase, digits
from typing import cast

from ..worksheet import Cell
from .cell import Bad, says_only_gone, shown_of, successor_in
from .day_cells import MONTHS
from .number_remarks import remarks

SHORT_MONTH = "|".join(sorted((word for word in MONTHS if len(word) <= 4), key=len)[::-1])
DATE = re.compile(
    rf"(?P<day>\d{{1,2}})[-.]\s?(?P<month>{SHORT_MONTH})\.?(?:[-. ]\d{{2,4}})?"
    rf"|(?P<month_first>{SHORT_MONTH})\.?[- ](?P<figures>\d{{2,4}})",
    re.IGNORECASE,
)
"""A day as spreadsheets write it in five languages: '5-Mar', '05. Mrz', 'mars-05', 'janv.-05', '5-mrt', 'Mar-14'."""
DAY = re.compile(
    r"(?:19|20)\d\d-(?P<iso_month>0[1-9]|1[0-2])-(?P<iso_day>0[1-9]|[12]\d|3[01])(?: \d\d:\d\d:\d\d)?"
    r"|\d{1,2}/\d{1,2}/(?:19|20)\d\d|(?:0?[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])\.(?:19|20)\d\d"
)
ISO_LIKE = re.compile(r"\d{4}-\d\d-\d\d")
EXPONENT = re.compile(r"(?P<mantissa>\d{1,3}(?:[.,]\d+)?)[Ee](?P<sign>[+-])(?P<power>\d+)|\d[.,]\d+[Ee]\d+")
ERROR = re.compile(r"#(?:REF!|N/A|NAME\?|VALUE!|DIV/0!|NUM!|NULL!)|#{3,}|TRUE|FALSE")
FORMULA_TEXT = re.compile(r'="([^"]*)"')
"""How exports keep a spreadsheet from changing a number: the text is between the quotes."""
PLAIN = re.compile(
    r"(?=[^0-9]*[0-9])(?:[A-Z][A-Z0-9./-]{0,24}(?: [A-Z0-9./-]{1,8}){0,3}"
    r"|(?![0-9]E-)[0-9][A-Z0-9]{0,24}(?:-[A-Z0-9]{3,20})?)"
)
"""Numbers in capitals and digits that none of the patterns above can match: the common case, taken as they are.
A spreadsheet's dates begin with a digit or have a small letter; its exponents have a sign or a decimal mark."""
LETTER_FIRST = re.compile(
    rf"(?=[^0-9]*[0-9])(?!(?:{SHORT_MONTH})[-. ])[A-Za-z][A-Za-z0-9./-]{{0,24}}(?: [A-Za-z0-9./-]{{1,8}}){{0,3}}",
    re.IGNORECASE,
)
"""Numbers that begin with letters, no month's name among them, are none of the damaged forms either."""
ZEROS_FOR_DIGITS = re.compile(r"[1-9]\d{14}0+")
"""A spreadsheet keeps 15 digits (its published limit) and writes zeros for the rest."""
LINE_END = re.compile(r"[\t\n\r\v\f\x1c-\x1f\x85\u2028\u2029]")
DASHED = re.compile(r"\d{1,2}-\d{1,2}(?:-\d{2,4})?")
DAY_COUNT = re.compile(r"[345]\d{4}")
ZERO_FIRST = re.compile(r"^0\d*$", re.MULTILINE)
A_DAY_COUNT = re.compile(r"^[345]\d{4}$", re.MULTILINE)
MANY_DIGITS = re.compile(r"^\d{15}\d*0$", re.MULTILINE)
FIRST_DAY = date(1899, 12, 30)
"""Day 0 of the count a spreadsheet keeps dates in; 30000 is in 1982, 59999 in 2064."""
TWO_NUMBERS = re.compile(r"\s(?:or|oder|ou|of|and|und|et|[/&+])\s|\s\(", re.IGNORECASE)
NOTHING = frozenset({"-", "--", "–", "—", "n/a", "none", "null", "keine"})
LONGEST = 60
MAY_BE_DAMAGED = frozenset(
    "0123456789#TF" + "".join({word[0] for word in MONTHS}) + "".join({word[0] for word in MONTHS}).upper()
)
"""What damaged numbers begin with: a look at one character spares most numbers the patterns."""
ONE_LETTER = str.maketrans(dict.fromkeys(ascii_uppercase.replace("E", ""), "A") | dict.fromkeys(digits[1:], "0"))
FLOAT_TAIL = re.compile(r"\d+\.0")
FRACTION = re.compile(r"\d+\.(?:[1-9]\d*|\d{2,})")


def became_date(text: str) -> bool:
    """Whether the text is what a spreadsheet shows for a date: '5-Mar', 'Mar-14', 'mars-05', '05.03.2026'.

    Only the spellings spreadsheets write: 'DEC-14' in capitals stays a number.
    """
    return bool(DAY.fullmatch(text) or ((match := DATE.fullmatch(text)) and not _in_capitals(match)))


def _in_capitals(match: re.Match[str]) -> bool:
    return (match["month"] or match["month_first"]).isupper()


def readings_of_date(text: str) -> tuple[str, ...]:
    """What a date made by a spreadsheet may have been: '5-3' and '3-5' for '5-Mar'. Empty where it can't be said."""
    if (match := DATE.fullmatch(text)) is not None:
        month = MONTHS[(match["month"] or match["month_first"]).casefold()]
        first, second = int(match["day"] or match["figures"]), month
    elif (found := DAY.fullmatch(text)) is not None and found["iso_day"]:
        first, second = int(found["iso_day"]), int(found["iso_month"])
    else:
        return ()
    return (f"{first}-{second}", f"{second}-{first}") if first != second else (f"{first}-{second}",)


def parse_numbers(cells: Sequence[Cell]) -> list[str | Bad]:
    """A column of numbers: as `parse_other_number`, each different cell once; most columns are plain throughout.

    In a column of numbers such as 1044-77-21 one that could be a day is not taken for one.
    """
    if _all_plain(cells):
        return list(cast(Sequence[str], cells))
    different = dict.fromkeys(cells)
    plain, mixed = PLAIN.fullmatch, LETTER_FIRST.fullmatch
    not_days = _not_days(different)
    known: dict[Cell, str | Bad] = {
        cell: cell
        if isinstance(cell, str) and (plain(cell) or mixed(cell) or cell in not_days)
        else parse_other_number(cell)
        for cell in different
    }
    return list(map(known.__getitem__, cells))


def _all_plain(cells: Sequence[Cell]) -> bool:
    """Whether every cell is blank or a number in capitals and digits that can't be damaged."""
    shapes = _shapes(cells)
    return bool(shapes) and all(map(PLAIN.fullmatch, set(shapes) - {""}))


def _shapes(cells: Sequence[Cell]) -> list[str]:
    """The column with one letter for all letters but E and one figure for all figures, which is all PLAIN looks at."""
    if set(map(type, cells)) != {str}:
        return []
    texts = cast(Sequence[str], cells)
    shapes = "\n".join(texts).translate(ONE_LETTER).split("\n")
    return shapes if len(shapes) == len(texts) else []


def _not_days(cells: Iterable[Cell]) -> set[Cell]:
    """Numbers that look like ISO days where most of the column does and some can't be days."""
    filled = [cell for cell in cells if isinstance(cell, str) and cell]
    alike = {cell for cell in filled if ISO_LIKE.fullmatch(cell)}
    return set(alike) if 2 * len(alike) > len(filled) and not all(map(DAY.fullmatch, alike)) else set()


def parse_number(cell: Cell) -> str | Bad:
    """The number as printed, '' for a blank cell; a damaged one is a problem, never an offer."""
    text = shown_of(cell)
    if isinstance(cell, Decimal):
        return _from_number_cell(cell, text)
    if len(cell) <= LONGEST and not LINE_END.search(bare := cell.strip()):
        text = bare  # every character inside stays, a no-break space too
    if formula := FORMULA_TEXT.fullmatch(text):
        text = formula[1].strip()
    text = text.removeprefix("'")
    if text and text[0] in MAY_BE_DAMAGED and (damaged := _damaged(text)):
        return damaged
    if len(text) > LONGEST:
        return Bad("number-too-long", found=text)
    return text


def _damaged(text: str) -> Bad | None:
    if became_date(text):
        return Bad("number-damaged", found=text, suggestions=readings_of_date(text), lost="")
    if exponent := EXPONENT.fullmatch(text):
        return _from_exponent(exponent, text)
    return Bad("number-damaged", found=text, lost="") if ERROR.fullmatch(text) else None


def _from_exponent(exponent: re.Match[str], text: str) -> Bad:
    """'1.2345E+4' shows every digit, so it can be written out; '1.23E+11' has lost digits."""
    whole, _, part = (exponent["mantissa"] or "").replace(",", ".").partition(".")
    if exponent["sign"] == "+" and part and len(part) == int(exponent["power"]):
        return Bad("number-damaged", found=text, suggestions=(whole + part,), lost="")
    return Bad("number-damaged", found=text, lost=", and digits are lost")


def _from_number_cell(cell: Decimal, text: str) -> str | Bad:
    """A fraction or a minus in a number cell: the spreadsheet made a number of it and may have dropped zeros."""
    if "E" in text or cell < 0 or cell != cell.to_integral_value():
        return Bad("number-damaged", found=text, lost=", and digits are lost" if "E" in text else "")
    return text


def parse_other_number(cell: Cell) -> str | Bad:
    """A maker's or a superseding number; 'n/a' and dashes mean there is none."""
    number = parse_number(cell)
    return "" if isinstance(number, str) and number.casefold() in NOTHING else number


def without_float_tail(numbers: Sequence[str | Bad]) -> list[str | Bad]:
    """Numbers without '.0' where every one in the column ends so: one blank cell made the exporter write floats.

    Where only some do (or fewer than five, too few to tell), those are problems: with the dot set aside, '40388.0'
    would be compared as another part's number. In a column with fractions such as '8.5' they are what they seem.
    """
    if ".0\n" not in "\n".join([*(number for number in numbers if type(number) is str), ""]):
        return list(numbers)
    texts = {number for number in numbers if number and isinstance(number, str)}
    tailed = {text for text in texts if FLOAT_TAIL.fullmatch(text)}
    if not tailed or any(map(FRACTION.fullmatch, texts - tailed)):
        return list(numbers)
    filled = sum(map(bool, numbers))
    if tailed == texts and filled >= 5 and not any(isinstance(number, Bad) for number in numbers):
        return [number.removesuffix(".0") if isinstance(number, str) else number for number in numbers]
    bad = {text: Bad("number-damaged", found=text, suggestions=(text.removesuffix(".0"),), lost="") for text in tailed}
    return [bad.get(number, number) if isinstance(number, str) else number for number in numbers]


def damaged_beside_others(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Numbers that only the others of their column show to be damaged. A look at the column as one text comes first."""
    text = "\n".join([number for number in numbers if type(number) is str])
    found: dict[int, Bad] = {}
    for pattern, judge in (
        (ZERO_FIRST, lost_zeros),
        (A_DAY_COUNT, day_counts),
        (MANY_DIGITS, lost_digits),
    ):
        if pattern.search(text):
            found |= judge(numbers)
    return found | remarks(numbers, text)


def lost_digits(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Numbers of more than fifteen digits that end in zeros only, as a spreadsheet leaves them."""
    return {
        at: Bad("number-damaged", found=text, lost=", and digits are lost")
        for at, text in enumerate(numbers)
        if isinstance(text, str) and len(text) > 15 and ZEROS_FOR_DIGITS.fullmatch(text)
    }


def day_counts(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Where a number such as 45942 stands among dashed ones such as 10-14: the day count of a date made of one."""
    texts = [number for number in numbers if isinstance(number, str) and number]
    if 2 * sum(map(bool, map(DASHED.fullmatch, texts))) <= len(texts):
        return {}
    return {
        at: Bad("number-damaged", found=text, suggestions=_days_counted(int(text)), lost="")
        for at, text in enumerate(numbers)
        if isinstance(text, str) and DAY_COUNT.fullmatch(text)
    }


def _days_counted(count: int) -> tuple[str, ...]:
    day = FIRST_DAY + timedelta(days=count)
    return (f"{day.month}-{day.day}", f"{day.day}-{day.month}")


def lost_zeros(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Where a leading zero was lost: the column's all-digit numbers have one length, some begin with 0, this is short.

    Only where at least four in five all-digit numbers have that length; otherwise lengths simply differ.
    """
    zeros = {len(text) for text in numbers if isinstance(text, str) and text[:1] == "0" and text.isdigit()}
    if len(zeros) != 1:
        return {}
    width = zeros.pop()
    digits = [(at, text) for at, text in enumerate(numbers) if isinstance(text, str) and text.isdigit()]
    short = [(at, text) for at, text in digits if len(text) < width]
    whole = sum(len(text) == width for _, text in digits)
    if whole < 4 * len(short) or whole + len(short) < len(digits):
        return {}
    return {at: Bad("number-lost-zero", found=text, suggestions=(text.zfill(width),)) for at, text in short}


USE = re.compile(
    r"(?:please )?(?:use|see|order|now|superseded by|replaced by|repl\.? by|ersetzt durch|siehe|->|→)\s+", re.I
)


def parse_superseding(cells: Sequence[Cell]) -> list[str | Bad]:
    """A column of superseding numbers, as `parse_superseded_by`."""
    if _all_plain(cells) and not any(map(USE.match, cast(Sequence[str], cells))):
        return list(cast(Sequence[str], cells))
    return [parse_superseded_by(cell) for cell in cells]


def parse_superseded_by(cell: Cell) -> str | Bad:
    """The superseding number without 'use' or 'see'; '' where there is none or the part is no longer available."""
    if says_only_gone(cell):
        return ""
    if successor := successor_in(cell):
        return successor
    number = parse_other_number(cell)
    if isinstance(number, str) and TWO_NUMBERS.search(number):
        return Bad("superseded-unclear", found=number)
    return USE.sub("", number, count=1) if isinstance(number, str) and USE.match(number) else number
