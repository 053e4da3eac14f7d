"""Packs, multiples, minimums, break quantities and stock: counts of whole pieces."""

import re
from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal
from functools import partial
from typing import NamedTuple

from sourcing.basics.offer import LeadTime

from ..worksheet import Cell
from .basis_cells import read_basis
from .cell import Bad, is_plain_count, parse_column, says_no_longer_available, shown_of, word_set, words_of
from .day_cells import Order, order_of
from .flag_cells import parse_yes as parse_yes
from .lead_time_cells import leaving_day, parse_lead_times

PACK_WORDS = (
    r"vpe|ve|pk|packs?|packung|packungen|pck|box|boxes|pkg|pkt|paket|karton|case|carton|ctn|bag|beutel|min\.?|x|per|je|"
    r"qty|lot|paquet|boîte|boite|sachet|par|caja|cajas|paquete|bolsa|por|doos|pak|verpakking|zak"
)
PIECES = (
    r"pcs?\.?|pieces?|ea\.?|each|units?|stk\.?|stücke?|st\.?|pce?s?\.?|pièces?|unités?|uds?\.?|unidades|unidad|"
    r"piezas?|pzas?\.?|stuks?"
)
COUNT = re.compile(
    rf"(?:(?:{PACK_WORDS})(?:\s+(?:of|à|zu|de|van))?)?\s*"
    r"([0-9]{1,9}|[0-9]{1,3}(?:[., '][0-9]{3}){2,})(?:[.,]0{1,2})?"
    rf"\s*(?:/\s*)?(?:{PIECES}|{PACK_WORDS})?"
)
UNCLEAR_COUNT = re.compile(r"[0-9]{1,3}[.,][0-9]{3}")
DOZENS = re.compile(r"([0-9]{1,4})\s*(?:dz|doz|dozen|dzn|dutzend|dtzd|dz\.|douzaines?|docenas?|dozijn)\.?")
MORE = "over|more than|mehr als|über|plus de|más de|mas de|meer dan"
AT_LEAST = re.compile(
    rf"(?:>|>=|≥|{MORE})\s*([0-9]{{1,7}})"
    r"|([0-9]{1,7})\s*(?:\+|or more|plus|und mehr|et plus|ou plus|o más|y más|of meer|en meer)"
)
RANGE = re.compile(r"([0-9]{1,7})\s*[-–]\s*[0-9]{1,7}")
HAS_STOCK = word_set(
    "y,yes,in stock,instock,available,avail,stock,ja,j,auf lager,lagernd,ab lager,vorrätig,verfügbar,lieferbar,"
    "sofort lieferbar,sofort,oui,en stock,disponible,dispo,sur stock,sí,si,en existencia,en existencias,hay stock,"
    "op voorraad,voorradig,uit voorraad,direct leverbaar"
)
NO_STOCK = word_set(
    "n,no,out,none,nil,out of stock,oos,zero,sold out,not in stock,nein,nicht auf lager,nicht vorrätig,nicht lagernd,"
    "nicht verfügbar,ausverkauft,vergriffen,non,épuisé,rupture,en rupture,rupture de stock,en rupture de stock,"
    "indisponible,non disponible,pas en stock,agotado,sin stock,sin existencias,no disponible,"
    "nee,uitverkocht,niet op voorraad,niet voorradig,niet beschikbaar"
)
ON_ORDER = word_set(
    "backorder,back order,backordered,b/o,bo,on backorder,on back order,on order,rückstand,im rückstand,bestellt,"
    "special order,s/o,made to order,auf bestellung,nur auf bestellung,sonderbestellung,sur commande,en commande,"
    "commande spéciale,bajo pedido,por encargo,pedido especial,op bestelling,in bestelling,nabestelling,in backorder"
)
NOT_STATED = word_set(
    "-,--,–,—,n/a,na,?,call,ask,low,limited,low stock,limited stock,few,auf anfrage,anfrage,wenig,gering,tba,tbd,"
    "sur demande,nous consulter,faible,stock limité,peu,consultar,a consultar,bajo,pocos,op aanvraag,weinig,beperkt"
)
FEWER_THAN = re.compile(
    r"(?:<|<=|≤|under|fewer than|unter|weniger als|less than|moins de|menos de|minder dan)\s*[0-9]{1,7}"
)
ON_ORDER_TOO = re.compile(
    r"([0-9., ']+?)\s*(?:\(\s*)?(?:\+|plus|und|and)\s*[0-9]{1,7}\s*"
    r"(?:on order|on backorder|bestellt|in bestellung|im zulauf|unterwegs|incoming|en commande|pedidos?|en pedido|"
    r"in bestelling|besteld)\s*\)?"
)
STOCKED = re.compile(
    r"\s*(?:in stock|left|available|avail\.?|on hand|auf lager|am lager|verfügbar|en stock|disponibles?|op voorraad)$"
)
GROUPED = re.compile(r"[0-9]{1,3}(?:([.,])[0-9]{3})+")
NUMBER = re.compile(r"(?<![0-9.,])(?:[1-9][0-9]{0,2}(?:[., '][0-9]{3})+(?:[.,]0{1,3})?|0[.,]000)(?![0-9.,])")
FRACTION = re.compile(r"[0-9]*([.,])[0-9]*")
PER_PACK = 0
"""Stands for 'per pack' in `parse_basis`; to go with it."""


