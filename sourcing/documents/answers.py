"""Where a quote stands after the customer's answers, as text for the shop. Lines are before tax, totals with tax."""

from ..basics.approval import Answers
from ..basics.quote import Quote
from .amounts import money_text
from .plain_text import document, table, wrapped

HEADER = ("line", "answer", "before tax", "work")
MOST = (4, 8, 16, 66)


def answers_text(quote: Quote, answers: Answers) -> str:
    """Each line approved, declined or waiting with its amount; then the approved total, and what to look at.

    What of it lies beyond the work asked for is said only once all of that work is approved: before, it is not known.
    """
    locale = quote.locale
    rows = [(line.label, answers.of(line.label), money_text(line.price, locale), line.title) for line in quote.lines]
    lines = wrapped(f"Job {answers.job}, revision {answers.revision}: {quote.customer.name}'s answers")
    lines += table([HEADER, *rows], MOST, frozenset((2,)))
    lines += [f"Approved, with tax: {money_text(answers.approved_total, locale)}"]
    if all(answers.of(label) == "approved" for label in quote.labels("agreed")):
        lines += [f"Of that beyond the work asked for: {money_text(answers.extra, locale)}"]
    waiting = [line.label for line in quote.lines if answers.of(line.label) == "waiting"]
    if waiting:
        lines += wrapped(
            f"Waiting for an answer: {', '.join(waiting)}. No answer is not a yes: these can't be ordered."
        )
    for note in answers.notes:
        lines += wrapped(f"Note: {note}.")
    return document(lines)
