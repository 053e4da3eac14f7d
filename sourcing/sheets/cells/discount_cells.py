"""What comes off a list price: per cent, chains of them, multipliers, and the codes of the supplier's own table.

A chain '40+10' takes ten per cent off what forty left: 1 - 0.60 × 0.90 = 0.46 (common practice, no source).
"""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

from ..worksheet import Cell
from .cell import Bad, parse_column, parse_texts, shown_of, word_set, words_of

NOTHING = word_set(",-,--,–,—,n/a,na,none,keine,nvt")
PER_CENT = re.compile(r"%|\b(?:per\s?cent|percent|pct|prozent|pourcent(?:age)?|porcentaje|procent|percentage)\b")
FRACTION = re.compile(r"\b(?:fraction|decimal|as decimal|dezimal|décimal|decimaal)\b|\b0[.,]00\b")
PART = r"[0-9]{1,3}(?:[.,][0-9]{1,4})?"
CHAIN = re.compile(rf"({PART}\s*%?(?:\s*[+/]\s*{PART}\s*%?)*|{PART}\s*%(?:\s*-\s*{PART}\s*%)+)")
MULTIPLIER = re.compile(r"(?:[x×*]\s*)?([0-9]*[.,]?[0-9]+)(?:\s*[x×])?")
TOO_MUCH = 5
"""A list price multiplied with this or more is no price of a price sheet; it is a per cent or a price."""


def parse_discounts(cells: Sequence[Cell], header: str) -> list[Decimal | Bad | None]:
    """Per cent off the list price, as a fraction from 0 to below 1, exact. Blank is None.

    '40%' says it itself; '40' needs a header that speaks of per cent or a column in which all numbers are above 1,
    '0.40' a header that speaks of a fraction. Under a
    per cent header a column in which nothing is above 1 may be either ('0.4' as a workbook keeps 40%): a problem.
    """
    words = words_of(header)
    unit = "%" if PER_CENT.search(words) else "1" if FRACTION.search(words) else ""
    if unit == "%" and not _shows_per_cent(dict.fromkeys(cells)):
        unit = "?"
    if not unit and _all_per_cent(dict.fromkeys(cells)):
        unit = "%"
    return parse_column(cells, lambda cell: _discount(cell, unit))


def _shows_per_cent(cells: Iterable[Cell]) -> bool:
    """Whether a column under a per cent header has any number above 1, so that its numbers count per cent."""
    parts = [part for cell in cells for part in re.findall(PART, words_of(cell))]
    return any(_decimal(part) > 1 for part in parts)


def _all_per_cent(cells: Iterable[Cell]) -> bool:
    """Whether every number of the column is above 1: nobody takes thirty times the price off."""
    parts = [_decimal(part) for cell in cells for part in re.findall(PART, words_of(cell))]
    return bool(parts) and min(parts) > 1


def _discount(cell: Cell, unit: str) -> Decimal | Bad | None:
    words = words_of(cell)
    if words in NOTHING:
        return None
    bad = Bad("discount-unclear", found=shown_of(cell), suggestions=_suggestions(words))
    match = CHAIN.fullmatch(words)
    if match is None:
        return bad
    parts = [_decimal(part) for part in re.findall(PART, match[1])]
    if "%" in words or (unit == "%" or (len(parts) > 1 and min(parts) >= 1)):
        parts = [part / 100 for part in parts]
    elif unit != "1" and any(parts):
        return bad
    if any(part >= 1 for part in parts):
        return bad
    left = Decimal(1)
    for part in parts:
        left *= 1 - part
    return 1 - left


def _suggestions(words: str) -> tuple[str, ...]:
    if not re.fullmatch(PART, words):
        return ()
    value = _decimal(words)
    shown = (
        (f"{(value * 100).normalize():f}%", f"{value.normalize():f}%") if value < 1 else (f"{value.normalize():f}%",)
    )
    return shown if value < 100 else ()


def _decimal(text: str) -> Decimal:
    return Decimal(text.replace(",", "."))


def parse_multipliers(cells: Sequence[Cell]) -> list[Decimal | Bad | None]:
    """What the list price is multiplied with: '0.62', '0,62', 'x0.62'. Above 0 and below 5. Blank is None."""
    return parse_column(cells, _multiplier)


def _multiplier(cell: Cell) -> Decimal | Bad | None:
    words = words_of(cell)
    if words in NOTHING:
        return None
    match = MULTIPLIER.fullmatch(words)
    value = _decimal(match[1]) if match else Decimal(0)
    return value if 0 < value < TOO_MUCH else Bad("multiplier-unreadable", found=shown_of(cell))


def parse_discount_codes(cells: Sequence[Cell]) -> list[str]:
    """The codes as they stand, white space collapsed; '' where there is none. Case is kept: 'a' may not be 'A'."""
    return parse_texts(cells)
