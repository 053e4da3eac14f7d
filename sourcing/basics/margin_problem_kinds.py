"""The kinds of problem met when margins are looked at over many jobs."""

from .problem_kind import ProblemKind

MARGIN_KINDS: dict[str, ProblemKind] = {}
