"""Landed cost looked at by itself, as text for a terminal 100 columns wide and as CSV."""

from collections.abc import Iterator, Sequence

from ..basics.landed_cost import LandedItem, LandedOrder, OneMore
from ..basics.landed_view import CostDifference, LandedAgain, LandedOffer, LandedRow, LandedSheet, Reason
from ..basics.money import Money
from .csv_text import Cell, csv_text
from .plain_text import count, document, table, wrapped

OFFER_COLUMNS = (
    *("supplier", "number", "worksheet", "row", "pieces", "name", "kind", "amount", "currency", "rule"),
    *("earliest", "latest", "why not"),
)
SHEET_COLUMNS = (
    *("worksheet", "row", "number", "maker", "maker number", "description", "pieces", "landed", "currency"),
    *("earliest", "latest", "why not", "why no day"),
)
ORDER_COLUMNS = ("name", "kept", "now", "difference", "currency", "rule")
SHOWN_ROWS = 20
SHOWN_REASONS = 12


def landed_offers_text(offers: Sequence[LandedOffer]) -> str:
    """Each offer of the number: named lines, total, arrival, what stands beside, one more."""
    lines: list[str] = []
    if len(offers) > 1:
        lines += [*wrapped(f"{len(offers)} rows of the sheet bear this number: see which of them is meant."), ""]
    for at, one in enumerate(offers):
        lines += [*([""] if at else []), *_offer(one)]
    return document(lines)


def landed_again_text(again: LandedAgain) -> str:
    """A placed order as kept and as it would be now, line by line."""
    by = f"the terms that hold since {again.terms_from}" if again.terms_from else "no terms"
    head = f"{again.order} to {again.supplier_name}, placed {again.placed_at:%Y-%m-%d %H:%M}"
    lines = [*wrapped(head), *wrapped(f"Worked out again for {again.at:%Y-%m-%d %H:%M} by {by}.")]
    lines += [*(line for words in again.notes for line in wrapped(f"MIND: {words}")), ""]
    rows = [("", "kept", "now", "difference"), *map(_difference_cells, again.differences)]
    total = again.now.total if again.now and not again.now.missing else None
    rows.append(("Total", str(again.kept), _or_blank(total), _signed(again.difference)))
    lines += table(rows, (46, 16, 16, 16), frozenset((1, 2, 3)))
    rules = [line for one in again.differences if one.rule for line in wrapped(f"{one.name}: {one.rule}", 2)]
    lines += ["", "How it is worked out now:", *rules] if rules else []
    if again.arrival:
        lines += ["", *wrapped(f"Ordered now it would be here {again.arrival.words()}.")]
    if again.open_questions:
        lines += ["", "Not known:", *(line for words in again.open_questions for line in wrapped(words, 2))]
    return document(lines)


def landed_sheet_text(sheet: LandedSheet) -> str:
    """The head of a landed sheet: counts, what could not be priced or dated and why, its first rows."""
    head = f"{sheet.supplier_name}, {sheet.file}, sheet of {sheet.sheet_date}: {count(sheet.offers, 'offer')}"
    lines = wrapped(head)
    lines += wrapped(
        f"{sheet.priced:,} at the door, each ordered alone in its fewest pieces on {sheet.at:%Y-%m-%d %H:%M}; "
        f"{sheet.dated:,} with a day."
    )
    lines += [line for words in sheet.notes for line in wrapped(f"MIND: {words}")]
    lines += _reasons("Not priced", sheet.not_priced) + _reasons("No day", sheet.not_dated)
    shown = [row for row in sheet.rows if row.landed is not None][:SHOWN_ROWS]
    if shown:
        rows = [("row", "number", "description", "pieces", "landed", "here by"), *map(_row_cells, shown)]
        lines += ["", *table(rows, (7, 20, 30, 6, 16, 10), frozenset((0, 3, 4)))]
    more = sheet.priced - len(shown)
    lines += ["", *wrapped(f"{count(more, 'more row')}; --csv FILE writes all of them.")] if more else []
    return document(lines)


