"""The kinds of problem met with the shop's database: where it is, whose it is, and what is not in it."""

from .problem_kind import ProblemKind, kind

STORAGE_KINDS: dict[str, ProblemKind] = {
    "database-address": kind(
        "Address of the database not understood",
        "'{found}' is not the address of a database",
        "give the path of a file, or postgresql+psycopg://user@host/name",
    ),
    "database-driver": kind(
        "PostgreSQL driver missing",
        "'{found}' needs the PostgreSQL driver, which is not installed",
        "install it with: pip install 'parts-sourcing[postgresql]'",
    ),
    "database-folder": kind(
        "Folder of the database not found",
        "the folder of '{found}' does not exist",
        "make the folder, or give another path",
    ),
    "database-not-writable": kind(
        "Database can't be written",
        "'{found}' can't be opened for writing",
        "check that it is a file in a folder you may write to, or give another path",
    ),
    "database-disk": kind(
        "Disk trouble",
        "the disk under '{found}' is full or does not answer; nothing of this was kept",
        "make room or mend the disk, then do it again",
    ),
    "database-busy": kind(
        "Database in use",
        "somebody else is writing to '{found}' and did not finish; nothing of this was kept",
        "wait until the other work is done, then do it again",
    ),
    "database-unreachable": kind(
        "Database not reached",
        "the database '{found}' does not answer or does not let you in",
        "check address, name and password, and that the server runs",
    ),
    "database-damaged": kind(
        "Database damaged",
        "the file '{found}' is damaged",
        "put back the last copy you kept of it",
    ),
    "database-newer": kind(
        "Database of a newer program",
        "'{found}' was written by a newer version of this program (schema {version}, this one knows {known})",
        "install the newer version",
    ),
    "database-not-ours": kind(
        "Database of another program",
        "'{found}' holds tables of another program",
        "give another path",
    ),
    "out-of-reach": kind(
        "Number or day out of reach",
        "a number or a day is too large to work with ({found}); nothing of this was kept",
        "check the numbers and days that were typed, and the moment said with --at",
        at_counter="check the numbers and days that were typed",
    ),
    "not-a-database": kind(
        "Not a database",
        "the file '{found}' is not a SQLite database",
        "give the path of the shop's database, or of a new file",
    ),
    "digits-lost": kind(
        "Number too long to keep",
        "{found} can't be kept exactly with {places} decimals",
        "correct the number where it comes from; nothing was rounded and nothing was kept",
    ),
    "break-quantity-twice": kind(
        "Two prices from one quantity",
        "{found} has two prices that hold from {quantity} pieces",
        "correct the row so that each quantity has one price; nothing was kept",
    ),
    "no-settings": kind(
        "Shop not set up",
        "the shop has no settings on {day}",
        "set it up first: 'sourcing setup FOLDER'",
        at_counter="set it up first under 'page:setup'",
    ),
    "no-such-job": kind(
        "No such job",
        "there is no job '{found}'",
        "see the numbers with 'sourcing jobs'",
    ),
    "no-such-revision": kind(
        "No such revision",
        "job {job} has no quote of revision {found}",
        "see what there is with 'sourcing history {job}'",
    ),
    "revision-taken": kind(
        "Revision sent already",
        "revision {revision} of job {job} is frozen",
        "make a new revision with 'sourcing quote {job}'",
    ),
    "quote-damaged": kind(
        "Quote damaged",
        "the paper of revision {revision} of job {job} is no longer what was sent (its hash differs)",
        "put back a copy of the database, or make a new revision and ask the customer again",
    ),
    "no-such-order": kind(
        "No such order",
        "there is no purchase order '{found}'",
        "see the numbers with 'sourcing orders'",
    ),
    "same-paper": kind(
        "Same paper again",
        "paper '{paper}' was already received for order {order}",
        "check the number on the paper; each delivery note or invoice counts once",
    ),
}
