"""The text a designation stands in: made plain, its numbers, and the words that say what kind of thing it speaks of."""

import re
from decimal import Decimal

from .size import FamilyName, Length, LengthKind

_SAME = str.maketrans(
    {
        **dict.fromkeys("×✕*", "X"),
        **dict.fromkeys("″”“„", '"'),
        **dict.fromkeys("–—‑−‐", "-"),
        **dict.fromkeys("\u00a0\u2009\u202f\t\n\r", " "),
        "¼": " 1/4",
        "½": " 1/2",
        "¾": " 3/4",
        "⅛": " 1/8",
        "⅜": " 3/8",
        "⅝": " 5/8",
        "⅞": " 7/8",
    }
)


LONGEST_TEXT = 3000
"""A longer text is cut: nobody describes a part in more, and hostile cells are that long."""


def plain(text: str) -> str:
    """Upper case, one kind of dash, times sign, quotation mark and space; vulgar fractions written out."""
    return text.translate(_SAME).upper().replace("''", '"').strip()


BEFORE = r"(?:(?<![A-Z0-9.,$€£#-])(?<!\b\d/)|(?<=BELT-)|(?<=RIEMEN-))"
"""Where a designation with a letter may begin: 'CV-B36' is a part number; of '2/B36', two belts joined, the 2."""

JOINED = r"(?:(?P<strands>[2-9]|1[0-2])/)?"
"""How many V-belts are joined side by side, before a section: '3/5V850' (from memory, after IP-20 and IP-22)."""


def strands_of(match: re.Match[str]) -> int:
    """The joined strands a match of JOINED says; 1 where it says none."""
    return int(match["strands"] or 1)


AFTER = r"(?![A-Z0-9]|[.,-]\d|/\d+(?![\dA-Z])|-[A-Z]|\s?%)"
"""Where it must end. A slash may lead to another designation ('4L390/4L400'): both are read, and differ."""

GROUPED = re.compile(r"[- ]\d{2,}(?![\dA-Z/]|\s?X)")
"""What stands behind 'B 12' in 'B 12 345': a part number in groups."""

NOT_COUNTED = (
    r"(?!\s?(?:PCS?|PIECES?|STK|ST[ÜU]CK|PI[EÈ]CES?|PZAS?|PIEZAS|STUKS?|EA|PACK|PK|MM|CM|M|IN|INCH|ZOLL|FT|FEET|HP|KW|"
    r"W|V|A|AH|MAH|CC|CCM|HZ|KG|G|LBS?|OZ|ML|L|USD|EUR|GBP|DIN|ISO|°|\"|')(?![A-Z0-9]))"
)
"""A bare number with a unit or a count behind it is no designation: '608 pcs', '40 W', '36 in'."""

_SPOKEN: dict[FamilyName, re.Pattern[str]] = {
    "belt": re.compile(
        r"\b(?:[A-Z]*BELTS?|[A-ZÄÖÜ]*RIEMEN|[A-Z]*RIEM|COURROIES?|CORREAS?|[A-Z]*SNA(?:AR|REN)|CINGHI[AE])\b"
    ),
    "bearing": re.compile(
        r"\b(?:BEARINGS?|BRGS?|BRNGS?|[A-ZÄÖÜ]+KUGELLAGER|KUGELLAGER|W[ÄA]LZLAGER|KOGELLAGERS?|ROULEMENTS?|RODAMIENTOS?|"
        r"COJINETES?|CUSCINETT[OI])\b|(?<!AUF )(?<!AB )(?<!AM )(?<!IM )(?<!VOM )(?<!OP )(?<!EX )(?<!AN )\bLAGER\b(?!:)"
    ),
    "chain": re.compile(
        r"\b(?:CHAINS?|(?:(?:EINFACH|ZWEIFACH|DREIFACH|DOPPEL|SIMPLEX|DUPLEX|TRIPLEX)?(?:ROLLEN|ANTRIEBS)?-?)KETTEN?|CHA[IÎ]NES?|CADENAS?|(?:ROL|AANDRIJF)?KETTING(?:EN)?|CATEN[AE])\b"
    ),
}
# 'auf Lager', 'ab Lager' is German for 'in stock': a bearing is not spoken of.

