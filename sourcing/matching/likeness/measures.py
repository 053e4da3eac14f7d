"""Numbers with units in a description, compared as numbers: '1/2 in' and '12.7 mm' are one, '88 in' and '90 in' two.

Factors: the inch is 25.4 mm, the pound 453.59237 g exactly (international yard and pound agreement, 1959); US liquid
measure from the gallon of 231 cubic inches (NIST Handbook 44, appendix C; the fluid ounce from memory). The tests check
them against pint. Which abbreviation means what is common practice, no source.
"""

import re
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from math import gcd

BELOW = frozenset((2, 3, 4, 5, 6, 8, 10, 16, 32, 64))
"""What stands under the line of a fraction that somebody measured: '12/24 V' are two voltages."""

INCH = Fraction("25.4")
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
        ("pk", "pack", "packs", "pcs", "pc", "pieces", "piece", "ct", "count", "cnt", "stk", "stück", "pièces"),
        ("count", Fraction(1)),
    ),
}
"""What an abbreviation measures, and how many of that quantity's own unit it is."""

COUNT_BEFORE = re.compile(r"\b(?:pack|set|kit|box|case|lot|bag|jeu|satz|lote)\s*(?:of|de|von|mit)\s*(\d{1,4})\b")
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
_PAIR = re.compile(r"(?<![\w-])(?:pair|pairs|pr|paar|paire|twin pack|2er)(?![\w-])")
_PER_PACK = re.compile(r"(?<![\w.,/-])(\d{1,4})\s*/\s*(?:pk|pack|pkg|bx|box|cs|case|ct)\b")

Measure = tuple[str, str]
"""What is measured, and how much as four significant digits: '1/2 in' is ('length', '12.7')."""


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
        found.update((kind, significant(amount * factor)) for amount in known)
        return " "

    def count(match: re.Match[str]) -> str:
        found.add(("count", match[1]))
        return " "

    def size(match: re.Match[str]) -> str:
        amounts = [number(each) for each in _BETWEEN.split(match[0])]
        if None in amounts:
            return match[0]
        found.add(("size", " x ".join(significant(amount) for amount in amounts if amount is not None)))
        return " "

    if _PAIR.search(text):
        found.add(("count", "2"))
    rest = COUNT_BEFORE.sub(count, text)
    rest = _ACROSS.sub(take, rest)
    rest = MEASURE.sub(take, _PER_PACK.sub(count, rest))
    rest = _SIZE.sub(size, rest)
    return frozenset(found), rest


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
