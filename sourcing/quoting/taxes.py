"""Taxes that other settings would bring: which rate takes the place of which, and which taxes are charged together.

Of entries of one name the newest that has started holds; entries of other names are charged together, one beside the
other (common practice, no source; whether two are due on the same thing is for the law of the place).
"""

from collections.abc import Iterator, Sequence
from datetime import date

from ..basics.settings import PriceKind, Tax, alike_named
from ..basics.value import Value
from .totals import taxes_on


class TaxReplaced(Value, frozen=True, kw_only=True):
    """A new rate of a tax, and the one whose place it takes from its first day on."""

    new: Tax
    before: Tax


class TaxBeside(Value, frozen=True, kw_only=True):
    """Two taxes charged together on the same kinds of line, from that day on."""

    tax: Tax
    other: Tax
    on: tuple[PriceKind, ...]
    from_day: date


def taxes_replaced(before: Sequence[Tax], after: Sequence[Tax]) -> Iterator[TaxReplaced]:
    """The entries `before` does not have, each with the one that held until its day, if one did."""
    known = set(alike_named(before))
    every = alike_named(after)
    for one in every:
        older = [other for other in every if other.name == one.name and other.starts_on < one.starts_on]
        if one not in known and older:
            yield TaxReplaced(new=one, before=max(older, key=lambda other: other.starts_on))


def taxes_beside(before: Sequence[Tax], after: Sequence[Tax]) -> tuple[TaxBeside, ...]:
    """The taxes `after` charges together on kinds of line on which `before` never charged these two together."""
    known = {(one.tax.name, one.other.name, kind) for one in _together(before) for kind in one.on}
    found = []
    for one in _together(after):
        on = tuple(kind for kind in one.on if (one.tax.name, one.other.name, kind) not in known)
        known |= {(one.tax.name, one.other.name, kind) for kind in on}
        if on:
            found.append(TaxBeside(tax=one.tax, other=one.other, on=on, from_day=one.from_day))
    return tuple(found)


def _together(taxes: Sequence[Tax]) -> Iterator[TaxBeside]:
    """Every two taxes that are charged on the same kinds, on each day one starts. The one that started first is
    `other`."""
    every = alike_named(taxes)
    for day in sorted({one.starts_on for one in every}):
        charged = [one for one in taxes_on(every, day) if one.percent]
        for at, tax in enumerate(charged):
            for other in charged[:at]:
                on = tuple(kind for kind in tax.on if kind in other.on)
                if on:
                    yield TaxBeside(tax=tax, other=other, on=on, from_day=day)
