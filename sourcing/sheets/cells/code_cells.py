"""Codes of open standards: GTIN (GS1 General Specifications), country (ISO 3166-1), tariff code (Harmonized System)."""

import re
import unicodedata
from collections import Counter
from collections.abc import Mapping, Sequence
from functools import cache
from typing import cast

from babel import Locale
from babel.core import get_global

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of
from .number_cells import FORMULA_TEXT

NOTHING = word_set(",-,--,–,—,n/a,na,none,keine,?,tbd")
GTIN_LENGTHS = (8, 12, 13, 14)


def parse_gtins(cells: Sequence[Cell]) -> list[str | Bad]:
    """The digits of each GTIN, '' where blank. Its check digit is right, or it is a problem.

    One that is too short and right once zeros are put before it has lost them: the suggestion has them.
    """
    return parse_column(cells, _gtin)


def _gtin(cell: Cell) -> str | Bad:
    text = shown_of(cell)
    if is_gtin(text):
        return text
    if text.casefold() in NOTHING:
        return ""
    if formula := FORMULA_TEXT.fullmatch(text):
        text = formula[1].strip()
    digits = re.sub(r"[\s‐‑–-]", "", text.removeprefix("'"))
    return _judged(digits, text)


def _judged(digits: str, shown: str) -> str | Bad:
    if not re.fullmatch(r"[0-9]{7,14}", digits) or not digits.strip("0"):
        return Bad("gtin-unreadable", found=shown)
    right = has_right_check_digit(digits)
    if len(digits) in GTIN_LENGTHS:
        return digits if right else Bad("gtin-check-digit", found=shown)
    full = digits.zfill(8 if len(digits) == 7 else 12)
    return Bad("gtin-lost-zero", found=shown, suggestions=(full,)) if right else Bad("gtin-unreadable", found=shown)


def is_gtin(text: str) -> bool:
    """Whether it is the digits of a GTIN of 8, 12, 13 or 14, with a right check digit and not all of them zero."""
    digits = text.isascii() and text.isdigit() and len(text) in GTIN_LENGTHS
    return digits and has_right_check_digit(text) and bool(text.strip("0"))


def has_right_check_digit(digits: str) -> bool:
    """By the GS1 rule: from the right, weights 1, 3, 1, 3 ...; the sum is a multiple of ten.

    Leading zeros weigh nothing. The rule does not notice two neighbours swapped that differ by 5.
    """
    figures = digits.encode()[::-1]
    ones, threes = figures[::2], figures[1::2]
    return (sum(ones) + 3 * sum(threes) - 48 * (len(ones) + 3 * len(threes))) % 10 == 0


LANGUAGES = ("en", "de", "fr", "es", "nl")
NO_COUNTRIES = word_set("AC,CP,CQ,DG,EA,EU,EZ,IC,QO,TA,UN,XA,XB,XK,ZZ")
"""Two-letter codes Unicode CLDR names that ISO 3166-1 does not assign to a country."""
OTHER_NAMES = {
    "US": "usa,us,united states of america,vereinigte staaten von amerika,états-unis d'amérique,ee.uu.,eeuu,ee uu,"
    "estados unidos de américa,vs,verenigde staten van amerika,america",
    "GB": "uk,great britain,england,scotland,wales,großbritannien,grande-bretagne,gran bretaña,groot-brittannië,"
    "engeland",
    "CN": "prc,p.r.c.,pr china,p.r. china,people's republic of china,vr china,volksrepublik china,mainland china",
    "TW": "roc,r.o.c.,taiwan roc,taiwan (r.o.c.),taiwan r.o.c.", "HK": "hong kong,hongkong", "MO": "macao,macau",
    "KR": "korea,republic of korea,rok,korea south,korea republic of,südkorea,corée,corea,korea (süd)",
    "CZ": "czech republic,tschechische republik,république tchèque,república checa,tsjechische republiek",
    "TR": "turkey", "VN": "viet nam", "NL": "holland,hollande,holanda,the netherlands,pays bas",
    "RU": "russian federation",
    "MM": "myanmar,burma", "SK": "slovak republic", "MK": "macedonia", "CI": "ivory coast", "MD": "moldova",
    "AE": "uae,u.a.e.", "BA": "bosnia", "IE": "republic of ireland", "MY": "malaysia",
}  # fmt: skip
"""Names on price sheets beside those of Unicode CLDR (common practice, no source)."""
MADE_IN = re.compile(
    r"(?:made in|product of|country of origin|origin|coo|hergestellt in|made by|fabriqué (?:en|au|aux|à)|"
    r"hecho en|fabricado en|gemaakt in|geproduceerd in)\s*:?\s*(?:the\s+)?"
)


def parse_origins(cells: Sequence[Cell]) -> list[str | Bad]:
    """ISO 3166-1 alpha-2 codes, '' where blank, from codes of two or three letters or names in five languages."""
    return parse_column(cells, _origin)


def _origin(cell: Cell) -> str | Bad:
    words = MADE_IN.sub("", words_of(cell), count=1)
    if words in NOTHING:
        return ""
    found = _countries().get(_letters(words))
    return found or Bad("origin-unknown", found=shown_of(cell))


def _letters(name: str) -> str:
    """A name for comparing: letters only, without accents."""
    return "".join(sign for sign in unicodedata.normalize("NFKD", name.casefold()) if sign.isalpha())


@cache
def _countries() -> dict[str, str]:
    """Every code and name to its code. Later entries win: a code is never taken for a name."""
    named = map(str, Locale("en").territories)
    codes = [code for code in named if re.fullmatch("[A-Z]{2}", code) and code not in NO_COUNTRIES]
    names = {_letters(Locale(language).territories[code]): code for language in LANGUAGES for code in codes}
    names |= {_letters(name): code for code, others in OTHER_NAMES.items() for name in others.split(",")}
    aliases = cast(Mapping[str, Sequence[str]], get_global("territory_aliases"))
    three = {old: new[0] for old, new in aliases.items() if re.fullmatch("[A-Z]{3}", old) and len(new) == 1}
    names |= {old.casefold(): new for old, new in three.items() if new in codes}
    return names | {code.casefold(): code for code in codes}


TARIFF_LENGTHS = (6, 8, 10)


def parse_tariff_codes(cells: Sequence[Cell]) -> list[str | Bad]:
    """Tariff codes as 6, 8 or 10 digits without dots and spaces; '' where blank.

    One digit less than most of the column is a lost zero (chapters 01 to 09), with the zero as suggestion.
    """
    digits = {cell: _tariff_digits(cell) for cell in dict.fromkeys(cells)}
    lengths = Counter(len(digits[cell]) for cell in cells if digits[cell].isdigit())
    usual = lengths.most_common(1)[0][0] if lengths else 0
    known = {cell: _tariff_code(cell, text, usual) for cell, text in digits.items()}
    return list(map(known.__getitem__, cells))


def _tariff_digits(cell: Cell) -> str:
    words = words_of(cell)
    return "" if words in NOTHING else re.sub(r"[\s.‐–-]", "", words.removeprefix("hs ").removeprefix("'"))


def _tariff_code(cell: Cell, digits: str, usual: int) -> str | Bad:
    if not digits or (re.fullmatch("[0-9]+", digits) and len(digits) in TARIFF_LENGTHS):
        return digits
    if re.fullmatch("[1-9][0-9]+", digits) and len(digits) + 1 == usual and usual in TARIFF_LENGTHS:
        return Bad("tariff-code-lost-zero", found=shown_of(cell), suggestions=(f"0{digits}",))
    return Bad("tariff-code-unreadable", found=shown_of(cell))
