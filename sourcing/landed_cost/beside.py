"""What stands beside an item's cost: can it go back, at what loss and until when; the core charge both ways.

Restocking 15 to 25 % and no return of superseded or specially ordered goods are common practice, no source: nothing of
it is assumed, the terms and the sheet say it or it is not known.
"""

import re
from decimal import Decimal

from ..basics.landed_cost import Beside, OrderItem
from ..basics.money import Money, percent_of
from ..basics.offer import Offer
from ..basics.terms import CoreReturn, Returns
from .door import Door

SPECIAL_ORDER = ("special order", "special-order", "ordered specially", "sonderbestellung")
"""Words on a sheet for goods got only for this buyer (common practice, no source)."""
DEPOSIT = re.compile(
    r"(?P<no>\b(?:no|without|excl\w*\.?|sans|hors|ohne|kein|sin|zonder|geen)\s+)?"
    r"(?P<said>(?:\b(?:core\s+(?:charges?|chg|deposits?|dep|values?)|(?<!carbon )deposits?(?! remov| clean)|consignes?"
    r"|fianza|statiegeld)|\b\w*pfand)\b(?:[\s:=+(]*[$€£]?\s?\d[\d.,]*\d(?:\s?(?:€|eur|usd|gbp|chf|\$))?)?)",
    re.IGNORECASE,
)
"""Words on a sheet for money that comes back with the old part (common practice, no source)."""


def beside(item: OrderItem, goods: Money, door: Door) -> Beside:
    """For one item of an order. `goods` is what all its pieces cost, in the shop's currency, after discount.

    The offer's own word on returning goes before the supplier's terms. A loss is only given where per cent and freight
    are both known. Of a core charge of 0 or one that the sheet does not state nothing is said, unless its words speak
    of one.
    """
    offer, terms = item.offer, door.terms
    rules, core = terms.return_terms, _core(item, door)
    returnable = offer.returnable if offer.returnable is not None else rules.returnable
    words = [_return_words(offer, rules, returnable, door.currency), *_doubts(offer, returnable)]
    if terms.returns and returnable is None:
        words[0] = f"whether it can go back is not stated by yes or no; the terms say: {terms.returns}"
    elif terms.returns:
        words.append(f"the terms say: {terms.returns}")
    words += deposit_words(offer)
    if core is not None:
        words.append(_core_words(core, terms.core_return, door.currency))
    freight = terms.core_return.freight
    return Beside(
        returnable=returnable,
        return_loss=None if returnable is False else _loss(goods, rules),
        return_within_days=None if returnable is False else rules.within_days,
        core_returned=Money(amount=freight, currency=door.currency).rounded() if core and freight is not None else None,
        core_lost=core,
        core_within_days=terms.core_return.within_days if core else None,
        words=tuple(words),
    )


def _core(item: OrderItem, door: Door) -> Money | None:
    charge = item.offer.core_charge
    return door.here(charge * item.ordered) if charge else None


def _loss(goods: Money, rules: Returns) -> Money | None:
    if rules.restocking_percent is None or rules.freight is None:
        return None
    freight = Money(amount=rules.freight, currency=goods.currency).rounded()
    return percent_of(goods, rules.restocking_percent) + freight


def _return_words(offer: Offer, rules: Returns, returnable: bool | None, currency: str) -> str:
    says = "the sheet" if offer.returnable is not None else "the terms"
    if returnable is None:
        return "whether it can go back is not known: ask before ordering"
    if not returnable:
        return f"can't go back, by {says}"
    percent, freight = rules.restocking_percent, rules.freight
    kept = "restocking not known" if percent is None else f"restocking {percent} %"
    road = "return freight not known" if freight is None else f"return freight {_money(freight, currency)}"
    return f"can go back, by {says}: {kept}, {road}, {_deadline(rules.within_days, 'after it came')}"


def _doubts(offer: Offer, returnable: bool | None) -> list[str]:
    """Notes only: nobody's word on returning is changed by them."""
    if returnable is False:
        return []
    found = []
    if offer.superseded_by:
        found.append(f"superseded by {offer.superseded_by}: ask whether it is taken back")
    said = " ".join((offer.note, offer.description, offer.lead_time.text if offer.lead_time else "")).casefold()
    if any(word in said for word in SPECIAL_ORDER):
        found.append("the sheet speaks of a special order: ask whether it is taken back")
    return found


def deposit_words(offer: Offer) -> list[str]:
    """A note where the sheet's words speak of a deposit and no column states one: it is in no figure. Else none."""
    if offer.core_charge is not None:
        return []
    found = DEPOSIT.search(f"{offer.description}\n{offer.note}")
    if found is None or found["no"]:
        return []
    said = " ".join(found["said"].split())
    return [f"its words on the sheet speak of a deposit ('{said}') that is not counted: ask how much it is"]


def _core_words(core: Money, rules: CoreReturn, currency: str) -> str:
    freight = rules.freight
    road = "freight not known" if freight is None else f"freight {_money(freight, currency)}"
    return (
        f"old part returned: core charge {core} comes back, {road}, {_deadline(rules.within_days, 'to send it')}; "
        f"old part lost: {core} is lost"
    )


def _deadline(days: int | None, what: str) -> str:
    if days is None:
        return "deadline not known"
    return f"{days} day{'' if days == 1 else 's'} {what}"


def _money(amount: Decimal, currency: str) -> Money:
    return Money(amount=amount, currency=currency)
