"""Lead times in words to a range of working days until the goods leave the supplier.

A week is 5 working days, a month 20 to 23, hours are rounded up to days of 24; days are taken as working days
(common practice, no source). Words not understood keep their text and give no days: nothing is guessed.
"""

import re
from collections.abc import Callable
from decimal import Decimal

from sourcing.basics.offer import LeadTime

from .cells import says_no_longer_available, word_set, words_of
from .worksheet import Cell, text_of

AT_ONCE = word_set(
    "in stock,instock,stock,from stock,ex stock,same day,ships same day,ships today,today,immediate,immediately,"
    "in stock ships same day,in stock same day,ships same day if in stock,available,"
    "sofort,sofort lieferbar,ab lager,auf lager,lagernd,ab lager lieferbar,vorrätig,am selben tag"
)
NEXT_DAY = word_set(
    "next day,ships next day,next business day,next working day,overnight,tomorrow,in stock ships next day,"
    "nächster tag,nächster werktag,am nächsten tag,morgen"
)
DAYS_IN = {"hour": (0, 0), "day": (1, 1), "week": (5, 5), "month": (20, 23)}
UNITS = (
    ("hour", "hours?|hrs?|h|stunden?|std"),
    ("day", "days?|d|tagen?|tage?|werktagen?|werktage?|arbeitstagen?|arbeitstage?|at|wt"),
    ("week", "weeks?|wks?|wk|w|wochen?|wo|kw"),
    ("month", "months?|mos?|monaten?|monate?|mon"),
)
UNIT = "|".join(f"(?P<{name}>{words})" for name, words in UNITS)
FILLER = "business|working|work|bus|calendar"
SPAN = re.compile(
    rf"(?<![\w.,])(?P<least>\d{{1,3}})(?:\s*(?:-|–|—|to|bis|/|or|oder)\s*(?P<most>\d{{1,3}}))?\s*"
    rf"(?:{FILLER})?\.?\s*(?:{UNIT})\.?(?!\w)"
)
BARE = re.compile(r"(\d{1,3})(?:\s*(?:-|–|—|to|bis)\s*(\d{1,3}))?")
AROUND = word_set(
    "ships,ship,shipped,usually,normally,typically,special,order,backorder,backordered,b/o,back,on,in,approx,"
    "approximately,about,ca,circa,around,est,estimated,lead,time,aro,from,factory,stock,delivery,leaves,dispatch,"
    "dispatched,business,working,transfer,warehouse,made,to,non-stock,within,up,ungefähr,etwa,lieferzeit,lieferbar,"
    "innerhalb,bis,zu,von,sonderbestellung,auf,bestellung,beschaffung,rückstand,versand,nach,~,c"
)
UP_TO = re.compile(r"\b(?:within|up to|innerhalb|bis zu)\b")


def lead_time_parser(header: str) -> Callable[[Cell], LeadTime | None]:
    """How to read the column: a header such as 'Lead time (days)' gives bare numbers their unit; without one they
    give no days. Blank is None: not stated."""
    words = re.findall(r"[^\W\d_]+", header.casefold())
    units = [name for name, spellings in UNITS[1:3] if any(re.fullmatch(spellings, word) for word in words)]
    unit = units[0] if len(units) == 1 else ""
    return lambda cell: parse_lead_time(cell, unit)


def parse_lead_time(cell: Cell, unit: str = "") -> LeadTime | None:
    """The lead time of a cell. `unit` ('day' or 'week') is what a bare number counts."""
    text, words = text_of(cell), re.sub(r"[,;:()*!]+", " ", words_of(cell)).strip(" .")
    if not words or words in ("-", "–", "—"):
        return None
    if isinstance(cell, Decimal) and cell != cell.to_integral_value():
        return LeadTime(text=text)
    least, most = _days(" ".join(words.split()), unit) if not says_no_longer_available(cell) else (None, None)
    return LeadTime(text=text, least=least, most=most)


def _days(words: str, unit: str) -> tuple[int, int] | tuple[None, None]:
    if words in AT_ONCE:
        return 0, 0
    if words in NEXT_DAY:
        return 1, 1
    if unit and (bare := BARE.fullmatch(words)):
        return _span(int(bare[1]), int(bare[2] or bare[1]), unit)
    return _from_words(words)


def _from_words(words: str) -> tuple[int, int] | tuple[None, None]:
    """One span of time among words that change nothing about it; any other word and no days are given."""
    spans = list(SPAN.finditer(words))
    rest = SPAN.sub(" ", words).replace(".", " ").split()
    if len(spans) != 1 or not AROUND.issuperset(rest):
        return None, None
    found = spans[0]
    unit = next(name for name, _ in UNITS if found[name])
    least, most = _span(int(found["least"]), int(found["most"] or found["least"]), unit)
    if least is None or most is None:
        return None, None
    return (0 if UP_TO.search(words) and not found["most"] else least), most


def _span(least: int, most: int, unit: str) -> tuple[int, int] | tuple[None, None]:
    if least > most:
        return None, None
    if unit == "hour":
        return -(-least // 24), -(-most // 24)
    return least * DAYS_IN[unit][0], most * DAYS_IN[unit][1]
