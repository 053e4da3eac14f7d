"""A part looked up at the counter: its offers compared, how the number leads to it, and which open jobs need it.

For the bench there is the same without anything the shop pays: no cost, no order by cost, no sentence with an amount.
"""

from collections.abc import Iterator
from datetime import date

from sqlalchemy import Connection

from ..basics.choice import Comparison
from ..basics.equivalence import OurPart, Path, Standing
from ..basics.family_view import Member
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import Refused
from ..basics.value import Value, changed
from ..landed_cost.arrival import order_arrival
from ..landed_cost.quantity import pieces_to_order
from ..matching.dimensions.reading import read_size
from ..matching.dimensions.size_check import check_size
from ..storage.look_up import are_more_offers, open_jobs_with_part
from .compare import ForLine, ToCompare, asked_words, compared, line_asks, one_way
from .desk import Desk
from .equivalences import family_of
from .evaluate import Catalogue, catalogue, judged_offers
from .known_table import known_table
from .led_to import Led, part_asked
from .part_lookups import note_lookup
from .settled import keys_of_offer
from .sorted_offers import Judged, why_not


class Needed(Value, frozen=True, kw_only=True):
    """A line of an open job that asks for the part."""

    job: str
    label: str
    title: str
    customer: str
    pieces: int


class AskedWay(Value, frozen=True, kw_only=True):
    """How the number asked for is tied to our part: the number with its maker, and the statements, link by link.

    `one_way`: it is none of the part's numbers, it only leads to it: the part came after it, or may serve for it.
    """

    number: str
    links: tuple[str, ...]
    standing: Standing
    one_way: bool = False


class AboutPart(Value, frozen=True, kw_only=True):
    """A part of ours and what is known of it beside offers. `ways` is empty where our own code was asked for; so it is
    where the number stands in no statement and was found on a sheet, beside a number of the part: then `by_sheet`.
    `family`: every number of it, none where the table ties too much together to show.
    """

    part: OurPart
    asked: str
    ways: tuple[AskedWay, ...]
    by_sheet: bool
    family: tuple[Member, ...]
    needed: tuple[Needed, ...]


FEW = 60_000
"""Among so many offers on the newest sheets look-alikes are always looked for: it takes a tenth of a second."""


class FoundPart(Value, frozen=True, kw_only=True):
    """A part with its offers compared. `looked_alike`: rows whose number only looks like one of its numbers were looked
    for. `sizes` says of each ranked offer, in their order, what its size is against
    ours, in numbers; blank where nothing can be compared.
    """

    about: AboutPart
    comparison: Comparison
    sizes: tuple[str, ...]
    looked_alike: bool


class BenchOffer(Value, frozen=True, kw_only=True):
    """An offer as the bench may see it. `stock` None: not stated. `why_not`: why it is not what is asked or can't be
    had as it stands; blank where nothing speaks against it. `links`: the statements that lead to its number.
    """

    supplier_name: str
    number: str
    description: str
    links: tuple[str, ...]
    standing: Standing | None
    size: str
    stock: int | None
    lead_time: str
    earliest: date | None
    latest: date | None
    in_time: bool | None
    warnings: tuple[str, ...] = ()
    why_not: tuple[str, ...] = ()
    is_held: bool = False


class BenchPart(Value, frozen=True, kw_only=True):
    """A part as the bench may see it. `offers` can be had, the soonest first; `not_so` have something in the way."""

    about: AboutPart
    quantity: int
    asks: tuple[str, ...]
    warnings: tuple[str, ...]
    offers: tuple[BenchOffer, ...]
    not_so: tuple[BenchOffer, ...]


def find_part(desk: Desk, wanted: ToCompare) -> FoundPart:
    """The part that bears the number, with all its offers. The look-up is counted. Refuses what `compare` does.

    Look-alikes are looked for where they are wanted, and where there are few offers.
    """
    with desk.store.reading() as connection:
        found = catalogue(connection, desk.at, known_table(desk.store, connection))
        alike = wanted.look_alikes or _are_few(connection, desk.at.date())
        comparison = compared(connection, found, changed(wanted, look_alikes=alike))
        part = found.families[comparison.our_part].part
        needed = tuple(_needed(connection, part.code))
        _, led = part_asked(found, wanted.number)
    note_lookup(desk, part.code)
    return FoundPart(
        about=_about(desk, part, wanted.number, needed, led),
        comparison=comparison,
        sizes=tuple(size_words(part, one.priced.offer) for one in comparison.ranked),
        looked_alike=alike,
    )


def comparison_again(desk: Desk, wanted: ToCompare) -> Comparison:
    """The comparison alone, for a drawing or a file beside the page: the look-up is not counted a second time."""
    with desk.store.reading() as connection:
        alike = wanted.look_alikes or _are_few(connection, desk.at.date())
        found = catalogue(connection, desk.at, known_table(desk.store, connection))
        return compared(connection, found, changed(wanted, look_alikes=alike))


