"""Files that are no sheet: one sentence, never a traceback, whatever the bytes."""

import random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from tests.sheets.sheet_files import HEADER, ROW, counts, csv_bytes, ods_bytes, read, xlsx_bytes, zip_bytes

WORKBOOK = xlsx_bytes(Prices=[HEADER, ROW])
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
NOT_SHEETS = {
    "nothing": (b"", "file-empty"),
    "blank": (b"\xef\xbb\xbf \r\n\r\n", "file-empty"),
    "blank workbook": (xlsx_bytes(Prices=[]), "file-empty"),
    "pdf": (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj\n", "not-a-sheet"),
    "picture": (b"\x89PNG\r\n\x1a\n" + bytes(40), "not-a-sheet"),
    "photograph": (b"\xff\xd8\xff\xe0" + bytes(40), "not-a-sheet"),
    "web page": (b"<!DOCTYPE html><html><table><tr><td>Net</td></tr></table>", "not-a-sheet"),
    "zeros": (bytes(500), "file-empty"),
    "random bytes": (random.Random(3).randbytes(4000), "not-a-sheet"),
    "text document": (zip_bytes({"word/document.xml": b"<w/>"}), "not-a-sheet"),
    "cut workbook": (WORKBOOK[: len(WORKBOOK) // 2], "workbook-damaged"),
    "start of a workbook": (WORKBOOK[:4], "workbook-damaged"),
    "broken part": (zip_bytes({"xl/workbook.xml": b"<workbook", "xl/worksheets/a.xml": b"<"}), "workbook-damaged"),
    "old workbook, cut": (OLE + bytes(600), "workbook-damaged"),
    "password": (OLE + bytes(600) + "EncryptedPackage".encode("utf-16-le"), "password-protected"),
    "letter": (b"Dear Greta,\nthe prices come next week.\nRegards\n", "no-table"),
    "one number": (b"42", "no-table"),
    "no header": (csv_bytes([ROW] * 20), "no-table"),
}


@pytest.mark.parametrize("name", NOT_SHEETS)
def test_it_is_refused_in_one_sentence(name: str) -> None:
    data, code = NOT_SHEETS[name]
    with pytest.raises(Refused) as refusal:
        read(data)
    (problem,) = refusal.value.problems
    assert problem.code == code
    sentence = problem.sentence()
    assert sentence.startswith("prices.csv: ") and sentence.endswith(".") and "\n" not in sentence


def no_crash(data: bytes) -> None:
    """Reads, or refuses; anything else is a bug and comes out of here."""
    try:
        reading = read(data)
    except Refused:
        return
    counts(reading)


@given(st.binary(max_size=600))
@settings(max_examples=300, deadline=None)
@example(b"\xff\xfe\x00\xd8")
@example(b"PK\x03\x04")
@example(OLE)
def test_no_bytes_crash_it(data: bytes) -> None:
    no_crash(data)


CELL = st.one_of(
    st.text(max_size=12),
    st.sampled_from(["1,234", "1.234", "12.50", "-5", "()", "(", "٣", "½", "1e5", "#N/A", "CALL", "USD", "$", '"']),
    st.text(st.sampled_from("0123456789.,'+-/ €$EUR()"), max_size=10),
)


@given(st.lists(st.lists(CELL, min_size=6, max_size=9), min_size=1, max_size=8), st.sampled_from(",;\t"))
@settings(max_examples=300, deadline=None)
def test_no_cells_under_a_good_header_crash_it(rows: list[list[str]], delimiter: str) -> None:
    header = ["Part Number", "Net", "10+", "Pack", "Stock", "Lead time", "Core", "Price per", "Superseded by"]
    no_crash(csv_bytes([header, *rows], delimiter, "utf-8"))


@given(st.integers(0, len(WORKBOOK) - 1), st.binary(min_size=1, max_size=12))
@settings(max_examples=200, deadline=None)
def test_no_damage_to_a_workbook_crashes_it(at: int, patch: bytes) -> None:
    no_crash(WORKBOOK[:at] + patch + WORKBOOK[at + len(patch) :])
    no_crash(WORKBOOK[:at])


@given(st.integers(0, 700), st.binary(min_size=1, max_size=12))
@settings(max_examples=100, deadline=None)
def test_no_damage_to_an_opendocument_spreadsheet_crashes_it(at: int, patch: bytes) -> None:
    data = ods_bytes([HEADER, ROW])
    no_crash(data[:at] + patch + data[at + len(patch) :])
