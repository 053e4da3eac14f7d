"""A job's margin at each stage it has reached, and its leaks by name. Approved lines only; cores never enter."""

from collections.abc import Mapping, Sequence

from ..basics.margin import JobMargin, Leak, LineMargin, Margin, Stage
from ..basics.money import Money, percent_of, total, zero
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.quote import DocumentTotal, Quote, QuoteLine
from ..basics.settings import Settings
from ..basics.value import Value
from .costs import ReceivedCost, freight_of, ordered_cost
from .figures import margin


class Ordered(Value, frozen=True, kw_only=True):
    """An order and what of it has come in full, by line number."""

    order: PurchaseOrder
    received: Mapping[int, ReceivedCost]


STAGES: tuple[Stage, ...] = ("quoted", "ordered", "received")


def job_margin(
    quote: Quote, words: Mapping[str, str], approved: DocumentTotal, orders: Sequence[Ordered], settings: Settings
) -> JobMargin:
    """The margin of one job. `words` are the answers by label, `approved` the document total of the approved lines."""
    taken = [line for line in quote.lines if words.get(line.label) == "approved"]
    lines = tuple(_line(line, quote, orders, settings) for line in taken if line.part or line.freight_price.amount)
    parts = tuple((stage, _sum(lines, stage, quote.currency)) for stage in STAGES if _reached(lines, stage))
    return JobMargin(
        job=quote.job,
        customer=quote.customer.name,
        revision=quote.revision,
        lines=lines,
        parts=parts,
        whole=tuple((stage, _whole(part, taken, approved, settings)) for stage, part in parts),
        leaks=_leaks(quote, taken, orders, settings),
        floor_percent=settings.margin_floor_percent,
        notes=_notes(quote, words, lines),
    )


def _line(line: QuoteLine, quote: Quote, orders: Sequence[Ordered], settings: Settings) -> LineMargin:
    price, nothing = line.parts_price + line.freight_price, zero(quote.currency)
    stages: list[tuple[Stage, Margin]] = [("quoted", margin(price, line.behind.cost if line.behind else nothing))]
    if line.part:
        for order, bought in _bought(line, quote, orders):
            stages.append(("ordered", margin(price, ordered_cost(bought))))
            if bought.line in order.received:
                stages.append(("received", margin(price, order.received[bought.line].cost)))
    else:  # freight billed on a line of its own: its cost stands in the parts' landed cost at every stage
        stages += [(stage, margin(price, nothing)) for stage in STAGES[1:]]
    last = stages[-1][1]
    below = bool(line.part) and last.earned < percent_of(price, settings.margin_floor_percent)
    return LineMargin(label=line.label, title=line.title, answer="approved", stages=tuple(stages), below_floor=below)


def _bought(line: QuoteLine, quote: Quote, orders: Sequence[Ordered]) -> list[tuple[Ordered, PurchaseOrderLine]]:
    return [
        (one, bought)
        for one in orders
        for bought in one.order.lines
        if bought.job == quote.job and bought.label == line.label
    ]


def _reached(lines: Sequence[LineMargin], stage: Stage) -> bool:
    """A stage of the whole counts once every line has reached it; a part of the lines would look like a gain."""
    return bool(lines) and all(stage in dict(line.stages) for line in lines)


def _sum(lines: Sequence[LineMargin], stage: Stage, currency: str) -> Margin:
    figures = [dict(line.stages)[stage] for line in lines]
    return margin(total((one.price for one in figures), currency), total((one.cost for one in figures), currency))


def _whole(parts: Margin, taken: Sequence[QuoteLine], approved: DocumentTotal, settings: Settings) -> Margin:
    labour = total((_labour_cost(line, settings) for line in taken), settings.currency)
    return margin(approved.before_tax, parts.cost + labour)


def _labour_cost(line: QuoteLine, settings: Settings) -> Money:
    return Money(amount=line.hours * settings.technician_cost, currency=settings.currency).rounded()


def _leaks(quote: Quote, taken: Sequence[QuoteLine], orders: Sequence[Ordered], settings: Settings) -> tuple[Leak, ...]:
    leaks = [_freight_leak(quote, taken, orders)]
    for line in taken:
        for order, bought in _bought(line, quote, orders):
            leaks += [_price_rise(line, order, bought), _surplus(line, order, bought)]
    return tuple(leak for leak in leaks if leak.amount.amount > 0)


def _freight_leak(quote: Quote, taken: Sequence[QuoteLine], orders: Sequence[Ordered]) -> Leak:
    billed = total((line.freight_price for line in taken), quote.currency)
    paid = total((_freight_paid(one, quote) for one in orders), quote.currency)
    why = f"inbound freight {paid.amount}, billed {billed.amount}"
    return Leak(name="freight not billed", label="", amount=paid - billed, why=why)


def _freight_paid(one: Ordered, quote: Quote) -> Money:
    """Freight as charged where the job's lines have all come, else as ordered."""
    mine = [line for line in one.order.lines if line.job == quote.job]
    if mine and all(line.line in one.received for line in mine):
        return total((one.received[line.line].freight for line in mine), quote.currency)
    return freight_of(one.order, quote.job, quote.currency)


def _price_rise(line: QuoteLine, order: Ordered, bought: PurchaseOrderLine) -> Leak:
    quoted = line.behind.unit_cost.amount if line.behind else bought.goods_cost.amount / bought.ordered
    came = order.received.get(bought.line)
    goods = came.goods if came else bought.goods_cost
    each = goods.amount / (came.pieces if came else bought.ordered)
    gap = (each - quoted) * bought.needed
    amount = Money(amount=gap, currency=goods.currency).rounded()
    stage = "charged" if came else "ordered"
    now, before = (Money(amount=price, currency=goods.currency) for price in (each, quoted))
    why = f"{stage} at {now.rounded().amount} each, quoted on {before.rounded().amount}"
    return Leak(name="price rise after the quote", label=line.label, amount=amount, why=why)


def _surplus(line: QuoteLine, order: Ordered, bought: PurchaseOrderLine) -> Leak:
    came = order.received.get(bought.line)
    amount = came.surplus_cost if came else bought.surplus_cost
    pieces = came.pieces if came else bought.ordered
    why = f"{pieces - bought.needed} of {pieces} pieces went on the shelf"
    return Leak(name="surplus of a pack", label=line.label, amount=amount, why=why)


def _notes(quote: Quote, words: Mapping[str, str], lines: Sequence[LineMargin]) -> tuple[str, ...]:
    notes = []
    for line in quote.lines:
        answer = words.get(line.label, "waiting")
        if answer != "approved":
            notes.append(f"{line.label} {line.title}: {answer}, not ordered and not billed")
    for stage in STAGES[1:]:
        done = sum(1 for line in lines if stage in dict(line.stages))
        if 0 < done < len(lines):
            notes.append(f"{done} of {len(lines)} lines {stage}; the job's figure for it waits for the rest")
    return tuple(notes)
