"""A header made comparable: its key, the spellings a word list stands for, the currencies it names.

The words are common practice in the trade, no source.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import product

TRADE_CURRENCIES = "USD|EUR|GBP|CAD|AUD|NZD|CHF|SEK|NOK|DKK|PLN|CZK|JPY|CNY|MXN"
"""Codes looked for inside headers and preambles. The full list of ISO 4217 holds ALL, TOP, TRY, CUP: plain words."""

CODE = re.compile(rf"(?<![A-Za-z])({TRADE_CURRENCIES})(?![A-Za-z])")
SMALL_CODE = re.compile(r"(?<![A-Za-z])(usd|eur|gbp|chf)(?![A-Za-z])", re.I)
"""Codes that are no word in any letters: 'cad' small may be a drawing."""
SIGNS = {"€": "EUR", "£": "GBP"}
"""Signs of one currency. '$' belongs to several, so it tells none."""
DOLLARS = {"US": "USD", "C": "CAD", "CA": "CAD", "CAN": "CAD", "CDN": "CAD", "A": "AUD", "AU": "AUD", "NZ": "NZD"}
DOLLAR = re.compile(r"(?<![A-Za-z])(US|CDN|CAN|CA|C|AU|A|NZ)\$")
US_DOLLARS = re.compile(r"(?<![A-Za-z])(?:(?:US|U\.S\.) (?:dollars?|funds|\$)(?![a-z])|\$ ?US(?![A-Za-z]))", re.I)
CANADIAN_DOLLARS = re.compile(r"(?<![A-Za-z])Canadian (?:dollars?|funds|\$)(?![a-z])", re.I)
FRANCS = re.compile(r"(?<![A-Za-z])(?:Swiss francs?|Schweizer Franken|francs suisses)(?![a-z])", re.I)
EURO = re.compile(r"(?<![A-Za-z])euros?(?![A-Za-z])", re.I)
STERLING = re.compile(r"(?<![A-Za-z])(?:pounds? )?sterling(?![A-Za-z])", re.I)


NAMES_CURRENCY = re.compile(rf"[$€£]|dollar|sterling|{TRADE_CURRENCIES}", re.I)
"""Whether it is worth looking closer: most headers name no currency."""


def listed(words: str) -> tuple[str, ...]:
    """The words of a list with spaces."""
    return tuple(words.split())


NUMBER_WORDS = dict.fromkeys(listed("no nos num nbr nr nrs numero nummer number numbers"), "number")
QTY_WORDS = dict.fromkeys(
    listed("qty qtys quantity quantities quantite qte cantidad cant menge aantal hoeveelheid"), "qty"
)
MAKER_WORDS = dict.fromkeys(listed("mfr mfg mfgr mfrs manuf manufac manufact manufacturer manufacturers mnfr"), "mfr")
ALIASES = {
    **NUMBER_WORDS,
    **QTY_WORDS,
    **MAKER_WORDS,
    **dict.fromkeys(("avail", "avl", "available", "availability"), "avail"),
    **dict.fromkeys(("pack", "pk", "pkg", "package", "pck", "packs"), "pack"),
    **dict.fromkeys(("desc", "descr", "description", "descrip", "descriptn"), "description"),
    **dict.fromkeys(("min", "minimum"), "min"),
    **dict.fromkeys(("currency", "curr", "crcy", "crncy"), "currency"),
    **dict.fromkeys(("reference", "referencia", "referentie", "referenz", "ref"), "ref"),
    **dict.fromkeys(("price", "prc"), "price"),
    **dict.fromkeys(("each", "ea"), "each"),
    **dict.fromkeys(("weight", "wt", "wgt"), "weight"),
    **dict.fromkeys(("date", "dt", "dte"), "date"),
    **dict.fromkeys(("code", "cd", "cde"), "code"),
    **dict.fromkeys(("superseded", "superceded", "supsd", "suprsd", "supd", "ssd"), "superseded"),
    **dict.fromkeys(("dealer", "dlr"), "dealer"),
    **dict.fromkeys(("wholesale", "whsl", "whlsl", "whsle"), "wholesale"),
    **dict.fromkeys(("distributor", "dist", "distr"), "distributor"),
    **dict.fromkeys(("amount", "amt"), "amount"),
    **dict.fromkeys(("charge", "chg", "chrg"), "charge"),
    **dict.fromkeys(("stock", "stk"), "stock"),
    **dict.fromkeys(("product", "prod"), "product"),
    **dict.fromkeys(("country", "ctry", "cntry"), "country"),
    **dict.fromkeys(("vendor", "vend", "vndr"), "vendor"),
    **dict.fromkeys(("supplier", "suppl", "supp"), "supplier"),
    **dict.fromkeys(("discount", "dscnt", "dsct"), "discount"),
    **dict.fromkeys(("order", "ord"), "order"),
    **dict.fromkeys(("standard", "std"), "standard"),
    **dict.fromkeys(("effective", "eff"), "effective"),
    **dict.fromkeys(("regular", "reg"), "regular"),
    **dict.fromkeys(("shipping", "shpg", "shipg"), "shipping"),
    "#": "number",
}
"""Words that stand for one another wherever they are."""

WORD = re.compile(r"[^\W_]+|#")
TAIL = re.compile(r"(?<=[a-z]{3})(?:nummer|nr)$")
DEGREE = re.compile(r"(?<![^\W\d_])n ?[°º]", re.I)
OWNER = re.compile(r"(?<=[a-z])['’]s\b", re.I)
DIVIDED = re.compile(r"(?<=[^\W\d_])- (?=[^\W\d_A-ZÀ-Ý])")
"""A word divided at the end of a line in the cell: 'Bestell- menge'."""
CAMEL = re.compile(r"(?<=[a-zà-ÿ])(?=[A-ZÀ-Ý][a-zà-ÿ])")
"""Where two words of an export's column name meet: 'ItemNo', 'listPrice'."""
UMLAUTS = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue"})


