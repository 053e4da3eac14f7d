"""The kinds of problem met when margins are looked at over many jobs."""

from .problem_kind import ProblemKind, kind

MARGIN_KINDS: dict[str, ProblemKind] = {
    "no-margin-to-draw": kind(
        "Nothing of the job is approved",
        "job {job} has no approved line and nothing was bought for it, so there is no margin to draw",
        "record the customer's answers with 'sourcing answer {job}' first",
    ),
    "nothing-earned-yet": kind(
        "No margin yet",
        "no job has an approved line yet",
        "quote a job and record the customer's answers first",
    ),
    "one-job-only": kind(
        "One job is needed",
        "{found} can be made of one job only",
        "name the job, as in 'sourcing margins 2026-0001 {found} FILE'",
        at_counter="look at the margin of one job",
    ),
    "many-jobs-only": kind(
        "All jobs are needed",
        "{found} adds up many jobs, and job {job} is one",
        "leave the job's number out",
    ),
    "bands-contradict": kind(
        "Markup bands contradict",
        "the markup bands can't hold: {found}",
        "write them as in shop.toml, in rising order of from_cost",
        at_counter="write a line for each band, from this cost = cost times, in rising order of cost",
    ),
    "not-a-month": kind("Not a month", "'{found}' is no month", "write year and month, such as 2026-01"),
    "months-turned": kind("Months the wrong way round", "{since} is after {until}", "write the earlier month first"),
    "no-bands": kind(
        "No other bands given",
        "no markup bands are given to try",
        "name a file with markup_bands, or write '--band 0=2.00 --band 50=1.60', one for each cost from which a "
        "multiplier holds",
        at_counter="write a line for each band, the first from 0: from this cost = cost times",
    ),
}
