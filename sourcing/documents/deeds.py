"""The ledger as a table to take along: CSV."""

from collections.abc import Sequence

from ..basics.deed import Deed
from .csv_text import csv_text

DONE = {
    "accept anyway": "offer taken all the same",
    "accept by score": "look-alikes accepted by score",
    "add evidence": "evidence written down",
    "add part": "part of ours added",
    "add person": "somebody let in",
    "add photo": "photo added",
    "add rate": "rate added",
    "add statement": "statement added",
    "answer": "answer taken down",
    "answer doubt": "doubt answered",
    "cancel order": "order cancelled",
    "change job": "job changed",
    "change order": "order changed",
    "change part": "part of ours changed",
    "change role": "role changed",
    "change settings": "settings changed",
    "change standing": "statement trusted otherwise",
    "change terms": "terms changed",
    "claim": "claim made",
    "confirm number rule": "number rule confirmed",
    "confirm order": "order confirmed",
    "decide": "way out chosen",
    "doubt statement": "statement doubted",
    "find candidates": "sheet looked through",
    "first log-in": "first log-in made",
    "gave an extra away": "extra given away",
    "give back deposit": "deposit given back",
    "give quote": "quote given",
    "import": "sheet taken in",
    "import table": "table taken in",
    "judge candidate": "look-alike judged",
    "judge file": "look-alikes judged by a file",
    "let go": "somebody let go",
    "let in again": "somebody let in again",
    "look ahead": "orders looked at before they were placed",
    "make link": "link made",
    "name maker": "other name of a maker kept",
    "order": "ordered",
    "promise": "promised day written down",
    "put photo back": "photo put back",
    "quote": "quote written",
    "receive": "goods received",
    "receive anew": "paper taken in anew",
    "restore statement": "statement counts again",
    "revoke link": "link ended",
    "send back": "sent back",
    "set password": "password set",
    "set receipt aside": "paper set aside",
    "set up": "shop set up",
    "take acceptance back": "offer no longer taken",
    "take answer back": "answer to a look-alike taken back",
    "take back": "answer taken back",
    "take deposit": "deposit taken",
    "take evidence back": "evidence taken back",
    "take in job": "job taken in",
    "take maker's name away": "other name of a maker taken away",
    "take step back": "step of going back taken back",
    "take part out": "part of ours taken out",
    "take photo out": "photo taken out",
    "undo import": "sheet taken back",
    "withdraw number rule": "number rule withdrawn",
    "withdraw rate": "rate taken back",
    "withdraw statement": "statement withdrawn",
    "write bill": "bill written",
}
"""What was done, as a person says it, by the deed's name in the ledger; the ledger and its files keep the name."""

HEADERS = ("At", "Who", "Deed", "About", "What was done")


def done_words(deed: str) -> str:
    """What was done, as a person says it."""
    return DONE.get(deed, deed)


def deeds_csv(deeds: Sequence[Deed]) -> str:
    """Every deed, in the order given."""
    rows = [(f"{one.at:%Y-%m-%d %H:%M}", one.who, one.deed, one.subject, one.detail) for one in deeds]
    return csv_text(HEADERS, rows)
