"""What jobs earned: one job in every figure, or all of them added up by job, supplier, category, month or line."""

from collections.abc import Sequence

from ..basics.collecting import without_collecting
from ..basics.margin import By, JobMargin, Margins, WaitingBack
from ..basics.problem import refused
from ..margins.groups import counted, grouped, low_lines, named_leaks
from ..margins.job_lines import job_lines
from ..margins.job_margin import job_margin
from ..margins.line import LineFigures
from ..storage.jobs import job as stored_job
from ..storage.margin_rows import Jobs
from ..storage.shop import settings_on
from .desk import Desk
from .margin_loading import Loaded, load
from .margin_months import Months
from .waiting_back import waiting_back


def margins(desk: Desk, number: str | None = None) -> tuple[JobMargin, ...]:
    """Every figure of one job, or of every job with a quote, lowest last margin first.

    Refuses a job that there is not, one without a quote, and a shop that was never set up.
    """
    loaded = _load(desk, number)
    made = (job_margin(one, loaded.book, loaded.rules[one.quote.job]) for one in loaded.jobs)
    return tuple(sorted(made, key=_last_margin))


def margins_by(desk: Desk, by: By = "job", within: Months | None = None) -> Margins:
    """Every job's lines added up, those under the floor by themselves, leaks by name, what waits to go back.

    `within`: only lines whose yes was given in those months, with what was bought without a yes for jobs answered then;
    only those jobs are loaded, so that the time it takes grows with the months and not with all there ever was.
    """
    with without_collecting():
        loaded = _load(desk, within.answered if within else None)
        with desk.store.reading() as connection:
            back = waiting_back(connection, loaded.purchases, desk.at.date())
        lines = every_line(loaded)
        return added_up(loaded, [one for one in lines if within is None or within.has(one.month)], by, back)


def every_line(loaded: Loaded) -> list[LineFigures]:
    """The lines of all jobs with their figures."""
    return [line for one in loaded.jobs for line in job_lines(one, loaded.book)]


def added_up(loaded: Loaded, lines: Sequence[LineFigures], by: By, back: Sequence[WaitingBack] = ()) -> Margins:
    """The lines as the owner's page has them."""
    floors, currency = loaded.floors(), loaded.currency
    ready = counted(lines, floors)
    found = grouped(ready, by, _titles(loaded, lines, by), currency)
    left_out = ", ".join(loaded.left_out)
    return Margins(
        by=by,
        currency=currency,
        jobs=len({line.job for line in lines}),
        low=low_lines(ready, floors, currency),
        groups=found.groups,
        months=found.months,
        whole=found.whole,
        leaks=named_leaks(ready, currency),
        back=tuple(back),
        notes=(f"quoted in another currency than {currency} and not counted: {left_out}",) if left_out else (),
    )


def _titles(loaded: Loaded, lines: Sequence[LineFigures], by: By) -> dict[str, str]:
    if by == "job":
        return {one.quote.job: one.quote.customer.name for one in loaded.jobs}
    if by == "line":
        return {f"{line.job} line {line.label}": line.title for line in lines}
    return dict(loaded.suppliers) if by == "supplier" else {}


def _load(desk: Desk, which: Jobs) -> Loaded:
    with desk.store.reading() as connection:
        settings_on(connection, desk.at.date())
        jobs = stored_job(connection, which).number if isinstance(which, str) else which
        loaded = load(connection, jobs, desk.at.date())
    if isinstance(which, str) and not loaded.jobs:
        raise refused("no-quote", job=which)
    return loaded


def _last_margin(one: JobMargin) -> tuple[float, str]:
    if not one.parts or one.parts[-1][1].margin_percent is None:
        return float("inf"), one.job
    return float(one.parts[-1][1].margin_percent), one.job  # only to sort by; nothing is computed from it
