"""One line of a job: what it was quoted at, ordered at and received at, and each thing that moved it. The one rule.

Everything else adds such lines up. Amounts are whole minor units of the shop's currency, before tax. `Change.amount` is
what it did to the earnings: below zero is a loss. The steps of a line lead to the cent from what it was quoted to earn
to what it earns as far as is known.
"""

from collections.abc import Sequence

from ..basics.margin import Stage, When
from ..basics.margin_facts import BilledLine, QuotedLine
from ..basics.value import Value
from . import names
from .bought import Bought
from .freight_rise import NO_RISE, Rise
from .minor import reader
from .quoted import Cost


class Change(Value, frozen=True, kw_only=True, gc=False):
    """Something that moved a line's earnings. `words` has a place for each of `figures`: whole numbers are money."""

    name: str
    amount: int
    words: str
    figures: tuple[int | str, ...] = ()
    when: When = "after the quote"


class FreightApart(Value, frozen=True, kw_only=True, gc=False):
    """What a line's cost changes by, at each stage, where it is looked at by itself: freight billed on another line is
    taken from parts (below zero) and given to the line that bills it. None: not all of it is known at that stage.
    `known`: as far as each part is known."""

    quoted: int = 0
    ordered: int | None = 0
    received: int | None = 0
    known: int = 0


NO_FREIGHT = FreightApart()
"""Of lines whose freight is billed nowhere else."""


class LineFigures(Value, frozen=True, kw_only=True, gc=False):
    """A line's figures. `ordered` and `received` are costs, None where it has not come so far. `billed` is its price
    on the bill, or as approved; `order_price` that at the order: nothing where it was left off and never bought.
    `freight_share` is its share of freight billed on lines of its own: above zero for parts, below for the freight
    lines, nothing in all. `freight_apart` is what of the cost goes with that price."""

    job: str
    label: str
    title: str
    answer: str
    part: str
    supplier: str
    category: str
    month: str
    price: int
    cost: int
    ordered: int | None
    received: int | None
    billed: int
    is_part: bool
    order_price: int
    steps: Sequence[Change] = ()
    beside: Sequence[Change] = ()
    freight_share: int = 0
    freight_apart: FreightApart = NO_FREIGHT

    @property
    def last_stage(self) -> tuple[Stage, int, int]:
        """The last stage it has reached, with its price and cost there."""
        if self.received is not None:
            return "received", self.billed, self.received
        return (
            ("quoted", self.price, self.cost) if self.ordered is None else ("ordered", self.order_price, self.ordered)
        )

    @property
    def last_cost(self) -> int:
        """The cost at the last stage it has reached."""
        if self.received is not None:
            return self.received
        return self.cost if self.ordered is None else self.ordered

    @property
    def earned(self) -> int:
        """What it earns as far as is known."""
        return self.billed - self.last_cost


class Told(Value, frozen=True, kw_only=True, gc=False):
    """A line with what came of it. `line` None: it was bought, but the newest quote has no yes for it. `price` is as
    quoted, `billed` as on the bill, or as quoted where there is none; `left_off`: there is one, and it is not on it.
    Of all that was `bought` for it: `goods` of the need, `charges`, and `carrier`, the carrier's freight in them."""

    label: str
    line: QuotedLine | None
    quoted: Cost
    price: int
    billed: int
    left_off: bool
    bought: Sequence[Bought]
    goods: int
    charges: int
    carrier: int


def price_of(line: QuotedLine | BilledLine, places: int) -> int:
    """Parts and freight of a line, before tax."""
    read = reader(places)
    return read[line.parts_price.amount] + read[line.freight_price.amount]


def costs_of(told: Told) -> tuple[int, int | None, int | None]:
    """The line's cost as quoted, as ordered, as received; None where it has not come so far."""
    line, bought = told.line, told.bought
    quoted = told.quoted.cost
    if line and not line.part:  # freight billed on a line of its own: its cost stands in the parts' landed cost
        return 0, 0, 0
    if not bought:
        return (quoted, 0, 0) if told.left_off else (quoted, None, None)
    received = 0
    for one in bought:
        if one.received is None:
            return quoted, told.goods + told.charges, None
        received += one.received.cost
    return quoted, told.goods + told.charges, received


