"""A workbook written by hand, so that it can hold what a library would not write: no cached values, odd dimensions.

Office Open XML (ECMA-376, part 1) as remembered, the least a spreadsheet opens. Nothing is compressed and every
date in the archive is the same, so the same content gives the same bytes everywhere.
"""

import io
import zipfile
from collections.abc import Mapping, Sequence
from typing import NamedTuple
from xml.sax.saxutils import escape

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006"
HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml"


class Number(NamedTuple):
    """A number cell as stored, and the number format that shows it."""

    stored: str
    shown_as: str = ""


class Formula(NamedTuple):
    """A formula cell; `cached` None: the program that wrote it never worked it out."""

    formula: str
    cached: str | None = None


class Rich(NamedTuple):
    """A text in several runs, as when one word of a cell is bold."""

    runs: tuple[str, ...]


class Fault(NamedTuple):
    """An error cell such as #REF!."""

    shown: str


Cell = str | bool | Number | Formula | Rich | Fault | None


class Sheet(NamedTuple):
    """A worksheet. Rows are counted from 1; an empty list is a row that is not in the file at all."""

    name: str
    rows: Sequence[Sequence[Cell]]
    merged: tuple[str, ...] = ()
    hidden_rows: tuple[int, ...] = ()
    hidden_columns: tuple[int, ...] = ()
    hidden: bool = False
    dimension: str = ""


def zipped(parts: Mapping[str, str | bytes]) -> bytes:
    """An archive of these parts, always the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, data in parts.items():
            info = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            info.create_system = 0
            archive.writestr(info, data)
    return out.getvalue()


def parts_of(data: bytes) -> dict[str, bytes]:
    """The parts of an archive."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def workbook(*sheets: Sheet, extra: Mapping[str, bytes] | None = None) -> bytes:
    """The file as bytes. `extra` parts are put in beside (a macro)."""
    formats = sorted({cell.shown_as for s in sheets for r in s.rows for cell in r if isinstance(cell, Number)} - {""})
    parts: dict[str, str | bytes] = {
        "[Content_Types].xml": _content_types(len(sheets)),
        "_rels/.rels": _relations([("officeDocument", "xl/workbook.xml")]),
        "xl/workbook.xml": _book(sheets),
        "xl/_rels/workbook.xml.rels": _relations(
            [("worksheet", f"worksheets/sheet{at}.xml") for at in range(1, len(sheets) + 1)]
            + [("styles", "styles.xml")]
        ),
        "xl/styles.xml": _styles(formats),
    }
    parts |= {f"xl/worksheets/sheet{at}.xml": _worksheet(sheet, formats) for at, sheet in enumerate(sheets, 1)}
    return zipped(parts | dict(extra or {}))


def _content_types(sheets: int) -> str:
    override = '<Override PartName="/xl/{}" ContentType="{}.{}+xml"/>'
    parts = [override.format("workbook.xml", KIND, "sheet.main"), override.format("styles.xml", KIND, "styles")]
    parts += [override.format(f"worksheets/sheet{at}.xml", KIND, "worksheet") for at in range(1, sheets + 1)]
    return (
        f'{HEAD}<Types xmlns="{PACKAGE}/content-types"><Default Extension="xml" ContentType="application/xml"/>'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f"{''.join(parts)}</Types>"
    )


def _relations(targets: Sequence[tuple[str, str]]) -> str:
    links = "".join(
        f'<Relationship Id="rId{at}" Type="{RELATIONS}/{kind}" Target="{target}"/>'
        for at, (kind, target) in enumerate(targets, 1)
    )
    return f'{HEAD}<Relationships xmlns="{PACKAGE}/relationships">{links}</Relationships>'


