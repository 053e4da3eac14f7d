"""Days on which goods do not come as ordered, told from the door to the claim and the margin."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.claims import claim, differences_of
from sourcing.actions.desk import Desk
from sourcing.actions.goods_back import BackStep, going_back, send_back
from sourcing.actions.margins import margins
from sourcing.actions.orders import place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.setup import set_up
from sourcing.basics.money import Money
from sourcing.basics.part_number import PartNumber
from sourcing.basics.problem import Refused
from tests.actions.landed_shop import ordered
from tests.builders import usd
from tests.journeys.belt_job import approved
from tests.journeys.small_shop import SUPPLIERS, desk_at, sheet, shop, take_in
from tests.journeys.test_worked_waits import ordered as belt_and_bar

WEDNESDAY, FRIDAY = datetime(2026, 3, 4, 9, 30), datetime(2026, 3, 6, 9, 0)


def test_a_receipt_for_the_wrong_number(tmp_path: Path) -> None:
    """Another belt is in the parcel: it is put aside and claimed, the job goes on waiting, the right one comes."""
    number = ordered(tmp_path)
    desk = desk_at(tmp_path, WEDNESDAY)
    wrong = {1: PartNumber(printed="XX-4190")}
    first = receive(desk, number, Delivery(paper="D1", freight=Decimal("14.95"), numbers=wrong))
    assert first.open_lines == {1: 1}
    assert first.to_do == (
        "line 1: put XX-4190 aside: it does not count as NW-77120 until the table of equivalent numbers ties the two "
        "and its paper is taken in after that, or it goes back",
    )
    assert claim(desk, number).claimed == usd("126.90")
    assert "received" not in dict(margins(desk, "2026-0001")[0].parts)

    friday = desk_at(tmp_path, FRIDAY)
    send_back(friday, number, BackStep(line=1, kind="goods", step="sent", paper="R-1"))
    second = receive(friday, number, Delivery(paper="D2", freight=Decimal(0)))
    assert not second.open_lines
    send_back(friday, number, BackStep(line=1, kind="goods", step="credited", credit=Decimal("126.90")))
    assert not going_back(friday)
    made = claim(friday, number)
    assert (made.claimed, made.still_claimed) == (usd("126.90"), usd("0.00"))
    # One belt 126.90, two keepers 12.40, freight 14.95: what went back costs the job nothing.
    assert dict(margins(friday, "2026-0001")[0].parts)["received"].cost == usd("154.25")


def test_the_same_receipt_twice(tmp_path: Path) -> None:
    """By somebody else, under another writing: told when and by whom, and nothing counts twice."""
    number = ordered(tmp_path)
    receive(
        desk_at(tmp_path, WEDNESDAY, "Piet Halloway-Rusk"), number, Delivery(paper="DN-88213", freight=Decimal("14.95"))
    )
    desk = desk_at(tmp_path, FRIDAY)
    before = margins(desk, "2026-0001"), differences_of(desk, number)
    with pytest.raises(Refused, match="on 2026-03-04 by Piet Halloway-Rusk"):
        receive(desk, number, Delivery(paper="dn 88213", freight=Decimal("14.95"), quantities={1: 1, 2: 2}))
    assert (margins(desk, "2026-0001"), differences_of(desk, number)) == before


def late_belt(folder: Path) -> tuple[Desk, str, str]:
    """The bar came on Wednesday freight free; the belt comes on 1 April with a freight of its own."""
    job, number = belt_and_bar(folder)
    receive(desk_at(folder, WEDNESDAY), number, Delivery(paper="L-1", freight=Decimal(0), quantities={2: 1}))
    return desk_at(folder, datetime(2026, 4, 1, 9, 0)), job, number


def test_a_backorder_splits_the_order_and_pays_freight_again(tmp_path: Path) -> None:
    """154.80 of goods and 14.95 for the later delivery: 169.75, 56.45 left of 226.20, 24.96 % on price.

    His terms say that a later delivery pays freight, so there is nothing to claim; it is no less a leak.
    """
    desk, job, number = late_belt(tmp_path)
    done = receive(desk, number, Delivery(paper="L-2", freight=Decimal("14.95")))
    assert not done.open_lines and not done.differences
    received = dict(margins(desk, job)[0].parts)["received"]
    assert (received.price, received.cost, received.earned) == (usd("226.20"), usd("169.75"), usd("56.45"))
    assert str(received.margin_percent) == "24.96"


def test_more_freight_than_the_terms_say_for_a_backorder_is_claimed(tmp_path: Path) -> None:
    """19.95 where his terms say 14.95."""
    desk, _, number = late_belt(tmp_path)
    receive(desk, number, Delivery(paper="L-2", freight=Decimal("19.95")))
    made = claim(desk, number)
    assert (made.claimed, made.lines[0].kind) == (usd("5.00"), "freight")


EURO = """
[[supplier]]
supplier = "kesselried"
name = "Kesselried Antriebsteile"
starts_on = 2025-01-01
currency = "EUR"
transit_days = [3, 3]
freight = { rule = "flat", charge = 10.00 }
"""


def in_euro(folder: Path) -> tuple[str, str]:
    """A belt of 100.00 EUR ordered on Monday at 1.10; on Wednesday the euro stands at 1.16. Job and order."""
    desk = shop(folder, datetime(2026, 3, 2, 10, 0))
    (folder / "suppliers.toml").write_text(SUPPLIERS + EURO)
    (folder / "rates.csv").write_text("currency,into,rate,dated\nEUR,USD,1.10,2026-03-01\nEUR,USD,1.16,2026-03-04\n")
    set_up(desk, folder)
    (folder / "kesselried").mkdir()
    sheet(desk, folder, "kesselried", "2026-03-01", ["NW-77120,Norrowby,Belt B88,189.50,100.00,2,In stock"])
    job = take_in(desk, folder, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1')
    approved(desk, job)
    return job, place_orders(desk, [job]).orders[0].number


@pytest.mark.parametrize(
    ("said", "rate", "cost"),
    [
        ({}, "1.16", "127.60"),  # 110.00 EUR at the rate of Wednesday
        ({"dated": datetime(2026, 3, 3).date()}, "1.10", "121.00"),  # the paper is a day older than the new rate
        ({"rate": Decimal("1.17")}, "1.17", "128.70"),  # what the bank took
    ],
)
def test_the_currency_moved_between_order_and_invoice(
    tmp_path: Path, said: dict[str, object], rate: str, cost: str
) -> None:
    """Ordered at 121.00 USD. What the euro did since is told, is in the margin, and is nobody's to pay."""
    job, number = in_euro(tmp_path)
    desk = desk_at(tmp_path, WEDNESDAY)
    done = receive(desk, number, Delivery(paper="RE-5", freight=Decimal("10.00"), **said))  # type: ignore[arg-type]
    assert done.order.landed_total == usd("121.00") and done.receipt.rate == Decimal(rate)
    moved = [one.what for one in done.differences]
    assert moved == ([] if rate == "1.10" else [f"1 EUR is {rate} USD on paper RE-5, 1.10 when ordered"])
    assert differences_of(desk, number).claimed == Money(amount=Decimal("0.00"), currency="EUR")
    assert dict(margins(desk, job)[0].parts)["received"].cost == usd(cost)
