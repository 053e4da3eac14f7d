"""A supplier who put ordered goods off is not taken to have them, wherever his older sheet still says so.

Stonegarth said on 9 March of the belt on order: here 1 April at the earliest. His sheet of 1 March says 2 in stock.
"""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import record
from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.landed import landed_offers
from sourcing.actions.landed_sheet import landed_sheet
from sourcing.actions.order_changes import cancel
from sourcing.actions.orders import place_orders
from sourcing.actions.plan import JOB_WISHES, plan_job
from sourcing.actions.promises import Said, promise
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.choice import Priced, RankWishes
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from tests.journeys.small_shop import desk_at, sheet, take_in
from tests.journeys.test_backorder_slips import SECOND, THIRD, ordered, put_off, slipped
from tests.journeys.test_worked_days import paper, yes
from tests.journeys.test_worked_waits import BAR, BELT, OTHER_BELT, SLIPPED

BY_SHEET = date(2026, 3, 11)
WORDS = "Stonegarth, by telephone said on 2026-03-09 of order {order}: here 2026-04-01 at the earliest"
ANOTHER_BELT = 'ready_by = 2026-03-20\n[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = {pieces}\nhours = 0.5\n'


def belt_of(desk: Desk, supplier: str = "stonegarth", pieces: int = 1) -> Priced:
    """The supplier's belt as a comparison has it."""
    found = compare(desk, "BELT", pieces, None)
    return next(one.priced for one in found.ranked if one.priced.offer.supplier == supplier)


def test_a_comparison_has_his_day_with_his_words(tmp_path: Path) -> None:
    """1 April and not 11 March, with who said it of which order; the other supplier is as before."""
    desk, _, order = slipped(tmp_path)
    his, words = belt_of(desk), WORDS.format(order=order)
    assert (his.arrival.earliest, his.arrival.latest, his.arrival.told) == (THIRD, THIRD, words)
    assert his.arrival.steps[-1] == f"{words}; his sheet of 2026-03-01, which is older, would make it {BY_SHEET}"
    assert not any("in stock" in step for step in his.arrival.steps)
    assert his.warnings == (f"{words}; his sheet is older",)
    assert (belt_of(desk, "pellbrook").arrival.told, belt_of(desk, "pellbrook").warnings) == ("", ())


def test_before_he_said_it_his_sheet_counted(tmp_path: Path) -> None:
    """Asked for a moment before, the comparison is the one of then: what was not said yet puts nothing off."""
    slipped(tmp_path)
    then = belt_of(desk_at(tmp_path, datetime(2026, 3, 2, 10, 0)))
    assert (then.arrival.latest, then.arrival.told) == (date(2026, 3, 4), "")


def test_a_plan_for_another_job_buys_where_it_is_there(tmp_path: Path) -> None:
    """Needed on 18 March: Pellbrook's, though 'in stock' at Stonegarth's by the sheet costs less."""
    desk, _, _ = slipped(tmp_path)
    other = take_in(desk, tmp_path, ANOTHER_BELT.format(pieces=1))
    (order,) = plan_job(desk, other, date(2026, 3, 18)).orders
    assert (order.landed.supplier, order.arrival.latest) == ("pellbrook", date(2026, 3, 12))
    (late,) = plan_job(desk, other, date(2026, 4, 3)).orders
    assert (late.landed.supplier, late.arrival.latest) == ("stonegarth", THIRD)


def test_what_he_put_off_is_not_in_stock(tmp_path: Path) -> None:
    """Asked for what is in stock only, neither a comparison nor a plan takes the belt of him."""
    desk, _, order = slipped(tmp_path)
    found = compare(desk, "BELT", 1, RankWishes(in_stock_only=True))
    assert [one.priced.offer.supplier for one in found.ranked] == ["pellbrook"]
    assert [one.reason.split(";")[0] for one in found.set_aside] == [f"not in stock: {WORDS.format(order=order)}"]
    other = take_in(desk, tmp_path, ANOTHER_BELT.format(pieces=1))
    plan = plan_job(desk, other, date(2026, 4, 3), wishes=changed(JOB_WISHES, in_stock_only=True))
    assert [one.landed.supplier for one in plan.orders] == ["pellbrook"]


