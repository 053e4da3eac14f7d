"""Match the rows of one file against the parts of another, without a database: what `sourcing match` does."""

from collections.abc import Mapping, Sequence
from pathlib import Path

from ..basics.match import Judged, RowMatch
from ..basics.match_line import MatchLine
from ..basics.part_number import maker_key, number_keys
from ..matching.numbers.doubtful import doubtful_numbers
from ..matching.sheet_match import Columns, match_rows
from ..sheets.four_columns import FourColumns, four_columns
from .files import read_bytes


def match_files(
    sheet: Path, against: Path, said: Mapping[str, str], most: int = 1, judged: Sequence[Judged] = ()
) -> list[MatchLine]:
    """At most `most` lines for each row of `sheet`. `said`: what a header means in either file, from a person.

    Refuses a file without a column of numbers or descriptions.
    """
    rows, parts = (four_columns(read_bytes(path), path.name, _of(path, said)) for path in (sheet, against))
    places = [str(at) for at in range(len(parts.rows))]
    found = match_rows(_columns(rows), _columns(parts), places, judged, most)
    return [_line(one, rows, parts) for one in found]


def _of(path: Path, said: Mapping[str, str]) -> Mapping[str, str]:
    return said


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
    )


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
