"""The kinds of problem met in files of suppliers' terms and rates, and when a person changes terms."""

from .problem_kind import ProblemKind, kind

TERMS_KINDS: dict[str, ProblemKind] = {
    "entry-contradicts": kind(
        "Entry can't hold",
        "{entry}'{field}' {found}",
        "correct it and try again; nothing was changed",
    ),
    "entry-doubled": kind(
        "Two entries of one supplier and day",
        "{entry} is of the same supplier and day as {other}",
        "leave one of them out, or give it another 'starts_on'; nothing was changed",
    ),
    "supplier-written-otherwise": kind(
        "One supplier written in two ways",
        "{entry} is of '{found}', and {other} is of '{name}'",
        "write the supplier the same way in both, as his folder is named; nothing was changed",
    ),
    "rate-doubled": kind(
        "Two rates of one day",
        "1 {currency} is {found} {into} on {dated} here, and {other} in row {row}",
        "leave one of them out; nothing was changed",
    ),
    "rate-not-come": kind(
        "Rate of a day to come",
        "the rate of {currency} dated {dated} lies after {day}, so it is not used before its day",
        "correct the date if that is not meant",
    ),
    "supplier-without-rate": kind(
        "Supplier without a rate",
        "{name} charges in {currency}, and there is no rate into {into} on or before {day}",
        "add one to rates.csv and run 'sourcing setup' again; until then his offers have no cost at the door",
        at_counter="add one under 'page:rates'; until then his offers have no cost at the door",
    ),
    "pick-up-without-rate": kind(
        "Pick-up without the shop's rate",
        "goods are picked up from {name}, and the shop states no {found}",
        "write mileage_rate or rate_per_km (0 if driving costs nothing) and clerk_cost into shop.toml and run "
        "'sourcing setup' again; until then his offers have no cost at the door",
        at_counter="fill in what a mile or a kilometre costs (0 if driving costs nothing) and the clerk's hour "
        "under 'page:setup'; until then his offers have no cost at the door",
    ),
    "shop-without-zone": kind(
        "Shop without a time zone",
        "{name} has the time zone {found}, and the shop has none, so his cut-off can't be put on the shop's clock",
        "write time_zone into shop.toml and run 'sourcing setup' again",
        at_counter="fill in 'Clock of the shop' under 'page:setup'",
    ),
    "past-terms-changed": kind(
        "Terms of past days changed",
        "the terms of {name} from {day} on now say otherwise: {found}",
        "look again at what was worked out for the days since then; papers sent stay as they are",
    ),
    "past-rate-changed": kind(
        "Rate of a past day changed",
        "1 {currency} on {dated} was {before} {into} and is {found} now",
        "look again at what was worked out for the days since then; papers sent stay as they are",
    ),
    "terms-of-the-past": kind(
        "Terms of a past day",
        "the terms of {name} from {day} on would change what was worked out since then ({found})",
        "name {today} or a later day, or say why it must be (--past); nothing was changed",
        at_counter="choose today or a later day, or say why a day that is over is changed; nothing was changed",
    ),
    "later-terms": kind(
        "Later terms say otherwise",
        "the terms of {name} from {day} on do not have it: {found}",
        "change them too if it is meant to hold from then on",
    ),
    "terms-the-same": kind(
        "Nothing changed",
        "the terms of {name} on {day} say that already",
        "see them with 'sourcing terms {supplier}'; nothing was changed",
    ),
    "no-such-terms": kind(
        "No such terms",
        "{name} has no terms that begin on {day}",
        "name a day that fits, for they begin on {known}",
    ),
    "no-such-supplier": kind(
        "No such supplier",
        "there are no terms of '{found}'",
        "name one of: {known}; or take him in with 'sourcing terms --file'",
    ),
    "no-such-term": kind(
        "No such term",
        "'{found}' is no field of a supplier's terms",
        "write one such as minimum_order or freight.free_from; nothing was changed",
    ),
    "terms-need-why": kind(
        "Reason missing",
        "terms are not withdrawn without a word why",
        "say why (--why)",
        at_counter="say why",
    ),
}
