"""The kinds of problem met when a deposit is taken and when a job is billed."""

from .problem_kind import ProblemKind, kind

BILL_KINDS: dict[str, ProblemKind] = {
    "billed-already": kind(
        "Billed already",
        "job {job} is billed already",
        "print the bill again with 'sourcing bill {job}'",
    ),
    "not-approved-for-bill": kind(
        "Line not approved",
        "line {label} of job {job} is {answer}, so it can't be billed",
        "record the customer's answer with 'sourcing answer {job}' first",
    ),
    "bill-damaged": kind(
        "Bill damaged",
        "the kept bill of job {job} is no longer what was given out",
        "take the database from a backup",
    ),
}
