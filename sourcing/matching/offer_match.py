"""Whether an offer is one of our parts: by itself, for a person to judge, or not at all; with the reasons."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from ..basics.equivalence import GOOD_STANDING, OurPart, Path, Statement, only_words
from ..basics.judgement import RowYes
from ..basics.number_rule import NumberRule
from ..basics.offer import Offer
from ..basics.part_number import OURS, PartNumber, maker_key, number_key
from ..basics.value import Value, changed
from .articles import named
from .conditions import contradiction
from .dimensions.size_check import check_size
from .equivalences.family import Family
from .equivalences.number_book import words_of
from .held_back import DISTINCTIVE
from .likeness.said import said
from .makers_alike import command_for
from .numbers.affixes import strip
from .offer_words import NOTHING_SAID, said_of_part, size_of, words_say, yes_to
from .opposites import replaced
from .plain_words import plain_words
from .sets_of import set_said

Tier = Literal["automatic", "candidate", "none"]


class OfferMatch(Value, frozen=True, kw_only=True):
    """The tier, the number it went by with the path to it, and why. `vetoed`: size, must-not or words speak against.

    `on_word_of`: the yes to this very row without which its words would keep it from matching by itself.
    """

    tier: Tier
    number: PartNumber | None = None
    path: Path | None = None
    reasons: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    vetoed: bool = False
    on_word_of: RowYes | None = None


NO_MATCH = OfferMatch(tier="none")


@dataclass(frozen=True)
class Known:
    """What is known beside the family: which parts bear a number key, the suppliers, their confirmed number rules.

    `suppliers`: by supplier the keys of the names under which his own numbers may stand in the table. `rules`: by
    supplier. `two_columns`: sheets with a column for makers' numbers; where it is blank, the other is the supplier's.
    `spreadsheet`: number keys that a spreadsheet may have made of other known ones, with those. `judged`: what a person
    has said yes to, by supplier and the key of his number, oldest first.
    """

    bearers: Mapping[str, frozenset[str]]
    suppliers: Mapping[str, frozenset[str]] = field(default_factory=dict)
    rules: Mapping[str, tuple[NumberRule, ...]] = field(default_factory=dict)
    two_columns: frozenset[int] = frozenset()
    spreadsheet: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    judged: Mapping[tuple[str, str], tuple[RowYes, ...]] = field(default_factory=dict)

    def others(self, supplier: str) -> frozenset[str]:
        """The names of all other suppliers: their own numbers say nothing on this one's sheet."""
        return frozenset(key for keys in self.suppliers.values() for key in keys) - self.names(supplier)

    def names(self, supplier: str) -> frozenset[str]:
        """The keys of the names under which the supplier's own numbers may stand in the table."""
        return self.suppliers.get(supplier, frozenset()) | {maker_key(supplier)}

    def numbers(self, offer: Offer) -> tuple[PartNumber, ...]:
        """The numbers it is sold under and whose each is."""
        if offer.source.sheet in self.two_columns and not offer.maker_number:
            return (PartNumber(printed=offer.supplier_number, maker=offer.supplier),)
        return offer.numbers()

    def bare(self, offer: Offer) -> Offer:
        """The offer with its supplier's number as the maker prints it, where a confirmed rule says what was added."""
        rules = self.rules.get(offer.supplier)
        return changed(offer, supplier_number=strip(rules, offer.supplier_number)) if rules else offer


def match_offer(offer: Offer, family: Family, known: Known) -> OfferMatch:
    """Judge one offer against one family.

    Automatic is only: the same number of the same maker (or a number without a maker that only this part bears), by
    a path of good standing, with nothing against it. Everything else is for a person, or no match.
    """
    yeses = known.judged.get((offer.supplier, number_key(offer.supplier_number)), ())
    found = _match(offer, family, known, yeses)
    bare = known.bare(offer)
    return found if found.tier == "automatic" or bare == offer else _better(found, _match(bare, family, known, yeses))


