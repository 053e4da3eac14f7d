"""An approved quote as values for alarms: one belt at 177.66 on a cost of 126.90, freight 14.95, an hour and a half."""

from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.alarm import Decision
from sourcing.basics.job import Customer, Machine
from sourcing.basics.money import zero
from sourcing.basics.quote import Behind, Quote, QuoteLine
from sourcing.basics.settings import ChargeRules, Shop, Supplies, Tax, Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.hold import Covered
from sourcing.quoting.totals import document_total
from sourcing.quoting.ways_out import Buying, Yes
from tests.builders import usd

MADE = datetime(2026, 3, 9, 10, 0)
BY = date(2026, 3, 12)
COVERED = Covered(day=BY, printed=BY)
RULES = ChargeRules(
    taxes=(Tax(name="Sales tax", percent=Decimal(7), on=("parts", "freight"), starts_on=date(2026, 1, 1)),),
    supplies=Supplies(percent_of_labour=Decimal(5), most=Decimal("12.00")),
)
BEHIND = Behind(
    supplier="stonegarth",
    supplier_number="NW-77120",
    sheet=1,
    unit_cost=usd("126.90"),
    cost=usd("141.85"),
    surplus_cost=usd("0.00"),
    price_rule="126.90 x 1.40",
    landed_rule="goods 126.90, share of charges 14.95",
    latest=date(2026, 3, 11),
)


def belt(each: str = "177.66", quantity: int = 1, **fields: object) -> QuoteLine:
    """The belt's line; `fields` change it."""
    price = usd(each)
    made = QuoteLine(
        label="1",
        kind="agreed",
        title="Belt",
        part="BELT",
        number="Norrowby NW-77120",
        description="Belt B88",
        quantity=quantity,
        unit_price=price,
        parts_price=price * quantity,
        hours=Decimal("1.5"),
        labour_price=usd("144.00"),
        freight_price=usd("0.00"),
        found="",
        why="",
        if_declined="",
        behind=BEHIND,
    )
    return changed(made, **fields)


def freight(amount: str = "14.95") -> QuoteLine:
    """Inbound freight on a line of its own."""
    nothing = zero("USD")
    made = belt(label="2", title="Inbound freight", part="", number="", hours=Decimal(0), quantity=0, behind=None)
    return changed(made, unit_price=nothing, parts_price=nothing, labour_price=nothing, freight_price=usd(amount))


def quote(*lines: QuoteLine, **fields: object) -> Quote:
    """The quote of these lines; of the belt and its freight where none is named."""
    given = lines or (belt(), freight())
    whole = document_total(given, RULES, MADE.date(), "USD")
    made = Quote(
        job="2026-0001",
        revision=1,
        shop=Shop(name="Wickenby Yard Machine Repair"),
        customer=Customer(name="Maud Tilbrook"),
        machine=Machine(description="snow thrower"),
        complaint="Auger stops",
        made_at=MADE,
        valid_to=date(2026, 3, 16),
        locale="en_US",
        currency="USD",
        lines=given,
        agreed_total=whole,
        everything_total=whole,
        add_on_prices=(),
        arrives=(date(2026, 3, 11), date(2026, 3, 11)),
        terms_text=(),
        cautions=(),
        cautions_dated=None,
        warnings=(),
        charge_rules=RULES,
        tolerance=Tolerance(),
    )
    return changed(made, **fields)


def yes(made: Quote | None = None) -> Yes:
    """All of it approved, to be here by 12 March."""
    found = made or quote()
    return Yes(
        quote=found,
        labels=tuple(line.label for line in found.lines),
        line=found.lines[0],
        covered=Covered(day=BY, printed=BY),
    )


def buying(cost: str, freight_cost: str, **fields: object) -> Buying:
    """One way to buy the belt, all of whose cost is on its line."""
    values: dict[str, object] = {
        "costs": {"1": usd(cost)},
        "freight": usd(freight_cost),
        "supplier": "stonegarth",
        "supplier_name": "Stonegarth Trade Parts",
        "supplier_number": "NW-77120",
        "number": "Norrowby NW-77120",
        "latest": BY,
        "unit_cost": usd(cost) - usd(freight_cost),
        "each": usd("195.43"),
        "price_rule": "139.59 x 1.40",
    }
    return Buying(**{**values, **fields})  # type: ignore[arg-type]


def decided(way: str = "hold", **fields: object) -> Decision:
    """A decision about the belt: 177.66 held up to 139.59 of goods, unless said otherwise."""
    values: dict[str, object] = {
        "job": "2026-0001",
        "revision": 1,
        "label": "1",
        "way": way,
        "at": datetime(2026, 3, 12, 13, 0),
        "who": "Greta Lindqvare",
        "held_price": usd("177.66"),
        "up_to_cost": usd("139.59"),
    }
    return Decision(**{**values, **fields})  # type: ignore[arg-type]