_BLOCKED: dict[FamilyName, re.Pattern[str]] = {
    "belt": re.compile(
        r"\b(?:KEEPERS?|GUIDES?|FINGERS?|COVERS?|GUARDS?|SHIELDS?|TENSIONERS?|PULLEYS?|SHEAVES?|SPRINGS?|BRACKETS?|"
        r"RETAINERS?|BOLTS?|SCREWS?|CLIPS?|SANDERS?|SANDING|SEATS?|SAFETY|CONVEYORS?|FILTERS?|"
        r"[A-ZÄÖÜ]*(?:HALTER|F[ÜU]HRUNG|SCHEIBEN?|SPANNER|SPANNROLLEN?|ABDECKUNG|FEDER|SCHRAUBEN?)|SCHLEIF[A-Z]*|"
        r"POULIES?|TENDEURS?|GALETS?|CARTERS?|POLEAS?|TENSOR(?:ES)?|SPANROL(?:LEN)?|[A-Z]*SCHIJF)\b"
    ),
    "bearing": re.compile(
        r"\bBEARING (?:SEAL|CAP|CUP|RETAINER|SHIM|SPACER|PLATE|FLANGE|BLOCK|CAGE|NUT|COVER|RACE)S?\b|"
        r"\b(?:HOUSINGS?|PULLERS?|CARRIERS?|ADAPT[EO]RS?|SLEEVES?|PUSHERS?|GREASE|SPACERS?|FILTERS?|BOLTS?|SCREWS?|"
        r"[A-ZÄÖÜ]*(?:GEH[ÄA]USE|ABZIEHER|H[ÜU]LSEN?)|PALIERS?|EXTRACTEURS?|SOPORTES?|EXTRACTOR(?:ES)?)\b"
    ),
    "chain": re.compile(
        r"\b(?:SPROCKETS?|(?:[A-Z]*)SAWS?|CHAINSAWS?|BREAKERS?|TENSIONERS?|GUARDS?|TIRES?|TYRES?|SNOW|HOISTS?|TOW|LOCKS?|"
        r"OIL|DRIVE LINKS?|S[ÄA]GEKETTEN?|SCHNEEKETTEN?|KETTENR[ÄA]D(?:ER)?|RITZEL|PIGNONS?|PI[ÑN][OÓ]N(?:ES)?|"
        r"TANDWIEL(?:EN)?|TRON[CÇ]ONNEUSES?|MOTOSIERRAS?|ZAAGKETTING|KETTENS[ÄA]GEN?|BOLTS?|SCREWS?|WIDE CHAIN)\b"
    ),
}
# 'Belt guide 5/8 x 12', 'bearing housing 6203', 'sprocket 40-12': made for it, not the thing itself.

_OTHER = (
    r"SEALS?|O-?RINGS?|SNAP[- ]?RINGS?|CIRCLIPS?|CAPS?|RETAINERS?|SHIMS?|WASHERS?|CUPS?|CAGES?|PLATES?|PULLEYS?|"
    r"WHEELS?|SPINDLES?|SHAFTS?|HUBS?|BUSHINGS?|NUTS?|FLANGES?|DICHTUNG(?:EN)?|SICHERUNGSRINGE?|DECKEL|SCHEIBEN?|WELLEN?|"
    r"NABEN?|JOINTS?|CACHES?|BAGUES?|COUVERCLES?|RONDELLES?|ROUES?|ARBRES?|RET[ÉE]N(?:ES)?|SELLOS?|TAPAS?|ARANDELAS?|"
    r"RUEDAS?|EJES?|AFDICHTING(?:EN)?|DEKSELS?|WIEL(?:EN)?"
)
_MADE_FOR: dict[FamilyName, re.Pattern[str]] = {
    family: re.compile(
        rf"\b(?:{_OTHER})\b[^|,;]{{0,16}}?(?:\b(?:FOR|WITH|F[ÜU]R|MIT|DE|DU|DEL|POUR|AVEC|PARA|CON|VOOR|MET)\b|\bW/)"
        rf"[^|,;]{{0,16}}?(?:{pattern.pattern})"
    )
    for family, pattern in _SPOKEN.items()
}
# 'Seal for bearing 6203', 'joint de roulement', 'wheel with bearing 6203': another thing is sold.

