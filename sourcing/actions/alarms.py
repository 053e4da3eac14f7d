"""Alarms: approved lines whose yes no longer covers what is known, each with its three ways out.

Before a line is ordered the offer it was quoted on is looked at as it stands today; after that what the supplier has
confirmed since, the days said, and the number that came.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from ..basics.alarm import Alarm, Differs
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.quote import QuoteLine
from ..basics.value import changed
from ..landed_cost.arrival import arrival
from ..margins.figures import margin
from ..ordering.cost_now import LineCost
from ..ordering.promised import AT_THE_EARLIEST
from ..quoting.alarm import Known, differences, same_number
from ..quoting.alarm_notes import Beside, alarm_notes
from ..quoting.hold import Covered
from ..quoting.pricing import UnitPrice, unit_price
from ..quoting.ways_out import Buying, Yes, margin_as_approved, waiting_or_switching, ways_out
from ..storage.jobs import jobs
from .as_quoted import asks_now, price_now, quoted_offer
from .bench_day import machine_ready
from .buying_now import Costs, Wanted, costs, others, still_wanted
from .covered_day import covered_day
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read
from .job_now import JobNow, OnOrder, job_now


@dataclass(frozen=True)
class _Line:
    """One approved line with pieces on an order, or with pieces to be ordered."""

    line: QuoteLine
    on_order: OnOrder | None = None
    wanted: Wanted | None = None


@dataclass(frozen=True)
class _Now:
    """A job with what its parts cost as things stand, worked out once for all of its lines."""

    found: Catalogue
    job: JobNow
    wanted: Mapping[str, Wanted]
    items: Mapping[str, OrderItem]
    missing: tuple[str, ...]
    costs: Costs
    by_line: Mapping[tuple[str, int], LineCost]


def alarms(desk: Desk, job: str | None = None) -> tuple[Alarm, ...]:
    """Every alarm of a job, or of all jobs that are not billed, oldest job first. Refuses an unknown job."""
    with desk.store.reading() as connection:
        found = catalogue_to_read(desk, connection)
        numbers = [job] if job is not None else [one.number for one in jobs(connection)]
        return tuple(one for number in numbers for one in alarms_of(found, number))


def alarms_of(found: Catalogue, number: str) -> tuple[Alarm, ...]:
    """The alarms of one job on an open connection; none where it has no quote yet, or is billed."""
    seen = job_now(found.connection, number)
    if seen is None or not seen.parts:
        return ()
    here = _now(found, seen)
    return tuple(one for line in _lines(here) if (one := _alarm(here, line)) is not None)


def ordered_otherwise(found: Catalogue, number: str) -> tuple[str, ...]:
    """The labels of a job's lines on order that have an alarm. Without its ways out, which take long to work out."""
    seen = job_now(found.connection, number)
    if seen is None:
        return ()
    here = _Now(found, seen, {}, {}, (), *costs(found, seen, {}))
    return tuple(
        line.label
        for line in seen.parts
        for one in (_Line(line, on_order=on_order) for on_order in seen.on_order.get(line.label, ()))
        if _differs(here, one, _known(here, one)[0])
    )


def undecided(found: Catalogue, number: str, label: str) -> Alarm | None:
    """A decided line's alarm as it would be had nothing been decided of it, so that it can be decided again; one that
    stands as approved all the same has no difference in it. None where nothing was decided, or all of it is on order.
    """
    seen = job_now(found.connection, number)
    if seen is None or label not in seen.decisions:
        return None
    here = _now(found, replace(seen, decisions={at: one for at, one in seen.decisions.items() if at != label}))
    mine = [one for one in _lines(here) if one.line.label == label and one.wanted is not None]
    return _alarm(here, mine[0], anyway=True) if mine else None


def _now(found: Catalogue, seen: JobNow) -> _Now:
    wanted = still_wanted(found, seen)
    items = {label: one.item for label, one in wanted.items() if one.item is not None}
    missing = [f"line {label} can't be had as quoted" for label, one in wanted.items() if one.item is None]
    together, by_line = costs(found, seen, items)
    return _Now(found, seen, wanted, items, tuple(missing), together, by_line)


