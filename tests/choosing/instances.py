"""Instances by recipes of the literature, as plain whole numbers, and the same as planning questions.

Two problems are known by name. The internet shopping optimisation problem: each shop has a price for some products and
one delivery charge; buy everything at the least sum (Błażewicz, Kovalyov, Musiał, Urbański, Wojciechowski, "Internet
shopping optimization problem", International Journal of Applied Mathematics and Computer Science 20(2), 2010); with
discounts by the value of a shop's order (Błażewicz, Bouvry, Kovalyov, Musiał, "Internet shopping with price sensitive
discounts", 4OR 12, 2014). The total quantity discount problem: the price of every piece falls with the pieces bought
of a supplier (Goossens, Maas, Spieksma, van de Klundert, "Exact algorithms for procurement problems under a total
quantity discount structure", European Journal of Operational Research 178(2), 2007). None of them was at hand: the
problems and the ranges of the numbers (20 shops, 3 to 10 products, recommended prices of 5 to 100 in steps of 5, shop
prices of 0.69 to 1.47 of them, delivery of 5 to 30 in steps of 5; three to five discount steps; few winners) are from
memory.
"""

import random
from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.freight import Freight
from sourcing.basics.offer import Offer, PriceBreak, SheetRow
from sourcing.basics.plan import PlanNeed, PlanWishes
from sourcing.basics.rate import Rate
from sourcing.basics.terms import OrderDiscount, Terms
from sourcing.basics.value import Value
from sourcing.landed_cost.door import Door
from tests.choosing.trial import Trial

AT = datetime(2026, 1, 13, 10, 15)
Steps = tuple[tuple[int, int], ...]


class Shops(Value, frozen=True, kw_only=True):
    """Products and shops in cents. `prices[product][shop]` is one piece's; None: that shop does not have it.

    `quantities` by product; `delivery` by shop, nothing from `free_from[shop]` of goods on (None: never free).
    `discounts[shop]` are (from this value in cents, whole per cent off everything).
    """

    name: str
    prices: tuple[tuple[int | None, ...], ...]
    quantities: tuple[int, ...]
    delivery: tuple[int, ...]
    free_from: tuple[int | None, ...]
    discounts: tuple[Steps, ...]


class Divided(Value, frozen=True, kw_only=True):
    """One good from several suppliers. `steps[supplier]` are (from this many pieces, cents for every piece).

    `most[supplier]` pieces are there; at most `winners` suppliers are used (None: any number).
    """

    name: str
    pieces: int
    steps: tuple[Steps, ...]
    most: tuple[int, ...]
    winners: int | None


def internet_shopping(seed: int, products: int, discounts: bool) -> Shops:
    """The recipe of 2010, with the discounts of 2014 if asked: twenty shops, every product in four of five of them."""
    dice = random.Random(seed)
    shops = 20
    recommended = [dice.randrange(500, 10_001, 500) for _ in range(products)]
    prices = [[_price(dice, each) if dice.random() < 0.8 else None for _ in range(shops)] for each in recommended]
    for row, each in zip(prices, recommended, strict=True):
        row[dice.randrange(shops)] = _price(dice, each)
    return Shops(
        name=f"{products} products, {shops} shops, seed {seed}{', discounts' if discounts else ''}",
        prices=tuple(tuple(row) for row in prices),
        quantities=(1,) * products,
        delivery=tuple(dice.randrange(500, 3001, 500) for _ in range(shops)),
        free_from=(None,) * shops,
        discounts=tuple(_discounts(dice) if discounts else () for _ in range(shops)),
    )


