"""Offers, a comparison, a plan, an order, margins and a sheet as frozen values, written out by hand."""

from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.choice import Candidate, Comparison, Priced, RankedOffer, SetAside
from sourcing.basics.equivalence import Path, Statement
from sourcing.basics.landed_cost import Arrival, CostLine, LandedItem, LandedOrder, OrderItem
from sourcing.basics.margin import JobMargin, Leak, LineMargin, Margin
from sourcing.basics.money import Money
from sourcing.basics.offer import Offer, PriceBreak, SheetRow
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine
from sourcing.basics.part_number import OURS, PartNumber
from sourcing.basics.plan import Alternative, Plan, PlannedOrder, PlanNeed
from sourcing.basics.problem import Place, Problem
from sourcing.basics.sheet import Accounting, Column, KeptSheet, SheetSummary
from tests.documents.values import usd

STONEGARTH = Offer(
    supplier="stonegarth",
    supplier_number="SG-77120",
    currency="USD",
    source=SheetRow(sheet=3, file="stonegarth-2026-01.csv", worksheet="", row=214, sheet_date=date(2026, 1, 5)),
    maker="Norrowby",
    maker_number="NW-40388",
    description="auger drive belt B36 aramid",
    breaks=(PriceBreak(from_quantity=1, price=Decimal("119.00")),),
)
PELLBROOK = Offer(
    supplier="pellbrook",
    supplier_number="0071-4438",
    currency="USD",
    source=SheetRow(sheet=5, file="pellbrook.xlsx", worksheet="Belts", row=88, sheet_date=date(2026, 1, 8)),
    maker="Corrivane",
    maker_number="CV-9036",
    description="belt, snow thrower auger",
    breaks=(PriceBreak(from_quantity=1, price=Decimal("10.995")),),
    price_basis=1,
    pack=2,
)
LINK = Statement(
    left=PartNumber(printed="WY-BELT-1", maker=OURS),
    relation="same part",
    right=PartNumber(printed="CV-9036", maker="Corrivane"),
    standing="maker",
    source="Corrivane list 2025",
    stated_on=date(2025, 10, 1),
    stated_by="Oona Brandeth",
)


def landed_item(
    offer: Offer, ordered: int, goods: str, landed: str, surplus: str = "0.00", core: str = "0.00"
) -> LandedItem:
    """One item for line 1 that needs one piece."""
    return LandedItem(
        item=OrderItem(need="1", offer=offer, needed=1, ordered=ordered),
        unit_price=offer.breaks[0].price,
        goods=usd(goods),
        goods_cost=usd(goods),
        duty=usd("0.00"),
        landed=usd(landed),
        surplus_cost=usd(surplus),
        core_charge=usd(core),
    )


def landed_order(item: LandedItem, name: str, freight: str) -> LandedOrder:
    """An order of one item with one freight line."""
    offer = item.item.offer
    rule = f"{item.item.ordered} x {item.unit_price} USD"
    return LandedOrder(
        supplier=offer.supplier,
        supplier_name=name,
        items=(item,),
        lines=(
            CostLine(name=f"Goods {offer.supplier_number}", amount=item.goods_cost, rule=rule),
            CostLine(name="Freight", amount=usd(freight), rule="by order value, from 0"),
        ),
        total=item.landed,
        order_value=item.goods,
        freight=usd(freight),
        core_charge=item.core_charge,
    )


NEAR = Arrival(earliest=date(2026, 1, 15), latest=date(2026, 1, 16), steps=("ordered 2026-01-12 before the cut-off",))
FAR = Arrival(earliest=date(2026, 1, 20), latest=date(2026, 1, 20), steps=())
FIRST = landed_order(landed_item(STONEGARTH, 1, "119.00", "131.50", core="15.00"), "Stonegarth Trade Parts", "12.50")
SECOND = landed_order(landed_item(PELLBROOK, 2, "21.99", "140.94", "11.00"), "Pellbrook Power Parts", "118.95")

COMPARISON = Comparison(
    asked="nw 40388",
    our_part="WY-BELT-1",
    name="Auger drive belt",
    quantity=1,
    need_by=date(2026, 1, 16),
    ranked=(
        RankedOffer(
            place=1,
            priced=Priced(
                offer=STONEGARTH, supplier_name="Stonegarth Trade Parts", path=Path(),
                matched_number="Norrowby NW-40388", landed=FIRST, arrival=NEAR,
            ),
            on_front=True, in_time=True, reason="cheapest at the door",
        ),
        RankedOffer(
            place=2,
            priced=Priced(
                offer=PELLBROOK, supplier_name="Pellbrook Power Parts", path=Path(links=(LINK,)),
                matched_number="Corrivane CV-9036", landed=SECOND, arrival=FAR,
                warnings=("the sheet is 30 days old",),
            ),
            on_front=False, in_time=False,
            reason="9.44 USD dearer at the door than Stonegarth Trade Parts, though 108.01 USD cheaper each",
        ),
    ),
    set_aside=(SetAside(offer=PELLBROOK, supplier_name="Pellbrook Power Parts", reason="freight is not known"),),
    candidates=(
        Candidate(
            offer=PELLBROOK, supplier_name="Larkmoor Wholesale", vetoed=True, score=0.91,
            reasons=("number differs in one character", "B38 is 2.0 in longer than B36, tolerance 0.6 in"),
        ),
        Candidate(
            offer=STONEGARTH, supplier_name="Tavishollow Engine Supply", vetoed=False, score=0.8,
            reasons=("the description is alike",),
        ),
    ),
    notes=("two sheets have expired",),
)  # fmt: skip

