"""Find candidates for a person: which of our parts may the rows be that no number and no path ties to one."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import Connection

from ..basics.judgement import SheetLookedThrough
from ..basics.match import RowMatch
from ..basics.part_number import OURS
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.value import changed
from ..matching.offer_match import OfferMatch
from ..matching.sheet_match import Columns, match_rows
from ..matching.worth_asking import worth_asking
from ..storage.candidates import SheetRows, not_looked_through, put_candidates, put_looked_through, sheet_rows
from ..storage.judgements import judged_examples
from ..storage.sheets import kept_sheets
from .desk import Desk, Pen, shop_now
from .our_side import OurSide, offers_with_our_numbers, our_side, part_columns, part_prices
from .review_queue import FIND_CANDIDATES
from .shop_prices import ShopPrices

Tell = Callable[[str], None]
MatchRows = Callable[..., list[RowMatch]]
"""`match_rows` of `matching.sheet_match`, or something in its place."""

MOST = 5
"""Parts kept of one row at most."""

ByNumber = dict[tuple[str, int], list[tuple[str, OfferMatch]]]
"""Worksheet and row to what its numbers say."""


@dataclass(frozen=True)
class Finding:
    """What looking through one sheet gave: the counts, and its candidates by the offer's number in the database."""

    done: SheetLookedThrough
    found: list[tuple[int, RowMatch]]


def find_candidates(
    desk: Desk, supplier: str = "", again: bool = True, tell: Tell | None = None, match: MatchRows | None = None
) -> tuple[SheetLookedThrough, ...]:
    """Look through the newest sheet of one supplier, or of all, and keep the candidates.

    `again`: also sheets that were looked through before; a part found again for the same row keeps its number.
    `match` stands in for `match_rows`. Refuses a supplier who has no sheet. Answers are never touched.
    """
    # Sheets never change, so they are read without keeping writers waiting.
    with desk.store.reading() as connection:
        sheets = sheets_to_look_through(connection, desk.at.date(), supplier, again)
        findings = look_through(connection, desk.at, sheets, tell, match)
    return keep_findings(desk, findings)


def keep_findings(desk: Desk, findings: Sequence[Finding]) -> tuple[SheetLookedThrough, ...]:
    """Keep the candidates of the sheets that still are the newest, in one transaction; those sheets."""
    if not findings:
        return ()
    with desk.writing(FIND_CANDIDATES) as pen:
        newest = {one.sheet for one in kept_sheets(pen.connection, desk.at.date()) if one.is_newest}
        kept = [one for one in findings if one.done.sheet in newest]
        for one in kept:
            keep_finding(pen, one)
    return tuple(one.done for one in kept)


def sheets_to_look_through(
    connection: Connection, day: date, supplier: str = "", again: bool = True
) -> list[KeptSheet]:
    """The newest sheet of the supplier or of each, on that day; without `again`, only those nobody looked through."""
    newest = [one for one in kept_sheets(connection, day) if one.is_newest and supplier in ("", one.supplier)]
    if supplier and not newest:
        raise refused("no-newest-sheet", supplier=supplier)
    waiting = set(not_looked_through(connection, day))
    return [one for one in newest if again or one.sheet in waiting]


def look_through(
    connection: Connection,
    at: datetime,
    sheets: Sequence[KeptSheet],
    tell: Tell | None = None,
    match: MatchRows | None = None,
) -> list[Finding]:
    """Find the candidates of these newest sheets; nothing is kept."""
    if not sheets:
        return []
    side = our_side(connection, at.date())
    shop = ShopPrices(shop_now(connection, at).rates, at.date())
    known = offers_with_our_numbers(connection, side, at.date())
    by_number: defaultdict[int, ByNumber] = defaultdict(dict)
    for offer in known:
        by_number[offer.source.sheet][offer.source.worksheet, offer.source.row] = list(side.matches(offer))
    parts, codes = part_columns(side, part_prices(side, known, shop))
    judged = judged_examples(connection)

    def of(sheet: KeptSheet) -> Finding:
        rows = sheet_rows(connection, sheet.sheet)
        if tell:
            tell(f"{sheet.file}: looking for candidates in {len(rows.offer):,} rows")
        columns, rest = _rows_left(side, shop, sheet, rows, by_number[sheet.sheet])
        matches = (match or match_rows)(columns, parts, codes, judged, MOST) if rest and codes else []
        asked = _asked_about(matches, columns, parts, {code: at for at, code in enumerate(codes)})
        found = list(_candidates(rows, rest, asked, by_number[sheet.sheet]))
        return Finding(done=_done(sheet, len(rows.offer), len(rest), found, at), found=found)

    return [of(sheet) for sheet in sheets]


