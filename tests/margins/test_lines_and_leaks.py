"""One job at a time: what each line cost at each stage, what moved its earnings, and what leaked. Figures by hand."""

from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.margin import JobMargin
from sourcing.basics.margin_facts import JobFacts, Purchase
from sourcing.basics.order import PaperCharge, ReceiptLine
from sourcing.basics.value import changed
from sourcing.margins.bought import book_of
from sourcing.margins.job_margin import OwnersRules, job_margin
from tests.builders import usd
from tests.margins.facts import (
    bill,
    bought,
    charge,
    facts,
    freight,
    order,
    plain,
    purchase,
    quote,
    quoted,
    receipt,
    went_back,
)


def made(job: JobFacts, *purchases: Purchase, floor: str = "0", hour: str = "0") -> JobMargin:
    """The job's margin."""
    rules = OwnersRules(floor_percent=Decimal(floor), technician_cost=Decimal(hour))
    return job_margin(job, book_of(purchases, "USD"), rules)


def leaks(found: JobMargin) -> dict[str, str]:
    """Name to amount."""
    return {leak.name: str(leak.amount.amount) for leak in found.leaks}


def steps(found: JobMargin) -> dict[str, str]:
    """Name to amount."""
    assert found.bridge is not None
    return {step.name: str(step.amount.amount) for step in found.bridge.steps}


def cost(found: JobMargin, stage: str) -> str:
    """What the parts cost at that stage."""
    return str({at: one.cost.amount for at, one in found.parts}[stage])  # type: ignore[index]


BELT = quoted("1", "177.66", "126.90", "14.95")


def test_charged_as_ordered_costs_what_was_quoted() -> None:
    one = order(bought(1, "1", "126.90", "14.95"), charges=[charge("freight", "14.95")])
    found = made(facts(quote(BELT, freight("2", "14.95"))), purchase(one, receipt(one, freight="14.95")))
    assert [cost(found, stage) for stage in ("quoted", "ordered", "received")] == ["141.85", "141.85", "141.85"]
    assert (steps(found), leaks(found)) == ({}, {})
    assert dict(found.parts)["received"].earned == usd("50.76")


def test_a_price_rise_is_told_where_it_came() -> None:
    """126.90 quoted, 130.00 ordered, 139.59 charged: 3.10 and 9.59, together the 12.69 of the case."""
    one = order(bought(1, "1", "130.00", "14.95"), charges=[charge("freight", "14.95")])
    came = [ReceiptLine(line=1, quantity=1, unit_price=Decimal("139.59"))]
    found = made(facts(quote(BELT)), purchase(one, receipt(one, came, "14.95")))
    rises = [(leak.amount.amount, leak.why) for leak in found.leaks if leak.name == "price rise absorbed"]
    assert rises == [
        (Decimal("3.10"), "1 ordered for 130.00, quoted on 126.90"),
        (Decimal("9.59"), "charged 139.59 on the papers of PO-2026-0001, ordered for 130.00"),
    ]
    assert steps(found) == {"price rise absorbed": "-12.69"}


def test_a_later_delivery_pays_freight_again() -> None:
    """Case S06: belt and bracket free of freight, the belt on backorder for 14.95: 154.80 becomes 169.75."""
    lines = quoted("1", "194.60", "139.00"), quoted("2", "31.60", "15.80")
    one = order(bought(1, "1", "139.00"), bought(2, "2", "15.80"))
    first = receipt(one, [ReceiptLine(line=2, quantity=1, unit_price=Decimal("15.80"))])
    second = receipt(one, [ReceiptLine(line=1, quantity=1, unit_price=Decimal("139.00"))], "14.95", paper="DN-2")
    found = made(facts(quote(*lines)), purchase(one, first, second))
    end = dict(found.parts)["received"]
    assert (end.cost, end.earned, str(end.margin_percent)) == (usd("169.75"), usd("56.45"), "24.96")
    assert str(dict(found.parts)["quoted"].margin_percent) == "31.56"
    assert steps(found) == {"second freight on backorder": "-14.95"}
    assert leaks(found) == {"second freight on backorder": "14.95"}


