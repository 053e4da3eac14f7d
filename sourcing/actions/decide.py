"""Take one of the three ways out of an alarm: kept for ever, with who decided and who of the customer's side agreed.

Nothing is asked of the customer, nothing is sent, and no price or number changes on any paper: that takes a new
revision and her answer to it.
"""

from ..basics.alarm import Alarm, Decision, Way, WayOut
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..quoting.approvals import Given, check_may_answer, how_given, may_answer
from ..storage.after_quote import add_decision
from ..storage.jobs import job as stored_job
from .alarms import alarms_of, undecided
from .desk import Desk, Pen
from .evaluate import catalogue
from .job_now import job_now
from .order_changes import cancel_on


class Agreed(Value, frozen=True, kw_only=True):
    """Who said yes to what the way out asks of the customer, how, and the number called or the address."""

    who: str
    how: str
    contact: str = ""


class Decided(Value, frozen=True, kw_only=True):
    """What was kept, the way out as it stood then, what was cancelled, and what is to be done next, in sentences."""

    decision: Decision
    way: WayOut
    cancelled: str
    next_steps: tuple[str, ...]


def decide(desk: Desk, number: str, label: str, way: Way, words: str = "", agreed: Agreed | None = None) -> Decided:
    """Keep the way out taken for a line of a job. One that was decided before can be decided again until it is ordered.

    Refuses an unknown line, one that stands as approved and was never decided, a way that is not open, a yes from
    somebody not entitled, and a yes to a new price, which belongs on a new revision. A line on order is cancelled for a
    switch only where the customer said yes or need not be asked: until then the order stands.
    """
    with desk.writing("decide") as pen:
        alarm = _alarm(pen, number, label.strip().upper())
        chosen = next(one for one in alarm.ways if one.way == way)
        if chosen.why_not:
            raise refused("way-closed", job=number, label=alarm.label, way=way, found=chosen.why_not)
        decision = _with_yes(pen, alarm, chosen, _decision(pen, alarm, chosen, words), agreed)
        add_decision(pen.connection, decision)
        yes = f", {decision.agreed_by} said yes by {decision.agreed_how}" if decision.agreed_by else ""
        pen.note(number, f"line {alarm.label}: {way}{yes}{': ' if words else ''}{words}")
        cancelled = _cancel(pen, alarm, chosen, decision)
        return Decided(
            decision=decision,
            way=chosen,
            cancelled=cancelled,
            next_steps=(*_next(alarm, chosen, decision, _quote_command(pen, alarm, chosen)), *_again(alarm)),
        )


def _alarm(pen: Pen, number: str, label: str) -> Alarm:
    found = catalogue(pen.connection, pen.desk.at)
    for one in alarms_of(found, stored_job(pen.connection, number).number):
        if one.label == label:
            return one
    again = undecided(found, number, label)
    if again is not None:
        return again
    seen = job_now(pen.connection, number)
    known = [line.label for line in seen.parts] if seen else [label]
    if label not in known:
        raise refused("nothing-to-decide-on", job=number, label=label, known=", ".join(known) or "none yet")
    raise refused("no-alarm", job=number, label=label)


def _decision(pen: Pen, alarm: Alarm, way: WayOut, words: str) -> Decision:
    return Decision(
        job=alarm.job,
        revision=alarm.revision,
        label=alarm.label,
        way=way.way,
        at=pen.desk.at,
        who=pen.desk.who,
        words=words,
        held_price=way.unit_price,
        up_to_cost=way.goods,
        landed_cost=way.line_margin.cost if way.line_margin else None,
        supplier=way.supplier,
        supplier_number=way.supplier_number,
    )


def _with_yes(pen: Pen, alarm: Alarm, way: WayOut, kept: Decision, agreed: Agreed | None) -> Decision:
    """The decision with the customer's yes, where one was given: only then it covers a later day and another number."""
    if agreed is None:
        return kept
    if way.way == "ask":
        raise refused("new-price-on-paper", job=alarm.job, label=alarm.label)
    desk, how = pen.desk, how_given(agreed.how)
    given = Given(who=agreed.who, how=how, at=desk.at, taken_by=desk.who, contact=agreed.contact, words=kept.words)
    check_may_answer(given, may_answer(stored_job(pen.connection, alarm.job).customer), alarm.job)
    said = {"agreed_by": agreed.who, "agreed_how": how, "agreed_contact": agreed.contact}
    return changed(kept, latest=way.latest, number=way.number, **said)


def _cancel(pen: Pen, alarm: Alarm, way: WayOut, kept: Decision) -> str:
    """The order of which the line was cancelled for a switch; blank where nothing was."""
    if not _cancels(alarm, way, kept):
        return ""
    words = f"bought from {way.supplier_name} instead"
    cancel_on(pen, alarm.order, [alarm.order_line] if alarm.order_line is not None else [], words)
    return alarm.order


def _cancels(alarm: Alarm, way: WayOut, kept: Decision) -> bool:
    return way.way == "switch" and bool(alarm.order) and (not way.asks or bool(kept.agreed_by))


def _quote_command(pen: Pen, alarm: Alarm, way: WayOut) -> str:
    """How the new revision is written: the job's own day is in its way where the parts can't be here by it."""
    need_by = stored_job(pen.connection, alarm.job).need_by
    later = f" --need-by {way.latest}" if need_by and way.latest and way.latest > need_by else ""
    return f"'sourcing quote {alarm.job}{later}'"


def _next(alarm: Alarm, way: WayOut, kept: Decision, command: str) -> tuple[str, ...]:
    ask = f"Ask the customer: {way.asks}"
    if way.way == "ask":
        return (
            f"Write the new revision with {command}, then ask: {way.asks}",
            "Until the customer has said yes the line waits.",
        )
    if way.way == "hold":
        return _after_hold(alarm, way, kept, ask)
    if alarm.order and not _cancels(alarm, way, kept):
        again = f"decide it again with --agreed-by NAME --how HOW, and line {alarm.order_line} of {alarm.order}"
        return (ask, f"The order stands until the customer has said yes; then {again} is cancelled.")
    written = f"Write the new revision with {command}: it buys from {way.supplier_name} at the price approved."
    done = (f"Tell {_supplier_of(alarm)} that the line is cancelled.",) if alarm.order else ()
    return (*done, written, "Record the customer's answer to it, then order.")


def _again(alarm: Alarm) -> tuple[str, ...]:
    return () if alarm.order else (f"Until it is ordered, 'sourcing decide {alarm.job} {alarm.label}' changes it.",)


def _after_hold(alarm: Alarm, way: WayOut, kept: Decision, ask: str) -> tuple[str, ...]:
    if way.asks and not kept.agreed_by:
        return (ask, "The price is held; until the customer has said yes, the alarm stays.")
    stays = f"The price of {way.unit_price} each stays, up to a cost of {way.goods}; dearer than that is a new alarm."
    return (stays,) if alarm.order else (stays, f"Order with 'sourcing order {alarm.job}'.")


def _supplier_of(alarm: Alarm) -> str:
    return next(one.supplier_name for one in alarm.ways if one.way == "hold")
