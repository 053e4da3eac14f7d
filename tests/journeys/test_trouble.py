"""Days that go wrong: old prices, unknown freight, small orders, partial and over-deliveries, the same paper twice."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import record
from sourcing.actions.compare import compare
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.margins import margins
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import reprint, write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.setup import set_up
from sourcing.basics.problem import Refused
from tests.builders import usd
from tests.journeys.small_shop import SUPPLIERS, desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import BASKET, MONDAY, paper, yes

BELT = "NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock"


def change_terms(tmp_path: Path, old: str, new: str) -> None:
    """Edit suppliers.toml and set the shop up again."""
    assert old in SUPPLIERS
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS.replace(old, new, 1))
    set_up(desk_at(tmp_path, MONDAY), tmp_path)


def test_an_old_price_is_shown_and_never_ranked(tmp_path: Path) -> None:
    """Prices that held 30 days: on the last day they rank, the day after they are set aside with the reason."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-02-10", [BELT])
    change_terms(tmp_path, "transit_days = [2, 2]", "transit_days = [2, 2]\nprices_hold_days = 30")
    last, after = datetime(2026, 3, 12, 9, 0), datetime(2026, 3, 13, 9, 0)
    assert len(compare(desk_at(tmp_path, last), "BELT", 1, None).ranked) == 1
    found = compare(desk_at(tmp_path, after), "BELT", 1, None)
    assert not found.ranked
    assert found.set_aside[0].reason == "the price is not firm: the sheet of 2026-02-10 held until 2026-03-12"


def test_unknown_freight_is_a_question(tmp_path: Path) -> None:
    """No freight rule: not ranked, not planned, and the question is named."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    change_terms(tmp_path, 'freight = { rule = "flat", charge = 14.95, free_from = 150.00 }', "")
    found = compare(desk, "BELT", 1, None)
    (one,) = found.open_offers
    assert not found.ranked and not found.set_aside
    assert one.reason == "at least 126.90 USD at the door; freight of Stonegarth Trade Parts is not known"


def test_an_order_the_supplier_would_refuse(tmp_path: Path) -> None:
    """A minimum without a fee: alone it is set aside, in a plan it may be part of a larger order."""
    desk = shop(tmp_path, MONDAY)
    keeper, idler = "NW-31207,Norrowby,Keeper,13.50,6.40,50,", "NW-22203,Norrowby,Idler,39.95,22.50,5,"
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", [keeper, idler, BELT])
    change_terms(tmp_path, "minimum_order = 30.00\nsmall_order_fee = 5.00", "minimum_order = 30.00")
    assert "takes no order below 30" in compare(desk, "KEEPER", 1, None).set_aside[0].reason
    number = take_in(desk, tmp_path, BASKET.replace("2026-03-05", "2026-03-20"))
    assert write_quote(desk, number, paper).is_new


def test_partial_and_over_delivery_and_the_same_paper(tmp_path: Path) -> None:
    """One keeper of two, then two more: told each time; the job's received figure waits until every line came."""
    desk = shop(tmp_path, MONDAY)
    rows = [BELT, "NW-31207,Norrowby,Keeper,13.50,6.40,50,", "NW-22203,Norrowby,Idler,39.95,22.50,5,"]
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", rows)
    number = take_in(desk, tmp_path, BASKET)
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    (order,) = place_orders(desk, [number]).orders
    first = receive(desk, order.number, Delivery(paper="D1", freight=Decimal(0), quantities={1: 1, 2: 1}))
    assert first.open_lines == {2: 1, 3: 1}
    assert "received" not in dict(margins(desk, number)[0].parts)
    with pytest.raises(Refused, match="D1"):
        receive(desk, order.number, Delivery(paper="D1", freight=Decimal(0), quantities={3: 1}))
    second = Delivery(paper="D2", freight=Decimal("9.00"), quantities={2: 2, 3: 1}, prices={3: Decimal("23.00")})
    done = receive(desk, order.number, second)
    assert not done.open_lines
    assert [(one.what, one.amount) for one in done.differences] == [
        ("NW-31207: 1 more than ordered", usd("6.40")),
        ("NW-22203: charged 23.00 instead of 22.50 on paper D2", usd("0.50")),
        (
            "freight 9.00 USD on paper D2, 9.00 USD more than agreed "
            "(free from 150.00 USD of goods; this order has 162.20; no more later)",
            usd("9.00"),
        ),
    ]
    # Belt 126.90, two keepers 12.80 (the third lies on the shelf), idler 23.00, freight 9.00 on the second delivery.
    assert dict(margins(desk, number)[0].parts)["received"].cost == usd("171.70")
    with pytest.raises(Refused, match="has come already"):
        receive(desk, order.number, Delivery(paper="D3", freight=Decimal(0)))


def test_the_same_quote_again_makes_no_new_revision(tmp_path: Path) -> None:
    """And an old revision stays to the letter after a new one came."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5')
    first = write_quote(desk, number, paper).frozen
    assert not write_quote(desk_at(tmp_path, datetime(2026, 3, 2, 11, 0)), number, paper).is_new
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", [BELT.replace("126.90", "120.00")])
    assert write_quote(desk, number, paper).frozen.quote.revision == 2
    assert reprint(desk, number, 1) == first


def test_duty_and_a_cheaper_break_do_not_hold_an_approved_line(tmp_path: Path) -> None:
    """The price is on the goods, so duty is no rise; the pieces ordered are those the quote was priced on."""
    desk = shop(tmp_path, MONDAY)
    change_terms(tmp_path, "transit_days = [2, 2]", "transit_days = [2, 2]\nduty_percent = 3.0")
    (tmp_path / "stonegarth").mkdir()
    path = tmp_path / "stonegarth" / "prices-2026-03-01.csv"
    path.write_text("Part Number,Brand,1-4,5+,Stock\nNW-31207,Norrowby,10.00,5.50,50\n")
    import_sheets(desk, [path], Said())
    number = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 4')
    quote = write_quote(desk, number, paper).frozen.quote
    assert quote.lines[0].unit_price == usd("11.00")  # 27.50 for five is less than 40.00 for four
    record(desk, number, yes("agreed"))
    placed = place_orders(desk, [number])
    assert not placed.held and placed.orders[0].lines[0].ordered == 5
