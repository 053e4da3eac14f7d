"""The rows and sentences of the customer's page: those of the paper, with what is asked, settled and answered."""

from collections.abc import Collection, Mapping, Sequence
from types import MappingProxyType

from ..basics.approval import ON_CONDITION, Approval
from ..basics.money import Money
from ..basics.person import Photo
from ..basics.quote import FrozenQuote, Quote, QuoteLine
from .amounts import date_text, money_text
from .quote_paper import for_customer, paper_values
from .quote_words import answered_words, approved_deposit_words, goes_with

BETWEEN = "|"
"""Between the totals of all choices, as the page's script reads them; no amount of any locale has it in it."""
NOTHING: Mapping[str, Approval] = MappingProxyType({})


def page_values(
    quote: Quote,
    holding: Mapping[str, Approval],
    asked: Collection[str],
    totals: Sequence[Money],
    photos: Sequence[Photo],
) -> dict[str, object]:
    """What the page shows: nothing of the owner's side. `totals` are written out here, so that a script only looks
    the right one up. Lines that are not asked about say why not in `settled`, by label.
    """
    settled = {line.label: _settled(line, quote, holding) for line in quote.lines if line.label not in asked}
    return {
        **_values(quote),
        "asked": [line.label for line in quote.lines if line.label in asked],
        "settled": settled,
        "totals": BETWEEN.join(money_text(total, quote.locale) for total in totals),
        "photos": {photo.name: photo for photo in photos},
    }


def answered_values(
    frozen: FrozenQuote,
    given: Sequence[Approval],
    before: Mapping[str, Approval] = NOTHING,
    deposit: Money | None = None,
) -> dict[str, object]:
    """What the confirmation shows: lines approved, declined and left open, with their prices before tax, and those
    answered before, which count in what is approved; all that is approved with tax, and the deposit asked for that;
    conditions and words; and which revision of the paper it was, with its hash.
    """
    words = {one.label: one.answer for one in given}
    lines = for_customer(frozen.quote).lines
    held = [(line, before[line.label]) for line in lines if line.label in before and line.label not in words]
    first = next((one for one in given if one.answer == "approved"), given[0] if given else None)
    return {
        **_values(frozen.quote),
        "deposit": "" if deposit is None else approved_deposit_words(deposit, frozen.quote.locale),
        "approved": [line for line in lines if words.get(line.label) == "approved"],
        "declined": [line for line in lines if words.get(line.label) == "declined"],
        "before": held,
        "open": [line for line in lines if line.label not in {*words, *before} and line.answered is None],
        "total_after": first.total_after if first else None,
        "condition": first.condition if first else "",
        "said": first.words.partition(ON_CONDITION)[0].strip() if first else "",
        "sha256": frozen.sha256,
    }


def _values(quote: Quote) -> dict[str, object]:
    """Those of the paper, but for its language: the page's own words are in the language her browser asks for."""
    return {name: value for name, value in paper_values(quote).items() if name != "language"}


def _settled(line: QuoteLine, quote: Quote, holding: Mapping[str, Approval]) -> str:
    """As the paper says it; and for an answer given since the paper was made, that the shop has it, naming nobody."""
    printed = answered_words(line, quote.locale) or goes_with(line, quote)
    if printed or line.label not in holding:
        return printed
    one = holding[line.label]
    word, day = ("yes" if one.answer == "approved" else "no"), date_text(one.at.date(), quote.locale)
    return f"The shop was given a {word} to this line on {day}; it is not asked again. Call us to change it."
