"""Two catalogues and the truth about them: which row of the sheet is which row of the parts, or none."""

import csv
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from tests.match_corpus.chance import Chance
from tests.match_corpus.names import Maker, maker
from tests.match_corpus.products import Product, family, made_for
from tests.match_corpus.sides import World, shaken
from tests.match_corpus.writing import Listing, Writer, listing, writer

COLUMNS = ("number", "maker", "description", "price")


@dataclass(frozen=True)
class Corpus:
    """Rows count from 0. `gold` holds the rows of the sheet that have a part, each with every place of that part.

    `kinds` says of each row of the sheet what it is, for reports: 'partner', 'no partner, sister listed', ...
    """

    parts: tuple[Listing, ...]
    sheet: tuple[Listing, ...]
    gold: Mapping[int, frozenset[int]]
    kinds: tuple[str, ...]


def _makers(world: World, chance: Chance) -> list[Maker]:
    taken: set[str] = set(world.makers)
    made = [maker(chance, taken, given) for given in world.makers]
    return made + [maker(chance, taken) for _ in range(world.maker_count - len(made))]


def _products(world: World, count: int, chance: Chance) -> list[Product]:
    """So many different things, family by family."""
    makers = _makers(world, chance)
    range_of = {one.name: chance.some(world.kinds, chance.number(3, 9)) for one in makers}
    made: list[Product] = []
    seen: set[tuple[str, str, bool]] = set()
    number = 0
    while len(made) < count:
        number += 1
        brand = makers[min(chance.number(0, len(makers) - 1), chance.number(0, len(makers) - 1))]
        new = family(number, brand, chance.pick(range_of[brand.name]), chance.number(0, 2 * world.sisters), chance)
        if chance.odds(world.made_for * 3):
            other = chance.pick(new)
            new += [made_for(-number, other, chance.pick(makers), chance) for _ in range(chance.number(1, 2))]
        for one in new:
            key = (one.maker.name, "".join(filter(str.isalnum, one.number)).upper(), one.is_refurbished)
            if key not in seen:
                seen.add(key)
                made.append(one)
    return made[:count]


def _kind(product: Product, is_in_parts: bool, families: set[int]) -> str:
    what = "partner" if is_in_parts else "no partner"
    if product.stands_for:
        return f"{what}, made for another"
    if product.is_refurbished:
        return f"{what}, refurbished"
    return what if is_in_parts or product.family not in families else f"{what}, sister listed"


def _listed(products: list[Product], twice: float, chance: Chance) -> list[Product]:
    """The products in a new order, some of them listed twice in place of others."""
    extra = [one for one in products if chance.odds(twice)]
    return chance.shuffled(products + extra)


@dataclass(frozen=True)
class Layout:
    """What stands where, before anything is printed: the things in the order of rows, and who prints them."""

    of_parts: tuple[Product, ...]
    of_sheet: tuple[Product, ...]
    by_parts: Writer
    by_sheet: Writer

    def places(self) -> dict[int, frozenset[int]]:
        """Of each row of the sheet that has a part: every row of the parts it is listed at."""
        rows: dict[int, set[int]] = {}
        for at, one in enumerate(self.of_parts):
            rows.setdefault(id(one), set()).add(at)
        return {at: frozenset(rows[id(one)]) for at, one in enumerate(self.of_sheet) if id(one) in rows}


def lay_out(world: World, chance: Chance, rows: int, parts: int) -> Layout:
    """Things for about so many rows on each side (a little more, for what is listed twice)."""
    common = int(min(rows, parts) * min(0.9, world.with_partner * chance.between(0.9, 1.1)))
    products = _products(world, rows + parts - common, chance)
    order = chance.shuffled(range(len(products)))
    both, only_sheet, only_parts = order[:common], order[common:rows], order[rows:]
    of_parts = _listed([products[at] for at in both + only_parts], world.parts.listed_twice, chance)
    of_sheet = _listed([products[at] for at in both + only_sheet], world.sheet.listed_twice, chance)
    by_parts, by_sheet = writer(shaken(world.parts, chance), chance), writer(shaken(world.sheet, chance), chance)
    return Layout(tuple(of_parts), tuple(of_sheet), by_parts, by_sheet)


def make(world: World, seed: int, sheet_rows: int | None = None, parts_rows: int | None = None) -> Corpus:
    """The corpus of that world and seed."""
    chance = Chance(f"{world.name} {seed}")
    layout = lay_out(world, chance, sheet_rows or world.sheet_rows, parts_rows or world.parts_rows)
    gold = layout.places()
    families = {one.family for one in layout.of_parts}
    return Corpus(
        parts=tuple(listing(one, layout.by_parts, chance) for one in layout.of_parts),
        sheet=tuple(listing(one, layout.by_sheet, chance) for one in layout.of_sheet),
        gold=gold,
        kinds=tuple(_kind(one, at in gold, families) for at, one in enumerate(layout.of_sheet)),
    )


def write_listings(path: Path, rows: Iterable[Listing]) -> None:
    """A table of number, maker, description, price as CSV in UTF-8."""
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow(COLUMNS)
        out.writerows((row.number, row.maker, row.description, row.price) for row in rows)


def write_gold(path: Path, corpus: Corpus) -> None:
    """Lines of sheet_row, part_row (blank: none; several lines: listed more than once), kind."""
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow(("sheet_row", "part_row", "kind"))
        for at, kind in enumerate(corpus.kinds):
            out.writerows((at, place, kind) for place in sorted(corpus.gold.get(at, ())) or ("",))


def counts(corpus: Corpus) -> Counter[str]:
    """How many rows of the sheet are of which kind."""
    return Counter(corpus.kinds)
