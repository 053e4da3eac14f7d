"""Many invented jobs with orders, receipts and bills, for measuring and for sums: the same dice, the same jobs."""

import random
from collections.abc import Iterator, Sequence
from datetime import date, datetime
from decimal import Decimal
from hashlib import sha256

from sqlalchemy import Connection, Table, insert

from sourcing.basics.bill import Bill
from sourcing.basics.job import Job, JobLine
from sourcing.basics.margin_facts import BillFacts, JobFacts, Purchase
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine, Receipt, ReceiptLine
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.settings import Settings
from sourcing.basics.value import Value, changed, from_json, to_json
from sourcing.storage.after_tables import BILLS
from sourcing.storage.job_tables import (
    APPROVALS,
    JOBS,
    PURCHASE_ORDER_LINES,
    PURCHASE_ORDERS,
    QUOTE_REVISIONS,
    RECEIPTS,
)
from sourcing.storage.rows import as_text
from sourcing.storage.shop import put_settings
from tests.margins.facts import bought, charge, facts, freight, order, purchase, quote, quoted, receipt, whole_bill

SUPPLIERS = ("stonegarth", "larkmoor", "pellbrook", "kesselried")
CATEGORIES = ("belts", "bearings", "", "blades")


def cents(dice: random.Random, most: int) -> str:
    """Some money."""
    return f"{Decimal(dice.randrange(100, most)) / 100}"


class Made(Value, frozen=True, kw_only=True):
    """One job's papers, whole, and the same as margins read them."""

    quote: Quote
    day: str
    orders: tuple[PurchaseOrder, ...]
    receipts: tuple[Receipt, ...]
    bill: Bill | None
    facts: JobFacts
    purchases: tuple[Purchase, ...]


def a_job(dice: random.Random, at: int, lines: int) -> Made:
    """One job: parts at two suppliers, freight on its own line, half of them received, some billed."""
    made, bought_lines = _lines(dice, at, lines)
    of = changed(quote(*made), job=f"2026-{at:05d}")
    orders = [_order(dice, at, turn, bought_lines[turn::2]) for turn in (0, 1) if bought_lines[turn::2]]
    came = [_receipt(dice, one) for one in orders if dice.random() < 0.7]
    billed = whole_bill(of, *made) if len(came) == len(orders) and dice.random() < 0.7 else None
    billed = changed(billed, number=f"B-{of.job}") if billed else None
    day = f"2026-{dice.randrange(1, 13):02d}-03"
    return Made(
        quote=of,
        day=day,
        orders=tuple(orders),
        receipts=tuple(came),
        bill=billed,
        facts=facts(of, None, from_json(to_json(billed), BillFacts) if billed else None, day),
        purchases=tuple(purchase(one, *[paper for paper in came if paper.order == one.number]) for one in orders),
    )


def _lines(dice: random.Random, at: int, lines: int) -> tuple[list[QuoteLine], list[PurchaseOrderLine]]:
    made, ordered = [], []
    for number in range(1, lines):
        goods, charges = cents(dice, 20_000), cents(dice, 900)
        price = f"{(Decimal(goods) * Decimal('1.5')).quantize(Decimal('0.01'))}"
        supplier = SUPPLIERS[(at + number % 2) % len(SUPPLIERS)]
        rule = f"x 2.00 = {price}, capped at list price {price}" if number % 5 == 0 else ""
        category = CATEGORIES[number % 4]
        made.append(quoted(str(number), price, goods, charges, supplier=supplier, price_rule=rule, category=category))
        risen = f"{Decimal(goods) + dice.choice((0, 0, 0, 1, -1))}"
        job = f"2026-{at:05d}"
        ordered.append(bought(number, str(number), risen, charges, job=job, category=category, **_pack(number)))
    return [*made, freight(str(lines), "9.95")], ordered


def _pack(number: int) -> dict[str, int]:
    return {"ordered": 4, "needed": 2} if number % 7 == 0 else {}


def _order(dice: random.Random, at: int, turn: int, lines: list[PurchaseOrderLine]) -> PurchaseOrder:
    number = f"PO-2026-{2 * at + turn:06d}"
    charges = [charge("freight", "9.95"), charge("small-order fee", "3.00"), charge("pick-up", cents(dice, 700))]
    return order(*lines, charges=charges, number=number, supplier=SUPPLIERS[(at + turn) % len(SUPPLIERS)])