def _price(dice: random.Random, recommended: int) -> int:
    return dice.randint(recommended * 69 // 100, recommended * 147 // 100)


def _discounts(dice: random.Random) -> Steps:
    """Up to three steps, deeper with the value."""
    count = dice.randint(0, 3)
    froms = sorted(dice.sample(range(5_000, 40_000, 2_500), count))
    return tuple(zip(froms, sorted(dice.sample(range(2, 16), count)), strict=True))


def free_freight(seed: int, needs: int, suppliers: int) -> Shops:
    """The project's own kind: prices within a quarter of a base, three of five suppliers carry a part, flat freight of
    8 to 25 that is free above 100 to 600; one or two pieces of 3 to 100 each."""
    dice = random.Random(seed)
    bases = [dice.randint(300, 10_000) for _ in range(needs)]
    prices = [
        [dice.randint(base * 75 // 100, base * 125 // 100) if dice.random() < 0.6 else None for _ in range(suppliers)]
        for base in bases
    ]
    for row, base in zip(prices, bases, strict=True):
        if not any(row):
            row[dice.randrange(suppliers)] = base
    return Shops(
        name=f"{needs} x {suppliers}, seed {seed}",
        prices=tuple(tuple(row) for row in prices),
        quantities=tuple(dice.randint(1, 2) for _ in range(needs)),
        delivery=tuple(dice.randint(800, 2_500) for _ in range(suppliers)),
        free_from=tuple(dice.randrange(10_000, 60_001, 500) for _ in range(suppliers)),
        discounts=((),) * suppliers,
    )


def quantity_discount(seed: int, suppliers: int, steps: int) -> Divided:
    """The recipe of 2007 for one good: prices near one another that fall by 2 to 10 per cent a step, limited stock."""
    dice = random.Random(seed)
    pieces = dice.randint(20, 60)
    rows, most = [], []
    for _ in range(suppliers):
        price = dice.randint(800, 1_200)
        froms = [1, *sorted(dice.sample(range(2, pieces), steps - 1))]
        row = []
        for at in froms:
            row.append((at, price))
            price = price * dice.randint(90, 98) // 100
        rows.append(tuple(row))
        most.append(dice.randint(pieces // 3, pieces))
    return Divided(
        name=f"{pieces} pieces, {suppliers} suppliers, seed {seed}",
        pieces=pieces,
        steps=tuple(rows),
        most=tuple(most),
        winners=dice.choice([None, 3]),
    )


def shops_trial(shops: Shops, wishes: PlanWishes) -> Trial:
    """The same as needs, offers and terms."""
    needs = tuple(
        PlanNeed(label=str(at), our_part=f"PART-{at}", quantity=pieces) for at, pieces in enumerate(shops.quantities)
    )
    offers = {
        str(at): tuple(_offer(at, shop, ((1, each),)) for shop, each in enumerate(row) if each is not None)
        for at, row in enumerate(shops.prices)
    }
    doors = {}
    for shop, charge in enumerate(shops.delivery):
        free = shops.free_from[shop]
        freight = Freight(rule="flat", charge=_money(charge), free_from=None if free is None else _money(free))
        off = tuple(OrderDiscount(from_value=_money(at), percent=Decimal(each)) for at, each in shops.discounts[shop])
        doors[_name(shop)] = _door(shop, freight, off)
    return Trial(name=shops.name, needs=needs, offers=offers, doors=doors, at=AT, wishes=wishes)


def divided_trial(divided: Divided) -> Trial:
    """The same as one need that may be split; a sheet's stock is the most of each supplier."""
    offers = tuple(
        _offer(0, at, steps, stock=most)
        for at, (steps, most) in enumerate(zip(divided.steps, divided.most, strict=True))
    )
    return Trial(
        name=divided.name,
        needs=(PlanNeed(label="0", our_part="PART-0", quantity=divided.pieces, may_split=True),),
        offers={"0": offers},
        doors={_name(at): _door(at, Freight(rule="included"), ()) for at in range(len(offers))},
        at=AT,
        wishes=PlanWishes(in_stock_only=True, most_suppliers=divided.winners),
    )


def _name(shop: int) -> str:
    return f"shop-{shop:03}"


def _money(cents: int) -> Decimal:
    return Decimal(cents) / 100


def _offer(product: int, shop: int, steps: Steps, stock: int = 1000) -> Offer:
    return Offer(
        supplier=_name(shop),
        supplier_number=f"S{shop}-{product}",
        currency="USD",
        source=SheetRow(sheet=shop, file="prices.csv", worksheet="", row=2 + product, sheet_date=date(2026, 1, 5)),
        breaks=tuple(PriceBreak(from_quantity=at, price=_money(each)) for at, each in steps),
        stock=stock,
    )


def _door(shop: int, freight: Freight, discounts: tuple[OrderDiscount, ...]) -> Door:
    terms = Terms(
        supplier=_name(shop),
        name=f"Shop {shop}",
        starts_on=date(2025, 1, 1),
        currency="USD",
        freight=freight,
        order_discounts=discounts,
        transit_days=(1, 1 + shop % 7),
    )
    return Door(terms=terms, rate=Rate(currency="USD", into="USD", rate=Decimal(1), dated=date(2026, 1, 9)))
