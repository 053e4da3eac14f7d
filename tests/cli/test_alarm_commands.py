"""The commands of alarms and promises, run as a person runs them."""

import json
from datetime import date, datetime
from pathlib import Path

import openpyxl

from tests.cli.running import sourcing
from tests.journeys.small_shop import shop
from tests.journeys.test_backorder_slips import slipped
from tests.journeys.test_price_rises_after_yes import approved, risen

THURSDAY, MONDAY = "2026-03-12T13:00", "2026-03-09T11:00"


def test_an_alarm_shows_three_ways_and_deciding_keeps_one(tmp_path: Path) -> None:
    """Figures with margin and markup together, then one kept, then quiet."""
    risen(tmp_path)
    code, told, _ = sourcing(tmp_path, "alarms", at=THURSDAY)
    assert code == 0
    assert "! approved on 126.90, now 139.59 each: 12.69 more, 10.00 %" in told
    for words in ("margin", "markup", "38.07 USD 19.77 %", "55.84 USD", "51.66 USD 26.82 %", "19.02 USD (5.32 %)"):
        assert words in told
    code, told, _ = sourcing(tmp_path, "decide", "2026-0001", "1", "hold", "--words", "our word counts", at=THURSDAY)
    assert code == 0 and "up to a cost of 139.59 USD" in " ".join(told.split())
    assert sourcing(tmp_path, "alarms", "2026-0001", at=THURSDAY)[1] == "Everything stands as it was approved.\n"


def test_alarms_as_json_hold_every_figure(tmp_path: Path) -> None:
    """Amounts as text, three ways in their order."""
    risen(tmp_path)
    (alarm,) = json.loads(sourcing(tmp_path, "alarms", "--json", at=THURSDAY)[1])
    assert [way["way"] for way in alarm["ways"]] == ["hold", "ask", "switch"]
    assert [way["margin"]["earned"]["amount"] for way in alarm["ways"]] == ["38.07", "55.84", "51.66"]


def test_a_slip_in_deciding_is_one_sentence(tmp_path: Path) -> None:
    """An unknown way, a line that stands as approved, a yes without how."""
    approved(tmp_path)
    at = "2026-03-10T10:00"
    for words, told in (
        (("decide", "2026-0001", "1", "wait"), "hold, ask, switch"),
        (("decide", "2026-0001", "1", "hold"), "stands as it was approved"),
        (("decide", "2026-0099", "1", "hold"), "2026-0099"),
    ):
        code, out, errors = sourcing(tmp_path, *words, at=at)
        assert (code, out, len(errors.splitlines())) == (1, "", 1) and told in errors
    again = tmp_path / "again"
    again.mkdir()
    risen(again)
    code, _, errors = sourcing(again, "decide", "2026-0001", "1", "switch", "--agreed-by", "Maud Tilbrook", at=THURSDAY)
    assert code == 1 and "in person, telephone" in errors


def test_promises_are_kept_listed_and_written_to_a_workbook(tmp_path: Path) -> None:
    """A word by telephone, the open list with its history, the same as XLSX and as JSON."""
    slipped(tmp_path)
    words = ("--parts-here", "2026-04-08", "--said-by", "Stonegarth", "--words", "the ship is late", "--line", "1")
    code, told, errors = sourcing(tmp_path, "promise", "2026-0001", *words, at=MONDAY)
    assert (code, errors) == (0, "")
    assert told == "Kept for job 2026-0001: Stonegarth promised parts here 2026-04-08 (the ship is late).\n"
    code, told, _ = sourcing(tmp_path, "promises", "--job", "2026-0001", "--xlsx", "open.xlsx", at=MONDAY)
    assert code == 0 and "moved 3 times" in told and "113.10 USD" in told
    assert told.index("2026-03-06, 3 days over") < told.index("2026-04-08") < told.index("no day")
    book = openpyxl.load_workbook(tmp_path / "open.xlsx")
    assert book.sheetnames == ["Open", "Said"]
    days = [row[5] for row in book["Said"].iter_rows(min_row=2, values_only=True)]
    assert [day.date() for day in days if day] == [  # type: ignore[union-attr]
        date(2026, 3, 4), date(2026, 3, 18), date(2026, 4, 1), date(2026, 4, 8),
    ]  # fmt: skip
    found = json.loads(sourcing(tmp_path, "promises", "--json", at=MONDAY)[1])
    assert [one["moved"] for one in found if one["kind"] == "parts here"] == [3]


def test_exactly_one_day_is_promised_at_a_time(tmp_path: Path) -> None:
    """None and two are slips of usage."""
    approved(tmp_path)
    for days in ((), ("--parts-here", "2026-04-08", "--machine-ready", "2026-04-09")):
        code, _, errors = sourcing(tmp_path, "promise", "2026-0001", "--said-by", "Stonegarth", *days, at=MONDAY)
        assert code == 2 and "say one day" in errors


def test_nothing_open_is_said(tmp_path: Path) -> None:
    """An empty list is a sentence."""
    shop(tmp_path, datetime(2026, 3, 9, 10, 0))
    assert sourcing(tmp_path, "promises", at=MONDAY)[1] == "Nothing is promised or waited for.\n"
    assert sourcing(tmp_path, "alarms", at=MONDAY)[1] == "Everything stands as it was approved.\n"
