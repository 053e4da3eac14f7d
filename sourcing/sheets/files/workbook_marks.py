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

from ..worksheet import ColumnRows
from .archive import Archive, name_key
from .workbook_cut_values import whole_values
from .workbook_formats import BUILT_IN, NumberFormat, read_format, shows_a_number
from .workbook_found import LONGEST_TEXT, MOST_CELLS, Broken, Found, TooLong, TooMany, TooMuchText, TooWide
from .workbook_parse import Declared, SheetReader, parse, tags_of
from .workbook_scan import Irregular, scan
from .workbook_values import LEAST_BYTES, LongValues, SharedTexts

MOST_STRING_BYTES = 300_000_000
"""Text of all cells together: a text that is stored once is copied for every cell that shows it."""
MOST_STRINGS = 4_000_000
SHORTEST_CELL = len('<c t="s"><v>0</v></c>')
WORKBOOK = "xl/workbook.xml"
HIDDEN = ("hidden", "veryHidden")


@dataclass(frozen=True)
class BookMarks:
    """By worksheet name, what was found beside its values. `formats`: those that matter, by style.

    `hidden`: the names of hidden worksheets; `rows`: the cells of long worksheets that were kept on the way.
    """

    sheets: dict[str, Found] = field(default_factory=dict)
    formats: dict[int, NumberFormat] = field(default_factory=dict)
    hidden: frozenset[str] = frozenset()
    rows: dict[str, ColumnRows] = field(default_factory=dict)


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
    styles = _styles(archive)
    strings = _of_kind(archive, "sharedStrings", "xl/sharedstrings.xml")
    sizes = _string_sizes(archive, strings)
    recalculated = any(name == "calcPr" and tag.get("fullCalcOnLoad") in ("1", "true") for _, name, tag in book)
    hidden = frozenset(tag.get("name", "") for _, name, tag in book if name == "sheet" and tag.get("state") in HIDDEN)
    marks = BookMarks(formats=styles.formats, hidden=hidden)
    texts = SharedTexts(archive, strings)
    for name, part in _sheets(archive, book):
        if name in marks.sheets:
            raise Broken  # the reader finds worksheets by their name, and would read the first twice
        found, values = _found(archive, part, styles, sizes, recalculated)
        marks.sheets[name] = found
        check_cells(marks.sheets.values())
        rows = None if found.marked(styles.formats) else values.columns(found, texts)
        if rows:
            marks.rows[name] = rows
    return marks


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
            part = part_of(target.get("Target", ""))
            if part not in archive.parts:
                raise archive.damaged()
            yield tag.get("name", ""), part


def _relations(archive: Archive) -> list[dict[str, str]]:
    tags = tags_of(archive.small("xl/_rels/workbook.xml.rels"))
    return [tag for _, name, tag in tags if name == "Relationship" and tag.get("TargetMode") != "External"]


def part_of(target: str) -> str:
    """The part a relation of the workbook names."""
    name = name_key(target)
    return name if name.startswith("xl/") else f"xl/{name}"


def _of_kind(archive: Archive, kind: str, usual: str) -> str:
    """The part of the workbook's relation of this kind; by its usual name where there is no relation."""
    for tag in _relations(archive):
        if tag.get("Type", "").endswith(f"/{kind}"):
            return part_of(tag.get("Target", ""))
    return usual


@dataclass(frozen=True)
class _Styles:
    """By number of style: the formats that matter, the styles that show numbers as numbers, those struck through."""

    formats: dict[int, NumberFormat]
    plain: frozenset[int]
    struck: frozenset[int]


def _styles(archive: Archive) -> _Styles:
    tags = tags_of(archive.small(_of_kind(archive, "styles", "xl/styles.xml")))
    codes = {
        int(tag["numFmtId"]): tag.get("formatCode", "")
        for parent, name, tag in tags
        if parent == "numFmts" and name == "numFmt" and tag.get("numFmtId", "").isdecimal()
    }
    known = {number: read_format(code) for number, code in (BUILT_IN | codes).items()}
    texts = [tag.get("numFmtId", "0") for parent, name, tag in tags if parent == "cellXfs" and name == "xf"]
    styles = {at: int(text) for at, text in enumerate(texts or ["0"]) if text.isdecimal()}
    found = {at: known.get(number) for at, number in styles.items()}
    return _Styles(
        {at: one for at, one in found.items() if one and one.matters},
        frozenset(at for at, number in styles.items() if shows_a_number(number, codes.get(number))),
        _struck(tags),
    )


def _struck(tags: list[tuple[str, str, dict[str, str]]]) -> frozenset[int]:
    """The styles whose font has a line through it; fonts elsewhere ('dxf') belong to no cell by themselves."""
    fonts: set[int] = set()
    count, of_cells = -1, False
    for parent, name, tag in tags:
        if name == "font":
            of_cells = parent == "fonts"
            count += of_cells
        elif parent == "font" and name == "strike" and of_cells and tag.get("val", "1") not in ("0", "false"):
            fonts.add(count)
    used = [tag.get("fontId", "") for parent, name, tag in tags if parent == "cellXfs" and name == "xf"]
    return frozenset(at for at, font in enumerate(used) if font.isdecimal() and int(font) in fonts)


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
    archive: Archive, part: str, styles: _Styles, sizes: npt.NDArray[np.int64], recalculated: bool
) -> tuple[Found, LongValues]:
    """Looks over one worksheet. The texts are summed up only where there could be too many of them."""
    size, unpacked = archive.parts[part].file_size, archive.unpacked
    counted = sizes if int(sizes.max(initial=0)) * (size // SHORTEST_CELL) > MOST_STRING_BYTES else None
    marked = frozenset(styles.formats)
    found = Found(marked, styles.struck, counted, recalculated)
    values = LongValues(styles.plain, wanted=size >= LEAST_BYTES)
    try:
        scan(archive.pieces(part), found, values)
    except Irregular:
        archive.unpacked = unpacked
        values.give_up()
        found = Found(marked, styles.struck, counted, recalculated)
        reader = SheetReader(found)
        parse(whole_values(archive.pieces(part)), reader)
        reader.finish()
    return found, values