def _book(sheets: Sequence[Sheet]) -> str:
    names = "".join(
        f'<sheet name="{escape(sheet.name)}" sheetId="{at}"{_hidden_state(sheet)} r:id="rId{at}"/>'
        for at, sheet in enumerate(sheets, 1)
    )
    return f'{HEAD}<workbook xmlns="{MAIN}" xmlns:r="{RELATIONS}"><sheets>{names}</sheets></workbook>'


def _hidden_state(sheet: Sheet) -> str:
    return ' state="hidden"' if sheet.hidden else ""


def _styles(formats: Sequence[str]) -> str:
    quoted = [escape(one, {'"': "&quot;"}) for one in formats]
    numbers = "".join(f'<numFmt numFmtId="{164 + at}" formatCode="{one}"/>' for at, one in enumerate(quoted))
    styles = "".join(f'<xf numFmtId="{164 + at}" fontId="0" fillId="0" borderId="0" applyNumberFormat="1"/>'
                     for at in range(len(formats)))  # fmt: skip
    return (
        f'{HEAD}<styleSheet xmlns="{MAIN}">'
        + (f'<numFmts count="{len(formats)}">{numbers}</numFmts>' if formats else "")
        + '<fonts count="1"><font><sz val="11"/><name val="Sans"/></font></fonts>'
        '<fills count="1"><fill><patternFill patternType="none"/></fill></fills>'
        '<borders count="1"><border/></borders>'
        '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>'
        f'<cellXfs count="{len(formats) + 1}"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>{styles}</cellXfs>'
        "</styleSheet>"
    )


def letter(column: int) -> str:
    """The letters of a column counted from 1: 28 is AB."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def _worksheet(sheet: Sheet, formats: Sequence[str]) -> str:
    rows = "".join(_row(at, cells, at in sheet.hidden_rows, formats) for at, cells in enumerate(sheet.rows, 1))
    dimension = sheet.dimension or f"A1:{letter(max(len(row) for row in sheet.rows))}{len(sheet.rows)}"
    columns = "".join(f'<col min="{at}" max="{at}" width="9" hidden="1"/>' for at in sheet.hidden_columns)
    merged = "".join(f'<mergeCell ref="{area}"/>' for area in sheet.merged)
    return (
        f'{HEAD}<worksheet xmlns="{MAIN}"><dimension ref="{dimension}"/>'
        + (f"<cols>{columns}</cols>" if columns else "")
        + f"<sheetData>{rows}</sheetData>"
        + (f'<mergeCells count="{len(sheet.merged)}">{merged}</mergeCells>' if merged else "")
        + "</worksheet>"
    )


def _row(at: int, cells: Sequence[Cell], hidden: bool, formats: Sequence[str]) -> str:
    if not cells and not hidden:
        return ""
    inside = "".join(_cell(f"{letter(column)}{at}", cell, formats) for column, cell in enumerate(cells, 1))
    return f'<row r="{at}"{" hidden=" + chr(34) + "1" + chr(34) if hidden else ""}>{inside}</row>'


def _cell(where: str, cell: Cell, formats: Sequence[str]) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return f'<c r="{where}" t="b"><v>{int(cell)}</v></c>'
    if isinstance(cell, str):
        return f'<c r="{where}" t="inlineStr"><is><t xml:space="preserve">{escape(cell)}</t></is></c>'
    if isinstance(cell, Number):
        style = f' s="{formats.index(cell.shown_as) + 1}"' if cell.shown_as else ""
        return f'<c r="{where}"{style}><v>{cell.stored}</v></c>'
    if isinstance(cell, Formula):
        value = "" if cell.cached is None else f"<v>{cell.cached}</v>"
        return f'<c r="{where}"><f>{escape(cell.formula)}</f>{value}</c>'
    if isinstance(cell, Fault):
        return f'<c r="{where}" t="e"><v>{cell.shown}</v></c>'
    runs = "".join(f'<r><rPr><b/></rPr><t xml:space="preserve">{escape(run)}</t></r>' for run in cell.runs)
    return f'<c r="{where}" t="inlineStr"><is>{runs}</is></c>'