def test_half_of_it_here_waits_and_says_so() -> None:
    one = order(bought(1, "1", "139.00"), bought(2, "2", "15.80"))
    first = receipt(one, [ReceiptLine(line=2, quantity=1, unit_price=Decimal("19.80"))])
    found = made(facts(quote(quoted("1", "194.60", "139.00"), quoted("2", "31.60", "15.80"))), purchase(one, first))
    assert "received" not in dict(found.parts)
    assert "1 of 2 lines received; the job's figure for it waits for the rest" in found.notes
    assert (
        found.bridge is not None and not found.bridge.is_complete and steps(found) == {"price rise absorbed": "-4.00"}
    )


def test_freight_not_billed_and_fees_stand_within_the_quote() -> None:
    """30.00 of freight shared 2 to 1, 10.00 billed; a drive of 9.00 and a fee of 3.00 are not on a receipt: kept."""
    charges = [charge("freight", "30.00"), charge("pick-up", "9.00"), charge("small-order fee", "3.00")]
    lines = quoted("1", "50.00", "20.00", "28.00"), quoted("2", "50.00", "10.00", "14.00"), freight("3", "10.00")
    one = order(bought(1, "1", "20.00", "28.00"), bought(2, "2", "10.00", "14.00"), charges=charges)
    found = made(facts(quote(*lines)), purchase(one, receipt(one, freight="30.00")))
    assert leaks(found) == {"freight not billed": "20.00", "pick-up drive": "3.00", "small-order fee": "1.00"}
    assert {leak.when for leak in found.leaks} == {"within the quote"}
    (whole,) = (leak for leak in found.leaks if leak.name == "freight not billed")
    assert (whole.label, whole.why) == ("", "inbound freight 30.00, billed 10.00")
    assert cost(found, "received") == "72.00"


@pytest.mark.parametrize("name", ["Freight", "Oversize", "Freight of later deliveries"])
def test_every_carrier_charge_gives_way_to_the_freight_charged(name: str) -> None:
    """By its kind, whatever its name: or an oversize charge would be counted twice. The drive stays."""
    charges = [charge("freight", "12.00", name), charge("pick-up", "5.00", "Pick-up, miles")]
    one = order(bought(1, "1", "20.00", "17.00"), charges=charges)
    found = made(facts(quote(quoted("1", "60.00", "20.00", "17.00"))), purchase(one, receipt(one, freight="14.00")))
    assert cost(found, "received") == "39.00"
    assert steps(found) == {"freight dearer than ordered": "-2.00"}


@pytest.mark.parametrize(("by", "first"), [("value", "23.00"), ("weight", "21.00")])
def test_freight_is_shared_as_the_receipt_says(by: Any, first: str) -> None:
    """4.00 over 20.00 and 6.67 of goods, or over 1 kg and 3 kg."""
    one = order(bought(1, "1", "20.00", weight_kg=Decimal(1)), bought(2, "2", "6.67", weight_kg=Decimal(3)), charges=[])
    lines = quote(quoted("1", "60.00", "20.00"), quoted("2", "20.00", "6.67"))
    found = made(facts(lines), purchase(one, receipt(one, freight="4.00", freight_by=by)))
    assert dict(found.lines[0].stages)["received"].cost == usd(first)


def test_a_pack_goes_on_the_shelf_and_is_no_cost_of_the_job() -> None:
    """10 pins for 7.90, 2 needed: 1.58 is the job's; what came beyond the order lies on the shelf as well."""
    one = order(bought(1, "1", "7.90", needed=2, ordered=10))
    eleven = [ReceiptLine(line=1, quantity=11, unit_price=Decimal("0.79"), keeps_more=True)]
    found = made(facts(quote(quoted("1", "3.96", "1.58", quantity=2))), purchase(one, receipt(one, eleven)))
    assert cost(found, "received") == "1.58"
    assert leaks(found) == {"surplus pack": "7.11"}
    assert found.left == usd("2.38")  # goods on the shelf are not lost


def test_damaged_and_wrong_pieces_are_shown_and_are_no_cost() -> None:
    """Three came for two: one broken. It is the supplier's to make good until it is credited."""
    one = order(bought(1, "1", "30.00", needed=2, ordered=2))
    came = [ReceiptLine(line=1, quantity=3, unit_price=Decimal("15.00"), damaged=1)]
    job = facts(quote(quoted("1", "60.00", "30.00", quantity=2)))
    found = made(job, purchase(one, receipt(one, came)))
    assert cost(found, "received") == "30.00"
    assert leaks(found) == {"damaged or wrong, not yet made good": "15.00"}
    credited = went_back("credited", credit=usd("15.00"))
    assert leaks(made(job, purchase(one, receipt(one, came), back=[credited]))) == {}
    refused = made(job, purchase(one, receipt(one, came), back=[went_back("refused")]))
    assert leaks(refused) == {"return missed": "15.00"} and refused.left == usd("15.00")


