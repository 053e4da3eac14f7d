"""Quotes for the paper's tests: one with everything a quote can hold, a long one, one with text from right to left."""

from datetime import date
from decimal import Decimal

from sourcing.basics.job import Customer, Finding, Machine
from sourcing.basics.quote import AddOnPrice, DepositAsked, DocumentTotal, FeeAmount, Quote
from sourcing.basics.settings import ChargeRules, Tolerance
from sourcing.basics.value import changed
from tests.documents.values import QUOTE, SHOP, document_total, line, usd

SPECIAL = ("It can go back within 14 days of its arrival, unfitted.", "20 % of its price is kept if it goes back.")


def rich_quote() -> Quote:
    """Every field filled: findings with photos, fees by rule and of the job, flat labour, a special order, a deposit.

    Agreed: parts 166.60, freight 12.50, flat labour 120.00, fees 6.00 + 3.50 + 25.00 = 34.50; together 333.60; tax
    6.5 % of 166.60 = 10.83; total 344.43. Add-on A: parts 33.80, labour 24.00, 1.20 more supplies: 59.00 and 2.20 tax
    (6.5 % of 200.40 = 13.03). Everything: 392.60 + 13.03 = 405.63. Added up on paper.
    """
    return changed(
        QUOTE,
        customer=_customer(),
        machine=changed(QUOTE.machine, component_maker="Ostrevik", component_model="AD-3", component_serial="OS-204"),
        lines=(
            line(
                "1", "Replace the auger drive belt", "166.60", hours="1.25", labour_rate=None,
                number="Norrowby NW-40388", description="auger drive belt, B section, aramid cord",
                special_order=True, return_words=SPECIAL,
                core_words=("Your old belt goes back.", "Ask us if you want to keep it."),
            ),
            line("2", "Fetch the machine", "0.00", 0, fee_price=usd("25.00"), why="You asked us to fetch it."),
            line("3", "Inbound freight", "0.00", 0, freight_price=usd("12.50")),
            line(
                "A", "Replace both belt keepers", "16.90", 2, "0.25",
                number="Norrowby NW-40395", description="belt keeper, auger housing",
                found="One keeper is broken off.", why="Without them the new belt can jump off.",
                if_declined="The new belt may come off or wear early.", photos=("keeper-left.jpg", "keeper-right.jpg"),
                core_words=("Your old parts go back.", "Ask us if you want to keep them.", "Local rules come first."),
            ),
        ),
        agreed_total=_total("123", ("166.60", "120.00", "34.50"), "10.83", ("333.60", "344.43"), "6.00"),
        everything_total=_total("123A", ("200.40", "144.00", "35.70"), "13.03", ("392.60", "405.63"), "7.20"),
        add_on_prices=(AddOnPrice(label="A", price=usd("61.20"), total_with_it=usd("405.63")),),
        findings=(
            Finding(what="Both belt keepers are bent.", photos=("keeper-left.jpg",), found_on=date(2026, 1, 11)),
            Finding(what="The chute turns hard.", found_by="Piet Halloway-Rusk"),
        ),
        deposit=DepositAsked(agreed=usd("83.30"), everything=usd("90.00"), rule="50 % of the special-order parts"),
        tolerance=Tolerance(percent=Decimal("2"), amount=Decimal("5.00")),
        law_text=("Ask us to give you back replaced parts before we begin.",),
        ready_by=date(2026, 1, 15),
    )  # fmt: skip


def _customer() -> Customer:
    return Customer(
        name="Greta Lindqvare",
        telephone="555 0187",
        text_number="555 0188",
        email="greta@lindqvare.example",
        address=("3 Quarry Row", "Wickenby"),
        may_also_approve=("Oona Brandeth",),
    )


def _total(
    labels: str, sums: tuple[str, str, str], tax: str, before_and_after: tuple[str, str], supplies: str
) -> DocumentTotal:
    parts, labour, fees = sums
    made = document_total(labels, parts, labour, tax, *before_and_after)
    by_kind = tuple((kind, usd(fees) if kind == "fees" else amount) for kind, amount in made.sums)
    named = (
        FeeAmount(name="Shop supplies", amount=usd(supplies), rule="5 % of labour, the owner's own words"),
        FeeAmount(name="Disposal of the old belt", amount=usd("3.50"), rule="1 x 3.50, the owner's own words"),
    )
    return changed(made, sums=by_kind, fees=named)


def exempt_quote() -> Quote:
    """The quote of a customer who pays no tax: every total is its sum before tax."""
    free = {
        which: changed(total, taxes=(), total=total.before_tax)
        for which, total in (("agreed_total", QUOTE.agreed_total), ("everything_total", QUOTE.everything_total))
    }
    before = QUOTE.agreed_total.before_tax
    prices = tuple(
        AddOnPrice(label=one.label, price=one.price, total_with_it=before + one.price)
        for one in QUOTE.lines
        if one.kind == "add-on"
    )
    return changed(
        QUOTE,
        **free,
        add_on_prices=prices,
        charge_rules=ChargeRules(tax_exempt=True),
        customer=changed(QUOTE.customer, tax_exempt=True, exempt_because="township of Wickenby, certificate 4471"),
    )


def long_quote(lines: int = 60, add_ons: int = 20) -> Quote:
    """So many lines; the words differ from line to line, the totals are those of the short quote."""
    agreed = [
        line(str(at), f"Replace shear pin {at}", "2.13", at, "0.1", **_words(at))
        for at in range(1, lines - add_ons + 1)
    ]
    extras = [
        line(chr(64 + at), f"Replace bushing {at}", "16.90", at, "0.25", **_words(at)) for at in range(1, add_ons + 1)
    ]
    return changed(
        QUOTE,
        lines=(*agreed, *extras),
        add_on_prices=tuple(
            AddOnPrice(label=one.label, price=one.price, total_with_it=QUOTE.agreed_total.total + one.price)
            for one in extras
        ),
    )


def _words(at: int) -> dict[str, object]:
    return {
        "number": f"Norrowby NW-{40000 + at}",
        "description": f"steel, hardened, place {at} on the drawing",
        "found": f"Worn on the left at place {at}, with play that can be felt.",
        "why": "Once it is gone the housing itself wears.",
        "if_declined": "Nothing breaks at once.",
    }


def wide_words_quote() -> Quote:
    """A name from right to left, and words without a blank longer than a phone is wide."""
    long = "Schneefräsenantriebskeilriemenspannrollenlagerabdeckungsblech" * 2
    return changed(
        rich_quote(),
        shop=changed(SHOP, name="Wickenby Yard Machine Repair and Sharpening of Blades, Chains and Scraper Bars"),
        customer=Customer(name="مها الطويل", telephone="555 0187", may_also_approve=("נועה ברק",)),
        machine=Machine(description=long, maker="Norrowby", model="X" * 70),
        complaint="توقف المثقاب عن الدوران",
        lines=tuple(changed(one, title=f"{one.title} {long}") for one in rich_quote().lines),
    )


def one_line_quote() -> Quote:
    """One agreed line of one thing, with tax, no add-on."""
    alone = line("1", "Replace the shear pins", "2.13", 2, number="Norrowby NW-10211")
    total = document_total("1", "4.26", "0.00", "0.28", "4.26", "4.54")
    total = changed(total, sums=(("parts", usd("4.26")),))
    return changed(QUOTE, lines=(alone,), agreed_total=total, everything_total=total, add_on_prices=())
