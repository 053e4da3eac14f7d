"""A job's margin at each stage it has reached, its leaks by name and its bridge: lines added up. Cores never enter."""

from collections.abc import Sequence
from decimal import Decimal
from functools import cache

from ..basics.currency import minor_units
from ..basics.margin import JobMargin, Leak, LineMargin, Margin, Stage
from ..basics.margin_facts import JobFacts
from ..basics.money import Money
from ..basics.value import Value, changed
from . import names
from .bought import Book
from .bridge import bridge, in_words
from .figures import margin
from .freight_billed import by_itself
from .given_away import ANSWER, notes_of
from .job_lines import job_lines
from .line import Change, LineFigures
from .minor import minor, money, part_of

STAGES: tuple[Stage, ...] = ("quoted", "ordered", "received")


class OwnersRules(Value, frozen=True, kw_only=True):
    """The owner's figures that margins are held against: parts margin warned of below, what an hour costs the shop."""

    floor_percent: Decimal = Decimal(0)
    technician_cost: Decimal = Decimal(0)


def job_margin(facts: JobFacts, book: Book, rules: OwnersRules) -> JobMargin:
    """The margin of one job. `book` is what was bought for it, and may hold other jobs."""
    currency = facts.quote.currency
    lines = job_lines(facts, book)
    parts = tuple((stage, _sum(lines, stage, currency)) for stage in STAGES if _reached(lines, stage))
    over = bridge(lines, currency)
    left = over.end.earned - _beside(lines, currency) if over else None
    return JobMargin(
        job=facts.quote.job,
        customer=facts.quote.customer.name,
        revision=facts.quote.revision,
        lines=tuple(line_margin(line, rules, currency) for line in lines),
        parts=parts,
        whole=tuple((stage, _whole((stage, part), facts, lines, rules)) for stage, part in parts if _is_priced(facts)),
        leaks=leaks_of(lines, currency),
        floor_percent=rules.floor_percent,
        notes=_notes(facts, lines),
        bridge=over,
        left=left,
    )


def line_margin(line: LineFigures, rules: OwnersRules, currency: str) -> LineMargin:
    """A line's margins as values, each by itself: freight billed on a line of its own is in that line alone."""
    seen = by_itself(line)
    return LineMargin(
        label=line.label,
        title=line.title,
        answer=line.answer,
        stages=tuple(
            (stage, margin(money(price, currency), money(cost, currency))) for stage, price, cost in stages(seen)
        ),
        below_floor=below_floor(line, floor_part(rules.floor_percent)),
        supplier=line.supplier,
        category=line.category,
        month=line.month,
    )


def stages(line: LineFigures) -> list[tuple[Stage, int, int]]:
    """Price and cost at each stage the line has reached. Received is at the price billed, where it is billed."""
    found: list[tuple[Stage, int, int]] = [("quoted", line.price, line.cost)]
    if line.ordered is not None:
        found.append(("ordered", line.order_price, line.ordered))
    if line.received is not None:
        found.append(("received", line.billed, line.received))
    return found


def below_floor(line: LineFigures, floor: tuple[int, int]) -> bool:
    """Whether the line's last margin is under the floor, a part of its price (`floor_part`). Freight on a line of its
    own has no floor, and a part bears none of it."""
    if not line.is_part:
        return False
    _, price, cost = by_itself(line).last_stage
    return bool(price or cost) and price - cost < part_of(price, *floor)


@cache
def floor_part(percent: Decimal) -> tuple[int, int]:
    """That many per cent as two whole numbers, one over the other."""
    over, under = percent.as_integer_ratio()
    return over, under * 100


def leaks_of(lines: Sequence[LineFigures], currency: str) -> tuple[Leak, ...]:
    """Every loss by name, those after the quote first; what is the job's in one sum is told once."""
    found: dict[tuple[str, ...], tuple[str, Change, int]] = {}
    for line in lines:
        for change in leaks_on(line):
            label = "" if change.name == names.NOT_BILLED else line.label
            key = (change.name, label, in_words(change, currency))
            before = found[key][2] if key in found else 0
            found[key] = (label, change, before - change.amount)
    leaks = [
        Leak(name=name, label=label, amount=money(amount, currency), why=why, when=change.when)
        for (name, _, why), (label, change, amount) in found.items()
    ]
    return tuple(sorted(leaks, key=lambda leak: IN_TURN.index(leak.when)))


