"""Classical V-belts by the inch: A to E, cogged AX to EX. ARPM/RMA IP-20.

The number is the nominal inside length in inches. Sections: a distributor's section table after IP-20 (A, B, C, D);
another trade table (E; B also as 5/8 in wide); DX and EX from memory, the same envelope with cogs.
Inside to datum: number + 1.3 / 1.8 / 2.9 / 3.3 in, Machinery's Handbook 31st ed. p. 2575 table 8 (IP-20, 1988); the row
of A75 prints 75.3 where every other row gives number + 1.3: held for a misprint. At 240 the addition falls to 0.3 / 0.9
/ 0.8; between 210 and 240 no row was read, so both are kept.
Inside to outside: 2, 3, 4, 5, 6 in, a trade rule rounded to whole inches; geometry, 2 pi times the thickness, gives
1.96, 2.55, 3.34, 4.71, 5.69. Both are kept; where they lead to different answers there is no answer. Over 210 in the
trade rule says 1.5 (B), 2 (C), 2.5 (D); one source changes at 225, so both hold between.
K as in AK or 3VK is never read as a cord: it is aramid with one distributor, a pulley series with others, a V-ribbed
section.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .beside import joined_in
from .size import Addition, BeltSize, Found, Length, Section
from .text import AFTER, BEFORE, GROUPED, JOINED, NOT_COUNTED, strands_of

TRADE = "trade rule, whole inches (distributors' tables)"
GEOMETRY = "geometry, 2 pi times the thickness"
MH31 = "IP-20 in Machinery's Handbook 31st ed. p. 2575"

_LONG = Decimal(210)
_ROWS = (  # section, widths, thickness, inside to outside: trade, geometry, over 210; to datum: to 210, at 240
    ("A", ("0.5",), "0.3125", "2", "1.96", None, "1.3", None),
    ("B", ("0.65625", "0.625"), "0.40625", "3", "2.55", "1.5", "1.8", "0.3"),
    ("C", ("0.875",), "0.53125", "4", "3.34", "2", "2.9", "0.9"),
    ("D", ("1.25",), "0.75", "5", "4.71", "2.5", "3.3", "0.8"),
    ("E", ("1.5",), "0.90625", "6", "5.69", None, None, None),
)
_Row = tuple[str, tuple[str, ...], str, str, str, str | None, str | None, str | None]


def _additions(row: _Row) -> tuple[Addition, ...]:
    _, _, _, trade, geometry, long_trade, datum, long_datum = row
    end = Decimal(225) if long_trade else Decimal(100000)
    found = [Addition(to="outside", add=Decimal(trade), source=TRADE, up_to=_LONG if long_trade else end)]
    found.append(Addition(to="outside", add=Decimal(geometry), source=GEOMETRY, up_to=_LONG if long_trade else end))
    if long_trade:
        found.append(Addition(to="outside", add=Decimal(long_trade), source=f"{TRADE} over 210", over=_LONG))
        found.append(Addition(to="outside", add=Decimal(trade), source=TRADE, over=_LONG, up_to=end))
    if datum:
        last = Decimal("239.9") if long_datum else _LONG
        found.append(Addition(to="datum", add=Decimal(datum), source=MH31, up_to=last))
    if long_datum:
        found.append(Addition(to="datum", add=Decimal(long_datum), source=f"{MH31}, at 240", over=_LONG))
    return tuple(found)


def _sections(row: _Row) -> Iterator[Section]:
    for cogged in (False, True):
        yield Section(
            name=row[0] + ("X" if cogged else ""),
            family="classical",
            groove=row[0] if row[0] != "E" else "E inch",
            unit="in",
            base="inside",
            widths=tuple(Decimal(width) for width in row[1]),
            thickness=Decimal(row[2]),
            cogged=cogged,
            additions=_additions(row),
        )


SECTIONS = {section.name: section for row in _ROWS for section in _sections(row)}

SHORTEST, LONGEST = 15, 660
"""Inches; IP-20 prints 26 to 240, makers' lists go further (from memory)."""

_FORM = re.compile(
    rf"{BEFORE}(?:{JOINED}|(?P<stuck>[2-9]))(?P<name>[A-E]X?)(?P<gap>[ -]?)(?P<number>\d{{2,3}})K?"
    rf"{AFTER}{NOT_COUNTED}(?!\s?X\s?\d{{3}})"
)
_NAMED_BEFORE = re.compile(
    r"\b(?:MODELL?E?O?|MOD|SERIES?|S[EÉ]RIE|KIT|FIG|ITEM|POS|REF|NO|NR|MTD|PART|TEIL|CLASS)[.:]?\s*$"
)


def find(text: str) -> Iterator[Found]:
    """A88, BX50, 'b 36', joined 2/B36 in a plain text. The form is short: they all need context.

    '2B36' is two belts joined only where the text says joined: it may be two belts, or a part number.
    """
    for match in _FORM.finditer(text):
        name, gap, number = match["name"], match["gap"], match["number"]
        if match["stuck"] and (gap or not joined_in(text)):
            continue
        if not SHORTEST <= int(number) <= LONGEST or number[0] == "0":
            continue
        if gap and (_NAMED_BEFORE.search(text[: match.start()]) or GROUPED.match(text, match.end())):
            continue
        strands = int(match["stuck"] or strands_of(match))
        yield Found(size=belt(name, number, strands), start=match.start(), end=match.end(), ground="context")


def belt(name: str, number: str, strands: int = 1) -> BeltSize:
    """The belt of a section name and a length number (inches inside), so many of them joined."""
    length = Length(value=Decimal(number), unit="in", kind="inside", source="the number, IP-20")
    designation = f"{name}{number}" if strands == 1 else f"{strands}/{name}{number}"
    return BeltSize(designation=designation, section=SECTIONS[name], length=length, strands=strands)
