"""Price headers that name the day their prices hold from or to: 'à partir du 01/02/2026', 'ab 01.02.', 'until Jan 31'.

A price of a later day is not what the shop pays today: it is asked about, and kept with its day. The words are common
practice of price sheets, no source.
"""

import re
from collections.abc import Iterator, Sequence
from datetime import date
from typing import NamedTuple

from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Column

from ..cells.cell import words_of
from ..cells.day_cells import MONTH, MONTHS, Order, Spelled, day_of, days_spelled, order_of
from .break_headers import break_quantity
from .column_names import CONFIRMED, PRICES, is_open, name_of

UNTIL = re.compile(r"\b(?:until|till|through|to|up to|expires?|ends?|bis|jusqu'au|jusqu'à|au|hasta|tot|t/m|before)\W*$")
SINCE = re.compile(
    r"\b(?:from|effective|eff|as of|starting|after|valid|ab|gültig|per|seit|à partir (?:du|de)|dès(?: le)?"
    r"|a partir de|desde|vanaf|per|new|neu|nouveau|next)\b"
)
DAY_FIRST = re.compile(r"\b(?:ab|bis|gültig|preis|prix|à|du|au|dès|jusqu|desde|hasta|precio|vanaf|tot|prijs)\b")
"""Words of languages that write the day before the month."""
MONTH_OF_YEAR = re.compile(
    rf"\b(?P<month>{MONTH})\.?\s+(?P<year>20\d\d)\b|(?<![\d./-])(?P<number>\d\d?)[./](?P<of>20\d\d)\b"
)
YEAR = re.compile(r"(?<![\d./-])(20[2-9]\d)(?![\d./-])")


class PriceDays(NamedTuple):
    """From when to when the prices of a column hold by its header; several `starts`: it can be read two ways."""

    starts: tuple[date, ...] = ()
    end: date | None = None


NO_DAYS = PriceDays()


def price_days(columns: Sequence[Column], dated: date | None) -> dict[int, PriceDays]:
    """By place, the days of the price columns that name any. `dated`: the day of the sheet, for days without a year."""
    prices = [c for c in columns if c.field in PRICES or c.suggested in PRICES or is_open(c)]
    order = order_of(words_of(column.header) for column in prices)
    found = ((column.at, _days_of(column.header, order, dated)) for column in prices)
    return {at: days for at, days in found if days != NO_DAYS}


def _days_of(header: str, order: Order, dated: date | None) -> PriceDays:
    words = words_of(header)
    if not any(map(str.isdigit, words)) or break_quantity(header) is not None:
        return NO_DAYS
    order = order or ("day first" if DAY_FIRST.search(words) else "")
    spelled = [(match, day) for match, day in days_spelled(words) if _is_day(words, match.start(), day)]
    if not spelled:
        return _of_a_month(words)
    starts: tuple[date, ...] = ()
    end = None
    for match, day in spelled:
        if UNTIL.search(words[: match.start()]):
            end = next(iter(_readings(day, order, dated)), None)
        else:
            starts += _readings(day, order, dated)
    return PriceDays(tuple(sorted(set(starts))), end)


def _is_day(words: str, start: int, day: Spelled) -> bool:
    """Whether it is a day and no count of pieces: '1-9' needs a word for the day it holds from or to."""
    said = UNTIL.search(words[:start]) or SINCE.search(words[:start])
    return day.year is not None or (bool(said) and day.mark not in ("-", "/"))


def _readings(day: Spelled, order: Order, dated: date | None) -> tuple[date, ...]:
    """The days it can be. Without a year the one nearest to the day of the sheet: prices change some months ahead."""
    if day.year is not None:
        one = day_of(day, order)
        return (one,) if one else tuple(date(day.year, *pair) for pair in day.readings(order))
    around = (day_of(day._replace(year=year), order) for year in _years(dated))
    near = [one for one in around if one is not None and dated is not None]
    return (min(near, key=lambda one: abs(one - (dated or one))),) if near else ()


def _years(dated: date | None) -> range:
    return range(dated.year - 1, dated.year + 2) if dated else range(0)


def _of_a_month(words: str) -> PriceDays:
    """'Net Feb 2026', 'ab 02/2026', 'Net 2027': from the first day on."""
    if match := MONTH_OF_YEAR.search(words):
        month = MONTHS[match["month"]] if match["month"] else int(match["number"])
        year = int(match["year"] or match["of"])
        return PriceDays((date(year, month, 1),)) if 1 <= month <= 12 else NO_DAYS
    years = {int(year) for year in YEAR.findall(words)}
    return PriceDays((date(years.pop(), 1, 1),)) if len(years) == 1 and not UNTIL.search(words) else NO_DAYS


def later_starts(days: PriceDays, dated: date | None) -> tuple[date, ...]:
    """The days it may hold from, where any of them is after the day of the sheet; () where none is."""
    return days.starts if dated is not None and any(day > dated for day in days.starts) else ()


def later_price_questions(columns: Sequence[Column], dated: date | None, place: Place) -> Iterator[Problem]:
    """A question for each price column of a later day that no person has spoken of."""
    for column, starts in _later(columns, dated):
        if column.why != CONFIRMED:
            yield problem("price-of-a-later-day", place=place, found=name_of(column), day=_shown(starts), dated=dated)


def later_price_notes(columns: Sequence[Column], dated: date | None, place: Place) -> Iterator[Problem]:
    """What is told of each price column of a later day that is used."""
    for column, starts in _later(columns, dated):
        if column.field in PRICES:
            yield problem("later-price-used", place=place, found=name_of(column), day=_shown(starts), dated=dated)


def _later(columns: Sequence[Column], dated: date | None) -> Iterator[tuple[Column, tuple[date, ...]]]:
    days = price_days(columns, dated)
    for column in columns:
        if starts := later_starts(days.get(column.at, NO_DAYS), dated):
            yield column, starts


def _shown(starts: Sequence[date]) -> str:
    return " or ".join(day.isoformat() for day in starts)


def held_by_header(columns: Sequence[Column], dated: date | None) -> tuple[date | None, date | None]:
    """From when to when the prices that count hold by their headers: after the sheet's day, and until the first end.

    None where the headers say nothing, or where a day can be read two ways and one is over on the sheet's day.
    """
    days = price_days(columns, dated)
    counted = [column for column in columns if column.field == "net price"]
    counted = counted or [column for column in columns if column.field == "list price"]
    own = [days.get(column.at, NO_DAYS) for column in counted]
    starts = [max(one.starts) for one in own if one.starts and (dated is None or min(one.starts) > dated)]
    return max(starts, default=None), min((one.end for one in own if one.end), default=None)
