"""The way out that holds for each line: a decision follows its work by title and part, as answers do, not by label."""

from collections.abc import Iterable, Mapping, Sequence

from sqlalchemy import Connection

from ..basics.alarm import Decision
from ..basics.job import Job
from ..basics.quote import Quote, QuoteLine
from ..quoting.carry_over import line_now
from ..storage.after_quote import decisions
from ..storage.quotes import quote


def decisions_now(connection: Connection, newest: Quote) -> dict[str, Decision]:
    """The last decision of each line of the newest revision, by its label there. One about work that is no longer on
    the quote, or that can't be told from other work on it, is left out: it covers nothing."""
    found: dict[str, Decision] = {}
    for one, old, line in _decided(connection, newest.job):
        now = line_now(newest, old, line)
        if now is not None:
            found[now.label] = one
    return found


def decisions_of_job(connection: Connection, job: Job) -> dict[str, Decision]:
    """The same by the labels of the job as it is written now, of which no revision may have been made yet."""
    asked = job.labelled()
    found: dict[str, Decision] = {}
    for one, old, line in _decided(connection, job.number):
        mine = [label for label, work in asked if (work.title, work.part) == (line.title, line.part)]
        theirs = [each for each in old.lines if (each.title, each.part) == (line.title, line.part)]
        if len(mine) != 1 or len(theirs) != 1:
            work_of = dict(asked)
            mine = [label for label in mine if label == line.label and work_of[label].found == line.found]
        found.update({label: one for label in mine})
    return found


def _decided(connection: Connection, number: str) -> Iterable[tuple[Decision, Quote, QuoteLine]]:
    """Every decision with the revision it was taken on and the line there, oldest first."""
    kept: Sequence[Decision] = decisions(connection, number)
    revisions: Mapping[int, Quote] = {
        revision: quote(connection, number, revision).quote for revision in {one.revision for one in kept}
    }
    for one in kept:
        line = revisions[one.revision].line(one.label)
        if line is not None:
            yield one, revisions[one.revision], line
