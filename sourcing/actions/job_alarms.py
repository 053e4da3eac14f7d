"""The alarms of one job for a page: with what was decided before, and who of the customer's side may say yes."""

from ..basics.alarm import Alarm, Decision, WayOut
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..ordering.promised import AT_THE_EARLIEST
from ..quoting.approvals import may_answer
from ..storage.jobs import job as stored_job
from .alarms import alarms_of, undecided
from .desk import Desk
from .evaluate import catalogue_to_read
from .job_now import job_now


class JobAlarms(Value, frozen=True, kw_only=True):
    """`decided`: the last decision of each line, by label; also of lines that stand as approved by it."""

    alarms: tuple[Alarm, ...]
    decided: tuple[Decision, ...]


class ToDecide(Value, frozen=True, kw_only=True):
    """The alarm that is decided, and who of the customer's side may say yes."""

    alarm: Alarm
    may_answer: tuple[str, ...]


def job_alarms(desk: Desk, number: str, is_owner: bool) -> JobAlarms:
    """What is not as approved on a job now; margins and the words about them for the owner alone. Refuses an unknown
    job."""
    with desk.store.reading() as connection:
        stored_job(connection, number)
        seen = job_now(connection, number)
        return JobAlarms(
            alarms=tuple(_for(is_owner, one) for one in alarms_of(catalogue_to_read(desk, connection), number)),
            decided=tuple(one for _, one in sorted(seen.decisions.items())) if seen else (),
        )


def alarm_to_decide(desk: Desk, number: str, label: str, is_owner: bool) -> ToDecide:
    """The alarm of a line, or that of one decided before and not ordered, as if nothing had been decided; the one that
    `decide` would take. Refuses a line that stands as approved."""
    with desk.store.reading() as connection:
        customer = stored_job(connection, number).customer
        found = catalogue_to_read(desk, connection)
        mine = next((one for one in alarms_of(found, number) if one.label == label), None)
        alarm = mine or undecided(found, number, label)
        if alarm is None:
            raise refused("no-alarm", job=number, label=label)
        return ToDecide(alarm=_for(is_owner, alarm), may_answer=may_answer(customer))


def _for(is_owner: bool, alarm: Alarm) -> Alarm:
    return alarm if is_owner else changed(alarm, ways=tuple(_bare(way) for way in alarm.ways))


def _bare(way: WayOut) -> WayOut:
    """Notes of a way tell of margins and bands, but for a day that is only the earliest: every other stays away."""
    plain = tuple(words for words in way.notes if words.endswith(AT_THE_EARLIEST))
    return changed(way, margin=None, line_margin=None, notes=plain)
