"""A comparison of last month comes out as it came out then, whatever sheets were taken in since and in what order."""

import json
from collections.abc import Sequence
from datetime import datetime
from itertools import permutations
from pathlib import Path

import pytest

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.import_sheets import Said, import_sheets, sheets, undo_import
from sourcing.actions.plan import plan_job
from sourcing.basics.choice import Comparison
from sourcing.basics.problem import Refused
from sourcing.basics.value import to_json
from tests.cli.running import sourcing
from tests.journeys.small_shop import desk_at, sheet, shop, take_in

JANUARY, FEBRUARY, MARCH, APRIL = (datetime(2026, month, 10, 9, 0) for month in (1, 2, 3, 4))
DAYS = {"stonegarth": ("2026-01-05", "2026-02-02", "2026-03-02"), "pellbrook": ("2026-01-08", "2026-03-02")}
PRICES = {"2026-01-05": "120.00", "2026-02-02": "126.90", "2026-03-02": "131.00", "2026-01-08": "125.00"}
NUMBERS = {"stonegarth": "NW-77120,Norrowby", "pellbrook": "OV-20417,Ostrevik"}
Sheet = tuple[str, str]
EVERY: Sequence[Sheet] = [(supplier, day) for supplier, days in DAYS.items() for day in days]


def take(desk: Desk, folder: Path, one: Sheet) -> None:
    """Take in the sheet of that supplier and day: the belt, and a number near the belt's that only he has."""
    supplier, day = one
    near = "NW-77121,Norrowby" if day == "2026-03-02" else "NW-77129,Norrowby"
    rows = [f"{NUMBERS[supplier]},Belt B88,189.50,{PRICES[day]},2,", f"{near},Belt B89,1.00,0.90,2,"]
    sheet(desk, folder, supplier, day, rows)


def prices(found: Comparison) -> dict[str, str]:
    """What each supplier's sheet asked that day."""
    return {one.priced.offer.supplier: str(one.priced.offer.breaks[0].price) for one in found.ranked}


def without_sheet_numbers(found: object) -> object:
    """The whole comparison but for the numbers sheets have in the database, which follow the order of import."""
    if isinstance(found, dict):
        return {name: without_sheet_numbers(value) for name, value in found.items() if name != "sheet"}
    return [without_sheet_numbers(one) for one in found] if isinstance(found, list) else found


def test_each_day_has_the_prices_of_its_own_sheets(tmp_path: Path) -> None:
    desk = shop(tmp_path, APRIL)
    for one in EVERY:
        take(desk, tmp_path, one)
    found = {at: prices(compare(desk_at(tmp_path, at), "BELT", 1)) for at in (JANUARY, FEBRUARY, MARCH, APRIL)}
    assert found == {
        JANUARY: {"stonegarth": "120.00", "pellbrook": "125.00"},
        FEBRUARY: {"stonegarth": "126.90", "pellbrook": "125.00"},
        MARCH: {"stonegarth": "131.00", "pellbrook": "131.00"},
        APRIL: {"stonegarth": "131.00", "pellbrook": "131.00"},
    }


def test_a_past_comparison_is_to_the_letter_what_it_was_then(tmp_path: Path) -> None:
    """Asked on the day, and again after two more months of sheets: ranking, reasons, look-alikes, all of it."""
    desk = shop(tmp_path, JANUARY)
    for one in (("stonegarth", "2026-01-05"), ("pellbrook", "2026-01-08")):
        take(desk, tmp_path, one)
    then = compare(desk, "BELT", 1)
    assert [one.offer.supplier_number for one in then.candidates] == ["NW-77129", "NW-77129"]
    for one in (("stonegarth", "2026-02-02"), ("stonegarth", "2026-03-02"), ("pellbrook", "2026-03-02")):
        take(desk_at(tmp_path, APRIL), tmp_path, one)
    assert compare(desk_at(tmp_path, JANUARY), "BELT", 1) == then
    now = compare(desk_at(tmp_path, APRIL), "BELT", 1)
    assert [one.offer.supplier_number for one in now.candidates] == ["NW-77121", "NW-77121"]


@pytest.mark.parametrize("order", list(permutations(EVERY))[::17])
def test_the_order_of_import_does_not_matter(tmp_path: Path, order: Sequence[Sheet]) -> None:
    straight, mixed = tmp_path / "straight", tmp_path / "mixed"
    for folder, sequence in ((straight, EVERY), (mixed, order)):
        folder.mkdir()
        desk = shop(folder, APRIL)
        for one in sequence:
            take(desk, folder, one)
    for at in (JANUARY, FEBRUARY, APRIL):
        both = (json.loads(to_json(compare(desk_at(folder, at), "BELT", 1))) for folder in (straight, mixed))
        then, again = map(without_sheet_numbers, both)
        assert then == again


