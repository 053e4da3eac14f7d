"""A native chart of points, and a line if asked, in a worksheet: drawn by the spreadsheet from the cells beside it."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from openpyxl.chart import Reference, ScatterChart, Series
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.chart.text import RichText
from openpyxl.drawing.line import LineProperties
from openpyxl.drawing.text import CharacterProperties, Paragraph, ParagraphProperties, RichTextProperties
from openpyxl.utils import get_column_letter

from ..basics.value import Value
from .csv_text import Cell

WIDE, HIGH = 24, 13
"""In centimetres."""
INK, LINE = "111111", "14507D"
MOST_DAYS_NAMED = 10
DAY_NAUGHT = date(1899, 12, 30)
"""A day in a cell is its number from here on: the 1900 date system (ECMA-376 part 1, 18.17.4.1), which counts a 29
February 1900 and so is right from March 1900 on."""
UPWARDS = -5400000
"""A quarter turn in the sixty-thousandths of a degree that drawings are written in (ECMA-376 part 1, 20.1.10.3)."""


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


def add_scatter(sheet: Any, headers: tuple[str, ...], rows: Sequence[Sequence[Cell]], scatter: Scatter) -> None:
    """Put the chart to the right of the table. `rows` are those of the body; works on a sheet that is only written."""
    made = ScatterChart()
    made.style, made.width, made.height = 2, WIDE, HIGH
    made.title, made.x_axis.title, made.y_axis.title = scatter.title, scatter.x, scatter.up or scatter.y
    made.x_axis.number_format, made.y_axis.number_format = "yyyy-mm-dd" if scatter.x_days else "General", "0.00"
    made.x_axis.delete = made.y_axis.delete = False
    for header in [scatter.y] + ([scatter.line] if scatter.line else []):
        made.series.append(_series(sheet, headers, (scatter.x, header), len(rows), header == scatter.line))
    if scatter.x_days:
        _day_axis(made.x_axis, [day for row in rows if isinstance(day := row[headers.index(scatter.x)], date)])
    sheet.add_chart(made, f"{get_column_letter(len(headers) + 2)}2")


def _day_axis(axis: Any, days: Sequence[date]) -> None:
    """From the day before the first to the day after the last, whole days named upright: left to itself a spreadsheet
    shows one day among centuries, and lets the names of days run into each other."""
    if not days:
        return
    first, last = (min(days) - DAY_NAUGHT).days - 1, (max(days) - DAY_NAUGHT).days + 1
    axis.majorUnit = -(-(last - first) // MOST_DAYS_NAMED)
    axis.scaling.min, axis.scaling.max = first, last
    upright = ParagraphProperties(defRPr=CharacterProperties())
    turned = RichTextProperties(rot=UPWARDS, vert="horz")
    axis.txPr = RichText(bodyPr=turned, p=[Paragraph(pPr=upright, endParaRPr=CharacterProperties())])


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
