"""The worksheets of a comparison of two sheets: one for each thing that happened, all prices, and the counts.

Prices are Decimals beside the pieces they are for and a column that names their currency.
"""

from collections.abc import Iterable, Sequence

from ..basics.change import Changed, ChangeKind, SheetChanges, SheetPart, WordChange
from .csv_text import Cell
from .plain_text import yes_no
from .workbook import Table

MOST_ROWS = 1_048_575
"""Rows of a worksheet of an XLSX file without its header (ECMA-376; the limit is the spreadsheets')."""

TITLES: dict[ChangeKind, str] = {
    "rose": "Rose",
    "rose and fell": "Rose and fell",
    "fell": "Fell",
    "superseded": "Superseded",
    "no longer available": "No longer available",
    "came back": "Came back",
    "price gone": "Price gone",
    "price appeared": "Price appeared",
    "currency changed": "Currency changed",
    "sold differently": "Sold differently",
    "core charge changed": "Core charge changed",
    "discount code changed": "Discount code changed",
    "list price changed": "List price changed",
}
"""Kinds in the order of reading, which begins with what costs money."""

NUMBER = ("Supplier's number", "Maker", "Maker's number", "Description")
PART = (
    *NUMBER, "Net price", "Price for pieces", "List price", "Core charge", "Currency", "Superseded by",
    "No longer available", "Worksheet", "Row",
)  # fmt: skip
CHANGED = (
    "Change, %", "From pieces", *NUMBER, "Net price before", "For pieces before", "Currency before", "Net price now",
    "For pieces now", "Currency now", "Superseded by", "Its net price", "Its pieces", "Its currency", "Other changes",
    "What happened", "Row before", "Row now", "Worksheet now",
)  # fmt: skip
PRICES = (
    "Supplier's number", "Counted under", "Price", "From pieces", "Before", "For pieces before", "Now",
    "For pieces now", "Currency", "Change, %",
)  # fmt: skip


def change_tables(changes: SheetChanges) -> tuple[Table, ...]:
    """Counts; a worksheet for each kind that happened; Vanished, Appeared, Several under one number; Prices."""
    kinds = [(kind, [one for one in changes.changed if one.kind == kind]) for kind in TITLES]
    several = [
        (which, *_part(part))
        for one in changes.several
        for which, parts in (("before", one.before), ("now", one.now))
        for part in parts
    ]
    tables = [
        Table(title="Counts", headers=("What", "Old sheet", "New sheet"), rows=tuple(count_rows(changes))),
        *(_table(TITLES[kind], CHANGED, map(_changed, some)) for kind, some in kinds if some),
        _table("Vanished", PART, map(_part, changes.vanished)),
        _table("Appeared", PART, map(_part, changes.appeared)),
        _table("Several under one number", ("Sheet", *PART), several),
        _table("Prices", PRICES, (row for one in changes.changed for row in _prices(one))),
    ]
    return tuple(part for table in tables for part in _within_limit(table))


def count_rows(changes: SheetChanges) -> list[tuple[Cell, ...]]:
    """Where every offer of both sheets went; the last row is the sum of those above it."""
    rows: list[tuple[Cell, ...]] = [("unchanged", changes.unchanged, changes.unchanged)]
    rows += [(one.kind, one.numbers, one.numbers) for one in changes.counts if one.numbers]
    rows += [("vanished", len(changes.vanished), 0), ("appeared", 0, len(changes.appeared))]
    rows += [("several under one number", changes.several_before, changes.several_now)]
    return [*rows, ("offers on the sheet", changes.before_offers, changes.now_offers)]


def change_rows(changes: SheetChanges) -> Iterable[tuple[Cell, ...]]:
    """Everything but the unchanged in one table, under the headers ('What', *CHANGED)."""
    for one in changes.changed:
        yield (one.kind, *_changed(one))
    for what, parts in (("vanished", changes.vanished), ("appeared", changes.appeared)):
        yield from ((what, *_alone(part, what == "appeared")) for part in parts)
    for several in changes.several:
        for now, parts in ((False, several.before), (True, several.now)):
            yield from (("several under one number", *_alone(part, now)) for part in parts)


def words_of(one: Changed) -> str:
    """What changed besides prices: 'pack 10 to 12; superseded by KA-0037, blank before'."""
    return "; ".join(_word(word) for word in one.words)


def _word(word: WordChange) -> str:
    if word.before and word.now:
        return f"{word.what} {word.before} to {word.now}"
    return f"{word.what} {word.now}, blank before" if word.now else f"{word.what} {word.before} before, now blank"


def _table(title: str, headers: tuple[str, ...], rows: Iterable[tuple[Cell, ...]]) -> Table:
    return Table(title=title, headers=headers, rows=tuple(rows))


def _within_limit(table: Table) -> Iterable[Table]:
    """A table longer than a worksheet goes on in another one: nothing is cut off."""
    yield Table(title=table.title, headers=table.headers, rows=table.rows[:MOST_ROWS])
    for at, start in enumerate(range(MOST_ROWS, len(table.rows), MOST_ROWS), 2):
        yield Table(title=f"{table.title} {at}", headers=table.headers, rows=table.rows[start : start + MOST_ROWS])


def _number(part: SheetPart) -> tuple[Cell, ...]:
    return part.supplier_number, part.maker, part.maker_number, part.description


def _part(part: SheetPart) -> tuple[Cell, ...]:
    return (
        *_number(part),
        part.price,
        part.price_basis,
        part.list_price,
        part.core_charge,
        part.currency,
        part.superseded_by,
        yes_no(part.no_longer_available),
        part.worksheet,
        part.row,
    )


def _price(part: SheetPart | None) -> tuple[Cell, ...]:
    return (part.price, part.price_basis, part.currency) if part else (None, None, None)


def _changed(one: Changed) -> tuple[Cell, ...]:
    head = one.headline
    return (
        head.percent if head else None,
        head.from_quantity if head else None,
        *_number(one.now),
        *_price(one.before),
        *_price(one.now),
        one.now.superseded_by,
        *_price(one.instead),
        words_of(one),
        ", ".join(one.kinds),
        one.before.row,
        one.now.row,
        one.now.worksheet,
    )


def _alone(part: SheetPart, now: bool) -> Sequence[Cell]:
    """A number of one sheet in the columns of CHANGED."""
    here, blank = _price(part), _price(None)
    rows: tuple[Cell, ...] = (None, part.row, part.worksheet) if now else (part.row, None, "")
    sides = (*blank, *here) if now else (*here, *blank)
    return (None, None, *_number(part), *sides, part.superseded_by, *blank, "", "", *rows)


def _prices(one: Changed) -> Iterable[tuple[Cell, ...]]:
    for price in one.prices:
        yield (
            one.now.supplier_number,
            one.kind,
            price.figure,
            price.from_quantity,
            price.before,
            price.before_basis,
            price.now,
            price.now_basis,
            one.now.currency,
            price.percent,
        )
