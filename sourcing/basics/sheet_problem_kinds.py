"""The kinds of problem found while reading a supplier's sheet."""

from .problem_kind import ProblemKind

SHEET_KINDS: dict[str, ProblemKind] = {
    "no-such-file": ProblemKind(
        title="File not found",
        what="there is no file '{found}'",
        remedy="check the name and the folder, then run the command again",
    ),
}
