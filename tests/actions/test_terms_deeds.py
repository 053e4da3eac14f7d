"""Terms changed at the desk: from a day on, told old and new, the past only with a reason, and all of it kept."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.setup import set_up
from sourcing.actions.terms import every_suppliers_terms, set_terms, suppliers_terms, take_terms, withdraw_terms
from sourcing.basics.problem import Refused
from sourcing.basics.terms import Calendar
from tests.actions.terms_shop import SUPPLIERS, desk_at, shop

AT = datetime(2026, 1, 13, 10, 0)
FEBRUARY, DECEMBER, TODAY = date(2026, 2, 1), date(2025, 12, 1), AT.date()
NEW_SUPPLIER = """
[[supplier]]
supplier = "tavishollow"
name = "Tavishollow Engine Supply"
starts_on = 2025-10-01
currency = "USD"
"""


def test_a_change_makes_a_version_that_begins_on_its_day(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    done = set_terms(desk, "pellbrook", {"minimum_order": "35.00", "freight.free_from": "250.00"}, FEBRUARY)
    assert [one.words() for one in done.changes] == [
        "freight.free_from not set -> 250.00",
        "minimum_order 30.00 -> 35.00",
    ]
    found = suppliers_terms(desk, "pellbrook", FEBRUARY)
    assert found.holds and found.holds.minimum_order == 35
    before = suppliers_terms(desk, "pellbrook", date(2026, 1, 31))
    assert before.holds and before.holds.minimum_order == 30 and before.holds.freight
    assert before.holds.freight.free_from is None
    assert [one.starts_on for one in found.versions] == [date(2025, 1, 1), FEBRUARY]


def test_without_a_day_the_change_holds_from_today(tmp_path: Path) -> None:
    assert set_terms(shop(tmp_path, AT), "pellbrook", {"handling": "1.00"}).starts_on == TODAY


def test_a_blank_is_not_set_and_never_nothing(tmp_path: Path) -> None:
    """Freight left out is not known; it is not free."""
    desk = shop(tmp_path, AT)
    done = set_terms(desk, "pellbrook", {"freight": "", "small_order_fee": ""})
    assert done.terms and done.terms.freight is None and done.terms.small_order_fee is None
    (gravest, *_) = suppliers_terms(desk, "pellbrook").not_known
    assert (gravest.what, gravest.keeps_from_ranking) == ("freight", True)


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        ("transit_days", "2,4", (2, 4)),
        ("transit_days", "[2, 4]", (2, 4)),
        ("order_days", "Mon, Thu", ("Mon", "Thu")),
        ("breaks", "pieces above", "pieces above"),
        ("returns", "no = no, 14 days", "no = no, 14 days"),
        ("prices_hold_days", "0", 0),
        ("time_zone", "America/Chicago", "America/Chicago"),
        ("handling_per_line", "0.30", Decimal("0.30")),
        ("calendar", '{ country = "US" }', Calendar(country="US")),
        ("calendar.closed", "2026-02-20, 2026-02-23", (date(2026, 2, 20), date(2026, 2, 23))),
    ],
)
def test_values_are_typed_as_a_person_writes_them(tmp_path: Path, field: str, text: str, value: object) -> None:
    done = set_terms(shop(tmp_path, AT), "stonegarth", {field: text})
    found: object = done.terms
    for name in field.split("."):
        found = getattr(found, name)
    assert found == value


def test_a_time_may_be_typed_without_seconds(tmp_path: Path) -> None:
    done = set_terms(shop(tmp_path, AT), "stonegarth", {"cut_off": "9:30"})
    assert done.terms and f"{done.terms.cut_off}" == "09:30:00"


def test_all_that_is_wrong_is_told_and_nothing_is_changed(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    said = {"frieght.charge": "3", "supplier": "x", "transit_days": "4,1", "minimum_order": "abc", "cut_off": "25:00"}
    with pytest.raises(Refused) as refusal:
        set_terms(desk, "stonegarth", said)
    told = str(refusal.value)
    wanted = (
        "'frieght.charge' is no field",
        "Perhaps: freight",
        "'supplier' is no field",
        "'transit_days' has the larger",
    )
    for words in (*wanted, "'minimum_order' needs a number", "'cut_off' needs a time"):
        assert words in told
    assert len(suppliers_terms(desk, "stonegarth").versions) == 1


def test_what_changes_nothing_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="say that already"):
        set_terms(shop(tmp_path, AT), "pellbrook", {"minimum_order": "30"})


def test_a_day_that_is_over_needs_a_reason(tmp_path: Path) -> None:
    """Else figures already shown would come out otherwise and nobody would know why."""
    desk = shop(tmp_path, AT)
    with pytest.raises(Refused, match="would change what was worked out since then"):
        set_terms(desk, "pellbrook", {"minimum_order": "35"}, DECEMBER)
    assert len(suppliers_terms(desk, "pellbrook").versions) == 1
    set_terms(desk, "pellbrook", {"minimum_order": "35"}, DECEMBER, past="his letter of November was overlooked")
    (deed,) = suppliers_terms(desk, "pellbrook").deeds
    assert deed.who == "Oona Brandeth" and "minimum_order 30.00 -> 35" in deed.detail
    assert deed.detail.endswith("because: his letter of November was overlooked")


def test_later_terms_that_know_nothing_of_the_change_are_told(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    set_terms(desk, "pellbrook", {"handling": "2.00"}, FEBRUARY)
    (told,) = set_terms(desk, "pellbrook", {"minimum_order": "35.00"}, TODAY).told
    assert "from 2026-02-01 on do not have it: minimum_order 35.00 -> 30.00" in told.sentence()


def test_a_withdrawn_version_is_gone_and_its_deed_says_what_it_was(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    set_terms(desk, "pellbrook", {"minimum_order": "35.00"}, FEBRUARY)
    with pytest.raises(Refused, match="without a word why"):
        withdraw_terms(desk, "pellbrook", FEBRUARY, " ")
    done = withdraw_terms(desk, "pellbrook", FEBRUARY, "he took it back")
    assert done.terms and done.terms.minimum_order == 30
    found = suppliers_terms(desk, "pellbrook", FEBRUARY)
    assert found.holds and found.holds.minimum_order == 30 and len(found.versions) == 1
    assert found.deeds[-1].detail == (
        "withdrew the terms from 2026-02-01 on: he took it back; minimum_order 35.00 -> 30.00"
    )


def test_two_changes_of_one_day_are_one_version(tmp_path: Path) -> None:
    """The second goes on from the first."""
    desk = shop(tmp_path, AT)
    set_terms(desk, "pellbrook", {"minimum_order": "35.00"}, FEBRUARY)
    done = set_terms(desk, "pellbrook", {"handling": "2.00"}, FEBRUARY)
    assert [one.words() for one in done.changes] == ["handling 0 -> 2.00"]
    assert done.terms and done.terms.minimum_order == 35 and done.terms.handling == 2
    assert len(suppliers_terms(desk, "pellbrook").versions) == 2


def test_only_the_version_named_is_withdrawn(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    set_terms(desk, "pellbrook", {"minimum_order": "35.00"}, FEBRUARY)
    set_terms(desk, "pellbrook", {"handling": "2.00"}, TODAY)
    withdraw_terms(desk, "pellbrook", TODAY, "a slip")
    assert [one.starts_on for one in suppliers_terms(desk, "pellbrook").versions] == [date(2025, 1, 1), FEBRUARY]


def test_withdrawing_what_held_on_days_gone_by_needs_a_reason_for_them(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    first = date(2025, 1, 1)
    with pytest.raises(Refused, match="say why it must be"):
        withdraw_terms(desk, "pellbrook", first, "never ours")
    assert withdraw_terms(desk, "pellbrook", first, "", past="never ours").terms is None
    with pytest.raises(Refused, match="there are no terms of 'pellbrook'; name one of: larkmoor, stonegarth"):
        suppliers_terms(desk, "pellbrook")


def test_terms_that_are_not_there_are_refused(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    with pytest.raises(
        Refused, match="no terms that begin on 2026-02-01; name a day that fits, for they begin on 2025"
    ):
        withdraw_terms(desk, "pellbrook", FEBRUARY, "x")
    with pytest.raises(Refused, match="no terms that begin on or before 2024-01-01"):
        set_terms(desk, "pellbrook", {"handling": "1"}, date(2024, 1, 1), past="x")


def test_a_file_is_taken_in_whole_or_not_at_all(tmp_path: Path) -> None:
    """A new supplier may begin in the past; a supplier known before may not without a reason."""
    desk, path = shop(tmp_path, AT), tmp_path / "terms.toml"
    path.write_text(SUPPLIERS.replace("minimum_order = 30.00", "minimum_order = 35.00") + NEW_SUPPLIER)
    with pytest.raises(Refused, match="Pellbrook"):
        take_terms(desk, path)
    assert [one.supplier for one in every_suppliers_terms(desk)] == ["larkmoor", "pellbrook", "stonegarth"]
    path.write_text(SUPPLIERS + NEW_SUPPLIER)
    (done,) = take_terms(desk, path)
    assert (done.supplier, done.before) == ("tavishollow", None)
    assert take_terms(desk, path) == ()


def test_versions_of_one_file_are_compared_with_each_other(tmp_path: Path) -> None:
    """The second version of a new supplier changes the first, whatever their order in the file."""
    desk, path = shop(tmp_path, AT), tmp_path / "terms.toml"
    later = NEW_SUPPLIER.replace("2025-10-01", "2026-02-01") + "handling = 2.00\n"
    path.write_text(later + NEW_SUPPLIER)
    first, second = take_terms(desk, path)
    assert first.before is None and [one.words() for one in second.changes] == ["handling 0 -> 2.00"]


def test_setting_up_again_tells_what_of_the_past_it_changes(tmp_path: Path) -> None:
    desk = shop(tmp_path, AT)
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS.replace("minimum_order = 30.00", "minimum_order = 35.00"))
    (told,) = set_up(desk_at(tmp_path, AT), tmp_path).warnings
    assert told.code == "past-terms-changed" and "minimum_order 30.00 -> 35.00" in told.what
    assert "(suppliers.toml); minimum_order 30.00 -> 35.00" in suppliers_terms(desk, "pellbrook").deeds[-1].detail
    assert set_up(desk_at(tmp_path, AT), tmp_path).warnings == ()


def test_setting_up_tells_of_rates_of_the_shop_that_picking_up_needs(tmp_path: Path) -> None:
    """A warning only; 0 for a kilometre says that driving costs nothing."""
    desk = shop(tmp_path, AT)
    settings = (tmp_path / "shop.toml").read_text()
    (tmp_path / "shop.toml").write_text(settings.replace("clerk_cost", "# clerk_cost").replace("mileage", "# mileage"))
    (told,) = set_up(desk, tmp_path).warnings
    assert told.code == "pick-up-without-rate"
    assert "picked up from Larkmoor Wholesale, and the shop states no rate per mile or km and no cost" in told.what
    (tmp_path / "shop.toml").write_text(settings.replace("mileage_rate = 0.725", "rate_per_km = 0"))
    assert set_up(desk, tmp_path).warnings == ()


def test_setting_up_tells_of_missing_and_strange_rates(tmp_path: Path) -> None:
    """Nothing is refused: rates may come later."""
    desk = shop(tmp_path, AT)
    euro = NEW_SUPPLIER.replace('"USD"', '"EUR"\nentry_fees = [{ name = "Entry", charge = 5, currency = "CAD" }]')
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS + euro + 'time_zone = "Europe/Berlin"\n')
    (tmp_path / "rates.csv").write_text("currency,into,rate,dated,source\nEUR,USD,1.08,2026-01-14,bank\n")
    told = [one.sentence() for one in set_up(desk, tmp_path).warnings]
    assert len(told) == 4
    assert "the rate of EUR dated 2026-01-14 lies after 2026-01-13" in told[0]
    assert "charges in EUR, and there is no rate into USD on or before 2026-01-13" in told[1]
    assert "charges in CAD" in told[2] and "has the time zone Europe/Berlin, and the shop has none" in told[3]
    (tmp_path / "rates.csv").write_text("currency,into,rate,dated,source\nEUR,USD,1.09,2026-01-14,bank\n")
    later = set_up(desk_at(tmp_path, datetime(2026, 1, 20, 9, 0)), tmp_path).warnings
    assert "1 EUR on 2026-01-14 was 1.08 USD and is 1.09 now" in later[0].sentence()
