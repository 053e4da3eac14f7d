"""What changed between two sheets of a supplier, as text for a terminal 100 columns wide, as XLSX and as CSV."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from ..basics.change import Changed, ChangeKind, PriceChange, SheetChanges, SheetPart
from ..basics.money import round_half_up
from ..basics.sheet import KeptSheet
from .changes_tables import CHANGED, TITLES, change_rows, change_tables, count_rows, words_of
from .csv_text import csv_text
from .order_paper import price_words
from .plain_text import count, document, row, table, underline, widths_for, wrapped
from .workbook import workbook_bytes

MOST = 40
"""Numbers shown under each heading of the text; the workbook and the CSV have all of them."""

MOVES: tuple[ChangeKind, ...] = ("rose", "rose and fell", "fell")
HEADER = ("change", "number", "description", "was", "is now")
WIDTHS = (9, 22, 25, 20, 20)
PART_HEADER = ("number", "description", "price")
PART_WIDTHS = (30, 42, 24)
RIGHT = frozenset((0,))
NOT_COMPARED = "Stock, lead times and descriptions are not compared."


def changes_text(changes: SheetChanges, most: int = MOST) -> str:
    """What rose, the biggest rise first, and everything else that happened; then counts that visibly add up.

    Each number stands under one heading, the weightiest; at most `most` under each.
    """
    lines = [*_head(changes), *_median(changes)]
    for kind in MOVES:
        lines += _section(kind, changes, most)
    lines += _parts("Vanished, on the old sheet only", changes.vanished, most)
    lines += _parts("Appeared, on the new sheet only", changes.appeared, most)
    for kind in TITLES:
        if kind not in MOVES:
            lines += _section(kind, changes, most)
    lines += _several(changes, most)
    return document([*lines, "", *_counts(changes), NOT_COMPARED])


def changes_xlsx(changes: SheetChanges) -> bytes:
    """All of it as a workbook: Counts, one worksheet for each thing that happened, every price that changed."""
    return workbook_bytes(change_tables(changes))


def changes_csv(changes: SheetChanges) -> str:
    """All of it but the unchanged as one table."""
    return csv_text(("What", *CHANGED), change_rows(changes))


def _head(changes: SheetChanges) -> list[str]:
    if changes.before is None or changes.now is None:
        return [f"{changes.supplier or 'No supplier'}: two sheets compared"]
    return [
        *wrapped(f"{changes.supplier}: {_sheet(changes.now)}"),
        *wrapped(f"compared with {_sheet(changes.before)}"),
    ]


def _sheet(kept: KeptSheet) -> str:
    return f"sheet {kept.sheet} of {kept.sheet_date}, {kept.file}"


def _median(changes: SheetChanges) -> list[str]:
    rose = next((one.in_all for one in changes.counts if one.kind == "rose"), 0)
    if not rose:
        return ["No price rose."]
    return [
        f"The price of {count(rose, 'number')} rose; the rise in the middle is {percent_words(changes.median_rise)}."
    ]


def percent_words(percent: Decimal | None) -> str:
    """'+5.4 %', '-0.3 %'; blank where it is not known."""
    return "" if percent is None else f"{percent:+,} %"


def _section(kind: ChangeKind, changes: SheetChanges, most: int) -> list[str]:
    some = [one for one in changes.changed if one.kind == kind]
    if not some:
        return []
    cells = [change_cells(one) for one in some[:most]]
    widths = widths_for([HEADER, *cells], WIDTHS)
    lines = ["", f"{TITLES[kind]}: {count(len(some), 'number')}", *row(HEADER, widths, RIGHT), underline(widths)]
    for one, cell in zip(some, cells, strict=False):
        lines += row(cell, widths, RIGHT)
        lines += [line for words in change_details(one) for line in wrapped(words, widths[0] + 1)]
    return lines + _more(len(some), most)


def _more(number: int, most: int) -> list[str]:
    return [f"and {number - most:,} more"] if number > most else []


def change_cells(one: Changed) -> tuple[str, ...]:
    """The number with the price that moved most, or its price at the least quantity."""
    head = one.headline
    was, now = (
        (
            _words(head.before, head.before_basis, one.before.currency),
            _words(head.now, head.now_basis, one.now.currency),
        )
        if head
        else (part_price(one.before), part_price(one.now))
    )
    return percent_words(head.percent if head else None), number_words(one.now), one.now.description, was, now


def number_words(part: SheetPart) -> str:
    """The supplier's number, with the maker's where it is another."""
    if not part.maker_number or part.maker_number == part.supplier_number:
        return part.supplier_number
    return f"{part.supplier_number} ({f'{part.maker} {part.maker_number}'.strip()})"


def part_price(part: SheetPart) -> str:
    """Its net price, else its list price called so, else that it has none."""
    if part.price is None and part.list_price is not None:
        return f"list {_words(part.list_price, part.price_basis, part.currency)}"
    return _words(part.price, part.price_basis, part.currency)


def _words(price: Decimal | None, basis: int, currency: str) -> str:
    return "no price" if price is None else price_words(price, currency, basis)


def change_details(one: Changed) -> Iterable[str]:
    """What the row does not say: the other prices, what else changed, what to order instead."""
    if one.headline and (one.headline.figure != "net price" or (one.headline.from_quantity or 1) > 1):
        yield f"this is the {_which(one.headline)}"
    for price in one.prices:
        if price != one.headline or price.before_basis != price.now_basis:
            yield _price_line(price, one)
    if one.words:
        yield words_of(one)
    if one.now.superseded_by:
        yield f"order instead {one.now.superseded_by}, {_instead(one.instead)}"
    if len(one.kinds) > 1:
        yield f"also: {', '.join(one.kinds[1:])}"


def _which(price: PriceChange) -> str:
    least = price.from_quantity
    return f"{price.figure} from {count(least, 'piece')}" if least is not None else price.figure


def _price_line(price: PriceChange, one: Changed) -> str:
    if price.before is not None and price.now is not None and (price.before_basis, price.now_basis) != (1, 1):
        was = each_words(price.before, price.before_basis, one.before.currency)
        now = each_words(price.now, price.now_basis, one.now.currency)
    else:
        was = _words(price.before, price.before_basis, one.before.currency)
        now = _words(price.now, price.now_basis, one.now.currency)
    change = f" ({percent_words(price.percent)})" if price.percent is not None else ""
    return f"{_which(price)}: {was} to {now}{change}"


def each_words(price: Decimal, basis: int, currency: str) -> str:
    """What one piece costs, '1.19 USD each'; 'about' where four decimals can't say it exactly."""
    one = price / basis
    short = round_half_up(one, 4)
    exact = short * basis == price
    return f"{'' if exact else 'about '}{price_words(short.normalize() if exact else short, currency, 1)}"


