"""Packs, multiples, minimums, price bases, stock and yes-or-no cells: counts of pieces, as integers."""

import re
from decimal import Decimal
from typing import NamedTuple

from sourcing.basics.offer import LeadTime

from .cells import Bad, says_no_longer_available, word_set, words_of
from .lead_time_cells import parse_lead_time
from .worksheet import Cell, text_of

COUNT = re.compile(
    r"(?:vpe|pk|pack|box|pkg|min\.?|x|per)?\s*([0-9]{1,9}|[0-9]{1,3}(?:[., '][0-9]{3}){2,})(?:[.,]0{1,2})?"
    r"\s*(?:/\s*)?(?:pcs?\.?|pieces|ea\.?|each|stk\.?|stück|st\.?|pk|pkg|pack|box)?"
)
UNCLEAR_COUNT = re.compile(r"[0-9]{1,3}[.,][0-9]{3}")
AT_LEAST = re.compile(
    r"(?:>|>=|≥|over|mehr als|über|more than)\s*([0-9]{1,7})|([0-9]{1,7})\s*(?:\+|or more|plus|und mehr)"
)
RANGE = re.compile(r"([0-9]{1,7})\s*[-–]\s*[0-9]{1,7}")
HAS_STOCK = word_set(
    "y,yes,in stock,instock,available,avail,stock,ja,j,auf lager,lagernd,ab lager,vorrätig,verfügbar,lieferbar,"
    "sofort lieferbar,sofort"
)
NO_STOCK = word_set(
    "n,no,out,none,nil,out of stock,oos,zero,sold out,not in stock,nein,nicht auf lager,nicht vorrätig,nicht lagernd,"
    "nicht verfügbar,ausverkauft"
)
ON_ORDER = word_set(
    "backorder,back order,backordered,b/o,bo,on backorder,on back order,on order,rückstand,im rückstand,bestellt,"
    "special order,s/o"
)
NOT_STATED = word_set(
    "-,--,–,—,n/a,na,?,call,ask,low,limited,low stock,limited stock,auf anfrage,anfrage,wenig,gering,tba,tbd"
)
FEWER_THAN = re.compile(r"(?:<|<=|≤|under|unter|weniger als|less than)\s*[0-9]{1,7}")
SINGLE = word_set("each,ea,pc,pcs,piece,pieces,unit,1,c62,stk,stück,st,stck,eh,set,kit,pair,pr,satz,paar")
BASES = {
    **dict.fromkeys(SINGLE, 1),
    **dict.fromkeys(word_set("hundred,cen,hundert"), 100),
    **dict.fromkeys(word_set("thousand,mil,tsd,tausend"), 1000),
}
"""Units of price. C62, CEN and MIL are one, hundred and thousand of UN/ECE Recommendation 20. A set, kit or pair is
one thing sold under one number."""
PACKS = word_set("pack,pk,pkg,package,box,bx,case,cs,carton,ctn,ct,bag,bg,xpk,xbx,vpe,packung,pck,karton,beutel")
PER_PACK = 0
"""Stands for 'per pack' until the row's pack is known."""
YES = word_set("y,yes,x,true,1,ja,j,✓")
NO = word_set(",n,no,false,0,nein,-,–,active,aktiv,n/a,current")


class Stock(NamedTuple):
    """Pieces in stock, None where the number is not stated; and the lead time the same words imply."""

    pieces: int | None
    implied: LeadTime | None = None


def parse_count(cell: Cell) -> int | Bad:
    """Whole pieces, at least 1. Blank or a dash is 1. '1,000' alone is unclear (a thousand, or one with decimals)."""
    if isinstance(cell, Decimal):
        whole = cell == cell.to_integral_value() and 1 <= cell < 10**9
        return int(cell) if whole else Bad("quantity-unreadable", found=text_of(cell))
    words = words_of(cell)
    if not words or words in ("-", "–", "—", "n/a"):
        return 1
    count = _count(words, text_of(cell))
    return Bad("quantity-unreadable", found=text_of(cell)) if count == 0 else count


def _count(words: str, shown: str) -> int | Bad:
    if UNCLEAR_COUNT.fullmatch(words) and not words.startswith("0"):
        whole = re.split("[.,]", words)[0]
        return Bad("quantity-ambiguous", found=shown, suggestions=(re.sub("[^0-9]", "", words), whole))
    match = COUNT.fullmatch(words)
    if match is None:
        return Bad("quantity-unreadable", found=shown)
    return int(re.sub("[^0-9]", "", match[1]))


def parse_stock(cell: Cell) -> Stock | Bad:
    """Stock in pieces. Blank: not stated.

    '>50', '50+' and '10-50' give the least there is. Yes-words give no number; they imply that goods leave at once,
    which holds where the row has no lead time of its own; '2-3 wks' implies its time likewise. 'Backorder' is 0 with
    an unknown time. '<5', 'low' and 'call' state no number. Oversold stock (below zero) is 0. Unknown words are a
    problem.
    """
    if isinstance(cell, Decimal):
        whole = cell == cell.to_integral_value() and cell < 10**9
        return Stock(max(int(cell), 0)) if whole else Bad("stock-unreadable", found=text_of(cell))
    words = words_of(cell).rstrip(".!")
    if found := _stock_words(words, text_of(cell), cell):
        return found
    if match := AT_LEAST.fullmatch(words) or RANGE.fullmatch(words):
        return Stock(int(next(group for group in match.groups() if group)))
    if re.fullmatch(r"-[0-9]{1,7}", words):
        return Stock(0)
    count = _count(words.lstrip("~ "), text_of(cell))
    if not isinstance(count, Bad):
        return Stock(count)
    # 'Availability' holds times on some sheets and pieces on others: words that name a time are one.
    time = parse_lead_time(cell)
    return Stock(None, time) if time and time.least is not None else Bad("stock-unreadable", found=text_of(cell))


def _stock_words(words: str, shown: str, cell: Cell) -> Stock | None:
    if not words or words in NOT_STATED or FEWER_THAN.fullmatch(words):
        return Stock(None)
    if words in HAS_STOCK:
        return Stock(None, LeadTime(text=shown, least=0, most=0))
    if words in NO_STOCK or says_no_longer_available(cell):
        return Stock(0)
    return Stock(0, LeadTime(text=shown)) if words in ON_ORDER else None


def parse_basis(cell: Cell) -> int | Bad:
    """For how many pieces a price is: 1, 100, 1000, a stated count, or PER_PACK. Blank is 1.

    'C' is a hundred. 'M' is a thousand, as US price sheets print it; a small 'm' may be a metre and is a problem.
    """
    shown, words = text_of(cell), words_of(cell)
    if shown in ("C", "/C", "per C", "M", "/M", "per M"):
        return 100 if shown.endswith("C") else 1000
    bare = re.sub(r"^(?:per|pro|je|price per|/)\s*", "", words).removesuffix(".")
    if not bare or bare in BASES:
        return BASES.get(bare, 1)
    if bare == "c":
        return 100
    if bare in PACKS:
        return PER_PACK
    count = re.fullmatch(r"([1-9][0-9]{0,5})(?:[.,]0+)?\s*(?:pcs?|pieces|ea|each|stk|stück|st)?\.?", bare)
    return int(count[1]) if count else Bad("price-basis-unreadable", found=shown)


def parse_yes(cell: Cell) -> bool | Bad:
    """Yes or no of a 'no longer available' column. Blank is no."""
    words = words_of(cell)
    if words in YES or says_no_longer_available(cell):
        return True
    return False if words in NO else Bad("yes-or-no-unreadable", found=text_of(cell))
