"""What the shop gave away: extras fitted without a yes, and discounts on labour and fees.

An extra is a line of its own, quoted at nothing: its cost is a step after the quote, and the margins of the approved
lines stay as they are. A discount on parts and freight shows in the line's price on the bill; one on labour or a fee is
in no margin on parts, so it is told beside it.
"""

from collections.abc import Sequence

from ..basics.bill import GivenAway
from ..basics.currency import minor_units
from ..basics.margin_facts import JobFacts
from ..basics.value import changed
from . import names
from .line import Change, LineFigures
from .minor import digits

ANSWER = "given away"


def extras(facts: JobFacts) -> list[LineFigures]:
    """A line for each extra given away, in the order recorded. One kept in another currency than the quote is none."""
    return [
        _extra(facts.quote.job, number, one)
        for number, one in enumerate(facts.given_away, 1)
        if one.cost.currency == facts.quote.currency
    ]


def with_labour_off(facts: JobFacts, lines: Sequence[LineFigures]) -> list[LineFigures]:
    """The lines with discounts on labour and fees told beside them; a line without a part gets a row for it."""
    places, found = minor_units(facts.quote.currency), list(lines)
    for off in facts.bill.off if facts.bill else ():
        amount = digits(off.labour, places) + digits(off.fee, places)
        if not amount:
            continue
        words = "{0} off labour and fees when billed: no part's, but in the figure of the whole job"
        leak = Change(name=names.COUNTER, amount=-amount, words=words, figures=(amount,), when="beside the margin")
        at = next((at for at, line in enumerate(found) if line.label == off.label), None)
        if at is None:
            found.append(_bare(facts, off.label, leak))
        else:
            found[at] = changed(found[at], beside=[*found[at].beside, leak])
    return found


def notes_of(facts: JobFacts) -> list[str]:
    """What the owner should know of the extras: where their cost stands."""
    notes = []
    for one in facts.given_away:
        counted = one.cost.currency == facts.quote.currency
        where = "its cost is in the figures from 'ordered' on" if counted else "in another currency: not counted"
        notes.append(f"{one.what}: given away at a cost of {one.cost}, never approved, never billed; {where}")
    return notes


def _extra(job: str, number: int, one: GivenAway) -> LineFigures:
    cost, words = one.cost.minor(), "{1}, cost {0}, fitted without a yes and never billed; "
    figures: tuple[int | str, ...] = (cost, one.what)
    if one.price is None:
        words += "price not known"
    else:
        words, figures = f"{words}price never charged {{2}}", (*figures, one.price.minor())
    step = Change(name=names.GIVEN_AWAY, amount=-cost, words=words, figures=figures)
    return _line(job, (f"extra {number}", one.what, ANSWER), cost, steps=(step,))


def _bare(facts: JobFacts, label: str, leak: Change) -> LineFigures:
    title = next((line.title for line in facts.quote.lines if line.label == label), "")
    return _line(facts.quote.job, (label, title, facts.answers.get(label, "approved")), 0, beside=(leak,))


def _line(
    job: str, named: tuple[str, str, str], cost: int, steps: Sequence[Change] = (), beside: Sequence[Change] = ()
) -> LineFigures:
    label, title, answer = named
    return LineFigures(
        job=job, label=label, title=title, answer=answer, part="", supplier="", category="", month="", price=0, cost=0,
        ordered=cost, received=cost, billed=0, is_part=False, order_price=0, steps=steps, beside=beside,
    )  # fmt: skip
