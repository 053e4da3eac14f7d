"""Lead times in words to a range of working days until the goods leave the supplier, or to the day they leave.

A week is 5 working days, a month 20 to 23, hours are rounded up to days of 24; days are taken as working days
(common practice, no source). A calendar week is one of ISO 8601; its Friday is the day taken, the safe end of it.
Words not understood keep their text and give no days: nothing is guessed.
"""

import re
from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal

from sourcing.basics.offer import LeadTime

from ..worksheet import Cell
from .cell import parse_column, says_no_longer_available, shown_of, word_set, words_of
from .day_cells import DAY, Order, day_of, days_spelled, order_of

AT_ONCE = word_set(
    "in stock,instock,stock,from stock,ex stock,same day,ships same day,ships today,today,immediate,immediately,"
    "in stock ships same day,in stock same day,ships same day if in stock,same day if,available,"
    "sofort,sofort lieferbar,ab lager,auf lager,lagernd,ab lager lieferbar,vorrätig,am selben tag,"
    "en stock,sur stock,de stock,disponible,immédiat,disponible immédiatement,le jour même,"
    "en existencia,en existencias,disponible en stock,inmediato,inmediata,entrega inmediata,mismo día,el mismo día,"
    "op voorraad,uit voorraad,voorradig,direct leverbaar,dezelfde dag,zelfde dag"
)
NEXT_DAY = word_set(
    "next day,ships next day,next business day,next working day,overnight,tomorrow,in stock ships next day,"
    "nächster tag,nächster werktag,am nächsten tag,morgen,lendemain,le lendemain,jour suivant,"
    "día siguiente,al día siguiente,mañana,volgende dag,volgende werkdag"
)
DAYS_IN = {"hour": (0, 0), "day": (1, 1), "week": (5, 5), "month": (20, 23)}
UNITS = (
    ("hour", "hours?|hrs?|h|stunden?|std|heures?|horas?|uur|uren"),
    (
        "day",
        "days?|d|tagen?|tage?|werktagen?|werktage?|arbeitstagen?|arbeitstage?|at|wt|jours?|jrs?|j|días?|dias?"
        "|dagen|dag|werkdagen|werkdag",
    ),
    ("week", "weeks?|wks?|wk|w|wochen?|wo|kw|semaines?|sem|semanas?|weken"),
    ("month", "months?|mos?|monaten?|monate?|mon|mois|mes(?:es)?|maanden|maand"),
)
UNIT = "|".join(f"(?P<{name}>{words})" for name, words in UNITS)
FILLER = "business|working|work|bus|calendar"
TO = "-|–|—|to|bis|à|a|tot"
SPAN = re.compile(
    rf"(?<![\w.,])(?P<least>\d{{1,3}})(?:\s*(?:{TO}|/|or|oder|ou|o|of)\s*(?P<most>\d{{1,3}}))?\s*"
    rf"(?:{FILLER})?\.?\s*(?:{UNIT})\.?(?!\w)"
)
CALENDAR = re.compile(r"\bcal(?:endar)?\b")
"""Seven days of the calendar are five working days."""
BARE = re.compile(rf"(\d{{1,3}})(?:\s*(?:{TO})\s*(\d{{1,3}}))?")
AROUND = word_set(
    "ships,ship,shipped,usually,normally,typically,special,order,backorder,backordered,b/o,back,on,in,approx,"
    "approximately,about,ca,circa,around,est,estimated,lead,time,aro,from,factory,stock,delivery,leaves,dispatch,"
    "dispatched,business,working,transfer,direct,vendor,supplier,import,overseas,allow,drop,drop-ship,dropship,custom,warehouse,made,to,non-stock,within,up,ungefähr,etwa,lieferzeit,lieferbar,"
    "innerhalb,bis,zu,von,sonderbestellung,auf,bestellung,beschaffung,rückstand,versand,nach,~,c,"
    "sous,délai,de,livraison,expédition,environ,env,dispo,disponible,sur,commande,dans,ouvrés,ouvrables,ouvré,usine,"
    "plazo,entrega,en,dentro,aprox,bajo,pedido,hábiles,laborables,laborable,hábil,fábrica,unos,"
    "levertijd,binnen,ongeveer,circa,op,bestelling,levering,leverbaar,verzending,fabriek,na"
)
DUE = word_set(
    "bo,b/o,backorder,backordered,back,due,exp,expected,eta,until,till,available,avail,arriving,arrives,ships,restock,"
    "estimated,est,next,stock,delivery,incoming,date,fällig,erwartet,voraussichtlich,vorauss,lieferbar,verfügbar,"
    "wieder,liefertermin,termin,zulauf,rückstand,prévu,attendu,réappro,dispo,disponible,disponibilité,livraison,"
    "previsto,prevista,llegada,entrega,disponibilidad,verwacht,leverbaar,beschikbaar,nabestelling,nalevering,weer"
)
"""Words a day without a year needs beside it: '12/05' alone may be anything."""
LINKS = word_set("in,on,by,ab,am,bis,from,again,le,au,du,à,a,partir,de,el,desde,hasta,vanaf,op,tot,per,week,w,c")
UP_TO = re.compile(r"\b(?:within|up to|innerhalb|bis zu|sous|dans un délai de|dentro de|binnen)\b")
CUT_OFF = re.compile(
    r"(?:\b(?:if|when|bei|wenn|si|als)\s+)?(?:\b(?:ordered|order|bestellung|bestellt|besteld|commandé|pedido)\s+)?"
    r"\b(?:before|by|until|till|bis|vor|avant|antes de(?: las)?|voor)\s+"
    r"(?:\d{1,2}\s*(?:am|pm|a\.m\.|p\.m\.|uhr|h|uur|u)(?!\w)\.?(?:\s?\d\d)?|\d{1,2}[:.h]\d\d(?:\s*(?:am|pm|uhr|h|uur))?|noon|mittag)"
    r"(?:\s+(?:bestellt|besteld|ordered))?"
)
"""'before 2pm', 'if ordered by 14:00': until when an order leaves the same day. The terms hold the cut-off hour."""
WEEK = re.compile(
    r"(?<![\w/])(?:calendar week|kalenderwoche|kw|week|wk|woche|semaine|sem|semana|s)\.?\s?(?P<week>\d{1,2})"
    r"(?:\s?/\s?(?P<year>\d{4}|\d\d))?(?![\w/-])"
)


