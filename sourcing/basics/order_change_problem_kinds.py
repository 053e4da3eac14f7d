"""The kinds of problem met when an order is confirmed, changed or cancelled."""

from .problem_kind import ProblemKind

ORDER_CHANGE_KINDS: dict[str, ProblemKind] = {}
