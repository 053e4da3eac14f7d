"""A unit price that was decided on after an alarm: it is held whatever the bands would give now."""

from ..basics.alarm import Decision
from ..basics.money import Money
from ..basics.value import Value, changed
from .pricing import UnitPrice


class HeldPrice(Value, frozen=True, kw_only=True):
    """The price of one piece after decisions; `held`: it stays whatever the part costs."""

    price: UnitPrice
    held: bool = False


def held_price(decision: Decision | None, now: UnitPrice, goods: Money) -> HeldPrice:
    """The price that holds: `now` is what the bands give, `goods` what the needed pieces cost today without charges.

    A price that was held covers goods up to the decision's `up_to_cost`. Dearer than that it is not held any more: the
    bands' price is asked, and the owner is told, for that is a new question to the customer. What was to be asked is
    by the bands too, on what the part costs now.
    """
    if decision is None or decision.way == "ask" or decision.held_price is None:
        return HeldPrice(price=now)
    each, most = decision.held_price, decision.up_to_cost
    if most is not None and most < goods:
        over = f"the price of {each} was held up to a cost of {most}; it costs {goods} now, so the price is new"
        return HeldPrice(price=changed(now, warnings=(*now.warnings, over)))
    bands = f"by the bands it would be {now.each.amount}: {now.rule}"
    rule = f"{each.amount}, held as {decision.who} decided on {decision.at.date()} ({bands})"
    held = f"the price of {each} is held; {bands}"
    return HeldPrice(price=changed(now, each=each, rule=rule, warnings=(held,)), held=True)
