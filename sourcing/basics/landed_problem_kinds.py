"""The kinds of problem met when landed cost is looked at by itself."""

from .problem_kind import ProblemKind, kind

LANDED_KINDS: dict[str, ProblemKind] = {
    "number-not-on-sheet": kind(
        "Number not on the sheet",
        "the newest sheet of '{supplier}' has no number '{found}'",
        "write the supplier's or the maker's number as the sheet has it",
    ),
}
