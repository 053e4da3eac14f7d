"""The three ways out of an alarm: hold the price, ask the customer anew, switch to another offer at the same price.

Each with what the customer would pay in all, what parts would earn at the cost of now (never at the old one), when it
would be here, and what she must be asked. Nothing is decided here, and nothing is sent.
"""

from collections.abc import Callable, Iterable, Mapping
from datetime import date

from ..basics.alarm import Way, WayOut
from ..basics.margin import Margin
from ..basics.money import Money, total
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value, changed
from .alarm import days_words, percent_more, same_number
from .freight_at_cost import at_cost
from .hold import Covered, goods_of
from .totals import document_total, total_of

Reckon = Callable[[Money, Money], Margin]
"""Margin and markup of a price over a cost; handed in, for the step that reckons them is another one."""


class Yes(Value, frozen=True, kw_only=True):
    """What the customer approved: the revision, the labels of all approved lines, and the line it is about;
    `covered` is the last day the yes covers, None where no day was named."""

    quote: Quote
    labels: tuple[str, ...]
    line: QuoteLine
    covered: Covered | None = None

    @property
    def approved_total(self) -> Money:
        """What she approved in all, with tax."""
        return total_of(self.quote, self.labels).total

    @property
    def lines(self) -> list[QuoteLine]:
        """All approved lines, with freight as it comes to for them."""
        return list(at_cost([one for one in self.quote.lines if one.label in self.labels]))


class Buying(Value, frozen=True, kw_only=True):
    """One way to buy the approved parts as things stand now.

    `costs`: landed cost less what goes on the shelf, by label of each approved part. `missing`: why a cost is not
    known; then no margin is shown. `freight` is in the costs. `unit_cost`: the goods of one piece of this line;
    `each`: what it would be priced at by the shop's bands, `price_rule` how. `ready`: the day the machine would be
    ready with the part here on `latest`; None where the customer named no day for it, or it is not known. `number` is
    what the customer would get.
    `why_not`: why it can't be bought so; blank where it can.
    """

    costs: Mapping[str, Money] = {}
    missing: tuple[str, ...] = ()
    freight: Money | None = None
    supplier: str = ""
    supplier_name: str = ""
    supplier_number: str = ""
    number: str = ""
    latest: date | None = None
    ready: date | None = None
    unit_cost: Money | None = None
    each: Money | None = None
    price_rule: str = ""
    why_not: str = ""
    notes: tuple[str, ...] = ()


def ways_out(yes: Yes, stays: Buying, other: Buying, reckon: Reckon) -> tuple[WayOut, ...]:
    """Hold, ask, switch, in that order. `stays` is what the line was ordered or quoted from, `other` the best of the
    rest. Where the part can't be had from where it was quoted, what is asked is the price of the other."""
    asked = other if stays.why_not and not other.why_not else stays
    return _hold(yes, stays, reckon), _ask(yes, asked, reckon), _switch(yes, other, reckon)


def margin_as_approved(yes: Yes, reckon: Reckon) -> Margin:
    """What the approved parts with freight were to earn at the cost they were quoted on."""
    costs = (line.behind.cost for line in yes.lines if line.behind)
    return reckon(_price(yes.lines, yes.quote.currency), total(costs, yes.quote.currency))


def waiting_or_switching(hold: WayOut, switch: WayOut) -> str:
    """What switching costs more or less than holding, and how many days it gains; blank where either is not known."""
    if hold.margin is None or switch.margin is None or hold.why_not or switch.why_not:
        return ""
    gap = switch.margin.cost - hold.margin.cost
    words = f"Switching costs {abs(gap.amount)} {gap.currency} {'less' if gap.amount < 0 else 'more'}"
    if not gap.amount:
        words = "Switching costs the same"
    if hold.latest is None or switch.latest is None:
        return f"{words}."
    days = (hold.latest - switch.latest).days
    if not days:
        return f"{words}, and the parts are here on the same day."
    sooner = f"{days_words(abs(days))} {'sooner' if days > 0 else 'later'}"
    return f"{words}, and the parts are here {sooner}: {switch.latest} instead of {hold.latest}."


def _hold(yes: Yes, stays: Buying, reckon: Reckon) -> WayOut:
    way = _way("hold", yes, stays, yes.lines, reckon)
    return way if way.why_not else changed(way, asks=_joined(_number_asked(yes, stays), _day_asked(yes, stays)))


def _switch(yes: Yes, other: Buying, reckon: Reckon) -> WayOut:
    way = _way("switch", yes, other, yes.lines, reckon)
    if way.why_not:
        return way
    asks = _joined(_number_asked(yes, other), _day_asked(yes, other))
    return changed(way, asks=asks, notes=(*way.notes, *_freight_at_cost(yes, other, reckon)))


