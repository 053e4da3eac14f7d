"""What is known now of an approved line against what the customer approved, in sentences with both figures.

A yes covers that number at that price by that date; anything else is told, and a person decides.
"""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal

from ..basics.alarm import Decision, Differs
from ..basics.money import Money, round_half_up
from ..basics.part_number import number_key
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value
from .hold import Covered, covers_cost, covers_day, goods_of
from .number_approved import covers_number
from .tolerance import line_at, may_rise_to, rises_too_far


class Known(Value, frozen=True, kw_only=True):
    """What is known now of an approved line's part.

    `unit_cost`: the goods of one piece in the shop's currency, without freight and other charges; `each`: what it would
    be priced at by the shop's bands. Both None: not known. `number` is the one it would come under now; blank: as
    approved. `latest` None: no day is known. `gone`: why it can't be had any more; blank: it can. `came`: all of it is
    at the shop, so that its day is no question any more. `ordered`: it is bought, so that bands changed since are no
    question either while it costs no more. `missing`: why no cost is known.
    """

    unit_cost: Money | None = None
    each: Money | None = None
    number: str = ""
    latest: date | None = None
    gone: str = ""
    came: bool = False
    ordered: bool = False
    missing: str = ""


def differences(
    quote: Quote,
    line: QuoteLine,
    covered: Covered | None,
    known: Known,
    decision: Decision | None = None,
    approved: Money | None = None,
) -> tuple[Differs, ...]:
    """All that is not as approved and that no decision covers; nothing where the yes still covers what is known.

    A rise within the tolerance frozen in the quote is none. `covered`: the last day the yes covers, None where no day
    was named. `decision` is the last one of the line. `approved` is its amount in the yes that holds, None where it is
    the line's own: rises over several revisions count from there together.
    """
    if known.gone:
        words = f"{line.number} can't be had as quoted any more: {known.gone}"
        return (Differs(what="gone", approved=line.number, now=known.gone, words=words),)
    found: list[Differs] = []
    if known.number and not covers_number(line, known.number, decision):
        words = f"approved was {line.number}, now it is {known.number}"
        found.append(Differs(what="number", approved=line.number, now=known.number, words=words))
    if not covers_cost(decision, line, known.unit_cost):
        found += _dearer(quote, line, known, approved)
    if not known.came:
        found += _later(covered, known.latest, decision)
    return tuple(found)


def percent_more(before: Money, now: Money) -> Decimal | None:
    """By how many per cent it rose, two decimals, half up; None from nothing."""
    if not before.amount:
        return None
    return round_half_up((now.amount - before.amount) * 100 / before.amount, 2)


def risen(before: Money, now: Money) -> str:
    """'126.90, now 139.59 each: 12.69 more, 10.00 %', for amounts of one currency."""
    percent = percent_more(before, now)
    more = (now - before).rounded().amount
    end = "" if percent is None else f", {percent} %"
    return f"{before.rounded().amount}, now {now.rounded().amount} each: {more} more{end}"


def same_number(one: str, others: tuple[str, ...]) -> bool:
    """Whether it is one of the others but for case, spaces and punctuation. A blank is no number."""
    return bool(number_key(one)) and number_key(one) in {number_key(other) for other in others}


def _dearer(quote: Quote, line: QuoteLine, known: Known, approved: Money | None) -> Iterator[Differs]:
    if known.unit_cost is None:
        words = f"approved at {line.unit_price.amount} each, what it costs now is not known: {known.missing}"
        yield Differs(what="price", approved=str(line.unit_price), now="not known", words=words)
        return
    before = line.behind.unit_cost if line.behind else known.unit_cost
    paid = goods_of(line, before)
    if goods_of(line, known.unit_cost) > may_rise_to(paid, quote.tolerance):
        words = f"approved on {risen(before, known.unit_cost)}"
        yield Differs(what="price", approved=str(before.rounded()), now=str(known.unit_cost.rounded()), words=words)
    elif known.ordered and not before < known.unit_cost:
        return
    elif known.each is not None and rises_too_far(line, known.each, approved, quote.tolerance):
        words = f"approved at {risen(line.unit_price, known.each)}, by the shop's own bands, for the part costs no more"
        if approved is not None and approved != line.price:
            words = f"the line was approved at {approved} before tax, now it would be {line_at(line, known.each)}"
        yield Differs(what="price", approved=str(line.unit_price), now=str(known.each), words=words)


def _later(covered: Covered | None, latest: date | None, decision: Decision | None) -> Iterator[Differs]:
    if covered is None:
        return
    by, told = covered.day, covered.words()
    if latest is None:
        words = f"approved was by {told}, now no day is known"
        yield Differs(what="date", approved=str(by), now="not known", words=words)
    elif latest > by and not covers_day(decision, latest):
        words = f"approved was by {told}, now {latest}: {days_words((latest - by).days)} later"
        yield Differs(what="date", approved=str(by), now=str(latest), words=words)


def days_words(days: int) -> str:
    """'1 day', '20 days'."""
    return f"{days} day" if days == 1 else f"{days} days"
