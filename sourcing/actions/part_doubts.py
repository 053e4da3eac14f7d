"""What is doubtful about the parts of a quote: whether they are known to be the right ones, and what to ask of each.

These are for everybody who gives the quote or orders from it. What a quote warns of beside them (margins, floors,
freight, prices, other plans) is the owner's alone and made in quote_warnings; nothing of it comes in here.
"""

from collections.abc import Iterator, Sequence

from ..basics.identity import Identity
from ..basics.job import Job
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value
from ..storage.jobs import job as stored_job
from ..storage.quotes import newest_quote, quote
from .as_quoted import asks_now, judged_as_quoted
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read
from .needs import identity_of

DOUBTED = ("not settled", "contradicted", "sellers' lists only")
"""How sure the part is where that is to be told whatever else is said."""


class PartDoubt(Value, frozen=True, kw_only=True):
    """A line of a job's quote, and what is doubtful about its part, in sentences. Of money nothing stands in them.

    `in_job`: the job still has the line with a part, so that its evidence can be looked at.
    """

    job: str
    label: str
    title: str
    words: tuple[str, ...]
    in_job: bool


def part_doubts(desk: Desk, numbers: Sequence[str], revision: int | None = None) -> tuple[PartDoubt, ...]:
    """The doubts as of now about the parts of these jobs' newest quotes, line by line; lines without any are left out.

    `revision` names another of a single job. A job without a quote has none. Refuses an unknown job or revision.
    """
    with desk.store.reading() as connection:
        found = catalogue_to_read(desk, connection)
        return tuple(one for number in dict.fromkeys(numbers) for one in _of_job(found, number, revision))


def _of_job(found: Catalogue, number: str, revision: int | None) -> Iterator[PartDoubt]:
    job = stored_job(found.connection, number)
    shown, asked = _quoted(found, number, revision), dict(job.labelled())
    for line in shown.lines if shown else ():
        words = tuple(dict.fromkeys(_of_line(found, job, line))) if line.part else ()
        if words:
            in_job = line.label in asked and bool(asked[line.label].part)
            yield PartDoubt(job=number, label=line.label, title=line.title, words=words, in_job=in_job)


def _quoted(found: Catalogue, number: str, revision: int | None) -> Quote | None:
    if revision is not None:
        return quote(found.connection, number, revision).quote
    last = newest_quote(found.connection, number)
    return last.quote if last else None


def _of_line(found: Catalogue, job: Job, line: QuoteLine) -> Iterator[str]:
    asked = dict(job.labelled()).get(line.label)
    if asked is None or asked.part != line.part:
        yield "the job asks for another part by now than this quote"
    else:
        yield from _of_identity(identity_of(found, job.machine, asked), line.part)
    if line.part not in found.families:
        yield "our table no longer has the part"
        return
    judged = judged_as_quoted(found, line, asks_now(found, job, line))
    if judged is not None:
        yield from (*judged.match.warnings, *judged.verdict.warnings)


def _of_identity(judged: Identity, part: str) -> Iterator[str]:
    """How sure it is, what speaks against the part asked for, and what the evidence says in two ways."""
    if judged.certainty in DOUBTED:
        yield judged.words
    against = judged.against_ordering(part)
    if against and not any(against in words for words in judged.conflicts):
        yield against
    yield from judged.conflicts
