"""The shop's exchange rates as a file: the same columns as rates.csv, so that it can be taken in again."""

from collections.abc import Sequence

from ..basics.rate import Rate
from .csv_text import csv_text

HEADERS = ("currency", "into", "rate", "dated", "source")


def rates_csv(rates: Sequence[Rate]) -> str:
    """The table in the order given."""
    return csv_text(HEADERS, [(one.currency, one.into, one.rate, one.dated, one.source) for one in rates])
