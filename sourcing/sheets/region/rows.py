"""Which rows of a table's body are structure (section, total, note, repeated header) and which speak of a part.

Only rows that lack a number or a readable price or begin like a total are looked at one by one.
"""

import re
from collections.abc import Sequence
from typing import Literal

from ..headers.header_words import is_known
from ..worksheet import Cell, text_of
from .second_headers import repeats_header
from .table import MOST_HEADER_ROWS, Table

RowKind = Literal["header", "blank", "section", "total", "note", "part", "no number"]

TOTAL = re.compile(
    r"(?:sub-?\s?total|grand total|total|totals|sum|page|end of|carried forward|continued|items?:|rows?:|lines?:"
    r"|zwischensumme|summe|gesamt|gesamtsumme|seite|übertrag|ende|anzahl|sous-total|somme|suma|totaal|subtotaal|fin"
    r"|página|pagina|freight|frt|handling|shipping|postage|fracht|versand|porto|(?:\w+ ){1,3}total)\b",
    re.IGNORECASE,
)
SECTION = re.compile(
    r"\b(?:series|section|group|belts|bearings|filters|serie|série|reihe|gruppe|groupe|grupo|riemen|courroies|correas"
    r"|riemen|lager)\b",
    re.IGNORECASE,
)
WORD = re.compile(r"[^\W\d_]{3,}")
LONGEST_HEADING = 60
SENTENCE_END = re.compile(r"[.!]$|[:;,] ")


def row_kind(row: Sequence[Cell], table: Table, number_at: int, priced: bool, at: int) -> RowKind:
    """What a doubtful row is. `priced`: a price in it could be read. `at`: which row of the body it is, from 0.

    A header word where the number stands, just under the header, is a part of the header.

    A row with a number and no price is a part (no price is information), unless its number reads like a sentence or
    it is the row's only cell and reads like a heading. A row without a number is structure if nothing in it has a
    digit or it has no price and at most two cells; otherwise its number is missing.
    """
    filled = [text for cell in row if (text := text_of(cell))]
    if not filled:
        return "blank"
    if repeats_header(row, table):
        return "header"
    number = text_of(row[number_at]) if number_at < len(row) else ""
    if at < MOST_HEADER_ROWS and not re.search(r"\d", number) and is_known(number):
        return "header"
    if TOTAL.match(filled[0]) and number in ("", filled[0]) and not re.search(r"\d", number):
        return "total"
    if not number:
        return _without_number(filled, priced)
    return _heading(filled) if not priced and _is_sentence(number, alone=len(filled) == 1) else "part"


def _without_number(filled: Sequence[str], priced: bool) -> RowKind:
    has_digit = any(re.search(r"\d", text) for text in filled)
    return "no number" if has_digit and (priced or len(filled) > 2) else _heading(filled)


def _heading(filled: Sequence[str]) -> RowKind:
    """A section or a note: a note is long, ends like a sentence or speaks of something else than one heading."""
    text = " ".join(filled)
    if len(text) > LONGEST_HEADING or SENTENCE_END.search(text) or text[:1] in "*†‡":
        return "note"
    return "section"


def last_headings_are_notes(kinds: dict[int, RowKind], last_part: int) -> dict[int, RowKind]:
    """A heading with no part under it, at the end of the table, heads nothing: it is a note."""
    return {at: "note" if kind == "section" and at > last_part else kind for at, kind in kinds.items()}


def _is_sentence(number: str, alone: bool) -> bool:
    """Whether the text where the number stands is a note or a heading: two words, or alone and not like a number."""
    if " " in number and len(WORD.findall(number)) >= 2:
        return True
    heading = " " in number or not re.search(r"\d", number) or SECTION.search(number)
    return alone and bool(heading)
