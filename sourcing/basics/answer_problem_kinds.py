"""The kinds of problem met when answers are recorded, taken back or carried over, and revisions are compared."""

from .problem_kind import ProblemKind

ANSWER_KINDS: dict[str, ProblemKind] = {}
