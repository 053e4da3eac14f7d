"""Freight billed at cost is what the orders of the lines approved cost, on quote, answer and bill. Worked by hand.

Stonegarth: 14.95, free from 150.00. Keeper 15.80 x 2.00 = 31.60, belt 139.00 x 1.40 = 194.60; tax 7 % of parts and
freight. Keeper alone: 31.60 + 14.95 = 46.55, tax 3.26, 49.81. Both: 15.80 + 139.00 = 154.80 goes free: 226.20, tax
15.83, 242.03.
"""

from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import Spoken, record, standing
from sourcing.actions.bill import look_at_bill, write_bill
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.margins import margins
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import reprint, write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.bill import LeftOut
from sourcing.documents.bill_paper import bill_html
from sourcing.documents.quote_paper import quote_html, quote_text
from sourcing.documents.quote_words import freight_words
from tests.actions.order_shop import orders_shop, say_yes
from tests.builders import usd
from tests.documents.html_reader import Page
from tests.journeys.small_shop import job_file, take_in

KEEPER = '[[agreed]]\ntitle = "Keeper"\npart = "KEEPER"\nquantity = 1\nhours = 0\n'
BELT = '[[add_ons]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 0\n'
IDLER = '[[add_ons]]\ntitle = "Idler"\npart = "IDLER"\nquantity = 1\nhours = 0\n'


def quoted(folder: Path) -> tuple[Desk, str]:
    """The desk, and a job with the keeper agreed and the belt as an add-on."""
    desk = orders_shop(folder)
    number = take_in(desk, folder, KEEPER + BELT)
    write_quote(desk, number, quote_html)
    return desk, number


def here(desk: Desk, number: str, freight: str) -> None:
    """The approved parts ordered, and all of them here."""
    placed = place_orders(desk, [number])
    receive(desk, placed.orders[0].number, Delivery(paper="D-1", freight=Decimal(freight)))


def test_everything_is_quoted_with_the_freight_that_everything_has(tmp_path: Path) -> None:
    """The extra line adds 242.03 - 49.81 = 192.22; the paper, page and text say when freight falls away."""
    desk, number = quoted(tmp_path)
    quote = reprint(desk, number, None).quote
    assert quote.agreed_total.total == usd("49.81")
    assert quote.everything_total.total == usd("242.03")
    assert [(one.label, one.price) for one in quote.add_on_prices] == [("A", usd("192.22"))]
    words = "Freight is charged at what it costs, and this is the most. With a yes to lines 1 and A it comes to $0.00."
    assert words in Page(quote_html(quote)).text
    assert words in " ".join(quote_text(quote).split())
    assert [freight_words(one, ("1", "2", "A"), "en_US") for one in quote.lines] == ["", words, ""]


@pytest.mark.parametrize(
    ("yes", "freight", "total"), [(("1", "2"), "14.95", "49.81"), (("1", "2", "A"), "0", "242.03")]
)
def test_told_and_billed_is_what_the_approved_cost(
    tmp_path: Path, yes: tuple[str, ...], freight: str, total: str
) -> None:
    desk, number = quoted(tmp_path)
    record(desk, number, Spoken(yes=yes, no=("A",) if "A" not in yes else (), who="Maud Tilbrook", how="telephone"))
    assert standing(desk, number).approved.total == usd(total)
    here(desk, number, freight)
    bill = write_bill(desk, number, bill_html).bill
    assert bill.total.total == usd(total)
    assert bill.lines[1].freight_price == usd(freight)


def test_freight_stays_as_it_came_to_where_an_ordered_line_is_not_done(tmp_path: Path) -> None:
    """Both were ordered, so freight was free; the belt is left out: 31.60 and 2.21 of tax."""
    desk, number = quoted(tmp_path)
    say_yes(desk, number, "1", "2", "A")
    here(desk, number, "0")
    assert look_at_bill(desk, number, LeftOut(labels=("A",), words="not needed")).total.total == usd("33.81")


def test_the_margin_has_no_freight_that_nobody_paid_and_no_discount(tmp_path: Path) -> None:
    """226.20 - 154.80 = 71.40, as quoted, ordered, received and billed."""
    desk, number = quoted(tmp_path)
    say_yes(desk, number, "1", "2", "A")
    here(desk, number, "0")
    write_bill(desk, number, bill_html)
    (found,) = margins(desk, number)
    assert [one.earned for _, one in found.parts] == [usd("71.40")] * 3
    assert not found.leaks


def test_a_further_extra_part_leaves_the_freight_of_what_is_ordered_as_it_came(tmp_path: Path) -> None:
    """Revision 2 has the idler beside: 22.50 x 1.70 = 38.25, alone from Stonegarth with 14.95 freight of its own."""
    desk, number = quoted(tmp_path)
    say_yes(desk, number, "1", "2", "A")
    here(desk, number, "0")
    change_job_from(desk, number, job_file(tmp_path, KEEPER + BELT + IDLER))
    quote = write_quote(desk, number, quote_html).frozen.quote
    assert standing(desk, number).approved.total == usd("242.03")
    assert [(one.label, one.price) for one in quote.lines if one.freight_price.amount] == [
        ("2", usd("14.95")),
        ("C", usd("14.95")),
    ]
    assert dict(quote.everything_total.sums)["freight"] == usd("14.95")
