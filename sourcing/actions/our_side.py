"""Our parts as matching whole sheets sees them: families, every number of every part, what suppliers add to numbers."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from statistics import median

from sqlalchemy import Connection

from ..basics.equivalence import OurPart
from ..basics.number_rule import NumberRule
from ..basics.offer import Offer
from ..basics.part_number import OURS, maker_key, number_key
from ..matching.equivalences.family import Family
from ..matching.equivalences.graph import Families, families
from ..matching.equivalences.makers import Makers
from ..matching.equivalences.number_book import bearers_of, number_book
from ..matching.numbers.affixes import strip
from ..matching.numbers.after_spreadsheet import spreadsheet_made
from ..matching.offer_match import Known, OfferMatch, match_offer
from ..matching.sheet_match import Columns
from ..storage.equivalence import equivalence_table
from ..storage.judgements import yes_to_rows
from ..storage.number_rules import rules_by_supplier
from ..storage.offers import newest_number_keys, offers_by_keys
from ..storage.sheets import kept_sheets, sheets_with_makers_numbers
from ..storage.shop import terms_on
from .shop_prices import ShopPrices

NO_RULES: tuple[NumberRule, ...] = ()

NOBODY = ""
"""Whose a number is when no maker is named."""


@dataclass(frozen=True)
class OurSide:
    """Loaded once for many rows. `rules` are the confirmed number rules of each supplier."""

    families: Mapping[str, Family]
    known: Known
    makers: Makers
    every: Families

    def keys_of(self, supplier: str, printed: Iterable[str]) -> list[str]:
        """The keys of numbers on a supplier's sheet: as they stand, and without what he puts around them. No blanks."""
        rules = self.known.rules.get(supplier, NO_RULES)
        texts = list(printed)
        keys = [number_key(text) for text in texts]
        keys += [number_key(strip(rules, text)) for text in texts if rules]
        return [key for key in dict.fromkeys(keys) if key]

    def matches(self, offer: Offer) -> Iterator[tuple[str, OfferMatch]]:
        """Every part of ours that bears a number of the offer, with what its numbers and paths say of it."""
        keys = self.keys_of(offer.supplier, (one.printed for one in offer.numbers()))
        for code in sorted({code for key in keys for code in self.known.bearers.get(key, ())}):
            yield code, match_offer(offer, self.families[code], self.known)


def our_side(connection: Connection, day: date) -> OurSide:
    """Load our parts, statements, names of makers and number rules. `day`: whose newest sheets count."""
    return our_side_of(connection, families(equivalence_table(connection)), day)


def our_side_of(connection: Connection, every: Families, day: date, borne: "Borne | None" = None) -> OurSide:
    """The same where the table is loaded already; `borne`: where that is known too."""
    return OurSide(every, known_numbers(connection, every, day, borne), every.graph.makers, every)


@dataclass(frozen=True)
class Borne:
    """Which parts bear each number key, and which keys a spreadsheet may have made of others: fields of `Known`."""

    bearers: Mapping[str, frozenset[str]]
    spreadsheet: Mapping[str, tuple[str, ...]]


def known_numbers(connection: Connection, every: Families, day: date, borne: Borne | None = None) -> Known:
    """Which parts bear each number, under which names suppliers' own numbers stand, the rules about them, and what
    people have said yes to.

    `borne`: where it is known already.
    """
    names: dict[str, set[str]] = {one.supplier: {maker_key(one.supplier)} for one in kept_sheets(connection, day)}
    for terms in terms_on(connection, date.max).values():
        names.setdefault(terms.supplier, set()).update((maker_key(terms.supplier), maker_key(terms.name)))
    borne = borne or borne_by(every)
    return Known(
        borne.bearers,
        {supplier: frozenset(keys) for supplier, keys in names.items()},
        rules_by_supplier(connection),
        sheets_with_makers_numbers(connection, day),
        borne.spreadsheet,
        yes_to_rows(connection),
    )


def borne_by(every: Families) -> Borne:
    """What of `Known` follows from the table alone."""
    bearers = bearers_of(every.graph)
    keys = sorted(bearers)
    return Borne(bearers, {keys[at]: others for at, others in spreadsheet_made(keys).items()})


def offers_with_our_numbers(connection: Connection, side: OurSide, day: date) -> list[Offer]:
    """Offers of that day's newest sheets that bear a number of ours, as it stands or without what the supplier adds."""
    keys = {
        key
        for key, _, supplier in newest_number_keys(connection, day)
        if any(one in side.known.bearers for one in _bare(side.known.rules.get(supplier, NO_RULES), key))
    }
    return offers_by_keys(connection, keys, day)


def part_columns(side: OurSide, prices: Mapping[str, Decimal]) -> tuple[Columns, list[str]]:
    """Our parts as columns with their codes: the numbers of each family, makers, name with size, category and note.

    Numbers that must not serve are left out. `prices` are for one piece in the shop's currency.
    """
    numbers: defaultdict[str, set[str]] = defaultdict(set)
    makers: defaultdict[str, set[str]] = defaultdict(set)
    owners: defaultdict[str, dict[str, set[str]]] = defaultdict(dict)
    book = number_book(side.every.graph)
    for maker, key, code, forbidden in zip(book.maker_key, book.number_key, book.part, book.forbidden, strict=True):
        if not forbidden:
            numbers[code].add(key)
            owners[code].setdefault(key, set()).add(maker if maker != OURS else NOBODY)
            if maker and maker != OURS:
                makers[code].add(maker)
    parts = [side.every.graph.parts[code] for code in side.every]
    columns = Columns(
        numbers=[sorted(numbers[part.code]) for part in parts],
        makers=[sorted(makers[part.code]) for part in parts],
        description=[_description(part) for part in parts],
        price=[prices.get(part.code) for part in parts],
        size=[part.size for part in parts],
        owners=[{key: frozenset(names) for key, names in owners[part.code].items()} for part in parts],
    )
    return columns, [part.code for part in parts]


def part_prices(side: OurSide, offers: Iterable[Offer], shop: ShopPrices) -> dict[str, Decimal]:
    """What one piece of each part costs in the middle of its automatic offers; parts without a price are left out."""
    found: defaultdict[str, list[Decimal]] = defaultdict(list)
    for offer in offers:
        price = shop.of(offer)
        if price is not None:
            for code, match in side.matches(offer):
                if match.tier == "automatic":
                    found[code].append(price)
    return {code: median(some) for code, some in found.items()}


def _description(part: OurPart) -> str:
    return " ".join(text for text in (part.name, part.size, part.category, part.note) if text)


def _bare(rules: Iterable[NumberRule], key: str) -> Iterator[str]:
    """The key, and what it may be without an affix of the supplier; the printed number decides later."""
    keys = [key]
    for rule in rules:
        affix = number_key(rule.text)
        keys += [one.removeprefix(affix) if rule.kind == "prefix" else one.removesuffix(affix) for one in keys]
    return iter(keys)