def _better(found: OfferMatch, bare: OfferMatch) -> OfferMatch:
    """By the number as printed, or without what the supplier adds; what speaks against either counts."""
    return bare if found.tier == "none" or (bare.tier == "automatic" and not found.vetoed) else found


def _match(offer: Offer, family: Family, known: Known, yeses: Sequence[RowYes]) -> OfferMatch:
    hits = list(_hits(offer, family, known))
    if not hits:
        return _only_forbidden(offer, family, known)
    sure = [hit for hit in hits if hit[2] is None]
    number, path, doubt = sure[0] if sure else hits[0]
    against = _against(offer, family, known, (number, path))
    words = words_say(offer, family.part, path)
    yes = yes_to(yeses, offer, family, words)
    told = (yes.sentence((*words.against, *words.doubts)),) if yes else ()
    words = NOTHING_SAID if yes else words
    against += words.against
    doubts = tuple(reason for reason in (doubt, *words.doubts, _weak(path), _conditions_doubt(path)) if reason)
    if against or doubts:
        reasons = (*against, *doubts)
        return OfferMatch(tier="candidate", number=number, path=path, reasons=reasons, vetoed=bool(against))
    conditions = tuple(f"holds {only_words(condition)}" for condition in path.conditions)
    warnings = (*told, *conditions, *_words_warning(offer, family.part))
    how = (words_of(number, path.links),)
    return OfferMatch(tier="automatic", number=number, path=path, reasons=how, warnings=warnings, on_word_of=yes)


def _only_forbidden(offer: Offer, family: Family, known: Known) -> OfferMatch:
    """No path leads to its numbers, but one of them must not serve for the part: held back with why, else no match."""
    others = known.others(offer.supplier)
    for number in known.numbers(offer):
        bans = tuple(
            _ban_words(number, ban) for ban in _bans_on(number, family) if maker_key(ban.right.maker) not in others
        )
        if bans and number.maker != OURS:
            return OfferMatch(tier="candidate", number=number, reasons=bans, vetoed=True)
    return NO_MATCH


def _hits(offer: Offer, family: Family, known: Known) -> Iterator[tuple[PartNumber, Path, str | None]]:
    """(number, path, doubt): every way a number of the offer reaches the family; doubt None where there is none.

    A number that is one supplier's own says nothing on another's sheet, and nobody's sheet speaks of our own codes.
    """
    others = known.others(offer.supplier) | {maker_key(OURS)}
    for number in known.numbers(offer):
        path = None if number.maker == OURS else family.paths.get(family.makers.node(number))
        if path is not None:
            yield number, path, _spreadsheet_doubt(number, known)
            continue
        same_key = [node for node in family.paths if node[1] == number.key and node[0] not in others]
        if not same_key:
            continue
        best = min(same_key, key=lambda node: (len(family.paths[node].links), node))
        doubt = _maker_doubt(number, family, best, known.bearers) or _spreadsheet_doubt(number, known)
        by_chance = len(number.key) < DISTINCTIVE and best[0] not in known.names(offer.supplier)
        doubt = doubt or _words_doubt(offer, family.part, by_chance)
        yield number, family.paths[best], doubt


def _spreadsheet_doubt(number: PartNumber, known: Known) -> str | None:
    others = known.spreadsheet.get(number.key)
    return f"a spreadsheet may have made {number.printed} of {' or '.join(others)}" if others else None


def _maker_doubt(
    number: PartNumber, family: Family, best: tuple[str, str], bearers: Mapping[str, frozenset[str]]
) -> str | None:
    if number.maker:
        ours = family.printed[best]
        command = command_for(number.maker, ours.maker)
        same = f"; if the two are one maker: {command}" if command else ""
        return f"the number is that of {ours}, but the row names {number.maker}{same}"
    if len(bearers.get(number.key, frozenset())) > 1:
        return "the row names no maker, and more than one of our parts bears this number"
    return None


