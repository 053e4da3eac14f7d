"""V-belt designations: classical A and B (also cogged AX, BX) and light duty 4L and 5L, by ARPM/RMA IP-20 and IP-23.

Sources. Widths and thicknesses: published section tables after ARPM/RMA IP-20 and IP-23 (A 1/2 x 5/16 in, B 21/32 x
13/32 in, 4L 1/2 x 5/16 in, 5L 21/32 x 3/8 in; some lists print B and 5L as 5/8 in). Length: the number of a
classical belt is its inside length in inches; a light-duty number is ten times its outside length. Inside to
outside: A and 4L 2 in, B and 5L 3 in, a trade rule rounded to whole inches (common practice; published examples
A88 = 90 in and B88 = 91 in outside, 4L460 = A44, 5L330 = B30). Length tolerance: ARPM/RMA IP-20 as printed in
Machinery's Handbook, 31st edition, page 2575, table 8; no published tolerance of IP-23 was found, IP-20's is used.
"""

import re
from decimal import Decimal

from ...basics.value import Value


class Section(Value, frozen=True, kw_only=True):
    """A belt section. Inches. `groove` names the sheave groove it is made for: sections sharing it fit alike."""

    name: str
    top_width: Decimal
    thickness: Decimal
    groove: str
    light_duty: bool
    inside_to_outside: Decimal


def _section(name: str, width: str, thickness: str, groove: str, add: int) -> Section:
    return Section(
        name=name,
        top_width=Decimal(width),
        thickness=Decimal(thickness),
        groove=groove,
        light_duty=name.endswith("L"),
        inside_to_outside=Decimal(add),
    )


SECTIONS = {
    section.name: section
    for section in (
        _section("A", "0.5", "0.3125", "A", 2),
        _section("AX", "0.5", "0.3125", "A", 2),
        _section("4L", "0.5", "0.3125", "A", 2),
        _section("B", "0.65625", "0.40625", "B", 3),
        _section("BX", "0.65625", "0.40625", "B", 3),
        _section("5L", "0.65625", "0.375", "B", 3),
    )
}

TOLERANCES = ((38, "0.6"), (90, "0.7"), (158, "0.8"), (195, "1.0"), (240, "1.1"))
"""IP-20 plus-minus in inches for numbers below the first figure; printed 0.6 to 35, 0.7 from 42 to 85, 0.8 from 90 to
144, 1.0 from 158 to 180, 1.1 from 195 to 210, 1.3 at 240. At 38 two printings differ (0.7, 0.6): the wider is taken."""

BEYOND = Decimal("1.3")

_CLASSICAL = re.compile(r"(?<![A-Z0-9.-])([AB]X?)-?(\d{2,3})(?![A-Z0-9]|[.-]\d)")
_LIGHT = re.compile(r"(?<![A-Z0-9.-])([45]L)-?(\d{3,4})(?![A-Z0-9]|[.-]\d)")


class BeltSize(Value, frozen=True, kw_only=True):
    """A V-belt by its designation. Lengths in inches by the trade rule, see the module."""

    designation: str
    section: Section
    inside: Decimal
    outside: Decimal

    def words(self) -> str:
        """'B36: B section, 0.656 in wide, 36 in inside, 39 in outside'."""
        width = self.section.top_width.quantize(Decimal("0.001"))
        return (
            f"{self.designation}: {self.section.name} section, {width} in wide, "
            f"{_plain(self.inside)} in inside, {_plain(self.outside)} in outside"
        )


def read_belt(text: str) -> BeltSize | None:
    """The one belt designation in a number or description; None where there is none, or two that differ."""
    upper = text.upper()
    found = {_classical(*match.groups()) for match in _CLASSICAL.finditer(upper)}
    found |= {_light_duty(*match.groups()) for match in _LIGHT.finditer(upper)}
    return found.pop() if len(found) == 1 else None


def tolerance(inside: Decimal) -> Decimal:
    """Plus-minus of the effective length in inches, by the inside length (IP-20)."""
    return next((Decimal(inches) for below, inches in TOLERANCES if inside < below), BEYOND)


def _classical(name: str, number: str) -> BeltSize:
    section, inside = SECTIONS[name], Decimal(number)
    outside = inside + section.inside_to_outside
    return BeltSize(designation=f"{name}{number}", section=section, inside=inside, outside=outside)


def _light_duty(name: str, number: str) -> BeltSize:
    section, outside = SECTIONS[name], Decimal(number) / 10
    inside = outside - section.inside_to_outside
    return BeltSize(designation=f"{name}{number}", section=section, inside=inside, outside=outside)


def _plain(length: Decimal) -> str:
    return f"{length.normalize():f}"
