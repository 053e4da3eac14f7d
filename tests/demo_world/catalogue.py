"""All parts of the demo world and the numbers its four makers sell them under, made by chance from a fixed seed."""

from dataclasses import dataclass

from .dice import Dice, key, one_slip_apart
from .families import FAMILIES, Family
from .story import STORY_KEYS

CONSTRUCTIONS = (
    ("", "", 100),
    ("aramid", "Aramid", 135),
    ("cogged", "gezahnt", 120),
    ("aramid wrapped", "Aramid", 140),
)
"""What a belt's maker adds to its size, in English and German, and what it costs in per cent of a plain one."""

NAMED_BY_USE = ("WHEELS AND TIRES", "ELECTRICAL", "CONTROLS", "HARDWARE", "TRANSMISSION")
"""Sections whose parts are called by their use alone: 'Tire 13 x 4.00-6'."""
NOUN_FIRST = ("CARBURETOR PARTS", "FRICTION WHEELS", "AUGER GEARBOX", "AUGERS AND IMPELLERS", "CHUTE PARTS")


@dataclass(frozen=True)
class Part:
    """A physical part. `cents` is the machine maker's list price each; `numbers` holds each maker's number."""

    family: Family
    use: str
    german_use: str
    spec: str
    construction: str
    german_construction: str
    cents: int
    core_cents: int
    pack: int
    numbers: tuple[tuple[str, str], ...]

    def comma_style(self) -> str:
        """'Belt, auger drive, A38 aramid'."""
        return f"{self.family.noun}, {self.use}, {self.spec} {self.construction}".strip()

    def plain_style(self) -> str:
        """'Auger drive belt A38 aramid'."""
        use, noun = " ".join(reversed(self.use.split(", "))), self.family.noun.lower()
        name = use if self.family.section in NAMED_BY_USE else f"{use} {noun}"
        name = f"{noun} {use}" if self.family.section in NOUN_FIRST else name
        words = f"{name} {self.spec} {self.construction}".strip()
        return words[0].upper() + words[1:]

    def german_style(self) -> str:
        """'Keilriemen Schneckenantrieb A38 Aramid'."""
        spec = self.spec.replace(" in", " Zoll").replace("hp", "PS").replace("reach", "Gewindelänge")
        return f"{self.family.german} {self.german_use} {spec} {self.german_construction}".strip()


@dataclass(frozen=True)
class Listing:
    """One maker's number for a part, with that maker's list price in cents."""

    maker: str
    number: str
    cents: int
    part: Part


class Numbers:
    """Hands out numbers that were not given before and are not a slip away from a number of the story."""

    def __init__(self, dice: Dice) -> None:
        self._dice = dice
        self._given: set[str] = set()

    def free(self, number: str, is_designation: bool = False) -> bool:
        """Takes the number if it may be used. A standard's designation may lie next to one of the story: 6204, 6203."""
        wanted = key(number)
        near = not is_designation and any(one_slip_apart(wanted, story) for story in STORY_KEYS)
        if wanted in self._given or wanted in STORY_KEYS or near:
            return False
        self._given.add(wanted)
        return True

    def new(self, pattern: str) -> str:
        """A number by a pattern in which each '?' becomes a digit."""
        for _ in range(5000):
            number = "".join(str(self._dice.number(0, 9)) if sign == "?" else sign for sign in pattern)
            if self.free(number):
                return number
        raise ValueError(f"the pattern {pattern} has no number left")


def parts() -> list[Part]:
    """Every part, family by family, always the same."""
    dice = Dice("parts of the demo world")
    numbers = Numbers(dice)
    made: list[Part] = []
    for family in FAMILIES:
        shapes = [(use, spec) for use in family.uses for spec in family.specs]
        made += [_part(family, use, spec, dice, numbers) for use, spec in dice.some(shapes, family.count)]
    return made


def _part(family: Family, use: tuple[str, str], spec: str, dice: Dice, numbers: Numbers) -> Part:
    is_belt = family.noun == "Belt"
    construction = dice.pick(CONSTRUCTIONS) if is_belt and "L" not in spec else CONSTRUCTIONS[0]
    low, high = family.cents
    cents = low + (high - low) * dice.number(0, 1000) * dice.number(200, 1000) // 1_000_000
    return Part(
        family=family,
        use=use[0],
        german_use=use[1],
        spec=spec,
        construction=construction[0],
        german_construction=construction[1],
        cents=shop_price(cents * construction[2] // 100),
        core_cents=dice.pick((2000, 2500, 3500, 4500)) if family.core else 0,
        pack=family.per_hundred * dice.pick((1, 1, 2, 4)) if family.per_hundred else 1,
        numbers=_numbers(family, spec, "aramid" in construction[0], dice, numbers),
    )


def _numbers(family: Family, spec: str, aramid: bool, dice: Dice, numbers: Numbers) -> tuple[tuple[str, str], ...]:
    """The number of each maker that sells the part; at least one of them does."""
    given = []
    if dice.chance(78):
        given.append(("Norrowby", numbers.new(f"NW-{family.norrowby}???")))
    if family.ostrevik and dice.chance(60):
        given.append(("Ostrevik", numbers.new(f"OV {family.ostrevik} ???")))
    number = _corrivane(family, spec, aramid, numbers)
    if number and dice.chance(72):
        given.append(("Corrivane", number))
    if not given or dice.chance(62):
        given.append(("Dunmarrow", _dunmarrow(family, spec, numbers)))
    return tuple(given)


def _corrivane(family: Family, spec: str, aramid: bool, numbers: Numbers) -> str:
    """Belts carry their size, bearings their designation; blank where that number is taken already."""
    if family.noun == "Belt":
        number = f"CV-{spec}{'K' if aramid else ''}"
        return number if numbers.free(number) else ""
    if family.section == "BEARINGS":
        return spec if numbers.free(spec, is_designation=True) else ""
    return numbers.new(f"CV-{family.corrivane}???")


def _dunmarrow(family: Family, spec: str, numbers: Numbers) -> str:
    if family.section == "BEARINGS":
        number = "DM-" + spec.replace("-2", "").replace("-", "")
        return number if numbers.free(number, is_designation=True) else numbers.new("DM-60???")
    return numbers.new(f"DM-{family.dunmarrow}???")


def shop_price(cents: int) -> int:
    """Prices end as list prices do: in 5, and from ten dollars on in 95."""
    return cents // 100 * 100 + 95 if cents >= 1000 else max(cents // 5 * 5, 5)


def listings(all_parts: list[Part]) -> list[Listing]:
    """Every number of every part; other makers ask less than the machine maker."""
    dice = Dice("list prices of the demo world")
    share = {"Norrowby": (100, 100), "Ostrevik": (92, 104), "Corrivane": (76, 90), "Dunmarrow": (60, 76)}
    return [
        Listing(maker, number, shop_price(part.cents * dice.number(*share[maker]) // 100), part)
        for part in all_parts
        for maker, number in part.numbers
    ]


def money(cents: int) -> str:
    """'1249.00'."""
    return f"{cents // 100}.{cents % 100:02d}"
