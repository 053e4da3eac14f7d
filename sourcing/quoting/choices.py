"""What a customer who reads a quote by herself is asked, what follows her answers by itself, what each choice comes to.

The freight of the agreed work goes with the answers to its parts, as the paper says; the extra parts' freight is
charged once for all of them and has an answer of its own.
"""

from collections.abc import Collection, Iterable, Mapping

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.quote import Quote, QuoteLine
from .freight_answers import brings, freight_lines
from .totals import total_of

MOST_CHOICES = 10
"""With more lines to answer the totals of all choices (1,024 of ten) would make a page heavy."""


def asked_about(quote: Quote, holding: Mapping[str, Approval]) -> tuple[str, ...]:
    """Labels that need an answer: not those answered on or after this revision, or printed on it as answered."""
    along = {freight.label for freight, _ in _going_along(quote)}
    return tuple(line.label for line in quote.lines if line.label not in along and _is_open(line, holding, quote))


def is_reconsidered(quote: Quote, label: str, holding: Mapping[str, Approval]) -> bool:
    """Whether a line is asked about again although an answer holds: the parts come later than was approved."""
    line = quote.line(label)
    return line is not None and label in holding and _is_open(line, holding, quote)


def with_freight_along(
    quote: Quote, yes: Collection[str], no: Collection[str], holding: Mapping[str, Approval]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The answers with those to freight of agreed work: a yes to any part is one to its freight, and where all of its
    parts are declined it is declined too. What holds already is not said again."""
    approved, declined = list(yes), list(no)
    for freight, parts in _going_along(quote):
        stands = holding[freight.label].answer if freight.label in holding else ""
        labels = {line.label for line in parts}
        held_no = {label for label in labels if label in holding and holding[label].answer == "declined"}
        if labels & set(yes):
            approved += [freight.label] if stands != "approved" else []
        elif labels & set(no) and labels <= {*no, *held_no}:
            declined += [freight.label] if stands != "declined" else []
    return tuple(approved), tuple(declined)


def choice_total(quote: Quote, yes: Collection[str], holding: Mapping[str, Approval]) -> Money:
    """With tax, what is approved already and not asked again together with these lines and their freight."""
    asked, held = asked_about(quote, holding), {at for at, one in holding.items() if one.answer == "approved"}
    along = {freight.label: {line.label for line in parts} for freight, parts in _going_along(quote)}
    chosen = {label for label in yes if label in asked}
    counted = chosen | (held - {*asked, *along})
    # Freight approved before goes when its last part is asked about again and not taken.
    freight = {label for label, parts in along.items() if parts & chosen or (label in held and parts & counted)}
    return total_of(quote, counted | freight).total


def choice_totals(quote: Quote, holding: Mapping[str, Approval]) -> tuple[Money, ...]:
    """The total of every choice there is: at place n the one with yes to each asked line whose bit is set in n, the
    first line being the lowest bit. Nothing where there are more than MOST_CHOICES lines to answer."""
    asked = asked_about(quote, holding)
    if len(asked) > MOST_CHOICES:
        return ()
    return tuple(choice_total(quote, chosen, holding) for chosen in _every_choice(asked))


def _every_choice(labels: tuple[str, ...]) -> Iterable[list[str]]:
    return ([label for at, label in enumerate(labels) if choice >> at & 1] for choice in range(1 << len(labels)))


def _is_open(line: QuoteLine, holding: Mapping[str, Approval], quote: Quote) -> bool:
    """A line asks where nothing holds for it, and where the paper asks although an answer to an older one holds."""
    one = holding.get(line.label)
    return one is None or (line.answered is None and one.revision != quote.revision)


def _going_along(quote: Quote) -> list[tuple[QuoteLine, list[QuoteLine]]]:
    """Freight of agreed work with the agreed parts it brings; freight without any has an answer of its own."""
    found = []
    for freight in freight_lines(quote):
        parts = [line for line in quote.lines if line.part and line.kind == "agreed" and brings(freight, line)]
        if freight.kind == "agreed" and parts:
            found.append((freight, parts))
    return found


def goes_along(quote: Quote) -> frozenset[str]:
    """Labels of freight that has no answer of its own: it goes with the answers to the agreed parts it brings."""
    return frozenset(freight.label for freight, _ in _going_along(quote))
