"""The equivalence table in text: what taking a file in changes, what happened to a statement; and as files to edit."""

import io
import zipfile
from collections.abc import Mapping, Sequence

from ..basics.equivalence import SENTENCES, MakerAlias, OurPart, Statement
from ..basics.our_part import part_changes
from ..basics.statement_history import KeptStatement, StatementEvent
from ..basics.table_change import ChangedStatement, TableChanges
from .csv_text import csv_text
from .plain_text import count, document, wrapped
from .workbook import Table, workbook_bytes

MOST = 40
"""Statements shown under each heading of the text; `--json` has all of them."""

Sheets = Mapping[str, tuple[tuple[str, ...], Sequence[tuple[str | int, ...]]]]
"""The table as it is written: name of the worksheet, header, rows."""


def table_xlsx(sheets: Sheets) -> bytes:
    """The table as a workbook a person can edit: one worksheet each, every number as text.

    One more says how each relation reads; taken in again, it is left alone.
    """
    tables = [
        Table(title=name, headers=header, rows=tuple(tuple(_blank(cell) for cell in row) for row in rows))
        for name, (header, rows) in sheets.items()
    ]
    reads = tuple(
        (word, sentence.format(left="LEFT", count="COUNT", right="RIGHT")) for word, sentence in SENTENCES.items()
    )
    return workbook_bytes([*tables, Table(title="how it reads", headers=("relation", "how it reads"), rows=reads)])


def table_csvs(sheets: Sheets) -> dict[str, str]:
    """The table as CSV files by their names. A cell that begins like a formula has an apostrophe in front."""
    return {f"{name}.csv": csv_text(header, rows) for name, (header, rows) in sheets.items()}


