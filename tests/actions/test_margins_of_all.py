"""Margins loaded from the database: of one job and of all, by whatever group; which answers hold, and what followed."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.margin_loading import load
from sourcing.actions.margins import margins, margins_by
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.what_if import OtherBands, bands_from, what_if
from sourcing.basics.margin import By
from sourcing.basics.problem import Refused
from sourcing.basics.quote import Quote
from sourcing.basics.settings import MarkupBand
from sourcing.margins.quoted import CHARGES, capped_from
from sourcing.quoting.pricing import unit_price
from sourcing.storage.shop import settings_on
from tests.builders import usd
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in
from tests.margins.many_jobs import keep, papers

MONDAY = datetime(2026, 3, 2, 10, 15)


def paper(quote: Quote) -> str:
    """A paper that is good enough to freeze."""
    return f"{quote.job} {quote.revision}"


def said(*yes: str, no: tuple[str, ...] = ()) -> Spoken:
    """The customer by telephone."""
    return Spoken(yes=yes, no=no, who="Maud Tilbrook", how="telephone", contact="555-0142")


BELT = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
KEEPER = '[[add_ons]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0.3\n'


def a_shop(folder: Path) -> Desk:
    """Two dealers with belts and keepers."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "pellbrook", "2026-03-01", ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"])
    sheet(desk, folder, "stonegarth", "2026-03-01", ["NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"])
    return desk


def a_job(desk: Desk, folder: Path, body: str = BELT, yes: tuple[str, ...] = ("agreed",)) -> str:
    """A job quoted and answered."""
    number = take_in(desk, folder, body)
    write_quote(desk, number, paper)
    record(desk, number, said(*yes))
    return number


def test_a_yes_to_an_earlier_revision_counts_as_answers_say_it_does(tmp_path: Path) -> None:
    """The belt approved on Monday, an add-on found and declined later: the belt alone is in the margin."""
    desk = a_shop(tmp_path)
    number = a_job(desk, tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 1, 9, 0))
    change_job_from(later, number, job_file(tmp_path, BELT + KEEPER))
    write_quote(later, number, paper)
    (before,) = margins(later, number)
    assert [(line.label, line.month) for line in before.lines] == [("1", "2026-03"), ("2", "2026-03")]
    assert dict(before.parts)["quoted"].earned == usd("37.75")
    assert "A Keepers: waiting, not ordered and not billed" in before.notes
    assert str(dict(before.whole)["quoted"].margin_percent) == "51.06"


def test_both_ways_of_reading_the_answers_say_the_same(tmp_path: Path) -> None:
    """Every job read by the short way and by the rule of answers: the same yes, the same day, the same total."""
    desk = a_shop(tmp_path)
    first = a_job(desk, tmp_path)
    second = a_job(desk, tmp_path, BELT + KEEPER, ("agreed", "A", "B"))
    with desk.store.reading() as connection:
        short = {one.quote.job: one for one in load(connection, None, MONDAY.date()).jobs}
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sourcing.actions.margin_loading._plainly", lambda quote, rows: None)
        with desk.store.reading() as connection:
            whole = {one.quote.job: one for one in load(connection, None, MONDAY.date()).jobs}
    assert set(short) == {first, second} and short == whole


@pytest.mark.parametrize("by", ["job", "supplier", "category", "month", "line"])
def test_all_jobs_come_to_what_they_come_to_one_by_one(tmp_path: Path, by: By) -> None:
    """Sixty invented jobs kept in a database: the sum of jobs is the whole of every grouping."""
    desk = shop(tmp_path, datetime(2026, 12, 31, 9, 0))
    with desk.store.reading() as connection:
        settings = settings_on(connection, date(2026, 12, 31))
    with desk.store.writing() as connection:
        keep(connection, list(papers(60, 6)), settings)
    found = margins_by(desk, by)
    each = [one.bridge.end.earned.amount for one in margins(desk) if one.bridge]
    assert (found.jobs, len(each)) == (60, 60)
    assert sum(each) == found.whole.known.earned.amount == sum(group.known.earned.amount for group in found.groups)
    single = margins(desk, "2026-00007")
    assert single == tuple(one for one in margins(desk) if one.job == "2026-00007")