def steps_of(told: Told, is_here: bool) -> list[Change]:
    """Everything that moved the line's earnings after the quote, nothing else; `is_here`: all of it has come."""
    steps: list[Change] = []
    if told.left_off:
        _left_off(told, steps)
    elif told.billed != told.price:
        name, words = names.COUNTER if told.billed < told.price else names.BILLED_MORE, "quoted at {0}, billed at {1}"
        figures = (told.price, told.billed)
        steps.append(Change(name=name, amount=told.billed - told.price, words=words, figures=figures))
    if told.bought:
        _to_order(told, steps)
        if is_here:
            for one in told.bought:
                _to_receipt(one, steps)
    return [one for one in steps if one.amount] if steps else steps


def _moved(pair: tuple[str, str], words: str, now: int, before: int, *more: int | str) -> Change:
    """A cost that was `before` and is `now`: a loss by the first name, else a gain by the second."""
    name = pair[0] if now > before else pair[1]
    return Change(name=name, amount=before - now, words=words, figures=(now, before, *more))


def _left_off(told: Told, steps: list[Change]) -> None:
    price, cost = told.price, told.quoted.cost
    words = "approved at {0} and left off the bill; it would have earned {1}"
    steps.append(Change(name=names.LEFT_OFF, amount=cost - price, words=words, figures=(price, price - cost)))
    if told.bought:
        words = "bought for {0} as quoted, neither used nor billed"
        name = names.DEAD if told.line and told.line.special_order else names.UNUSED
        steps.append(Change(name=name, amount=-cost, words=words, figures=(cost,)))


PRICE, CHARGES, RATE = (
    (names.PRICE, names.CHEAPER),
    (names.CHARGES, names.CHARGES_LESS),
    (names.RATE, names.RATE_GAIN),
)


def _to_order(told: Told, steps: list[Change]) -> None:
    goods, charges, line, quoted = told.goods, told.charges, told.line, told.quoted
    if line is None:
        words = "bought for {0}, and the customer's yes no longer covers it"
        steps.append(Change(name=names.UNUSED, amount=-goods - charges, words=words, figures=(goods + charges,)))
        return
    if goods != quoted.goods:
        words, pieces = "{2} ordered for {0}, quoted on {1}", str(line.quantity)
        steps.append(_moved(PRICE, words, goods, quoted.goods, pieces))
    if charges != quoted.charges:
        words = "freight, fees and duty {0} as ordered, quoted on {1}"
        steps.append(_moved(CHARGES, words, charges, quoted.charges))


def _to_receipt(one: Bought, steps: list[Change]) -> None:
    came, ordered = one.received, one.ordered
    if came is None:
        return
    full, others = came.before + came.sent_back, ordered.charges - ordered.carrier
    if full != ordered.need:
        words = "charged {0} on the papers of {2}, ordered for {1}"
        steps.append(_moved(PRICE, words, full, ordered.need, one.number))
    if came.sent_back:
        words, figures = "{0} of {1} went back to the supplier", (came.sent_back, full)
        steps.append(Change(name=names.SENT_BACK, amount=came.sent_back, words=words, figures=figures))
    if came.goods != came.before:
        words = "{0} at the papers' rate, {1} at the rate of the day of {2}"
        steps.append(_moved(RATE, words, came.goods, came.before, one.number))
    if came.rise is not NO_RISE:
        _freight(came.rise, one.number, steps)
    if came.others != others:
        words = "other charges {0} on the papers of {2}, ordered with {1}"
        steps.append(_moved(CHARGES, words, came.others, others, one.number))


def _freight(rise: Rise, number: str, steps: list[Change]) -> None:
    if rise.second:
        words = "later deliveries of {1} charged {0} freight, in all {2} against {3} ordered with"
        figures = (rise.later, number, rise.charged, rise.ordered)
        steps.append(Change(name=names.SECOND, amount=-rise.second, words=words, figures=figures))
    if rise.dearer:
        name = names.FREIGHT if rise.dearer > 0 else names.FREIGHT_LESS
        more = (rise.charged, rise.ordered, number)
        words = "{2} charged {0} freight in all, ordered with {1}"
        steps.append(Change(name=name, amount=-rise.dearer, words=words, figures=more))
    if rise.moved:
        words = "its share of the freight of {0} moved with the deliveries"
        steps.append(Change(name=names.FREIGHT_MOVED, amount=-rise.moved, words=words, figures=(number,)))