def parse_lead_times(cells: Sequence[Cell], header: str, dated: date | None) -> list[LeadTime | None]:
    """The column's lead times; blank is None, not stated.

    A header such as 'Lead time (days)' gives bare numbers their unit. `dated`: the day of the sheet; a day or week
    without its year is the first on or after it, and not known where `dated` is None. The order of day and month is
    the column's; where it does not show, a day such as '12/05' is not known.
    """
    unit, order = unit_in(header), order_of(words_of(cell) for cell in dict.fromkeys(cells))
    return parse_column(cells, lambda cell: _lead_time(cell, unit, order, dated))


def unit_in(header: str) -> str:
    """'day' or 'week' where the header names one of them; else ''."""
    words = re.findall(r"[^\W\d_]+", header.casefold())
    units = [name for name, spellings in UNITS[1:3] if any(re.fullmatch(spellings, word) for word in words)]
    return units[0] if len(units) == 1 else ""


def lead_time_parser(header: str) -> Callable[[Cell], LeadTime | None]:
    """As `parse_lead_times` for single cells, without a day for the sheet."""
    unit = unit_in(header)
    return lambda cell: parse_lead_time(cell, unit)


def parse_lead_time(cell: Cell, unit: str = "") -> LeadTime | None:
    """The lead time of a cell. `unit` ('day' or 'week') is what a bare number counts."""
    return _lead_time(cell, unit, "", None)


def _lead_time(cell: Cell, unit: str, order: Order, dated: date | None) -> LeadTime | None:
    text, words = shown_of(cell), words_of(cell)
    if not words.strip(" .") or words in ("-", "–", "—"):
        return None
    if says_no_longer_available(cell) or (isinstance(cell, Decimal) and cell != cell.to_integral_value()):
        return LeadTime(text=text)
    plain = _plain(CUT_OFF.sub(" ", words))
    least, most = _days(plain, unit)
    if least is not None:
        return LeadTime(text=text, least=least, most=most)
    return LeadTime(text=text, leaves_on=None if SPAN.search(words) else leaving_day(words, order, dated, unit))


def _plain(words: str) -> str:
    return " ".join(re.sub(r"[,;:()*!]+", " ", words).split()).strip(" .")


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
    if least is not None and most is not None and unit == "day" and CALENDAR.search(found[0]):
        least, most = least * 5 // 7, -(-most * 5 // 7)
    if least is None or most is None:
        return None, None
    return (0 if UP_TO.search(words) and not found["most"] else least), most


def _span(least: int, most: int, unit: str) -> tuple[int, int] | tuple[None, None]:
    if least > most:
        return None, None
    if unit == "hour":
        return -(-least // 24), -(-most // 24)
    return least * DAYS_IN[unit][0], most * DAYS_IN[unit][1]


def leaving_day(words: str, order: Order, dated: date | None, unit: str = "") -> date | None:
    """The day that words such as 'BO 12/05', 'ETA 2026-12-05' or 'KW 49' name, None where it can't be told.

    Under a header that counts days or weeks a spreadsheet's own date is a range it has damaged ('2-3'), not a day.
    """
    if unit and words.endswith(" 00:00:00"):
        return None
    weeks, days = list(WEEK.finditer(words)), list(days_spelled(words))
    rest = _plain(WEEK.sub(" ", words) if weeks else DAY.sub(" ", words)).replace(".", " ").split()
    if not (DUE | LINKS).issuperset(rest) or len(weeks) + len(days) != 1:
        return None
    if weeks:
        return _friday(int(weeks[0]["week"]), weeks[0]["year"], dated)
    spelled = days[0][1]
    in_figures_only = spelled.year is None and spelled.mark
    if in_figures_only and (spelled.mark == "-" or not DUE.intersection(rest)):
        return None
    return day_of(spelled, order, dated)


def _friday(week: int, year: str | None, dated: date | None) -> date | None:
    """The Friday of an ISO 8601 week; without its year the first on or after `dated`."""
    if year:
        years = [int(year) if len(year) == 4 else 2000 + int(year)]
    else:
        years = [dated.isocalendar().year, dated.isocalendar().year + 1] if dated else []
    for one in years:
        if (friday := _friday_of(one, week)) and (year or not dated or friday >= dated):
            return friday
    return None


def _friday_of(year: int, week: int) -> date | None:
    try:
        return date.fromisocalendar(year, week, 5)
    except ValueError:  # only some years have a week 53
        return None
