"""The equivalence table as the worksheets a person edits, for a workbook or one CSV file each."""

from ...basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Statement
from .table_columns import MAKER_COLUMNS, PART_COLUMNS, STATEMENT_COLUMNS

Cell = str | int
Row = tuple[Cell, ...]


def table_sheets(table: EquivalenceTable, as_of: int | None = None) -> dict[str, tuple[tuple[str, ...], list[Row]]]:
    """Worksheet name to its header and rows. Read back, they give the same table, but that rows are counted anew.

    Part numbers are text; only counts, the statements' own numbers and `as_of` are numbers. Blank is ''. `as_of`: the
    number of the newest change the table knows of, written in every row.
    """
    known_to = "" if as_of is None else as_of
    return {
        "parts": (PART_COLUMNS, [_part(one) for one in table.parts]),
        "statements": (STATEMENT_COLUMNS, [(*_statement(one), known_to) for one in table.statements]),
        "makers": (MAKER_COLUMNS, [_alias(one) for one in table.aliases]),
    }


def _part(one: OurPart) -> Row:
    asked = one.asked
    said = (asked.cord, asked.cover, asked.cogs, asked.side, asked.sold_as, asked.pieces or "")
    return one.code, one.name, one.size, one.category, one.note, *said


def _statement(one: Statement) -> Row:
    left, right = (one.left.maker, one.left.printed), (one.right.maker, one.right.printed)
    when = (one.condition, one.machine, one.serial_from, one.serial_to)
    number = "" if one.number is None else one.number
    told = (one.standing, one.source, one.stated_on.isoformat(), one.stated_by, one.doubt)
    return number, *left, one.relation, one.count, *right, *when, *told


def _alias(one: MakerAlias) -> Row:
    return one.alias, one.maker
