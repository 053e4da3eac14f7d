"""Match the rows of one file against the parts of another, without a database: what `sourcing match` does."""

from collections.abc import Callable, Mapping
from pathlib import Path

from ..basics.match import RowMatch
from ..basics.match_line import MatchLine
from ..basics.part_number import maker_key, number_keys
from ..basics.problem import Place, refused
from ..matching.numbers.doubtful import Doubt, DoubtKind, doubtful_numbers
from ..matching.sheet_match import Columns, match_rows
from ..sheets.four_columns import FourColumns, four_columns
from ..sheets.judged_rows import judged_rows
from .files import read_bytes

MAY_BE_MEANT: frozenset[DoubtKind] = frozenset(("date", "day count", "point and zero"))


def match_files(
    sheet: Path,
    against: Path,
    said: Mapping[str, str],
    most: int = 1,
    judged: Path | None = None,
    tell: Callable[[str], None] = lambda _: None,
) -> list[MatchLine]:
    """At most `most` lines for each row of `sheet`. `said`: what a header means, from a person; in either file.

    `judged`: a file with the columns row, part_row and answer (yes or no). Refuses a file without a column of numbers
    or descriptions, a header said that neither file has, and an answer about a row that is not there.
    """
    rows, parts = (four_columns(read_bytes(path), path.name, said) for path in (sheet, against))
    _refuse_unknown(said, rows, parts)
    for table in (rows, parts):
        tell(f"{table.file}: {table.words()}")
    places = [str(at) for at in range(len(parts.rows))]
    answers = _answers(judged, rows, parts) if judged else {}
    found = match_rows(_columns(rows), _columns(parts), places, most=most, answers=answers)
    return [_line(one, rows, parts) for one in found]


def _refuse_unknown(said: Mapping[str, str], rows: FourColumns, parts: FourColumns) -> None:
    for header in said:
        if header.strip().casefold() not in rows.headers | parts.headers:
            known = ", ".join(sorted(rows.headers | parts.headers))
            raise refused("no-such-header", place=Place(file=rows.file), found=header, known=known)


def _answers(judged: Path, rows: FourColumns, parts: FourColumns) -> dict[tuple[int, int], bool]:
    """By position, from rows as the files number them."""
    row_at = {row: at for at, row in enumerate(rows.rows)}
    part_at = {row: at for at, row in enumerate(parts.rows)}
    found = {}
    for place, row, part, same in judged_rows(read_bytes(judged), judged.name):
        if row not in row_at or part not in part_at:
            raise refused("answer-about-nothing", place=place, found=f"{row} and {part}")
        found[row_at[row], part_at[part]] = same
    return found


def _columns(table: FourColumns) -> Columns:
    doubts = doubtful_numbers(table.number)
    damaged = {**table.damaged, **{at: table.number[at] for at in doubts}}
    keys = number_keys(table.number)
    makers = {maker: maker_key(maker) for maker in set(table.maker)}
    return Columns(
        numbers=[(key,) if key and at not in damaged else () for at, key in enumerate(keys)],
        makers=[(makers[maker],) if makers[maker] else () for maker in table.maker],
        description=table.description,
        price=table.price,
        damaged=damaged,
        instead={at: _instead(doubt, table.number[at]) for at, doubt in doubts.items()},
    )


def _instead(doubt: Doubt, printed: str) -> tuple[str, ...]:
    """A date may be the number as it stood, or what a spreadsheet made of it; an error value is nothing."""
    return doubt.instead or ((printed,) if doubt.kind in MAY_BE_MEANT else ())


def _line(one: RowMatch, rows: FourColumns, parts: FourColumns) -> MatchLine:
    part = int(one.part) if one.part else None
    return MatchLine(
        row=rows.rows[one.row],
        number=rows.number[one.row] or rows.damaged.get(one.row, ""),
        maker=rows.maker[one.row],
        description=rows.description[one.row],
        part_row=None if part is None else parts.rows[part],
        part="" if part is None else parts.number[part],
        part_maker="" if part is None else parts.maker[part],
        part_description="" if part is None else parts.description[part],
        tier=one.tier,
        score=one.score,
        rank=one.rank,
        against=one.against,
        reasons=one.reasons,
        facts=one.facts,
    )
