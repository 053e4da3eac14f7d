"""What changed in the headers since the supplier's sheet before: notes for the clerk, nothing is decided here."""

from collections.abc import Callable, Mapping, Sequence

from sourcing.basics.problem import Place, Problem, Refused, problem
from sourcing.basics.sheet import Column

from .column_names import CONFIRMED, name_of, plain_key
from .header_keys import header_key

Meaning = tuple[str, int, str]
"""Field ('' for none), from how many pieces, warehouse."""


def changes(before: Sequence[Column], now: Sequence[Column], place: Place | None = None) -> tuple[Problem, ...]:
    """One note for each header that went, came, means something else, or has another name for the same meaning.

    Another order of the same headers is no change, nor are case, spaces and punctuation. Columns without a header
    are not compared. A header that went and came is one note.
    """
    earlier, later = _by_header(before), _by_header(now)
    gone = [column for key, column in earlier.items() if key not in later]
    new = [column for key, column in later.items() if key not in earlier]
    renamed = _renamed(gone, new)
    pairs = [(column, later[key]) for key, column in earlier.items() if key in later]
    notes = [_renamed_note(old, column, place) for old, column in renamed]
    notes += [_other_note(old, column, place) for old, column in pairs if _meaning(old) != _meaning(column)]
    taken = [column for pair in renamed for column in pair]
    notes += [_gone_note(column, place) for column in gone if _counts(column) and column not in taken]
    notes += [_new_note(column, place) for column in new if column not in taken]
    return tuple(notes)


def now_worked_out(columns: Sequence[Column], before: str, place: Place) -> tuple[Problem, ...]:
    """What is said of a sheet without a net price column whose net prices are worked out from a list price.

    `before`: the header of the net prices on the sheet before. Refuses where no person has called the column the list
    price: half of what the shop pays, or double, hangs on it.
    """
    listed = next(column for column in columns if column.field == "list price")
    off = next(column for column in columns if column.field in ("discount", "multiplier"))
    code = "net-price-worked-out" if listed.why == CONFIRMED else "net-price-worked-out-now"
    said = problem(code, place=place, found=name_of(listed), before=before, off=name_of(off), by=off.field)
    if listed.why != CONFIRMED:
        raise Refused(said)
    return (said,)


def _by_header(columns: Sequence[Column]) -> Mapping[str, Column]:
    """The columns by header; of equal headers the first one that means something."""
    found: dict[str, Column] = {}
    for column in columns:
        key = header_key(column.header) or plain_key(column.header)
        if column.header and (key not in found or (column.field and not found[key].field)):
            found[key] = column
    return found


def _meaning(column: Column) -> Meaning:
    return ("" if column.field in (None, "not used") else str(column.field), column.from_quantity or 1, column.place)


def _counts(column: Column) -> bool:
    return column.field not in (None, "not used")


def _renamed(gone: Sequence[Column], new: Sequence[Column]) -> list[tuple[Column, Column]]:
    """Pairs of a header gone and a new one that share a meaning no other of the two lists has."""
    old, fresh = _once(gone, _meaning), _once(new, _meaning)
    return [(old[meaning], fresh[meaning]) for meaning in old if meaning[0] and meaning in fresh]


def _once(columns: Sequence[Column], meaning: Callable[[Column], Meaning]) -> dict[Meaning, Column]:
    found: dict[Meaning, list[Column]] = {}
    for column in columns:
        found.setdefault(meaning(column), []).append(column)
    return {key: group[0] for key, group in found.items() if len(group) == 1}


def _shown(column: Column) -> str:
    pieces = f" from {column.from_quantity}" if column.from_quantity and column.from_quantity > 1 else ""
    place = f" in {column.place}" if column.place else ""
    return f"{column.field or 'not known'}{pieces}{place}"


def _renamed_note(old: Column, column: Column, place: Place | None) -> Problem:
    return problem("header-changed", place=place, found=column.header, before=old.header, meaning=_shown(column))


def _other_note(old: Column, column: Column, place: Place | None) -> Problem:
    return problem("header-means-other", place=place, found=column.header, before=_shown(old), meaning=_shown(column))


def _gone_note(column: Column, place: Place | None) -> Problem:
    if column.why == CONFIRMED:
        return problem("confirmed-header-gone", place=place, found=column.header, meaning=column.field)
    return problem("header-gone", place=place, found=column.header, meaning=_shown(column))


def _new_note(column: Column, place: Place | None) -> Problem:
    return problem("header-new", place=place, found=column.header, meaning=_shown(column))
