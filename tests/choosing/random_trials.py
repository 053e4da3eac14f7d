"""Random planning questions: offers, needs and wishes over random terms; the same seed gives the same trial.

Small enough that brute force takes milliseconds: two or three needs, few offers each, prices near one another.
"""

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from decimal import Decimal

from sourcing.basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from sourcing.basics.plan import MoreThanNeeded, Objective, PlanNeed, PlanWishes
from sourcing.basics.rate import Rate
from sourcing.basics.terms import Calendar
from sourcing.basics.value import changed
from sourcing.landed_cost.door import Door
from tests.choosing.random_terms import Dice, random_terms
from tests.choosing.trial import Trial

SUPPLIERS = ("kesselried", "larkmoor", "pellbrook", "stonegarth")
AT = datetime(2026, 1, 13, 10, 15)
UGLY_RATES = {"USD": Decimal(1), "EUR": Decimal("1.0873"), "JPY": Decimal("0.006391"), "CAD": Decimal("0.71839")}


def random_trial(seed: int) -> Trial:
    """A whole planning question."""
    dice = Dice(seed)
    suppliers = dice.sample(SUPPLIERS, dice.randint(2, 4))
    doors = {supplier: random_door(dice, supplier) for supplier in suppliers}
    needs = random_needs(dice)
    offers = {need.label: random_offers(dice, need, doors, at) for at, need in enumerate(needs)}
    if dice.maybe(0.25):
        # The same part twice: both needs draw on the same offers and their stock.
        offers[needs[-1].label] = offers[needs[0].label]
    extra = 1 if len(needs) == 3 or any(need.may_split for need in needs) else 3
    return Trial(
        name=f"seed {seed}",
        needs=needs,
        offers=offers,
        doors=doors,
        at=AT,
        wishes=random_wishes(dice, any(need.may_split for need in needs)),
        extra_steps=extra,
    )


def random_needs(dice: Dice) -> tuple[PlanNeed, ...]:
    """Two or three, some with a day of their own, some that may be split, some that must come together."""
    needs = []
    count = dice.choice([2, 2, 3])
    together = "both" if dice.maybe(0.15) else ""
    for at in range(count):
        splits = not together and dice.maybe(0.3)
        needs.append(
            PlanNeed(
                label=str(at + 1),
                our_part=f"PART-{at}",
                quantity=dice.randint(2, 4) if splits else dice.randint(1, 4 if count == 3 else 6),
                need_by=AT.date() + timedelta(days=dice.randint(5, 25)) if dice.maybe(0.15) else None,
                may_split=splits,
                together=together if at < 2 else "",
            )
        )
    return tuple(needs)


def random_wishes(dice: Dice, splits: bool) -> PlanWishes:
    """Objectives and limits, mostly a few at a time; what may be split is often for stock that runs out."""
    objective: Objective = dice.choice(["cost", "cost", "cost", "date", "cost and days"])
    more: MoreThanNeeded = dice.choice(["whatever pays", "whatever pays", "cheaper break", "never"])
    # With much of its cost got back and a discount on the whole order, more would pay without end.
    credits = ("0", "0", "0", "10", "25", "40") if more == "whatever pays" else ("0", "0", "0", "40", "62.5", "100")
    return PlanWishes(
        objective=objective,
        need_by=AT.date() + timedelta(days=dice.randint(6, 25)) if dice.maybe(0.2) else None,
        value_per_day=dice.cents(0, 400) if objective == "cost and days" else None,
        most_suppliers=dice.choice([1, 2, 2, 3]) if dice.maybe(0.25) else None,
        more_than_needed=more,
        surplus_credit_percent=dice.percent(*credits),
        cores_lost=dice.maybe(0.3),
        in_stock_only=dice.maybe(0.5 if splits else 0.1),
        front=dice.maybe(0.5),
    )


