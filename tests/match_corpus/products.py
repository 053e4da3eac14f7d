"""Things that are sold, in families of sisters that differ in one respect, and others made to go with them."""

from dataclasses import dataclass, field, replace

from tests.match_corpus.chance import Chance
from tests.match_corpus.kinds import CHANGES, Kind
from tests.match_corpus.measures import Measure
from tests.match_corpus.names import Maker, by_pattern

COLOURS = (
    ("black", "B", ("black", "blk", "Black", "jet black", "onyx black")),
    ("white", "W", ("white", "wht", "White", "arctic white")),
    ("silver", "S", ("silver", "slv", "Silver", "titanium silver")),
    ("red", "R", ("red", "Red", "crimson red")),
    ("blue", "L", ("blue", "Blue", "blu", "ocean blue")),
    ("green", "G", ("green", "Green", "grn")),
    ("pink", "P", ("pink", "Pink")),
    ("gray", "Y", ("gray", "grey", "Gray", "gry", "charcoal gray")),
    ("yellow", "E", ("yellow", "Yellow", "ylw")),
    ("cyan", "C", ("cyan", "Cyan")),
)
COLOUR_WORDS = {name: words for name, _, words in COLOURS}
SIDES = {"left": ("LH", "left", "left hand", "L.H."), "right": ("RH", "right", "right hand", "R.H.")}
REFURBISHED = ("refurbished", "(Refurbished)", "reconditioned", "refurb", "remanufactured", "certified refurbished")
COMPATIBLE = ("compatible", "replacement for", "replaces", "for", "fits", "aftermarket, fits", "compatible with")
ACCESSORIES = (
    ("case for", "carrying case for", "soft case for"),
    ("cover for", "dust cover for"),
    ("stand for", "holder for"),
    ("cable for", "cord for"),
    ("extended warranty for", "service plan for"),
    ("spare kit for", "maintenance kit for"),
)
"""Each group is one thing, as catalogues call it."""


@dataclass(frozen=True)
class Product:
    """One thing that is sold. `number` = `stem` and `tail`, the tail telling the variant; sisters share `family`.

    `stands_for`: another thing it goes with or replaces; `phrases` are words for that.
    """

    family: int
    maker: Maker
    kind: Kind
    stem: str
    tail: str
    line: str
    use: str
    measures: tuple[Measure, ...]
    features: tuple[tuple[str, ...], ...]
    cents: int
    colour: str = ""
    side: str = ""
    pack: int = 0
    generation: str = ""
    is_kit: bool = False
    is_refurbished: bool = False
    stands_for: "Product | None" = None
    phrases: tuple[str, ...] = field(default=())

    @property
    def number(self) -> str:
        """The maker's number as the maker prints it."""
        return self.stem + self.tail


def _base(family: int, maker: Maker, kind: Kind, chance: Chance) -> Product:
    low, high = kind.cents
    cents = int(low * (high / low) ** chance.between(0, 1)) // 10 * 10 + 9
    measures = tuple(Measure(chance.pick(amounts), unit) for unit, amounts in kind.measures)
    return Product(
        family=family,
        maker=maker,
        kind=kind,
        stem=by_pattern(chance, maker.pattern),
        tail="",
        line=chance.pick(maker.lines),
        use=chance.pick(kind.uses),
        measures=measures,
        features=tuple(chance.some(kind.features, chance.number(2, 4))),
        cents=cents,
    )


def _next_stem(stem: str, chance: Chance) -> str:
    """One character of the number changed, mostly a digit near the end."""
    places = [at for at, sign in enumerate(stem) if sign.isdigit()]
    letters = [at for at, sign in enumerate(stem) if sign.isalpha()]
    if letters and chance.odds(0.15):
        at = chance.pick(letters)
        return stem[:at] + chance.letters(1) + stem[at + 1 :]
    at = places[-1 - min(chance.number(0, 2) * chance.number(0, 1), len(places) - 1)]
    return stem[:at] + str((int(stem[at]) + chance.number(1, 9)) % 10) + stem[at + 1 :]


