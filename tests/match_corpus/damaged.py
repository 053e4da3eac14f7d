"""W4: a sheet with damaged numbers, and parts of which some bear just the number the damage made."""

from dataclasses import replace

from tests.match_corpus.chance import Chance
from tests.match_corpus.corpus import Corpus, Layout, lay_out
from tests.match_corpus.damage import CLASSES, Damage
from tests.match_corpus.measures import Measure
from tests.match_corpus.names import by_pattern
from tests.match_corpus.products import SIDES, Product, made_for
from tests.match_corpus.sides import W4
from tests.match_corpus.writing import Writer, listing

DAMAGED, OCCUPIED = 0.75, 0.5
"""Shares: rows whose number is damaged of those with a part; of these, those where another part bears that number."""

Taken = set[tuple[str, str]]


def key(number: str) -> str:
    """Letters and digits only, capitals."""
    return "".join(filter(str.isalnum, number)).upper()


def _plain(writer: Writer) -> Writer:
    """The same writer leaving nothing out that tells sisters apart, and mistyping nothing."""
    side = replace(
        writer.side, measure_given=1.0, colour_given=1.0, cut_at=400, converts=0.0, mistyped=0.0, reordered=0.0
    )
    return replace(writer, side=side)


def _far(product: Product, chance: Chance) -> Product | None:
    """A sister that differs in a size, clearly: three places away in its kind's list at least."""
    measure = product.measures[0]
    amounts = dict(product.kind.measures)[measure.unit]
    here = amounts.index(measure.amount)
    others = [one for at, one in enumerate(amounts) if abs(at - here) >= 3 and _is_clear(measure, one)]
    if not others:
        return None
    return replace(product, measures=(Measure(chance.pick(others), measure.unit), *product.measures[1:]))


def _is_clear(measure: Measure, other: str) -> bool:
    if measure.unit == "belt":
        lengths = [int(one[2:]) / 10 if one[1] == "L" else int(one[1:]) + 2 for one in (measure.amount, other)]
        return abs(lengths[0] - lengths[1]) >= 3
    return measure.unit != "bearing" or measure.amount.split("-")[0] != other.split("-")[0]


def _bearer(product: Product, number: str, others: tuple[Product, ...], chance: Chance) -> tuple[Product, str] | None:
    """Another thing of the same maker with that number: a sister of another size or side, or another kind."""
    sister = None
    if chance.odds(0.6):
        if product.side:
            sister = replace(product, side=next(side for side in SIDES if side != product.side))
        elif product.measures:
            sister = _far(product, chance)
    if sister:
        return replace(sister, stem=number, tail=""), "sister"
    other = chance.pick(others)
    if other.kind == product.kind or other.stands_for or other.is_refurbished:
        return None
    return replace(other, stem=number, tail="", maker=product.maker), "stranger"


def _damaged(product: Product, damage: Damage, taken: Taken, chance: Chance) -> tuple[Product, str] | None:
    """The thing (renumbered in the shape the damage needs) and its damaged number; None where it does not apply.

    Neither may be a number that the maker's parts bear already: what stands behind a damaged number is laid on purpose.
    """
    if damage.shape:
        product = replace(product, stem=by_pattern(chance, damage.shape), tail="")
        if (product.maker.name, key(product.number)) in taken:
            return None
    number = damage.harm(product.number, chance)
    is_changed = number != product.number and (damage.is_harmless or key(number) != key(product.number))
    is_taken = not damage.is_harmless and (product.maker.name, key(number)) in taken
    return (product, number) if is_changed and not is_taken else None


def _another(product: Product, chance: Chance) -> tuple[Product, str]:
    """What looks like damage and is another thing: suffix, side, pack, refurbished, made to replace."""
    kind = chance.number(1, 5)
    if kind == 1:
        return replace(product, tail=product.tail + "B", generation="B"), "suffix variant"
    if kind == 2:
        side = "right" if product.side == "left" else "left"
        return replace(product, tail=product.tail + side[0].upper(), side=side), "left / right"
    if kind == 3:
        count = product.pack * 2 or 12
        return replace(product, tail=f"{product.tail}-{count}", pack=count, cents=product.cents * 9), "pack quantity"
    if kind == 4:
        return replace(product, is_refurbished=True, cents=product.cents * 6 // 10), "remanufactured"
    other = made_for(product.family, product, product.maker, chance)
    return replace(other, stem=product.stem, tail=product.tail), "compatible"


class _Making:
    """The rows as they are filled, place by place."""

    def __init__(self, layout: Layout, chance: Chance) -> None:
        self.layout, self.chance = layout, chance
        self.gold = layout.places()
        self.parts = [listing(one, layout.by_parts, chance) for one in layout.of_parts]
        self.sheet = [listing(one, layout.by_sheet, chance) for one in layout.of_sheet]
        self.kinds = ["undamaged" if at in self.gold else "no partner" for at in range(len(self.sheet))]
        wanted = {at for places in self.gold.values() for at in places}
        self.free = chance.shuffled([at for at in range(len(self.parts)) if at not in wanted])
        self.taken: Taken = {(one.maker.name, key(one.number)) for one in layout.of_parts}

    def damage(self, row: int) -> None:
        """Damages the row's number by a class that applies to it; eight throws without one leave it whole."""
        product = self.layout.of_sheet[row]
        for _ in range(8):
            damage = self.chance.weighted([(one, one.weight) for one in CLASSES])
            done = _damaged(product, damage, self.taken, self.chance)
            if done:
                self._put(row, *done, damage)
                return

    def _put(self, row: int, product: Product, number: str, damage: Damage) -> None:
        (place,) = self.gold[row]
        by_sheet = _plain(self.layout.by_sheet)
        self.parts[place] = listing(product, self.layout.by_parts, self.chance)
        self.sheet[row] = replace(listing(product, by_sheet, self.chance), number=number)
        self.taken.add((product.maker.name, key(product.number)))
        self.kinds[row] = damage.name
        if not damage.is_harmless and key(number) and self.free and self.chance.odds(OCCUPIED):
            bearer = _bearer(product, number, self.layout.of_parts, self.chance)
            if bearer:
                self.taken.add((product.maker.name, key(number)))
                self.parts[self.free.pop()] = listing(bearer[0], _plain(self.layout.by_parts), self.chance)
                self.kinds[row] += f", a {bearer[1]} has that number"

    def other_thing(self, row: int) -> None:
        """Puts another thing in the row, one that looks like its part with a damaged number; the row has none then."""
        product, kind = _another(self.layout.of_sheet[row], self.chance)
        if kind in ("remanufactured", "compatible") or (product.maker.name, key(product.number)) not in self.taken:
            row_as = listing(product, _plain(self.layout.by_sheet), self.chance)
            self.sheet[row] = replace(row_as, number=product.number)
            self.gold = {at: places for at, places in self.gold.items() if at != row}
            self.kinds[row] = f"another thing: {kind}"


def make_damaged(seed: int, sheet_rows: int | None = None, parts_rows: int | None = None) -> Corpus:
    """The corpus W4 of that seed."""
    chance = Chance(f"W4 {seed}")
    layout = lay_out(W4, chance, sheet_rows or W4.sheet_rows, parts_rows or W4.parts_rows)
    making = _Making(layout, chance)
    whole = [row for row in making.gold if not (layout.of_sheet[row].stands_for or layout.of_sheet[row].is_refurbished)]
    for row in whole:
        if chance.odds(DAMAGED):
            making.damage(row)
        elif chance.odds(0.4):
            making.other_thing(row)
    return Corpus(tuple(making.parts), tuple(making.sheet), making.gold, tuple(making.kinds))
