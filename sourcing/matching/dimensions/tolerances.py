"""How far two nominal lengths may lie apart and still be one size: the tolerances the standards print.

Two belts agree where each lies inside the other's tolerance; with an unequal plus and minus this is the smaller one.
Where no published tolerance was found (IP-21, IP-22, IP-23, IP-25, ISO 9982) the source says what is used and why.
"""

from decimal import Decimal

from ...basics.value import Value
from .size import BeltSize, in_mm, lengths_as

IP20 = ((42, "0.6"), (90, "0.7"), (158, "0.8"), (195, "1.0"), (240, "1.1"))
"""IP-20, Machinery's Handbook 31st ed. p. 2575 table 8 and an engineering reference page: plus-minus in inches for
numbers below the first figure; printed 0.6 to 35, 0.7 from 42 to 85, 0.8 from 90 to 144, 1.0 from 158 to 180, 1.1 from
195 to 210, 1.3 at 240. At 38 two printings differ (0.7, 0.6): the narrower is taken."""

IP20_BEYOND = Decimal("1.3")

DIN_2215 = (
    *((250, 8, 4), (315, 9, 4), (400, 10, 5), (500, 11, 6), (630, 13, 6), (800, 15, 7), (900, 17, 8), (1250, 19, 10)),
    *((1600, 23, 11), (2000, 27, 13), (2500, 31, 16), (3150, 37, 18), (4000, 44, 22), (5000, 52, 26), (6300, 63, 32)),
    *((8000, 77, 38), (10000, 93, 46), (12500, 112, 56), (15000, 140, 70), (20000, 170, 85)),
)
"""DIN 2215 / ISO 4184, a belt maker's table 72: up to so many mm, plus, minus."""

DIN_7753 = (
    *((900, 9), (1250, 12), (2000, 20), (3150, 32), (5000, 50), (8000, 80), (10000, 100), (12500, 125)),
)  # fmt: skip
"""DIN 7753-1 / ISO 4184, a belt maker's table 71: up to so many mm, plus-minus; about 1 % of the length in each row."""

IP24 = (("10", "0.016"), ("15", "0.018"), ("20", "0.020"), ("22.5", "0.024"))
"""IP-24, an engineering reference page: up to so many inches, plus-minus. Rows were read up to 22.5 in."""


class Tolerance(Value, frozen=True, kw_only=True):
    """Plus and minus in millimetres, and where they come from."""

    plus: Decimal
    minus: Decimal
    source: str


def ip20(number: Decimal) -> Decimal:
    """Plus-minus in inches by the length number, which is the nominal inside length in inches."""
    return next((Decimal(inches) for below, inches in IP20 if number < below), IP20_BEYOND)


def din_2215(mm: Decimal) -> tuple[Decimal, Decimal]:
    """Plus and minus in millimetres of a classical metric belt of this length."""
    row = next((row for row in DIN_2215 if mm <= row[0]), DIN_2215[-1])
    return Decimal(row[1]), Decimal(row[2])


def din_7753(mm: Decimal) -> Decimal:
    """Plus-minus in millimetres of a narrow metric belt: the row's, and never more than 1 % of the length."""
    row = next((row for row in DIN_7753 if mm <= row[0]), DIN_7753[-1])
    return min(Decimal(row[1]), mm / 100)


def ip24(inches: Decimal) -> Decimal | None:
    """Plus-minus in inches of a synchronous belt's pitch length; None beyond the rows that were read."""
    return next((Decimal(tolerance) for up_to, tolerance in IP24 if inches <= Decimal(up_to)), None)


def tolerance_of(size: BeltSize) -> Tolerance:
    """The tolerance of the belt's own standard, or what is used for want of one."""
    family, mm = size.section.family, size.length.mm()
    if family in ("classical", "light duty", "double V"):
        inside = next((length.value for length in lengths_as(size, "inside")), size.length.value)
        source = "IP-20" if family == "classical" else "IP-20, no published tolerance of its own found"
        return _even(in_mm(ip20(inside), "in"), source)
    if family == "metric classical":
        plus, minus = din_2215(mm)
        return Tolerance(plus=plus, minus=minus, source="DIN 2215 / ISO 4184")
    if family == "metric narrow":
        return _even(din_7753(mm), "DIN 7753-1 / ISO 4184")
    if family == "plain":
        return _even(in_mm(ip20(mm / Decimal("25.4")), "in"), "IP-20, for want of a section")
    return _own(family)


def _own(family: str) -> Tolerance:
    # Narrow: IP-22 prints 0.3 in for its shorter lengths (from memory); the strictest is used for all.
    # Variable speed and V-ribbed: own choice, narrower than the steps between listed lengths; a question is cheap.
    mm = Decimal(3) if family == "V-ribbed" else in_mm(Decimal("0.3"), "in")
    return _even(mm, "no published tolerance found, own choice")


def _even(mm: Decimal, source: str) -> Tolerance:
    return Tolerance(plus=mm, minus=mm, source=source)


def allowed_apart(one: BeltSize, other: BeltSize) -> Tolerance:
    """The most two lengths may lie apart so that each is inside the other's tolerance; plus equals minus.

    Two light-duty belts: lists go by whole and half inches (common practice, no source), so IP-20's 0.6 is too wide.
    """
    if one.section.light_duty and other.section.light_duty:
        return _own(one.section.family)
    tolerances = [tolerance_of(one), tolerance_of(other)]
    least = min(tolerances, key=lambda tolerance: min(tolerance.plus, tolerance.minus))
    return _even(min(least.plus, least.minus), least.source)
