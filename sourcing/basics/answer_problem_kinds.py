"""The kinds of problem met when answers are recorded, taken back or carried over, and revisions are compared."""

from .problem_kind import ProblemKind, kind

ANSWER_KINDS: dict[str, ProblemKind] = {
    "answered-otherwise": kind(
        "Answered otherwise before",
        "line {label} of job {job} stands as {found}",
        "ask which holds; if the customer has changed the answer, record it again with --instead",
        at_counter="ask which holds; if the customer has changed the answer, tick 'I asked: the customer thinks "
        "otherwise now' and write it down again",
    ),
    "older-revision": kind(
        "Answer to an older revision",
        "line {label} of revision {revision} of job {job} can't be answered any more: {found}",
        "ask the customer about revision {newest}; when you have given it out, note that with 'sourcing given {job}'",
    ),
    "which-revision": kind(
        "Which revision was answered",
        "revision {newest} of job {job} was not given to the customer, revision {given} was",
        "if the customer has it by now, note that first with 'sourcing given {job}'; else say with --revision which "
        "one was answered",
        at_counter="if the customer has it by now, note that first under 'page:given'; else choose the revision "
        "the customer answers",
    ),
    "freight-for-nothing": kind(
        "Freight for nothing",
        "line {freight} is freight for the parts on {found}, and all of these are declined",
        "record a no to line {freight} together with theirs",
    ),
    "freight-alone": kind(
        "Freight alone",
        "line {freight} is freight for the parts on {found}, and none of these is approved",
        "record the yes to the parts together with it",
    ),
    "condition-without-yes": kind(
        "Condition without a yes",
        "job {job}: the condition '{found}' belongs to a yes, and no line is approved with it",
        "name the lines approved with --yes, or write what was said with --words",
        at_counter="choose Yes for the lines approved, or write what was said under 'The customer's words'",
    ),
    "how-not-said": kind(
        "How it was said is missing",
        "nothing says how the answer came",
        "choose by telephone, in person, by text message or by e-mail",
    ),
    "old-part-not-told": kind(
        "Old part not told",
        "line {label} of job {job} can't be ordered yet: the supplier asks a deposit for the old part now, and the "
        "paper that was approved does not say that it goes back",
        "make a new revision with 'sourcing quote {job}' and ask the customer",
    ),
    "freight-not-approved": kind(
        "Freight not approved",
        "line {label} of job {job} can't be ordered yet: its freight on line {freight} is {answer}",
        "record the customer's answer to line {freight}, or make a new revision with 'sourcing quote {job}' and ask",
    ),
    "billed-no-answer": kind(
        "Billed already",
        "job {job} is billed, so its answers stand as they are",
        "take in a new job for further work",
    ),
    "nothing-to-take-back": kind(
        "No yes to take back",
        "line {label} of job {job} is {answer}",
        "see all answers with 'sourcing answers {job}'",
    ),
    "taken-back-too-early": kind(
        "Taken back before it was given",
        "the yes to line {label} of job {job} is of {given}, and it would be taken back on {at}",
        "check the day and time, then do it again",
    ),
    "given-before-made": kind(
        "Given before it was made",
        "revision {revision} of job {job} was made on {made}, and it would be given out on {at}",
        "check the day and time, then do it again",
    ),
}
