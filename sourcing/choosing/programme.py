"""The exact plan as a mixed-integer programme in whole minor units: needs, stock, dates and each supplier's charges.

One 0/1 variable for each choice and a whole one for its further steps. The input's order never decides: choices are
sorted by need, supplier and number before anything is built.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from math import lcm
from typing import Any, NamedTuple

from ..basics.landed_cost import Arrival
from ..basics.schedule import Schedule
from ..basics.value import Value
from .choices import Choice
from .model import Model, Outcome, Sum, plus
from .supplier_rows import SupplierRows, Taken

COSTS = ("goods", "duty", "freight", "fees")


class Conditions(Value, frozen=True, kw_only=True):
    """What a plan must hold to. Needs by their place: `divided` may come from several offers, each of `together` comes
    from one supplier, `need_by` holds the days of those that have one of their own. `gathered`: suppliers who send an
    order in one delivery, so that its last piece decides for all. `late`: when an offer that several needs share comes
    once they ask for more than its stock (supplier, number ... as `Offer.identity`); a day not known is None.
    """

    needs: int
    divided: frozenset[int] = frozenset()
    together: tuple[tuple[int, ...], ...] = ()
    need_by: tuple[date | None, ...] = ()
    gathered: frozenset[str] = frozenset()
    most_suppliers: int | None = None
    cores_lost: bool = False
    credit_percent: Decimal = Decimal(0)
    in_stock_only: bool = False


class Pick(NamedTuple):
    """A choice of the plan and how many further steps of it."""

    choice: Choice
    further: int


class Bundle(NamedTuple):
    """Exactly these choices at one supplier (blank: of the whole plan) cost so much more than the programme knew.

    `more` None: they can't be.
    """

    supplier: str
    names: frozenset[tuple[object, ...]]
    more: Fraction | None


class Programme:
    """The model of the choices that may be here by `limit` (None: whenever they come)."""

    def __init__(
        self,
        choices: Sequence[Choice],
        conditions: Conditions,
        schedules: Mapping[str, Schedule],
        late: Mapping[tuple[object, ...], Arrival],
        limit: date | None,
    ) -> None:
        self.model, self.conditions = Model(), conditions
        self._late, self._limit = late, limit
        in_time = [one for one in choices if limit is None or one.latest <= limit]
        self.taken = [self._take(one) for one in sorted(in_time, key=lambda one: one.name)]
        self.by_supplier: dict[str, list[Taken]] = defaultdict(list)
        self.by_need: dict[int, list[Taken]] = defaultdict(list)
        for one in self.taken:
            self.by_supplier[one.choice.supplier].append(one)
            self.by_need[one.choice.need].append(one)
        self.own: dict[str, list[int]] = {
            supplier: [at for one in some for at in (one.taken, one.further) if at is not None]
            for supplier, some in self.by_supplier.items()
        }
        self._needs()
        over = self._stock()
        self.rows = {}
        for supplier in sorted(self.by_supplier):
            start = len(self.model.costs)
            self.rows[supplier] = SupplierRows(
                self.model, schedules[supplier], self.by_supplier[supplier], conditions.divided, over.get(supplier, [])
            )
            self.own[supplier] += range(start, len(self.model.costs))
        self._together()
        self._waiting(over)
        self._few()
        self._credit()

    def fillable(self) -> bool:
        """Whether each need has a choice at all."""
        return all(self.by_need.get(need) for need in range(self.conditions.needs))

    def solve(self, seconds: float) -> Outcome:
        """The least cost."""
        return self.model.solve(seconds)

    def picks(self, outcome: Outcome) -> list[Pick]:
        """What the solver chose."""
        values: Any = outcome.values
        return [
            Pick(one.choice, round(values[one.further]) if one.further is not None else 0)
            for one in self.taken
            if values[one.taken] > 0.5
        ]

    def cost_of(self, supplier: str, outcome: Outcome) -> Fraction:
        """What the programme thinks the supplier's order costs."""
        values: Any = outcome.values
        return sum((Fraction(self.model.costs[at]) * round(values[at], 6) for at in self.own[supplier]), Fraction(0))

    def charge(self, bundle: Bundle) -> None:
        """Make exactly this bundle cost so much more, or bar it."""
        mine = self.by_supplier.get(bundle.supplier, []) if bundle.supplier else self.taken
        inside = [one.taken for one in mine if one.choice.name in bundle.names and not one.choice.more]
        outside = [one.taken for one in mine if one.choice.name not in bundle.names or one.choice.more]
        if len(inside) < len(bundle.names):
            return  # a part of it is not among the choices here
        row: Sum = plus(dict.fromkeys(inside, -1), dict.fromkeys(outside, 1))
        if bundle.more is None:
            self.model.row(row, least=1 - len(inside))
            return
        extra = self.model.variable(cost=1, top=float(bundle.more), whole=False)  # only to hand it to the solver
        if bundle.supplier:
            self.own[bundle.supplier].append(extra)
        self.model.row(plus({extra: 1}, row, bundle.more), least=bundle.more * (1 - len(inside)))

    def forbid(self, names: frozenset[tuple[object, ...]]) -> None:
        """Rule out the plans that hold all of these choices."""
        row: Sum = {one.taken: 1 for one in self.taken if one.choice.name in names}
        self.model.row(row, most=len(names) - 1)

    def at_most(self, cost: int) -> None:
        """Only plans of at most this cost."""
        self.model.row({at: cost for at, cost in enumerate(self.model.costs) if cost}, most=cost + Fraction(1, 100))

    def leave_out(self) -> dict[int, int]:
        """Allow each need to be left out; the variables that say so, by need."""
        for at in self._left.values():
            self.model.tops[at] = 1
        return dict(self._left)

    def _take(self, one: Choice) -> Taken:
        fields = (*COSTS, "core") if self.conditions.cores_lost else COSTS
        taken = self.model.variable(cost=sum(getattr(one.sums, field) for field in fields))
        if not one.more or one.ends is None:
            return Taken(one, taken, None)
        ends = one.ends
        further = self.model.variable(cost=sum((ends.of(field) for field in fields), Fraction(0)), top=one.more)
        self.model.row({further: 1, taken: -one.more}, most=0)
        return Taken(one, taken, further)

    def _needs(self) -> None:
        """Each need takes one choice; a divided one takes enough of several offers, each in one of its ladders."""
        self._left: dict[int, int] = {}
        for need in range(self.conditions.needs):
            some = self.by_need.get(need, [])
            left = self._left[need] = self.model.variable(top=0)
            if need not in self.conditions.divided:
                self.model.row(plus({left: 1}, {one.taken: 1 for one in some}), least=1, most=1)
                continue
            whole = lcm(*(one.choice.full for one in some)) if some else 1
            enough: Sum = {left: whole}
            offers: dict[object, Sum] = {}
            for one in some:
                plus(enough, _pieces(one), whole // one.choice.full)
                offers.setdefault(one.choice.item.offer.identity, {})[one.taken] = 1
            self.model.row(enough, least=whole)
            self.model.row(_shares(some, whole), most=whole)
            for sums in offers.values():
                self.model.row(sums, most=1)

    def _stock(self) -> dict[str, list[tuple[int, Arrival]]]:
        """Needs that share an offer share its stock: beyond it all of them come when the rest comes."""
        over: dict[str, list[tuple[int, Arrival]]] = defaultdict(list)
        for identity, late in self._late.items():
            some = [one for one in self.taken if one.choice.item.offer.identity == identity]
            stock = some[0].choice.item.offer.stock if some else None
            if stock is None or len({one.choice.need for one in some}) < 2:
                continue
            pieces: Sum = {}
            for one in some:
                plus(pieces, _pieces(one))
            too_late = self._limit is not None and (late.latest is None or late.latest > self._limit)
            beyond = self.model.variable(top=0 if too_late or self.conditions.in_stock_only else 1)
            most = sum(one.choice.item.ordered + one.choice.step * one.choice.more for one in some)
            self.model.row(plus(pieces, {beyond: -most}), most=stock)
            for one in some:
                own = self.conditions.need_by[one.choice.need] if self.conditions.need_by else None
                if own is not None and (late.latest is None or late.latest > own):
                    self.model.row({one.taken: 1, beyond: 1}, most=1)
            over[some[0].choice.supplier].append((beyond, late))
        return over

    def _together(self) -> None:
        """Needs that come together are all bought of one supplier or none of them of him."""
        for group in self.conditions.together:
            for some in self.by_supplier.values():
                first, *others = ({one.taken: 1 for one in some if one.choice.need == need} for need in group)
                for other in others:
                    self.model.row(plus(dict(first), other, -1), least=0, most=0)

    def _waiting(self, over: Mapping[str, Sequence[tuple[int, Arrival]]]) -> None:
        """Where a supplier sends all of an order together, what is needed sooner can't wait for what comes later."""
        if not self.conditions.need_by:
            return
        for supplier, some in self.by_supplier.items():
            if supplier not in self.conditions.gathered:
                continue
            for need in sorted({one.choice.need for one in some}):
                own = self.conditions.need_by[need]
                if own is not None:
                    self._waits_not(some, need, own, over.get(supplier, ()))

    def _waits_not(self, some: Sequence[Taken], need: int, own: date, over: Sequence[tuple[int, Arrival]]) -> None:
        later = [one.taken for one in some if one.choice.latest > own]
        later += [at for at, arrival in over if arrival.latest is None or arrival.latest > own]
        if not later:
            return
        waits = self.model.variable()
        for at in later:
            self.model.row({waits: 1, at: -1}, least=0)
        for one in some:
            if one.choice.need == need:
                self.model.row({waits: 1, one.taken: 1}, most=1)

    def _few(self) -> None:
        if self.conditions.most_suppliers is None:
            return
        used: Sum = {}
        for rows in self.rows.values():
            plus(used, rows.used)
        self.model.row(used, most=self.conditions.most_suppliers)

    def _credit(self) -> None:
        """What surplus counts as got back: one whole amount, at most its share of what it cost.

        Not that of divided needs: which of several offers' pieces are over is nobody's knowledge.
        """
        share = Fraction(self.conditions.credit_percent) / 100
        if not share:
            return
        surplus: Sum = {}
        for one in self.taken:
            if one.choice.need not in self.conditions.divided:
                plus(surplus, one.sum_of("surplus", high=True))
        most = sum((one.most("surplus") for one in self.taken), Fraction(0))
        back = self.model.variable(cost=-1, top=int(most) + 1)
        self.model.row(plus({back: 1}, surplus, -share), most=Fraction(1, 2))


def _shares(some: Sequence[Taken], whole: int) -> Sum:
    """For how much of a divided need, at least, its quantities may be bought; nothing where more may be bought."""
    shares: Sum = {}
    for one in some:
        if one.choice.least is not None:
            share: Sum = {one.taken: one.choice.least}
            if one.further is not None:
                share[one.further] = one.choice.step
            plus(shares, share, whole // one.choice.full)
    return shares


def _pieces(one: Taken) -> Sum:
    pieces: Sum = {one.taken: one.choice.item.ordered}
    if one.further is not None:
        pieces[one.further] = one.choice.step
    return pieces