def _tailed(product: Product, mark: str) -> str:
    return f"{product.maker.tail_mark}{mark}"


def _sister(base: Product, change: str, chance: Chance) -> Product:
    cents = int(base.cents * chance.between(0.85, 1.25))
    if change == "colour":
        name, mark, _ = chance.pick(COLOURS)
        long_mark = chance.pick((mark, mark, name[:2].upper(), name[:3].upper()))
        return replace(base, colour=name, tail=_tailed(base, long_mark))
    if change == "pack":
        count = chance.pick((2, 3, 4, 5, 6, 10, 12))
        tail = _tailed(base, chance.pick((str(count), f"{count}PK", f"P{count}")))
        return replace(base, pack=count, tail=tail, cents=int(base.cents * count * chance.between(0.8, 1)))
    if change == "side":
        side = chance.pick(tuple(SIDES))
        return replace(base, side=side, tail=_tailed(base, side[0].upper()))
    if change == "generation":
        mark = chance.pick(("A", "B", "C", "II", "2"))
        features = tuple(chance.some(base.kind.features, len(base.features)))
        return replace(base, generation=mark, tail=_tailed(base, mark), cents=cents, features=features)
    if change == "kit":
        return replace(base, is_kit=True, tail=_tailed(base, "K"), cents=int(base.cents * chance.between(1.1, 1.7)))
    if change == "refurbished":
        tail = base.tail if chance.odds(0.6) else base.tail + _tailed(base, "R")
        return replace(base, is_refurbished=True, tail=tail, cents=int(base.cents * chance.between(0.55, 0.9)))
    if change == "size" and base.measures:
        at = chance.number(0, len(base.measures) - 1)
        amounts = dict(base.kind.measures)[base.measures[at].unit]
        here = amounts.index(base.measures[at].amount)
        other = amounts[max(0, min(len(amounts) - 1, here + chance.pick((-2, -1, -1, 1, 1, 2))))]
        measures = (*base.measures[:at], Measure(other, base.measures[at].unit), *base.measures[at + 1 :])
        if measures != base.measures:
            return replace(base, measures=measures, stem=_next_stem(base.stem, chance), cents=cents)
    return replace(
        base,
        stem=_next_stem(base.stem, chance),
        use=chance.pick(base.kind.uses),
        features=tuple(chance.some(base.kind.features, len(base.features))),
        cents=cents,
    )


def family(number: int, maker: Maker, kind: Kind, sisters: int, chance: Chance) -> list[Product]:
    """A thing and up to so many sisters, each with a number of its own, but for what is refurbished."""
    base = _base(number, maker, kind, chance)
    changes = [CHANGES[letter] for letter in kind.changes if letter != "a"]
    made = {(base.number, False): base}
    for _ in range(sisters):
        change = chance.pick(changes)
        if change == "refurbished" and chance.odds(0.5):
            change = "number"
        one = _sister(chance.pick(list(made.values())), change, chance)
        made.setdefault((one.number, one.is_refurbished), one)
    return list(made.values())


def made_for(number: int, other: Product, maker: Maker, chance: Chance) -> Product:
    """Another maker's thing that replaces the product (where its kind knows such) or goes with it."""
    replaces = "a" in other.kind.changes
    return replace(
        other,
        family=number,
        maker=maker,
        stem=by_pattern(chance, maker.pattern),
        tail="",
        line=chance.pick(maker.lines),
        features=tuple(chance.some(other.kind.features, 2)),
        cents=int(other.cents * (chance.between(0.3, 0.8) if replaces else chance.between(0.03, 0.3))) + 99,
        is_refurbished=False,
        stands_for=other,
        phrases=COMPATIBLE if replaces else chance.pick(ACCESSORIES),
        generation="",
        is_kit=False,
        side="",
    )
