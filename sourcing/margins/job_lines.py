"""The lines of a job with their figures: what the customer approved, and what was bought without a yes that holds."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date
from functools import cache

from ..basics.currency import minor_units
from ..basics.margin_facts import JobFacts, QuotedLine
from ..basics.quote import chosen
from ..basics.value import changed
from .bought import Book, Bought
from .freight_billed import freight_shares, is_extra, with_freight_apart
from .given_away import extras, with_labour_off
from .leaks import beside_of, not_billed
from .line import Change, LineFigures, Told, costs_of, price_of, steps_of
from .quoted import NOTHING, cost_of


def job_lines(facts: JobFacts, book: Book) -> list[LineFigures]:
    """Every line of the job that has figures. `book` is what was bought, of whatever jobs."""
    places = minor_units(facts.quote.currency)
    every = _told(facts, book.get(facts.quote.job, {}), places)
    given = freight_shares(every)
    billed = sum([_freight_billed(one) for one in every if one.line and not one.line.part])
    unbilled = not_billed([one.carrier for one in every], [one.quoted.freight for one in every], billed)
    lines = [
        _figures(facts, one, (share, leak), places) for one, share, leak in zip(every, given, unbilled, strict=True)
    ]
    lines = with_freight_apart(every, lines)
    return [*with_labour_off(facts, lines), *extras(facts)] if facts.bill or facts.given_away else lines


def _told(facts: JobFacts, bought: Mapping[str, list[Bought]], places: int) -> list[Told]:
    on_bill = {line.label: price_of(line, places) for line in facts.bill.lines} if facts.bill else None
    approved = facts.approved
    alone = not any([line.part and line.label in approved for line in facts.quote.lines if is_extra(line.label)])
    every = [
        _of_quote(_at_cost(line, approved), bought, on_bill, (alone, places))
        for line in facts.quote.lines
        if line.label in approved
        and (line.part or line.freight_price.amount.strip("0."))  # text: any figure but naught
    ]
    taken = {one.label for one in every}
    for label, mine in bought.items():  # without a yes that holds its cost is a cost of the job all the same
        if label not in taken:
            goods, charges, carrier = _sums(mine)
            every.append(
                Told(label=label, line=None, quoted=NOTHING, price=0, billed=0, left_off=False, bought=mine,
                     goods=goods, charges=charges, carrier=carrier)
            )  # fmt: skip
    return every


def _at_cost(line: QuotedLine, approved: Collection[str]) -> QuotedLine:
    """With freight as the quote says that it comes to for what is approved."""
    for case in line.freight_cases:
        if chosen(case.approved, case.without, approved):
            return changed(line, freight_price=case.freight)
    return line


def _of_quote(
    line: QuotedLine, book: Mapping[str, list[Bought]], on_bill: Mapping[str, int] | None, of: tuple[bool, int]
) -> Told:
    (alone, places), label = of, line.label
    price = price_of(line, places)
    bought: Sequence[Bought] = book.get(label, ()) if line.part else ()
    if on_bill is None and any(one.back.of_need for one in bought):
        bought = _without_gone(line, bought)
    goods, charges, carrier = _sums(bought)
    return Told(
        label=label,
        line=line,
        quoted=cost_of(line, alone, places),
        price=price,
        billed=price if on_bill is None else on_bill.get(label, 0),
        left_off=on_bill is not None and label not in on_bill,
        bought=bought,
        goods=goods,
        charges=charges,
        carrier=carrier,
    )


def _without_gone(line: QuotedLine, bought: Sequence[Bought]) -> Sequence[Bought]:
    """Goods sent back for credit can't be billed: short of them, the line is not received, and its price not earned."""
    if sum(one.came.good - one.back.of_need for one in bought) >= line.quantity:
        return bought
    return [changed(one, received=None) if one.back.of_need else one for one in bought]


def _sums(bought: Sequence[Bought]) -> tuple[int, int, int]:
    """Goods of the need, charges, and the carrier's freight in them."""
    goods = charges = carrier = 0
    for one in bought:
        ordered = one.ordered
        goods += ordered.need
        charges += ordered.charges
        carrier += ordered.carrier
    return goods, charges, carrier


def _freight_billed(told: Told) -> int:
    """As approved: what a discount took off is told as the discount, and not a second time as freight not billed."""
    return 0 if told.left_off else max(told.price, told.billed)


def _figures(facts: JobFacts, told: Told, of: tuple[int, Change | None], places: int) -> LineFigures:
    (share, leak), label = of, told.label
    line, first = told.line, told.bought[-1] if told.bought else None
    cost, ordered, received = costs_of(told)
    beside = beside_of(told, places)
    return LineFigures(
        job=facts.quote.job,
        label=label,
        title=line.title if line else first.ordered.line.description if first else "",
        answer=facts.answers.get(label, "not on the quote"),
        part=line.part if line else first.ordered.line.part if first else "",
        supplier=first.supplier if first else line.behind.supplier if line and line.behind else "",
        category=(line.category if line else "") or (first.ordered.line.category if first else ""),
        month=_month(facts.approved.get(label)) if line else "",
        price=told.price,
        cost=cost,
        ordered=ordered,
        received=received,
        billed=told.billed,
        is_part=line is None or bool(line.part),
        order_price=0 if told.left_off and not told.bought and line and line.part else told.price,
        steps=steps_of(told, received is not None),
        beside=[*beside, leak] if leak else beside,
        freight_share=share,
    )


@cache
def _month(day: date | None) -> str:
    return f"{day.year}-{day.month:02d}" if day else ""
