"""A quote built from a job: labour, fees, freight, special orders, tax-free customers. Figures worked out by hand."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.job import Customer, Finding, JobFee
from sourcing.basics.problem import Refused
from sourcing.basics.settings import CategoryBands, DepositRule, MarkupBand, Tolerance
from sourcing.basics.terms import Returns
from tests.builders import door, flat, offer, usd
from tests.quoting.quoted import bought, job, need, quote

BELT = offer("stonegarth", "NW-77120", "126.90", list_price=Decimal("189.50"))
KEEPER = offer("stonegarth", "NW-31207", "6.40", list_price=Decimal("13.50"))
STONEGARTH = {"stonegarth": door("stonegarth", freight=flat("14.95", "150.00"))}


def test_labour_by_the_hour_at_the_lines_rate_or_the_shops_or_flat() -> None:
    """1.5 h at 96.00, 0.25 h at 110.00 = 27.50, and 45.00 flat whatever its 2 hours: they are only cost."""
    lines = [
        need("Shop's rate", hours=Decimal("1.5")),
        need("Own rate", hours=Decimal("0.25"), labour_rate=Decimal("110.00")),
        need("Flat", hours=Decimal(2), labour_flat=Decimal("45.00")),
        need("No work"),
    ]
    found = quote(job(lines), bought({}, {}))
    assert [(str(one.labour_price.amount), one.labour_rate) for one in found.lines] == [
        ("144.00", Decimal("96.00")),
        ("27.50", Decimal("110.00")),
        ("45.00", None),
        ("0.00", None),
    ]
    assert dict(found.agreed_total.sums)["labour"] == usd("216.50")


def test_labour_is_rounded_once_half_up() -> None:
    """0.35 h x 96.30 is 33.705: 33.71."""
    found = quote(job([need("Odd", hours=Decimal("0.35"), labour_rate=Decimal("96.30"))]), bought({}, {}))
    assert found.lines[0].labour_price == usd("33.71")


def test_each_fee_of_the_job_is_an_agreed_line_before_the_freight() -> None:
    """A pick-up of the machine at 35.00 is line 2, freight line 3; the fee is in the sum of fees and has no part."""
    fees = (JobFee(name="Pick-up of the machine", amount=Decimal("35.00"), why="12 miles each way"),)
    found = quote(job([need("Belt", "BELT")], fees=fees), bought({"1": BELT}, {"1": 1}, STONEGARTH))
    assert [(one.label, one.title, one.price) for one in found.lines] == [
        ("1", "Belt", usd("177.66")),
        ("2", "Pick-up of the machine", usd("35.00")),
        ("3", "Inbound freight", usd("14.95")),
    ]
    assert found.lines[1].fee_price == usd("35.00") and found.lines[1].why == "12 miles each way"
    assert found.lines[0].fee_price is None
    assert dict(found.agreed_total.sums)["fees"] == usd("35.00")
    assert found.agreed_total.before_tax == usd("227.61")


def test_freight_of_the_add_ons_is_one_line_of_its_own() -> None:
    """Belt alone at Pellbrook 9.95; keepers and idler together at Stonegarth 14.95, charged once on line C."""
    offers = {"1": offer("pellbrook", "CV-B880K", "71.25"), "A": KEEPER, "B": offer("stonegarth", "NW-22203", "22.50")}
    doors = {**STONEGARTH, "pellbrook": door("pellbrook", freight=flat("9.95"))}
    what = bought(offers, {"1": 1, "A": 2, "B": 1}, doors)
    wanted = job([need("Belt", "BELT")], [need("Keepers", "KEEPER", 2), need("Idler", "IDLER")])
    found = quote(wanted, what)
    freight = {one.label: str(one.freight_price.amount) for one in found.lines if one.freight_price.amount}
    assert freight == {"2": "9.95", "C": "14.95"}
    assert found.line("C").title == "Inbound freight for the extra parts, charged once"  # type: ignore[union-attr]


def test_freight_is_carried_for_one_job_though_the_shop_bills_it() -> None:
    """No line of freight; and the other way round."""
    what = bought({"1": BELT}, {"1": 1}, STONEGARTH)
    carried = quote(job([need("Belt", "BELT")], freight_to_customer="carried"), what)
    assert [one.label for one in carried.lines] == ["1"] and carried.agreed_total.before_tax == usd("177.66")
    billed = quote(job([need("Belt", "BELT")], freight_to_customer="billed"), what, freight_to_customer="carried")
    assert billed.lines[-1].freight_price == usd("14.95")


def test_26_add_ons_and_the_freight_line_behind_them() -> None:
    """The 27th label is AA and an add-on; nothing gets a label that is no letter."""
    extras = [need(f"Keeper {at}", "KEEPER") for at in range(26)]
    labels = [chr(ord("A") + at) for at in range(26)]
    what = bought(dict.fromkeys(labels, KEEPER), dict.fromkeys(labels, 1), {"stonegarth": door("stonegarth")})
    found = quote(job([need("Look")], extras), what)
    assert (found.lines[-1].label, found.lines[-1].kind) == ("AA", "add-on")
    assert found.lines[-1].freight_price == usd("10.00")


def test_a_category_has_its_own_bands() -> None:
    """The line's word goes before our part's; the general bands hold where the category has none."""
    own = CategoryBands(category="belts", bands=(MarkupBand(from_cost=Decimal(0), multiplier=Decimal("1.50")),))
    offers = {"1": BELT, "2": BELT, "3": BELT}
    lines = [need("By the part", "BELT"), need("By the line", "BELT", category="rare"), need("Other", "BAR")]
    what = bought(offers, {"1": 1, "2": 1, "3": 1}, STONEGARTH, categories={"BELT": "Belts"})
    found = quote(job(lines), what, category_bands=(own,), cap_at_list_price=False)
    assert [one.unit_price for one in found.lines[:3]] == [usd("190.35"), usd("177.66"), usd("177.66")]
    assert [one.category for one in found.lines[:3]] == ["Belts", "rare", ""]


@pytest.mark.parametrize(
    ("stated", "returnable", "special"),
    [(None, False, True), (None, True, False), (None, None, False), (True, True, True), (False, False, False)],
)
def test_what_cannot_go_back_is_a_special_order_unless_the_job_says(
    stated: bool | None, returnable: bool | None, special: bool
) -> None:
    """The job's word goes before the supplier's."""
    what = bought({"1": offer("stonegarth", returnable=returnable)}, {"1": 1})
    line = quote(job([need("Belt", "BELT", special_order=stated)]), what).lines[0]
    assert line.special_order is special and bool(line.return_words) is special


@pytest.mark.parametrize(
    ("rules", "words"),
    [
        (Returns(returnable=False), "Once ordered, this part can't be sent back."),
        (Returns(), "Whether this part can be sent back is not known; ask us before you approve it."),
        (
            Returns(returnable=True, restocking_percent=Decimal("15.0"), freight=Decimal("9.30"), within_days=30),
            "Unused, this part can be sent back within 30 days after it came, less 15 % for restocking; the way back "
            "is not in the price.",
        ),
        (
            Returns(returnable=True, restocking_percent=Decimal(0), within_days=14),
            "Unused, this part can be sent back within 14 days after it came; the way back is not in the price.",
        ),
    ],
)
def test_terms_of_a_special_order_are_in_the_customers_words(rules: Returns, words: str) -> None:
    """First the shop's own terms; then going back, with neither the supplier nor what the way back costs the shop."""
    what = bought({"1": BELT}, {"1": 1}, {"stonegarth": door("stonegarth", return_terms=rules, returns="Nur Karton")})
    shop_terms = ("Special orders are paid in advance.",)
    line = quote(job([need("Belt", "BELT", special_order=True)]), what, special_order_terms=shop_terms).lines[0]
    assert line.return_words == (*shop_terms, words)
    told = " ".join(line.return_words).casefold()
    assert not any(word in told for word in ("stonegarth", "126.90", "9.30", "karton"))


