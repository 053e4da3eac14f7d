"""What was read of the shop's files, in one sentence with what to mind of it."""

from collections.abc import Sequence

from ..basics.problem import Problem

MOST, MOST_LETTERS = 4, 1000
"""What is told at once; the pages of settings, terms and rates say the rest. A browser carries it to the next page in
its cookie, which holds some 4,000 letters."""


def set_up_words(files: Sequence[str], warnings: Sequence[Problem]) -> str:
    """'Read shop.toml, rates.csv.' and each warning after it."""
    told = [f"Mind: {one.sentence()}" for one in warnings[:MOST]]
    more = [f"And {len(warnings) - MOST} more to mind."] if len(warnings) > MOST else []
    return cut(" ".join([f"Read {', '.join(files)}.", *told, *more]))


def cut(text: str) -> str:
    """The text, cut where it is longer than can be carried to the next page."""
    return text if len(text) <= MOST_LETTERS else f"{text[:MOST_LETTERS]}..."