def _lines(here: _Now) -> Iterator[_Line]:
    for line in here.job.parts:
        yield from (_Line(line, on_order=one) for one in here.job.on_order.get(line.label, ()))
        if line.label in here.wanted:
            yield _Line(line, wanted=here.wanted[line.label])


def _alarm(here: _Now, one: _Line, anyway: bool = False) -> Alarm | None:
    quote, label = here.job.standing.quote, one.line.label
    known, price = _known(here, one)
    covered, differs = _covered_day(here, label), _differs(here, one, known)
    if not differs and not anyway:
        return None
    yes = Yes(quote=quote, labels=tuple(line.label for line in here.job.approved), line=one.line, covered=covered)
    stays = _stays(here, one, known, price)
    ways = ways_out(yes, stays, _other(here, one), margin)
    notes = alarm_notes(quote, differs, _beside(here, one, yes.approved_total))
    hint = waiting_or_switching(ways[0], ways[2])
    return Alarm(
        job=quote.job,
        revision=quote.revision,
        label=label,
        title=one.line.title,
        order=one.on_order.order.order.number if one.on_order else "",
        differs=differs,
        approved_total=yes.approved_total,
        margin_as_approved=margin_as_approved(yes, margin),
        ways=ways,
        notes=(*((hint,) if hint else ()), *notes),
        order_line=one.on_order.line.line.line if one.on_order else None,
    )


def _differs(here: _Now, one: _Line, known: Known) -> tuple[Differs, ...]:
    label, standing = one.line.label, here.job.standing
    decision, covered = here.job.decisions.get(label), _covered_day(here, label)
    differs = differences(standing.quote, one.line, covered, known, decision, standing.holding[label].amount)
    if one.on_order and one.on_order.is_complete:
        return tuple(each for each in differs if each.what == "number")
    return differs


def _covered_day(here: _Now, label: str) -> Covered | None:
    quote = here.job.standing.quote
    return covered_day(here.found, quote.job, here.job.standing.approval_of[label])


def _beside(here: _Now, one: _Line, approved: Money) -> Beside:
    days = [said.latest for said in one.on_order.days] if one.on_order else []
    return Beside(
        approved_total=approved,
        today=here.found.at.date(),
        deposit=here.job.deposit,
        days=tuple(day for at, day in enumerate(days) if at == 0 or day != days[at - 1]),
        decision=here.job.decisions.get(one.line.label),
    )


def _known(here: _Now, one: _Line) -> tuple[Known, UnitPrice | None]:
    if one.on_order is not None:
        return _known_ordered(here, one.line, one.on_order)
    assert one.wanted is not None  # a line is one or the other
    item = one.wanted.item
    if item is None:
        return Known(gone=one.wanted.missing), None
    unit_cost, price = price_now(here.found, item, one.line.category)
    latest = arrival(item, here.found.door(item.offer.supplier), here.found.at).latest
    return Known(unit_cost=unit_cost, each=price.each, number=str(item.offer.numbers()[0]), latest=latest), price


def _known_ordered(here: _Now, line: QuoteLine, on_order: OnOrder) -> tuple[Known, UnitPrice]:
    placed, order = on_order.line.line, on_order.order.order
    unit_cost = here.by_line[order.number, placed.line].unit_cost
    price = unit_price(unit_cost, _list_price(here, line), here.found.shop.settings, line.category)
    known = Known(
        unit_cost=unit_cost,
        each=price.each,
        number=_another_number(on_order),
        latest=on_order.days[-1].latest if on_order.days else None,
        came=on_order.is_complete,
        ordered=True,
    )
    return known, price


def _another_number(on_order: OnOrder) -> str:
    """The number it came under, or will by the supplier's word; blank where it is the one ordered."""
    placed = on_order.line.line
    mine = (placed.supplier_number, placed.maker_number)
    came = [line for receipt in on_order.receipts for line in receipt.lines if line.line == placed.line]
    numbers = [on_order.line.number, *(line.number for line in came if line.came == "same part")]
    return next((number for number in reversed(numbers) if number and not same_number(number, mine)), "")


