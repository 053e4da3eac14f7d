"""Days: every usual writing to a date, the order of day and month judged by column.

'2026-12-05' is ISO 8601 and clear, dots put the day first ('05.12.2026'), a month's name is clear. '12/05/2026' is
clear only where a number above 12 in its column shows the order. Two-digit years are 2020 to 2099.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from typing import Literal, NamedTuple

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of

MONTH_WORDS = (
    "january,jan,januar,jän,janvier,janv,januari,enero,ene",
    "february,feb,febr,februar,février,fevrier,févr,fevr,fév,februari,febrero",
    "march,mar,märz,maerz,mrz,mär,mars,maart,mrt,marzo",
    "april,apr,avril,avr,abril,abr",
    "may,mai,mei,mayo",
    "june,jun,juni,juin,junio",
    "july,jul,juli,juillet,juil,julio",
    "august,aug,août,aout,augustus,agosto,ago",
    "september,sep,sept,septembre,septiembre",
    "october,oct,oktober,okt,octobre,octubre",
    "november,nov,novembre,noviembre",
    "december,dec,dezember,dez,décembre,decembre,déc,diciembre,dic",
)
"""English, German, French, Spanish, Dutch; held against Unicode CLDR by a test."""
MONTHS = {word: number for number, words in enumerate(MONTH_WORDS, 1) for word in words.split(",")}
MONTH = "|".join(sorted(MONTHS, key=len, reverse=True))
DAY = re.compile(
    r"(?<![\w.,/-])(?<!\d:)(?:"
    r"(?P<iso_year>\d{4})(?P<iso_mark>[-/.])(?P<iso_month>\d{1,2})(?P=iso_mark)(?P<iso_day>\d{1,2})"
    r"(?:[t ]\d\d:\d\d(?::\d\d(?:\.\d+)?)?z?)?"
    r"|(?P<first>\d{1,2})\s?(?P<mark>[./-])\s?(?P<second>\d{1,2})(?:\s?(?P=mark)(?:\s?(?P<year>\d{4}|\d\d))?)?"
    rf"|(?P<day>\d{{1,2}})(?:st|nd|rd|th|er|º|\.)?[\s-]*(?:de\s+)?(?P<month>{MONTH})(?![^\W\d_])\.?"
    r"(?:[\s,-]*(?:del?\s+)?'?(?P<day_year>\d{4}|\d\d))?"
    rf"|(?P<month_first>{MONTH})\.?\s+(?P<day_after>\d{{1,2}})(?:st|nd|rd|th)?(?:\s*,?\s*(?P<month_year>\d{{4}}))?"
    r")(?![\w/:])(?!\.?[,-]?\d)"
)
COMPACT = re.compile(r"(20\d\d)(\d\d)(\d\d)")
AROUND = word_set("from,until,till,to,on,valid,ab,bis,am,gültig,du,au,le,à,partir,de,desde,hasta,el,vanaf,tot,op")
Order = Literal["day first", "month first", ""]


class Spelled(NamedTuple):
    """A day as spelled: two numbers, which of them is the day ('' where the spelling does not say), the year or None.

    `mark`: the separator of a day in figures, blank for one with a month's name.
    """

    first: int
    second: int
    year: int | None
    order: Order
    mark: str = ""

    def readings(self, order: Order) -> list[tuple[int, int]]:
        """The (month, day) it can be, one of them where the order is known or both are the same."""
        order = self.order or order
        both = {(self.second, self.first)} if order != "month first" else set()
        both |= {(self.first, self.second)} if order != "day first" else set()
        return [pair for pair in sorted(both) if _exists(2000 if self.year is None else self.year, *pair)]


def days_spelled(words: str) -> Iterator[tuple[re.Match[str], Spelled]]:
    """Every day in a text that went through `words_of`, with where it stands."""
    for match in DAY.finditer(words):
        yield match, _spelled(match)


def _spelled(match: re.Match[str]) -> Spelled:
    found = match.groupdict()
    if found["iso_year"]:
        return Spelled(int(found["iso_month"]), int(found["iso_day"]), int(found["iso_year"]), "month first", "iso")
    if found["mark"]:
        order: Order = "day first" if found["mark"] == "." else ""
        return Spelled(int(found["first"]), int(found["second"]), _year(found["year"]), order, found["mark"])
    if found["month"]:
        return Spelled(int(found["day"]), MONTHS[found["month"]], _year(found["day_year"]), "day first")
    month = MONTHS[found["month_first"]]
    return Spelled(month, int(found["day_after"]), _year(found["month_year"]), "month first")


def _year(text: str | None) -> int | None:
    if not text:
        return None
    # A year such as '05' is no day of a price sheet; 0 makes every reading impossible.
    return int(text) if len(text) == 4 else 2000 + int(text) if int(text) >= 20 else 0


def _exists(year: int, month: int, day: int) -> bool:
    try:
        date(year, month, day)
    except ValueError:
        return False
    return True


def order_of(texts: Iterable[str]) -> Order:
    """Which comes first in a column's days such as '13/05/2026': shown by any number above 12, '' where they differ."""
    shown = {_order_shown(spelled) for words in texts for _, spelled in days_spelled(words) if not spelled.order}
    orders = shown - {""}
    return orders.pop() if len(orders) == 1 else ""


