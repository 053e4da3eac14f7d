"""What was lost on old parts and goods that went back, in whole minor units of the shop's currency.

None of it enters a margin: a core charge is a deposit, and goods that went back are no goods of the job. What is lost
on the way (fee, freight, a credit that is short or refused) is a leak of its own.
"""

from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.margin_facts import Purchase
from ..basics.money import Money
from ..basics.order import GoodsBack
from ..basics.value import Value
from .came import AsCame
from .minor import minor, part_of
from .ordered import AsOrdered


class Back(Value, frozen=True, kw_only=True, gc=False):
    """What of a line went back. `of_need` pieces of it the job would have used. Amounts are losses, never below 0."""

    of_need: int = 0
    credited: int = 0
    goods_fee: int = 0
    goods_short: int = 0
    goods_missed: int = 0
    missed: int = 0
    core_fee: int = 0
    core_lost: int = 0
    cores: int = 0


NOTHING = Back()


def back_of(purchase: Purchase, ordered: AsOrdered, came: AsCame, currency: str) -> Back:
    """What went back of one line. Rates are those of the line's last paper, else of the order."""
    steps = [one for one in purchase.back if one.line == ordered.line.line] if purchase.back else []
    if not steps:
        return NOTHING
    rate = came.rate if came.pieces else purchase.order.rate or Decimal(1)
    here = _Here(rate=rate, there=purchase.order.currency, currency=currency)
    goods, cores = ([one for one in steps if one.kind == kind] for kind in ("goods", "core"))
    return _whole(goods, cores, ordered, (came, here))


class _Here(Value, frozen=True, kw_only=True, gc=False):
    rate: Decimal
    there: str
    currency: str

    def __call__(self, amount: Money | None) -> int:
        if amount is None:
            return 0
        return minor(amount.amount * self.rate, minor_units(self.currency))


def _whole(goods: list[GoodsBack], cores: list[GoodsBack], ordered: AsOrdered, of: tuple[AsCame, _Here]) -> Back:
    came, here = of
    credited = _pieces(goods, "credited")
    value = part_of(came.goods + came.bad, credited, came.pieces)
    spare = came.pieces - min(came.good, ordered.line.needed)
    missed = min(_pieces(goods, "refused", "lost"), max(0, spare - credited))
    charge = _core_charge(ordered, here)
    core_pieces, core_gone = _pieces(cores, "credited"), _pieces(cores, "refused", "lost")
    core_value = part_of(charge, core_pieces, ordered.line.ordered)
    return Back(
        of_need=max(0, min(credited - spare, came.good)),
        credited=credited,
        goods_fee=_costs(goods, here),
        goods_short=max(0, value - _credit(goods, here) - _fees(goods, here)) if credited else 0,
        goods_missed=part_of(came.bad, min(missed, came.pieces - came.good), came.pieces - came.good),
        missed=missed,
        core_fee=_costs(cores, here),
        core_lost=part_of(charge, core_gone, ordered.line.ordered)
        + (max(0, core_value - _credit(cores, here) - _fees(cores, here)) if core_pieces else 0),
        cores=core_gone,
    )


def _core_charge(ordered: AsOrdered, here: _Here) -> int:
    """The core charge of all pieces as ordered."""
    charge = ordered.line.core_charge
    return 0 if charge is None else minor(Decimal(charge.amount) * here.rate, minor_units(here.currency))


def _pieces(steps: list[GoodsBack], *which: str) -> int:
    return sum(one.pieces for one in steps if one.step in which)


def _credit(steps: list[GoodsBack], here: _Here) -> int:
    return sum(here(one.credit) for one in steps)


def _fees(steps: list[GoodsBack], here: _Here) -> int:
    return sum(here(one.fee) for one in steps)


def _costs(steps: list[GoodsBack], here: _Here) -> int:
    return sum(here(one.fee) + here(one.freight) for one in steps)
