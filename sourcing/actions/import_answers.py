"""What somebody says of columns, against the columns that are there: in one file, or in any of several."""

import shlex
from collections.abc import Iterable, Mapping
from pathlib import Path

from ..basics.problem import Place, Refused, refused
from ..basics.sheet import Field, SheetSummary
from ..basics.value import changed
from ..sheets.headers.column_names import plain_key
from ..sheets.headers.package_prices import per_pack_key


def refuse_unknown_headers(summary: SheetSummary, said: Mapping[str, Field]) -> None:
    """Refuses a column that somebody named and the sheet does not have: a slip of the pen would change nothing."""
    unknown = unknown_headers(summary, said)
    if unknown:
        raise refused("no-such-header", place=Place(file=summary.file), found=unknown[0], known=_headers([summary]))


def refuse_unknown_everywhere(summaries: Iterable[SheetSummary], said: Mapping[str, Field]) -> None:
    """The same where several files were read with the same words: refuses what none of them has."""
    every = list(summaries)
    unknown = [set(unknown_headers(one, said)) for one in every]
    nowhere = [header for header in said if unknown and all(header in one for one in unknown)]
    if nowhere:
        raise refused("no-such-header", found=nowhere[0], known=_headers(every))


def unknown_headers(summary: SheetSummary, said: Mapping[str, Field]) -> tuple[str, ...]:
    """The headers said to mean something that the sheet does not have, in the order they were said."""
    there = {plain_key(column.header) for column in summary.columns}
    there |= {plain_key(f"column {column.letter}") for column in summary.columns}
    there |= {plain_key(per_pack_key(column)) for column in summary.columns}
    there |= {plain_key(note.found) for note in summary.notes if note.code == "line-applied"}
    return tuple(header for header, field in said.items() if field != "not used" and not _is_there(header, there))


def told_of_one_of_many(error: Refused, file: Path, supplier: str) -> Refused:
    """A refusal of one of several files: with its path, and with the command that answers for that file alone.

    Sheets of several suppliers often have the same name, and a header may mean one thing here and another there.
    """
    whose = f" --supplier {supplier}" if supplier else ""
    alone = f"for that file alone in: sourcing import {shlex.quote(file.as_posix())}{whose}"
    return Refused(
        *(
            changed(
                one,
                place=changed(one.place or Place(), file=file.as_posix()),
                remedy=f"{one.remedy}, {alone}" if "--column" in one.remedy else one.remedy,
            )
            for one in error.problems
        )
    )


def _is_there(header: str, there: set[str]) -> bool:
    key = plain_key(header)
    return any(one == key or one.endswith(key) for one in there)


def _headers(summaries: Iterable[SheetSummary]) -> str:
    headers = [f"'{column.header}'" for one in summaries for column in one.columns if column.header]
    return ", ".join(dict.fromkeys(headers))
