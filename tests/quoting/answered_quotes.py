"""Quotes to be answered: one agreed line, two add-ons and whatever else, with the rules of the worked days."""

from datetime import date, datetime, timedelta

from sourcing.basics.job import Customer, Machine
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.settings import Shop
from sourcing.quoting.approvals import Given
from sourcing.quoting.totals import document_total
from tests.quoting.test_pricing_and_totals import DAY, line, settings

MADE = datetime(2026, 3, 4, 10, 0)
GIVEN = Given(who="Maud Tilbrook", how="telephone", at=MADE + timedelta(hours=1), taken_by="Piet Halloway-Rusk")


def quote(*more: QuoteLine, revision: int = 1) -> Quote:
    """Line 1 at 253.00, A at 54.40, B at 57.45 before tax."""
    return of_lines(
        line("1", "109.00", "1.5"), line("A", "25.60", "0.3"), line("B", "38.25", "0.2"), *more, revision=revision
    )


def of_lines(*lines: QuoteLine, revision: int = 1) -> Quote:
    """A quote of just these lines."""
    rules = settings().charge_rules
    agreed = [one for one in lines if one.kind == "agreed"]
    return Quote(
        job="2026-0001",
        revision=revision,
        shop=Shop(name="Wickenby Yard Machine Repair"),
        customer=Customer(name="Maud Tilbrook", may_also_approve=("Silas Tilbrook",)),
        machine=Machine(description="Snow thrower"),
        complaint="",
        made_at=MADE,
        valid_to=date(2026, 3, 11),
        locale="en_US",
        currency="USD",
        lines=lines,
        agreed_total=document_total(agreed, rules, DAY, "USD"),
        everything_total=document_total(lines, rules, DAY, "USD"),
        add_on_prices=(),
        arrives=None,
        terms_text=(),
        cautions=(),
        cautions_dated=None,
        warnings=(),
        charge_rules=rules,
    )
