"""A native chart of bars in a worksheet: drawn by the spreadsheet from the cells beside it."""

from typing import Any

from openpyxl.chart import BarChart, Reference, Series
from openpyxl.chart.shapes import GraphicalProperties
from openpyxl.drawing.colors import ColorChoice
from openpyxl.drawing.fill import PatternFillProperties
from openpyxl.drawing.line import LineProperties
from openpyxl.utils import get_column_letter

from ..basics.value import Value
from .workbook_chart import HIGH, INK, WIDE

PAPER = "FFFFFF"


class Bars(Value, frozen=True, kw_only=True):
    """A chart of columns named by their headers: one group of bars for each cell of `names`. `series` with its look:
    'full', 'hatched', 'open', or 'hidden' (it only carries what is stacked on it)."""

    title: str
    names: str
    series: tuple[tuple[str, str], ...]
    up: str
    is_stacked: bool = False


def add_bars(sheet: Any, headers: tuple[str, ...], rows: int, bars: Bars) -> None:
    """Put the chart to the right of the table of so many rows; works on a sheet that is only written."""
    made = BarChart()
    made.type, made.style, made.width, made.height = "col", 2, WIDE, HIGH
    made.title, made.x_axis.title, made.y_axis.title = bars.title, bars.names, bars.up
    made.x_axis.delete = made.y_axis.delete = False
    made.y_axis.number_format, made.x_axis.tickLblPos = "0.00", "low"
    if bars.is_stacked:
        made.grouping, made.overlap, made.gapWidth = "stacked", 100, 40
    for header, look in bars.series:
        made.series.append(_series(sheet, headers.index(header) + 1, (rows, header), look))
    made.set_categories(_cells(sheet, headers.index(bars.names) + 1, rows))
    if all(look == "hidden" or bars.is_stacked for _, look in bars.series):
        made.legend = None
    sheet.add_chart(made, f"{get_column_letter(len(headers) + 2)}2")


def _cells(sheet: Any, column: int, rows: int) -> Reference:
    return Reference(sheet, min_col=column, min_row=2, max_row=rows + 1)


def _series(sheet: Any, column: int, of: tuple[int, str], look: str) -> Any:
    rows, header = of
    made = Series(_cells(sheet, column, rows), title=header)
    made.invertIfNegative = False
    made.graphicalProperties = _look(look)
    return made


def _look(look: str) -> GraphicalProperties:
    line = LineProperties(solidFill=INK)
    if look == "hidden":
        return GraphicalProperties(noFill=True, ln=LineProperties(noFill=True))
    if look == "hatched":
        made = GraphicalProperties(ln=line)
        made.pattFill = PatternFillProperties(prst="wdUpDiag")
        made.pattFill.foreground, made.pattFill.background = _colour(INK), _colour(PAPER)
        return made
    return GraphicalProperties(solidFill=INK if look == "full" else PAPER, ln=line)


def _colour(rgb: str) -> Any:
    named: Any = rgb
    return ColorChoice(srgbClr=named)
