"""Compare one part under any of its numbers: who has it, what it costs at the door, when it comes, and why."""

from collections.abc import Sequence

from sqlalchemy import Connection

from ..basics.asked import Asked
from ..basics.choice import Asks, Comparison, Priced, RankWishes
from ..basics.equivalence import OurPart
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..basics.value import Value
from ..matching.identity.asked_merge import merged
from ..storage.jobs import job as stored_job
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read, evaluate
from .kit_notes import kit_notes
from .led_to import part_asked
from .needs import asks_of, line_with_part
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
    """The comparison of the part that bears the number, or that it leads to. Refuses a number that does neither.

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
    code, led = part_asked(found, wanted.number)
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
        warnings=(*((led.warning(),) if led else one_way(found, code, wanted.number)), *asks.doubts),
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


def one_way(found: Catalogue, code: str, number: str) -> tuple[str, ...]:
    """Where the asked number is tied to our part only as a substitute: the other direction is nobody's word."""
    key = number_key(number)
    paths = [path for node, path in found.families[code].paths.items() if node[1] == key]
    if not paths or not all(any(link.relation == "substitute" for link in path.links) for path in paths):
        return ()
    link = next(link for link in paths[0].links if link.relation == "substitute")
    return (f"only one way is stated, {link}: whether what follows serves for {number} is not known",)
