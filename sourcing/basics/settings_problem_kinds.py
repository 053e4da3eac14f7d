"""The kinds of problem met when settings and rates are changed at the counter, and when a shop begins there."""

from .problem_kind import ProblemKind, kind

SETTINGS_KINDS: dict[str, ProblemKind] = {
    "settings-changed-meanwhile": kind(
        "Changed meanwhile",
        "{who} changed the settings on {at}, while this was typed: {what}",
        "nothing was overwritten; look at what would change now, then keep it",
    ),
    "settings-the-same": kind(
        "Nothing changed", "the settings of {day} say that already", "change a field first; nothing was changed"
    ),
    "settings-of-the-past": kind(
        "Settings of a past day",
        "settings from {day} on would change what was worked out since then ({found})",
        "name {today} or a later day, or say why it must be; nothing was changed",
    ),
    "later-settings": kind(
        "Later settings differ",
        "the settings that begin on {day} know nothing of this change ({found})",
        "change them too, if it is to hold from then on",
    ),
    "taxes-beside": kind(
        "Two taxes on the same",
        "'{name}', {percent} %, would be charged beside '{other}', {other_percent} %, on {on} from {day} on",
        "most places charge one, and the law of the place decides: for another rate of the same tax write its very "
        "name, for then it takes the old one's place; if both are due, say so with --sure",
        at_counter="most places charge one, and the law of the place decides: for another rate of the same tax write "
        "its very name, for then it takes the old one's place; if both are due, tick that it is right as typed",
    ),
    "tax-charged-beside": kind(
        "Two taxes on the same",
        "'{name}', {percent} %, is charged beside '{other}', {other_percent} %, on {on} from {day} on",
        "both stand on every quote from then on",
    ),
    "tax-replaced": kind(
        "Another rate of a tax",
        "'{name}', {percent} %, takes the place of {before} % from {day} on",
        "quotes written already keep the rate they were given with",
    ),
    "settings-stay": kind(
        "Settings stay",
        "the settings from {day} on can't be taken back",
        "change them anew instead; days that can be taken back: {known}",
    ),
    "shop-is-set-up": kind(
        "Set up already", "the shop was set up already", "look at its settings and change what is to be otherwise"
    ),
    "set-up-file-unknown": kind(
        "Not a set-up file",
        "'{found}' is not one of the files a shop is set up from",
        "name it as one of: {known}",
    ),
    "not-seen-yet": kind(
        "Not what was shown",
        "something was typed after the change was shown",
        "look at what would change now, then keep it; nothing was changed",
    ),
    "supplier-is-there": kind(
        "Supplier is there already", "there are terms of '{found}' already", "change those; nothing was changed"
    ),
    "supplier-short-name": kind(
        "Short name can't be used",
        "'{found}' can't be a short name",
        "use letters from a to z, digits, and hyphens between them; nothing was changed",
    ),
    "days-not-stated": kind(
        "Terms not stated",
        "nothing is said of: {found}",
        "ask the supplier and fill it in, for days and costs are reckoned with it; nothing was changed",
    ),
    "no-file-chosen": kind("No file", "no file was chosen", "choose one first; nothing was changed"),
    "sides-of-a-line": kind(
        "Line not understood",
        "'{found}' does not have two sides",
        "write what is left and right of '=' on each line, such as {example}",
    ),
}