def landed_offers_csv(offers: Sequence[LandedOffer]) -> str:
    """One line for each cost line; one with a blank amount for an offer that can't be worked out."""
    return csv_text(OFFER_COLUMNS, (cells for one in offers for cells in _offer_cells(one)))


def landed_again_csv(again: LandedAgain) -> str:
    """One line for each part of the cost and one for the total; blanks where something is not known."""
    total = again.now.total if again.now and not again.now.missing else None
    last = CostDifference(name="Total", kept=again.kept, now=total, difference=again.difference)
    return csv_text(ORDER_COLUMNS, (_again_cells(one) for one in (*again.differences, last)))


def landed_sheet_csv(sheet: LandedSheet) -> str:
    """One line for each offer of the sheet, in its order; a blank cost where none is known, and why."""
    return csv_text(SHEET_COLUMNS, map(_sheet_cells, sheet.rows))


def _offer(one: LandedOffer) -> list[str]:
    offer, source = one.offer, one.offer.source
    described = f", {offer.description}" if offer.description else ""
    lines = wrapped(f"{one.supplier_name} {offer.shown_number}{described}")
    worksheet = f", worksheet {source.worksheet}" if source.worksheet else ""
    lines += wrapped(f"{source.file}{worksheet}, row {source.row}, sheet of {source.sheet_date}", 2)
    if one.why_not:
        lines += wrapped(f"CAN'T BE ORDERED OR RANKED AS IT STANDS: {one.why_not}", 2)
    lines += [line for words in one.notes for line in wrapped(f"MIND: {words}", 2)]
    if one.landed is None:
        return [*lines, "  No landed cost."]
    item = one.landed.items[0]
    lines += wrapped(f"{count(one.quantity, 'piece')} needed, {item.item.ordered} ordered alone:", 2)
    lines += ["", *_cost_table(one.landed)]
    lines += [line for words in open_words(one.landed) for line in wrapped(words, 2)]
    lines += _beside(item)
    if one.arrival:
        lines += ["", *wrapped(f"Here: {one.arrival.words()}", 2)]
        lines += [line for step in one.arrival.steps for line in wrapped(step, 4)]
    return lines + _more(one)


def _cost_table(landed: LandedOrder) -> list[str]:
    at_least = "Total" if not landed.missing else "Known so far"
    rows = [("", "amount", "how"), *((line.name, str(line.amount), line.rule) for line in landed.lines)]
    rows.append((at_least, str(landed.total), ""))
    return [f"  {line}" for line in table(rows, (28, 15, 53), frozenset((1,)))]


def open_words(landed: LandedOrder) -> Iterator[str]:
    """What stands beside the total: what is not known, core charges, a discount for paying early."""
    if landed.missing and landed.least is not None and landed.most is not None:
        yield f"With what is not known: {landed.least} to {landed.most}"
    elif landed.missing and landed.least is not None:
        yield f"With what is not known: {landed.least} or more"
    if landed.core_charge.amount:
        yield f"Core charge beside it: {landed.core_charge}; cash out {landed.cash_out}"
    if landed.cash_discount:
        saved = landed.cash_discount
        yield f"Not in it: {saved.name.lower()} {saved.amount}, {saved.rule}"


def _beside(item: LandedItem) -> list[str]:
    words = list(item_words(item))
    return ["", "  Beside it:", *(line for one in words for line in wrapped(one, 4))] if words else []


def item_words(item: LandedItem) -> Iterator[str]:
    """What stands beside one item: pieces for the shelf, whether it can go back and what that would cost."""
    if item.item.surplus:
        yield f"{count(item.item.surplus, 'piece')} more than needed, for the shelf at {item.surplus_cost}"
    yield from item.beside.words
    if item.beside.return_loss is not None:
        yield f"sending all of it back would cost {item.beside.return_loss}"


