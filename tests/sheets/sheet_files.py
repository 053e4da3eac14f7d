"""Files as suppliers send them, made in memory for the tests."""

import csv
import io
import zipfile
from collections.abc import Sequence
from typing import Any

import openpyxl
import pandas as pd

from sourcing.sheets.reading import Hints, SheetReading, read_sheet

HEADER = ["Part Number", "Brand", "Description", "List", "Net", "Pack", "Stock", "Lead time"]
ROW = ["NW-40388", "Norrowby", "Belt, auger drive", "40.00", "22.50", "1", "4", "In stock"]


def csv_bytes(rows: Sequence[Sequence[str]], delimiter: str = ",", encoding: str = "utf-8") -> bytes:
    """Rows as a delimited file."""
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter).writerows(rows)
    return out.getvalue().encode(encoding)


def xlsx_bytes(**worksheets: Sequence[Sequence[Any]]) -> bytes:
    """A workbook of these worksheets; None is a cell that is not there."""
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in worksheets.items():
        worksheet = book.create_sheet(name)
        for row in rows:
            worksheet.append(list(row))
    return saved(book)


def saved(book: openpyxl.Workbook) -> bytes:
    """The workbook's bytes."""
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def ods_bytes(rows: Sequence[Sequence[str]]) -> bytes:
    """The smallest OpenDocument spreadsheet with these text cells (OASIS OpenDocument 1.2, part 1)."""
    cells = "".join(
        "<table:table-row>"
        + "".join(f'<table:table-cell office:value-type="string"><text:p>{c}</text:p></table:table-cell>' for c in row)
        + "</table:table-row>"
        for row in rows
    )
    name = "urn:oasis:names:tc:opendocument:xmlns:"
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="{name}office:1.0" '
        f'xmlns:table="{name}table:1.0" xmlns:text="{name}text:1.0" office:version="1.2"><office:body>'
        f'<office:spreadsheet><table:table table:name="Prices">{cells}</table:table></office:spreadsheet>'
        "</office:body></office:document-content>"
    )
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    manifest = (
        f'<?xml version="1.0" encoding="UTF-8"?><m:manifest xmlns:m="{name}manifest:1.0" m:version="1.2">'
        f'<m:file-entry m:full-path="/" m:media-type="{kind}"/></m:manifest>'
    )
    return zip_bytes(
        {"mimetype": kind.encode(), "META-INF/manifest.xml": manifest.encode(), "content.xml": content.encode()}
    )


def zip_bytes(parts: dict[str, bytes]) -> bytes:
    """An archive of these parts."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in parts.items():
            archive.writestr(name, data, zipfile.ZIP_STORED if name == "mimetype" else None)
    return out.getvalue()


def read(data: bytes, currency: str = "USD", **meanings: Any) -> SheetReading:
    """The file read for the invented supplier Stonegarth."""
    return read_sheet(data, "prices.csv", Hints(supplier="stonegarth", currency=currency, meanings=meanings))


def read_rows(*rows: Sequence[str], header: Sequence[str] = HEADER, currency: str = "USD") -> SheetReading:
    """A comma file of the header and these rows, read."""
    return read(csv_bytes([header, *rows]), currency)


def row(**changes: str) -> list[str]:
    """The usual row with some cells changed, named by header: row(Net='CALL')."""
    cells = dict(zip(HEADER, ROW, strict=True))
    return list((cells | {key.replace("_", " "): value for key, value in changes.items()}).values())


def counts(reading: SheetReading) -> list[tuple[int, int, int, int]]:
    """Rows, offers, structure and problem rows of each worksheet, after checking that they add up everywhere."""
    found = reading.summary.accounting
    assert all(one.adds_up for one in found)
    assert sum(one.offers for one in found) == len(reading.offers)
    return [(one.rows, one.offers, one.structure, one.problem_rows) for one in found]


def codes(reading: SheetReading) -> list[str]:
    """The codes of the problems, in order."""
    return [problem.code for problem in reading.summary.problems]


def only(frame: pd.DataFrame) -> dict[str, Any]:
    """The one offer there is, as a dict."""
    assert len(frame) == 1
    return {str(name): frame[name].iloc[0] for name in frame.columns}
