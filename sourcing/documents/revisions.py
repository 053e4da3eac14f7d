"""The revisions of a quote as text for the shop: which there are, when they were given out, how two of them differ."""

from ..basics.approval import GivenOut, RevisionRow, Revisions
from .amounts import date_text, money_text
from .plain_text import document, table, wrapped

HEADER = ("revision", "made", "by", "paper", "valid to", "agreed", "everything", "given")
MOST = (8, 16, 14, 8, 12, 12, 12, 10)


def revisions_text(found: Revisions) -> str:
    """A line for each revision (the paper's hash by its first eight figures), then the two compared line by line."""
    rows = [_row(row, found.locale) for row in found.rows]
    lines = [f"Job {found.job}: revisions of its quote, totals with tax"]
    lines += table([HEADER, *rows], MOST, frozenset((0, 5, 6)))
    for row in found.rows:
        for given in row.given:
            lines += wrapped(_given(given))
    if found.compared is None:
        return document(lines)
    first, second = found.compared
    if not found.differences:
        return document([*lines, "", f"Revisions {first} and {second} say the same."])
    lines += ["", f"What revision {second} says otherwise than revision {first}:"]
    return document([*lines, *(text for words in found.differences for text in wrapped(f"- {words}", 2))])


def given_text(given: GivenOut) -> str:
    """That a revision was given out, and what to look out for."""
    lines = wrapped(f"Job {given.job}: {_given(given)} Nothing was sent by this program.")
    return document([*lines, *(text for note in given.notes for text in wrapped(f"Note: {note}."))])


def _given(given: GivenOut) -> str:
    to = f" to {given.sent_to}" if given.sent_to else ""
    return f"Revision {given.revision} was given out on {given.at:%Y-%m-%d %H:%M} by {given.who}: {given.how}{to}."


def _row(row: RevisionRow, locale: str) -> tuple[str, ...]:
    given = f"{row.given[-1].at:%Y-%m-%d}" if row.given else "no"
    return (
        str(row.revision),
        f"{row.made_at:%Y-%m-%d %H:%M}",
        row.made_by,
        row.sha256[:8],
        date_text(row.valid_to, locale),
        money_text(row.agreed, locale),
        money_text(row.everything, locale),
        given,
    )