def _order_shown(spelled: Spelled) -> Order:
    if spelled.first > 12 >= spelled.second:
        return "day first"
    return "month first" if spelled.second > 12 >= spelled.first else ""


def day_of(spelled: Spelled, order: Order, dated: date | None = None) -> date | None:
    """The one day it is. A year left out: the first such day on or after `dated`. None: no day, or not to be told."""
    readings = spelled.readings(order)
    if len(readings) != 1:
        return None
    month, day = readings[0]
    if spelled.year is not None:
        return date(spelled.year, month, day)
    if dated is None:
        return None
    years = [year for year in range(dated.year, dated.year + 9) if _exists(year, month, day)]
    return next(day_found for year in years if (day_found := date(year, month, day)) >= dated)


def parse_days(cells: Sequence[Cell]) -> list[date | Bad | None]:
    """The column's days; blank is None. A day without its year is unreadable: nothing says which year is meant."""
    order = order_of(words_of(cell) for cell in dict.fromkeys(cells))
    return parse_column(cells, lambda cell: _parse_day(cell, order))


def _parse_day(cell: Cell, order: Order) -> date | Bad | None:
    words = words_of(cell)
    if not words or words in ("-", "--", "–", "—", "n/a"):
        return None
    unreadable = Bad("day-unreadable", found=shown_of(cell))
    if (compact := COMPACT.fullmatch(words)) is not None:
        year, month, day = map(int, compact.groups())
        return date(year, month, day) if _exists(year, month, day) else unreadable
    found = list(days_spelled(words))
    rest = set(DAY.sub(" ", words).replace(".", " ").replace(":", " ").split())
    if len(found) != 1 or not AROUND.issuperset(rest) or found[0][1].year is None:
        return unreadable
    spelled = found[0][1]
    readings = tuple(date(spelled.year or 0, *pair).isoformat() for pair in spelled.readings(order))
    if len(readings) > 1:
        return Bad("day-unclear", found=shown_of(cell), one=readings[0], other=readings[1])
    return day_of(spelled, order) or unreadable


PAGES = re.compile(r"\b(?:page|seite|página|pagina|pag\.?|p\.|blad|sheet|blatt)\s*\d+\s*(?:/|of|von|de|sur|van)\s*\d+")
END = re.compile(r"\b(?:until|till|through|expires?|ends?|bis|jusqu'au|hasta|tot|t/m|before)\b")


def day_in_text(text: str) -> date | None:
    """The day a line of text names; None where it names none, more than one, or one that can be read two ways.

    Also None where the line speaks of an end ('until', 'bis'): the day is not the one prices hold from.
    """
    words = PAGES.sub(" ", words_of(text))
    days = {day_of(spelled, "") for _, spelled in days_spelled(words)}
    return days.pop() if len(days) == 1 and not END.search(words) else None
