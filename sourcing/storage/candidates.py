"""Candidates found on suppliers' sheets: the rows to look through, what was found in them, and what may wait."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from sqlalchemy import (
    BigInteger,
    ColumnElement,
    Connection,
    Row,
    bindparam,
    delete,
    insert,
    select,
    type_coerce,
    update,
)

from ..basics.judgement import KeptCandidate, RowKeys, SheetLookedThrough, reads_as
from ..basics.match import RowMatch
from .exact import PRICE_PLACES, unscaled
from .match_tables import CANDIDATES, LOOKED_THROUGH
from .offers import offers_numbered
from .rows import as_text, as_value, replace_row
from .sheet_tables import OFFERS, SHEETS
from .sheets import newest_sheets

CHUNK = 900
"""Numbers asked for at once: SQLite before 3.32 takes 999 values in a statement."""
FETCHED = 10_000

PRICED = ("currency", "net_price", "price_basis", "sold_by")


@dataclass(frozen=True)
class SheetRows:
    """The offers of one sheet, column by column, in the order of their rows. Prices are per `price_basis` pieces.

    `offer` is the number in the database, `place` worksheet and row. A blank price or unit of sale is None.
    """

    offer: Sequence[int]
    place: Sequence[tuple[str, int]]
    supplier_number: Sequence[str]
    supplier_key: Sequence[str]
    maker: Sequence[str]
    maker_number: Sequence[str]
    maker_number_key: Sequence[str]
    description: Sequence[str]
    currency: Sequence[str]
    net_price: Sequence[Decimal | None]
    price_basis: Sequence[int]
    sold_by: Sequence[str | None]


ROW_COLUMNS = (
    *("supplier_number", "supplier_key", "maker", "maker_number", "maker_number_key", "description"),
    *PRICED,
)


@dataclass(frozen=True)
class CandidateRow:
    """A candidate with what ordering the queue needs of its row; `offer` is the offer's number in the database."""

    candidate: int
    offer: int
    sheet: int
    part: str
    score: float
    rank: int
    against: bool
    keys: RowKeys
    currency: str
    net_price: Decimal | None
    price_basis: int
    sold_by: str | None


def sheet_rows(connection: Connection, sheet: int) -> SheetRows:
    """All offers of the sheet; empty columns for an unknown sheet."""
    table = OFFERS
    names = ("offer", "worksheet", "row", *ROW_COLUMNS)
    kept = (type_coerce(table.c[name], BigInteger) if name == "net_price" else table.c[name] for name in names)
    query = select(*kept).where(table.c.sheet == sheet).order_by(table.c.offer)
    columns: list[list[Any]] = [[] for _ in names]
    for some in connection.execute(query).partitions(FETCHED):
        for column, values in zip(columns, zip(*some, strict=True), strict=True):
            column += values
    # A sheet says the same prices over and over: each is made a Decimal once.
    stored = columns[names.index("net_price")]
    prices = {one: None if one is None else unscaled(one, PRICE_PLACES) for one in set(stored)}
    columns[names.index("net_price")] = [prices[one] for one in stored]
    offer, worksheet, row, *rest = columns
    return SheetRows(offer, list(zip(worksheet, row, strict=True)), *rest)


def put_candidates(connection: Connection, sheet: int, found: Sequence[tuple[int, RowMatch]], at: datetime) -> None:
    """Make these the candidates of the sheet: the offer's number and what matching says of it.

    A part found again for the same row keeps its number; those found no more go, and so do those of the supplier's
    other sheets, which count no longer.
    """
    table = CANDIDATES
    supplier = select(SHEETS.c.supplier).where(SHEETS.c.sheet == sheet).scalar_subquery()
    others = select(SHEETS.c.sheet).where(SHEETS.c.supplier == supplier, SHEETS.c.sheet != sheet)
    for gone in (CANDIDATES, LOOKED_THROUGH):
        connection.execute(delete(gone).where(gone.c.sheet.in_(others)))
    query = select(table.c.offer, table.c.part, table.c.candidate).where(table.c.sheet == sheet)
    there = {(offer, part): candidate for offer, part, candidate in connection.execute(query)}
    rows = {(offer, one.part): _row(sheet, offer, one, at) for offer, one in found}
    gone_numbers = [{"kept": number} for pair, number in there.items() if pair not in rows]
    if gone_numbers:
        connection.execute(delete(table).where(table.c.candidate == bindparam("kept")), gone_numbers)
    _change(connection, [{"kept": there[pair], **row} for pair, row in rows.items() if pair in there])
    new = [row for pair, row in rows.items() if pair not in there]
    if new:
        connection.execute(insert(table), new)