def test_a_number_that_is_another_part_does_not_count_as_come() -> None:
    one = order(bought(1, "1", "30.00"))
    came = [ReceiptLine(line=1, quantity=1, unit_price=Decimal("30.00"), came="another part", number="X-9")]
    found = made(facts(quote(quoted("1", "60.00", "30.00"))), purchase(one, receipt(one, came)))
    assert "received" not in dict(found.parts)


def test_cores_and_deposits_never_enter_a_margin_but_a_lost_core_leaks() -> None:
    """Core charge 25.00: returned it costs its freight, lost it costs all of it. The margin is the same three times."""
    one = order(bought(1, "1", "100.00", core_charge=usd("25.00")))
    job = facts(quote(quoted("1", "150.00", "100.00")))
    for back, leaked in (
        ([], {}),
        ([went_back("sent", kind="core"), went_back("credited", kind="core", credit=usd("25.00"), freight=usd("4.00"))],
         {"core sent back at a cost": "4.00"}),
        ([went_back("lost", kind="core")], {"core late or lost": "25.00"}),
        ([went_back("credited", kind="core", credit=usd("20.00"))], {"core late or lost": "5.00"}),
    ):  # fmt: skip
        found = made(job, purchase(one, receipt(one), back=back))
        assert dict(found.parts)["received"].earned == usd("50.00")
        assert leaks(found) == leaked
        assert found.left == usd("50.00") - usd(next(iter(leaked.values()), "0.00"))


@pytest.mark.parametrize(("credit", "fee"), [("85.00", "15.00"), ("85.00", None)])
def test_a_part_sent_back_is_no_cost_and_what_is_kept_of_its_price_leaks(credit: str, fee: str | None) -> None:
    """100.00 charged, 85.00 given back: 15.00 lost, whether he calls it a fee or not. The job was not billed for it."""
    one = order(bought(1, "1", "100.00"))
    of = quote(quoted("1", "150.00", "100.00"), plain("2", parts_price=usd("10.00")))
    back = went_back("credited", credit=usd(credit), fee=usd(fee) if fee else None)
    found = made(facts(of, billed=bill(of, of.lines[1])), purchase(one, receipt(one), back=[back]))
    assert dict(found.lines[0].stages)["received"].cost == usd("0.00")
    name = "return restocked" if fee else "return credited short"
    assert leaks(found) == {name: "15.00"}, "not the 100.00 beside it: they came back"
    assert steps(found) == {
        "left off the bill": "-50.00",
        "bought and not used": "-100.00",
        "sent back for credit": "100.00",
    }
    assert found.left == usd("-15.00")


def test_work_left_out_and_never_bought_is_no_leak() -> None:
    of = quote(quoted("1", "150.00", "100.00"), plain("2", freight_price=usd("10.00")))
    found = made(facts(of, billed=bill(of, of.lines[1])))
    assert (leaks(found), steps(found)) == ({}, {"left off the bill": "-50.00"})
    assert dict(found.parts)["received"].earned == usd("10.00")


def test_bought_without_a_yes_that_holds_is_a_cost_all_the_same() -> None:
    """The line is not among those approved any more; the order stands."""
    one = order(bought(1, "A", "40.00", "5.00"))
    found = made(
        facts(quote(quoted("1", "60.00", "30.00"), quoted("A", "70.00", "40.00")), ["1"], no=["A"]), purchase(one)
    )
    line = found.lines[1]
    assert (line.label, line.answer, dict(line.stages)["ordered"].cost) == ("A", "declined", usd("45.00"))
    assert leaks(found) == {"bought and not used": "45.00"}


def test_a_discount_at_the_counter_is_the_bill_below_the_quote() -> None:
    of = quote(quoted("1", "150.00", "100.00"))
    cheaper = changed(of.lines[0], parts_price=usd("140.00"))
    found = made(facts(of, billed=bill(of, cheaper)))
    assert leaks(found) == {"discount at the counter": "10.00"}
    assert found.leaks[0].why == "quoted at 150.00, billed at 140.00"


def test_the_list_cap_costs_what_the_bands_would_have_made() -> None:
    """Case S01: 71.25 x 1.55 is 110.44, the list price 109.00; for two of them twice 1.44."""
    rule = "71.25 x 1.55 = 110.44, capped at list price 109.00"
    found = made(facts(quote(quoted("1", "218.00", "142.50", quantity=2, price_rule=rule))))
    assert leaks(found) == {"list cap": "2.88"}


