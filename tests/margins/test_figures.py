"""Margin and markup against published textbook examples."""

from decimal import Decimal

import pytest

from sourcing.margins.figures import margin
from tests.builders import usd

PUBLISHED = [  # cost, price, markup on cost, margin on price, source
    ("100", "125", "25.00", "20.00", "an investment dictionary's markup example (25 % published; 20 % computed)"),
    ("12000", "15000", "25.00", "20.00", "an algebra textbook's worked example, both published"),
    (
        "7100",
        "12275",
        "72.89",
        "42.16",
        "an inventory costing page, first in first out; per cents computed from its figures",
    ),
    ("7430", "12275", "65.21", "39.47", "the same page, last in first out; per cents computed from its figures"),
    ("7273", "12275", "68.77", "40.75", "the same page, average cost; per cents computed from its figures"),
    ("100", "200", "100.00", "50.00", "computed: price = cost / (1 - margin)"),
]


@pytest.mark.parametrize(("cost", "price", "markup", "on_price", "source"), PUBLISHED)
def test_both_words_with_both_numbers(cost: str, price: str, markup: str, on_price: str, source: str) -> None:
    """Markup is on cost, margin is on price."""
    found = margin(usd(price), usd(cost))
    assert (found.markup_percent, found.margin_percent) == (Decimal(markup), Decimal(on_price)), source


@pytest.mark.parametrize(
    ("price", "cost", "percent"),
    [
        *[("118.95", "81.20", "31.74"), ("243.05", "163.30", "32.81"), ("239.73", "164.40", "31.42")],
        *[("146.08", "99.55", "31.85"), ("197.75", "131.45", "33.53"), ("192.61", "154.54", "19.77")],
        ("270.15", "132.20", "51.06"),
    ],
)
def test_the_worked_days(price: str, cost: str, percent: str) -> None:
    """Parts margins and a job's margin (270.15 less 81.20 and 51.00 of labour) worked out by hand."""
    assert margin(usd(price), usd(cost)).margin_percent == Decimal(percent)


def test_nothing_to_divide_by_is_no_number() -> None:
    """Neither zero nor infinite."""
    assert margin(usd("0"), usd("5")).margin_percent is None
    assert margin(usd("5"), usd("0")).markup_percent is None