def put_looked_through(connection: Connection, done: SheetLookedThrough) -> None:
    """Remember that the sheet was looked through and what came of it."""
    names = ("sheet", "automatic", "with_candidates", "like_none", "at")
    replace_row(connection, LOOKED_THROUGH, {name: getattr(done, name) for name in names})


def looked_through(connection: Connection, sheet: int) -> tuple[int, int] | None:
    """How many rows of the sheet are parts of ours, and how many more had candidates; None where nobody looked."""
    table = LOOKED_THROUGH
    query = select(table.c.automatic, table.c.with_candidates).where(table.c.sheet == sheet)
    found = connection.execute(query).one_or_none()
    return (found.automatic, found.with_candidates) if found else None


def not_looked_through(connection: Connection, day: date) -> list[int]:
    """The numbers of the sheets that count on that day and were not looked through, in order."""
    done = select(LOOKED_THROUGH.c.sheet)
    query = select(SHEETS.c.sheet).where(SHEETS.c.sheet.in_(newest_sheets(day)), SHEETS.c.sheet.not_in(done))
    return list(connection.execute(query.order_by(SHEETS.c.sheet)).scalars())


def candidate_rows(connection: Connection, day: date, supplier: str = "") -> list[CandidateRow]:
    """Every candidate on the sheets that count on that day, judged or not, of one supplier or all, in order of number.

    The keys of makers are those of the sheet: other names are not resolved.
    """
    table = CANDIDATES
    own = [table.c[name] for name in ("candidate", "offer", "sheet", "part", "score", "rank", "against")]
    keys = [
        OFFERS.c[name] for name in ("supplier", "supplier_key", "maker_key", "maker_number_key", "description", *PRICED)
    ]
    query = select(*own, *keys).join(OFFERS, OFFERS.c.offer == table.c.offer)
    query = query.where(table.c.sheet.in_(newest_sheets(day))).order_by(table.c.candidate)
    if supplier:
        query = query.where(OFFERS.c.supplier == supplier)
    return [_candidate_row(tuple(row)) for row in connection.execute(query)]


def kept_candidates(connection: Connection, numbers: Collection[int]) -> dict[int, KeptCandidate]:
    """Candidates by number, whole; those that are there no more are left out."""
    wanted = sorted(set(numbers))
    rows = [
        row
        for at in range(0, len(wanted), CHUNK)
        for row in _rows(connection, CANDIDATES.c.candidate.in_(wanted[at : at + CHUNK]))
    ]
    offers = offers_numbered(connection, {row.offer for row in rows})
    return {
        row.candidate: KeptCandidate(
            candidate=row.candidate,
            offer=offers[row.offer],
            part=row.part,
            score=row.score,
            rank=row.rank,
            reasons=as_value(row.reasons, tuple[str, ...]),
            against=row.against,
            facts=as_value(row.facts, tuple[int, ...]),
            found_at=row.found_at,
        )
        for row in rows
    }


def _rows(connection: Connection, which: ColumnElement[bool]) -> Iterator[Row[Any]]:
    yield from connection.execute(select(CANDIDATES).where(which))


def _row(sheet: int, offer: int, one: RowMatch, at: datetime) -> dict[str, Any]:
    return {
        "sheet": sheet,
        "offer": offer,
        "part": one.part,
        "score": one.score,
        "rank": one.rank,
        "against": one.against,
        "reasons": as_text(one.reasons),
        "facts": as_text(one.facts),
        "found_at": at,
    }


def _change(connection: Connection, rows: list[dict[str, Any]]) -> None:
    if rows:
        names = ("score", "rank", "against", "reasons", "facts", "found_at")
        values: dict[str, Any] = {name: bindparam(f"new_{name}") for name in names}
        told = [{"kept": row["kept"], **{f"new_{name}": row[name] for name in names}} for row in rows]
        by_number = update(CANDIDATES).where(CANDIDATES.c.candidate == bindparam("kept"))
        connection.execute(by_number.values(values), told)


def _candidate_row(row: tuple[Any, ...]) -> CandidateRow:
    """By position, in the order the columns are asked for: by name, a long queue takes twice the time."""
    own, keys, priced = row[:7], (*row[7:11], reads_as(row[11])), row[12:]
    names = ("supplier", "supplier_key", "maker", "maker_number_key", "reads")
    known = RowKeys(**dict(zip(names, keys, strict=True)))
    plain = ("candidate", "offer", "sheet", "part", "score", "rank", "against")
    return CandidateRow(keys=known, **dict(zip(plain, own, strict=True)), **dict(zip(PRICED, priced, strict=True)))