class Stock(NamedTuple):
    """Pieces in stock, None where the number is not stated; and the lead time the same words imply."""

    pieces: int | None
    implied: LeadTime | None = None


def parse_counts(cells: Sequence[Cell]) -> list[int | Bad]:
    """Packs, order multiples, minimums: whole pieces, at least 1. Blank is 1."""
    return parse_column(cells, parse_count)


def parse_count(cell: Cell) -> int | Bad:
    """Whole pieces, at least 1. Blank or a dash is 1. '1,000' alone is unclear (a thousand, or one with decimals)."""
    if isinstance(cell, Decimal):
        whole = cell == cell.to_integral_value() and 1 <= cell < 10**9
        return int(cell) if whole else Bad("quantity-unreadable", found=shown_of(cell))
    if is_plain_count(cell):
        return int(cell) or Bad("quantity-unreadable", found=cell)
    words = words_of(cell)
    if not words or words in ("-", "–", "—", "n/a"):
        return 1
    count = _count(words, shown_of(cell))
    return Bad("quantity-unreadable", found=shown_of(cell)) if count == 0 else count


def _count(words: str, shown: str) -> int | Bad:
    if UNCLEAR_COUNT.fullmatch(words) and not words.startswith("0"):
        whole = re.split("[.,]", words)[0]
        return Bad("quantity-ambiguous", found=shown, suggestions=(re.sub("[^0-9]", "", words), whole))
    if dozens := DOZENS.fullmatch(words):
        return 12 * int(dozens[1])
    match = COUNT.fullmatch(words)
    if match is None:
        return Bad("quantity-unreadable", found=shown)
    return int(re.sub("[^0-9]", "", match[1]))


FROM = re.compile(r"(?:from|ab|à partir de|a partir de|dès|desde|vanaf|min\.?|de|von|van|>=|≥)\s*")
UP_TO = re.compile(r"\s*(?:-|–|—|to|bis|à|a|tot|t/m)\s*[0-9]{1,7}$")
AND_MORE = re.compile(
    r"\s*(?:\+|and up|& up|and more|or more|und mehr|et plus|ou plus|y más|o más|en meer|of meer|up)$"
)


def parse_break_quantities(cells: Sequence[Cell]) -> list[int | Bad | None]:
    """From how many pieces on a row's price holds: '10', '10+', '10-49', 'ab 10'. Blank is None.

    '>10' is unclear: from 10 or from 11.
    """
    return parse_column(cells, _break_quantity)


def _break_quantity(cell: Cell) -> int | Bad | None:
    words = words_of(cell)
    if not words:
        return None
    if more := re.fullmatch(rf"(?:>|{MORE})\s*([0-9]{{1,7}})", words):
        readings = (more[1], str(int(more[1]) + 1))
        return Bad("quantity-ambiguous", found=shown_of(cell), suggestions=readings)
    bare = FROM.sub("", words, count=1) if FROM.match(words) else words
    bare = re.sub(rf"\s*(?:{PIECES})$", "", AND_MORE.sub("", bare))
    count = parse_count(UP_TO.sub("", bare) or "0") if isinstance(cell, str) else parse_count(cell)
    return Bad(count.code, found=shown_of(cell), suggestions=count.suggestions) if isinstance(count, Bad) else count


def parse_stock(cell: Cell) -> Stock | Bad:
    """As `parse_stocks`, for one cell that is not judged by a column: '1,200' is a problem."""
    return _stock(cell, ".,", "", None)


def parse_stocks(cells: Sequence[Cell], dated: date | None = None) -> list[Stock | Bad]:
    """Stock in pieces. Blank: not stated.

    '>50', '50+' and '10-50' give the least there is. Yes-words give no number; they imply that goods leave at once,
    which holds where the row has no lead time of its own; '2-3 wks' and 'due 12/05' imply their time likewise.
    'Backorder' is 0 with an unknown time. '<5', 'low' and 'call' state no number. Oversold stock (below zero) is 0.
    Unknown words are a problem. '1,250' is a thousand and more unless the column shows decimals. `dated`: the day of
    the sheet, for days without a year.
    """
    different = [cell for cell in dict.fromkeys(cells) if isinstance(cell, str)]
    words = [words_of(cell) for cell in different if not is_plain_count(cell)]
    # One plain number stands for all of them: it shows that not every number is grouped.
    words += next(([cell] for cell in different if is_plain_count(cell)), [])
    return parse_column(cells, partial(_stock, decimals=_decimal_marks(words), order=order_of(words), dated=dated))


