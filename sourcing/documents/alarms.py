"""Alarms and the ways out of them as text for the shop. Nothing of this is for the customer but what she is asked."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from ..basics.alarm import Alarm, Decision, WayOut
from ..basics.margin import Margin
from .plain_text import document, table, wrapped

HEADER = ("way out", "customer pays", "more", "parts earn", "margin", "markup", "here by")
MOST = (8, 16, 24, 14, 9, 9, 10)
EXPLAINED = {
    "hold": "keep the price and this offer, the shop carries what it costs more",
    "ask": "ask the customer for the new price",
    "switch": "buy elsewhere at the price approved",
}


def alarms_text(alarms: Sequence[Alarm]) -> str:
    """Each alarm: what differs, the three ways with their figures, what each asks, what else to know."""
    if not alarms:
        return "Everything stands as it was approved.\n"
    return document(line for at, alarm in enumerate(alarms) for line in (*([""] if at else []), *_alarm(alarm)))


def decided_text(decision: Decision, cancelled: str, next_steps: Sequence[str]) -> str:
    """What was kept, and what is to be done next."""
    yes = f"; {decision.agreed_by} said yes by {decision.agreed_how}" if decision.agreed_by else ""
    lines = wrapped(f"Job {decision.job} line {decision.label}: {EXPLAINED[decision.way]}{yes}. Kept.")
    if cancelled:
        lines += wrapped(f"The line is cancelled on {cancelled}.")
    return document([*lines, *(line for words in next_steps for line in wrapped(words))])


def _alarm(alarm: Alarm) -> Iterator[str]:
    where = f", on {alarm.order} line {alarm.order_line}" if alarm.order else ", not ordered yet"
    yield from wrapped(f"Job {alarm.job} line {alarm.label}, {alarm.title}{where}")
    for one in alarm.differs:
        yield from wrapped(f"! {one.words}", 2)
    was = alarm.margin_as_approved
    yield from wrapped(f"Approved: {alarm.approved_total} in all with tax; parts were to earn {_earned(was)}.", 2)
    rows = [_row(way) for way in alarm.ways if not way.why_not]
    yield from (f"  {line}" for line in table([HEADER, *rows], MOST, frozenset((1, 2, 3, 4, 5))))
    for way in alarm.ways:
        yield from _way(way)
    for words in alarm.notes:
        yield from wrapped(f"- {words}", 2)


def _row(way: WayOut) -> tuple[str, ...]:
    percent = "" if way.extra_percent is None else f" ({way.extra_percent} %)"
    more = "nothing" if way.extra is None or not way.extra.amount else f"{way.extra}{percent}"
    found = way.margin
    return (
        way.way,
        str(way.total),
        more,
        str(found.earned) if found else "not known",
        _percent(found.margin_percent if found else None),
        _percent(found.markup_percent if found else None),
        str(way.latest) if way.latest else "not known",
    )


def _way(way: WayOut) -> Iterator[str]:
    what = f"{way.way}: {EXPLAINED[way.way]}"
    if way.why_not:
        yield from wrapped(f"{what}. Not open: {way.why_not}", 2)
        return
    number = f" {way.supplier_number}" if way.supplier_number else ""
    yield from wrapped(f"{what} ({way.supplier_name}{number})", 2)
    yield from wrapped(f"ask the customer: {way.asks}" if way.asks else "nothing to ask the customer", 4)
    for words in (way.tells, *way.notes):
        if words:
            yield from wrapped(words, 4)


def _earned(found: Margin) -> str:
    return f"{found.earned}, margin {_percent(found.margin_percent)}, markup {_percent(found.markup_percent)}"


def _percent(value: Decimal | None) -> str:
    return "not known" if value is None else f"{value} %"
