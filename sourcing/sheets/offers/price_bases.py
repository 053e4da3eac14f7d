"""For how many pieces, feet or metres the prices of each row are, where cell, header and column may each say so."""

import re
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from sourcing.basics.sheet import Column

from ..cells.basis_cells import PAIR, PAIRS, Basis, basis_of, parse_basis, said_in_text
from ..cells.cell import Bad
from ..headers.header_keys import words_in
from ..region.body import Body, Objects, objects
from ..region.table import Table
from ..worksheet import text_of
from .column_reader import ColumnReader

EACH = Basis(1, "piece")
UNIT_WORDS = frozenset({"uom", "um"})


def stated_bases(reader: ColumnReader) -> Objects | None:
    """What the basis columns say, row by row, None where a cell is blank; None where nothing says anything.

    Two columns, a count and a unit ('100' and 'pc', '1' and 'm'), are one statement; two that differ make the row a
    problem. Where there is no such column, a line above the table may say it of all prices.
    """
    columns = reader.body.columns("price basis")
    if not columns:
        if reader.body.table.line_bases:
            return _by_lines(reader)
        said = basis_above(reader.body)
        return reader.constant(said) if said else None
    first, *others = [_stated(reader, column) for column in columns]
    for other in others:
        for at, pair in enumerate(zip(first, other, strict=True)):
            first[at] = _both(reader, at, *pair)
    return first


def _stated(reader: ColumnReader, column: Column) -> Objects:
    values, coded = reader.parsed(
        column,
        lambda cells: [basis if text_of(cell) else None for cell, basis in zip(cells, parse_basis(cells), strict=True)],
    )
    return coded.spread(values)


def _both(reader: ColumnReader, at: int, one: Basis | None, other: Basis | None) -> Basis | None:
    if one is None or other is None or one == other:
        return one or other
    count, unit = (one, other) if one.unit == "piece" else (other, one)
    if count.unit == "piece" and unit.count == 1:
        return Basis(count.count, unit.unit)
    if unit == EACH or count == EACH:
        return unit if count == EACH else count
    reader.spoil(at, "", Bad("price-basis-differs", found=f"{shown(one)} and {shown(other)}"))
    return EACH


def _by_lines(reader: ColumnReader) -> Objects:
    """The bases of the lines a person has spoken of: one above holds for all rows, a section's for its own."""
    table, found = reader.body.table, reader.constant(None)
    for at, basis in table.line_bases:
        first = max(at + 1, table.body)
        end = (
            table.end
            if at < table.body
            else next((row for row in range(first, table.end) if _is_line(table, row)), table.end)
        )
        found[first - table.body : end - table.body] = [basis] * (end - first)
    return found


def _is_line(table: Table, at: int) -> bool:
    return sum(bool(text_of(cell)) for cell in table.worksheet.rows[at]) == 1


ABOVE = re.compile(
    r"(?:prices?|net|preise?|netto|prix|precios?|prijzen|prijs)\b.{0,40}?"
    r"\b(?P<per>(?:per|pro|je|par|por)\s+(?:1?00|1000|hundred|thousand|hundert|tausend|cent|mille|cien|mil|honderd|duizend)"
    r"\b(?:\s+\w+)?)",
    re.IGNORECASE,
)


def basis_above(body: Body) -> Basis | None:
    """What a line above the table says all its prices are for: 'All prices per 100 pieces'. None: nothing."""
    table = body.table
    lines = (" ".join(map(text_of, row)) for row in table.worksheet.rows[: table.first])
    found = {basis_of(match["per"]) for line in lines if (match := ABOVE.search(line))}
    return found.pop() if len(found) == 1 else None


def bases_of_rows(
    reader: ColumnReader,
    in_cells: Objects | None,
    in_header: Basis | None,
    stated: Objects | None,
    packs: Objects,
    stated_packs: NDArray[np.bool_],
) -> Objects:
    """The basis of one price column, row by row: what the cell says, else the header, else the basis column, else each.

    A header or cell and a basis column that name two bases (other than plain 'each') make the row a problem; so does
    'per pack' where the row does not say how many pieces that is.
    """
    if in_cells is None and stated is None and (in_header or EACH).unit != "pack":
        return reader.constant(in_header or EACH)
    nothing = reader.constant(None)
    rows = zip(nothing if in_cells is None else in_cells, nothing if stated is None else stated, strict=True)
    known: dict[tuple[Basis | None, Basis | None], Basis | Bad] = {}
    found = []
    for at, pair in enumerate(rows):
        if pair not in known:
            known[pair] = _one(pair[0] or in_header, pair[1])
        found.append(_in_pieces(reader, at, known[pair], packs, stated_packs))
    return objects(found, len(found))


def _one(own: Basis | None, stated: Basis | None) -> Basis | Bad:
    if own and stated and stated not in (own, EACH):
        return Bad("price-basis-differs", found=f"{shown(own)} and {shown(stated)}")
    return own or stated or EACH