def _words_doubt(offer: Offer, part: OurPart, by_chance: bool) -> str | None:
    """A row that names no maker may be anything that bears the number: most of its words must be about the part.

    `by_chance`: other things may well bear the number; then a row without words asks, unless its number is the size.
    """
    ours, its = plain_words(part.name), plain_words(offer.description)
    if check_size(size_of(part), offer.description or offer.supplier_number).verdict == "same size":
        return None
    if not its and by_chance:
        return "the row names no maker and says nothing else, and so short a number is borne by many things"
    if not ours or not its or 2 * len(ours & its) > min(len(ours), len(its)):
        return None
    shared = ours & its or named(part.name)[0] & named(offer.description)[0]
    about = "is only in part about" if shared else "is hardly about"
    return f"the row names no maker, and '{offer.description}' {about} '{part.name}'"


def _words_warning(offer: Offer, part: OurPart) -> tuple[str, ...]:
    """Where the maker is named the number decides, in any language; that the words differ is said all the same.

    So is that nobody knows how many of a set the offer holds.
    """
    told = [set_said(offer, part).warning]
    if words := replaced(offer.description, part.name):
        told.append(f"its words differ from ours in one: {words}; look whether it is the same thing")
    elif _no_word_shared(offer, part):
        words = f"its words '{offer.description}' share none with ours, '{part.name}'"
        told.append(f"{words}: look whether it is the same thing")
    return tuple(filter(None, told))


def _no_word_shared(offer: Offer, part: OurPart) -> bool:
    ours, its = said_of_part(part), said((), (), offer.description)
    if not ours.words or not its.words or ours.words & its.words or ours.codes & its.codes:
        return False
    if plain_words(offer.description) & plain_words(part.name):
        return False
    if named(offer.description)[0] & named(part.name)[0]:  # the same article in another language
        return False
    return check_size(size_of(part), offer.description).verdict != "same size"


def _size_against(offer: Offer, part: OurPart, number: PartNumber) -> str:
    """What the size says against it: ours as entered or named; else as the number itself says it of such an article."""
    ours = size_of(part)
    if ours:
        size = check_size(ours, offer.supplier_number, offer.maker_number, offer.description)
    else:
        size = check_size(f"{part.name} {number.printed}", offer.description)
    return size.words if size.vetoes else ""


def _against(offer: Offer, family: Family, known: Known, by: tuple[PartNumber, Path]) -> tuple[str, ...]:
    """What speaks against the match, in words: a must-not, a size that differs, a number tied to another part."""
    numbers = known.numbers(offer)
    reasons = [_ban_words(number, ban) for number in numbers for ban in _bans_on(number, family)]
    if words := _size_against(offer, family.part, by[0]):
        reasons.append(words)
    reasons += filter(None, (set_said(offer, family.part).against,))
    for number in numbers:
        others = known.bearers.get(number.key, frozenset()) - {family.part.code}
        if others and family.makers.node(number) not in family.paths:
            reasons.append(f"its number {number} is tied to {', '.join(sorted(others))}")
    return tuple(reasons)


def _bans_on(number: PartNumber, family: Family) -> Iterator[Statement]:
    """What forbids the number; where its maker or that of the forbidden number is not known, it may be that one."""
    maker, key = family.makers.node(number)
    for (other, forbidden), ban in family.forbidden.items():
        if forbidden == key and (other == maker or not other or not maker):
            yield ban


def _ban_words(number: PartNumber, ban: Statement) -> str:
    """The statement may speak of another number, through which alone this one is reached."""
    if ban.right.key == number.key:
        return str(ban)
    return f"{number} is reached only through {ban.right}, and {ban}"


def _conditions_doubt(path: Path) -> str:
    return contradiction([link.condition for link in path.links if link.condition])


def _weak(path: Path) -> str | None:
    if path.standing in GOOD_STANDING:
        return None
    weakest = next(link for link in path.links if link.counts_as == path.standing)
    return f"the weakest statement is only '{path.standing}': {weakest}"