def test_received_and_leaked_from_order_to_receipt(tmp_path: Path) -> None:
    """The belt charged 2.00 more and the carrier 1.00 more than ordered."""
    desk = a_shop(tmp_path)
    number = a_job(desk, tmp_path)
    (one,) = place_orders(desk, [number]).orders
    receive(desk, one.number, Delivery(paper="DN-1", freight=Decimal("10.95"), prices={1: Decimal("73.25")}))
    (found,) = margins(desk, number)
    assert dict(found.parts)["received"].cost == usd("84.20")
    assert [(leak.name, leak.amount) for leak in found.leaks] == [
        ("price rise absorbed", usd("2.00")),
        ("freight dearer than ordered", usd("1.00")),
        ("list cap", usd("1.44")),
    ]
    added = margins_by(desk, "supplier")
    (pellbrook,) = (group for group in added.groups if group.name == "pellbrook")
    assert (pellbrook.title, pellbrook.known.price, pellbrook.known.cost) == (
        "Pellbrook Power Parts", usd("118.95"), usd("84.20"),
    )  # fmt: skip


def test_the_floor_and_the_hour_are_those_of_the_quotes_day(tmp_path: Path) -> None:
    """A dearer technician from next year on changes no job of this one."""
    desk = a_shop(tmp_path)
    number = a_job(desk, tmp_path)
    before = margins(desk, number)
    text = (tmp_path / "shop.toml").read_text().replace("technician_cost = 34.00", "technician_cost = 60.00")
    (tmp_path / "shop.toml").write_text(text)
    later = desk_at(tmp_path, datetime(2027, 1, 4, 9, 0))
    from sourcing.actions.setup import set_up

    set_up(later, tmp_path)
    assert margins(later, number) == before


def test_jobs_that_there_are_not_are_refused(tmp_path: Path) -> None:
    desk = a_shop(tmp_path)
    assert margins(desk) == () and margins_by(desk).groups == ()
    with pytest.raises(Refused, match="2026-0099"):
        margins(desk, "2026-0099")
    number = take_in(desk, tmp_path, BELT)
    with pytest.raises(Refused, match="no quote"):
        margins(desk, number)


def test_the_words_of_frozen_rules_are_read_as_they_are_written(tmp_path: Path) -> None:
    """What the list cap cost and what the charges were stand in rules that `quoting` words: they are held together."""
    desk = a_shop(tmp_path)
    number = take_in(desk, tmp_path, BELT)
    made = write_quote(desk, number, paper).frozen.quote
    behind = made.lines[0].behind
    assert behind is not None
    charges = CHARGES.search(behind.landed_rule)
    assert charges is not None and Decimal(charges[1]) == behind.cost.amount - Decimal("71.25")
    assert capped_from(behind.price_rule, 2) == (11044, 10900)
    with desk.store.reading() as connection:
        settings = settings_on(connection, MONDAY.date())
    free = unit_price(usd("71.25"), None, settings)
    assert free.each == usd("110.44") and capped_from(free.rule, 2) is None


def bands(*steps: tuple[str, str]) -> OtherBands:
    """Bands from a cost on."""
    return OtherBands(
        markup_bands=tuple(MarkupBand(from_cost=Decimal(at), multiplier=Decimal(times)) for at, times in steps)
    )


def test_other_bands_price_past_jobs_anew(tmp_path: Path) -> None:
    """Belts at 71.25 (list 109.00) x 1.50 is 106.88; keepers at 6.40 x 2.20 is 14.08, but listed at 13.50."""
    desk = a_shop(tmp_path)
    a_job(desk, tmp_path)
    a_job(desk, tmp_path, BELT + KEEPER, ("agreed", "A", "B"))
    found = what_if(desk, bands(("0", "2.20"), ("50.00", "1.50")))
    assert (found.jobs, found.jobs_changed, found.lines, found.lines_changed, found.capped) == (2, 2, 3, 3, 1)
    keepers, belts = found.by_band
    assert (keepers.band, keepers.before.price, keepers.after.price) == (
        "from 0, cost x 2.20", usd("40.55"), usd("41.95"),
    )  # fmt: skip
    assert belts.after.price - belts.before.price == usd("-4.24")
    assert found.after.earned - found.before.earned == usd("-2.84")
    assert found.before.cost == found.after.cost


def test_the_shops_own_bands_change_nothing(tmp_path: Path) -> None:
    desk = a_shop(tmp_path)
    a_job(desk, tmp_path)
    found = what_if(desk, bands_from(tmp_path / "shop.toml"))
    assert (found.lines, found.lines_changed, found.not_repriced) == (1, 0, 0)
    assert found.before == found.after


def test_bands_that_cannot_hold_are_refused(tmp_path: Path) -> None:
    desk = a_shop(tmp_path)
    a_job(desk, tmp_path)
    for wrong, words in (
        (bands(("50", "1.5"), ("0", "2")), "rising order"),
        (bands(("0", "0.9")), "sold for less than it costs"),
        (bands(("5", "2")), "is 5, and nothing is said of parts that cost less"),
        (bands(), "no markup bands"),
    ):
        with pytest.raises(Refused, match=words):
            what_if(desk, wrong)
