"""The demo world holds its story, its files fit the values, and its generator gives these very files.

Files are read with csv, tomllib and openpyxl alone. If you edit a generated sheet by hand, change the generator too,
or `test_the_generator_gives_these_files` tells you that the next run of it would undo your edit.
"""

import subprocess
import sys
import tomllib
from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any, get_args

import pytest
from openpyxl import load_workbook

from sourcing.basics.equivalence import Relation, Standing
from sourcing.basics.job import Job
from sourcing.basics.settings import Settings
from sourcing.basics.terms import Terms
from sourcing.basics.value import from_plain
from tests.demo_world import plain_reading as plain
from tests.demo_world.dice import key

SHEETS: dict[str, tuple[Callable[[], list[plain.Row]], tuple[str, ...]]] = {
    "stonegarth December": (plain.stonegarth_old, ("Part Number",)),
    "stonegarth January": (plain.stonegarth_new, ("Part Number",)),
    "kesselried": (plain.kesselried, ("Artikel-Nr.", "Herstellernummer")),
    "larkmoor": (plain.larkmoor, ("Number",)),
    "pellbrook": (plain.pellbrook, ("Item No.", "Maker's No.")),
    "tavishollow": (plain.tavishollow, ("Part No",)),
}
GENERATED = (
    "stonegarth/prices-2025-12-01.csv", "stonegarth/prices-2026-01-05.csv", "kesselried/prices-2026-01-02.csv",
    "larkmoor/prices-2026-01-07.xlsx", "pellbrook/prices-2026-01-08.xlsx", "tavishollow/prices-2026-01-06.tsv",
    "equivalence.xlsx",
)  # fmt: skip


def toml(name: str) -> dict[str, Any]:
    """A hand-written file with exact decimals."""
    return tomllib.loads((plain.DEMO / name).read_text(encoding="utf-8"), parse_float=Decimal)


@pytest.mark.parametrize("name", SHEETS)
def test_a_sheet_has_a_dealers_size_and_no_number_twice(name: str) -> None:
    read, number_columns = SHEETS[name]
    rows = read()
    assert 300 <= len(rows) <= 2000
    for column in number_columns:
        keys = [key(row[column]) for row in rows]
        assert all(keys)
        assert len(set(keys)) == len(keys)


STORY: tuple[tuple[str, str, str], ...] = (
    ("stonegarth December", "NW-40388", "189.95 118.40 4"),
    ("stonegarth January", "NW-40388", "No longer available NW-41388"),
    ("stonegarth January", "NW-41388", "204.95 127.90 3"),
    ("stonegarth January", "NW-31207", "14.95 8.10 22"),
    ("stonegarth January", "NW-22203", "19.95 9.80 9"),
    ("stonegarth January", "NW-52626", "79.95 43.50 5"),
    ("stonegarth January", "NW-10408", "2.95 0.95 140"),
    (
        "kesselried",
        "KR-204.0388",
        "Ostrevik OV 20 417 Keilriemen Schneckenantrieb B36 Aramid 89,40 149,00 1 6 ab Lager",
    ),
    ("kesselried", "KR-310.0012", "Corrivane CV-K12"),
    ("kesselried", "KR-310.0012", "5,60 11,90"),
    ("larkmoor", "CV-B36K", "Corrivane Belt, auger, B36 aramid wrapped 172.00 104.50 0 5-7 days"),
    ("larkmoor", "CV-K12", "12.50 6.90 40"),
    ("larkmoor", "6203-2RS", "16.00 7.90 60"),
    ("larkmoor", "DM-77120", "Dunmarrow Belt auger drive B36 139.00 78.25 11"),
    ("pellbrook", "PB-4038", "Norrowby NW-41388 Auger drive belt B36 198.00 119.00 115.00 109.00 EA 1 7"),
    ("pellbrook", "PB-3120", "14.95 8.45 8.10 7.75 EA"),
    ("pellbrook", "PB-2220", "21.50 11.60 11.10 10.60 EA"),
    ("pellbrook", "PB-5262", "84.95 46.00 45.00 43.00 EA"),
    ("pellbrook", "PB-1040", "295.00 85.00 82.00 79.00 C 10"),
    ("pellbrook", "PB-6612", "289.00 186.00 181.00 176.00 EA 1 25.00"),
    ("tavishollow", "OV 20 417", "136.00 199.00 In stock, ships same day"),
    ("tavishollow", "NW-40338", "Norrowby Belt, auger drive, 4L390 1/2 x 39 31.50 49.95 In stock, ships same day"),
    ("tavishollow", "6203-2RS", "12.40 19.00"),
    ("tavishollow", "NW-31207", "9.95 15.50"),
)


