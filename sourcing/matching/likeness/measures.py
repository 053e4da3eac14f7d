"""Numbers with units in a description, compared as numbers: '1/2 in' and '12.7 mm' are one, '88 in' and '90 in' two.

Factors: the inch is 25.4 mm, the pound 453.59237 g exactly (international yard and pound agreement, 1959); US liquid
measure from the gallon of 231 cubic inches (NIST Handbook 44, appendix C; the fluid ounce from memory). The tests check
them against pint. Which abbreviation means what is common practice, no source.

Lengths are rounded as people write them: a mower blade of 21 in is sold as 533 mm and as 53 cm. A text in whole
centimetres, or in metres, covers its last place ('53 cm' is '530 ±5': 525 to 535 mm), but never more than one part in
40 either way, and only from 100 mm up: a bore of 25 mm is not 1 in, a bolt of 8 mm not 5/16 in, and whether 13 mm and
1/2 in are one belt's width its section says (`dimensions`). Whole millimetres cover half of one. An inch text covers
only itself: 88 and 88-1/4 in are two belts. Two texts rounded alike are compared as they stand: 53 and 54 cm are two.
"""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from math import gcd

from ..words.counts import counts
from ..words.sold_as import PAIRS, PERHAPS_PAIRS, PIECES, TWINS
from ..words.text import any_of

BELOW = frozenset((2, 3, 4, 5, 6, 8, 10, 16, 32, 64))
"""What stands under the line of a fraction that somebody measured: '12/24 V' are two voltages."""

INCH = Fraction("25.4")
ROUNDED = (Fraction(10), Fraction(1000))
"""Millimetres in a centimetre and a metre: what is written in them may be a rounding."""
OUNCE = Fraction("28.349523125")
FLUID_OUNCE = Fraction("29.5735295625")

UNITS: dict[str, tuple[str, Fraction]] = {
    **dict.fromkeys(("in", "inch", "inches", "zoll", "pouce", "pouces", '"', "''", "″", "”"), ("length", INCH)),
    **dict.fromkeys(("ft", "foot", "feet", "fuss", "fuß", "pied", "pieds", "'", "′"), ("length", INCH * 12)),
    **dict.fromkeys(("yd", "yard", "yards"), ("length", INCH * 36)),
    **dict.fromkeys(("mm", "millimeter", "millimetre", "millimeters"), ("length", Fraction(1))),
    **dict.fromkeys(("cm", "centimeter", "centimetre"), ("length", Fraction(10))),
    **dict.fromkeys(("m", "meter", "metre", "meters", "metres", "mtr"), ("length", Fraction(1000))),
    **dict.fromkeys(("oz", "ounce", "ounces"), ("weight", OUNCE)),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), ("weight", OUNCE * 16)),
    **dict.fromkeys(("g", "gr", "gram", "grams", "gramm"), ("weight", Fraction(1))),
    **dict.fromkeys(("kg", "kgs", "kilo"), ("weight", Fraction(1000))),
    **dict.fromkeys(("ml",), ("volume", Fraction(1))),
    **dict.fromkeys(("l", "liter", "litre", "liters", "litres", "ltr"), ("volume", Fraction(1000))),
    **dict.fromkeys(("fl oz", "fl. oz", "floz"), ("volume", FLUID_OUNCE)),
    **dict.fromkeys(("pt", "pint", "pints"), ("volume", FLUID_OUNCE * 16)),
    **dict.fromkeys(("qt", "quart", "quarts"), ("volume", FLUID_OUNCE * 32)),
    **dict.fromkeys(("gal", "gallon", "gallons"), ("volume", FLUID_OUNCE * 128)),
    **dict.fromkeys(
        ("cu ft", "cu. ft", "cu.ft", "cubic foot", "cubic feet", "cu-ft", "cf"), ("volume", INCH**3 * 1728 / 1000)
    ),
    **dict.fromkeys(("cc", "ccm", "cm3"), ("displacement", Fraction(1))),
    **dict.fromkeys(("v", "volt", "volts", "vdc", "vac"), ("voltage", Fraction(1))),
    **dict.fromkeys(("w", "watt", "watts"), ("power", Fraction(1))),
    **dict.fromkeys(("kw",), ("power", Fraction(1000))),
    **dict.fromkeys(("hp", "ps"), ("horsepower", Fraction(1))),
    **dict.fromkeys(("a", "amp", "amps", "ampere"), ("current", Fraction(1))),
    **dict.fromkeys(("ah", "amp hour"), ("charge", Fraction(1000))),
    **dict.fromkeys(("mah",), ("charge", Fraction(1))),
    **dict.fromkeys(("mb", "megabyte"), ("storage", Fraction(1))),
    **dict.fromkeys(("gb", "gig", "gigabyte", "gigabytes"), ("storage", Fraction(1000))),
    **dict.fromkeys(("tb", "terabyte"), ("storage", Fraction(1_000_000))),
    **dict.fromkeys(("hz",), ("frequency", Fraction(1))),
    **dict.fromkeys(("khz",), ("frequency", Fraction(1000))),
    **dict.fromkeys(("mhz",), ("frequency", Fraction(1_000_000))),
    **dict.fromkeys(("ghz",), ("frequency", Fraction(1_000_000_000))),
    **dict.fromkeys(("mp", "megapixel", "megapixels"), ("pixels", Fraction(1))),
    **dict.fromkeys(("rpm", "u/min"), ("speed", Fraction(1))),
    **dict.fromkeys(("tooth", "teeth", "t", "zähne", "dents"), ("teeth", Fraction(1))),
    **dict.fromkeys(("link", "links", "glieder", "maillons"), ("links", Fraction(1))),
    **dict.fromkeys(("rib", "ribs", "rippen"), ("ribs", Fraction(1))),
    **dict.fromkeys(
        ("pk", "pack", "packs", "pc", "piece", "ct", "count", "cnt", *PIECES),
        ("count", Fraction(1)),
    ),
}
"""What an abbreviation measures, and how many of that quantity's own unit it is."""