def random_door(dice: Dice, supplier: str) -> Door:
    """Terms with a random mixture of every rule, behind a rate of their currency."""
    currency = dice.choice(["USD", "USD", "USD", "EUR", "JPY", "CAD"])
    return Door(
        terms=random_terms(dice, supplier, currency),
        rate=Rate(currency=currency, into="USD", rate=UGLY_RATES[currency], dated=date(2026, 1, 9)),
        mileage_rate=Decimal("0.725"),
        driver_cost=Decimal("22.00"),
        shop_calendar=Calendar(),
    )


def random_offers(dice: Dice, need: PlanNeed, doors: dict[str, Door], at: int) -> tuple[Offer, ...]:
    """One to three offers of one part, sometimes two of one supplier; prices are near one another."""
    base = dice.cents(300, 5000)
    most = 2 if need.may_split or len(doors) == 2 else 3
    suppliers = dice.sample(sorted(doors), min(dice.randint(2 if need.may_split else 1, most), len(doors)))
    if dice.maybe(0.15):
        suppliers.append(suppliers[0])
    scarce = need.may_split and dice.maybe(0.7)
    rows = [random_offer(dice, doors[supplier], base, (at, row)) for row, supplier in enumerate(suppliers)]
    return tuple(changed(one, stock=dice.randint(1, 4), pack=1, minimum=1) if scarce else one for one in rows)


def random_offer(dice: Dice, door: Door, base: Decimal, place: tuple[int, int]) -> Offer:
    """One row of a supplier's sheet."""
    at, row = place
    basis = dice.choice([1, 1, 1, 1, 100])
    price = base * dice.cents(75, 125) * basis / door.rate.rate
    pack = dice.choice([1, 1, 1, 1, 2, 5])
    sides = [Decimal(dice.randint(5, 140)) / 2 for _ in range(3)]
    first = dice.choice([1, 1, 1, 2])
    return Offer(
        supplier=door.terms.supplier,
        supplier_number=f"{door.terms.supplier[:2].upper()}-{at}{row}",
        currency=door.terms.currency,
        source=SheetRow(sheet=1, file="prices.csv", worksheet="", row=2 + 10 * at + row, sheet_date=date(2026, 1, 5)),
        breaks=random_breaks(dice, price, first),
        price_basis=basis,
        pack=pack,
        order_multiple=dice.choice([1, 1, 1, 1, 2]),
        minimum=dice.choice([1, 1, 1, 3]),
        stock=dice.choice([0, 1, 2, 3, 5, 8, 20, 20, 20, None]),
        lead_time=random_lead(dice),
        core_charge=dice.cents(200, 900) if dice.maybe(0.25) else None,
        weight_kg=Decimal(dice.randint(5, 4500)) / 1000 if dice.maybe(0.96) else None,
        length_cm=sides[0],
        width_cm=sides[1],
        height_cm=sides[2],
        oversize=dice.choice([None, None, None, True, False]),
        origin=dice.choice(["CN", "DE", "US"]),
        tariff_code=dice.choice(["401039", "848210", "731511"]),
    )


def random_breaks(dice: Dice, price: Decimal, first: int) -> tuple[PriceBreak, ...]:
    """One to three, falling."""
    froms = [first, *sorted(dice.sample(range(first + 1, 9), dice.choice([0, 0, 1, 2])))]
    factors: Sequence[Decimal] = sorted((dice.cents(55, 99) for _ in froms[1:]), reverse=True)
    prices = [price, *(price * factor for factor in factors)]
    return tuple(
        PriceBreak(from_quantity=at, price=each.quantize(Decimal("0.001")))
        for at, each in zip(froms, prices, strict=True)
    )


def random_lead(dice: Dice) -> LeadTime | None:
    """Days, a range, a day named, words without a day, or nothing."""
    kind = dice.choice(["days", "days", "range", "range", "range", "day", "call", "none"])
    if kind == "none":
        return None
    if kind == "call":
        return LeadTime(text="call")
    if kind == "day":
        named = AT.date() + timedelta(days=dice.randint(2, 14))
        return LeadTime(text=f"due {named}", leaves_on=named)
    least = dice.randint(1, 4)
    most = least + (dice.randint(1, 6) if kind == "range" else 0)
    return LeadTime(text=f"{least}-{most} days", least=least, most=most)
