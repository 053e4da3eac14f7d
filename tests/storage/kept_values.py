"""Values to keep and find again, every field filled with something else than its default. All names are invented."""

import hashlib
from collections.abc import Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import TYPE_CHECKING, Literal

from sourcing.basics.approval import Approval
from sourcing.basics.job import Customer, Job, JobLine, Machine
from sourcing.basics.landed_cost import CostLine
from sourcing.basics.money import Money
from sourcing.basics.offer import LeadTime, PlaceStock, PriceBreak
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine, Receipt, ReceiptLine
from sourcing.basics.problem import Place, Problem
from sourcing.basics.quote import DocumentTotal, FrozenQuote, Quote, QuoteLine, TaxAmount
from sourcing.basics.settings import MarkupBand, Settings, Shop, Supplies, Tax
from sourcing.basics.sheet import Accounting, Column, SheetSummary
from sourcing.storage.sheets import NewSheet
from tests.builders import usd

if TYPE_CHECKING:
    import pandas as pd

AT = datetime(2026, 1, 12, 9, 30, 15, 250_000)
BLANK = (
    *("maker", "maker_number", "description", "currency", "list_price", "price_basis", "pack", "order_multiple"),
    *("minimum", "stock", "lead_time", "core_charge", "superseded_by", "no_longer_available", "note"),
)
BREAKS = tuple(
    PriceBreak(from_quantity=at, price=Decimal(each)) for at, each in ((1, "12.345678"), (10, "11.5"), (50, "9.00"))
)
SHOP = Shop(name="Wickenby Yard Machine Repair", address=("4 Mill Lane",), telephone="555-0100", email="a@b.example")
CUSTOMER = Customer(name="Maud Tilbrook", telephone="555-0101", may_also_approve=("Ned Tilbrook",))
MACHINE = Machine(description="Snow thrower", maker="Norrowby", model="NW-826", serial="0007", component="Ostrevik")
AGREED = JobLine(title="Replace the auger belt", part="AUGER-BELT", quantity=1, hours=Decimal("1.25"))


def settings(labour_rate: str = "85.00") -> Settings:
    """Settings of the shop."""
    return Settings(
        shop=SHOP,
        currency="USD",
        locale="en_US",
        markup_bands=(MarkupBand(from_cost=Decimal("0"), multiplier=Decimal("1.550")),),
        labour_rate=Decimal(labour_rate),
        technician_cost=Decimal("31.20"),
        supplies=Supplies(percent_of_labour=Decimal("5"), most=Decimal("20")),
        taxes=(Tax(name="Sales tax", percent=Decimal("6.875"), on=("parts", "freight"), starts_on=date(2025, 7, 1)),),
        cautions=("Take the key out.",),
        cautions_dated=date(2026, 1, 2),
    )


def job(received_on: date = date(2026, 1, 12)) -> Job:
    """A job with an add-on, not yet numbered."""
    keepers = JobLine(title="Belt keepers", part="KEEPER", quantity=2, found="bent", why="belt jumps", if_declined="no")
    return Job(
        customer=CUSTOMER,
        machine=MACHINE,
        complaint="Auger does not turn",
        agreed=(AGREED,),
        add_ons=(keepers,),
        received_on=received_on,
        need_by=date(2026, 1, 19),
    )


def frozen(job_number: str, revision: int = 1, paper: str = "Quote\r\n  for Maud – 61,50 €\n") -> FrozenQuote:
    """A frozen quote with one line '1' and an odd paper."""
    line = QuoteLine(
        label="1",
        kind="agreed",
        title="Replace the auger belt",
        part="AUGER-BELT",
        number="NW-40388",
        description="Belt A36",
        quantity=1,
        unit_price=usd("34.10"),
        parts_price=usd("34.10"),
        hours=Decimal("1.25"),
        labour_price=usd("106.25"),
        freight_price=usd("9.00"),
        found="",
        why="",
        if_declined="",
        behind=None,
    )
    total = DocumentTotal(
        labels=("1",),
        sums=(("parts", usd("34.10")), ("freight", usd("9.00")), ("labour", usd("106.25"))),
        before_tax=usd("149.35"),
        taxes=(TaxAmount(name="Sales tax", percent=Decimal("6.875"), taxable=usd("43.10"), amount=usd("2.96")),),
        total=usd("152.31"),
    )
    quote = Quote(
        job=job_number,
        revision=revision,
        shop=SHOP,
        customer=CUSTOMER,
        machine=MACHINE,
        complaint="Auger does not turn",
        made_at=AT,
        valid_to=date(2026, 1, 19),
        locale="en_US",
        currency="USD",
        lines=(line,),
        agreed_total=total,
        everything_total=total,
        add_on_prices=(),
        arrives=(date(2026, 1, 15), date(2026, 1, 16)),
        terms_text=("Pay on collection.",),
        cautions=(),
        cautions_dated=None,
        warnings=("Margin below the floor",),
    )
    return FrozenQuote(quote=quote, paper=paper, sha256=hashlib.sha256(paper.encode()).hexdigest())


