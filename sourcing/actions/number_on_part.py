"""What the equivalence table says of the number that stands on a part which came for a line of an order."""

from sqlalchemy import Connection

from ..basics.choice import Asks
from ..basics.equivalence import EquivalenceTable
from ..basics.job import JobLine
from ..basics.offer import Offer, SheetRow
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.order_now import LineNow
from ..basics.part_number import PartNumber
from ..matching.equivalences.graph import families
from ..matching.identity.asked_merge import merged
from ..matching.identity.verdict import Verdict, ban_on, verdict
from ..matching.offer_match import OfferMatch, match_offer
from ..ordering.number_came import Judged, NumberCame, is_ordered_number, number_said, what_came
from ..storage.equivalence import equivalence_table
from ..storage.jobs import job as stored_job
from ..storage.offers import offers_by_keys
from .desk import Desk, shop_now
from .equivalences import hanging_together
from .evaluate import Catalogue, judged_offers
from .led_to import ways_to_parts
from .near_now import near_of
from .needs import asks_of
from .our_side import known_numbers
from .settled import settled_rows

AS_ORDERED = NumberCame(came="as ordered", why="")


def number_on_part(
    connection: Connection, desk: Desk, order: PurchaseOrder, line: LineNow, typed: PartNumber
) -> tuple[str, NumberCame]:
    """The other number that came, blank where it is the one ordered, and what it counts as.

    A blank `typed.printed`: what the supplier last said he sends. Also the number ordered is looked at: somebody may
    have stated since that it must not serve.
    """
    number = number_said(line, typed.printed)
    asked_for = _line_of_job(connection, line.line)
    found = _catalogue(connection, desk, line.line, number, asked_for)
    code = line.line.part
    if code not in found.families:
        why = f"{code} is no longer in the table of parts"
        return number, what_came(line.line, number, Judged(matched="none", against=(why,))) if number else AS_ORDERED
    asks = asks_of(found, stored_job(connection, line.line.job), asked_for) if asked_for else Asks()
    if not number or (is_ordered_number(line.line, number) and not typed.maker):
        banned = _ban_since(found, order, line.line, asks)
        if not banned:
            return "", AS_ORDERED
        number = number or line.line.supplier_number
        return number, what_came(line.line, number, Judged(matched="none", banned=banned))
    return number, what_came(
        line.line, number, _judged(found, order, line, PartNumber(printed=number, maker=typed.maker), asks)
    )


def _line_of_job(connection: Connection, line: PurchaseOrderLine) -> JobLine | None:
    """The job's line as it is now; None where it is gone or asks for another part."""
    found = dict(stored_job(connection, line.job).labelled()).get(line.label)
    return found if found and found.part == line.part else None


def _catalogue(
    connection: Connection, desk: Desk, line: PurchaseOrderLine, number: str, asked_for: JobLine | None
) -> Catalogue:
    """As much of the table as hangs together with the part, the number and what the evidence names."""
    evidence = [one.number for one in asked_for.evidence if one.number] if asked_for else []
    numbers = [one for one in (line.part, number, *evidence) if one]
    table: EquivalenceTable = hanging_together(connection, *numbers) or equivalence_table(connection)
    every = families(table)
    return Catalogue(
        connection=connection,
        at=desk.at,
        shop=shop_now(connection, desk.at),
        families=every,
        known=known_numbers(connection, every, desk.at.date()),
        refused=settled_rows((), every.graph.makers, every),
        near=lambda family: near_of(connection, family, desk.at.date()),
    )


def _ban_since(found: Catalogue, order: PurchaseOrder, line: PurchaseOrderLine, asks: Asks) -> str:
    """A must-not that stands against the number ordered, in words; blank: none. The sheet says whose number it is."""
    rows = [
        row
        for row in _rows(found, order, PartNumber(printed=line.supplier_number))
        if (row.supplier_number, row.maker_number) == (line.supplier_number, line.maker_number)
    ]
    unknown = [PartNumber(printed=one) for one in (line.supplier_number, line.maker_number) if one]
    numbers = [number for row in rows for number in row.numbers()] or unknown
    family = found.family(line.part, asks.bench)
    return ban_on([family.makers.node(one) for one in numbers], family.forbidden)


