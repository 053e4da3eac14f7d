"""What a cell's text looks like, for judging how a file is written. Nothing of it is kept."""

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Literal

CellKind = Literal["blank", "number", "date", "time", "code", "word", "text", "mixed", "quoted", "open quote"]

KINDS: tuple[tuple[CellKind, re.Pattern[str]], ...] = (
    ("number", re.compile(r"[-+(]?[$€£]? ?(?:\d{1,3}(?:[.,' ]\d{3})+|\d+)?(?:[.,]\d+)?(?:[eE][-+]?\d+)?\)? ?[%€$£]?")),
    (
        "date",
        re.compile(r"\d{1,4}([-/.])\d{1,2}\1\d{1,4}(?:[ T]\d{1,2}:\d\d[^\s,;|]*(?:,\d{3})?)?(?: ?[AaPp]\.?[Mm]\.?)?"),
    ),
    ("time", re.compile(r"\d{1,3}:\d\d(?::\d\d(?:[.,]\d+)?)?(?: ?[AaPp]\.?[Mm]\.?)?")),
    ("quoted", re.compile(r"\s*(?:\"(?:[^\"\\]|\"\"|\\.)*\"|'(?:[^'\\]|''|\\.)*')\s*", re.DOTALL)),
    ("open quote", re.compile(r"\s*[\"'].*|.*\"\s*", re.DOTALL)),
    ("mixed", re.compile(r".*(?:[;\t|]|,(?! )|[^\s\"],\s*\"|\S[~^]\S).*", re.DOTALL)),
    ("code", re.compile(r"(?=.*\d)\S+")),
    ("word", re.compile(r"\S+")),
)
QUALITY: dict[CellKind, float] = {
    "blank": 0.75, "number": 1.0, "date": 1.0, "time": 1.0, "code": 0.95, "word": 0.95, "text": 0.85, "mixed": 0.3,
    "quoted": 0.1, "open quote": 0.4,
}  # fmt: skip
"""How well a cell of this kind speaks for a reading: a delimiter or quotes left in a cell speak against it."""
LOOKED_AT = 200


def cell_kind(text: str) -> CellKind:
    """The kind of a cell, by its first 200 characters."""
    return _kind(text[:LOOKED_AT])


@lru_cache(maxsize=20_000)
def _kind(text: str) -> CellKind:
    stripped = text.strip()
    if not stripped:
        return "blank"
    return next((kind for kind, pattern in KINDS if pattern.fullmatch(stripped)), "text")


def quality(text: str) -> float:
    """0 to 1: how much the cell looks like one cell of a table. A space in front is left over from a delimiter."""
    return QUALITY[cell_kind(text)] - (0.05 if text.startswith(" ") else 0.0)


def keeps_open_quote(row: Sequence[str], quote: str) -> bool:
    """Whether a cell begins with a quote that nothing closes."""
    return bool(quote) and any(cell.startswith(quote) and cell.count(quote) == 1 for cell in row)
