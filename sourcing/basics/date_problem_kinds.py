"""The kinds of problem met in working out when goods are here: clocks, time zones, calendars, days."""

from .problem_kind import ProblemKind, kind

DATE_KINDS: dict[str, ProblemKind] = {
    "shop-without-time-zone": kind(
        "Shop without a time zone",
        "the cut-off of '{supplier}' is on a clock in {found}, and the shop's own time zone is not set",
        "set time_zone of the shop, such as America/Chicago, or leave the supplier's blank where both clocks agree",
        at_counter="fill in 'Clock of the shop' under 'page:setup', or leave the supplier's blank where both "
        "clocks agree",
    ),
    "unknown-time-zone": kind(
        "Unknown time zone",
        "the time zone '{found}' of {whose} is not an area and city of the IANA table",
        "write it such as America/Chicago or Europe/Berlin",
    ),
    "no-time-zones": kind(
        "No table of time zones",
        "the time zone '{found}' of {whose} can't be looked up, for this computer has no table of time zones",
        "install the package tzdata",
    ),
    "week-without-days": kind(
        "Week without working days",
        "the week of {whose} has no day that is worked",
        "name at least one of Mon, Tue, Wed, Thu, Fri, Sat, Sun",
    ),
    "closed-day-out-of-range": kind(
        "Closing day out of range",
        "the closing day {found} of {whose} is not between {first} and {last}",
        "correct its year",
    ),
    "no-order-day": kind(
        "Orders taken on no working day",
        "{whose} takes orders on {found} and works on none of these days",
        "correct order_days or the week of the calendar",
        at_counter="correct the days he takes orders on, or the days that are worked",
    ),
    "days-below-zero": kind(
        "Days below zero",
        "{found} days are less than none",
        "write a whole number of working days, 0 or more",
    ),
    "terms-days-below-zero": kind(
        "Days below zero",
        "{field} of {whose} is {found}, less than none",
        "write a whole number of working days, 0 or more",
    ),
    "days-too-many": kind(
        "More days than a wait can be",
        "{field} of {whose} is {found}, more than {most}",
        "write working days as a whole number",
    ),
    "days-falling": kind(
        "Larger number of days first",
        "{field} of {whose} is {found}, the larger number first",
        "write the least first, then the most",
    ),
    "cut-off-with-zone": kind(
        "Cut-off with a zone of its own",
        "the cut-off {found} of {whose} says a zone itself",
        "write the hour alone, such as 14:00:00, and the zone as time_zone",
        at_counter="write the hour alone, such as 14:00, and its clock beside it",
    ),
    "too-far-ahead": kind(
        "Day too far ahead",
        "{count} working days after {day} is more than a hundred years ahead",
        "correct the number of days",
    ),
}