def _rows(found: Catalogue, order: PurchaseOrder, number: PartNumber) -> list[Offer]:
    """The rows of the supplier's newest sheet that bear the number, of that maker where one is said."""
    makers = found.families.graph.makers
    rows = offers_by_keys(found.connection, {number.key}, found.at.date())
    mine = sorted((row for row in rows if row.supplier == order.supplier), key=lambda row: row.identity)
    return [
        row for row in mine if not number.maker or not row.maker or makers.key(row.maker) == makers.key(number.maker)
    ]


def _judged(found: Catalogue, order: PurchaseOrder, line: LineNow, number: PartNumber, asks: Asks) -> Judged:
    """By the rows of the supplier's sheet that bear the number, the worst of them; else by the number alone."""
    rows = {row.identity for row in _rows(found, order, number)}
    judged = [
        _as_judged(one.match, one.verdict)
        for one in judged_offers(found, line.line.part, asks, line.line.needed)
        if one.offer.identity in rows
    ]
    return min(judged, key=_how_good) if judged else _by_number_alone(found, order, line, number, asks)


def _how_good(one: Judged) -> tuple[bool, int]:
    return not one.banned and not one.vetoed and not one.against, ("none", "candidate", "automatic").index(one.matched)


def _by_number_alone(found: Catalogue, order: PurchaseOrder, line: LineNow, number: PartNumber, asks: Asks) -> Judged:
    here, every = found.family(line.line.part, asks.bench), found.families[line.line.part]
    offer = Offer(
        supplier=order.supplier,
        supplier_number=number.printed,
        currency=order.currency,
        source=SheetRow(sheet=0, file="", worksheet="", row=0, sheet_date=found.at.date()),
        maker=number.maker,
    )
    match = match_offer(offer, here, found.known)
    asked, _ = merged(("the job's line", asks.asked), ("our part", every.part.asked))
    against = match.reasons if match.tier == "candidate" else _other_parts(found, line.line.part, number)
    if match.tier == "none":
        against = against or _one_way(found, line.line.part, number)
    banned = ban_on([here.makers.node(number)], here.forbidden)
    return _as_judged(match, verdict(offer, against, asked, asks.overrides, banned, line.line.needed))


def _other_parts(found: Catalogue, code: str, number: PartNumber) -> tuple[str, ...]:
    """Which other parts of ours bear the number, in words."""
    others = sorted(found.known.bearers.get(number.key, frozenset()) - {code})
    return tuple(f"{number} is a number of {other}, not of {code}" for other in others)


def _one_way(found: Catalogue, code: str, number: PartNumber) -> tuple[str, ...]:
    """That statements lead from the number to our part and not back, as from one that was replaced; blank: none do."""
    graph, makers = found.families.graph, found.families.graph.makers
    ways = [one for one in ways_to_parts(graph, number.printed) if one.code == code]
    mine = [one for one in ways if not number.maker or makers.key(one.number.maker) == makers.key(number.maker)]
    return tuple(
        f"{'; '.join(map(str, one.path.links))}: that leads from {one.number} to {code} and not back, so "
        f"{number.printed} does not count as {code}"
        for one in mine
    )


def _as_judged(match: OfferMatch, found: Verdict) -> Judged:
    return Judged(
        matched=match.tier,
        against=() if found.accepted else found.objections,
        banned=found.banned,
        vetoed=match.vetoed,
        path=match.reasons[0] if match.tier == "automatic" and match.reasons else "",
        accepted=found.accepted.sentence() if found.accepted else "",
        warnings=(*match.warnings, *found.warnings),
    )
