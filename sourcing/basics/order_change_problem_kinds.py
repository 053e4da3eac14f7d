"""The kinds of problem met when an order is confirmed, changed or cancelled."""

from .problem_kind import ProblemKind, kind

ORDER_CHANGE_KINDS: dict[str, ProblemKind] = {
    "line-cancelled": kind(
        "Line cancelled",
        "line {line} of order {order} is cancelled",
        "look at the order with 'sourcing orders {order}', and name a line that still stands",
    ),
    "order-cancelled": kind(
        "Order cancelled",
        "nothing of order {order} is wanted any more",
        "place a new order with 'sourcing order' and the job's number",
        at_counter="place a new order from the page of the job, under 'page:jobs'",
    ),
    "nothing-confirmed": kind(
        "Nothing said of a line",
        "line {line} of order {order} is named, and neither price, number nor day is said",
        "say what the supplier said, or leave the line out: what is not named is confirmed as ordered",
    ),
    "confirmed-for-nothing": kind(
        "Confirmed for nothing",
        "line {line} of order {order} is confirmed at a price of 0",
        "leave the price out if none was said; if it comes for nothing, say why with '--words'",
        at_counter="leave it blank if no price was said; if it comes for nothing, say why under 'What else was said'",
    ),
    "days-turned-round": kind(
        "Days the wrong way round",
        "line {line}: the first day {first} is after the last day {last}",
        "write the earlier day first",
    ),
    "day-before-order": kind(
        "Day before the order",
        "line {line} can't be here on {day}: the order was placed on {placed}",
        "check the year and the month",
    ),
    "billed-no-order": kind(
        "Billed already",
        "job {job} is billed, so nothing more is ordered for it",
        "check the job's number; take in a new job for further work",
    ),
    "more-than-approved": kind(
        "More than approved",
        "{found} pieces of line {line} are more than the customer's yes covers: {most} at most",
        "write a new revision with 'sourcing quote {job}' and ask the customer first",
    ),
    "fewer-than-came": kind(
        "Fewer than have come",
        "{found} pieces of line {line}, and {came} have come already",
        "say at least {came}; what came goes back by a return",
    ),
    "not-whole-packs": kind(
        "Not whole packs",
        "{found} pieces of line {line} are not whole packs of {pack}",
        "say a multiple of {pack}",
    ),
    "no-pieces-left": kind(
        "Change to nothing",
        "line {line} can't be changed to {found} pieces",
        "say at least 1, or cancel the line with 'sourcing cancel-order {order} --line {line}'",
        at_counter="say at least 1, or cancel the line under 'page:cancel-order'",
    ),
    "order-says-so": kind(
        "Nothing to change",
        "order {order} says so already",
        "check the number of the order and of the line",
    ),
    "nothing-to-cancel": kind(
        "Nothing to cancel",
        "all of line {line} of order {order} has come",
        "send goods back instead of cancelling them",
    ),
    "no-change-of-order": kind(
        "No such change",
        "order {order} has no change {found}",
        "use one of: {known}",
    ),
    "change-only-as-page": kind(
        "A change is a page",
        "a change of order {order} is a page, not a list of lines to load",
        "take --html or --pdf with --change, or leave --change out for the order as it was placed",
        at_counter="save it as a page or a PDF, or save the order as it was placed",
    ),
    "day-not-read": kind(
        "Not a day",
        "'{found}' is no day",
        "write it as 2026-03-18, or two days as 2026-03-16:2026-03-18",
    ),
}