def _in_pieces(
    reader: ColumnReader, at: int, basis: Basis | Bad, packs: Objects, stated_packs: NDArray[np.bool_]
) -> Basis:
    column = reader.column("price basis")
    header = column.header if column else ""
    if isinstance(basis, Bad):
        reader.spoil(at, header, basis)
        return EACH
    if basis == EACH and packs[at] > 1 and (word := _unit_word(reader, at)):
        return _of_one(reader, at, header, packs[at], word)
    if basis.packed:
        return _of_a_pack(reader, at, header, basis, packs, stated_packs)
    if basis.unit != "pack":
        return basis
    word = _unit_word(reader, at)
    if not stated_packs[at] or (word and (packs[at] == 1 or _is_other_pack(reader, word))):
        reader.spoil(at, header, Bad("pack-unknown", found=shown(basis)))
        return EACH
    return Basis(basis.count * packs[at], "piece")


def _of_a_pack(
    reader: ColumnReader, at: int, header: str, basis: Basis, packs: Objects, stated_packs: NDArray[np.bool_]
) -> Basis:
    """'BX/25' says the pack too, in place; another pack in the row's own column is a problem."""
    if stated_packs[at] and packs[at] != basis.count:
        reader.spoil(at, header, Bad("price-basis-differs", found=f"a pack of {basis.count} and packs of {packs[at]}"))
    packs[at] = basis.count
    return Basis(basis.count, "piece")


def _of_one(reader: ColumnReader, at: int, header: str, pieces: int, word: str) -> Basis:
    """The price of a pair or of one, where the row also counts pieces: twice the price, or half of it, if misread."""
    is_pair = word.casefold().strip(".") in PAIRS and pieces == PAIR
    if _counts_unit(reader):
        if is_pair:
            return Basis(PAIR, "piece")
        reader.spoil(at, header, Bad("price-basis-differs", found=f"per '{word}' and {pieces} pieces of that unit"))
    elif is_pair:
        reader.spoil(at, header, Bad("price-basis-differs", found="per pair and packs of 2"))
    return EACH


def _unit_word(reader: ColumnReader, at: int) -> str:
    """What the row says the price is for, in its own words."""
    row = reader.body.row(at)
    places = (column.at for column in reader.body.columns("price basis"))
    words = (text_of(row[place]) for place in places if place < len(row))
    return next((word for word in words if word), "")


CASES = frozenset({"case", "cases", "carton", "cartons", "ctn", "cs", "master", "pallet"})


def _is_other_pack(reader: ColumnReader, word: str) -> bool:
    """Whether the pack column counts cases while the price is for boxes: a case may hold boxes."""
    column = reader.column("pack")
    counted = CASES.intersection(words_in(column.header)) if column else frozenset()
    return bool(counted) and word.casefold().strip(".") not in CASES


def _counts_unit(reader: ColumnReader) -> bool:
    """Whether the pack's header says it counts the pieces of the unit of measure: 'Qty/UOM'."""
    column = reader.column("pack")
    return column is not None and bool(UNIT_WORDS.intersection(words_in(column.header)))


def common_basis(reader: ColumnReader, prices: Sequence[Objects], bases: Sequence[Objects]) -> Objects:
    """One basis for each row: the largest of those of its prices, which are changed to it. Others are problems."""
    rows = []
    for at in range(reader.body.height):
        own = [basis[at] for price, basis in zip(prices, bases, strict=True) if price[at] is not None] or [EACH]
        largest = max(own, key=lambda basis: basis.count)
        if any(basis.unit != largest.unit or largest.count % basis.count for basis in own):
            found = " and ".join(sorted({shown(basis) for basis in own}))
            reader.spoil(at, "", Bad("price-basis-differs", found=found))
        else:
            _scale(at, largest, prices, bases)
        rows.append(largest)
    return objects(rows, len(rows))


def spoil_by_text(reader: ColumnReader, counts: Objects, sold_by: Objects) -> None:
    """A description or note that says 'price per 100' while the price is for one piece makes the row a problem."""
    for column in (*reader.body.columns("description"), *reader.body.columns("note")):
        coded = reader.body.coded(column.at)
        said = said_in_text(coded.different, coded.whole)
        for at in coded.rows_with([number for number, words in enumerate(said) if words]) if said else ():
            if counts[at] == 1 and sold_by[at] == "piece":
                words = said[coded.codes[at]] if said else ""
                bad = Bad("price-basis-differs", found=f"each, and '{words}' in column '{column.header}'")
                reader.spoil(at, column.header, bad)


def _scale(at: int, largest: Basis, prices: Sequence[Objects], bases: Sequence[Objects]) -> None:
    for price, basis in zip(prices, bases, strict=True):
        if price[at] is not None and basis[at].count != largest.count:
            price[at] = price[at] * (largest.count // basis[at].count)


def shown(basis: Basis) -> str:
    """'each', 'per 100', 'per pack', 'per foot'."""
    if basis == EACH:
        return "each"
    count = f"{basis.count} " if basis.count > 1 else ""
    return f"per {basis.count}" if basis.unit == "piece" else f"per {count}{basis.unit}"