def _decimal_marks(texts: Iterable[str]) -> str:
    """The marks that are decimal marks in this column of pieces: shown by '2.5', '12.0' and '0,000'.

    Where every number ends in '.000' nothing tells, so the mark is given with a '?'.
    """
    counts = {text for text in texts if text and text.strip("0123456789.,") == ""}
    grouped = {text for text in counts if GROUPED.fullmatch(text) and text[0] != "0"}
    marks = {match[1] for text in counts - grouped if (match := FRACTION.fullmatch(text))}
    if not marks and len(grouped) > 1 and grouped == counts and all(text.endswith("000") for text in grouped):
        return "?" + "".join({text[-4] for text in grouped})
    return "".join(sorted(marks))


def _stock(cell: Cell, decimals: str, order: Order, dated: date | None) -> Stock | Bad:
    if is_plain_count(cell):
        return Stock(int(cell))
    if isinstance(cell, Decimal):
        whole = cell == cell.to_integral_value() and cell < 10**9
        return Stock(max(int(cell), 0)) if whole else Bad("stock-unreadable", found=shown_of(cell))
    words = words_of(cell).rstrip(".!")
    if found := _stock_words(words, shown_of(cell), cell):
        return found
    pieces = _pieces(words, decimals)
    return Stock(pieces) if pieces is not None else _stock_time(cell, words, order, dated)


def _pieces(words: str, decimals: str) -> int | None:
    """How many pieces the words state; None where they state no number, or one that can be read two ways."""
    if re.fullmatch(r"-[0-9]{1,7}", words):
        return 0
    if more := ON_ORDER_TOO.fullmatch(words):
        words = more[1]
    words = STOCKED.sub("", words).lstrip("~ ").removesuffix(":")
    words = NUMBER.sub(partial(_ungrouped, decimals), words)
    if match := AT_LEAST.fullmatch(words) or RANGE.fullmatch(words):
        return int(next(group for group in match.groups() if group))
    count = _count(words, words)
    return None if isinstance(count, Bad) else count


def _ungrouped(decimals: str, match: re.Match[str]) -> str:
    """The number without thousands marks and without decimals of nothing; as it stands where it is unclear."""
    number = match[0]
    marks = [sign for sign in number if not sign.isdigit()]
    if len(set(marks)) == 2 and re.search(r"[.,]0{1,3}$", number):
        return re.sub("[., ']", "", number[: max(number.rfind("."), number.rfind(","))])
    if number.endswith(tuple(f"{mark}000" for mark in decimals)) and "?" not in decimals:
        return number.split(marks[0])[0] if len(marks) == 1 else number
    return number if len(set(marks)) > 1 or set(marks) & set(decimals) else re.sub("[., ']", "", number)


def _stock_time(cell: str, words: str, order: Order, dated: date | None) -> Stock | Bad:
    """'Availability' holds times on some sheets and pieces on others: words that name a time are one."""
    time = parse_lead_times([cell], "", dated)[0]
    if time and time.least is not None:
        return Stock(None, time)
    if leaves_on := leaving_day(words, order, dated):
        return Stock(0, LeadTime(text=shown_of(cell), leaves_on=leaves_on))
    if re.fullmatch(r"(?:ab |from )?(?:kw|week|semaine|semana) ?\d{1,2}", words):
        return Stock(None, LeadTime(text=shown_of(cell)))
    if re.match(r"(?:due|b/?o|back ?order\w*|eta|exp\.?|expected)\b", words) and re.search(r"\d", words):
        return Stock(0, LeadTime(text=shown_of(cell)))
    return Bad("stock-unreadable", found=shown_of(cell))


def _stock_words(words: str, shown: str, cell: Cell) -> Stock | None:
    if not words or words in NOT_STATED or FEWER_THAN.fullmatch(words):
        return Stock(None)
    if words in HAS_STOCK:
        return Stock(None, LeadTime(text=shown, least=0, most=0))
    if words in NO_STOCK or says_no_longer_available(cell):
        return Stock(0)
    return Stock(0, LeadTime(text=shown)) if words in ON_ORDER else None


def parse_basis(cell: Cell) -> int | Bad:
    """For how many pieces a price is, PER_PACK for a pack; `basis_cells.parse_basis` knows feet and metres too."""
    basis = read_basis(cell)
    if isinstance(basis, Bad) or basis.unit == "piece":
        return basis if isinstance(basis, Bad) else basis.count
    return PER_PACK if basis.unit == "pack" else Bad("price-basis-unreadable", found=shown_of(cell))