def more_words(one: LandedOffer) -> list[tuple[str, tuple[str, ...]]]:
    """What the next quantity costs, and from which on the order is cheaper: a sentence each with what changes by it."""
    if one.one_more is None or one.landed is None:
        return []
    said = [(_more_words(one.one_more), one.one_more.changes)]
    if one.cheaper and one.cheaper.ordered != one.one_more.ordered:
        said.append((_cheaper_words(one.cheaper), one.cheaper.changes))
    elif one.cheaper is None and not one.landed.missing:
        said.append((f"No larger order, up to {one.tried_to} pieces, costs less or the same.", ()))
    return said


def _more(one: LandedOffer) -> list[str]:
    lines: list[str] = []
    for words, changes in more_words(one):
        lines += [*wrapped(words, 2), *(line for change in changes for line in wrapped(change, 4))]
    return ["", *lines] if lines else []


def _more_words(more: OneMore) -> str:
    what = f"{count(more.more, 'piece')} more, {more.ordered} in all"
    if more.refusal:
        return f"{what}: {more.refusal}"
    if more.difference is None:
        why = "; ".join(one.what for one in more.missing) or f"the order then costs {more.total}"
        return f"{what}: {why}"
    each = more.per_piece if more.more > 1 else None
    return f"{what}: {_signed(more.difference)}" + (f", {each} for each of them" if each else "")


def _cheaper_words(more: OneMore) -> str:
    first = f"From {more.ordered} pieces on ({count(more.more, 'piece')} more)"
    if more.difference is None:
        return f"{first} the order can be placed, for {more.total}"
    if not more.difference.amount:
        return f"{first} the whole order costs the same, {more.total}"
    return f"{first} the whole order is cheaper: {more.total}, {_signed(more.difference)}"


def _reasons(title: str, reasons: Sequence[Reason]) -> list[str]:
    if not reasons:
        return []
    lines = ["", f"{title}:"]
    for one in reasons[:SHOWN_REASONS]:
        lines += wrapped(f"{one.offers:,}: {one.words}", 2)
    rest = sum(one.offers for one in reasons[SHOWN_REASONS:])
    return lines + ([f"  {rest:,}: other reasons, in the CSV"] if rest else [])


def _signed(money: Money | None) -> str:
    if money is None:
        return ""
    return f"+{money}" if money.amount > 0 else str(money)


def _or_blank(money: Money | None) -> str:
    return "" if money is None else str(money)


def _difference_cells(one: CostDifference) -> tuple[str, ...]:
    return one.name, _or_blank(one.kept), _or_blank(one.now), _signed(one.difference)


def _row_cells(row: LandedRow) -> tuple[str, ...]:
    cells = (str(row.row), row.supplier_number, row.description, str(row.pieces), str(row.landed))
    return (*cells, str(row.latest or "not known"))


def _offer_cells(one: LandedOffer) -> Iterator[tuple[Cell, ...]]:
    source, ordered = one.offer.source, one.landed.items[0].item.ordered if one.landed else None
    head = (one.supplier_name, one.offer.supplier_number, source.worksheet, source.row, ordered)
    days = (one.arrival.earliest, one.arrival.latest) if one.arrival else (None, None)
    if one.landed is None:
        yield (*head, "", "", None, "", "", *days, one.why_not)
        return
    for line in one.landed.lines:
        cost = (line.name, line.kind, line.amount.amount, line.amount.currency, line.rule)
        yield (*head, *cost, *days, one.why_not)


def _again_cells(one: CostDifference) -> tuple[Cell, ...]:
    sums = (one.kept, one.now, one.difference)
    currency = next((money.currency for money in sums if money), "")
    return (one.name, *(money.amount if money else None for money in sums), currency, one.rule)


def _sheet_cells(row: LandedRow) -> tuple[Cell, ...]:
    what = (row.worksheet, row.row, row.supplier_number, row.maker, row.maker_number, row.description, row.pieces)
    landed = (row.landed.amount, row.landed.currency) if row.landed else (None, "")
    return (*what, *landed, row.earliest, row.latest, row.why_not, row.no_day)