@pytest.mark.parametrize(("name", "number", "words"), STORY)
def test_the_rows_of_the_story_stand_on_the_sheets(name: str, number: str, words: str) -> None:
    read, columns = SHEETS[name]
    (row,) = [row for row in read() if row[columns[0]] == number]
    assert f" {words} " in f" {' '.join(cell for cell in row.values() if cell)} "


def test_the_wrong_belt_is_the_only_4l390_and_the_true_size_is_found_in_the_story_alone() -> None:
    sizes = {"4L390": 0, "B36": 0}
    for read, _ in SHEETS.values():
        for row in read():
            for size in sizes:
                sizes[size] += size in " ".join(row.values()).replace("CV-B36K", "").replace("-", " ").split()
    assert sizes == {"4L390": 1, "B36": 8}


def test_january_replaces_removes_adds_and_raises() -> None:
    old = {row["Part Number"]: row for row in plain.stonegarth_old()}
    new = {row["Part Number"]: row for row in plain.stonegarth_new()}
    replaced = [row for row in new.values() if row["Superseded By"]]
    assert len(replaced) == 15
    assert all(row["Superseded By"] in new for row in replaced)
    assert len(old.keys() - new.keys()) == 22
    both = [(cents(old[n]["Dealer Net"]), cents(new[n]["Dealer Net"])) for n in old.keys() & new.keys()]
    changes = [after / before for before, after in both if before and after]
    assert sum(change > 1 for change in changes) > len(changes) // 2
    assert 0 < sum(change < 1 for change in changes) < len(changes) // 10
    assert Decimal("0.92") < min(changes) and max(changes) < Decimal("1.10")


def cents(text: str) -> Decimal:
    """A price of Stonegarth's, 0 where none is stated; only used to compare."""
    return Decimal(text.replace(",", "")) if text and text != "CALL" else Decimal(0)


def test_stonegarths_last_lines_count_the_rows_truly() -> None:
    for name, read in (("2025-12-01", plain.stonegarth_old), ("2026-01-05", plain.stonegarth_new)):
        text = (plain.DEMO / f"stonegarth/prices-{name}.csv").read_bytes().decode()
        assert f"\r\nEnd of file - {len(read())} items\r\n" in text


def test_the_hand_written_files_fit_the_values() -> None:
    terms = from_plain(toml("suppliers.toml")["supplier"], tuple[Terms, ...])
    assert [one.supplier for one in terms] == ["stonegarth", "kesselried", "larkmoor", "pellbrook", "tavishollow"]
    settings = from_plain(toml("shop.toml"), Settings)
    assert settings.currency == "USD" and settings.margin_floor_percent == 28
    job = from_plain(toml("job.toml"), Job)
    assert [label for label, _ in job.labelled()] == ["1", "2", "A", "B", "C"]
    assert all(line.found and line.why and line.if_declined for line in job.add_ons)
    assert [(one.kind, one.number or one.size) for one in job.agreed[0].evidence[:3]] == [
        ("machine list", "NW-40388"), ("component list", "OV 20 417"), ("printed on the removed part", "4L390")
    ]  # fmt: skip
    rates = plain.rate_table()
    assert [row["rate"] for row in rates if row["currency"] == "EUR"] == ["1.0790", "1.0850"]


def test_the_equivalence_table_uses_the_words_of_the_values_and_knows_the_jobs_parts() -> None:
    path = plain.DEMO / "equivalence.xlsx"
    codes = {row["code"] for row in plain.worksheet(path, "parts", 1)}
    said = plain.worksheet(path, "statements", 1)
    assert {row["relation"] for row in said} == set(get_args(Relation))
    assert {row["standing"] for row in said} == set(get_args(Standing))
    assert {row["left number"] for row in said if row["left maker"] == "(ours)"} == codes
    job = from_plain(toml("job.toml"), Job)
    assert {line.part for _, line in job.labelled()} <= codes
    wrong = {row["relation"] for row in said if key("NW-40338") in (key(row["left number"]), key(row["right number"]))}
    assert not wrong, "the wrong belt must be held back by its size alone"


