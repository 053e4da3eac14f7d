"""What of an alarm each role may see: the bench only what the customer is asked; the desk costs; the owner margins too.

Values of the page's own are made, so that nothing a role may not see is handed to its page.
"""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from ..basics.alarm import Alarm, Way, WayOut
from ..basics.margin import Margin
from ..basics.money import Money
from ..basics.value import Value
from .alarms import EXPLAINED

FOR_THE_BENCH = {
    "price": "the price",
    "number": "the part number",
    "date": "the day",
    "gone": "the part can't be had as quoted any more",
}


class Question(Value, frozen=True, kw_only=True):
    """What the customer may be asked about a line, without any cost: `differs` says only what is not as approved.

    `total`: what she would pay for all approved lines with tax; `extra`: what of it is new to her."""

    asks: str
    total: Money | None
    extra: Money | None


class ForTheBench(Value, frozen=True, kw_only=True):
    """An alarm as the bench sees it."""

    label: str
    title: str
    differs: tuple[str, ...]
    questions: tuple[Question, ...]


class WayShown(Value, frozen=True, kw_only=True):
    """A way out as the desk sees it; the margin is None for everybody but the owner."""

    way: Way
    explained: str
    why_not: str
    asks: str
    tells: str
    total: Money | None
    extra: Money | None
    extra_percent: Decimal | None
    latest: date | None
    supplier: str
    number: str
    goods: Money | None
    margin: Margin | None
    notes: tuple[str, ...]


class AlarmShown(Value, frozen=True, kw_only=True):
    """An alarm as the desk sees it; `approved` is what parts were to earn, None for everybody but the owner."""

    label: str
    title: str
    where: str
    differs: tuple[str, ...]
    approved_total: Money
    approved: Margin | None
    ways: tuple[WayShown, ...]
    notes: tuple[str, ...]


def for_the_bench(alarms: Sequence[Alarm]) -> tuple[ForTheBench, ...]:
    """The alarms with what is asked of the customer, and no reason that could hold a cost."""
    return tuple(
        ForTheBench(
            label=one.label,
            title=one.title,
            differs=tuple(FOR_THE_BENCH[differs.what] for differs in one.differs),
            questions=_questions(one.ways),
        )
        for one in alarms
    )


def for_the_desk(alarms: Sequence[Alarm], is_owner: bool) -> tuple[AlarmShown, ...]:
    """The alarms with their ways out; what parts earn only where the owner looks. Notes of the ways are shown as they
    are: whoever hands the alarms in has taken those of margins and bands off for others (`job_alarms`)."""
    return tuple(
        AlarmShown(
            label=one.label,
            title=one.title,
            where=f"on {one.order}, line {one.order_line}" if one.order else "not ordered yet",
            differs=tuple(differs.words for differs in one.differs),
            approved_total=one.approved_total,
            approved=one.margin_as_approved if is_owner else None,
            ways=tuple(_way(way, is_owner) for way in one.ways),
            notes=one.notes,
        )
        for one in alarms
    )


def _questions(ways: Sequence[WayOut]) -> tuple[Question, ...]:
    """Two ways may ask the same: it is said once."""
    asked = [way for way in ways if way.asks and not way.why_not]
    return tuple(dict.fromkeys(Question(asks=way.asks, total=way.total, extra=way.extra) for way in asked))


def _way(seen: WayOut, is_owner: bool) -> WayShown:
    return WayShown(
        way=seen.way,
        explained=EXPLAINED[seen.way],
        why_not=seen.why_not,
        asks=seen.asks,
        tells=seen.tells,
        total=seen.total,
        extra=seen.extra,
        extra_percent=seen.extra_percent,
        latest=seen.latest,
        supplier=seen.supplier_name,
        number=seen.supplier_number or seen.number,
        goods=seen.goods,
        margin=seen.margin if is_owner else None,
        notes=seen.notes,
    )
