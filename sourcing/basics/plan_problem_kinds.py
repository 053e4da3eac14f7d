"""The kinds of problem met in what is asked of a plan of orders."""

from .problem_kind import ProblemKind, kind

PLAN_KINDS: dict[str, ProblemKind] = {
    "plan-split-together": kind(
        "Split and together",
        "need {found} may be split over several offers and is to come together with others",
        "choose one of the two",
    ),
    "plan-label-twice": kind(
        "Label twice",
        "two needs bear the label '{found}'",
        "give each need a label of its own",
    ),
    "plan-no-day-price": kind(
        "No price of a day",
        "cost and days are to be weighed, and no price of a day of waiting is stated",
        "state 'value_per_day'",
        at_counter="say what a day of waiting is worth",
    ),
    "plan-day-price-negative": kind(
        "Negative price of a day",
        "the price of a day of waiting is {found}",
        "state what a day of waiting costs, 0 or more",
    ),
    "plan-credit": kind(
        "Credit out of range",
        "{found} per cent of the surplus can't count as got back",
        "state 0 to 100 per cent",
    ),
    "plan-most-suppliers": kind(
        "Too few suppliers",
        "a plan over at most {found} suppliers has nobody to buy from",
        "state 1 or more",
    ),
    "plan-no-time": kind(
        "No plan in time",
        "no plan was found within {seconds} seconds",
        "allow more seconds, or fewer needs or conditions",
    ),
}
