"""The ranked offers of a comparison as a table for a terminal 100 columns wide, each with its reason beneath."""

from ..basics.choice import Comparison, RankedOffer
from ..basics.offer import Offer
from .landed_words import beside_words, cost_name
from .order_paper import price_words
from .plain_text import row, underline, widths_for, wrapped, yes_no

HEADER = ("#", "supplier", "number", "each", "landed", "here by", "standing", "front", "in time")
MOST = (2, 23, 16, 11, 9, 10, 9, 5, 7)
RIGHT = frozenset((0, 4))
WAITING_HEADER = ("#", "supplier", "number", "landed", "waiting", "together", "here by", "standing", "front", "in time")
WAITING_MOST = (2, 20, 13, 9, 9, 9, 10, 9, 5, 7)
WAITING_RIGHT = frozenset((0, 3, 4, 5))


def ranked_lines(comparison: Comparison) -> list[str]:
    """The statement by what they are ranked, and the table; or that nothing can be ranked."""
    ranked, price = comparison.ranked, comparison.wishes.value_per_day
    if not ranked:
        return ["", "No offer can be ranked."]
    head = f"{ranked_by(comparison)} Front: none is both cheaper and sooner."
    return ["", *wrapped(head), *_table(ranked, price is not None)]


def ranked_by(comparison: Comparison) -> str:
    """By what the offers are ranked, a sentence; some are."""
    currency, price = comparison.ranked[0].priced.landed.total.currency, comparison.wishes.value_per_day
    by = f"cost at the door in {currency}"
    if price is not None:
        since = f" from {comparison.asked_on}" if comparison.asked_on else ""
        by += f" and {price:f} {currency} for each day of waiting{since} to the last day"
    return f"Ranked by {by}, each ordered alone."


def _table(ranked: tuple[RankedOffer, ...], waiting: bool) -> list[str]:
    header, most, right = (WAITING_HEADER, WAITING_MOST, WAITING_RIGHT) if waiting else (HEADER, MOST, RIGHT)
    cells = [_waiting_cells(one) if waiting else _ranked_cells(one) for one in ranked]
    widths = widths_for([header, *cells], most)
    lines = [*row(header, widths, right), underline(widths)]
    for one, cell in zip(ranked, cells, strict=True):
        lines += [*row(cell, widths, right), *_ranked_details(one), ""]
    return lines[:-1]


def _waiting_cells(one: RankedOffer) -> tuple[str, ...]:
    """The figures with waiting counted; the price each stands in the reason and the cost parts beneath."""
    priced = one.priced
    return (
        str(one.place),
        priced.supplier_name,
        priced.offer.supplier_number,
        str(priced.landed.total.rounded().amount),
        str(one.waiting.amount) if one.waiting else "",
        str(one.counted.amount) if one.counted else "",
        *_marks(one),
    )


def _marks(one: RankedOffer) -> tuple[str, ...]:
    last = one.priced.arrival.latest
    return (
        str(last or "not known"),
        one.priced.standing,
        "front" if one.on_front else "",
        yes_no(one.in_time),
    )


def _ranked_cells(one: RankedOffer) -> tuple[str, ...]:
    priced, offer, item = one.priced, one.priced.offer, one.priced.landed.items[0]
    return (
        str(one.place),
        priced.supplier_name,
        offer.supplier_number,
        price_words(item.unit_price, offer.currency, offer.price_basis).removesuffix(" each"),
        str(priced.landed.total.rounded().amount),
        *_marks(one),
    )


def _ranked_details(one: RankedOffer) -> list[str]:
    priced = one.priced
    landed = priced.landed
    parts = ", ".join(f"{cost_name(line)} {line.amount.rounded().amount}" for line in landed.lines)
    lines = [*wrapped(one.reason, 4), *wrapped(parts, 6)]
    lines += [line for words in beside_words(landed.items[0], priced.warnings) for line in wrapped(words, 6)]
    lines += wrapped(match_words(one), 6)
    lines += wrapped(f"arrives {priced.arrival.words()}; {source_words(priced.offer)}", 6)
    return lines + [line for warning in priced.warnings for line in wrapped(f"Warning: {warning}", 6)]


def match_words(one: RankedOffer) -> str:
    """How the offer's number is our part: link by link."""
    links = one.priced.path.links
    how = "; ".join(str(link) for link in links) if links else "our part's own number"
    described = f"'{one.priced.offer.description}', " if one.priced.offer.description else ""
    return f"{described}matched as {one.priced.matched_number}: {how}"


def source_words(offer: Offer) -> str:
    """Where the offer stands: file, worksheet, row, date of the sheet."""
    source = offer.source
    worksheet = f", worksheet {source.worksheet}" if source.worksheet else ""
    return f"{source.file}{worksheet}, row {source.row}, sheet of {source.sheet_date}"