_NUMBER = (
    r"(?:\d{1,4}[- ]\d{1,3}/\d{1,3}|\d{1,3}/\d{1,3}|\d{1,3}(?:,\d{3}){1,3}(?:\.\d{1,4})?"
    r"|\d{1,9}(?:[.,]\d{1,6})?|[.,]\d{1,6})"
)
"""Every run has a limit: without it a text that is one long number takes minutes."""
_UNIT = "|".join(sorted((re.escape(unit) for unit in UNITS), key=len, reverse=True))
MEASURE = re.compile(rf"(?<![\w.,/-])({_NUMBER})\s*-?\s*({_UNIT})(?![\w/]|-\d)")
_ACROSS = re.compile(rf"(?<![\w.,/-])({_NUMBER}(?:\s*[x×*]\s*{_NUMBER}){{1,3}})\s*-?\s*({_UNIT})(?![\w/]|-\d)")
"""'17 x 40 x 12 mm': the unit holds for every number."""

_PLAIN = r"(?:\d{1,3}/\d{1,3}|\d{1,6}(?:\.\d{1,4})?|\.\d{1,4})"
_SIZE = re.compile(
    rf"(?<![\w.,/-])(?:{_NUMBER}(?:\s*[x×]\s*{_PLAIN}){{1,3}}(?:-\d{{1,2}})?|\d{{1,2}}\.\d\d-\d{{1,2}})(?![\w/.-]*\w)"
)
"""'5/8x3/4x1', '20x40x7', '15x6.00-6' and '4.80-8': sizes without a unit."""
_TIMES = re.compile(r"\s*[x×*]\s*")
_BETWEEN = re.compile(r"\s*[x×]\s*|(?<=\d\d)-(?=\d{1,2}$)")
_PAIR = re.compile(rf"(?<![\w-]){any_of(PAIRS, PERHAPS_PAIRS, TWINS)}(?![\w-])")

Measure = tuple[str, str]
"""What is measured, and how much as four significant digits: '1/2 in' is ('length', '12.7').

A length that is only roundly known says how roundly: '53 cm' is ('length', '530 ±5').
"""

COVERS_FROM = 100
"""Millimetres from which a length may be rounded; shorter ones are bores, threads and widths."""
MOST_COVERED = Fraction(1, 40)
WHOLE = Fraction(1, 2)
"""What a whole number of millimetres covers either way."""
LONG_BESIDE_WIDTH = 10
"""A size of two numbers of which one is so many times the other is the same in either order: a belt's, not a bush's."""