def test_a_newer_sheet_takes_over_and_one_of_the_same_day_does_not(tmp_path: Path) -> None:
    """He spoke on the 9th: the sheet dated 9 March may be older than that, the one of the 10th is not."""
    desk, _, _ = slipped(tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-09", [f"{BELT},4,In stock", BAR])
    assert belt_of(desk).arrival.latest == THIRD
    tuesday = desk_at(tmp_path, datetime(2026, 3, 10, 9, 0))
    sheet(tuesday, tmp_path, "stonegarth", "2026-03-10", [f"{BELT},3,In stock", BAR])
    assert (belt_of(tuesday).arrival.latest, belt_of(tuesday).arrival.told) == (date(2026, 3, 12), "")


def test_a_cancelled_line_brings_no_goods_back_to_him(tmp_path: Path) -> None:
    """With the order cancelled his word stands: to order again there is not to have it sooner."""
    desk, _, order = slipped(tmp_path)
    cancel(desk, order, (1,), "too late")
    assert belt_of(desk).arrival.latest == THIRD


def test_what_came_is_waited_for_no_more(tmp_path: Path) -> None:
    """The belt came on 12 March after all: his word is used up, and the sheet is all there is."""
    _, _, order = slipped(tmp_path)
    thursday = desk_at(tmp_path, datetime(2026, 3, 12, 9, 0))
    receive(thursday, order, Delivery(paper="L-2", freight=Decimal(0), quantities={1: 1}))
    assert belt_of(thursday).arrival.told == ""


def test_a_word_that_puts_nothing_off_changes_nothing(tmp_path: Path) -> None:
    """Confirmed for the day worked out: the goods are in stock as the sheet says, today and tomorrow."""
    desk, _, order = ordered(tmp_path)
    put_off(desk, order, latest=date(2026, 3, 4))
    assert (belt_of(desk).arrival.told, belt_of(desk).arrival.latest) == ("", date(2026, 3, 4))
    assert "2 in stock" in " ".join(belt_of(desk).arrival.steps)
    tomorrow = desk_at(tmp_path, datetime(2026, 3, 3, 9, 0))
    assert (belt_of(tomorrow).arrival.told, belt_of(tomorrow).arrival.latest) == ("", date(2026, 3, 5))


def test_his_last_word_holds_and_a_past_one_puts_nothing_off(tmp_path: Path) -> None:
    """18 March after 1 April: the later word is the nearer day. On the 19th neither of the two is counted."""
    desk, number, order = slipped(tmp_path)
    promise(desk, number, Said(kind="parts here", earliest=SECOND, said_by="Stonegarth", order=order, line=1))
    assert belt_of(desk).arrival.latest == SECOND
    after = desk_at(tmp_path, datetime(2026, 3, 19, 9, 0))
    assert belt_of(after).arrival.told == ""


def test_only_the_suppliers_word_of_an_order_counts(tmp_path: Path) -> None:
    """What is said of the job and of no order may be of anybody's goods, and the shop's own reckoning is no word."""
    desk, number, order = ordered(tmp_path)
    promise(desk, number, Said(kind="parts here", earliest=THIRD, said_by="Stonegarth"))
    shop_says = Said(kind="parts here", earliest=THIRD, said_by="Wickenby Yard Machine Repair", order=order)
    promise(desk, number, shop_says)
    assert belt_of(desk).arrival.told == ""


def test_the_landed_views_say_the_same(tmp_path: Path) -> None:
    """One offer looked at by itself, and the whole sheet."""
    desk, _, _ = slipped(tmp_path)
    (one,) = landed_offers(desk, "stonegarth", "NW-77120")
    assert one.arrival is not None and one.arrival.latest == THIRD
    rows = {row.supplier_number: row.latest for row in landed_sheet(desk, "stonegarth").rows}
    assert rows == {"NW-77120": THIRD, "NW-52626": BY_SHEET}


def test_a_sheet_without_a_day_gets_his_for_as_many_as_he_spoke_of(tmp_path: Path) -> None:
    """Of two he has said nothing: then no day is known."""
    desk, _, _ = slipped(tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-05", [f"{BELT},0,Backorder", BAR])
    assert belt_of(desk).arrival.latest == THIRD
    (two,) = landed_offers(desk, "stonegarth", "NW-77120", 2)
    assert two.arrival is not None and two.arrival.latest is None
    assert two.arrival.told.endswith("; of 2 pieces he has said nothing")


def test_another_job_is_neither_quoted_nor_ordered_by_the_old_sheet(tmp_path: Path) -> None:
    """Approved on the 2nd by the sheet's day, to be ordered on the 9th: held, for it can't be here before 1 April."""
    early = desk_at(tmp_path, ordered(tmp_path)[0].at)
    other = take_in(early, tmp_path, ANOTHER_BELT.format(pieces=1).replace("03-20", "03-06"))
    write_quote(early, other, paper, date(2026, 3, 5))
    record(early, other, yes("agreed"))
    monday = desk_at(tmp_path, SLIPPED)
    put_off(monday, "PO-2026-0001", earliest=THIRD)
    with pytest.raises(Refused, match="it would be here by 2026-04-01, approved was by 2026-03-05"):
        place_orders(monday, [other])


def test_his_word_is_not_for_the_customer(tmp_path: Path) -> None:
    """The quote counts with 1 April; whose order it was said of stands on no paper of another customer."""
    desk, _, order = slipped(tmp_path)
    sheet(
        desk, tmp_path, "pellbrook", "2026-03-08", [OTHER_BELT.replace("In stock", "Backorder").replace(",2,", ",0,")]
    )
    other = take_in(desk, tmp_path, ANOTHER_BELT.format(pieces=1))
    written = write_quote(desk, other, paper)
    assert any(order in words for words in written.warnings)
    assert order not in written.frozen.paper and "Stonegarth" not in written.frozen.paper
