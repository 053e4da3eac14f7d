"""Old parts and goods that wait to go back, or for credit: as text and as a workbook."""

from collections.abc import Iterator, Sequence
from datetime import date

from ..basics.claim import GoodsBackOpen
from ..basics.order import GoodsBack
from .csv_text import Cell
from .plain_text import count, document, table, wrapped
from .workbook import Table, workbook_bytes

HEADERS = (
    "Last day", "Waits", "What", "Pieces", "Number", "Supplier", "Order", "Line", "Job", "Since", "Expected", "Fee",
    "Currency", "Why",
)  # fmt: skip
WHAT = {"core": "old part", "goods": "goods"}
STEPS = {"sent": "sent back", "credited": "credited", "refused": "not taken by the supplier", "lost": "given up"}


def going_back_text(found: Sequence[GoodsBackOpen], today: date) -> str:
    """The list, the earliest last day first; what is past its day says so."""
    if not found:
        return document(["Nothing waits to go back, and no credit is awaited."])
    rows = [("Last day", "Waits", "What", "Supplier", "Order, line", "Since", "Expected")]
    for one in found:
        what = f"{WHAT[one.kind]}: {one.pieces} x {one.number}, {one.why}"
        expected = "not known" if one.expected is None else str(one.expected)
        if one.fee is not None:
            expected += f" (fee {one.fee} off)"
        day = _day(one, today)
        rows.append((day, one.waits, what, one.supplier_name, f"{one.order}, {one.line}", str(one.since), expected))
    return document(table(rows, (12, 10, 27, 14, 12, 10, 12)))


def went_back_text(step: GoodsBack, notes: Sequence[str], found: Sequence[GoodsBackOpen]) -> str:
    """A step just kept, what is to be known of it, and what of the order still waits."""
    what = "old parts" if step.kind == "core" and step.pieces > 1 else WHAT[step.kind]
    credit = f", {step.credit} given back" if step.credit else ""
    credit += f" after a fee of {step.fee}" if step.fee else ""
    lines = [f"{step.order} line {step.line}, {what}: {count(step.pieces, 'piece')} {STEPS[step.step]}{credit}."]
    lines += [line for note in notes for line in wrapped(f"Look: {note}.")]
    return document([*lines, *_still_open(found)])


def taken_back_text(step: GoodsBack, found: Sequence[GoodsBackOpen]) -> str:
    """A step just taken back, and what of the order waits again."""
    said = f"{step.order} line {step.line}, {WHAT[step.kind]}: '{STEPS[step.step]}' of {step.at:%Y-%m-%d}"
    pieces = count(step.pieces, "piece")
    return document([*wrapped(f"{said}, {pieces}, is taken back; it stays to be read."), *_still_open(found)])


def _still_open(found: Sequence[GoodsBackOpen]) -> Iterator[str]:
    for one in found:
        due = f", last day {one.due}" if one.due else ""
        words = f"line {one.line}, {WHAT[one.kind]}: {count(one.pieces, 'piece')} of {one.number} {one.waits}{due}"
        yield from wrapped(f"Still waits: {words}.")


def going_back_xlsx(found: Sequence[GoodsBackOpen]) -> bytes:
    """The list as a workbook."""
    return workbook_bytes([Table(title="Going back", headers=HEADERS, rows=tuple(map(_row, found)))])


def _row(one: GoodsBackOpen) -> tuple[Cell, ...]:
    money = one.expected
    return (
        one.due, one.waits, WHAT[one.kind], one.pieces, one.number, one.supplier_name, one.order, one.line, one.job,
        one.since, money.amount if money else None, one.fee.amount if one.fee else None,
        money.currency if money else None, one.why,
    )  # fmt: skip


def _day(one: GoodsBackOpen, today: date) -> str:
    if one.waits == "for credit":
        return "his to act"
    if one.due is None:
        return "not said"
    over = (today - one.due).days
    return f"{one.due}" if over <= 0 else f"{one.due}, {count(over, 'day')} over"
