"""Sizes and counts, and the many ways catalogues write one and the same.

Belts: letter and inside length in inches, or 2L-5L and outside length in tenths of an inch (ARPM/RMA IP-20 and IP-23);
outside = inside + 2 (A) or 3 (B) is the trade's rule. Bearings: ISO 15 bore, outside diameter, width in mm.
Factors: 1 in = 25.4 mm and 1 ft = 0.3048 m exactly (NIST SP 811); 1 fl oz = 29.5735 ml (NIST SP 811, rounded).
"""

from dataclasses import dataclass
from fractions import Fraction

from tests.match_corpus.chance import Chance

FORMS: dict[str, tuple[str, ...]] = {
    "in": ('{}"', "{} in", "{}-inch", "{} in.", "{}in", "{} Inch", "{}''"),
    "ft": ("{} ft", "{}'", "{}-foot", "{}ft.", "{} Feet", "{}-ft"),
    "mm": ("{} mm", "{}mm", "{}-mm"),
    "cm": ("{} cm", "{}cm"),
    "m": ("{} m", "{}m", "{} meters"),
    "oz": ("{} oz", "{}oz.", "{} ounce", "{} fl oz", "{}-oz", "{} fl. oz."),
    "ml": ("{} ml", "{}mL", "{} ML"),
    "W": ("{}W", "{} W", "{}-watt", "{} Watts", "{}w"),
    "kW": ("{} kW", "{}kW"),
    "V": ("{}V", "{} V", "{}-volt", "{} Volt", "{}v"),
    "A": ("{} amp", "{}A", "{}-amp", "{} A"),
    "GB": ("{}GB", "{} GB", "{}-GB", "{}gb", "{} Gigabyte"),
    "MB": ("{}MB", "{} MB"),
    "TB": ("{}TB", "{} TB"),
    "MP": ("{} Megapixel", "{}MP", "{}-MP", "{} MP", "{}-Megapixel", "{} Mpix"),
    "x": ("{}x", "{}X", "{}x zoom", "{} x"),
    "ch": ("{}-channel", "{} ch", "{}CH", "{} Channel"),
    "cu ft": ("{} cu. ft.", "{} cu ft", "{}-cu-ft", "{} Cubic Foot", "{} cubic feet"),
    "BTU": ("{} BTU", "{}BTU", "{}-btu"),
    "Hz": ("{}Hz", "{} Hz"),
    "lm": ("{} lumens", "{} lm", "{}-lumen"),
    "hr": ("{}-hour", "{} hr", "{}hrs"),
    "sheets": ("{} sheets", "{}-sheet", "{} sht", "{} Sheets"),
    "pages": ("{} pages", "{} page yield", "{}pg"),
    "qt": ("{}-quart", "{} qt", "{}qt.", "{} Quart"),
    "gal": ("{} gal", "{}-gallon", "{} gal."),
    "lb": ("{} lb", "{}lb.", "{}-pound", "{} lbs"),
    "hp": ("{} HP", "{}hp", "{} hp", "{}-HP"),
    "cc": ("{}cc", "{} cc"),
    "T": ("{}T", "{} tooth", "{}-tooth", "{} teeth"),
    "rpm": ("{} rpm", "{}RPM"),
    "links": ("{} links", "{}L", "{} link"),
    "ply": ("{} ply", "{}PR", "{}-ply"),
    "pk": ("{}-pack", "{} pk", "Pack of {}", "{}/pk", "({} Pack)", "set of {}", "{}ct", "{} count", "{}/box", "{}PK"),
    "size": ("{}",),
}
CONVERSIONS: dict[str, tuple[tuple[str, Fraction], ...]] = {
    "in": (("mm", Fraction(254, 10)), ("cm", Fraction(254, 100))),
    "ft": (("m", Fraction(3048, 10000)), ("in", Fraction(12))),
    "oz": (("ml", Fraction(295735, 10000)),),
    "GB": (("TB", Fraction(1, 1000)),),
    "W": (("kW", Fraction(1, 1000)),),
    "m": (("ft", Fraction(10000, 3048)),),
}
BEARINGS = {
    "608": "8x22x7", "6000": "10x26x8", "6001": "12x28x8", "6002": "15x32x9", "6003": "17x35x10", "6004": "20x42x12",
    "6200": "10x30x9", "6201": "12x32x10", "6202": "15x35x11", "6203": "17x40x12", "6204": "20x47x14",
    "6205": "25x52x15", "6301": "12x37x12", "6302": "15x42x13", "6303": "17x47x14", "6304": "20x52x15",
}  # fmt: skip
BELT_WIDTHS = {"3L": "3/8", "4L": "1/2", "5L": "5/8", "A": "1/2", "B": "5/8"}


