"""What a cost line counts as: by its kind, and by its name only in papers kept before kinds were written down."""

import pytest

from sourcing.basics.landed_cost import CostKind, CostLine
from tests.builders import usd


@pytest.mark.parametrize(
    ("name", "kind", "goods"),
    [
        ("Goods NW-40388", "goods", True),
        ("Discount", "discount", True),
        ("Order discount", "discount", False),
        ("Discounted clearance", "entry fee", False),
        ("Goods tax", "tax", False),
        ("Goods NW-40388", "", True),
        ("Discount", "", True),
        ("Handling", "", False),
    ],
)
def test_goods_after_line_discount(name: str, kind: CostKind, goods: bool) -> None:
    """A supplier's fee may be called anything: it stays a charge of the order."""
    assert CostLine(name=name, amount=usd("1.00"), rule="", kind=kind).is_goods is goods
