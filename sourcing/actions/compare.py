"""Compare one part under any of its numbers: who has it, what it costs at the door, when it comes, and why."""

from collections.abc import Sequence

from rapidfuzz import process
from sqlalchemy import Connection

from ..basics.asked import Asked
from ..basics.choice import Asks, Comparison, Priced, RankWishes
from ..basics.equivalence import OurPart
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..basics.value import Value
from ..matching.equivalences.must_nots import must_nots, perhaps
from ..matching.identity.asked_merge import merged
from ..storage.jobs import job as stored_job
from ..storage.offers import offers_by_keys
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read, evaluate
from .kit_notes import kit_notes
from .needs import asks_of, line_with_part
from .our_side import OurSide
from .part_lookups import note_lookup
from .ranked import ranked_into
from .terms_ahead import terms_ahead


class ForLine(Value, frozen=True, kw_only=True):
    """The job's line a comparison is for: its asked attributes, its accepted offers and its evidence then count."""

    job: str
    label: str


class ToCompare(Value, frozen=True, kw_only=True):
    """What is compared: the offers of the part that bears the number, in a quantity, for a line or for nobody.

    Without `look_alikes` rows whose number is only near the part's are left out: they are looked for among all numbers
    of the newest sheets, which takes seconds among millions.
    """

    number: str
    quantity: int | None = None
    wishes: RankWishes = RankWishes()
    line: ForLine | None = None
    look_alikes: bool = True


def compare(
    desk: Desk, number: str, quantity: int | None, wishes: RankWishes | None = None, line: ForLine | None = None
) -> Comparison:
    """The comparison of the part that bears the number. Refuses a number no part of ours is known under.

    `quantity` None: the line's, else 1. With `line`, refuses a number that is not the line's part. The look-up is
    counted, unless somebody else is writing.
    """
    with desk.store.reading() as connection:
        wanted = ToCompare(number=number, quantity=quantity, wishes=wishes or RankWishes(), line=line)
        done = compared(connection, catalogue_to_read(desk, connection), wanted)
    note_lookup(desk, done.our_part)
    return done


def compared(connection: Connection, found: Catalogue, wanted: ToCompare) -> Comparison:
    """The comparison from a catalogue loaded already; the look-up is not counted. Refuses what `compare` does."""
    code = part_under(found, wanted.number)
    pieces, asks = line_asks(connection, found, code, wanted.number, wanted.line)
    pieces = wanted.quantity if wanted.quantity is not None else pieces
    seen = evaluate(found, code, pieces, asks=asks, look_alikes=wanted.look_alikes)
    part = found.families[code].part
    bare = Comparison(
        asked=wanted.number,
        our_part=code,
        name=part.name,
        quantity=pieces,
        notes=(*kit_notes(found, code, asks.bench), *_terms_ahead(connection, found, seen.priced)),
        asks=asked_words(part, asks.asked),
        warnings=(*one_way(found, code, wanted.number), *asks.doubts),
    )
    return ranked_into(bare, seen, wanted.wishes, found.at, found.door)


def _terms_ahead(connection: Connection, found: Catalogue, priced: Sequence[Priced]) -> tuple[str, ...]:
    """By supplier, where his terms are others on the day an order of now counts."""
    suppliers = sorted({one.offer.supplier for one in priced})
    return tuple(words for supplier in suppliers for words in terms_ahead(connection, found, supplier))


def asked_words(part: OurPart, asked: Asked) -> tuple[str, ...]:
    """What is asked beside the number, in words, with the part's size; blank where nothing but the number is asked."""
    words = merged(("the job's line", asked), ("our part", part.asked))[0].words()
    return (*((part.size,) if part.size else ()), *words) if words else ()


def line_asks(
    connection: Connection, found: Catalogue, code: str, number: str, line: ForLine | None
) -> tuple[int, Asks]:
    """(quantity, what is asked) of the line; one piece and nothing beside the part's own where no line is named."""
    if line is None:
        return 1, Asks()
    job = stored_job(connection, line.job)
    wanted = line_with_part(job, line.label)
    if wanted.part != code:
        raise refused("other-part-than-line", found=number, ours=code, part=wanted.part, job=line.job, label=line.label)
    return wanted.quantity, asks_of(found, job, wanted)


def part_under(found: Catalogue, number: str) -> str:
    """The code of our part that bears the number under any maker, or under a supplier's own number on his sheet."""
    key = number_key(number)
    codes = found.known.bearers.get(key, frozenset()) or _by_supplier_number(found, key)
    if len(codes) > 1:
        raise refused("number-of-several", found=number, codes=", ".join(sorted(codes)))
    if not codes:
        graph = found.families.graph
        bans = must_nots(graph, perhaps(graph, PartNumber(printed=number)))
        if bans:
            raise refused("number-must-not", found=number, ban="; ".join(str(one.statement) for one in bans))
        raise refused("number-not-known", found=number, suggestions=_near(found, key))
    return next(iter(codes))


def one_way(found: Catalogue, code: str, number: str) -> tuple[str, ...]:
    """Where the asked number is tied to our part only as a substitute: the other direction is nobody's word."""
    key = number_key(number)
    paths = [path for node, path in found.families[code].paths.items() if node[1] == key]
    if not paths or not all(any(link.relation == "substitute" for link in path.links) for path in paths):
        return ()
    link = next(link for link in paths[0].links if link.relation == "substitute")
    return (f"only one way is stated, {link}: whether what follows serves for {number} is not known",)


def _by_supplier_number(found: Catalogue, key: str) -> frozenset[str]:
    offers = offers_by_keys(found.connection, {key}, found.at.date()) if key else []
    side = OurSide(found.families, found.known, found.families.graph.makers, found.families)
    return frozenset(code for offer in offers for code, match in side.matches(offer) if match.tier == "automatic")


def _near(found: Catalogue, key: str) -> tuple[str, ...]:
    printed = {node[1]: str(number) for family in found.families.values() for node, number in family.printed.items()}
    return tuple(printed[hit[0]] for hit in process.extract(key, list(printed), limit=3, score_cutoff=75))