_HEAD: dict[FamilyName, re.Pattern[str]] = {
    family: re.compile(rf"(?:^|\| ?)(?:{pattern.pattern})[,;:]") for family, pattern in _SPOKEN.items()
}
# 'Belt, auger, with spring': lists that put the thing first and a comma after it speak of the thing.

_WORD = re.compile(r"[^\W\d_]{4,}")


def spoken_of(text: str) -> frozenset[FamilyName]:
    """The families a plain text has a word for, in English, German, French, Spanish or Dutch."""
    return frozenset(family for family, pattern in _SPOKEN.items() if pattern.search(text))


def blocked_in(text: str) -> frozenset[FamilyName]:
    """The families of which a plain text names only something made for them: a keeper, a housing, a sprocket."""
    return frozenset(
        family
        for family, pattern in _BLOCKED.items()
        if (pattern.search(text) or _MADE_FOR[family].search(text)) and not _HEAD[family].search(text)
    )


_MACHINE = re.compile(
    r"\b(?:FITS|SUITS|PASST ZU|PAST OP|(?:MODELL?[EO]?S?|MOD[EÈ]LES?|SERIES|S[EÉ]RIE)[.:]?(?:\s(?:NO|NR)\.?)?)\s$"
)
# 'Belt, fits model C48': the machine's name, though it is written as a belt is. 'Belt for A36' may be either, and a
# question is cheap: it stays read.


def for_a_machine(text: str, start: int) -> bool:
    """Whether what begins at `start` of a plain text is named as the machine the thing is for."""
    return bool(_MACHINE.search(text[max(0, start - 40) : start]))


def has_words(text: str) -> bool:
    """Whether a text speaks at all: has a word of four letters or more."""
    return bool(_WORD.search(text))


NUMBER = r"\d{1,4}[- ]\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|\d{0,4}[.,]\d{1,4}|\d{1,4}"
"""A length in inches as printed: 91-1/2, 5/8, 91.5, 88."""


def number_of(text: str) -> Decimal | None:
    """'91-1/2', '5/8', '91.5', '91,5' as an exact Decimal; None where a fraction has no denominator."""
    whole, _, fraction = text.replace(" ", "-").rpartition("-")
    if "/" not in fraction:
        return Decimal(text.replace(",", "."))
    top, bottom = (int(part) for part in fraction.split("/"))
    if not bottom:
        return None
    return Decimal(whole or 0) + Decimal(top) / Decimal(bottom)


TAG = r"(?:\s*(?:MM)?\s*(LI|LD|LW|LP|LA(?=\s*(?:$|[,;.)/=]|MM)))(?![A-Z0-9]))"
"""A kind of length behind a metric length. 'LA' only at an end: 'courroie 13x1000 la plus ...' is the article."""

_TAGS: dict[str, LengthKind] = {"LI": "inside", "LD": "datum", "LW": "datum", "LP": "datum", "LA": "outside"}


def tagged(number: str, tag: str | None, otherwise: LengthKind, source: str) -> Length:
    """A metric length by its printed tag (Li, Ld = Lw = Lp, La); `otherwise` with its source where there is none."""
    kind, said_by = (_TAGS[tag], f"printed {tag.capitalize()}") if tag else (otherwise, source)
    return Length(value=Decimal(number), unit="mm", kind=kind, source=said_by)