def table_zip(sheets: Sheets) -> bytes:
    """The CSV files in one file."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, text in table_csvs(sheets).items():
            # A day of its own in each file would make two exports of the same table differ.
            packed.writestr(zipfile.ZipInfo(name), text.encode("utf-8-sig"))
    return out.getvalue()


def _blank(cell: str | int) -> str | int | None:
    return None if cell == "" else cell


def statement_words(statement: Statement) -> str:
    """The statement with its number, on one line."""
    number = "" if statement.number is None else f"{statement.number}  "
    return f"{number}{statement}"


def changes_text(changes: TableChanges) -> str:
    """Counts first, then what each statement, part and name becomes; what stays though the file differs is said."""
    lines = wrapped(changes_headline(changes))
    for title, words in changes_sections(changes):
        if words:
            lines += ["", *wrapped(f"{title}: {len(words):,}")]
            lines += [line for one in words[:MOST] for line in wrapped(one, 2)]
            lines += [f"  and {len(words) - MOST:,} more"] if len(words) > MOST else []
    return document(lines)


def changes_headline(changes: TableChanges) -> str:
    """The counts in one sentence, and whether anything is changed yet."""
    numbers = (
        (len(changes.added), "added"),
        (len(changes.changed) + len(changes.replaced), "changed"),
        (len(changes.restored), "restored"),
        (len(changes.withdrawn), "withdrawn"),
        (changes.unchanged, "unchanged"),
        (len(changes.missing), "not in the file, they stay"),
        (len(changes.stay_changed), "changed since the file was written, they stay as they are"),
        (len(changes.stay_withdrawn), "in the file but withdrawn by a person, they stay withdrawn"),
        (len(changes.problems), "row that can't be used" if len(changes.problems) == 1 else "rows that can't be used"),
    )
    said = ", ".join(f"{number:,} {words}" for number, words in numbers if number) or "none"
    done = "" if changes.done else " Nothing is changed yet."
    return f"{changes.file}, statements: {said}.{done}"


def changes_sections(changes: TableChanges) -> tuple[tuple[str, list[str]], ...]:
    """What changes and what stays though the file differs: a heading, and one text for each; most are blank."""
    why = f" ({changes.why_withdrawn})" if changes.why_withdrawn else ""
    return (
        ("Rows that can't be used", [one.sentence() for one in changes.problems]),
        ("Added", [statement_words(one) for one in changes.added]),
        ("Changed", [_changed_words(one) for one in changes.changed]),
        (
            "Other numbers: the old statement is withdrawn, a new one stated",
            [_changed_words(o) for o in changes.replaced],
        ),
        ("In the file again: restored", [statement_words(one) for one in changes.restored]),
        (f"Withdrawn{why}", [statement_words(one) for one in changes.withdrawn]),
        (
            "Changed since the file was written: they stay as they are (for the file's word all the same, leave "
            "'as of change' blank in the row, or let the file win)",
            [_changed_words(one) for one in changes.stay_changed],
        ),
        ("Not in the file: they stay", [statement_words(one) for one in _not_newer(changes)]),
        (
            "Not in the file, but stated or changed since it was written: they stay",
            [statement_words(one) for one in changes.missing_newer],
        ),
        (
            "In the file, but withdrawn by a person: they stay withdrawn ('sourcing table restore' brings one back)",
            [statement_words(one) for one in changes.stay_withdrawn],
        ),
        (
            "Doubted in the table and not in the file: the doubt stays ('sourcing table answer' lays it aside)",
            [statement_words(one) for one in changes.doubts_stay],
        ),
        ("Parts added", [_part_words(one) for one in changes.parts_added]),
        ("Parts changed", list(map(_part_change, changes.parts_before, changes.parts_changed))),
        ("Parts taken out", [_part_words(one) for one in changes.parts_gone]),
        ("Parts changed at the desk: they stay as they are", [_part_words(one) for one in changes.parts_stay]),
        ("Parts not in the file: they stay", [_part_words(one) for one in changes.parts_missing]),
        ("Names of makers added", [alias_words(one) for one in changes.aliases_added]),
        ("Names of makers changed", [alias_words(one) for one in changes.aliases_changed]),
    )


def _not_newer(changes: TableChanges) -> list[Statement]:
    newer = {one.number for one in changes.missing_newer}
    return [one for one in changes.missing if one.number not in newer]


def _changed_words(one: ChangedStatement) -> str:
    return f"{one.before.number}  {one.before.claim}: {'; '.join(one.words)}"


def _part_words(part: OurPart) -> str:
    return f"{part.code}  {part.name}"


def _part_change(before: OurPart, now: OurPart) -> str:
    return f"{_part_words(now)}: {'; '.join(part_changes(before, now))}"


def alias_words(one: MakerAlias) -> str:
    """What the name stands for."""
    return f"'{one.alias}' is {one.maker}"


def history_text(kept: KeptStatement) -> str:
    """The statement as it stands, then what happened to it, oldest first."""
    lines = wrapped(f"Statement {statement_words(kept.statement)}")
    state = "is withdrawn and counts no more" if kept.withdrawn else f"counts as {kept.statement.counts_as}"
    lines += wrapped(f"It {state}; stated on {kept.statement.stated_on} by {kept.statement.stated_by}.")
    for event in kept.events:
        lines += wrapped(event_words(event), 2)
    if not kept.events or kept.events[0].what != "stated":
        lines += ["  What happened before the program kept a history is not known."]
    return document(lines)


def event_words(event: StatementEvent) -> str:
    """One thing that happened to a statement: when, who, what and why."""
    why = f": {event.reason}" if event.reason else ""
    was = f" (before: {event.was})" if event.was and event.what == "changed" else ""
    return f"{event.at:%Y-%m-%d %H:%M}  {event.who}: {event.what}{why}{was}"


def aliases_text(aliases: Sequence[MakerAlias]) -> str:
    """Every other name of a maker."""
    lines = [line for one in aliases for line in wrapped(alias_words(one))]
    return document(lines or ["No other name of a maker is kept."])


def export_text(sheets: Sheets, where: str) -> str:
    """What was written, and where."""
    rows = {name: len(rows) for name, (_, rows) in sheets.items()}
    said = (
        f"{count(rows['parts'], 'part')}, {count(rows['statements'], 'statement')} and "
        f"{count(rows['makers'], 'other name', 'other names')} of makers"
    )
    return f"Wrote {said} to {where}; edit it and take it in with 'sourcing table import {where}'."


def set_up_text(changes: TableChanges | None) -> str:
    """What setting up changed in the table beside what the file says, or left as it was; blank where nothing."""
    if changes is None:
        return ""
    told = (
        (len(changes.withdrawn), f"withdrawn, for they are {changes.why_withdrawn}"),
        (len(changes.restored), "restored, for they are in it again"),
        (len(changes.missing), "made at the desk and not in it, they stay"),
        (len(changes.stay_withdrawn), "in it but withdrawn by a person, they stay withdrawn"),
        (len(changes.stay_changed), "changed at the desk since, they stay so"),
        (len(changes.doubts_stay), "doubted at the desk, they stay doubted"),
    )
    lines = [f"Statements {words}: {number:,}." for number, words in told if number]
    if changes.parts_stay:
        lines.append(
            f"Parts changed at the desk since, they stay so: {', '.join(one.code for one in changes.parts_stay)}."
        )
    if changes.problems:
        lines.append("Rows of equivalence.xlsx that can't be used are left out, and nothing goes for missing from it:")
    lines += [f"  {one.sentence()}" for one in changes.problems]
    return "".join(f"\n{line}" for line in lines)