def measures(text: str) -> tuple[frozenset[Measure], str]:
    """The measures of a lower-case text, and the text without them (a space in their place).

    In '5/8 x 91 in' the unit holds for both numbers. What is no plain number is left in the text.
    """
    found: set[Measure] = set()

    def take(match: re.Match[str]) -> str:
        amounts = [number(each) for each in _TIMES.split(match[1])]
        kind, factor = UNITS[match[2]]
        known = [amount for amount in amounts if amount is not None]
        if len(known) < len(amounts):
            return match[0]
        found.update((kind, _amount(kind, factor, amount)) for amount in known)
        return " "

    def size(match: re.Match[str]) -> str:
        amounts = [number(each) for each in _BETWEEN.split(match[0])]
        if None in amounts:
            return match[0]
        found.add(("size", _size([amount for amount in amounts if amount is not None])))
        return " "

    if _PAIR.search(text):
        found.add(("count", "2"))
    counted, rest = counts(text)
    found.update(("count", str(count)) for count in counted)
    rest = _ACROSS.sub(take, rest)
    rest = MEASURE.sub(take, rest)
    rest = _SIZE.sub(size, rest)
    return frozenset(found), rest


def apart(one: frozenset[Measure], other: frozenset[Measure], kind: str) -> tuple[frozenset[str], frozenset[str]]:
    """Of one kind, the amounts of each that the other has not, roundly written lengths within their rounding."""
    left, right = (frozenset(amount for each, amount in some if each == kind) for some in (one, other))
    left, right = left - right, right - left
    if kind != "length" or not (left and right):
        return left, right
    return (
        frozenset(amount for amount in left if not any(_one_length(amount, each) for each in right)),
        frozenset(amount for amount in right if not any(_one_length(amount, each) for each in left)),
    )


def _one_length(one: str, other: str) -> bool:
    """Whether the one written more roundly covers the other."""
    (first, covers), (second, covered) = _rounded(one), _rounded(other)
    return abs(first - second) <= max(covers, covered) and min(first, second) >= COVERS_FROM


def _rounded(amount: str) -> tuple[Fraction, Fraction]:
    """'530 ±5' is 530 and 5; '533' may stand for 532.5 to 533.5, '533.4' for itself."""
    middle, _, covers = amount.partition(" ±")
    return Fraction(middle), Fraction(covers) if covers else Fraction(0) if "." in middle else WHOLE


def _amount(kind: str, factor: Fraction, amount: Fraction) -> str:
    whole = amount * factor
    if kind != "length" or whole < COVERS_FROM:
        return significant(whole)
    half = min(factor * _last_place(amount) / 2, whole * MOST_COVERED) if factor in ROUNDED else Fraction(0)
    return f"{significant(whole)} ±{significant(half)}" if half > WHOLE else significant(whole)


def _last_place(amount: Fraction) -> Fraction:
    """1 of '53', 1/10 of '1.8'."""
    return next((Fraction(1, ten) for ten in (1, 10, 100) if (amount * ten).denominator == 1), Fraction(1, 1000))


def _size(amounts: Sequence[Fraction]) -> str:
    """The numbers in the order they stand; width before length where one can be nothing else."""
    if len(amounts) == 2 and amounts[0] > amounts[1] * LONG_BESIDE_WIDTH:
        amounts = amounts[::-1]
    return " x ".join(map(significant, amounts))


@lru_cache(maxsize=65536)
def number(text: str) -> Fraction | None:
    """'91-1/2', '1,250', '12,5' and '.5' as exact numbers; None where it is none."""
    whole, fraction = 0, text
    if "/" in text:
        head, _, fraction = text.replace(" ", "-").rpartition("-")
        whole = int(head) if head else 0
        above, below = map(int, fraction.split("/"))
        return whole + Fraction(above, below) if below in BELOW and gcd(above, below) == 1 and above < below else None
    plain = text.replace(",", "") if re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?", text) else text.replace(",", ".")
    try:
        return Fraction(plain)
    except ValueError:
        return None


@lru_cache(maxsize=65536)
def significant(amount: Fraction) -> str:
    """Four significant digits, so that a rounded conversion meets its original and a quarter inch in 88 does not."""
    value = Decimal(amount.numerator) / Decimal(amount.denominator)
    return f"{Decimal(f'{value:.3E}').normalize():f}"
