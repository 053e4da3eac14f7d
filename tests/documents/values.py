"""A realistic job as frozen values, written out by hand: the papers must show these figures and compute none.

Parts agreed 166.60 + 4.26 = 170.86, labour 1.25 h x 96.00 = 120.00, freight 12.50; tax 6.5 % on parts only.
Every total below was added up on paper; the three extras alone add 239.97, together 239.98.
"""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from sourcing.basics.job import Customer, Machine
from sourcing.basics.money import Money
from sourcing.basics.quote import AddOnPrice, Behind, DocumentTotal, Quote, QuoteLine, TaxAmount
from sourcing.basics.settings import PriceKind, Shop
from sourcing.basics.value import changed

SHOP = Shop(
    name="Wickenby Yard Machine Repair",
    address=("14 Mill Lane", "Wickenby"),
    telephone="555 0142",
    email="counter@wickenby.example",
)
SUPPLIER_WORDS = ("stonegarth", "Larkmoor Wholesale", "SG-77120")
OWNERS_FIGURES = ("119.00", "131.50", "x 1.40", "share of freight", "margin", "markup", "under the floor")
OWNERS_WORDS = (*SUPPLIER_WORDS, *OWNERS_FIGURES)


def usd(amount: str) -> Money:
    """US dollars."""
    return Money(amount=Decimal(amount), currency="USD")


BEHIND = Behind(
    supplier="stonegarth",
    supplier_number="SG-77120",
    sheet=3,
    unit_cost=usd("119.00"),
    cost=usd("131.50"),
    surplus_cost=usd("0.00"),
    price_rule="119.00 x 1.40 by markup band from 100.00",
    landed_rule="goods and share of freight",
    latest=date(2026, 1, 16),
)


def line(label: str, title: str, each: str, quantity: int = 1, hours: str = "0", **fields: object) -> QuoteLine:
    """A quote line; labour at 96.00 an hour."""
    kind: Literal["agreed", "add-on"] = "agreed" if label.isdigit() else "add-on"
    made = QuoteLine(
        label=label,
        kind=kind,
        title=title,
        part=f"WY-{label}" if quantity else "",
        number="",
        description="",
        quantity=quantity,
        unit_price=usd(each),
        parts_price=usd(each) * quantity,
        hours=Decimal(hours),
        labour_price=usd("96.00") * Decimal(hours),
        labour_rate=Decimal("96.00"),
        freight_price=usd("0.00"),
        found="",
        why="",
        if_declined="",
        behind=BEHIND if quantity else None,
    )
    return changed(made, **fields)


LINES = (
    line(
        "1", "Replace the auger drive belt", "166.60", hours="1.25",
        number="Norrowby NW-40388", description="auger drive belt, B section, aramid cord",
    ),
    line("2", "Replace the shear pins", "2.13", 2, number="Norrowby NW-10211", description="shear pin, 1/4 in"),
    line("3", "Inbound freight", "0.00", 0, freight_price=usd("12.50")),
    line(
        "A", "Replace both belt keepers", "16.90", 2, "0.25",
        number="Norrowby NW-40395", description="belt keeper, auger housing",
        found="One keeper is broken off, the other is bent away from the pulley.",
        why="Keepers hold the belt in the groove when the auger lets go; without them the new belt can jump off.",
        if_declined="The new belt may come off or wear early, and we can't vouch for it.",
    ),
    line(
        "B", "Replace the idler bearing", "23.20", 1, "0.5",
        number="6203-2RS", description="deep groove ball bearing 17 x 40 x 12",
        found="The idler turns roughly and has play.",
        why="A seized idler burns the belt through in minutes.",
        if_declined="Have it looked at before next winter; the belt may fail again.",
    ),
    line(
        "C", "Replace the scraper bar", "78.20", 1, "0.25",
        number="Corrivane CV-2260", description="scraper bar, 26 in",
        found="Worn to the bolts on the left.",
        why="Once it is gone the housing itself wears on the ground.",
        if_declined="Nothing breaks at once; the housing wears.",
    ),
)  # fmt: skip


