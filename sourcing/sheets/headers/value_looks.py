"""What the values of a column look like. Hints for a person, never a reading.

A sample of at most 200 filled cells is looked at. Words that stand for 'no price' or 'no longer available', dashes
and question marks say nothing of a column. Check digits follow the GS1 General Specifications (mod 10, weights 3 and
1 from the right). Country and currency lists hold what price sheets print, from memory; the rest is common practice,
no source.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from itertools import islice

from sourcing.basics.currency import is_currency
from sourcing.basics.sheet import Field

from ..worksheet import Cell, text_of
from .header_keys import listed, plain_text

SAMPLE, FEWEST = 200, 5
MOST = 0.9

SILENT = re.compile(
    r"[\W_]*|n[./ ]?a\.?|call.*|please call|ask|poa|p\.o\.a\.?|tba|tbd|on request|.*auf anfrage|anfrage|sur demande"
    r"|consultar|op aanvraag|nla|n/l/a|n\.l\.a\.?|discontinued|obsolete|none|null|quote|rfq|no longer available|disc\.?"
)
MONEY_SIGN = r"(?:us\$|c\$|a\$|[$€£]|usd|eur|gbp|cad|aud|chf)"
NUMERIC = re.compile(
    rf"(?:{MONEY_SIGN}\s*)?\(?-?\d[\d.,' ]*\)?-?(?:\s*{MONEY_SIGN})?(?:\s*/?\s*(?:ea|each|pc|c|m|stk|st|stuck))?\.?"
)
CENTS = re.compile(
    rf"(?:{MONEY_SIGN}\s*)?\(?\d[\d.,' ]*[.,]\d\d\)?(?:\s*{MONEY_SIGN})?(?:\s*/?\s*(?:ea|each|stk|st))?\.?"
    r"|[$€£]\s*\d[\d.,]*"
)
WHOLE = re.compile(r"\d{1,7}|\d{1,3}(?:[.,' ]\d{3}){2}")
DATE = re.compile(
    r"(?:19|20)\d\d[-/.](?:0?[1-9]|1[0-2])[-/.](?:[0-2]?\d|3[01])(?:[ t]\d\d:\d\d(?::\d\d)?)?"
    r"|(?:[0-2]?\d|3[01])[-/.](?:[0-2]?\d|3[01])[-/.](?:(?:19|20)\d\d|\d\d)"
    r"|\d{1,2}[- .]+[a-z]{3,9}\.?[- .]+(?:\d\d)?\d\d|[a-z]{3,9}\.?\s+\d{1,2},?\s+20\d\d"
)
PART = re.compile(r"(?=.*\d)[a-z0-9](?:[a-z0-9./#*+-]*[a-z0-9])?(?: [a-z0-9./#-]{1,8}){0,3}")
TIME = re.compile(
    r".*\b(?:in stock|same day|next day|\d+\s*(?:-|to|bis|a|tot)?\s*\d*\s*(?:days?|wks?|weeks?|months?|hours?"
    r"|hrs?|tage?n?|wochen?|jours?|semaines?|dias?|semanas?|dagen|weken|werktage?|arbeitstage?)"
    r"|sofort|ab lager|auf lager|en stock|op voorraad"
    r"|backorder|b/o)\b.*"
)
STOCK = re.compile(
    r"[<>~]?\s*\d{1,7}\s*\+?|in stock|out of stock|low|limited|backorder|auf lager|en stock|op voorraad|agotado"
)
YES_NO = frozenset(listed("y n yes no ja nein j oui non o si s nee x true false 0 1"))
UNITS = frozenset(
    listed(
        "ea each pc pcs pk pack bx box cs ct ctn pr set kit ft m stk st c100 hundred per100 dz c m100 doz pair roll bag"
    )
)
SINGLE_UNITS = frozenset(listed("ea each pc pcs pr set kit stk st"))
BASIS_COUNTS = frozenset(listed("1 10 100 1000"))
COUNTRIES = frozenset(
    listed("""
    us usa cn chn china de deu germany jp jpn japan tw twn taiwan it ita italy fr fra france es esp spain nl nld gb gbr
    uk ca can canada mx mex mexico in ind india kr kor korea vn vnm vietnam th tha pl pol cz cze at aut ch che be bel
    se swe dk dnk fi fin no nor pt prt hu hun ro rou sk svk si svn tr tur br bra my mys id idn ph phl au aus nz nzl ie
    irl deutschland italien frankreich spanien osterreich schweiz
    """)
)

Test = Callable[[str], bool]


def is_gtin(text: str) -> bool:
    """Whether the text is 8, 12, 13 or 14 digits with a right check digit, spaces and dashes set aside."""
    digits = re.sub(r"[ -]", "", text)
    if not digits.isascii() or not digits.isdigit() or len(digits) not in (8, 12, 13, 14) or not int(digits):
        return False
    weighted = sum(int(digit) * (3 if at % 2 else 1) for at, digit in enumerate(reversed(digits)))
    return weighted % 10 == 0


def says_days(text: str) -> bool:
    """Whether the text says a count of days, weeks or months."""
    return any(map(str.isdigit, text)) and TIME.fullmatch(plain_text(text)) is not None


def is_prose(text: str) -> bool:
    """Whether the text has two words or more."""
    words = re.findall(r"[a-z]{2,}", text)
    return len(words) >= 2 and sum(map(len, words)) >= 6


def _is_code(text: str) -> bool:
    return re.fullmatch(r"[a-z]{1,2}\d{0,2}", text) is not None


def is_percent(text: str) -> bool:
    """Whether the text is '40 %'."""
    return re.fullmatch(r"\d{1,2}(?:[.,]\d+)?\s*%", text) is not None


def _is_factor(text: str) -> bool:
    return re.fullmatch(r"0?[.,]\d{1,4}", text) is not None


def _is_currency(text: str) -> bool:
    return text in "$€£" or (len(text) == 3 and text.isalpha() and is_currency(text.upper()))


LOOKS: Mapping[Field, Test] = {
    "gtin": is_gtin,
    "valid from": lambda text: DATE.fullmatch(text) is not None,
    "lead time": lambda text: TIME.fullmatch(text) is not None,
    "currency": _is_currency,
    "origin": lambda text: text in COUNTRIES,
    "price basis": lambda text: text in UNITS,
    "no longer available": lambda text: text in YES_NO,
    "discount": is_percent,
    "multiplier": _is_factor,
    "net price": lambda text: CENTS.fullmatch(text) is not None,
    "stock": lambda text: WHOLE.fullmatch(text) is not None,
    "description": is_prose,
    "discount code": _is_code,
    "supplier number": lambda text: PART.fullmatch(text) is not None and not NUMERIC.fullmatch(text),
}
"""In the order in which a column that fits several is judged: 'stock' stands for whole numbers of any kind."""


def sample_of(cells: Sequence[Cell]) -> list[str]:
    """At most 200 cells that say something, in small letters without accents, from all over the column."""
    step = max(1, -(-len(cells) // SAMPLE))
    found = list(islice(filter(None, map(_said, cells[::step])), SAMPLE))
    return found if len(found) >= SAMPLE // 2 or step == 1 else list(islice(filter(None, map(_said, cells)), SAMPLE))


def _said(cell: Cell) -> str:
    if cell == "":
        return ""
    if not isinstance(cell, str) and cell != cell.to_integral_value():
        # A number cell of 12.5 shows 12.50 where it is a price.
        return format(cell, "f") if cell.as_tuple().exponent != -1 else f"{cell:.2f}"
    text = plain_text(text_of(cell))
    return "" if SILENT.fullmatch(text) else text


def looks_like_basis(cells: Sequence[Cell], *, counts_only: bool = False) -> bool:
    """Whether every cell that says something is a count prices are for, some of them a hundred or more, or a unit.

    A column of EA alone is no basis that would be missed. `counts_only`: units do not count.
    """
    texts = {text for text in sample_of(cells)}
    counts = texts <= BASIS_COUNTS and bool(texts & {"100", "1000"})
    return counts or (not counts_only and texts <= UNITS and bool(texts - SINGLE_UNITS))


def looks_like(cells: Sequence[Cell]) -> dict[Field, float]:
    """The share of the sample that looks like each field's values; fields that no cell looks like are left out.

    'supplier number' is the share of part-number-like cells times the share of different ones.
    """
    return looks(sample_of(cells))


def looks(sample: Sequence[str]) -> dict[Field, float]:
    """As `looks_like`, for a sample that is taken already."""
    if not sample:
        return {}
    shares = {field: share_of(sample, test) for field, test in LOOKS.items()}
    if shares["net price"] >= 0.5:
        # Spreadsheets drop '.00': whole numbers among amounts with cents are amounts.
        shares["net price"] += share_of(sample, lambda text: WHOLE.fullmatch(text) is not None)
    shares["supplier number"] *= len(set(sample)) / len(sample)
    return {field: share for field, share in shares.items() if share}


def share_of(sample: Sequence[str], test: Test) -> float:
    """The share of a sample that passes the test, from 0 to 1."""
    return sum(map(test, sample)) / len(sample)


def best_look(cells: Sequence[Cell]) -> Field | None:
    """The field at least nine in ten of at least five cells look like; None where there is none."""
    sample = sample_of(cells)
    if len(sample) < FEWEST:
        return None
    found = looks(sample)
    return next((field for field in LOOKS if found.get(field, 0) >= MOST), None)


def agrees(field: Field, cells: Sequence[Cell]) -> bool:
    """Whether the values of a column speak for a field that its misspelt header names. Too few cells do not."""
    sample = sample_of(cells)
    if len(sample) < FEWEST:
        return False
    found = looks(sample)
    if field == "supplier number":
        return found.get(field, 0) >= MOST
    if field == "stock":
        return share_of(sample, lambda text: STOCK.fullmatch(text) is not None or text in YES_NO) >= MOST
    if field == "lead time":
        return found.get(field, 0) >= MOST
    if field in ("description", "note"):
        return found.get("description", 0) >= 0.5
    return field == "maker" and _are_names(sample)


def _are_names(sample: Sequence[str]) -> bool:
    """A maker's names: mostly letters, and few of them."""
    letters = share_of(sample, lambda text: not any(map(str.isdigit, text)) and len(text) > 2)
    return letters >= MOST and len(set(sample)) * 2 <= len(sample)
