"""Headers of quantity-break columns: '10-49', '50+', 'ab 10', 'from 10 pcs', 'de 10 à 49', 'Price @ 10'.

The spellings are common practice in the trade, no source. 'Price 1', 'Price 2' are price levels, not quantities.
"""

import re
from functools import lru_cache

from .header_keys import plain_text, without_currency
from .price_headers import without_tax

COUNT = r"[1-9]\d{0,5}"
GROUPED = re.compile(r"(?<=\d)[.,' ](?=\d{3}(?!\d))")
"""'1,000+': quantities are whole, so the mark parts thousands."""
DASHES = re.compile("[‐‑‒–—−]")
KEPT = re.compile(r"[^\w+≥≤<>=&@-]+|_")
PRICE = r"(?:net|nett|netto|neto|price|prices|prc|preis|prix|precio|prijs|unit|dealer|your|cost|ek|each|p u|pu)"
COUNTED = r"(?:qty|quantity|menge|quantite|qte|cantidad|cant|aantal|break|staffel|staffelpreis|price break|qty break)"
BEFORE = rf"(?:(?:{PRICE}|{COUNTED}|for|at|@)\s+)*"
PIECES = r"(?:pcs|pc|pieces|pces|ea|each|stk|stuck|stueck|st|stuks|stuk|units|uds|ud|unidades|unites|piezas|pzs|pz)"
AFTER = rf"(?:\s*(?:{PIECES}|{PRICE}))*"
UP = r"(?:up|more|over|above|plus|mehr|mas|meer)"
AND = r"(?:and|&|or|und|u|oder|et|ou|y|o|en|of)"
SPANS = tuple(
    re.compile(rf"{BEFORE}(?:{pattern}){AFTER}")
    for pattern in (
        rf"(?:(?:from|von|van|de|desde|del)\s+)?(?P<least>{COUNT})\s*"
        rf"(?:-|to|bis|thru|through|a|tot|hasta|al|t m)\s*(?P<most>{COUNT})",
        rf"(?P<least>{COUNT})\s*(?:\+|(?:{AND}\s+)(?:{UP}|\+)|{UP}|u\s*m)",
        rf"(?:from|ab|≥|>=|=>|a partir de|des|desde|vanaf|at least|min)\s*(?:{COUNTED}\s*)?"
        rf"(?P<least>{COUNT})(?:\s*\+)?",
        rf"{COUNTED}\s+(?:from|ab|vanaf|desde)\s*(?P<least>{COUNT})",
        rf"@\s*(?P<least>{COUNT})",
    )
)
UNDER = re.compile(rf"{BEFORE}(?:(?:<|<=|≤|up to|under|bis|unter|jusqu a|hasta|tot)\s*{COUNT}){AFTER}")
OVER = re.compile(rf"{BEFORE}(?:(?:>|over|uber|ueber|plus de|mas de|meer dan|more than)\s*(?P<below>{COUNT})){AFTER}")
BARE_COUNT = re.compile(
    rf"(?:(?:{PRICE}\s+)?(?:qty|quantity|menge|quantite|qte|cantidad|cant|aantal)\s+)(?P<least>{COUNT}){AFTER}"
    rf"|(?P<pieces>{COUNT})\s*{PIECES}(?:\s*{PRICE})*"
)
LEVEL = re.compile(
    rf"(?:{PRICE}|{COUNTED}|level|tier|column|col|list|liste|tarif|tarifa|tarief|group|breaks?|pricing)"
    rf"(?:\s+(?:{PRICE}|level|tier|break|group|column))*(?:\s+[a-f]|\s*\d{{1,2}})(?:\s+{PRICE})?"
    rf"|(?:level|tier)(?:\s+[a-f]|\s*\d{{1,2}})|[a-f]\s+(?:price|preis|prix|precio|prijs)"
)
QTY_LEVEL = re.compile(r"(?:qty|quantity|menge|quantite|qte|cantidad|cant|aantal|break qty|qty break)\s*(\d{1,2})")
PRICE_LEVEL = re.compile(r"(?:net )?(?:price|prc|net|preis|prix|precio|prijs|cost|price break|break price)\s*(\d{1,2})")


DISCOUNT_LEVEL = re.compile(
    r"(?:dealer |trade |your )?(?:disc|discount|rabatt|rab|remise|descuento|dto|korting)\s*(\d)"
)


def numbered_discount(header: str) -> int | None:
    """The number of 'Disc 2', one of several discounts that may follow one another or be levels to choose from."""
    match = DISCOUNT_LEVEL.fullmatch(_spelled(header.replace("%", " ")))
    return int(match[1]) if match else None


@lru_cache(maxsize=16384)
def break_quantity(header: str) -> int | None:
    """From how many pieces a quantity-break column holds: '10-49', '50+', 'Qty 5+', 'ab 10'. None: no such header.

    '<10' and 'up to 9' hold from 1 on, '>50' from 51.
    """
    if not any(map(str.isdigit, header)) or not header.isprintable():
        return None
    text = _spelled(header)
    for pattern in SPANS:
        if match := pattern.fullmatch(text):
            least, most = int(match["least"]), match.groupdict().get("most")
            return least if most is None or int(most) >= least else None
    return _other_break(text)


def _other_break(text: str) -> int | None:
    if match := BARE_COUNT.fullmatch(text):
        return int(match["least"] or match["pieces"])
    if match := OVER.fullmatch(text):
        return int(match["below"]) + 1
    return 1 if UNDER.fullmatch(text) else None


def _spelled(header: str) -> str:
    text = DASHES.sub("-", plain_text(without_currency(without_tax(header))))
    return " ".join(KEPT.sub(" ", GROUPED.sub("", text)).split())


def is_price_level(header: str) -> bool:
    """Whether the header names one of several price levels: 'Price 1', 'Net B', 'Dealer 2', 'Level 3', 'Staffel 2'."""
    return LEVEL.fullmatch(_spelled(header)) is not None


def numbered_quantity(header: str) -> int | None:
    """The number of 'Qty 2', which beside 'Price 2' holds the quantity of that price and not a price."""
    match = QTY_LEVEL.fullmatch(_spelled(header))
    return int(match[1]) if match else None


def numbered_price(header: str) -> int | None:
    """The number of 'Price 2'."""
    match = PRICE_LEVEL.fullmatch(_spelled(header))
    return int(match[1]) if match else None
