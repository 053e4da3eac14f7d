"""The kinds of problem met when a price is worked out and a paper is made."""

from .problem_kind import ProblemKind

PRICE_KINDS: dict[str, ProblemKind] = {}