def test_a_rate_that_moved_is_told_apart_from_a_price_that_rose() -> None:
    """100.00 CAD ordered at 0.70 and charged 110.00 at 0.75: 7.00 is price, 5.50 is rate."""
    cad: dict[str, Any] = {"currency": "CAD", "rate": Decimal("0.70")}
    line = changed(bought(1, "1", "70.00"), unit_price=Decimal(100), goods=changed(usd("100.00"), currency="CAD"))
    one = order(line, **cad)
    came = receipt(one, [ReceiptLine(line=1, quantity=1, unit_price=Decimal(110))], rate=Decimal("0.75"))
    found = made(facts(quote(quoted("1", "120.00", "70.00"))), purchase(one, came))
    assert steps(found) == {"price rise absorbed": "-7.00", "rate moved between order and invoice": "-5.50"}
    before = changed(one, rate=None)  # orders kept before the rate was written down give it by their own figures
    assert steps(made(facts(quote(quoted("1", "120.00", "70.00"))), purchase(before, came))) == steps(found)


def test_charges_on_the_paper_take_the_place_of_fees_and_handling_as_ordered() -> None:
    one = order(bought(1, "1", "20.00", "5.00"), charges=[charge("small-order fee", "5.00")])
    paper = PaperCharge(name="Minimum charge", amount=usd("8.00"))
    found = made(
        facts(quote(quoted("1", "60.00", "20.00", "5.00"))), purchase(one, receipt(one, other_charges=(paper,)))
    )
    assert cost(found, "received") == "28.00"
    assert steps(found) == {"freight and fees above the quote": "-3.00"}


def test_a_line_cancelled_leaves_its_charges_to_the_others() -> None:
    """10.00 of freight over two lines; one is cancelled, the carrier still wants all of it."""
    one = order(bought(1, "1", "30.00", "5.00"), bought(2, "2", "30.00", "5.00"), charges=[charge("freight", "10.00")])
    of = quote(quoted("1", "60.00", "30.00", "5.00"), quoted("2", "60.00", "30.00", "5.00"))
    found = made(facts(of), purchase(one, pieces={2: 0}))
    assert dict(found.lines[0].stages)["ordered"].cost == usd("40.00")
    assert "ordered" not in dict(found.lines[1].stages)


def test_agreed_lines_alone_bear_the_freight_they_have_without_the_add_ons() -> None:
    """14.95 of freight, shared with an add-on in the plan: declined, the agreed part bears it all, as was quoted."""
    part = quoted("1", "177.66", "126.90", "7.00", freight=usd("7.00"), cost_alone=usd("141.85"))
    of = quote(part, quoted("A", "60.00", "30.00", "7.95", freight=usd("7.95")))
    assert cost(made(facts(of, ["1"], no=["A"])), "quoted") == "141.85"
    assert cost(made(facts(of)), "quoted") == "171.85"


def test_under_the_floor_is_the_last_stage_at_its_rounded_limit() -> None:
    """25 % of 60.00 is 15.00: earning that is not under it, a cent less is. Freight alone has no floor."""
    for goods, under in (("45.00", False), ("45.01", True)):
        one = order(bought(1, "1", goods))
        of = quote(quoted("1", "60.00", "30.00"), freight("2", "5.00"))
        found = made(facts(of), purchase(one, receipt(one)), floor="25")
        assert [line.below_floor for line in found.lines] == [under, False]


def test_the_whole_job_with_labour_follows_the_bill() -> None:
    """Two hours quoted, one billed, at 34.00 an hour."""
    hour: dict[str, Any] = {"labour_price": usd("96.00"), "hours": Decimal(1)}
    of = quote(plain("1", parts_price=usd("10.00"), part="P1", **hour), plain("2", **hour))
    of = changed(of, lines=(quoted("1", "50.00", "20.00", **hour), of.lines[1]))
    one = order(bought(1, "1", "20.00"))
    found = made(facts(of, billed=bill(of, of.lines[0])), purchase(one, receipt(one)), hour="34")
    whole = {stage: (str(figure.price.amount), str(figure.cost.amount)) for stage, figure in found.whole}
    assert whole == {"quoted": ("242.00", "88.00"), "ordered": ("242.00", "88.00"), "received": ("146.00", "54.00")}