def plain_text(text: str) -> str:
    """The text in small letters without accents, one form of each character, single spaces."""
    if text.isascii():
        return " ".join(text.casefold().split())
    # The degree sign of 'N°' is a letter only after NFKC for one of its two characters, so it is taken first.
    apart = unicodedata.normalize("NFKD", DEGREE.sub("no ", text))
    return " ".join("".join(c for c in apart if not unicodedata.combining(c)).casefold().split())


def without_currency(text: str) -> str:
    """The text without the currencies `currencies_named` finds in it, and without bare signs."""
    if not NAMES_CURRENCY.search(text):
        return text
    for pattern in (DOLLAR, US_DOLLARS, STERLING, EURO, SMALL_CODE, CODE):
        text = pattern.sub(" ", text)
    return re.sub(r"[$€£]", " ", text)


def words_in(header: str) -> list[str]:
    """The header's words without currency, each in its common form: 'Mfg. Part #' is mfr, part, number."""
    whole = DIVIDED.sub("", CAMEL.sub(" ", header))
    words = WORD.findall(OWNER.sub("", plain_text(without_currency(whole))))
    return [ALIASES.get(word) or TAIL.sub("number", word) for word in words]


@lru_cache(maxsize=16384)
def header_key(header: str) -> str:
    """The header without currency, case, accents, spaces and punctuation.

    'EK netto EUR' and 'ek-netto (€)' share 'eknetto'; 'Part #', 'part no.' and 'PART NUMBER' share 'partnumber'.
    """
    return "".join(words_in(header))


def spellings(words: str) -> Iterator[str]:
    """The spellings a list stands for: `a|b c` is 'a c' and 'b c', `-` leaves a word out, `x_y` is 'x y'.

    Lists are separated by commas. An umlaut is also written as 'ae', 'oe', 'ue'.
    """
    for entry in re.sub(r"\|\s+", "|", words).split(","):
        choices = [[choice.replace("_", " ") for choice in token.split("|")] for token in entry.split()]
        for chosen in product(*choices):
            text = " ".join(word for word in chosen if word != "-")
            yield text
            if not text.isascii() and text.translate(UMLAUTS) != text:
                yield text.translate(UMLAUTS)


def keys_of(*lists: str) -> Iterable[str]:
    """The keys of all spellings of these lists."""
    return dict.fromkeys(header_key(text) for words in lists for text in spellings(words) if text)


def currencies_named(text: str) -> set[str]:
    """The trade currencies a header or a preamble line names by code, by name, or by a sign of one currency only."""
    named = {DOLLARS[found] for found in DOLLAR.findall(text)} | set(CODE.findall(text))
    named |= {found.upper() for found in SMALL_CODE.findall(text)}
    named |= {code for sign, code in SIGNS.items() if sign in text}
    words = ((US_DOLLARS, "USD"), (EURO, "EUR"), (STERLING, "GBP"), (CANADIAN_DOLLARS, "CAD"), (FRANCS, "CHF"))
    return named | {code for pattern, code in words if pattern.search(text)}
