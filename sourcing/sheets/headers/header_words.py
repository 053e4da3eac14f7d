"""What the header words of price sheets mean, in English, German, French, Spanish and Dutch.

Exact words only: an unknown one is not guessed here. A price word that leaves open whose price it is, is unclear.
The words stand in a module for each language; they are common practice in the trade, no source.
"""

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from sourcing.basics.sheet import Field

from . import header_words_dutch as dutch
from . import header_words_english as english
from . import header_words_french as french
from . import header_words_german as german
from . import header_words_spanish as spanish
from .break_headers import break_quantity, is_price_level, numbered_discount, numbered_quantity
from .header_keys import UMLAUTS, currencies_named, header_key, keys_of, listed, plain_text, words_in
from .price_headers import bare_price_key, says_with_tax, without_length_unit_key, without_unit_key
from .stock_places import stock_place

__all__ = [
    "FIELD_OF",
    "WORDS",
    "Meaning",
    "break_quantity",
    "currencies_named",
    "field_of",
    "header_key",
    "is_unclear",
    "is_weak_number",
    "known_words",
    "meaning_of",
]  # fmt: skip

LANGUAGES = (english, german, french, spanish, dutch)

WORDS: dict[Field, tuple[str, ...]] = {
    field: tuple(language.WORDS[field] for language in LANGUAGES if field in language.WORDS) for field in english.WORDS
}
"""The word lists of every field, one for each language, as `header_keys.spellings` reads them."""

FIELD_OF: dict[str, Field] = {key: field for field, lists in WORDS.items() for key in keys_of(*lists)}
WEAK_KEYS = frozenset(keys_of(*(language.WEAK_NUMBERS for language in LANGUAGES)))
UNCLEAR_KEYS = frozenset(keys_of(*(language.UNCLEAR for language in LANGUAGES)))
OLDER_KEYS = frozenset(keys_of(*(language.OLDER for language in LANGUAGES)))
SURCHARGE_KEYS = frozenset(keys_of(*(language.SURCHARGE for language in LANGUAGES)))
NO_FIELD_KEYS = frozenset(keys_of(*(language.NO_FIELD for language in LANGUAGES)))

UNCLEAR = "net price or list price"
OLDER = "an older price"
WITH_TAX = "a price with tax"
SURCHARGE = "a charge on top of the price"
OTHER = "none of the fields"
QUANTITY = "a quantity of something"
MULTIPLE_OR_MULTIPLIER = "order multiple or multiplier"
DISCOUNT_OR_DISCONTINUED = "discount or discontinued"
SEVERAL_DISCOUNTS = "one of several discounts, each off what the one before leaves"
BEHIND_PLACES: tuple[Field, ...] = ("list price", "net price", "core charge")
WITH_UNITS: tuple[Field, ...] = (
    "weight", "lead time", "stock", "pack", "minimum", "order multiple", "break quantity", "oversize", "hazardous",
    "no longer available", "description", "returnable",
)  # fmt: skip
SIZES: tuple[Field, ...] = ("package length", "package width", "package height", "package dimensions")
PACK_KEYS = frozenset({"carton", "cartons", "case", "cases", "box", "ctn", "karton", "caja", "doos", "boite"})
"""The pack's pieces or its price: a person says which."""
AMBIGUOUS = {
    "qty": QUANTITY, "mult": MULTIPLE_OR_MULTIPLIER, "disc": DISCOUNT_OR_DISCONTINUED, "discs": DISCOUNT_OR_DISCONTINUED
} | dict.fromkeys(PACK_KEYS, QUANTITY)  # fmt: skip


TWO_LANGUAGES = re.compile(r"(?<=\S)\s+[/|]\s+(?=\S)")
BREAK_MARKS = re.compile("[-–+<>≥≤]")
STOP_WORDS = frozenset(listed("in de of to is by at on for with the and la le du per en no yes out"))
VOCABULARY = frozenset(
    word
    for language in LANGUAGES
    for words in (*language.WORDS.values(), language.UNCLEAR, language.OLDER, language.SURCHARGE)
    for word in words_in(f"{words} {words.translate(UMLAUTS)}".replace("_", " "))
    if len(word) > 1 and word.isalpha()
).difference(STOP_WORDS)
"""The words of all lists; no other header than one with such a word can be known, but for quantity breaks."""


class Meaning(NamedTuple):
    """What the dictionary says of a header. Without a field, `why` may say why it has none."""

    field: Field | None
    from_quantity: int | None = None
    place: str = ""
    why: str = ""


NOTHING = Meaning(None)


@lru_cache(maxsize=16384)
def meaning_of(header: str) -> Meaning:
    """What the header means by the dictionary: field, from how many pieces, warehouse; or why it means none.

    A header with '%' can only be a discount; one with a currency only money.
    """
    if (pieces := break_quantity(header)) is not None:
        return _break(header, pieces)
    found = _by_words(header)
    if found == NOTHING and TWO_LANGUAGES.search(header):
        found = _in_two_languages(header)
    if "%" in header and found.field not in ("discount", None):
        return NOTHING
    if found.field not in (*BEHIND_PLACES, "currency", None) and (currencies_named(header) or "$" in header):
        return NOTHING
    return found


