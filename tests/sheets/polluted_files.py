"""One clean invented table, written in every dialect and damaged in every way, each with the rows it must give."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

Rows = list[list[str]]
HEADER = ["DATE", "TIME", "Qty", "PARTNO", "Price", "Kind", "Description", "Page", "Comments"]
KINDS = ["Belt", "Bearing", "Shear pin", "Belt keeper"]
TEXTS = [
    "Auger drive belt",
    "Belt, auger, cogged",
    'Idler bearing, 1/2" bore',
    'The "quiet" keeper',
    "Shear pin; grade 2",
    "Don't mix with old ones",
]
COMMENTS = ["", "last one", "ask first, then order", "two lines\nin one cell", "see 'notes'", "NLA: none left"]


def clean_rows(count: int = 84) -> Rows:
    """The table: a header and rows with dates, times, leading zeros, empty cells, delimiters, quotes, line breaks."""
    rows = [HEADER]
    for at in range(count):
        rows.append(
            [
                f"{at % 12 + 1}/{at % 28 + 1}/2026",
                f"{at % 24:02}:{at * 7 % 60:02}",
                str(at % 9 + 1),
                f"00{at * 37 % 9000 + 1000}",
                f"{at * 1.37 + 2:.2f}",
                KINDS[at % len(KINDS)],
                TEXTS[at % len(TEXTS)],
                f"parts.example/list?no={at}",
                COMMENTS[at * 5 % len(COMMENTS)] if at % 3 else "",
            ]
        )
    return rows


@dataclass(frozen=True)
class Style:
    """How a file is written. `escape` blank: a quote in a quoted cell is doubled. `quote` blank: nothing is quoted."""

    delimiter: str = ","
    quote: str = '"'
    escape: str = ""
    end: str = "\r\n"
    final: int = 1
    all_quoted: bool = False

    def cell(self, text: str) -> str:
        """The cell as it stands in the file."""
        if not self.quote:
            return text.replace("\\", "\\\\").replace(self.delimiter, f"\\{self.delimiter}") if self.escape else text
        special = {*self.delimiter, self.quote, "\n", "\r", "\\" if self.escape else self.quote}
        if not self.all_quoted and not special & set(text):
            return text
        if self.escape:
            inner = text.replace("\\", "\\\\").replace(self.quote, f"\\{self.quote}")
        else:
            inner = text.replace(self.quote, self.quote * 2)
        return f"{self.quote}{inner}{self.quote}"

    def line(self, row: Sequence[str]) -> str:
        """The record without its end."""
        return self.delimiter.join(map(self.cell, row))

    def text(self, rows: Sequence[Sequence[str]]) -> str:
        """The file."""
        return self.end.join(map(self.line, rows)) + self.end * self.final


PLAIN = Style()
TOLD = {",": "comma", ";": "semicolon", "\t": "tab", "|": "bar", " ": "space", ", ": "comma and space",
        "; ": "semicolon and space", ":": "colon", "^": "caret", "~": "tilde"}  # fmt: skip


@dataclass(frozen=True)
class Case:
    """A file and the rows it must give."""

    name: str
    data: bytes
    rows: Rows


def cases() -> Iterator[Case]:
    """All polluted variants of the clean table."""
    yield from _dialects()
    yield from _file_shapes()
    yield from _damaged_rows()


def _case(name: str, rows: Rows, style: Style = PLAIN, encoding: str = "utf-8") -> Case:
    return Case(name, style.text(rows).encode(encoding), rows)


def _dialects() -> Iterator[Case]:
    rows = clean_rows()
    flat = [[cell.replace("\n", " ") for cell in row] for row in rows]
    for delimiter, told in TOLD.items():
        yield _case(f"{told}", rows, Style(delimiter))
        yield _case(f"{told}, single quotes", rows, Style(delimiter, "'"))
        yield _case(f"{told}, all cells quoted", rows, Style(delimiter, all_quoted=True))
        yield _case(f"{told}, single quotes around all", rows, Style(delimiter, "'", all_quoted=True))
        yield _case(f"{told}, backslash", rows, Style(delimiter, escape="\\"))
        yield _case(f"{told}, backslash and single quotes", rows, Style(delimiter, "'", escape="\\"))
        if len(delimiter) == 1:
            yield _case(f"{told}, no quotes, backslash", flat, Style(delimiter, "", escape="\\"))
    bare = [[cell.replace(";", ",") for cell in row] for row in flat]
    for delimiter in ";\t|^~":
        yield _case(f"{TOLD[delimiter]}, no quotes", bare, Style(delimiter, ""))
    for end, told in (("\n", "LF"), ("\r", "CR"), ("\r\n", "CRLF"), ("\r\r\n", "CRCRLF")):
        yield _case(f"ends {told}", flat, Style(end=end))
        yield _case(f"ends {told}, no final", flat, Style(end=end, final=0))
        yield _case(f"ends {told}, two final", flat, Style(end=end, final=2))
        yield _case(f"ends {told}, line breaks in cells", rows, Style(end=end))
    mixed = "".join(PLAIN.line(row) + ("\r", "\n", "\r\n")[at % 3] for at, row in enumerate(flat))
    yield Case("ends mixed", mixed.encode(), flat)
    for encoding in ("utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-32-be"):
        yield _case(encoding, rows, PLAIN, encoding)
    unescaped = ["x" if '"' in cell else cell for cell in flat[7]]
    unescaped[6] = 'The "quiet" keeper'
    text = PLAIN.text(flat[:7]) + PLAIN.line(unescaped).replace(unescaped[6], f'"{unescaped[6]}"') + "\r\n"
    yield Case(
        "quotes in quotes not escaped", (text + PLAIN.text(flat[8:])).encode(), [*flat[:7], unescaped, *flat[8:]]
    )


def _file_shapes() -> Iterator[Case]:
    rows = clean_rows()
    for count in (1, 2, 3):
        yield _case(f"header and {count - 1} rows", rows[:count])
        yield _case(f"header and {count - 1} rows, no final", rows[:count], Style(final=0))
    yield _case("no header", rows[1:])
    yield _case("one row, no header", rows[1:2])
    names = [
        ["DATE", "", "Qty", "PARTNO", "Price", "", "", "", "Comments"],
        ["", "TIME", "", "", "", "Kind", "What", "Page", ""],
    ]
    yield _case("two header rows", [*names, *rows[1:]])
    yield _case("three header rows", [names[0], ["", "of day", *[""] * 7], names[1], *rows[1:]])
    preamble = [["Price list of Stonegarth Trade Parts, Winter 2026"], ["Prices in USD", "subject to change"], []]
    footer = [[], ["Total", "", "84"], ["All prices are net; see our terms."]]
    yield _case("preamble", [*preamble, *rows])
    yield _case("footer", [*rows, *footer])
    yield _case("preamble and footer", [*preamble, *rows, *footer])
    less = [["Code", "Meaning"], *[[f"K{at}", f"Meaning, {at}"] for at in range(10)]]
    more = [[f"H{at}" for at in range(12)], *[[str(at * to) for to in range(1, 13)] for at in range(30)]]
    yield _case("table of fewer columns below", [*rows, [], *less])
    yield _case("table of fewer columns above", [*less, [], *rows])
    yield _case("table of more columns below", [*rows, *more])
    yield _case("blank rows inside", [*rows[:10], [], *rows[10:20], [], [], *rows[20:]])
    one = [["Part number"], *[[row[3]] for row in rows[1:]]]
    yield _case("one column", one)
    yield _case("one column of times", [["Time"], *[[row[1]] for row in rows[1:]]])
    yield _case("one column of text", [["Kind"], *[[row[5]] for row in rows[1:]]])
    yield _case("a cell of a megabyte", [*rows[:5], [*rows[5][:8], "x, y " * 200_000], *rows[6:]])
    text = PLAIN.text(rows)
    yield Case("zero characters", (text[:300] + "\0" + text[300:900] + "\0\0" + text[900:]).encode(), rows)


def _damaged_rows() -> Iterator[Case]:
    rows = [[cell.replace("\n", " ") for cell in row] for row in clean_rows()]
    for at in (0, 1, 2, 7, 40, 83, 84):
        for column in (0, 4, 8):
            fewer, more = [*rows[at]], [*rows[at]]
            if column < 8:
                fewer[column : column + 2] = ["".join(fewer[column : column + 2])]
                yield _case(f"row {at}: a delimiter too few after {column}", _with(rows, at, fewer))
            more.insert(column, "")
            yield _case(f"row {at}: a delimiter too many at {column}", _with(rows, at, more))
        for column in (0, 4, 5, 6, 7, 8):
            yield from _stray_quotes(rows, at, column)
        for delimiter in (";", "\t", "|", " ", ", "):
            lines = [PLAIN.line(row) for row in rows]
            lines[at] = Style(delimiter).line(rows[at])
            if at > 0:
                yield Case(f"row {at}: {TOLD[delimiter]}", ("\r\n".join(lines) + "\r\n").encode(), rows)


def _stray_quotes(rows: Rows, at: int, column: int) -> Iterator[Case]:
    cell = rows[at][column]
    quoted = PLAIN.cell(cell) != cell
    inner = PLAIN.cell(cell)[1:-1] if quoted else cell
    middle = len(inner) // 2
    spoiled = {"start": '"' + inner, "middle": inner[:middle] + '"' + inner[middle:], "end": inner + '"'}
    for where, text in spoiled.items():
        if quoted and '"' in cell:
            continue
        lines = [PLAIN.line(row) for row in rows]
        cells = [PLAIN.cell(each) for each in rows[at]]
        cells[column] = f'"{text}"' if quoted else text
        lines[at] = ",".join(cells)
        expected = _with(rows, at, [*rows[at][:column], text, *rows[at][column + 1 :]])
        data = ("\r\n".join(lines) + "\r\n").encode()
        yield Case(f"row {at}: stray quote at the {where} of cell {column}{' (quoted)' * quoted}", data, expected)


def _with(rows: Rows, at: int, row: list[str]) -> Rows:
    return [*rows[:at], row, *rows[at + 1 :]]
