"""Prices decided on after an alarm, and lines that stand on an order: what holds in the next revision."""

from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.alarm import Decision, Way
from sourcing.basics.money import Money
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.value import changed
from sourcing.quoting.held_prices import held_price
from sourcing.quoting.pricing import UnitPrice
from tests.builders import door, flat, offer, usd
from tests.quoting.quoted import bought, job, need, quote

BELT = offer("stonegarth", "NW-77120", "126.90", list_price=Decimal("189.50"))
RISEN = offer("stonegarth", "NW-77120", "139.59", list_price=Decimal("208.45"))
KEEPER = offer("stonegarth", "NW-31207", "6.40")
STONEGARTH = {"stonegarth": door("stonegarth", freight=flat("14.95", "150.00"))}
NOW = UnitPrice(each=usd("195.43"), rule="139.59 x 1.40", before_cap=usd("195.43"))


def decision(way: Way, price: str | None = "177.66", up_to: str | None = "139.59", label: str = "1") -> Decision:
    """Greta Lindqvare's word of 12 March."""
    return Decision(
        job="2026-0001",
        revision=1,
        label=label,
        way=way,
        at=datetime(2026, 3, 12, 13, 0),
        who="Greta Lindqvare",
        held_price=usd(price) if price else None,
        up_to_cost=usd(up_to) if up_to else None,
        landed_cost=usd("154.54"),
    )


def test_a_held_price_stays_and_says_what_the_bands_would_give() -> None:
    """177.66 approved, 195.43 by the bands on the new cost: held, and the owner is told."""
    for way in ("hold", "switch"):
        found = held_price(decision(way), NOW, usd("139.59"))
        assert found.held and found.price.each == usd("177.66")
        assert found.price.rule == (
            "177.66, held as Greta Lindqvare decided on 2026-03-12 (by the bands it would be 195.43: 139.59 x 1.40)"
        )
        assert found.price.warnings == (
            "the price of 177.66 USD is held; by the bands it would be 195.43: 139.59 x 1.40",
        )


def test_a_cent_dearer_than_decided_is_a_new_price_and_is_told() -> None:
    """The decision covers 139.59; at 139.60 the bands' price is asked."""
    found = held_price(decision("hold"), NOW, usd("139.60"))
    assert not found.held and found.price.each == usd("195.43")
    assert found.price.warnings == (
        "the price of 177.66 USD was held up to a cost of 139.59 USD; it costs 139.60 USD now, so the price is new",
    )


def test_no_decision_and_one_to_ask_hold_nothing() -> None:
    """The bands' price as it is: what was to be asked is asked on what the part costs now."""
    for none in (None, decision("ask", "190.00"), decision("hold", None)):
        found = held_price(none, NOW, usd("139.59"))
        assert found.price is NOW and not found.held


def test_the_quote_holds_the_price_on_the_new_cost() -> None:
    """Line and total as approved, 357.29; the cost behind it is the new one, never the old."""
    wanted = job([need("Belt", "BELT", hours=Decimal("1.5"))])
    what = bought({"1": RISEN}, {"1": 1}, STONEGARTH)
    assert quote(wanted, what).agreed_total.total == usd("376.31")
    held = quote(wanted, changed(what, decisions={"1": decision("hold")}))
    assert held.agreed_total.total == usd("357.29")
    behind = held.lines[0].behind
    assert behind is not None and behind.held and behind.cost == usd("154.54") and behind.unit_cost == usd("139.59")


def settled_by(before: Quote, *labels: str) -> dict[str, QuoteLine]:
    """Those lines of a revision, as ordered."""
    return {label: line for label in labels if (line := before.line(label)) is not None}


def freight_of(before: Quote, label: str) -> tuple[QuoteLine, ...]:
    """A freight line of a revision."""
    line = before.line(label)
    assert line is not None and line.freight_price.amount
    return (line,)


def test_a_line_on_an_order_keeps_part_price_and_freight_and_only_its_work_may_change() -> None:
    """The sheet rose to 139.59 after the belt was ordered: 177.66 and freight 14.95 stay, half an hour is added."""
    first = quote(job([need("Belt", "BELT", hours=Decimal("1.5"))]), bought({"1": BELT}, {"1": 1}, STONEGARTH))
    what = bought(
        {}, {}, settled=settled_by(first, "1"), kept_freight=freight_of(first, "2"), kept_arrives=first.arrives
    )
    second = quote(job([need("Belt", "BELT", hours=Decimal(2))]), what, revision=2)
    assert [(one.label, one.title, one.price) for one in second.lines] == [
        ("1", "Belt", usd("369.66")),  # 177.66 + 192.00
        ("2", "Inbound freight", usd("14.95")),
    ]
    assert second.lines[0].behind == first.lines[0].behind and second.arrives == first.arrives