def _in_two_languages(header: str) -> Meaning:
    """'Part # / No. pièce': what its parts mean, where they do not mean two things."""
    found = {meaning_of(part) for part in TWO_LANGUAGES.split(header)} - {NOTHING}
    return found.pop() if len(found) == 1 else NOTHING


def _break(header: str, pieces: int) -> Meaning:
    if says_with_tax(header):
        return Meaning(None, why=WITH_TAX)
    return NOTHING if "%" in header else Meaning("net price", pieces)


def _by_words(header: str) -> Meaning:
    key = header_key(header)
    if not key or len(key) > 60:
        return NOTHING
    if says_with_tax(header):
        return _price(bare_price_key(header), taxed=True)
    if "%" in header and FIELD_OF.get(header_key(header.replace("%", " pct "))) == "discount":
        return Meaning("discount")
    if why := _why_none(key) or ("" if "%" in header else AMBIGUOUS.get(key, "")):
        return Meaning(None, why=why)
    if numbered_discount(header):
        return Meaning(None, why=SEVERAL_DISCOUNTS)
    if field := FIELD_OF.get(key) or _singular(key) or ("supplier number" if key in WEAK_KEYS else None):
        return Meaning(field)
    if is_price_level(header):
        return Meaning(None, why=UNCLEAR)
    return _decorated(header, key)


def _why_none(key: str) -> str:
    sets = ((UNCLEAR_KEYS, UNCLEAR), (OLDER_KEYS, OLDER), (SURCHARGE_KEYS, SURCHARGE), (NO_FIELD_KEYS, OTHER))
    return next((why for keys, why in sets if key in keys), "")


def _singular(key: str) -> Field | None:
    """A plural with 's' of a word that is no price; 'Dealers' or 'Lists' are not what 'Dealer' and 'List' are."""
    field = FIELD_OF.get(key.removesuffix("s"))
    return field if field not in BEHIND_PLACES else None


def _decorated(header: str, key: str) -> Meaning:
    """The meaning of the word without what is said beside it."""
    bare = bare_price_key(header)
    if bare and bare != key and (found := _price(bare)) != NOTHING:
        return found
    for bare, fields in ((without_unit_key(header), WITH_UNITS), (without_length_unit_key(header), SIZES)):
        if bare != key and (field := FIELD_OF.get(bare)) in fields:
            return Meaning(field)
    place = stock_place(header)
    return NOTHING if place is None else Meaning("stock", place=place)


def _price(key: str, taxed: bool = False) -> Meaning:
    """The meaning of a price word that was found inside a longer header."""
    field = FIELD_OF.get(key)
    if field in BEHIND_PLACES:
        return Meaning(None, why=WITH_TAX) if taxed else Meaning(field)
    why = _why_none(key)
    if why in (UNCLEAR, SURCHARGE, OLDER):
        return Meaning(None, why=WITH_TAX if taxed else why)
    return NOTHING


def field_of(header: str) -> Field | None:
    """What the header means by the dictionary; None where it does not know or the word is unclear."""
    return meaning_of(header).field


def is_unclear(header: str) -> bool:
    """Whether the header is a price of which it is not said whose, or one with tax: a person decides."""
    return meaning_of(header).why in (UNCLEAR, WITH_TAX)


def is_weak_number(header: str) -> bool:
    """Whether the word stands for the number only where no outspoken one is there: 'Item', 'Ref', 'Artikel'."""
    return header_key(header) in WEAK_KEYS


def known_words(cells: Iterable[str]) -> int:
    """How many different known header words the cells hold."""
    texts = {" ".join(cell.split()) for cell in cells if len(cell) <= 60}
    return len({header_key(text) for text in texts if is_known(text)})


@lru_cache(maxsize=65536)
def is_known(text: str) -> bool:
    """Whether the text is a header word that means a field or a price to ask about.

    Cells of the body are asked too, by the thousand: those without any word of the lists are told at once.
    """
    if not any(map(str.isalpha, text)):
        return bool(BREAK_MARKS.search(text)) and field_of(text) is not None
    key = header_key(text)
    if key not in FIELD_OF and key not in UNCLEAR_KEYS and VOCABULARY.isdisjoint(words_in(text)):
        return False
    meaning = meaning_of(text)
    return meaning.field is not None or meaning.why in (UNCLEAR, WITH_TAX, SURCHARGE, OLDER)


def counts_pieces(header: str) -> int | None:
    """The number of 'Qty 2', which is a quantity and not a price where 'Price 2' stands beside it."""
    return numbered_quantity(plain_text(header))
