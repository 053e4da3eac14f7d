"""Price breaks that stand in rows of their own: one offer at the first row, the others are its price breaks."""

from sourcing.basics.offer import PriceBreak

from ..cells.cell import Bad
from ..region.body import Body, Objects
from .column_reader import BadCells


def joined_breaks(body: Body, columns: dict[str, Objects], bad: BadCells) -> set[int]:
    """Join the price breaks of rows that follow one another under one number; gives the rows that were joined.

    Changes `columns`: the first row gets all breaks. A row without a number of its own goes on with the one above. Two
    prices from one quantity are a problem of the later row; a bad row is never joined.
    """
    quantities = body.columns("break quantity")
    if not quantities or any(column.pair for column in quantities):
        return set()
    breaks, numbers = columns["breaks"].copy(), columns["supplier_number"].copy()
    joined: set[int] = set()
    first = None
    for at in range(body.height):
        if first is not None and _goes_on(at, first, columns, breaks) and at not in bad:
            numbers[at] = numbers[first]
            if _add(breaks, first, at):
                joined.add(at)
            else:
                found = ", ".join(str(one.from_quantity) for one in breaks[at])
                bad.setdefault(at, []).append(("", Bad("break-twice", found=found)))
        else:
            first = at if breaks[at] and numbers[at] and at not in bad else None
    columns["breaks"], columns["supplier_number"] = breaks, numbers
    return joined


def _goes_on(at: int, first: int, columns: dict[str, Objects], breaks: Objects) -> bool:
    number, makers = columns["supplier_number"], columns["maker"]
    same_maker = not makers[at] or makers[at] == makers[first]
    return bool(breaks[at]) and number[at] in ("", number[first]) and same_maker


def _add(breaks: Objects, first: int, at: int) -> bool:
    """Whether the row's break could be added; False where its quantity is there already."""
    there = {one.from_quantity for one in breaks[first]}
    if any(one.from_quantity in there for one in breaks[at]):
        return False
    breaks[first] = tuple(sorted((*breaks[first], *breaks[at]), key=_quantity))
    return True


def _quantity(one: PriceBreak) -> int:
    return one.from_quantity
