"""The shop's exchange rates: as text, and as a file with the columns of rates.csv, so that it can be taken in again."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from ..basics.deed import Deed
from ..basics.rate import Rate
from .csv_text import csv_text
from .plain_text import document, table, wrapped

HEADERS = ("currency", "into", "rate", "dated", "source")
MOST = (8, 4, 14, 10, 40)


def rates_csv(rates: Sequence[Rate]) -> str:
    """The table in the order given."""
    return csv_text(HEADERS, _cells(rates))


def rates_text(rates: Sequence[Rate], holding: Sequence[Rate], taken_back: Sequence[Deed]) -> str:
    """What holds today, every rate there is, and what was taken back, by whom and why."""
    if not rates and not taken_back:
        return "There are no exchange rates yet."
    holds = [line for one in holding for line in wrapped(f"Holds today: {one.words()}")]
    rows = [tuple(map(str, cells)) for cells in _cells(rates)]
    gone = [line for one in taken_back for line in wrapped(f"{one.who}, {one.at:%Y-%m-%d %H:%M}: {one.detail}", 2)]
    taken = ["", "Taken back", *gone] if gone else []
    return document([*holds, "", *(table([HEADERS, *rows], MOST, frozenset((2,))) if rows else []), *taken])


def rate_gone_text(gone: Rate, instead: Rate | None) -> str:
    """What was taken back and what holds without it."""
    holds = f"in its place: {instead.words()}" if instead else "there is no rate before it"
    return f"Took back {gone.words()}; {holds}. What is written already keeps the rate it was worked out with."


def _cells(rates: Sequence[Rate]) -> list[tuple[str, str, Decimal, date, str]]:
    return [(one.currency, one.into, one.rate, one.dated, one.source) for one in rates]