def _are_few(connection: Connection, day: date) -> bool:
    return not are_more_offers(connection, FEW, day)


def find_for_bench(
    desk: Desk, number: str, quantity: int | None = None, need_by: date | None = None, line: ForLine | None = None
) -> BenchPart:
    """The part that bears the number, without anything the shop pays. Refuses as `compare` does."""
    with desk.store.reading() as connection:
        found = catalogue(connection, desk.at, known_table(desk.store, connection))
        code, led = part_asked(found, number)
        pieces, asks = line_asks(connection, found, code, number, line)
        pieces = quantity if quantity is not None else pieces
        part = found.families[code].part
        offers = [
            _for_bench(found, one, part, need_by)
            for one in judged_offers(found, code, asks, pieces)
            if not _is_refused(found, one, code)
        ]
        needed = tuple(_needed(connection, code))
        warnings = (*((led.warning(),) if led else one_way(found, code, number)), *asks.doubts)
        asked = asked_words(part, asks.asked)
    note_lookup(desk, code)
    offers.sort(key=lambda one: (one.latest or date.max, one.supplier_name, one.number))
    return BenchPart(
        about=_about(desk, part, number, needed, led),
        quantity=pieces,
        asks=asked,
        warnings=warnings,
        offers=tuple(one for one in offers if not one.why_not),
        not_so=tuple(one for one in offers if one.why_not),
    )


def size_words(part: OurPart, offer: Offer) -> str:
    """What the offer's size is against ours, in numbers; blank where they can't be compared."""
    ours = part.size or (part.name if read_size(part.name) else "")
    check = check_size(ours, offer.supplier_number, offer.maker_number, offer.description)
    if not check.words or check.words.startswith(check.verdict):
        return check.words
    return f"{check.verdict}: {check.words}"


def _needed(connection: Connection, code: str) -> Iterator[Needed]:
    for job in open_jobs_with_part(connection, code):
        for label, line in job.labelled():
            if line.part == code:
                who = job.customer.name
                yield Needed(job=job.number, label=label, title=line.title, customer=who, pieces=line.quantity)


def _about(desk: Desk, part: OurPart, asked: str, needed: tuple[Needed, ...], led: Led | None) -> AboutPart:
    family, key = _family(desk, part.code), number_key(asked)
    borne = [one for one in family if one.number.key == key]
    return AboutPart(
        part=part,
        asked=asked,
        ways=(
            *(_way(one.number, one.path) for one in borne if one.path.links),
            *((_way(led.number, led.path, one_way=True),) if led else ()),
        ),
        by_sheet=not borne and led is None and key != number_key(part.code),
        family=family,
        needed=needed,
    )


def _way(number: PartNumber, path: Path, one_way: bool = False) -> AskedWay:
    links = tuple(map(str, path.links))
    return AskedWay(number=str(number), links=links, standing=path.standing, one_way=one_way)


def _family(desk: Desk, code: str) -> tuple[Member, ...]:
    try:
        families = family_of(desk, code).families
    except Refused:
        return ()
    return next((one.members for one in families if one.part and one.part.code == code), ())


def _is_refused(found: Catalogue, one: Judged, code: str) -> bool:
    """Whether a person has said of a row that would ask that it is not the part."""
    asks = one.match.tier == "candidate" and not one.verdict.stands
    return asks and found.refused.settled(keys_of_offer(one.offer, found.families.graph.makers), code)


def _for_bench(found: Catalogue, one: Judged, part: OurPart, need_by: date | None) -> BenchOffer:
    offer = one.offer
    against = one.verdict.objections if not one.verdict.stands else ()
    why = why_not(found, offer)
    told, first, last = "", None, None
    if not why and not against:
        item = OrderItem(
            need="", offer=offer, needed=one.verdict.needed, ordered=pieces_to_order(offer, one.verdict.needed)
        )
        arrival = order_arrival([item], found.door(offer.supplier), found.at)
        told, first, last = arrival.told, arrival.earliest, arrival.latest
    return BenchOffer(
        supplier_name=found.supplier_name(offer.supplier),
        number=offer.shown_number,
        description=offer.description,
        links=tuple(str(link) for link in one.match.path.links) if one.match.path else (),
        standing=one.match.path.standing if one.match.path else None,
        size=size_words(part, offer),
        stock=offer.stock,
        lead_time=offer.lead_time.text if offer.lead_time else "",
        earliest=first,
        latest=last,
        in_time=None if need_by is None or last is None else last <= need_by,
        warnings=(*((told,) if told else ()), *one.verdict.warnings, *one.match.warnings),
        why_not=(*against, *((why,) if why else ())),
        is_held=one.match.vetoed,
    )