def test_a_customer_who_is_free_of_tax_pays_none_and_the_words_are_needed() -> None:
    """7 % on 177.66 is 12.44; the paper's rules say that she is exempt."""
    what = bought({"1": BELT}, {"1": 1}, STONEGARTH)
    taxed = quote(job([need("Belt", "BELT")], freight_to_customer="carried"), what)
    assert taxed.agreed_total.total == usd("190.10")
    parish = Customer(name="Parish of Wickenby", tax_exempt=True, exempt_because="certificate 88-2 of the county")
    free = quote(job([need("Belt", "BELT")], customer=parish, freight_to_customer="carried"), what)
    assert free.agreed_total.total == usd("177.66") and not free.agreed_total.taxes
    assert free.charge_rules.tax_exempt
    with pytest.raises(Refused, match="Parish of Wickenby is marked as free of tax, but exempt_because is blank"):
        quote(job([need("Belt", "BELT")], customer=Customer(name="Parish of Wickenby", tax_exempt=True)), what)


def test_the_deposit_is_asked_on_special_orders_alone() -> None:
    """50 % of the belt's 177.66 is 88.83; the keepers can go back and are in no deposit."""
    special = offer("stonegarth", "NW-77120", "126.90", returnable=False)
    what = bought({"1": special, "2": KEEPER}, {"1": 1, "2": 2}, STONEGARTH)
    lines = [need("Belt", "BELT"), need("Keepers", "KEEPER", 2)]
    found = quote(job(lines), what, deposit=DepositRule(percent=Decimal(50)))
    assert found.deposit is not None and found.deposit.agreed == usd("88.83")
    assert quote(job(lines), what).deposit is None


def test_findings_days_and_the_shops_words_are_on_the_quote() -> None:
    """Photos, the day the machine is to be ready, law text, tolerance and size of paper, each as it was said."""
    finding = Finding(what="Keeper bent", photos=("IMG_2041.jpg",))
    wanted = job([need("Belt", photos=("IMG_1.jpg",))], findings=(finding,), ready_by=date(2026, 3, 9))
    shop: dict[str, Any] = {
        "law_text": ("Ask for your rights.",),
        "tolerance": Tolerance(percent=Decimal(5)),
        "paper_size": "A4",
    }
    found = quote(wanted, bought({}, {}), **shop)
    assert found.findings == (finding,) and found.lines[0].photos == ("IMG_1.jpg",)
    assert (found.ready_by, found.law_text, found.paper_size) == (date(2026, 3, 9), ("Ask for your rights.",), "A4")
    assert found.tolerance == Tolerance(percent=Decimal(5))


def test_a_part_without_an_offer_is_no_quote() -> None:
    """Never a line of nothing."""
    with pytest.raises(Refused, match="2026-0001 can't be quoted: 1: BELT"):
        quote(job([need("Belt", "BELT")]), bought({}, {}))


def test_a_pack_is_priced_by_what_a_piece_of_it_costs() -> None:
    """Ten in a pack of ten for 7.90: two pieces are sold at 0.79 x 2.50 = 1.98 (1.975) each, eight lie on the shelf."""
    pins = offer("stonegarth", "PB-1040", "7.90", pack=10, price_basis=10)
    line = quote(job([need("Pins", "PIN", 2)], freight_to_customer="carried"), bought({"1": pins}, {"1": 2})).lines[0]
    assert (line.unit_price, line.parts_price, line.quantity) == (usd("1.98"), usd("3.96"), 2)
    assert line.behind is not None and line.behind.surplus_cost == usd("6.32")