def answer(job_number: str, word: Literal["approved", "declined"] = "approved", revision: int = 1) -> Approval:
    """An answer to line 1."""
    return Approval(
        job=job_number,
        revision=revision,
        label="1",
        answer=word,
        amount=usd("149.35"),
        who="Maud Tilbrook",
        how="telephone",
        at=AT,
        taken_by="Oona Brandeth",
        contact="555-0101",
        words="Go ahead – but no more",
    )


def purchase_order(number: str, jobs: Sequence[str]) -> PurchaseOrder:
    """An order with one line for line 1 of each job."""
    eur = Money(amount=Decimal("13.40"), currency="EUR")
    lines = tuple(
        PurchaseOrderLine(
            line=at,
            job=job_number,
            revision=1,
            label="1",
            part="AUGER-BELT",
            supplier_number="KA-0036",
            maker_number="CV 4036",
            description="Keilriemen A36",
            needed=1,
            ordered=2,
            pack=2,
            price_basis=100,
            unit_price=Decimal("670.125"),
            goods=eur,
            goods_cost=usd("14.61"),
            landed=usd("23.61"),
            surplus_cost=usd("7.31"),
        )
        for at, job_number in enumerate(jobs, 1)
    )
    return PurchaseOrder(
        number=number,
        supplier="kesselried",
        supplier_name="Kesselried Antriebsteile",
        supplier_address=("Ringstraße 9",),
        shop_name=SHOP.name,
        ship_to=SHOP.address,
        currency="EUR",
        placed_at=AT,
        placed_by="Oona Brandeth",
        need_by=None,
        expected=(date(2026, 1, 15), date(2026, 1, 16)),
        lines=lines,
        charges=(CostLine(name="freight", amount=usd("9.00"), rule="flat"),),
        goods_total=eur,
        landed_total=usd("23.61"),
        discount_percent=Decimal("2.5"),
    )


def receipt(order: str, paper: str = "L-0099") -> Receipt:
    """A delivery."""
    return Receipt(
        order=order,
        paper=paper,
        at=AT,
        received_by="Piet Halloway-Rusk",
        lines=(ReceiptLine(line=1, quantity=2, unit_price=Decimal("671.5")),),
        freight=Money(amount=Decimal("8.25"), currency="EUR"),
        rate=Decimal("1.0904123456"),
    )


def summary(offers: int, file: str = "prices.csv") -> SheetSummary:
    """What was read: that many offers, two rows of structure, one problem."""
    bad = Problem(code="blank-number", what="x", remedy="y", place=Place(file=file, row=9), suggestions=("a", "b"))
    return SheetSummary(
        file=file,
        columns=(Column(at=0, header="Artikel", field="supplier number"), Column(at=1, header="?", field=None)),
        accounting=(Accounting(worksheet="", rows=offers + 3, offers=offers, structure=2, problem_rows=1),),
        problems=(bad,),
        sheet_date=None,
        currency="EUR",
    )


def new_sheet(supplier: str, day: date, sha256: str) -> NewSheet:
    """A sheet of that supplier and day."""
    return NewSheet(supplier=supplier, sheet_date=day, sha256=sha256, imported_at=AT, imported_by="Oona Brandeth")


def offer_row(row: int, supplier_number: str, **fields: object) -> dict[str, object]:
    """One row of the offers frame: blank but for its number."""
    blank = dict.fromkeys(BLANK)
    return {"worksheet": "", "row": row, "supplier_number": supplier_number, **blank, "breaks": (), **fields}


def full_row(row: int, supplier_number: str) -> dict[str, object]:
    """One row with every field filled."""
    return offer_row(
        row,
        supplier_number,
        worksheet="Preise",
        maker="Corrivane",
        maker_number="CV 4036",
        description="Keilriemen A36 – verstärkt",
        currency="CHF",
        list_price=Decimal("19.90"),
        breaks=BREAKS,
        price_basis=100,
        pack=2,
        order_multiple=4,
        minimum=8,
        stock=0,
        lead_time=LeadTime(text="3-5 Tage", least=3, most=5),
        core_charge=Decimal("0.00"),
        superseded_by="KA-0037",
        no_longer_available=True,
        note="oversize",
    )


DETAILS: dict[str, object] = {
    "sold_by": "metre",
    "gtin": "04012345678901",
    "discount_code": "B2",
    "stock_places": (PlaceStock(place="Süd – Hub", pieces=3), PlaceStock(place="2", pieces=None)),
    "weight_kg": Decimal("0.028349523125"),
    "oversize": True,
    "hazardous": False,
    "origin": "DE",
    "tariff_code": "4010.32.00",
    "valid_from": date(2026, 1, 1),
    "valid_to": date(2026, 12, 31),
    "length_cm": Decimal("0.0396875"),
    "width_cm": Decimal("30.48"),
    "height_cm": Decimal("4"),
    "returnable": False,
}
"""What most sheets do not say. 0.028349523125 kg is one ounce and 0.0396875 cm a 64th of an inch (NIST Handbook 44,
appendix C), all their digits."""


def frame(*rows: dict[str, object]) -> "pd.DataFrame":
    """The rows as the data frame reading gives: every column of objects, None for a blank."""
    import pandas as pd

    return pd.DataFrame(list(rows), dtype=object)
