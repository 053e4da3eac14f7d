"""A person's answers about rows of two files: a table with the columns row, part_row and answer."""

from collections.abc import Iterator

from ..basics.problem import Place, refused
from .cells.cell import shown_of
from .files.grid import read_grid
from .worksheet import is_blank

COLUMNS = ("row", "part_row", "answer")
ANSWERS = {"yes": True, "no": False, "": None}


def judged_rows(data: bytes, file: str) -> Iterator[tuple[Place, int, int, bool]]:
    """Each answer: its place, the row of the sheet, the row of the parts, whether it is the same part.

    The columns may stand in any order among others, as in what `sourcing match` writes; a blank answer is none.
    Refuses a file without them, a row that is no whole number and an answer that is neither yes nor no.
    """
    for worksheet in read_grid(data, file):
        rows = [[shown_of(cell).strip() for cell in row] for row in worksheet.rows]
        header = [cell.casefold() for cell in rows[0]] if rows else []
        if not all(column in header for column in COLUMNS):
            continue
        at = [header.index(column) for column in COLUMNS]
        for number, row in zip(worksheet.row_numbers[1:], rows[1:], strict=True):
            if is_blank(row):
                continue
            place = Place(file=file, worksheet=worksheet.name, row=number)
            one, part, answer = ((row[column] if column < len(row) else "") for column in at)
            if answer.casefold() not in ANSWERS:
                raise refused("unknown-word", place=place, found=answer, column="answer", known="yes, no")
            same = ANSWERS[answer.casefold()]
            if same is not None:
                yield place, _whole(one, place), _whole(part, place), same
        return
    raise refused("no-answers", place=Place(file=file), known=", ".join(COLUMNS))


def _whole(text: str, place: Place) -> int:
    if not (text.isascii() and text.isdecimal()):
        raise refused("count-below-one", place=place, found=text)
    return int(text)