IN_TURN = ("after the quote", "within the quote", "beside the margin")


def leaks_on(line: LineFigures) -> list[Change]:
    """What a line lost; earnings that fell away with work that was not done are no leak, nor is what went back."""
    every, none = (*line.steps, *line.beside), names.NO_LEAKS
    lost = [one for one in every if one.amount < 0 and one.name not in none] if every else []
    return _without_back(line, lost) if any(one.name in names.NOT_USED for one in lost) else lost


def _without_back(line: LineFigures, lost: Sequence[Change]) -> list[Change]:
    """What is lost of a part that was not used, without what of its goods went back for credit: what they were charged
    above the order comes back first."""
    back, less = sum([one.amount for one in line.steps if one.name == names.SENT_BACK]), dict[int, int]()
    for at, one in sorted(enumerate(lost), key=lambda one: one[1].name != names.PRICE):
        less[at] = min(back, -one.amount) if one.name in names.NOT_USED or one.name == names.PRICE else 0
        back -= less[at]
    return [_less(one, less[at]) for at, one in enumerate(lost) if one.amount + less[at]]


def _less(one: Change, back: int) -> Change:
    if not back:
        return one
    words = f"{one.words}; {{{len(one.figures)}}} of it went back"
    return changed(one, amount=one.amount + back, words=words, figures=(*one.figures, back))


def _reached(lines: Sequence[LineFigures], stage: Stage) -> bool:
    """A stage of the whole counts once every line has reached it; a part of the lines would look like a gain."""
    return bool(lines) and all(any(stage == at for at, _, _ in stages(line)) for line in lines)


def _sum(lines: Sequence[LineFigures], stage: Stage, currency: str) -> Margin:
    figures = [(price, cost) for line in lines for at, price, cost in stages(line) if at == stage]
    return margin(
        money(sum(price for price, _ in figures), currency), money(sum(cost for _, cost in figures), currency)
    )


def _is_priced(facts: JobFacts) -> bool:
    return facts.before_tax is not None


def _whole(at: tuple[Stage, Margin], facts: JobFacts, lines: Sequence[LineFigures], rules: OwnersRules) -> Margin:
    """With labour and fees. The hours are those of the approved lines, or of the bill where the job is billed. At the
    order a part left off the bill and never bought has no price, for it has no cost there."""
    (stage, parts), currency = at, facts.quote.currency
    places = minor_units(currency)
    approved = [line for line in facts.quote.lines if line.label in facts.approved]
    price, hours = facts.before_tax or Decimal(0), [line.hours for line in approved]
    if stage == "received" and facts.bill:
        price, hours = Decimal(facts.bill.total.before_tax.amount), [line.hours for line in facts.bill.lines]
    elif stage == "ordered":
        price -= money(sum(line.price - line.order_price for line in lines), currency).amount
    labour = sum(minor(one * rules.technician_cost, places) for one in hours)
    return margin(Money(amount=price, currency=currency), parts.cost + money(labour, currency))


def _beside(lines: Sequence[LineFigures], currency: str) -> Money:
    lost = (one for line in lines for one in line.beside if one.when == "beside the margin")
    return money(-sum(one.amount for one in lost if one.name not in names.NOT_OFF_PARTS), currency)


def _notes(facts: JobFacts, lines: Sequence[LineFigures]) -> tuple[str, ...]:
    notes = []
    for line in facts.quote.lines:
        answer = facts.answers.get(line.label, "waiting")
        if line.label not in facts.approved:
            notes.append(f"{line.label} {line.title}: {answer}, not ordered and not billed")
    notes += notes_of(facts)
    lines = [line for line in lines if line.answer != ANSWER]
    for stage in STAGES[1:]:
        done = sum(1 for line in lines if any(stage == one for one, _, _ in stages(line)))
        if 0 < done < len(lines):
            notes.append(f"{done} of {len(lines)} lines {stage}; the job's figure for it waits for the rest")
    return tuple(notes)
