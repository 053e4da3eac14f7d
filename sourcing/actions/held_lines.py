"""Which lines of jobs wait for a decision of ours before anything else: not as approved, or not to be ordered as yet.

The same rules hold a line back where it is ordered and tell its alarm; here they say what is truly next for the job.
What was worked out is remembered for the hour, for goods ordered after a cut-off come later than those ordered before.
"""

from collections.abc import Mapping

from sqlalchemy import Connection

from ..basics.job_state import HeldFor, JobFacts
from ..basics.problem import Refused
from ..basics.value import changed
from ..storage.deeds import Since
from .alarms import ordered_otherwise
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read
from .kept_until import KeptUntil
from .order_lines import held_back

Held = Mapping[str, HeldFor]
"""By label, what its line waits for."""

FOR: Mapping[str, HeldFor] = {
    "identity-contradicted": "which part",
    "freight-not-approved": "its freight",
    "switch-not-quoted": "a new quote",
    "old-part-not-told": "its old part",
}
"""By the rule that holds a line back: what is to be done. Of all others: it is not as approved."""

OF_ONE_JOB = frozenset(
    (
        *("quote", "answer", "take answer back", "give quote", "make link", "revoke link", "decide", "order"),
        *("take in job", "change job", "add evidence", "take evidence back", "accept anyway", "take acceptance back"),
        *("add photo", "take back", "put photo back", "take deposit", "give back deposit", "write bill"),
    )
)
"""Deeds that change nothing for any job but their own. All others (a sheet, a supplier's word) may change every job."""

OF_NO_JOB = frozenset(("add person", "let in again", "let go", "change role", "set password"))


def held_lines(found: Catalogue, facts: JobFacts) -> dict[str, HeldFor]:
    """The lines of a job that wait for a decision, as things stand at the moment."""
    held: dict[str, HeldFor] = {}
    if said_since(facts):
        held |= dict.fromkeys(ordered_otherwise(found, facts.job), "not as approved")
    if may_order(facts):
        back = held_back(found, facts.job)
        held |= {label: FOR.get(one.code, "not as approved") for label, one in back.items()}
    return held


def _looked_at(found: Catalogue, facts: JobFacts) -> Held:
    """What can't be worked out (a rate is missing, say) holds nothing here: the page where it is ordered tells why."""
    try:
        return held_lines(found, facts)
    except Refused:
        return {}


def with_held(desk: Desk, connection: Connection, some: Mapping[str, JobFacts]) -> dict[str, JobFacts]:
    """The facts with what each line waits for. Jobs of which no line can be held are not looked at."""
    asked = {number: facts for number, facts in some.items() if may_order(facts) or said_since(facts)}
    if not asked:
        return dict(some)
    with _KEPT.held(connection, desk.store, dict, (desk.at.date(), desk.at.hour)) as kept:
        if missing := [number for number in asked if number not in kept]:
            found = catalogue_to_read(desk, connection)
            kept |= {number: _looked_at(found, asked[number]) for number in missing}
        return {**some, **{number: _held(facts, kept[number]) for number, facts in asked.items()}}


def may_order(facts: JobFacts) -> bool:
    """Whether a line is approved whose part stands on no order, so that it may be held back from being ordered."""
    return _is_open(facts) and any(line.needed and not line.order and line.answer == "approved" for line in facts.lines)


def said_since(facts: JobFacts) -> bool:
    """Whether something was said of goods on order, or came, that may be otherwise than approved."""
    return _is_open(facts) and any(line.order and line.said_since for line in facts.lines)


def _is_open(facts: JobFacts) -> bool:
    return facts.quoted_at is not None and facts.billed_at is None


def _held(facts: JobFacts, held: Held) -> JobFacts:
    return changed(facts, lines=tuple(changed(line, held=held.get(line.label, "")) for line in facts.lines))


def _after(kept: dict[str, Held], _: Connection, since: Since) -> dict[str, Held] | None:
    if not since.done <= OF_ONE_JOB | OF_NO_JOB:
        return None
    for subject in since.subjects:
        kept.pop(subject, None)
    return kept


_KEPT: KeptUntil[dict[str, Held]] = KeptUntil(_after)
