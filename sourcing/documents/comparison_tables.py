"""The worksheets of a comparison. Amounts are Decimals beside a column that names their currency."""

from collections.abc import Iterator

from ..basics.choice import Comparison, OpenOffer, RankedOffer
from ..basics.offer import Offer
from .comparison_chart import chart_table
from .csv_text import Cell
from .landed_words import cost_cells
from .plain_text import yes_no
from .workbook import Table

RANKED = (
    "Place", "Supplier", "Supplier's number", "Maker", "Maker's number", "Description", "Pieces needed",
    "Pieces ordered", "Price", "Price for pieces", "Price currency", "Landed cost", "For the shelf, at cost",
    "Core charge", "Currency", "Earliest", "Latest", "Days of waiting", "Waiting", "Landed and waiting", "In time",
    "On the front", "Standing", "Can go back", "Lost if it goes back", "Lost if the core stays", "Matched number",
    "Matched by", "Reason", "Warnings", "File", "Worksheet", "Row", "Sheet of",
)  # fmt: skip
OFFER = ("Supplier", "Supplier's number", "Maker", "Maker's number", "Description")
OPEN = (*OFFER, "At least", "At most", "Currency", "Latest", "Place at best", "Place at worst", "Reason")
FIRST_PLACE = ("Supplier", "Place", "What moves", "From", "By, or to", "Currency", "Per pieces", "Words")
SOURCE = ("File", "Worksheet", "Row", "Sheet of")


def comparison_tables(comparison: Comparison) -> tuple[Table, ...]:
    """Worksheets Ranked, Cost lines, Not known, First place, Not ranked, To judge, Chart; also where empty."""
    ranked, apart, judged = comparison.ranked, comparison.set_aside, comparison.candidates
    costs = [
        (one.place, one.priced.supplier_name, *cost_cells(line)) for one in ranked for line in one.priced.landed.lines
    ]
    away = [
        (*_offer(one.offer, one.supplier_name), yes_no(one.rejected), one.reason, *_source(one.offer)) for one in apart
    ]
    judge = [
        (*_offer(one.offer, one.supplier_name), yes_no(one.vetoed), "; ".join(one.reasons), *_source(one.offer))
        for one in judged
    ]
    return (
        Table(title="Ranked", headers=RANKED, rows=tuple(_ranked(one) for one in ranked)),
        Table(
            title="Cost lines",
            headers=("Place", "Supplier", "Cost", "Amount", "Currency", "Rule"),
            rows=tuple(costs),
        ),
        Table(title="Not known", headers=(*OPEN, *SOURCE), rows=tuple(_open(one) for one in comparison.open_offers)),
        Table(title="First place", headers=FIRST_PLACE, rows=tuple(_first_place(comparison))),
        Table(title="Not ranked", headers=(*OFFER, "Rejected", "Reason", *SOURCE), rows=tuple(away)),
        Table(title="To judge", headers=(*OFFER, "Held back", "Reasons", *SOURCE), rows=tuple(judge)),
        chart_table(ranked),
    )


def _open(one: OpenOffer) -> tuple[Cell, ...]:
    offer, last = one.priced.offer, one.priced.arrival.latest
    ends = (one.least.amount, one.most.amount if one.most else None, one.least.currency)
    places = (one.best_place, one.worst_place)
    return (*_offer(offer, one.priced.supplier_name), *ends, last, *places, one.reason, *_source(offer))


def _first_place(comparison: Comparison) -> Iterator[tuple[Cell, ...]]:
    """Turning points, then who is first at which price of a day."""
    for one in comparison.turning_points:
        moves = f"{one.figure} {'rises' if one.place == 1 else 'falls'}"
        by = (one.by.amount, one.by.currency) if one.by else (None, "")
        yield one.supplier_name, one.place, moves, None, *by, one.per, one.words
    for span in comparison.day_spans:
        to = span.to_price.amount if span.to_price else None
        words = f"{span.total} at the door, here by {span.latest}"
        what = (span.supplier_name, span.place, "first at a day's price from, to")
        yield *what, span.from_price.amount, to, span.from_price.currency, None, words


def _ranked(one: RankedOffer) -> tuple[Cell, ...]:
    priced, offer, item = one.priced, one.priced.offer, one.priced.landed.items[0]
    links = "; ".join(str(link) for link in priced.path.links) or "our part's own number"
    return (
        one.place,
        *_offer(offer, priced.supplier_name),
        item.item.needed,
        item.item.ordered,
        item.unit_price,
        offer.price_basis,
        offer.currency,
        priced.landed.total.amount,
        item.surplus_cost.amount,
        item.core_charge.amount,
        priced.landed.total.currency,
        priced.arrival.earliest,
        priced.arrival.latest,
        one.days,
        one.waiting.amount if one.waiting else None,
        one.counted.amount if one.counted else None,
        yes_no(one.in_time, "not asked" if priced.arrival.known else "not known"),
        yes_no(one.on_front),
        priced.standing,
        yes_no(item.beside.returnable, "not known"),
        item.beside.return_loss.amount if item.beside.return_loss else None,
        item.beside.core_lost.amount if item.beside.core_lost else None,
        priced.matched_number,
        links,
        one.reason,
        "; ".join(priced.warnings),
        *_source(offer),
    )


def _offer(offer: Offer, supplier: str) -> tuple[str, ...]:
    return supplier, offer.supplier_number, offer.maker, offer.maker_number, offer.description


def _source(offer: Offer) -> tuple[Cell, ...]:
    source = offer.source
    return source.file, source.worksheet, source.row, source.sheet_date