def half_up(amount: Decimal) -> Decimal:
    """To the cent, half up."""
    return amount.quantize(Decimal("0.01"), ROUND_HALF_UP)


def test_the_belt_alone_at_the_door_by_plain_arithmetic() -> None:
    terms = {entry["supplier"]: entry for entry in toml("suppliers.toml")["supplier"]}
    (rate,) = [Decimal(r["rate"]) for r in plain.rate_table() if (r["currency"], r["dated"]) == ("EUR", "2026-01-09")]
    net = {
        "stonegarth": column(plain.stonegarth_new(), "Part Number", "NW-41388", "Dealer Net"),
        "kesselried": column(plain.kesselried(), "Artikel-Nr.", "KR-204.0388", "EK netto EUR"),
        "larkmoor": column(plain.larkmoor(), "Number", "CV-B36K", "Net"),
        "pellbrook": column(plain.pellbrook(), "Item No.", "PB-4038", "1-4"),
        "tavishollow": column(plain.tavishollow(), "Part No", "OV 20 417", "Net"),
    }
    freight = {name: entry["freight"].get("charge") for name, entry in terms.items()}
    freight["tavishollow"] = Decimal(terms["tavishollow"]["freight"]["bands"][0]["charge"])
    landed = {name: net[name] + freight[name] for name in net if name != "kesselried"}
    goods = half_up(net["kesselried"] * rate)
    duty = half_up(goods * terms["kesselried"]["duty_percent"] / 100)
    entry_fee = half_up(terms["kesselried"]["entry_fee"] * rate)
    landed["kesselried"] = goods + half_up(freight["kesselried"] * rate) + duty + entry_fee
    assert {name: str(total) for name, total in landed.items()} == {
        "stonegarth": "142.85", "kesselried": "138.97", "larkmoor": "116.00", "pellbrook": "131.50",
        "tavishollow": "152.00",
    }  # fmt: skip


def column(rows: list[plain.Row], of: str, number: str, wanted: str) -> Decimal:
    """A figure from the row with that number."""
    return next(Decimal(row[wanted].replace(",", ".")) for row in rows if row[of] == number)


def test_belt_and_pins_pay_pellbrooks_freight_and_the_add_ons_make_it_free() -> None:
    sheet = plain.pellbrook()
    belt, keeper = (column(sheet, "Item No.", number, "1-4") for number in ("PB-4038", "PB-3120"))
    bearing = column(sheet, "Item No.", "PB-2220", "1-4")
    pins = column(sheet, "Item No.", "PB-1040", "10+") / 100 * 10
    free_from = next(
        e["freight"]["free_from"] for e in toml("suppliers.toml")["supplier"] if e["supplier"] == "pellbrook"
    )
    assert belt + pins == Decimal("126.90") < free_from
    assert belt + pins + 2 * keeper + bearing == Decimal("155.40") > free_from


def test_the_generator_gives_these_files(tmp_path: Path) -> None:
    for run in ("first", "second"):
        command = [sys.executable, "-m", "tests.demo_world.make_demo_prices", str(tmp_path / run)]
        subprocess.run(command, cwd=plain.TOP, check=True)
    for name in GENERATED:
        made = tmp_path / "first" / name
        assert made.read_bytes() == (tmp_path / "second" / name).read_bytes()
        if name.endswith(".xlsx"):  # a workbook's bytes also depend on the versions of openpyxl and zlib
            assert contents(made) == contents(plain.DEMO / name)
        else:
            assert made.read_bytes() == (plain.DEMO / name).read_bytes()


def contents(path: Path) -> dict[str, list[tuple[str, object, str, str]]]:
    """Every cell of a workbook: where, value, type, number format."""
    return {
        sheet.title: [(c.coordinate, c.value, c.data_type, c.number_format) for row in sheet.iter_rows() for c in row]
        for sheet in load_workbook(path).worksheets
    }