def _ask(yes: Yes, asked: Buying, reckon: Reckon) -> WayOut:
    line, each = yes.line, asked.each
    if asked.why_not or each is None:
        why = asked.why_not or "; ".join(asked.missing) or "what it costs now is not known"
        return changed(_way("ask", yes, asked, yes.lines, reckon), why_not=why)
    if each <= line.unit_price:
        why = f"by the shop's bands it is {each} each and {line.unit_price} is approved: there is no more to ask for"
        return changed(_way("ask", yes, asked, yes.lines, reckon), why_not=why)
    priced = [_at(one, each) if one.label == line.label else one for one in yes.lines]
    way = _way("ask", yes, asked, priced, reckon)
    assert way.total is not None and way.extra is not None  # nothing is in the way of it
    more = f"{way.extra} more ({way.extra_percent} %)" if way.extra_percent is not None else f"{way.extra} more"
    price = f"{line.title} would be {each} each instead of {line.unit_price}, {way.total} in all with tax, {more}."
    asks = _joined(price, _number_asked(yes, asked, same_price=False), _day_asked(yes, asked))
    return changed(way, asks=f"{asks} May we go on?", notes=(*way.notes, f"price: {asked.price_rule}"))


def _way(way: Way, yes: Yes, buying: Buying, lines: list[QuoteLine], reckon: Reckon) -> WayOut:
    quote, line = yes.quote, next(one for one in lines if one.label == yes.line.label)
    closed = bool(buying.why_not)
    whole = document_total(lines, quote.charge_rules, quote.made_at.date(), quote.currency).total
    known = not closed and not buying.missing and {one.label for one in lines if one.part} <= set(buying.costs)
    costs = total(buying.costs.values(), quote.currency)
    before = yes.approved_total
    return WayOut(
        way=way,
        total=None if closed else whole,
        extra=None if closed else whole - before,
        extra_percent=None if closed else percent_more(before, whole),
        margin=reckon(_price(lines, quote.currency), costs) if known else None,
        line_margin=reckon(_price([line], quote.currency), buying.costs[line.label]) if known else None,
        latest=buying.latest,
        supplier=buying.supplier,
        supplier_name=buying.supplier_name,
        supplier_number=buying.supplier_number,
        number=buying.number or yes.line.number,
        unit_price=line.unit_price,
        goods=goods_of(line, buying.unit_cost) if buying.unit_cost else None,
        why_not=buying.why_not,
        notes=(*buying.notes, *(f"no margin is shown: {words}" for words in buying.missing)),
    )


def _price(lines: Iterable[QuoteLine], currency: str) -> Money:
    return total((line.parts_price + line.freight_price for line in lines), currency)


def _at(line: QuoteLine, each: Money) -> QuoteLine:
    return changed(line, unit_price=each, parts_price=each * line.quantity)


def _number_asked(yes: Yes, buying: Buying, same_price: bool = True) -> str:
    if not buying.number or same_number(buying.number, (yes.line.number,)):
        return ""
    price = ", same price" if same_price else ""
    return f"May we fit {buying.number} instead of {yes.line.number}{price}?"


def _day_asked(yes: Yes, buying: Buying) -> str:
    if yes.covered is None:
        return ""
    if buying.latest is None:
        return f"No day is known for {yes.line.title} any more: may we wait?"
    if buying.latest <= yes.covered.day:
        return ""
    ready = f", the machine ready by {buying.ready}" if buying.ready else ""
    wanted = yes.quote.ready_by
    instead = f" instead of {wanted}" if ready and wanted else ""
    told = yes.covered.printed or yes.covered.day
    return f"{yes.line.title} would be here by {buying.latest} instead of {told}{ready}{instead}: is that all right?"


def _freight_at_cost(yes: Yes, other: Buying, reckon: Reckon) -> Iterable[str]:
    """What would be earned if the shop has promised to bill freight at what it comes to."""
    billed = total((line.freight_price for line in yes.lines), yes.quote.currency)
    if not billed.amount or other.freight is None or other.missing or other.freight == billed:
        return ()
    price = _price(yes.lines, yes.quote.currency) - billed + other.freight
    found = reckon(price, total(other.costs.values(), yes.quote.currency))
    return (
        f"if freight is billed at what it comes to, {other.freight} instead of {billed}, parts earn {found.earned}: "
        f"margin {found.margin_percent} %, markup {found.markup_percent} %",
    )


def _joined(*sentences: str) -> str:
    return " ".join(words for words in sentences if words)
