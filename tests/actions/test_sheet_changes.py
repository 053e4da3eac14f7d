"""Which two sheets of a supplier are compared, and what is said where there are not two."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.changes import sheet_changes
from sourcing.actions.desk import Desk, open_desk
from sourcing.basics.offer import PriceBreak
from sourcing.basics.problem import Refused
from tests.actions.kept_sheets import keep
from tests.storage.kept_values import offer_row

JANUARY, FEBRUARY, MARCH = date(2026, 1, 5), date(2026, 2, 2), date(2026, 3, 2)


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk at a database that holds nothing."""
    return open_desk(str(tmp_path / "shop.db"), datetime(2026, 3, 9, 9, 0), "Oona Brandeth")


def priced(row: int, number: str, *prices: str) -> dict[str, object]:
    """A row with a price from 1, from 10 and so on."""
    breaks = (PriceBreak(from_quantity=10**at, price=Decimal(each)) for at, each in enumerate(prices))
    return offer_row(row, number, breaks=tuple(breaks))


def test_the_newest_sheet_is_compared_with_the_one_before_it_by_date(desk: Desk) -> None:
    """Imported in another order than dated."""
    march = keep(desk, "larkmoor", MARCH, priced(2, "A", "12.00", "11.00"), priced(3, "C", "1"))
    january = keep(desk, "larkmoor", JANUARY, priced(2, "A", "9.00"), priced(3, "B", "1"))
    february = keep(desk, "larkmoor", FEBRUARY, priced(2, "A", "10.00", "10.00"), priced(3, "B", "1"))
    keep(desk, "pellbrook", MARCH, priced(2, "A", "99.00"))
    found = sheet_changes(desk, "larkmoor")
    assert found.now and found.before
    assert (found.supplier, found.now.sheet, found.before.sheet) == ("larkmoor", march.sheet, february.sheet)
    (rose,) = found.changed
    assert [(one.from_quantity, one.before, one.now, str(one.percent)) for one in rose.prices] == [
        (1, Decimal(10), Decimal(12), "20.0"),
        (10, Decimal(10), Decimal(11), "10.0"),
    ]
    assert [one.supplier_number for one in (*found.vanished, *found.appeared)] == ["B", "C"]
    assert found.adds_up
    older = sheet_changes(desk, "larkmoor", sheet=february.sheet)
    assert older.before and older.before.sheet == january.sheet
    far = sheet_changes(desk, "larkmoor", against=january.sheet)
    assert (far.before, far.now) == (older.before, found.now)
    assert str(far.changed[0].headline and far.changed[0].headline.percent) == "33.3"


def test_two_sheets_of_one_day_count_in_the_order_imported(desk: Desk) -> None:
    first = keep(desk, "larkmoor", MARCH, priced(2, "A", "10.00"))
    second = keep(desk, "larkmoor", MARCH, priced(2, "A", "11.00"))
    found = sheet_changes(desk, "larkmoor")
    assert found.before and found.now and (found.before.sheet, found.now.sheet) == (first.sheet, second.sheet)


def test_what_can_not_be_compared_is_said_in_a_sentence(desk: Desk) -> None:
    only = keep(desk, "larkmoor", MARCH, priced(2, "A", "10.00"))
    other = keep(desk, "pellbrook", MARCH, priced(2, "A", "10.00"))
    with pytest.raises(Refused, match="larkmoor has no sheet before the one of 2026-03-02; import an older"):
        sheet_changes(desk, "larkmoor")
    with pytest.raises(Refused, match=r"there is no sheet of 'larkmor'; .* Perhaps: larkmoor"):
        sheet_changes(desk, "larkmor")
    with pytest.raises(Refused, match=f"larkmoor has no sheet number {other.sheet}"):
        sheet_changes(desk, "larkmoor", sheet=only.sheet, against=other.sheet)
