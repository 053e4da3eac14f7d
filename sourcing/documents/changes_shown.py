"""What changed between two sheets, for a page: the first rows under each heading, what costs money first, and counts.

Two long sheets may differ in every row; a page shows the weightiest of them, and the files have all.
"""

from collections.abc import Iterable, Mapping

from ..basics.change import Changed, SheetChanges, SheetPart
from ..basics.value import Value
from .changes import MOVES, change_cells, change_details, number_words, part_price, percent_words
from .changes_tables import TITLES, count_rows

Place = tuple[str, int]
"""Worksheet and row."""

NONE: Mapping[Place, str] = {}
OURS = "Parts of ours"
MOST = 500
ROWS = 50


class ChangeRow(Value, frozen=True, kw_only=True):
    """One number: by how much, what it was and is now, and what the figures do not say. Blank where not known.

    `ours`: the part of ours it is, and the open jobs that call for it.
    """

    percent: str = ""
    number: str
    description: str
    was: str
    now: str
    details: tuple[str, ...] = ()
    ours: str = ""


class ChangeSection(Value, frozen=True, kw_only=True):
    """What happened, how many numbers it happened to, and the first rows of them."""

    title: str
    total: int
    rows: tuple[ChangeRow, ...]


class ChangesShown(Value, frozen=True, kw_only=True):
    """All of it. `counts`: where every offer of the old and of the new sheet went; the last row is the sum.

    `ours`: how many of the changed numbers are parts of ours; they stand first, and once more where they belong.
    """

    sections: tuple[ChangeSection, ...]
    counts: tuple[tuple[str, int, int], ...]
    rose: int
    median_rise: str
    adds_up: bool
    ours: int = 0


def changes_shown(changes: SheetChanges, ours: Mapping[Place, str] = NONE, most: int = MOST) -> ChangesShown:
    """At most `most` rows under each heading: what rose, most first; fell; vanished; appeared; the rest.

    `ours`: by row of the new sheet, what part of ours it is and which jobs call for it.
    """
    of_ours = [one for one in changes.changed if _place(one) in ours]
    kinds = {kind: [one for one in changes.changed if one.kind == kind] for kind in TITLES}
    moves = [_section(TITLES[kind], kinds[kind], ours, most) for kind in MOVES]
    others = [_section(TITLES[kind], kinds[kind], ours, most) for kind in TITLES if kind not in MOVES]
    parts = [
        _parts("Vanished, on the old sheet only", changes.vanished, most, is_now=False),
        _parts("Appeared, on the new sheet only", changes.appeared, most, is_now=True),
    ]
    several = ChangeSection(
        title="Several offers under one number, not compared: please look",
        total=len(changes.several),
        rows=tuple(_several((one.before or one.now)[0]) for one in changes.several[:most]),
    )
    return ChangesShown(
        sections=tuple(
            one for one in (_section(OURS, of_ours, ours, most), *moves, *parts, *others, several) if one.total
        ),
        counts=tuple((str(what), int(str(old)), int(str(new))) for what, old, new in count_rows(changes)),
        rose=next((one.in_all for one in changes.counts if one.kind == "rose"), 0),
        median_rise=percent_words(changes.median_rise),
        adds_up=changes.adds_up,
        ours=len(of_ours),
    )


def _section(title: str, some: list[Changed], ours: Mapping[Place, str], most: int) -> ChangeSection:
    return ChangeSection(title=title, total=len(some), rows=tuple(_row(one, ours) for one in some[:most]))


def _row(one: Changed, ours: Mapping[Place, str]) -> ChangeRow:
    percent, number, description, was, now = change_cells(one)
    return ChangeRow(
        percent=percent,
        number=number,
        description=description,
        was=was,
        now=now,
        details=tuple(change_details(one)),
        ours=ours.get(_place(one), ""),
    )


def _place(one: Changed) -> Place:
    return one.now.worksheet, one.now.row


def _parts(title: str, parts: Iterable[SheetPart], most: int, is_now: bool) -> ChangeSection:
    every = tuple(parts)
    rows = (
        ChangeRow(
            number=number_words(part),
            description=part.description,
            was="" if is_now else part_price(part),
            now=part_price(part) if is_now else "",
        )
        for part in every[:most]
    )
    return ChangeSection(title=title, total=len(every), rows=tuple(rows))


def _several(part: SheetPart) -> ChangeRow:
    return ChangeRow(number=number_words(part), description=part.description, was="", now="")


class SectionPage(Value, frozen=True, kw_only=True):
    """One page of a heading. `first`: number of its first row, counted from 1; `total`: with those only the
    files have."""

    title: str
    total: int
    rows: tuple[ChangeRow, ...]
    first: int
    page: int
    pages: int


def section_page(changes: ChangesShown, title: str, page: int) -> SectionPage | None:
    """One page of the rows that are kept of a heading; None where there is no such heading."""
    section = next((one for one in changes.sections if one.title == title), None)
    if section is None:
        return None
    pages = max(-(-len(section.rows) // ROWS), 1)
    here = min(max(page, 1), pages)
    first = (here - 1) * ROWS
    rows = section.rows[first : first + ROWS]
    return SectionPage(title=title, total=section.total, rows=rows, first=first + 1, page=here, pages=pages)
