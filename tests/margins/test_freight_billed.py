"""Freight billed on a line of its own, and lines left off the bill: what a part earns by itself. Figures by hand."""

from decimal import Decimal
from typing import Any

from sourcing.basics.margin import JobMargin
from sourcing.basics.margin_facts import JobFacts, Purchase
from sourcing.margins.bought import book_of
from sourcing.margins.job_margin import OwnersRules, job_margin
from tests.builders import usd
from tests.margins.facts import bill, bought, charge, facts, freight, order, purchase, quote, quoted, receipt


def made(job: JobFacts, *purchases: Purchase, floor: str = "0", hour: str = "0") -> JobMargin:
    """The job's margin."""
    rules = OwnersRules(floor_percent=Decimal(floor), technician_cost=Decimal(hour))
    return job_margin(job, book_of(purchases, "USD"), rules)


def test_a_line_left_off_and_never_bought_is_in_no_figure_of_the_order() -> None:
    """Parts 50.00 and 97.68, two hours of 96.00; the second is never bought, and its labour counts on both sides."""
    hour: dict[str, Any] = {"labour_price": usd("96.00"), "hours": Decimal(1)}
    rule = "60.00 x 1.70 = 102.00, capped at list price 97.68"
    of = quote(quoted("1", "50.00", "20.00", **hour), quoted("2", "97.68", "60.00", price_rule=rule, **hour))
    one = order(bought(1, "1", "20.00"))
    found = made(facts(of, billed=bill(of, of.lines[0])), purchase(one, receipt(one)), hour="34")
    whole, parts = dict(found.whole), dict(found.parts)
    assert (parts["ordered"].price, parts["ordered"].cost) == (usd("50.00"), usd("20.00"))
    assert (whole["ordered"].price, whole["ordered"].cost) == (usd("242.00"), usd("88.00"))
    assert (whole["quoted"].price, whole["received"].price) == (usd("339.68"), usd("146.00"))
    assert found.leaks == ()


def test_freight_billed_apart_is_no_cost_of_the_part_by_itself() -> None:
    """Belts of 209.00 for 292.60 are 28.57 %, over a floor of 28, with 11.50 of freight billed for what it cost; the
    carrier then takes 12.75, and the freight's own line bears the 1.25."""
    of = quote(quoted("1", "292.60", "209.00", "11.50", quantity=2, freight=usd("11.50")), freight("2", "11.50"))
    one = order(bought(1, "1", "209.00", "11.50", 2, 2), charges=[charge("freight", "11.50")])
    found = made(facts(of), purchase(one, receipt(one, freight="12.75")), floor="28")
    belts, carrier = ({stage: one.cost.amount for stage, one in line.stages} for line in found.lines)
    assert belts == dict.fromkeys(("quoted", "ordered", "received"), Decimal("209.00"))
    assert carrier == {"quoted": Decimal("11.50"), "ordered": Decimal("11.50"), "received": Decimal("12.75")}
    assert str(dict(found.lines[0].stages)["quoted"].margin_percent) == "28.57"
    assert [line.below_floor for line in found.lines] == [False, False]
    assert dict(found.parts)["received"].cost == usd("221.75")
    waits = made(facts(of), floor="28")
    assert [[stage for stage, _ in line.stages] for line in waits.lines] == [["quoted"], ["quoted"]]


def test_freight_that_the_bill_leaves_off_is_the_parts_cost() -> None:
    of = quote(quoted("1", "292.60", "209.00", "11.50", freight=usd("11.50")), freight("2", "11.50"))
    found = made(facts(of, billed=bill(of, of.lines[0])), floor="28")
    assert found.lines[0].below_floor
    assert str(dict(found.lines[0].stages)["quoted"].margin_percent) == "24.64"