def _receipt(dice: random.Random, of: PurchaseOrder) -> Receipt:
    came = [ReceiptLine(line=one.line, quantity=one.ordered, unit_price=one.unit_price) for one in of.lines]
    if dice.random() < 0.3:
        came[0] = changed(came[0], unit_price=came[0].unit_price + Decimal("0.40"))
    return receipt(of, came, cents(dice, 1500))


def papers(count: int, lines: int, seed: int = 5) -> Iterator[Made]:
    """That many jobs."""
    dice = random.Random(seed)
    for at in range(1, count + 1):
        yield a_job(dice, at, lines)


def many(count: int, lines: int, seed: int = 5) -> Iterator[tuple[JobFacts, tuple[Purchase, ...]]]:
    """The same as margins read them."""
    return ((one.facts, one.purchases) for one in papers(count, lines, seed))


def keep(connection: Connection, made: Sequence[Made], settings: Settings) -> None:
    """The papers into an empty database, put in many at once; the customer says yes to every line."""
    put_settings(connection, settings, date(2025, 1, 1))
    rows: dict[Table, list[dict[str, object]]] = {table: [] for table in TABLES}
    for at, one in enumerate(made, 1):
        _rows(one, at, rows)
    for table, some in rows.items():
        if some:
            connection.execute(insert(table), some)


def _taken_in(of: Quote) -> Job:
    lines = tuple(JobLine(title=line.title) for line in of.lines)
    return Job(
        customer=of.customer,
        machine=of.machine,
        complaint="",
        agreed=lines,
        received_on=of.made_at.date(),
        number=of.job,
    )


TABLES = (JOBS, QUOTE_REVISIONS, APPROVALS, PURCHASE_ORDERS, PURCHASE_ORDER_LINES, RECEIPTS, BILLS)


def _rows(one: Made, at: int, rows: dict[Table, list[dict[str, object]]]) -> None:
    job, first = one.quote.job, len(rows[APPROVALS]) + 1
    rows[JOBS].append({"number": job, "year": 2026, "serial": at, "body": as_text(_taken_in(one.quote))})
    paper = {"paper": "", "sha256": sha256(b"").hexdigest()}
    made = {"made_at": one.quote.made_at, "made_by": ""}
    rows[QUOTE_REVISIONS].append({"job": job, "revision": 1, "body": as_text(one.quote), **paper, **made})
    moment, said = datetime.fromisoformat(one.day), dict.fromkeys(("taken_by", "contact", "words"), "")
    yes = {"job": job, "revision": 1, "answer": "approved", "currency": "USD", "who": "Maud Tilbrook", "holds": "yes"}
    approval = {line.label: first + number for number, line in enumerate(one.quote.lines)}
    rows[APPROVALS] += [
        {**yes, **said, "how": "in person", "at": moment, "approval": number, "label": label, "amount": Decimal(1)}
        for label, number in approval.items()
    ]
    for order_made in one.orders:
        serial = len(rows[PURCHASE_ORDERS]) + 1
        row = {"number": order_made.number, "year": 2026, "serial": serial, "supplier": order_made.supplier}
        rows[PURCHASE_ORDERS].append({**row, "placed_at": order_made.placed_at, "body": as_text(order_made)})
        for line in order_made.lines:
            of = {"order": order_made.number, "line": line.line, "job": job, "revision": 1, "label": line.label}
            rows[PURCHASE_ORDER_LINES].append(
                {**of, "approval": approval[line.label], "answer": "approved", "holds": "yes", "cancelled": "no"}
            )
    for came in one.receipts:
        row = {"order": came.order, "paper": came.paper, "at": came.at, "received_by": came.received_by}
        money = {"freight": came.freight.amount, "currency": "USD", "rate": came.rate}
        rows[RECEIPTS].append({**row, **money, "body": as_text(came)})
    if one.bill:
        row = {"job": job, "number": one.bill.number, "at": one.bill.made_at, "who": "", "body": as_text(one.bill)}
        rows[BILLS].append({**row, **paper})
