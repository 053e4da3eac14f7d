"""A native chart of points, and a line if asked, in a worksheet: drawn by the spreadsheet from the cells beside it."""

from typing import Any

from openpyxl.chart import Reference, ScatterChart, Series
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.line import LineProperties

from ..basics.value import Value

WIDE, HIGH = 24, 13
"""In centimetres."""
INK, LINE = "111111", "14507D"


class Scatter(Value, frozen=True, kw_only=True):
    """A chart over columns, named by their headers: `x` against `y`, and against `line`, blank for none.

    `x_days`: the cells of `x` are days. `up` is what stands at the amounts; left out: the header. Cells of a column
    that are blank have no point.
    """

    title: str
    x: str
    y: str
    x_days: bool = False
    line: str = ""
    up: str = ""


def add_scatter(sheet: Any, headers: tuple[str, ...], rows: int, scatter: Scatter) -> None:
    """Put the chart to the right of the table. `rows` are those of the body; works on a sheet that is only written."""
    made = ScatterChart()
    made.style, made.width, made.height = 2, WIDE, HIGH
    made.title, made.x_axis.title, made.y_axis.title = scatter.title, scatter.x, scatter.up or scatter.y
    made.x_axis.number_format, made.y_axis.number_format = "yyyy-mm-dd" if scatter.x_days else "General", "0.00"
    made.x_axis.delete = made.y_axis.delete = False
    for header in [scatter.y] + ([scatter.line] if scatter.line else []):
        made.series.append(_series(sheet, headers, (scatter.x, header), rows, header == scatter.line))
    sheet.add_chart(made, f"{chr(ord('A') + len(headers) + 1)}2")


def _series(sheet: Any, headers: tuple[str, ...], columns: tuple[str, str], rows: int, line: bool) -> Any:
    across, up = (Reference(sheet, min_col=headers.index(name) + 1, min_row=2, max_row=rows + 1) for name in columns)
    made = Series(up, across, title=columns[1])
    made.marker.symbol = "none" if line else "circle"
    if line:
        made.graphicalProperties = GraphicalProperties(ln=LineProperties(solidFill=LINE, w=25400))
    else:
        made.marker.size = 8
        made.marker.graphicalProperties = GraphicalProperties(solidFill=INK)
        made.graphicalProperties = GraphicalProperties(ln=LineProperties(noFill=True))
    made.smooth = False
    return made
