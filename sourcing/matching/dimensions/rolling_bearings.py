"""Rolling bearings: single-row deep groove ball bearings by ISO 15 / DIN 625-1 numbers, their suffixes, trade inch
bores.

Bore: last two digits 00 01 02 03 = 10 12 15 17 mm, from 04 times 5; three-digit numbers: the last digit (608 = 8 mm); a
slash gives it (62/22 = 22 mm). Rules from bearing makers' and distributors' pages. Suffixes are makers' habit, not
ISO 15. Inch bores (6203-5/8): common in mower spindles and idlers, from memory; the rule 03 = 17 mm fails there.
'6203-10' may be 10/16 in = 5/8, or a maker's own suffix: it stays in doubt. 61803 is 6803 and 618/8 is 688, two ways of
writing the series 18 and 19 of ISO 15 (from memory; 618/8 and 619/8 = 8 mm as read in a maker's list).
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .bearing_suffixes import ALONE, CLOSURE, MARKS, clearance_of, closure_of, is_strong, marks_in, ring_of
from .iso_15 import BOUNDARY
from .size import MM_PER_INCH, BearingSize, Found, Ground, shown
from .text import BEFORE, number_of

_CODES = {"00": 10, "01": 12, "02": 15, "03": 17}

_BASIC = (
    r"(?:6[0234]/(?:22|28|32)|61[89]/[3-9]|61[89]\d\d|6[02389][3-9]|6[0234]\d\d|6[89]\d\d|16\d{3}|62[23]\d\d|630\d\d)"
)
_EARLY = rf"-(?:(?P<early>\d{{1,2}}/\d{{1,2}})(?![\dX/])|(?P<early_code>\d{{2}})(?=[- ]?(?:{CLOSURE})))"
_INCH = r"\s?[- X]\s?(?P<inch>\d-\d/\d{1,2}|\d{1,2}/\d{1,2})(?![\dX/])|-(?P<code>\d{1,2})(?![\dX/.,])"
_FORM = re.compile(
    rf"{BEFORE}(?P<basic>{_BASIC})(?:{_EARLY})?(?P<marks>{MARKS})(?:{_INCH})?"
    r"(?P<tail>[-/][A-Z][A-Z0-9]{0,7})?(?![A-Z0-9]|[.,-]\d)"
)


def find(text: str) -> Iterator[Found]:
    """6203-2RS C3, 608ZZ, 62/22, 6203-5/8 in a plain text. Bare numbers and weak suffixes need context."""
    for match in _FORM.finditer(text):
        marks = marks_in(match["marks"])
        strong = is_strong(marks)
        bare = not marks and not (match["early"] or match["inch"] or match["code"])
        if (bare and not ALONE.match(text, match.end())) or (match["tail"] and not strong):
            continue
        size = _bearing(match, marks)
        if size is not None:
            ground: Ground = "form" if strong else "context"
            yield Found(size=size, start=match.start(), end=match.end(), ground=ground)


def basic_of(printed: str) -> str:
    """The number as the table has it: 61803 is 6803, 618/8 is 688."""
    if printed[:3] in ("618", "619") and len(printed) == 5:
        return "6" + printed[2:].replace("/", "")
    return printed


def bore_of(basic: str) -> Decimal | None:
    """The bore in millimetres by the number's own rule; None where the rule gives none ('6299' is beyond 96)."""
    if "/" in basic:
        return Decimal(basic.partition("/")[2])
    if len(basic) == 3:
        return Decimal(basic[-1])
    code = basic[-2:]
    return Decimal(_CODES[code] if code in _CODES else int(code) * 5) if int(code) <= 96 else None


def _bearing(match: re.Match[str], marks: list[str]) -> BearingSize | None:
    basic = basic_of(match["basic"])
    bore = bore_of(basic)
    printed = match["early"] or match["inch"]
    inch = number_of(printed) if printed else None
    if bore is None or (printed and (inch is None or not Decimal("0.1") < inch < 4)):
        return None
    _, outside, width = BOUNDARY.get(basic, (bore, None, None))
    return BearingSize(
        designation=match[0].strip(),
        basic=basic,
        bore=inch * MM_PER_INCH if inch else bore,
        bore_in=inch,
        outside=outside,
        width=width,
        closure=closure_of(marks),
        clearance=clearance_of(marks),
        ring=ring_of(marks),
        doubt=_doubt(match["early_code"] or match["code"]),
        tail=(match["tail"] or "").strip("-/"),
    )


def _doubt(code: str | None) -> str:
    if not code:
        return ""
    return f"'-{code}' may be an inch bore of {code}/16 ({shown(Decimal(code) / 16, '0.0001')} in) or a maker's suffix"
