"""How long landing a whole sheet takes: 300,000 offers at one supplier's terms, cost and day of each.

Run by hand: `python -m tests.benchmarks.landed_speed [offers]`. The offers are in memory already; reading them from the
database is told by itself in `sourcing landed`'s own figures.
"""

import random
import sys
import time
from datetime import date, datetime
from decimal import Decimal

from sourcing.actions.desk import ShopNow
from sourcing.actions.landed_sheet import land_offers
from sourcing.actions.sorted_offers import ShopAt
from sourcing.basics.collecting import without_collecting
from sourcing.basics.freight import Freight, WeightBand
from sourcing.basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from sourcing.basics.rate import Rates
from sourcing.basics.terms import DutyRate, OrderDiscount, Split, Terms
from tests.builders import flat, terms
from tests.storage.kept_values import settings

OFFERS = 300_000
AT = datetime(2026, 3, 2, 9, 0)
LEADS = (None, LeadTime(text="2-3 weeks", least=10, most=15), LeadTime(text="5 days", least=5, most=5))
BANDS = tuple(WeightBand(to_weight=Decimal(to), charge=Decimal(charge)) for to, charge in ((1, 6), (10, 12), (99, 40)))
KINDS: dict[str, Terms] = {
    "flat freight free from a value": terms(freight=flat("14.95", "150.00")),
    "discounts, duty by origin, fees": terms(
        freight=flat("14.95", "150.00"),
        discount_percent=Decimal(7),
        order_discounts=(OrderDiscount(from_value=Decimal(100), percent=Decimal(3)),),
        duty_percent=Decimal(3),
        duty_rates=(DutyRate(percent=Decimal(5), origin="DE"),),
        minimum_order=Decimal(25),
        small_order_fee=Decimal(4),
        handling=Decimal(2),
    ),
    "by weight": terms(freight=Freight(rule="by weight", weight_bands=BANDS)),
    "below the minimum refused": terms(minimum_order=Decimal(80)),
    "freight not known": terms(freight=None),
    "sent as ready, a charge for later deliveries": terms(split=Split(sends="as ready", later_charge=Decimal(7))),
}


def offers(count: int) -> list[Offer]:
    """An invented sheet, the same every time."""
    chance = random.Random(6)
    source = SheetRow(sheet=1, file="prices.csv", worksheet="", row=2, sheet_date=date(2026, 2, 27))
    return [
        Offer(
            supplier="larkmoor",
            supplier_number=f"A{at:06d}",
            currency="USD",
            source=source,
            breaks=_breaks(chance),
            pack=chance.choice((1, 1, 1, 2, 10)),
            stock=chance.choice((0, 1, 5, 12, 40, None)),
            lead_time=chance.choice(LEADS),
            origin=chance.choice(("DE", "CN", "")),
            weight_kg=Decimal(chance.randint(1, 5000)) / 1000,
        )
        for at in range(count)
    ]


def _breaks(chance: random.Random) -> tuple[PriceBreak, ...]:
    price = Decimal(chance.randint(50, 30_000)) / 100
    first = PriceBreak(from_quantity=1, price=price)
    return (first, PriceBreak(from_quantity=10, price=price * 9 / 10)) if chance.random() < 0.3 else (first,)


def main() -> None:
    """Print the seconds of processor time for each kind of terms."""
    some = offers(int(sys.argv[1]) if len(sys.argv) > 1 else OFFERS)
    for name, held in KINDS.items():
        shop = ShopNow(settings=settings(), terms={held.supplier: held}, rates=Rates(into="USD"))
        began = time.process_time()
        with without_collecting():
            rows = list(land_offers(some, ShopAt(at=AT, shop=shop), held.supplier))
        took = time.process_time() - began
        print(f"{took:6.2f} s  {sum(row[2] is not None for row in rows):>8,} of {len(rows):,} priced  {name}")


if __name__ == "__main__":
    main()