PLAN = Plan(
    needs=(PlanNeed(label="1", our_part="WY-BELT-1", quantity=1),),
    orders=(PlannedOrder(landed=FIRST, arrival=NEAR), PlannedOrder(landed=SECOND, arrival=FAR)),
    total=usd("272.44"),
    core_charge=usd("15.00"),
    latest=date(2026, 1, 20),
    proven=True,
    counted=usd("272.44"),
    notes=("the keepers pass free freight",),
    alternatives=(
        Alternative(
            name="everything from Pellbrook Power Parts",
            total=usd("301.10"),
            latest=date(2026, 1, 20),
            why="28.66 dearer",
        ),
        Alternative(
            name="everything from Larkmoor Wholesale", total=None, latest=None, why="does not sell the bearing"
        ),
    ),
    unfilled=("C: 1 x WY-BAR-1: nobody offers it on a sheet that holds",),
)


def order_line(at: int, number: str, pieces: int, price: str, basis: int, goods: str) -> PurchaseOrderLine:
    """A line of an order in EUR; landed costs are figures that must not show."""
    return PurchaseOrderLine(
        line=at, job="2026-0001", revision=2, label="1", part="WY-BELT-1", supplier_number=number,
        maker_number="NW-40388", description="Antriebsriemen, Schneefräse", needed=1, ordered=pieces,
        pack=10 if basis > 1 else 1, price_basis=basis, unit_price=Decimal(price), goods=_eur(goods),
        goods_cost=usd("777.77"), landed=usd("888.88"), surplus_cost=usd("666.66"),
    )  # fmt: skip


def _eur(amount: str) -> Money:
    return Money(amount=Decimal(amount), currency="EUR")


ORDER = PurchaseOrder(
    number="PO-2026-0003", supplier="kesselried", supplier_name="Kesselried Antriebsteile",
    supplier_address=("Am Wehr 3", "Kesselried", "DE"), shop_name="Wickenby Yard Machine Repair",
    ship_to=("14 Mill Lane", "Wickenby"), currency="EUR", placed_at=datetime(2026, 1, 12, 9, 30),
    placed_by="Oona Brandeth", need_by=date(2026, 1, 16), expected=(date(2026, 1, 15), date(2026, 1, 16)),
    lines=(
        order_line(1, "00417", 1, "98.4", 1, "98.40"),
        order_line(2, "KR-5/100", 20, "8.125", 100, "1.63"),
    ),
    charges=(CostLine(name="Freight", amount=usd("555.55"), rule="flat"),),
    goods_total=_eur("100.03"), landed_total=usd("999.99"),
)  # fmt: skip


def margin(price: str, cost: str, earned: str, on_price: str | None, on_cost: str | None) -> Margin:
    """A margin as the margins step gives it."""
    return Margin(
        price=usd(price),
        cost=usd(cost),
        earned=usd(earned),
        margin_percent=None if on_price is None else Decimal(on_price),
        markup_percent=None if on_cost is None else Decimal(on_cost),
    )


QUOTED = margin("166.60", "131.50", "35.10", "21.07", "26.69")
RECEIVED = margin("166.60", "138.75", "27.85", "16.72", "20.07")
FREE = margin("0.00", "4.10", "-4.10", None, "-100.00")
JOB_MARGIN = JobMargin(
    job="2026-0001",
    customer="Maud Tilbrook",
    revision=2,
    lines=(
        LineMargin(label="A", title="Belt keepers", answer="approved", stages=(("quoted", FREE),), below_floor=False),
        LineMargin(
            label="1", title="Replace the auger drive belt", answer="approved",
            stages=(("quoted", QUOTED), ("received", RECEIVED)), below_floor=True,
        ),
    ),
    parts=(("quoted", QUOTED),),
    whole=(("quoted", margin("303.36", "180.00", "123.36", "40.66", "68.53")),),
    leaks=(
        Leak(name="price rise after the quote", label="1", amount=usd("7.25"), why="charged 126.25, ordered at 119.00"),
    ),
    floor_percent=Decimal("25"),
    notes=("labour is counted at 38.00 an hour",),
)  # fmt: skip

KEPT = KeptSheet(
    sheet=3, supplier="stonegarth", file="stonegarth-2026-01.csv", sheet_date=date(2026, 1, 5), sha256="ab" * 32,
    offers=1200, structure=11, problem_rows=25, rows=1236, is_newest=True,
)  # fmt: skip


def a_problem(row: int) -> Problem:
    """A damaged number in that row."""
    place = Place(file="stonegarth-2026-01.csv", row=row, column="Item")
    return Problem(code="damaged", what="'1.23E+11' is damaged", remedy="ask for the sheet as text", place=place)


SUMMARY = SheetSummary(
    file="stonegarth-2026-01.csv",
    columns=(
        Column(at=0, header="Item", field="supplier number"),
        Column(at=1, header="Net 10+", field="net price", from_quantity=10),
        Column(at=2, header="", field=None),
        Column(at=3, header="Zone", field=None),
        Column(at=4, header="Page", field="not used"),
    ),
    accounting=(Accounting(worksheet="", rows=1236, offers=1200, structure=11, problem_rows=25),),
    problems=tuple(a_problem(row) for row in range(1, 26)),
    sheet_date=date(2026, 1, 5),
    currency="USD",
)
