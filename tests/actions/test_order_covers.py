"""What an order is placed on: the number approved, and decisions about the very work of the line."""

from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import standing
from sourcing.actions.decide import Agreed, decide
from sourcing.actions.desk import Desk
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import look_at_orders, place_orders
from sourcing.basics.problem import Refused
from tests.actions.order_shop import MONDAY, approved, lines, orders_shop, quote_again, say_yes
from tests.builders import usd
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in

TWO_COLUMNS = "Part Number,Brand,Mfr Part No,Description,List,Dealer Net,Stock,Lead Time"
NOON = datetime(2026, 3, 2, 9, 20)
AGREED = Agreed(who="Maud Tilbrook", how="telephone", contact="555-0142")


def two_columns(desk: Desk, folder: Path, day: str, *rows: str) -> None:
    """A sheet of Stonegarth's with a number of his own beside the maker's."""
    (folder / "stonegarth").mkdir(exist_ok=True)
    path = folder / "stonegarth" / f"prices-{day}.csv"
    path.write_text("\n".join([TWO_COLUMNS, *rows]) + "\n")
    import_sheets(desk, [path], Said())


def test_the_suppliers_number_with_another_makers_behind_it_is_held(tmp_path: Path) -> None:
    """SG-100 was a Norrowby belt and is an Ostrevik one: both fit, and her yes is for the first. Alarm and order agree;
    with her yes to the other it goes."""
    desk = shop(tmp_path, MONDAY)
    two_columns(desk, tmp_path, "2026-03-01", "SG-100,Norrowby,NW-77120,Belt B88,189.50,100.00,5,In stock")
    job = approved(desk, tmp_path, ("BELT", 1))
    desk = desk_at(tmp_path, NOON)
    two_columns(desk, tmp_path, "2026-03-02", "SG-100,Ostrevik,OV-20417,Belt B88,189.50,100.00,5,In stock")
    assert [[one.what for one in alarm.differs] for alarm in alarms(desk, job)] == [["number"]]
    with pytest.raises(Refused) as caught:
        place_orders(desk, [job])
    assert "approved was Norrowby NW-77120, now the number is Ostrevik OV-20417" in caught.value.problems[0].sentence()
    decide(desk, job, "1", "hold", agreed=AGREED)
    (order,) = place_orders(desk, [job]).orders
    assert [(line.supplier_number, line.maker_number) for line in order.lines] == [("SG-100", "OV-20417")]


def test_the_number_written_otherwise_is_the_same(tmp_path: Path) -> None:
    """'sg100' and 'nw 77120' on the next sheet are the number approved."""
    desk = shop(tmp_path, MONDAY)
    two_columns(desk, tmp_path, "2026-03-01", "SG-100,Norrowby,NW-77120,Belt B88,189.50,100.00,5,In stock")
    job = approved(desk, tmp_path, ("BELT", 1))
    two_columns(desk, tmp_path, "2026-03-02", "sg100,Norrowby,nw 77120,Belt B88,189.50,100.00,5,In stock")
    assert alarms(desk, job) == ()
    assert [line.maker_number for line in place_orders(desk, [job]).orders[0].lines] == ["nw 77120"]


def test_a_yes_to_a_later_day_follows_its_work_and_not_its_label(tmp_path: Path) -> None:
    """She waits for the belt. Once the job file names the keepers first, it is still the belt she waits for."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 2))
    desk = desk_at(tmp_path, NOON)
    late = [
        "NW-77120,Norrowby,Belt B88,214.00,139.00,0,10 days",
        "NW-31207,Norrowby,Keeper,33.00,15.80,0,10 days",
    ]
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", late)
    decide(desk, job, "1", "hold", "she can wait for the belt", AGREED)
    change_job_from(desk, job, job_file(tmp_path, lines(("KEEPER", 2), ("BELT", 1))))
    quote_again(desk, job)
    seen = look_at_orders(desk, [job])
    assert [(line.label, line.part) for order in seen.orders for line in order.lines] == [("2", "BELT")]
    assert len(seen.held) == 1 and "line 1" in seen.held[0] and "approved was by 2026-03-04" in seen.held[0]
    assert [(alarm.label, alarm.title) for alarm in alarms(desk, job)] == [("1", "KEEPER")]


def test_a_price_held_for_one_line_is_not_held_for_another_of_the_same_part(tmp_path: Path) -> None:
    """The same part in two lines: the decision stays with the title it was taken for, also in the next quote."""
    desk = orders_shop(tmp_path)
    left, right = (f'[[agreed]]\ntitle = "{title}"\npart = "KEEPER"\nquantity = 1\n' for title in ("Left", "Right"))
    job = take_in(desk, tmp_path, left + right)
    quote_again(desk, job)
    say_yes(desk, job)
    desk = desk_at(tmp_path, NOON)
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["NW-31207,Norrowby,Keeper,43.00,22.80,50,In stock"])
    decide(desk, job, "1", "hold", "ours to bear")
    change_job_from(desk, job, job_file(tmp_path, right + left))
    quote_again(desk, job)
    found = {line.title: line.unit_price for line in standing(desk, job).quote.lines}
    assert (found["Left"], found["Right"]) == (usd("31.60"), usd("38.76"))
    seen = look_at_orders(desk, [job])
    assert [(line.label, line.part) for order in seen.orders for line in order.lines] == [("2", "KEEPER")]
