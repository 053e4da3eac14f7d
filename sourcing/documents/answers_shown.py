"""What the page says of answers just taken down, and the totals its script looks up."""

from collections.abc import Sequence

from ..basics.approval import Answers
from ..basics.money import Money
from ..basics.quote import Quote
from .amounts import money_text

BETWEEN = "|"
"""Between the totals of all answers; no amount of any locale has it in it."""


def totals_text(totals: Sequence[Money], locale: str) -> str:
    """The totals written out, so that a script only looks the right one up."""
    return BETWEEN.join(money_text(one, locale) for one in totals)


def told_words(quote: Quote, answers: Answers) -> str:
    """Where the quote stands now, in a sentence or two: 'Approved: 1, A. Declined: C. All that is approved ...'."""
    said = [
        f"{word.capitalize()}: {', '.join(labels)}."
        for word in ("approved", "declined", "waiting")
        if (labels := [line.label for line in quote.lines if answers.of(line.label) == word])
    ]
    total = money_text(answers.approved_total, quote.locale)
    return f"{' '.join(said)} All that is approved comes to {total} with tax."
