"""What the columns of a file may mean, for a person to fill in: also where no table is whole enough to be read."""

from collections.abc import Mapping, Sequence

import msgspec

from sourcing.basics.sheet import Column, Field

from .files.grid import read_grid
from .headers.column_values import propose
from .headers.columns import meanings_by_key
from .region.body import JUDGED
from .region.shape import Shape, shape_of
from .region.table import headers_of
from .region.tables import SaidColumns, tables_in
from .worksheet import Worksheet

LEAST_KNOWN = 2


def proposed_columns(data: bytes, file: str, meanings: Mapping[str, Field]) -> tuple[Column, ...]:
    """The columns of the table with the most known headers; where there is none, those of the largest by its shape.

    Raises Refused where the file is no sheet; () where it has no table at all.
    """
    shown = [one for one in read_grid(data, file) if not one.hidden]
    said = SaidColumns(meanings_by_key(meanings), {})
    tables = [table for one in shown for table in tables_in(one, said) if table.known >= LEAST_KNOWN]
    if tables:
        return max(tables, key=lambda table: (table.known, table.end - table.body)).columns
    found = largest_shape(shown)
    return by_shape(*found) if found else ()


def largest_shape(worksheets: Sequence[Worksheet]) -> tuple[Worksheet, Shape] | None:
    """The longest table by shape alone and the worksheet it stands on; hidden worksheets are not looked at."""
    shapes = [(one, shape) for one in worksheets if not one.hidden and (shape := shape_of(one))]
    return max(shapes, key=lambda pair: pair[1].end - pair[1].body) if shapes else None


def by_values(worksheet: Worksheet, shape: Shape) -> tuple[Column, ...]:
    """The columns of a table by its shape, each with what its values look like as a suggestion."""
    cells = worksheet.columns(shape.body, min(shape.end, shape.body + JUDGED), shape.width)
    return propose([column.tolist() for column in cells])


def by_shape(worksheet: Worksheet, shape: Shape) -> tuple[Column, ...]:
    """The same with the headers that stand above them."""
    columns = by_values(worksheet, shape)
    if shape.body == shape.first:
        return columns
    headers = headers_of(worksheet, shape.first, shape.body - shape.first)
    return tuple(
        msgspec.structs.replace(column, header=header.shown)
        for column, header in zip(columns, headers[: len(columns)], strict=False)
    )