def test_a_sheet_of_a_day_to_come_does_not_count_yet_and_is_said(tmp_path: Path) -> None:
    """April's prices taken in on 10 March: until 1 April the March sheet counts, from then on April's."""
    desk = shop(tmp_path, MARCH)
    take(desk, tmp_path, ("stonegarth", "2026-03-02"))
    row = "NW-77120,Norrowby,Belt B88,189.50,140.00,2,"
    sheet(desk, tmp_path, "stonegarth", "2026-04-01", [row])
    assert [(one.is_newest, one.not_yet) for one in sheets(desk)] == [(True, False), (False, True)]
    assert prices(compare(desk, "BELT", 1)) == {"stonegarth": "131.00"}
    last, first = datetime(2026, 3, 31, 23, 59), datetime(2026, 4, 1, 0, 0)
    assert prices(compare(desk_at(tmp_path, last), "BELT", 1)) == {"stonegarth": "131.00"}
    assert prices(compare(desk_at(tmp_path, first), "BELT", 1)) == {"stonegarth": "140.00"}
    assert [(one.is_newest, one.not_yet) for one in sheets(desk_at(tmp_path, first))] == [(False, False), (True, False)]


def test_a_sheet_taken_out_again_counts_on_no_day(tmp_path: Path) -> None:
    desk = shop(tmp_path, APRIL)
    for one in EVERY:
        take(desk, tmp_path, one)
    undo_import(desk, 2)  # Stonegarth's of February
    assert prices(compare(desk_at(tmp_path, FEBRUARY), "BELT", 1))["stonegarth"] == "120.00"
    assert prices(compare(desk, "BELT", 1))["stonegarth"] == "131.00"


def test_a_suppliers_own_number_is_known_on_the_days_it_stood_on_his_sheet(tmp_path: Path) -> None:
    """SG-1 in January, SG-2 from February on, for the same maker's number."""
    desk = shop(tmp_path, APRIL)
    for day, own in (("2026-02-02", "SG-2"), ("2026-01-05", "SG-1")):
        path = tmp_path / "stonegarth" / f"prices-{day}.csv"
        path.parent.mkdir(exist_ok=True)
        path.write_text(f"Our Part No,Mfr Part #,Brand,Description,Dealer Net\n{own},NW-77120,Norrowby,Belt,120.00\n")
        import_sheets(desk, [path], Said())
    assert compare(desk_at(tmp_path, JANUARY), "SG-1", 1).our_part == "BELT"
    with pytest.raises(Refused):
        compare(desk_at(tmp_path, JANUARY), "SG-2", 1)
    assert compare(desk, "SG-2", 1).our_part == "BELT"
    with pytest.raises(Refused):
        compare(desk, "SG-1", 1)


def test_before_the_first_sheet_nothing_is_offered(tmp_path: Path) -> None:
    desk = shop(tmp_path, APRIL)
    for one in EVERY:
        take(desk, tmp_path, one)
    found = compare(desk_at(tmp_path, datetime(2026, 1, 2, 9, 0)), "BELT", 1)
    assert (found.ranked, found.set_aside, found.candidates) == ((), (), ())


def test_a_plan_of_a_past_day_buys_at_that_days_prices(tmp_path: Path) -> None:
    desk = shop(tmp_path, APRIL)
    for one in EVERY:
        take(desk, tmp_path, one)
    job = take_in(desk_at(tmp_path, JANUARY), tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\n')
    for at, price in ((JANUARY, "120.00"), (FEBRUARY, "125.00"), (MARCH, "131.00")):
        found = plan_job(desk_at(tmp_path, at), job, None)
        bought = [str(item.item.offer.breaks[0].price) for order in found.orders for item in order.landed.items]
        assert bought == [price]


def test_the_command_line_asks_of_a_past_day_and_says_what_does_not_count_yet(tmp_path: Path) -> None:
    desk = shop(tmp_path, APRIL)
    for one in EVERY:
        take(desk, tmp_path, one)
    _, text, _ = sourcing(tmp_path, "compare", "BELT", "--at", "2026-01-10T09:00")
    assert "120.00" in text and "126.90" not in text and "131.00" not in text
    _, listed, _ = sourcing(tmp_path, "sheets", at="2026-01-10")
    words = {line.split()[2]: line for line in listed.splitlines() if line.strip()[:1].isdigit()}
    assert "yes" in words["2026-01-05"] and "not yet" in words["2026-02-02"]