def _instead(part: SheetPart | None) -> str:
    if part is None:
        return "which the new sheet does not list, or not once"
    return f"now {part_price(part)}{', itself no longer available' if part.no_longer_available else ''}"


def _parts(title: str, parts: Sequence[SheetPart], most: int) -> list[str]:
    if not parts:
        return []
    cells = [(number_words(one), _described(one), part_price(one)) for one in parts[:most]]
    lines = ["", f"{title}: {count(len(parts), 'number')}", *table([PART_HEADER, *cells], PART_WIDTHS)]
    return lines + _more(len(parts), most)


def _described(part: SheetPart) -> str:
    words = [part.description, part.superseded_by and f"superseded by {part.superseded_by}"]
    return ", ".join(word for word in [*words, "no longer available" if part.no_longer_available else ""] if word)


def _several(changes: SheetChanges, most: int) -> list[str]:
    if not changes.several:
        return []
    title = f"Several offers under one number: {count(len(changes.several), 'number')}, not compared, please look"
    lines = ["", title]
    for one in changes.several[:most]:
        for which, parts in (("old sheet", one.before), ("new sheet", one.now)):
            rows = "; ".join(f"row {part.row} {part_price(part)}" for part in parts) or "none"
            lines += wrapped(f"{(one.before or one.now)[0].supplier_number}, {which}: {rows}", 2)
    return lines + _more(len(changes.several), most)


def _counts(changes: SheetChanges) -> list[str]:
    rows = [(str(what), f"{old:,}", f"{new:,}") for what, old, new in count_rows(changes)]
    lines = table([("offers", "old sheet", "new sheet"), *rows], (40, 12, 12), frozenset((1, 2)))
    lines[-1:-1] = [lines[1]]
    return lines if changes.adds_up else [*lines, "THIS DOES NOT ADD UP, a bug of the program; please report it"]