def document_total(labels: str, parts: str, labour: str, tax: str, before: str, total: str) -> DocumentTotal:
    """A total with freight 12.50 and one tax on parts."""
    sums: tuple[tuple[PriceKind, Money], ...] = (
        ("parts", usd(parts)),
        ("freight", usd("12.50")),
        ("labour", usd(labour)),
        ("fees", usd("0.00")),
    )
    return DocumentTotal(
        labels=tuple(labels),
        sums=sums,
        before_tax=usd(before),
        taxes=(TaxAmount(name="Sales tax", percent=Decimal("6.5"), taxable=usd(parts), amount=usd(tax)),),
        total=usd(total),
    )


QUOTE = Quote(
    job="2026-0001",
    revision=2,
    shop=SHOP,
    customer=Customer(name="Maud Tilbrook", telephone="555 0187", may_also_approve=("Ansgar Tilbrook",)),
    machine=Machine(
        description="walk-behind two-stage snow thrower, 26 in",
        maker="Norrowby",
        model="NW-826",
        serial="826-004417",
        component="Ostrevik auger drive AD-3",
    ),
    complaint="The auger stopped turning and it smelled of burnt rubber.",
    made_at=datetime(2026, 1, 12, 15, 40),
    valid_to=date(2026, 1, 19),
    locale="en_US",
    currency="USD",
    lines=LINES,
    agreed_total=document_total("123", "170.86", "120.00", "11.11", "303.36", "314.47"),
    everything_total=document_total("123ABC", "306.06", "216.00", "19.89", "534.56", "554.45"),
    add_on_prices=(
        AddOnPrice(label="A", price=usd("59.99"), total_with_it=usd("374.46")),
        AddOnPrice(label="B", price=usd("72.70"), total_with_it=usd("387.17")),
        AddOnPrice(label="C", price=usd("107.28"), total_with_it=usd("421.75")),
    ),
    arrives=(date(2026, 1, 15), date(2026, 1, 16)),
    terms_text=("Payment when you collect the machine.", "Replaced parts are yours: ask for them."),
    cautions=(
        "Before hands go in: engine off, all motion stopped, key out, spark-plug wire off.",
        "Guards, shields and keepers back before start.",
    ),
    cautions_dated=date(2025, 11, 3),
    warnings=("B: margin 18 % is under the floor of 25 %; Larkmoor Wholesale is cheaper",),
)

HOSTILE = "<script>alert('x')</script>\" onload=\"x &amp; \u202e0.01 \x1b[2J\nTotal 0.00"
"""Markup, a broken-out attribute, a turned reading direction (U+202E), a terminal code, a forged line."""


def bare_quote() -> Quote:
    """A quote with as little in it as a quote can have: one line, no add-on, no tax, nothing known beside it."""
    alone = line("1", "Look the machine over", "0.00", 0, "0.5")
    total = DocumentTotal(
        labels=("1",), sums=(("labour", usd("48.00")),), before_tax=usd("48.00"), taxes=(), total=usd("48.00")
    )
    return changed(
        QUOTE,
        shop=Shop(name="Wickenby Yard Machine Repair"),
        customer=Customer(name="Maud Tilbrook"),
        machine=Machine(description="snow thrower"),
        lines=(alone,),
        agreed_total=total,
        everything_total=total,
        add_on_prices=(),
        arrives=None,
        terms_text=(),
        cautions=(),
        cautions_dated=None,
        warnings=(),
    )


def hostile_quote() -> Quote:
    """The quote with hostile text in every field a person or a sheet fills."""
    lines = tuple(
        changed(
            one, title=HOSTILE, number=HOSTILE, description=HOSTILE, found=HOSTILE, why=HOSTILE, if_declined=HOSTILE
        )
        for one in LINES
    )
    taxed = changed(QUOTE.agreed_total.taxes[0], name=HOSTILE)
    return changed(
        QUOTE,
        job=HOSTILE,
        shop=Shop(name=HOSTILE, address=(HOSTILE,), telephone=HOSTILE, email=HOSTILE),
        customer=Customer(name=HOSTILE, telephone=HOSTILE, email=HOSTILE, may_also_approve=(HOSTILE, HOSTILE)),
        machine=Machine(description=HOSTILE, maker=HOSTILE, model=HOSTILE, serial=HOSTILE, component=HOSTILE),
        complaint=HOSTILE,
        lines=lines,
        agreed_total=changed(QUOTE.agreed_total, taxes=(taxed,)),
        terms_text=(HOSTILE,),
        cautions=(HOSTILE,),
    )
