"""What the inbound freight of a plan comes to with each choice of its parts: the same offers as orders of their own."""

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from ..basics.money import Money, total
from ..basics.plan import Plan
from ..quoting.freight_at_cost import Choices
from .evaluate import Catalogue
from .plan import land

MOST_PARTS = 7
"""Of so many parts every choice is looked at (127 of seven); of more, the agreed ones alone, with each extra part, and
everything."""


def freight_choices(found: Catalogue, plan: Plan) -> Choices:
    """By choice of parts the freight of all its orders."""
    items = [(one.item.need, order.landed.supplier, one.item) for order in plan.orders for one in order.landed.items]
    currency = found.shop.settings.currency

    @cache
    def of_supplier(supplier: str, labels: frozenset[str]) -> Money:
        return land(found, [item for label, by, item in items if by == supplier and label in labels]).landed.freight

    def of_choice(choice: frozenset[str]) -> Money:
        by: dict[str, set[str]] = {}
        for label, supplier, _ in items:
            if label in choice:
                by.setdefault(supplier, set()).add(label)
        return total((of_supplier(supplier, frozenset(some)) for supplier, some in by.items()), currency)

    return {choice: of_choice(choice) for choice in _choices(sorted({label for label, _, _ in items}))}


def _choices(labels: list[str]) -> Iterator[frozenset[str]]:
    if len(labels) <= MOST_PARTS:
        for many in range(1, len(labels) + 1):
            yield from map(frozenset, combinations(labels, many))
        return
    agreed = frozenset(label for label in labels if label.isdigit())
    yield from {agreed, *(agreed | {label} for label in labels), frozenset(labels)} - {frozenset()}
