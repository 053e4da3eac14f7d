"""The kinds of problem met at the counter: people and passwords, forms sent twice, customers' links, files sent."""

from .problem_kind import ProblemKind, kind

COUNTER_KINDS: dict[str, ProblemKind] = {
    "owner-is-there": kind(
        "The owner is there already",
        "the first log-in was made already",
        "log in, or ask the owner for a log-in of your own",
    ),
    "name-missing": kind("Name missing", "no name was given", "type the name under which deeds are to be signed"),
    "name-taken": kind(
        "Name taken",
        "somebody called {found} is on the list already",
        "choose a name that tells the two apart, for it signs what each does",
    ),
    "name-too-long": kind(
        "Name too long", "a name of {count} characters was given", "choose one of at most {most} characters"
    ),
    "password-short": kind(
        "Password too short", "the password has {count} characters", "choose one of at least {least}; spaces count"
    ),
    "password-long": kind("Password too long", "the password has {count} characters", "choose one of at most {most}"),
    "password-guessed": kind(
        "Password easily guessed",
        "that password is among the first that are tried",
        "choose another, such as four words that have nothing to do with each other or with the shop",
    ),
    "log-in-wrong": kind(
        "Name or password wrong",
        "no log-in of that name has that password",
        "type both again; a forgotten password is set anew by the owner on the page People",
    ),
    "person-unknown": kind("Unknown person", "nobody on the list has number {found}", "choose from the page People"),
    "last-owner": kind(
        "Last owner",
        "{found} is the only owner who can log in",
        "make somebody else owner first, or nobody could change settings and people any more",
    ),
    "form-in-hand": kind(
        "Being done already",
        "this form was sent before and is still being done",
        "wait a moment, then look at what came of it before you send it again",
    ),
    "form-without-name": kind(
        "Form without its name",
        "this form came without the name that makes sure it is done but once",
        "open the page anew and send it from there",
    ),
    "not-a-day": kind("Not a day", "'{found}' is no day", "write it as year, month and day, such as 2026-01-16"),
    "first-code-wrong": kind(
        "Code wrong",
        "the code for the first log-in does not fit",
        "type the one that 'sourcing serve' printed where it was started",
        at_counter="type the one that was printed on the shop's computer where the counter was started",
    ),
    "can-not-listen": kind(
        "Can't listen there",
        "the counter can't be served at {found} ({why})",
        "stop what else uses it, or choose another with --host and --port",
    ),
}