@dataclass(frozen=True)
class Measure:
    """An amount as the maker states it, with its unit; 'belt', 'bearing' and 'size' are designations."""

    amount: str
    unit: str


@dataclass(frozen=True)
class Habit:
    """How one catalogue writes: which form of a unit it likes, fractions, how often it converts."""

    form: int
    fraction: str
    converts: float
    steady: float


def _fraction(amount: str) -> Fraction:
    whole, _, part = amount.partition("-")
    return Fraction(whole) + Fraction(part) if part else Fraction(amount)


def amount_text(amount: Fraction, fraction: str) -> str:
    """'1-1/2', '1 1/2' or '1.5', by `fraction` '-', ' ' or '.'."""
    if amount.denominator == 1:
        return str(amount.numerator)
    if fraction != "." and amount.denominator in (2, 4, 8, 16, 32):
        whole, part = divmod(amount, 1)
        return f"{whole}{fraction}{part}" if whole else str(part)
    return f"{round(amount * 100) / 100:.2f}".rstrip("0").rstrip(".")


def _belt(designation: str, chance: Chance) -> str:
    section = designation[:2] if designation[1:2] == "L" else designation[:1]
    length = (
        Fraction(designation[2:]) / 10 if section[-1] == "L" else Fraction(designation[1:]) + "AB".index(section) + 2
    )
    plain = amount_text(length, "-")
    width = BELT_WIDTHS[section]
    return chance.weighted(
        [
            (designation, 5),
            (f"{section}-{designation[len(section) :]}", 1),
            (f'{width}" x {plain}" {section}', 1.5),
            (f"{width} X {plain}", 1),
        ]
    )


def _bearing(designation: str, chance: Chance) -> str:
    base, _, seal = designation.partition("-")
    return chance.weighted(
        [
            (designation, 5), (f"{base}{seal}", 2), (f"{base} {seal}", 2), (f"{base}-{seal} {BEARINGS[base]}", 1),
            (f"{BEARINGS[base]} {seal}", 1),
        ]
    )  # fmt: skip


def written(measure: Measure, habit: Habit, chance: Chance) -> str:
    """One way to write the measure; converted amounts are rounded as catalogues round them."""
    if measure.unit == "belt":
        return _belt(measure.amount, chance)
    if measure.unit == "bearing":
        return _bearing(measure.amount, chance)
    if measure.unit == "size":
        return measure.amount
    amount, unit = _fraction(measure.amount), measure.unit
    is_small = unit in ("W", "GB") and amount < 1000
    if unit in CONVERSIONS and not is_small and chance.odds(habit.converts):
        unit, factor = chance.pick(CONVERSIONS[unit])
        amount = (
            Fraction(round(amount * factor * 10), 10) if amount * factor < 100 else Fraction(round(amount * factor))
        )
        return chance.pick(FORMS[unit]).format(amount_text(amount, "."))
    forms = FORMS[unit]
    form = forms[habit.form % len(forms)] if chance.odds(habit.steady) else chance.pick(forms)
    return form.format(amount_text(amount, habit.fraction))
