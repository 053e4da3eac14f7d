"""What one line of an order brings by itself, in whole minor units: goods, duty, oversize pieces, its handling, core.

Single orders, the plan and whole sheets shown landed all start from these figures.
"""

from decimal import Decimal
from typing import NamedTuple

from ..basics.landed_cost import OrderItem
from ..basics.problem import refused
from .minor import counted, whole
from .prepared import Prepared
from .quantity import goods_minor
from .weights import is_oversize


class Figures(NamedTuple):
    """`full` (before line discount), `value` (after it) and `counted` (what of it counts towards free freight) are in
    the supplier's minor units, the rest in the shop's.

    `duty_percents` are the rates that could hold; `duty` is 0 where there are several: that is told as missing, and
    never taken for free. `oversize` None: to be asked. `freight` is the charge for oversize pieces.
    """

    full: int
    value: int
    counted: int
    full_here: int
    goods: int
    duty: int
    duty_percents: tuple[Decimal, ...]
    oversize: bool | None
    freight: int
    fees: int
    core: int
    surplus: int


def figures(item: OrderItem, at: Prepared) -> Figures:
    """The figures of an item. Refuses an offer in another currency than the terms.

    Rounding: goods once at the line total, discount once, conversion once, duty once on the converted goods.
    """
    offer, pieces = item.offer, item.ordered
    if offer.currency != at.terms.currency:
        raise refused("currencies-mixed", one=offer.currency, other=at.terms.currency)
    full = goods_minor(offer, pieces, at.terms.breaks)
    value = full - whole(full * at.discount / 100) if at.discount else full
    goods = at.here(value)
    percents = at.duties(offer.origin, offer.tariff_code)
    oversize = is_oversize(offer, at.oversize) if at.oversize else False
    core = offer.core_charge
    return Figures(
        full=full,
        value=value,
        counted=value if not oversize or at.oversize is None or at.oversize.counts else 0,
        full_here=goods if value == full else at.here(full),
        goods=goods,
        duty=duty_on(goods, percents[0]) if len(percents) == 1 else 0,
        duty_percents=percents,
        oversize=oversize,
        freight=oversize_pieces(pieces, at) if oversize else 0,
        fees=at.per_line,
        core=at.here(counted(core * pieces, offer.currency)) if core else 0,
        surplus=whole(Decimal(goods * (pieces - item.needed)) / pieces) if pieces != item.needed else 0,
    )


def duty_on(goods: int, percent: Decimal) -> int:
    """Duty on a line's goods, rounded once."""
    return whole(goods * percent / 100) if percent else 0


def oversize_pieces(pieces: int, at: Prepared) -> int:
    """The charge for so many oversize pieces; nothing where it is once for the order."""
    rule = at.oversize
    if rule is None or rule.per != "piece":
        return 0
    return at.here(counted(rule.charge * pieces, at.terms.currency))
