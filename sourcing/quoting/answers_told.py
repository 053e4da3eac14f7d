"""What answers told to the shop come to before they are written down: beside a yes and a no a line may stay as it is.

Freight of the agreed work goes along with its parts, as on the customer's own page.
"""

from collections.abc import Collection, Iterator, Mapping
from itertools import product

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.quote import Quote
from .choices import goes_along, with_freight_along
from .totals import total_of

MOST_TOLD = 6
"""With more lines the totals of all answers (729 of six lines) would make a page heavy."""


def to_answer(quote: Quote) -> tuple[str, ...]:
    """Labels of the lines that have an answer of their own, in order."""
    along = goes_along(quote)
    return tuple(line.label for line in quote.lines if line.label not in along)


def total_told(quote: Quote, yes: Collection[str], no: Collection[str], holding: Mapping[str, Approval]) -> Money:
    """With tax, all that is approved once these answers stand beside those that hold."""
    approved, declined = with_freight_along(quote, yes, no, holding)
    held = {label for label, one in holding.items() if one.answer == "approved"}
    return total_of(quote, (held - set(declined)) | set(approved)).total


def totals_told(quote: Quote, holding: Mapping[str, Approval]) -> tuple[Money, ...]:
    """The total of all answers there can be, nothing where there are more than MOST_TOLD lines. A line that stays as it
    is counts 0, a yes 1, a no 2; the total is at the number these make to the base of three, the first line lowest."""
    labels = to_answer(quote)
    if len(labels) > MOST_TOLD:
        return ()
    return tuple(total_told(quote, yes, no, holding) for yes, no in _every_answer(labels))


def _every_answer(labels: tuple[str, ...]) -> Iterator[tuple[list[str], list[str]]]:
    for words in product(range(3), repeat=len(labels)):
        said = dict(zip(labels, reversed(words), strict=True))
        yield [label for label in labels if said[label] == 1], [label for label in labels if said[label] == 2]