def test_freight_of_a_further_order_has_a_line_of_its_own() -> None:
    """Belt and keepers are ordered; a bar found later is sent for 10.00, and only the bar hangs on that line."""
    offers = {"1": BELT, "A": offer("larkmoor", "KP-1", "6.40")}
    doors = {**STONEGARTH, "larkmoor": door("larkmoor", freight=flat("8.00"))}
    first = quote(job([need("Belt", "BELT")], [need("Keepers", "KEEPER")]), bought(offers, {"1": 1, "A": 1}, doors))
    assert [one.label for one in first.lines] == ["1", "2", "A", "B"]
    kept = (*freight_of(first, "2"), *freight_of(first, "B"))
    bar = offer("pellbrook", "BAR-9", "64.00")
    what = bought({"B": bar}, {"B": 1}, settled=settled_by(first, "1", "A"), kept_freight=kept)
    extras = [need("Keepers", "KEEPER"), need("Bar", "BAR")]
    second = quote(job([need("Belt", "BELT")], extras), what, revision=2)
    assert [(one.label, str(one.freight_price.amount), one.freight_for) for one in second.lines] == [
        ("1", "0.00", ()),
        ("2", "14.95", ()),
        ("A", "0.00", ()),
        ("B", "0.00", ()),
        ("C", "8.00", ("A",)),
        ("D", "10.00", ("B",)),
    ]


def test_a_price_asked_anew_after_ordering_is_asked_at_what_was_decided() -> None:
    """The supplier confirmed 139.59: 195.43 is to be asked, on a cost of 154.54. Held: 177.66 on the same cost."""
    first = quote(job([need("Belt", "BELT")]), bought({"1": BELT}, {"1": 1}, STONEGARTH))
    asked = bought({}, {}, settled=settled_by(first, "1"), decisions={"1": decision("ask", "195.43")})
    second = quote(job([need("Belt", "BELT")]), asked, revision=2)
    line = second.lines[0]
    assert line.unit_price == line.parts_price == usd("195.43")
    assert line.behind is not None and not line.behind.held
    assert (line.behind.unit_cost, line.behind.cost, line.behind.cost_alone) == (
        usd("139.59"),
        usd("154.54"),
        usd("154.54"),
    )
    # She said no to 195.43; the price approved first is held after all.
    held = bought({}, {}, settled=settled_by(second, "1"), decisions={"1": decision("hold")})
    line = quote(job([need("Belt", "BELT")]), held, revision=3).lines[0]
    assert line.behind is not None and line.behind.held and line.behind.cost == usd("154.54")
    assert line.unit_price == usd("177.66")


def test_a_switch_not_carried_out_leaves_what_is_ordered() -> None:
    """The order stands until the customer agreed: cost and supplier behind the line are those of the order."""
    first = quote(job([need("Belt", "BELT")]), bought({"1": BELT}, {"1": 1}, STONEGARTH))
    wanted = bought({}, {}, settled=settled_by(first, "1"), decisions={"1": decision("switch", up_to="131.00")})
    line = quote(job([need("Belt", "BELT")]), wanted, revision=2).lines[0]
    assert line.behind is not None and (line.behind.supplier, line.behind.cost) == ("stonegarth", usd("141.85"))
    assert (line.number, line.unit_price) == ("NW-77120", usd("177.66"))


def test_days_of_what_is_ordered_count_beside_the_plans() -> None:
    """All parts are here when the last of both is; one day not known makes the whole not known."""
    first = quote(job([need("Belt", "BELT")]), bought({"1": BELT}, {"1": 1}, STONEGARTH))
    late = (date(2026, 3, 20), date(2026, 4, 1))
    what = bought({"2": KEEPER}, {"2": 1}, settled=settled_by(first, "1"), kept_arrives=late)
    wanted = job([need("Belt", "BELT"), need("Keeper", "KEEPER")])
    assert quote(wanted, what).arrives == late
    sooner = quote(wanted, changed(what, kept_arrives=(date(2026, 3, 4), date(2026, 3, 5)))).arrives
    assert sooner == (date(2026, 3, 6), date(2026, 3, 6))
    assert isinstance(first.lines[0].unit_price, Money)