def keep_finding(pen: Pen, finding: Finding) -> None:
    """Keep the candidates of one sheet in place of those it had, with an entry in the ledger."""
    done = finding.done
    put_candidates(pen.connection, done.sheet, finding.found, done.at)
    put_looked_through(pen.connection, done)
    rows = f"{done.with_candidates} of {done.rows} rows have candidates, {done.automatic} are automatic"
    pen.note(f"sheet {done.sheet}", rows)


def _rows_left(
    side: OurSide, shop: ShopPrices, sheet: KeptSheet, rows: SheetRows, by_number: ByNumber
) -> tuple[Columns, list[int]]:
    """The rows that are not automatic, as columns, with their places among all rows of the sheet."""
    known = {place for place, some in by_number.items() if any(match.tier == "automatic" for _, match in some)}
    rest = [at for at, place in enumerate(rows.place) if place not in known]
    rules = bool(side.known.rules.get(sheet.supplier))
    makers = {maker: _maker_keys(side, maker) for maker in set(rows.maker)}
    columns = Columns(
        numbers=[
            side.keys_of(sheet.supplier, (rows.maker_number[at], rows.supplier_number[at]))
            if rules
            else _own_keys(rows.maker_number_key[at], rows.supplier_key[at])
            for at in rest
        ],
        makers=[makers[rows.maker[at]] for at in rest],
        description=[rows.description[at] for at in rest],
        price=[shop.each(rows.net_price[at], rows.price_basis[at], rows.currency[at], rows.sold_by[at]) for at in rest],
    )
    return columns, rest


def _asked_about(
    matches: Sequence[RowMatch], columns: Columns, parts: Columns, place: Mapping[str, int]
) -> Iterator[RowMatch]:
    """The candidates by score, and of a row that has none the likeliest pair worth asking about in spite of it."""
    settled = {one.row for one in matches if one.part and one.tier != "none"}
    for one in matches:
        if not one.part:
            continue
        if one.tier != "none":
            yield one
        elif one.row not in settled:
            part = place[one.part]
            numbers = columns.numbers[one.row], frozenset(parts.numbers[part])
            size = _size(parts, part), columns.description[one.row]
            why = worth_asking(one.facts, one.against, numbers, size)
            if why:
                settled.add(one.row)
                yield changed(one, tier="candidate", rank=1, reasons=(*one.reasons, why))


def _size(parts: Columns, part: int) -> str:
    return parts.size[part] if parts.size else ""


def _own_keys(*keys: str) -> list[str]:
    return [key for key in dict.fromkeys(keys) if key]


def _maker_keys(side: OurSide, maker: str) -> list[str]:
    """The key of the maker as the shop names him; a row that says '(ours)' names nobody."""
    key = side.makers.key(maker)
    return [key] if key and maker != OURS else []


def _candidates(
    rows: SheetRows, rest: Sequence[int], matches: Iterable[RowMatch], by_number: ByNumber
) -> Iterator[tuple[int, RowMatch]]:
    """Each candidate with its offer's number. What numbers and paths say of a row is added to the score's reasons."""
    of_row: defaultdict[int, list[RowMatch]] = defaultdict(list)
    for one in matches:
        of_row[rest[one.row]].append(one)
    places = {rows.place[at]: at for at in rest}
    for place in by_number:
        if place in places:
            of_row.setdefault(places[place], [])
    for at, found in sorted(of_row.items()):
        said = {code: match for code, match in by_number.get(rows.place[at], ()) if match.tier == "candidate"}
        yield from ((rows.offer[at], one) for one in _with_numbers(found, said))


def _with_numbers(found: Sequence[RowMatch], said: dict[str, OfferMatch]) -> Iterator[RowMatch]:
    for one in found:
        match = said.pop(one.part, None)
        reasons = tuple(dict.fromkeys((*match.reasons, *one.reasons))) if match else one.reasons
        against = one.against or bool(match and match.vetoed)
        yield changed(one, tier="candidate", reasons=reasons, against=against)
    last = max((one.rank for one in found), default=0)
    for rank, (code, match) in enumerate(said.items(), last + 1):
        # Not likely: the score sees the same numbers. It has no facts to learn from, and no score to go by.
        yield RowMatch(
            row=0, part=code, tier="candidate", score=0.0, rank=rank, reasons=match.reasons, against=match.vetoed
        )


def _done(
    sheet: KeptSheet, rows: int, left: int, found: Sequence[tuple[int, RowMatch]], at: datetime
) -> SheetLookedThrough:
    with_candidates = len({offer for offer, _ in found})
    return SheetLookedThrough(
        sheet=sheet.sheet,
        supplier=sheet.supplier,
        file=sheet.file,
        sheet_date=sheet.sheet_date,
        rows=rows,
        automatic=rows - left,
        with_candidates=with_candidates,
        like_none=left - with_candidates,
        candidates=len(found),
        at=at,
    )
