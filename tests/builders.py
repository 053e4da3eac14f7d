"""Small makers of values for tests: every figure in a test stands in the test, the rest is filled in here."""

from collections.abc import Sequence
from datetime import date, time
from decimal import Decimal
from typing import Any

from sourcing.basics.equivalence import Relation, Standing, Statement
from sourcing.basics.freight import Freight
from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.money import Money
from sourcing.basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from sourcing.basics.part_number import PartNumber
from sourcing.basics.rate import Rate
from sourcing.basics.terms import Calendar, Terms
from sourcing.landed_cost.door import Door

MONDAY_TO_FRIDAY = Calendar()


def usd(amount: str) -> Money:
    """An amount of US dollars."""
    return Money(amount=Decimal(amount), currency="USD")


def offer(supplier: str = "larkmoor", number: str = "X-1", price: str | None = "10.00", **fields: Any) -> Offer:
    """An offer at one price, or with `breaks=[(1, '10.00'), (5, '9.00')]`."""
    steps = fields.pop("breaks", [(1, price)] if price is not None else [])
    values: dict[str, Any] = {
        "supplier": supplier,
        "supplier_number": number,
        "currency": "USD",
        "source": SheetRow(sheet=1, file="prices.csv", worksheet="", row=2, sheet_date=date(2026, 1, 5)),
        "breaks": tuple(PriceBreak(from_quantity=at, price=Decimal(each)) for at, each in steps),
        "stock": 100,
    }
    return Offer(**{**values, **fields})


def lead(text: str, least: int | None, most: int | None) -> LeadTime:
    """A lead time in working days."""
    return LeadTime(text=text, least=least, most=most)


def flat(charge: str, free_from: str | None = None) -> Freight:
    """Flat freight, free from a value of goods."""
    return Freight(rule="flat", charge=Decimal(charge), free_from=Decimal(free_from) if free_from is not None else None)


def terms(supplier: str = "larkmoor", **fields: object) -> Terms:
    """Terms of a supplier: 10.00 flat, cut-off at noon, two days on the road, Monday to Friday, no holidays."""
    values: dict[str, object] = {
        "supplier": supplier,
        "name": supplier.title(),
        "starts_on": date(2025, 1, 1),
        "currency": "USD",
        "freight": flat("10.00"),
        "cut_off": time(12, 0),
        "transit_days": (2, 2),
    }
    return Terms(**{**values, **fields})  # type: ignore[arg-type]


def door(supplier: str = "larkmoor", rate: str = "1", **fields: object) -> Door:
    """A door to the shop with those terms; `rate` turns the supplier's currency into US dollars."""
    held = terms(supplier, **fields)
    return Door(
        terms=held,
        rate=Rate(currency=held.currency, into="USD", rate=Decimal(rate), dated=date(2026, 1, 9)),
        mileage_rate=Decimal("0.725"),
        driver_cost=Decimal("22.00"),
    )


def item(of: Offer, needed: int = 1, ordered: int | None = None, need: str = "1") -> OrderItem:
    """An item of an order; ordered as needed unless said."""
    return OrderItem(need=need, offer=of, needed=needed, ordered=needed if ordered is None else ordered)


def number(printed: str, maker: str = "") -> PartNumber:
    """A part number."""
    return PartNumber(printed=printed, maker=maker)


def statement(
    left: PartNumber, relation: Relation, right: PartNumber, standing: Standing = "fitted", condition: str = ""
) -> Statement:
    """A statement of the equivalence table."""
    return Statement(
        left=left,
        relation=relation,
        right=right,
        standing=standing,
        source="a test",
        stated_on=date(2026, 1, 2),
        stated_by="Oona Brandeth",
        condition=condition,
    )


def named(lines: Sequence[object]) -> dict[str, str]:
    """Cost lines as name to amount, for comparing."""
    return {getattr(line, "name"): str(getattr(line, "amount").amount) for line in lines}  # noqa: B009
