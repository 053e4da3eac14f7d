"""The worked day of the bill: a belt agreed on Monday; keepers A, idler B, bar C, their freight D found on Wednesday.

Figures were spelled out line by line and checked with exact decimals: C is declined, tax 13.84 once on 197.75, total
413.19, of which 134.71 beyond the 278.48 first agreed.
"""

from datetime import date, datetime
from decimal import Decimal
from typing import Any

from sourcing.basics.approval import Approval
from sourcing.basics.bill import DepositKept, LeftOut
from sourcing.basics.job import Customer, Machine
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.settings import ChargeRules, Shop, Supplies, Tax
from sourcing.quoting.bill import Billed
from sourcing.quoting.totals import add_on_prices, document_total
from tests.builders import usd

MONDAY, WEDNESDAY, FRIDAY = datetime(2026, 3, 2, 10, 15), datetime(2026, 3, 4, 11, 20), datetime(2026, 3, 6, 16, 0)
TAX = Tax(name="Sales tax", percent=Decimal(7), on=("parts", "freight"), starts_on=date(2026, 1, 1))
RULES = ChargeRules(taxes=(TAX,), supplies=Supplies(percent_of_labour=Decimal(5), most=Decimal("12.00")))


def line(label: str, title: str, each: str = "0.00", pieces: int = 0, hours: str = "0", **fields: Any) -> QuoteLine:
    """A line by its figures; labour at 96.00 an hour."""
    values: dict[str, Any] = {
        "label": label,
        "kind": "agreed" if label.isdigit() else "add-on",
        "title": title,
        "part": title.upper() if pieces else "",
        "number": f"Norrowby {title}" if pieces else "",
        "description": "",
        "quantity": pieces,
        "unit_price": usd(each),
        "parts_price": usd(each) * pieces,
        "hours": Decimal(hours),
        "labour_price": (usd("96.00") * Decimal(hours)).rounded(),
        "freight_price": usd("0.00"),
        "found": "",
        "why": "",
        "if_declined": "",
        "behind": None,
        "labour_rate": Decimal("96.00"),
    }
    return QuoteLine(**{**values, **fields})


LINES = (
    line("1", "Belt", "109.00", 1, "1.5"),
    line("2", "Inbound freight", freight_price=usd("9.95")),
    line("A", "Keepers", "12.80", 2, "0.3", if_declined="The belt can jump off."),
    line("B", "Idler", "38.25", 1, "0.2", if_declined="A seized idler burns the belt."),
    line("C", "Bar", "99.20", 1, "0.5", if_declined="The housing wears until it is replaced."),
    line("D", "Freight for the extra parts", freight_price=usd("14.95")),
)


def quote(*lines: QuoteLine, revision: int = 2, rules: ChargeRules = RULES, **fields: Any) -> Quote:
    """A revision made on Wednesday morning with these lines, or all of the worked day."""
    every = lines or LINES
    charged = (rules, date(2026, 3, 4), "USD")
    values: dict[str, Any] = {
        "job": "2026-0001",
        "revision": revision,
        "shop": Shop(name="Wickenby Yard Machine Repair", address=("4 Mill Lane",), telephone="555-0100"),
        "customer": Customer(name="Greta Lindqvare", telephone="555-0142"),
        "machine": Machine(description="snow thrower", maker="Norrowby", model="NW-826", serial="0007"),
        "complaint": "Auger stops under load",
        "made_at": datetime(2026, 3, 4, 11, 0),
        "valid_to": date(2026, 3, 11),
        "locale": "en_US",
        "currency": "USD",
        "lines": every,
        "agreed_total": document_total([one for one in every if one.kind == "agreed"], *charged),
        "everything_total": document_total(every, *charged),
        "add_on_prices": add_on_prices(every, *charged),
        "arrives": None,
        "terms_text": ("Replaced parts are kept for you for 14 days.",),
        "cautions": ("Engine off, key out, spark-plug wire off.",),
        "cautions_dated": None,
        "warnings": ("margin 18 % is under the floor",),
        "charge_rules": rules,
    }
    return Quote(**{**values, **fields})


def answer(one: QuoteLine, word: Any = "approved", **fields: Any) -> Approval:
    """The customer's answer by telephone on Wednesday, at the price printed."""
    values: dict[str, Any] = {
        "job": "2026-0001",
        "revision": 2,
        "label": one.label,
        "answer": word,
        "amount": one.price,
        "who": "Greta Lindqvare",
        "how": "telephone",
        "at": WEDNESDAY,
        "taken_by": "Piet Halloway-Rusk",
        "contact": "555-0142",
        "words": "Leave the bar for the spring." if word == "declined" else "",
    }
    return Approval(**{**values, **fields})


def deposit(amount: str, how: str = "cash") -> DepositKept:
    """Money taken on Monday, or given back where it is below zero."""
    return DepositKept(job="2026-0001", amount=usd(amount), how=how, at=MONDAY, taken_by="Oona Brandeth")


def made(of: Quote | None = None, no: str = "C", **fields: Any) -> Billed:
    """Everything approved but the lines in `no`, all goods here, nothing paid ahead."""
    newest = of or quote()
    holding = {one.label: answer(one, "declined" if one.label in no else "approved") for one in newest.lines}
    values: dict[str, Any] = {
        "quote": newest, "holding": holding, "answered": {2: newest}, "missing": {}, "deposits": (),
        "left_out": LeftOut(), "told": None,
    }  # fmt: skip
    return Billed(**{**values, **fields})
