"""Rolling bearings: single-row deep groove ball bearings by ISO 15 / DIN 625-1 numbers, their suffixes, trade inch
bores.

Bore: last two digits 00 01 02 03 = 10 12 15 17 mm, from 04 times 5; three-digit numbers: the last digit (608 = 8 mm); a
slash gives it (62/22 = 22 mm). Rules from bearing makers' and distributors' pages. Suffixes are makers' habit, not
ISO 15. Inch bores (6203-5/8): common in mower spindles and idlers, from memory; the rule 03 = 17 mm fails there.
'6203-10' may be 10/16 in = 5/8, or a maker's own suffix: it stays in doubt. Boundary sizes: ISO 15 as read in an
open-source table of DIN 625-1; the second text of rows from memory.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import MM_PER_INCH, BearingSize, Found, Ground, shown
from .text import BEFORE, NOT_COUNTED, number_of

_READ = """
607 7 19 6, 608 8 22 7, 609 9 24 7, 623 3 10 4, 624 4 13 5, 625 5 16 5, 626 6 19 6,
6000 10 26 8, 6001 12 28 8, 6002 15 32 9, 6003 17 35 10, 6006 30 55 13,
6200 10 30 9, 6203 17 40 12, 6204 20 47 14, 6205 25 52 15, 6206 30 62 16,
6300 10 35 11, 6301 12 37 12, 6302 15 42 13, 6303 17 47 14, 6304 20 52 15"""
_MEMORY = """
627 7 22 7, 629 9 26 8, 6004 20 42 12, 6005 25 47 12, 6007 35 62 14, 6008 40 68 15,
6201 12 32 10, 6202 15 35 11, 6207 35 72 17, 6208 40 80 18, 6209 45 85 19, 6210 50 90 20,
6305 25 62 17, 6306 30 72 19, 6307 35 80 21, 6308 40 90 23, 6309 45 100 25, 6310 50 110 27,
62/22 22 50 14, 62/28 28 58 16"""
BOUNDARY = {
    row.split()[0]: tuple(Decimal(figure) for figure in row.split()[1:]) for row in f"{_READ}, {_MEMORY}".split(",")
}
"""Number -> bore, outside, width in millimetres; the second text above is from memory."""

CLOSURES = {
    **dict.fromkeys(("2RS", "2RSR", "2RS1", "2RSH", "RS2", "DDU", "LLU"), "two rubber seals"),
    **dict.fromkeys(("2RZ", "VV", "LLB"), "two non-contact seals"),
    **dict.fromkeys(("ZZ", "2Z"), "two metal shields"),
    **dict.fromkeys(("RS", "RSR", "RS1", "RSH", "DU", "LU"), "one rubber seal"),
    **dict.fromkeys(("RZ", "LB"), "one non-contact seal"),
    "Z": "one metal shield",
}
"""2RS, 2RSR, ZZ, 2Z, Z, RS as read; the other makers' letters from memory. RZ, VV, LLB seal without touching."""

_STRONG = ("2RS", "2RSR", "2RS1", "2RSH", "2RZ", "DDU", "LLU", "LLB", "ZZ", "2Z")
_CODES = {"00": 10, "01": 12, "02": 15, "03": 17}

_BASIC = r"(?:6[0234]/(?:22|28|32)|6[0-389][3-9]|6[0234]\d\d|6[89]\d\d|16\d{3}|62[23]\d\d)"
_CLOSURE = "|".join(sorted(CLOSURES, key=len, reverse=True))
_MARKS = rf"(?:[ ./-]{{0,2}}(?:{_CLOSURE}|C[2345]|CN|NR|N))*"
_EARLY = rf"-(?:(?P<early>\d{{1,2}}/\d{{1,2}})(?![\dX/])|(?P<early_code>\d{{2}})(?=[- ]?(?:{_CLOSURE})))"
_INCH = r"\s?[- X]\s?(?P<inch>\d-\d/\d{1,2}|\d{1,2}/\d{1,2})(?![\dX/])|-(?P<code>\d{1,2})(?![\dX/.,])"
_FORM = re.compile(
    rf"{BEFORE}(?P<basic>{_BASIC})(?:{_EARLY})?(?P<marks>{_MARKS})(?:{_INCH})?"
    r"(?P<tail>[-/][A-Z][A-Z0-9]{0,7})?(?![A-Z0-9]|[.,-]\d)"
)
_MARK = re.compile(rf"{_CLOSURE}|C[2345]|CN|NR|N")
_ALONE = re.compile(rf"{NOT_COUNTED}(?!\s?X\s?\d)")


def find(text: str) -> Iterator[Found]:
    """6203-2RS C3, 608ZZ, 62/22, 6203-5/8 in a plain text. Bare numbers and weak suffixes need context."""
    for match in _FORM.finditer(text):
        marks = _MARK.findall(match["marks"] or "")
        strong = any(mark in _STRONG for mark in marks)
        bare = not marks and not (match["early"] or match["inch"] or match["code"])
        if (bare and not _ALONE.match(text, match.end())) or (match["tail"] and not strong):
            continue
        size = _bearing(match, marks)
        if size is not None:
            ground: Ground = "form" if strong else "context"
            yield Found(size=size, start=match.start(), end=match.end(), ground=ground)


def bore_of(basic: str) -> Decimal | None:
    """The bore in millimetres by the number's own rule; None where the rule gives none ('6299' is beyond 96)."""
    if "/" in basic:
        return Decimal(basic.partition("/")[2])
    if len(basic) == 3:
        return Decimal(basic[-1])
    code = basic[-2:]
    return Decimal(_CODES[code] if code in _CODES else int(code) * 5) if int(code) <= 96 else None


def _bearing(match: re.Match[str], marks: list[str]) -> BearingSize | None:
    basic = match["basic"]
    bore = bore_of(basic)
    printed = match["early"] or match["inch"]
    inch = number_of(printed) if printed else None
    if bore is None or (printed and (inch is None or not Decimal("0.1") < inch < 4)):
        return None
    _, outside, width = BOUNDARY.get(basic, (bore, None, None))
    closures = [CLOSURES[mark] for mark in marks if mark in CLOSURES]
    return BearingSize(
        designation=match[0].strip(),
        basic=basic,
        bore=inch * MM_PER_INCH if inch else bore,
        bore_in=inch,
        outside=outside,
        width=width,
        closure=closures[0] if closures else "",
        clearance=next((mark for mark in marks if mark[0] == "C" and mark != "CN"), ""),
        ring=next((_RINGS[mark] for mark in marks if mark in _RINGS), ""),
        doubt=_doubt(match["early_code"] or match["code"]),
        tail=(match["tail"] or "").strip("-/"),
    )


_RINGS = {"N": "snap-ring groove", "NR": "snap-ring groove with ring"}


def _doubt(code: str | None) -> str:
    if not code:
        return ""
    return f"'-{code}' may be an inch bore of {code}/16 ({shown(Decimal(code) / 16, '0.0001')} in) or a maker's suffix"
