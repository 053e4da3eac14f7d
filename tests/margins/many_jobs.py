"""Many invented jobs with orders, receipts and bills, for measuring and for sums: the same dice, the same jobs."""

import random
from collections.abc import Iterator
from decimal import Decimal

from sourcing.basics.margin_facts import JobFacts, Purchase
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine, ReceiptLine
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.value import changed
from tests.margins.facts import bill, bought, charge, facts, freight, order, purchase, quote, quoted, receipt

SUPPLIERS = ("stonegarth", "larkmoor", "pellbrook", "kesselried")
CATEGORIES = ("belts", "bearings", "", "blades")


def cents(dice: random.Random, most: int) -> str:
    """Some money."""
    return f"{Decimal(dice.randrange(100, most)) / 100}"


def a_job(dice: random.Random, at: int, lines: int) -> tuple[JobFacts, list[Purchase]]:
    """One job: parts at two suppliers, freight on its own line, half of them received, some billed."""
    made, bought_lines = _lines(dice, at, lines)
    of = changed(quote(*made), job=f"2026-{at:05d}")
    orders = [_order(dice, at, turn, bought_lines[turn::2]) for turn in (0, 1) if bought_lines[turn::2]]
    purchases = [_bought(dice, one) for one in orders]
    billed = bill(of, *made) if all(one.receipts for one in purchases) and dice.random() < 0.7 else None
    return facts(of, None, billed, f"2026-{dice.randrange(1, 13):02d}-03"), purchases


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


def _bought(dice: random.Random, of: PurchaseOrder) -> Purchase:
    if dice.random() < 0.3:
        return purchase(of)
    came = [ReceiptLine(line=one.line, quantity=one.ordered, unit_price=one.unit_price) for one in of.lines]
    if dice.random() < 0.3:
        came[0] = changed(came[0], unit_price=came[0].unit_price + Decimal("0.40"))
    return purchase(of, receipt(of, came, cents(dice, 1500)))


def many(count: int, lines: int, seed: int = 5) -> Iterator[tuple[JobFacts, list[Purchase]]]:
    """That many jobs."""
    dice = random.Random(seed)
    for at in range(1, count + 1):
        yield a_job(dice, at, lines)
