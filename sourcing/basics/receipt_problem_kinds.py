"""The kinds of problem met when goods come, go back, or an old part is sent in."""

from .problem_kind import ProblemKind

RECEIPT_KINDS: dict[str, ProblemKind] = {}
