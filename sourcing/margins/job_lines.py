"""The lines of a job with their figures: what the customer approved, and what was bought without a yes that holds."""

from collections.abc import Mapping, Sequence
from datetime import date

from ..basics.currency import minor_units
from ..basics.margin_facts import JobFacts, QuotedLine
from ..basics.value import Value
from .bought import Book, Bought
from .leaks import beside_of, not_billed
from .line import Change, LineFigures, Told, costs_of, price_of, steps_of
from .minor import shared
from .quoted import NOTHING, cost_of


class _One(Value, frozen=True, kw_only=True):
    """A line told, with its label, and its shares of what the job has in one sum."""

    label: str
    told: Told
    carrier: int


def job_lines(facts: JobFacts, book: Book) -> list[LineFigures]:
    """Every line of the job that has figures. `book` is what was bought, of whatever jobs."""
    places = minor_units(facts.quote.currency)
    every = _told(facts, book.get(facts.quote.job, {}), places)
    given = _freight_shares(every)
    billed = sum(price for price in given if price > 0)
    unbilled = not_billed([one.carrier for one in every], [one.told.quoted.freight for one in every], billed)
    return [
        _figures(facts, one, (share, leak), places) for one, share, leak in zip(every, given, unbilled, strict=True)
    ]


def _told(facts: JobFacts, bought: Mapping[str, list[Bought]], places: int) -> list[_One]:
    on_bill = {line.label: price_of(line, places) for line in facts.bill.lines} if facts.bill else None
    alone = not any(line.part and line.label in facts.approved for line in facts.quote.lines if _is_extra(line.label))
    every = [
        _one(line.label, _of_quote(line, bought, on_bill, (alone, places)))
        for line in facts.quote.lines
        if line.label in facts.approved
        and (line.part or line.freight_price.amount.strip("0."))  # text: any figure but naught
    ]
    taken = {one.label for one in every}
    for label, mine in bought.items():  # without a yes that holds its cost is a cost of the job all the same
        if label not in taken:
            every.append(_one(label, Told(line=None, quoted=NOTHING, price=0, billed=0, bought=mine, left_off=False)))
    return every


def _of_quote(
    line: QuotedLine, bought: Mapping[str, list[Bought]], on_bill: Mapping[str, int] | None, of: tuple[bool, int]
) -> Told:
    alone, places = of
    price, left_off = price_of(line, places), on_bill is not None and line.label not in on_bill
    return Told(
        line=line,
        quoted=cost_of(line, alone, places),
        price=price,
        billed=price if on_bill is None else on_bill.get(line.label, 0),
        bought=bought.get(line.label, ()) if line.part else (),
        left_off=left_off,
    )


def _one(label: str, told: Told) -> _One:
    return _One(label=label, told=told, carrier=sum([one.ordered.carrier for one in told.bought]))


def _is_extra(label: str) -> bool:
    """Add-ons are 'A', 'B', agreed lines '1', '2'."""
    return not label.isdigit()


def _freight_shares(every: Sequence[_One]) -> list[int]:
    """Freight billed on a line of its own, shared over the parts it was billed for, as their quoted charges are."""
    given = [0] * len(every)
    for at, one in enumerate(every):
        line = one.told.line
        if line is None or line.part:
            continue
        price = one.told.billed
        over = [to for to, other in enumerate(every) if _is_for(other, one)]
        over = over or [to for to, other in enumerate(every) if other.told.line and other.told.line.part]
        if over:
            given[at] -= price
            for to, share in zip(over, shared(price, [every[to].told.quoted.freight for to in over]), strict=True):
                given[to] += share
    return given


def _is_for(part: _One, freight: _One) -> bool:
    """As the quote says; else the freight of agreed lines is theirs, that of add-ons is the add-ons'."""
    line, named = part.told.line, freight.told.line.freight_for if freight.told.line else ()
    if line is None or not line.part:
        return False
    return part.label in named if named else _is_extra(part.label) == _is_extra(freight.label)


def _figures(facts: JobFacts, one: _One, of: tuple[int, Change | None], places: int) -> LineFigures:
    told, (share, leak) = one.told, of
    line, first = told.line, told.bought[-1] if told.bought else None
    cost, ordered, received = costs_of(told)
    beside = beside_of(told, places)
    return LineFigures(
        job=facts.quote.job,
        label=one.label,
        title=line.title if line else first.ordered.line.description if first else "",
        answer=facts.answers.get(one.label, "not on the quote"),
        part=line.part if line else first.ordered.line.part if first else "",
        supplier=first.supplier if first else line.behind.supplier if line and line.behind else "",
        category=(line.category if line else "") or (first.ordered.line.category if first else ""),
        month=_month(facts.approved.get(one.label)) if line else "",
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


def _month(day: date | None) -> str:
    return f"{day.year}-{day.month:02d}" if day else ""
