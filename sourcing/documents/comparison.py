"""A comparison of one part's offers as text for a terminal 100 columns wide and as XLSX.

Nothing is cut and nothing is coloured: what speaks against an offer stands there in words. Landed costs are in the
shop's currency, prices in the supplier's.
"""

from collections.abc import Iterable, Sequence

from ..basics.choice import Candidate, Comparison, OpenOffer, SetAside
from ..basics.offer import Offer
from .comparison_tables import comparison_tables
from .csv_text import csv_text
from .landed_words import titled
from .plain_text import count, document, wrapped
from .ranked_text import ranked_lines, source_words
from .ranking_words import first_place_words, wish_words
from .workbook import workbook_bytes


def comparison_text(comparison: Comparison) -> str:
    """What is asked and doubtful, the ranked offers with reasons and cost parts, what is rejected or set aside and why,
    what a person must judge, and notes.
    """
    lines = _comparison_head(comparison)
    lines += ranked_lines(comparison)
    lines += titled("Not ranked, for something of its cost or day is not known", _open_offers(comparison.open_offers))
    lines += titled("How long the first place holds, each figure moved alone", _each(first_place_words(comparison)))
    rejected = [one for one in comparison.set_aside if one.rejected]
    lines += titled("Rejected: not what is asked", _set_aside(rejected))
    lines += titled("Not ranked", _set_aside([one for one in comparison.set_aside if not one.rejected]))
    lines += titled("For a person to judge; none of these is ordered by itself", _candidates(comparison.candidates))
    return document([*lines, *titled("Notes", _each(comparison.notes))])


def comparison_xlsx(comparison: Comparison) -> bytes:
    """The same as a workbook: worksheets Ranked, Cost lines, Not known, First place, Not ranked, To judge, Chart."""
    return workbook_bytes(comparison_tables(comparison))


def comparison_csv(comparison: Comparison) -> str:
    """The ranked offers alone, a line each, as the worksheet Ranked."""
    ranked = comparison_tables(comparison)[0]
    return csv_text(ranked.headers, ranked.rows)


def _each(sentences: Iterable[str]) -> list[str]:
    return [line for words in sentences for line in wrapped(words, 2)]


def _open_offers(some: Sequence[OpenOffer]) -> list[str]:
    return [line for one in some for line in _apart(one.priced.offer, one.priced.supplier_name, one.reason)]


def _set_aside(some: Sequence[SetAside]) -> list[str]:
    return [
        line for one in some for line in _apart(one.offer, one.supplier_name, one.reason.removeprefix("rejected: "))
    ]


def _comparison_head(comparison: Comparison) -> list[str]:
    by = f", needed by {comparison.need_by}" if comparison.need_by else ""
    asked = f"{count(comparison.quantity, 'piece')} of {comparison.our_part}, asked for as {comparison.asked}{by}"
    lines = [*wrapped(comparison.name), *wrapped(asked)]
    if comparison.asks:
        lines += wrapped(f"Asked of an offer: {', '.join(comparison.asks)}")
    wishes = wish_words(comparison.wishes)
    if wishes:
        lines += wrapped(f"Ranked only: {', '.join(wishes)}")
    return lines + [line for words in comparison.warnings for line in wrapped(f"WARNING: {words}")]


def _apart(offer: Offer, supplier: str, reason: str) -> list[str]:
    what = f"{supplier}: {offer.shown_number}"
    what += f", {offer.description}" if offer.description else ""
    return [*wrapped(what, 2), *wrapped(reason, 6), *wrapped(source_words(offer), 6)]


def _candidates(candidates: Sequence[Candidate]) -> list[str]:
    lines = []
    for one in candidates:
        held = "HELD BACK: " if one.vetoed else ""
        lines += _apart(one.offer, one.supplier_name, f"{held}{'; '.join(one.reasons)}")
    return lines
