"""What python-calamine does not tell of an XLSX or XLSM workbook, read from its XML before the workbook is handed over.

Hidden rows and columns, number formats that change what a number says, error cells, formulas without a stored value;
and whether the cells would fill the memory. External links, macros and pictures are never looked at.
"""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from sourcing.basics.problem import Place, refused

from .archive import Archive, name_key
from .workbook_formats import BUILT_IN, NumberFormat, read_format
from .workbook_found import LONGEST_TEXT, MOST_CELLS, Broken, Found, TooLong, TooMany, TooMuchText, TooWide
from .workbook_parse import Declared, SheetReader, parse, tags_of
from .workbook_scan import Irregular, scan

MOST_STRING_BYTES = 300_000_000
"""Text of all cells together: a text that is stored once is copied for every cell that shows it."""
MOST_STRINGS = 4_000_000
SHORTEST_CELL = len('<c t="s"><v>0</v></c>')
WORKBOOK = "xl/workbook.xml"


@dataclass(frozen=True)
class BookMarks:
    """By worksheet name, what was found beside its values. `formats`: those that matter, by style."""

    sheets: dict[str, Found] = field(default_factory=dict)
    formats: dict[int, NumberFormat] = field(default_factory=dict)


def read_marks(archive: Archive) -> BookMarks:
    """Looks over every worksheet. Refuses what is broken, declares a document type, or would fill the memory."""
    with refusing(archive.file):
        return _read(archive)


@contextmanager
def refusing(file: str) -> Iterator[None]:
    """Makes one sentence of what is found wrong on the way."""
    place = Place(file=file)
    try:
        yield
    except Declared as error:
        raise refused("workbook-declares", place=place) from error
    except TooLong as error:
        raise refused("cell-too-long", place=place) from error
    except TooMany as error:
        raise refused(error.code, place=place, most=error.most) from error
    except TooMuchText as error:
        raise refused("unpacks-too-large", place=place, megabytes=error.size // 1_000_000) from error
    except TooWide as error:
        raise refused("worksheet-too-wide", place=place, rows=error.rows, columns=error.columns) from error
    except Broken as error:
        raise refused("workbook-damaged", place=place) from error


def _read(archive: Archive) -> BookMarks:
    book = tags_of(archive.small(WORKBOOK))
    formats = _formats(archive)
    sizes = _string_sizes(archive, _of_kind(archive, "sharedStrings", "xl/sharedstrings.xml"))
    recalculated = any(name == "calcPr" and tag.get("fullCalcOnLoad") in ("1", "true") for _, name, tag in book)
    sheets: dict[str, Found] = {}
    for name, part in _sheets(archive, book):
        sheets[name] = _found(archive, part, frozenset(formats), sizes, recalculated)
        check_cells(sheets.values())
    return BookMarks(sheets, formats)


def check_cells(sheets: Iterable[Found]) -> None:
    """Raises TooWide or TooMuchText for worksheets whose rectangles or whose texts would fill the memory."""
    all_of = list(sheets)
    if sum(found.height * found.width for found in all_of) > MOST_CELLS:
        widest = max(all_of, key=lambda found: found.height * found.width)
        raise TooWide(widest.height, widest.width)
    text = sum(found.string_bytes for found in all_of)
    if text > MOST_STRING_BYTES:
        raise TooMuchText(text)


def _sheets(archive: Archive, book: list[tuple[str, str, dict[str, str]]]) -> Iterator[tuple[str, str]]:
    """Name and part of every worksheet, in order; chart sheets and the like are left out."""
    targets = {tag["Id"]: tag for tag in _relations(archive) if "Id" in tag}
    for parent, name, tag in book:
        if parent == "sheets" and name == "sheet":
            target = targets.get(tag.get("id", ""), {})
            if not target.get("Type", "/worksheet").endswith("/worksheet"):
                continue
            part = _part(target.get("Target", ""))
            if part not in archive.parts:
                raise archive.damaged()
            yield tag.get("name", ""), part


def _relations(archive: Archive) -> list[dict[str, str]]:
    tags = tags_of(archive.small("xl/_rels/workbook.xml.rels"))
    return [tag for _, name, tag in tags if name == "Relationship" and tag.get("TargetMode") != "External"]


def _part(target: str) -> str:
    name = name_key(target)
    return name if name.startswith("xl/") else f"xl/{name}"


def _of_kind(archive: Archive, kind: str, usual: str) -> str:
    """The part of the workbook's relation of this kind; by its usual name where there is no relation."""
    for tag in _relations(archive):
        if tag.get("Type", "").endswith(f"/{kind}"):
            return _part(tag.get("Target", ""))
    return usual


def _formats(archive: Archive) -> dict[int, NumberFormat]:
    """The number formats that matter, by number of style."""
    tags = tags_of(archive.small(_of_kind(archive, "styles", "xl/styles.xml")))
    codes = dict(BUILT_IN)
    for parent, name, tag in tags:
        if parent == "numFmts" and name == "numFmt" and tag.get("numFmtId", "").isdecimal():
            codes[int(tag["numFmtId"])] = tag.get("formatCode", "")
    known = {number: read_format(code) for number, code in codes.items()}
    styles = [tag.get("numFmtId", "0") for parent, name, tag in tags if parent == "cellXfs" and name == "xf"]
    found = {at: known.get(int(number)) for at, number in enumerate(styles) if number.isdecimal()}
    return {at: one for at, one in found.items() if one and one.matters}


def _string_sizes(archive: Archive, part: str) -> npt.NDArray[np.int64]:
    """How many bytes of XML each shared string takes. Entities can't unfold: a declaration is refused."""
    if part not in archive.parts:
        return np.zeros(0, np.int64)
    sizes, rest, strings = [], b"", 0
    for piece in archive.pieces(part):
        *whole, rest = (rest + piece).split(b"</si>" if b":si>" not in piece[:4000] else b":si>")
        sizes.append(np.fromiter(map(len, whole), np.int64, len(whole)))
        strings += len(whole)
        if strings > MOST_STRINGS:
            raise TooMany("too-many-cells", MOST_STRINGS)
        if max(len(rest), int(sizes[-1].max(initial=0))) > LONGEST_TEXT:
            raise TooLong
        if b"<!" in piece or b"<!" in rest:
            _check_declaration(archive, part)
    return np.concatenate(sizes) if sizes else np.zeros(0, np.int64)


def _check_declaration(archive: Archive, part: str) -> None:
    """Comments and character data are let through, a document type is not."""
    text = b""
    for piece in archive.pieces(part):
        text = text[-16:] + piece
        if b"<!DOCTYPE" in text or b"<!ENTITY" in text:
            raise Declared


def _found(
    archive: Archive, part: str, styles: frozenset[int], sizes: npt.NDArray[np.int64], recalculated: bool
) -> Found:
    """Looks over one worksheet. The texts are summed up only where there could be too many of them."""
    cells = archive.parts[part].file_size // SHORTEST_CELL
    counted = sizes if int(sizes.max(initial=0)) * cells > MOST_STRING_BYTES else None
    return _looked_over(archive, part, Found(styles=styles, string_sizes=counted, recalculated=recalculated))


def _looked_over(archive: Archive, part: str, found: Found) -> Found:
    unpacked = archive.unpacked
    try:
        scan(archive.pieces(part), found)
    except Irregular:
        archive.unpacked = unpacked
        found = Found(styles=found.styles, string_sizes=found.string_sizes, recalculated=found.recalculated)
        reader = SheetReader(found)
        parse(archive.pieces(part), reader)
        reader.finish()
    return found
