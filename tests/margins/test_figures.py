"""Margin, markup and weighted average cost against published worked examples; each row names where it stands."""

from decimal import Decimal
from fractions import Fraction

import pytest

from sourcing.basics.order import ReceiptLine
from sourcing.margins.bought import bought as bought_lines
from sourcing.margins.figures import margin
from tests.builders import usd
from tests.margins.facts import bought, order, purchase, receipt

COSTING = "an inventory costing page; its '% gross profit margin' is cost over sales, the per cents here are computed"
COMPUTED = "computed: price = cost / (1 - margin)"
PUBLISHED = [  # cost, price, profit, markup on cost, margin on price, source
    ("100", "125", "25", "25.00", "20.00", "an investment dictionary's example of markup (margin computed)"),
    ("12000", "15000", "3000", "25.00", "20.00", "an algebra textbook's worked example, both published"),
    ("7100", "12275", "5175", "72.89", "42.16", f"{COSTING}; first in, first out"),
    ("7430", "12275", "4845", "65.21", "39.47", f"{COSTING}; last in, first out"),
    ("7273", "12275", "5002", "68.77", "40.75", f"{COSTING}; average cost"),
    ("100", "111.11", "11.11", "11.11", "10.00", COMPUTED),
    ("100", "125.00", "25.00", "25.00", "20.00", COMPUTED),
    ("100", "133.33", "33.33", "33.33", "25.00", COMPUTED),
    ("100", "142.86", "42.86", "42.86", "30.00", COMPUTED),
    ("100", "149.25", "49.25", "49.25", "33.00", COMPUTED),
    ("100", "166.67", "66.67", "66.67", "40.00", COMPUTED),
    ("100", "200.00", "100.00", "100.00", "50.00", COMPUTED),
    ("100", "250.00", "150.00", "150.00", "60.00", COMPUTED),
]


@pytest.mark.parametrize(("cost", "price", "profit", "markup", "on_price", "source"), PUBLISHED)
def test_both_words_with_both_numbers(
    cost: str, price: str, profit: str, markup: str, on_price: str, source: str
) -> None:
    """Markup is on cost, margin on price: S = C + M, rates M / C and M / S (a college's mathematics page)."""
    found = margin(usd(price), usd(cost))
    assert (found.markup_percent, found.margin_percent) == (Decimal(markup), Decimal(on_price)), source
    assert found.earned == usd(profit)


@pytest.mark.parametrize(("cost", "price", "mislabelled"), [
    ("7100", "12275", "57.8"), ("7430", "12275", "60.5"), ("7273", "12275", "59.3"),
])  # fmt: skip
def test_cost_over_sales_is_no_margin(cost: str, price: str, mislabelled: str) -> None:
    """The costing page prints cost over sales under the name of gross profit margin: it is the rest to a hundred."""
    percent = margin(usd(price), usd(cost)).margin_percent
    assert percent is not None
    assert round(percent, 1) != Decimal(mislabelled)
    assert abs(100 - percent - Decimal(mislabelled)) < Decimal("0.1")


@pytest.mark.parametrize(("cost", "price"), [(one[0], one[1]) for one in PUBLISHED])
def test_markup_and_margin_turn_into_each_other(cost: str, price: str) -> None:
    """margin = markup / (1 + markup) and markup = margin / (1 - margin), computed exactly from the same two amounts."""
    markup = (Fraction(price) - Fraction(cost)) / Fraction(cost)
    on_price = markup / (1 + markup)
    found = margin(usd(price), usd(cost))
    assert found.margin_percent is not None and found.markup_percent is not None
    assert abs(Fraction(found.margin_percent) / 100 - on_price) <= Fraction(1, 20_000)
    assert abs(Fraction(found.markup_percent) / 100 - on_price / (1 - on_price)) <= Fraction(1, 20_000)


AVERAGES = [  # pieces and price of each purchase, pieces used, average, cost of those used, source
    ([(2, "20"), (3, "30")], 2, "26", "52.00", "an accounting page: 5 units for 130, average 26, two sold for 52"),
    ([(3, "26"), (3, "25")], 6, "25.500", "153.00", "the same page, the three left and three more: 25.50"),
    ([(15, "12"), (5, "15")], 20, "12.75", "255.00", "a shop-management page, its first purchase"),
    ([(15, "12"), (5, "15"), (10, "18")], 20, "14.50", "290.00", "the same page: 30 units for 435, 14.50 each"),
    ([(55, "26"), (130, "28"), (95, "29"), (65, "31")], 255, "28.522", "7273.04", "the costing page: 345 for 9840"),
]


@pytest.mark.parametrize(("lots", "used", "average", "cost", "source"), AVERAGES)
def test_pieces_of_several_papers_cost_their_weighted_average(
    lots: list[tuple[int, str]], used: int, average: str, cost: str, source: str
) -> None:
    """A line that came in several deliveries at several prices: what the job uses is its part of all that came."""
    pieces = sum(count for count, _ in lots)
    one = order(bought(1, "1", "1000.00", needed=used, ordered=pieces))
    came = [
        receipt(one, [ReceiptLine(line=1, quantity=count, unit_price=Decimal(price))], paper=f"DN-{at}")
        for at, (count, price) in enumerate(lots)
    ]
    (line,) = bought_lines(purchase(one, *came), "USD")
    assert line.received is not None
    assert line.received.goods == int(Decimal(cost) * 100), source
    assert round(Decimal(line.came.goods) / 100 / pieces, 3) == Decimal(average)
    whole = sum(count * Decimal(price) for count, price in lots)
    assert line.received.goods + line.received.surplus == whole * 100


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
