"""The kinds of problem met when something is not as approved, a way out is taken, or a date is promised."""

from .problem_kind import ProblemKind

ALARM_KINDS: dict[str, ProblemKind] = {}
