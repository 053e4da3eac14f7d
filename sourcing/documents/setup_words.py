"""What was read of the shop's files, in one sentence with what to mind of it."""

from collections.abc import Sequence

from ..basics.problem import Problem

MOST = 4
"""What is told at once; the pages of settings, terms and rates say the rest."""


def set_up_words(files: Sequence[str], warnings: Sequence[Problem]) -> str:
    """'Read shop.toml, rates.csv.' and each warning after it."""
    told = [f"Mind: {one.sentence()}" for one in warnings[:MOST]]
    more = [f"And {len(warnings) - MOST} more to mind."] if len(warnings) > MOST else []
    return " ".join([f"Read {', '.join(files)}.", *told, *more])
