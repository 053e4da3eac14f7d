"""The ledger as a table to take along: CSV."""

from collections.abc import Sequence

from ..basics.deed import Deed
from .csv_text import csv_text

HEADERS = ("At", "Who", "Deed", "About", "What was done")


def deeds_csv(deeds: Sequence[Deed]) -> str:
    """Every deed, in the order given."""
    rows = [(f"{one.at:%Y-%m-%d %H:%M}", one.who, one.deed, one.subject, one.detail) for one in deeds]
    return csv_text(HEADERS, rows)
