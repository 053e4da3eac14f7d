"""Cells that hold more than one part number, or a sign that stands for the number above."""

import re
from collections.abc import Sequence

from .cell import Bad

LAST_MARKS = ")*†‡"
LAST_MARK = re.compile(r"[)*†‡]$", re.MULTILINE)
REMARK = re.compile(r"(?P<number>\S(?:.*\S)??)\s*(?:[*†‡]+|(?<=\s)\((?=[^()]*[^\W\d_]{2})[^()]*\))")
SEVERAL = re.compile(r"\S*\d\S*(?:, | (?:thru|through|or|oder|ou|to|bis|use|nla|obs) ?)(?:.*\s)?\S*", re.IGNORECASE)
"""'NW-3, NW-4', 'NW-9 thru NW-12', 'NW-7 NLA use NW-8': more than one number in a cell."""
SEVERAL_WORDS = (
    ", ",
    " thru ",
    " through ",
    " or ",
    " oder ",
    " ou ",
    " use ",
    " nla",
    " NLA",
    " OR ",
    " THRU ",
    " USE ",
)
DITTO = frozenset({'"', "''", "do.", "do", "ditto", "dito", "dto.", "idem", "id.", "〃", "“", "”"})


def remarks(numbers: Sequence[str | Bad], whole: str) -> dict[int, Bad]:
    """Numbers that are no number alone, by row. `whole`: all of them as one text, looked at first."""
    found: dict[int, Bad] = {}
    if any(mark in whole for mark in LAST_MARKS) and LAST_MARK.search(whole):
        found |= annotated(numbers)
    if any(word in whole for word in SEVERAL_WORDS) or not DITTO.isdisjoint(numbers):
        found |= several(numbers)
    return found


def annotated(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Numbers with a remark behind them: '221-1004 (NLA)', '221-1003*'."""
    found = ((at, text, REMARK.fullmatch(text)) for at, text in enumerate(numbers) if isinstance(text, str))
    return {
        at: Bad("number-with-remark", found=text, suggestions=(match["number"],)) for at, text, match in found if match
    }


def several(numbers: Sequence[str | Bad]) -> dict[int, Bad]:
    """Cells with more than one number, or with a sign that stands for the number above."""
    texts = [(at, text) for at, text in enumerate(numbers) if isinstance(text, str)]
    return {
        at: Bad("number-with-remark", found=text)
        for at, text in texts
        if text.casefold() in DITTO or (SEVERAL.fullmatch(text) and any(word in text for word in SEVERAL_WORDS))
    }
