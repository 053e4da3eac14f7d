"""The kinds of problem met in what a user asks of a ranking."""

from .problem_kind import ProblemKind, kind

CHOICE_KINDS: dict[str, ProblemKind] = {
    "value-per-day": kind(
        "Price of a day of waiting not usable",
        "the price of a day of waiting is given as {found}",
        "give an amount of money that is not below zero, such as 5.00, or leave it out",
    ),
    "in-time-without-day": kind(
        "In time for which day?",
        "only offers that are here in time are asked for, and no day",
        "say by which day the parts are needed",
    ),
    "nothing-to-draw": kind(
        "Nothing to draw",
        "no offer of {found} can be ranked, so there is nothing to draw",
        "look at what is not ranked and why",
    ),
}
