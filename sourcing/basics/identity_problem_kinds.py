"""The kinds of problem met in finding out which part a need is, and in taking an offer in spite of what is asked."""

from .problem_kind import ProblemKind, kind

IDENTITY_KINDS: dict[str, ProblemKind] = {
    "evidence-says-nothing": kind(
        "Evidence that says nothing",
        "a line of evidence ('{found}') names no number, no size and no words",
        "write what it says",
    ),
    "evidence-number-damaged": kind(
        "Number changed by a spreadsheet",
        "the evidence names a damaged number, '{found}': {why}",
        "write it as it is printed",
    ),
    "evidence-backwards": kind(
        "Serial numbers backwards",
        "the list is for serial numbers from {found} to {to}, which runs backwards",
        "read the list again",
    ),
    "no-such-job-line": kind(
        "No such line of the job",
        "job {job} has no line '{found}'",
        "use one of: {known}",
    ),
    "line-without-part": kind(
        "Line without a part",
        "line {label} of job {job} asks for no part",
        "name a line that asks for one",
    ),
    "other-part-than-line": kind(
        "Another part than the line's",
        "{found} is our part {ours}, but line {label} of job {job} asks for {part}",
        "compare {part}, or change the job",
    ),
    "no-such-evidence": kind(
        "No such evidence",
        "line {label} of job {job} has no line of evidence {found} that still counts",
        "look at 'sourcing identity {job} {label}'",
    ),
    "identity-contradicted": kind(
        "Which part it is, is contradicted",
        "line {label} of job {job} is not ordered: {found}",
        "look at 'sourcing identity {job} {label}', and take back with why what is wrong:"
        " 'sourcing evidence {job} {label} --take-back N --says ...'",
    ),
    "words-missing": kind(
        "Words missing",
        "no reason is given for {found}",
        "say why in words; they are kept with your name",
    ),
    "offer-not-there": kind(
        "Offer not there",
        "no offer {found} of {supplier} bears a number of {part} on his newest sheet",
        "look at 'sourcing compare {part} --job {job} --line {label}'",
    ),
    "nothing-against-it": kind(
        "Nothing against the offer",
        "nothing speaks against {found} of {supplier} for line {label} of job {job}",
        "leave it: it is ranked as it is",
    ),
    "must-not-stands": kind(
        "A must-not stands",
        "{found} of {supplier} can't be accepted: {ban}",
        "if that statement is wrong, withdraw it first with your reason",
    ),
    "not-accepted-before": kind(
        "Not accepted before",
        "{found} of {supplier} was not accepted for line {label} of job {job}",
        "look at 'sourcing identity {job} {label}'",
    ),
    "accepted-in-a-file": kind(
        "Accepted in a file",
        "line '{title}' of the job file accepts an offer in spite of what is asked",
        "take it out of the file and use 'sourcing accept-anyway', which asks for name and words",
    ),
    "not-a-measure": kind(
        "Not a measure",
        "'{found}' is no length",
        "write digits with a point, such as 9.5, or a fraction, such as 9-1/2",
    ),
}
