"""What a number format shows: leading zeros, a per cent, a currency.

The grammar of number formats and the numbers of the formats every workbook has are those of ECMA-376 part 1 (Office
Open XML), sections 18.8.30 and 18.8.31, quoted from memory. The formats 5 to 8, 42 and 44 show the currency of the
place; that a workbook which means another than the dollar states its own text for them is from memory, no source.
"""

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal

from sourcing.basics.currency import is_currency

BUILT_IN = {9: "0%", 10: "0.00%"} | dict.fromkeys((5, 6, 7, 8, 42, 44), '"$"#,##0.00')
TOKEN = re.compile(r'"([^"]*)"|\\(.)|_(?:.)|\*(?:.)|\[([^\]]*)\]|(.)', re.DOTALL)
PLAIN_LITERALS = frozenset("-() :")
NOT_ZEROS = frozenset("#?.,%/@")
LETTER_SIGNS = frozenset({"kr", "kr.", "Fr.", "Fr", "SFr.", "zł", "Kč", "Ft", "lei", "Rs", "Rs."})
PER = re.compile(r"\s*(?:/\s*\w|(?:per|pro|je|par|por)\s)", re.IGNORECASE)
NUMBERS = frozenset((*range(12), *range(37, 45)))
"""The built-in formats that show a number as a number; the others are dates, times and text."""
COLOURS = frozenset({"black", "blue", "cyan", "green", "magenta", "red", "white", "yellow"})
CODE = re.compile(r"(?<![A-Za-z])[A-Z]{3}(?![A-Za-z])")


@dataclass(frozen=True)
class NumberFormat:
    """`mask`: the shown text of a format of zeros, its zeros as '0' and its other text in pairs; () for none.

    `per`: what a price is for, where the format alone says so ('/C', ' per 100').
    """

    mask: tuple[tuple[str, bool], ...] = ()
    percent: bool = False
    currency: str = ""
    per: str = ""

    @property
    def matters(self) -> bool:
        """Whether a cell of this format is anything but its number."""
        return bool(self.mask or self.percent or self.currency or self.per)


def read_format(code: str) -> NumberFormat:
    """What the format says of numbers above zero: its first section. 'General', dates and thousands say nothing."""
    literals, marks, mask, currency = _first_section(code)
    currency = currency or _currency_in(literals)
    per = next((literal.strip() for literal in literals if PER.match(literal)), "")
    if currency or per:
        return NumberFormat(currency=currency, per=per)
    if "%" in marks:
        return NumberFormat(percent=True)
    zeros = marks.count("0")
    is_mask = zeros > 1 or (zeros == 1 and _names_a_series(mask))
    if is_mask and not any(mark in NOT_ZEROS or mark.isalpha() for mark in marks):
        return NumberFormat(mask=tuple(mask))
    return NumberFormat()


def shows_a_number(number: int, code: str | None) -> bool:
    """Whether a style of this format surely shows numbers as numbers: no letter of a date or time is in its text."""
    if code is None:
        return number in NUMBERS
    plain = "".join(token[4] for token in TOKEN.finditer(code) if token[4])
    brackets = [token[3] for token in TOKEN.finditer(code) if token[3] is not None]
    is_text = "@" in plain.partition(";")[0]  # in a later section it shows texts that stand in the cell
    is_number = code.casefold() == "general" or not (is_text or any(map(str.isalpha, plain)))
    return is_number and all(text[:1] == "$" or text.casefold() in COLOURS for text in brackets)


def _first_section(code: str) -> tuple[list[str], list[str], list[tuple[str, bool]], str]:
    """Literal texts, format marks, both in order (text, whether a zero), and a currency in brackets."""
    literals: list[str] = []
    marks: list[str] = []
    mask: list[tuple[str, bool]] = []
    currency = ""
    for token in TOKEN.finditer(code):
        quoted, escaped, bracket, plain = token.groups()
        literal = quoted if quoted is not None else escaped
        if plain == ";":
            break
        if bracket is not None:
            currency = currency or (bracket[1:].partition("-")[0].strip() if bracket[:1] == "$" else "")
            continue
        if plain is not None and (plain in PLAIN_LITERALS or unicodedata.category(plain) == "Sc"):
            literal = plain
        if literal is not None:
            literals.append(literal)
            mask.append((literal, False))
        elif plain is not None:
            marks.append(plain)
            mask.append((plain, plain == "0"))
    return literals, marks, mask, currency


def _currency_in(literals: list[str]) -> str:
    """The currency among the literal texts: a sign with the letters before it ('US$'), a code, or 'kr'."""
    text = "".join(literals)
    for at, letter in enumerate(text):
        if unicodedata.category(letter) == "Sc":
            before = re.search(r"[A-Za-z]{0,3}\Z", text[:at])
            return (before[0] if before else "") + letter
    codes = [code for code in CODE.findall(text) if is_currency(code)]
    words = [literal.strip() for literal in literals if literal.strip() in LETTER_SIGNS]
    return (codes or words or [""])[0]


def _names_a_series(mask: list[tuple[str, bool]]) -> bool:
    """Whether letters stand close before the first zero: "NW-"0 shows a number of a series, "ca. "0 does not."""
    before = "".join(text for text, zero in mask[: [zero for _, zero in mask].index(True)])
    return any(letter.isalpha() for letter in before) and not before[-1:].isspace()


def shown_with_zeros(number: Decimal, mask: tuple[tuple[str, bool], ...]) -> str | None:
    """The whole number as a format of zeros shows it; None for a fraction or a minus: the format would round it."""
    if number < 0 or number != number.to_integral_value():
        return None
    zeros = sum(zero for _, zero in mask)
    digits = format(int(number), f"0{zeros}d")
    first, rest = digits[: len(digits) - zeros + 1], iter(digits[len(digits) - zeros + 1 :])
    shown, begun = [], False
    for text, zero in mask:
        shown.append(text if not zero else next(rest) if begun else first)
        begun = begun or zero
    return "".join(shown)


def shown_with_basis(number: Decimal, shown: NumberFormat) -> str:
    """The price with currency and what it is for as text, as a price cell states them: '$10.5 /C'.

    Three decimals get a fourth, so that nobody takes the point for a thousands mark.
    """
    digits = format(number, "f")
    digits += "0" if len(digits.partition(".")[2]) == 3 else ""
    return f"{shown.currency} {digits} {shown.per}".strip()


def shown_as_percent(number: Decimal) -> str:
    """0.4 is '40%', exactly: all digits of the cell, however few the format shows."""
    hundredfold = number * 100
    text = format(hundredfold, "f")
    return (text.rstrip("0").rstrip(".") if "." in text else text) + "%"
