"""The kinds of problem met when something is not as approved, a way out is taken, or a date is promised."""

from .problem_kind import ProblemKind, kind

ALARM_KINDS: dict[str, ProblemKind] = {
    "no-alarm": kind(
        "No alarm",
        "line {label} of job {job} stands as it was approved, or was decided and is on order, "
        "so there is nothing to decide",
        "see what is open with 'sourcing alarms {job}'",
    ),
    "way-closed": kind(
        "Way not open",
        "line {label} of job {job} can't be settled by '{way}': {found}",
        "take another way; 'sourcing alarms {job}' shows all three",
    ),
    "nothing-to-decide-on": kind(
        "No such line to decide on",
        "job {job} has no line '{label}' with a part that the customer has approved",
        "name one of: {known}",
    ),
    "switch-not-quoted": kind(
        "To be bought elsewhere",
        "line {label} of job {job} is to be bought from {supplier} under {found}, as {who} decided on {on}, "
        "and the newest quote does not say so yet",
        "write the new revision with 'sourcing quote {job}', or take it back with 'sourcing decide {job} {label} hold'",
    ),
    "new-price-on-paper": kind(
        "A new price is answered on paper",
        "a yes to a new price of line {label} of job {job} is recorded on a new revision, not here",
        "decide it without --agreed-by, write the revision with 'sourcing quote {job}' and record the answer to it",
        at_counter="leave 'Who said yes' at 'Nobody yet', write the revision under 'page:quote' and record the "
        "answer to it",
    ),
    "promise-backwards": kind(
        "Days the wrong way round",
        "the promise is from {first} to {last}",
        "write the earlier day first",
    ),
    "promise-in-the-past": kind(
        "Promised for the past",
        "the promised day {found} lies before {today}",
        "check the day; a promise is kept as it was said and never changed",
    ),
    "promise-of-nobody": kind(
        "Promise of nobody",
        "nobody is named who promised {found} for job {job}",
        "say who with --said-by",
        at_counter="fill in 'Who said it'",
    ),
    "promise-not-on-order": kind(
        "Not on order for the job",
        "job {job} has nothing on order as {found}",
        "name one of: {known}",
    ),
    "promise-for-billed": kind(
        "Billed already",
        "job {job} is billed, so nothing more is promised for it",
        "check the job's number",
    ),
}