def _list_price(here: _Now, line: QuoteLine) -> Money | None:
    """The list price on the newest sheet, where the offer still stands there in the shop's currency."""
    offer, _ = quoted_offer(here.found, line, asks_now(here.found, here.job.job, line))
    currency = here.found.shop.settings.currency
    if offer is None or offer.list_price is None or offer.currency != currency:
        return None
    return Money(amount=offer.list_price / offer.price_basis, currency=currency)


def _stays(here: _Now, one: _Line, known: Known, price: UnitPrice | None) -> Buying:
    behind = one.line.behind
    supplier = one.on_order.order.order.supplier if one.on_order else behind.supplier if behind else ""
    number = one.on_order.line.line.supplier_number if one.on_order else behind.supplier_number if behind else ""
    return Buying(
        costs=here.costs.by_label,
        missing=(*here.missing, *here.costs.missing),
        freight=here.costs.freight,
        supplier=supplier,
        supplier_name=here.found.supplier_name(supplier),
        supplier_number=number,
        number=known.number or one.line.number,
        latest=known.latest,
        ready=machine_ready(here.found, here.job, here.items, one.line.label, known.latest),
        unit_cost=known.unit_cost,
        each=price.each if price else None,
        price_rule=price.rule if price else "",
        why_not=f"it can't be had there any more: {known.gone}" if known.gone else "",
        notes=_earliest(one.on_order),
    )


def _earliest(on_order: OnOrder | None) -> tuple[str, ...]:
    """A day said as the earliest is no last day."""
    if on_order is None or not on_order.days or not on_order.days[-1].words.startswith(AT_THE_EARLIEST):
        return ()
    return (f"{on_order.days[-1].earliest} {AT_THE_EARLIEST}",)


def _other(here: _Now, one: _Line) -> Buying:
    """The best of the other offers: here in time first, then cheapest for the whole job."""
    if one.on_order and one.on_order.came:
        return Buying(why_not=f"{one.on_order.came} of it came already")
    behind, bought = one.line.behind, one.on_order
    mine: tuple[str, str] = (behind.supplier, behind.supplier_number) if behind else ("", "")
    if bought is not None:
        mine = (bought.order.order.supplier, bought.line.line.supplier_number)
    pieces = bought.line.line.needed if bought else here.job.left(one.line)
    found = [
        _bought_as(here, one, changed(priced.landed.items[0].item, need=one.line.label))
        for priced in others(here.found, here.job, one.line, pieces, mine)
    ]
    covered = _covered_day(here, one.line.label)
    able = [each for each in found if not each.why_not]
    if not able:
        return found[0] if found else Buying(why_not="nobody else has it in good standing today")
    return min(able, key=lambda each: _order_of(each, covered.day if covered else None))


def _order_of(one: Buying, by: date | None) -> tuple[bool, int, str, str]:
    late = by is not None and (one.latest is None or one.latest > by)
    return late, sum(each.minor() for each in one.costs.values()), one.supplier, one.supplier_number


def _bought_as(here: _Now, one: _Line, item: OrderItem) -> Buying:
    together, _ = costs(here.found, here.job, {**here.items, one.line.label: item}, one.on_order)
    unit_cost, price = price_now(here.found, item, one.line.category)
    open_ones = [words for words in here.missing if not words.startswith(f"line {one.line.label} ")]
    offer = item.offer
    latest = arrival(item, here.found.door(offer.supplier), here.found.at).latest
    return Buying(
        costs=together.by_label,
        missing=tuple(open_ones),
        freight=together.freight,
        supplier=offer.supplier,
        supplier_name=here.found.supplier_name(offer.supplier),
        supplier_number=offer.supplier_number,
        number=str(offer.numbers()[0]),
        latest=latest,
        ready=machine_ready(here.found, here.job, here.items, one.line.label, latest),
        unit_cost=unit_cost,
        each=price.each,
        price_rule=price.rule,
        why_not="; ".join(together.missing),
    )
