"""The demo's printed figures recomputed from the files in demo_prices/, with none of the package's cost code.

Only csv, openpyxl, tomllib and Decimal are used, by the rules as README and the files state them.
"""

import csv
import io
import re
import subprocess
import sys
import tomllib
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import openpyxl
import pytest

PRICES = Path(__file__).parents[2] / "demo_prices"
D = Decimal


def cents(amount: Decimal) -> Decimal:
    """Half up to the cent."""
    return amount.quantize(D("0.01"), rounding=ROUND_HALF_UP)


def toml(name: str) -> dict[str, Any]:
    """A file of the demo with exact numbers."""
    return tomllib.loads((PRICES / name).read_text(encoding="utf-8"), parse_float=Decimal)


def supplier(name: str) -> dict[str, Any]:
    """One supplier's terms."""
    return next(one for one in toml("suppliers.toml")["supplier"] if one["supplier"] == name)


def row(path: str, encoding: str, delimiter: str, number: str) -> list[str]:
    """The one row of a text sheet that bears the number."""
    text = (PRICES / path).read_bytes().decode(encoding)
    (found,) = (cells for cells in csv.reader(io.StringIO(text), delimiter=delimiter) if number in cells[:3])
    return found


@cache
def book(path: str, sheet: str) -> list[tuple[Any, ...]]:
    """The rows of a worksheet, read once."""
    return list(openpyxl.load_workbook(PRICES / path, data_only=True)[sheet].iter_rows(values_only=True))


def book_row(path: str, sheet: str, number: str) -> list[Any]:
    """The one row of a workbook that bears the number."""
    (found,) = (list(cells) for cells in book(path, sheet) if number in [str(cell) for cell in cells[:3]])
    return found


def pellbrook(number: str, column: int = 5) -> Decimal:
    """A Pellbrook price by its break column: 5 from one piece, 7 from ten."""
    return D(str(book_row("pellbrook/prices-2026-01-08.xlsx", "Price list", number)[column]))


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> str:
    """What `sourcing demo` prints, in a process of its own."""
    start = "from sourcing.cli.main import run; run()"
    folder = tmp_path_factory.mktemp("demo") / "new"
    command = [sys.executable, "-c", start, "demo", str(folder)]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def test_belt_alone_at_every_door(printed: str) -> None:
    """Goods, freight, duty and entry fee by hand, and the places in the right order."""
    rates = list(csv.DictReader((PRICES / "rates.csv").read_text(encoding="utf-8").splitlines()))
    euro = D(max((r for r in rates if r["currency"] == "EUR"), key=lambda r: r["dated"])["rate"])
    german = supplier("kesselried")
    price = D(row("kesselried/prices-2026-01-02.csv", "cp1252", ";", "KR-204.0388")[4].replace(",", "."))
    goods = cents(price * euro)
    kesselried = (
        goods
        + cents(german["freight"]["charge"] * euro)
        + cents(goods * german["duty_percent"] / 100)
        + cents(german["entry_fee"] * euro)
    )
    larkmoor = D(str(book_row("larkmoor/prices-2026-01-07.xlsx", "Prices", "CV-B36K")[4]))
    tavishollow = D(row("tavishollow/prices-2026-01-06.tsv", "utf-16", "\t", "OV 20 417")[3])
    stonegarth = D(row("stonegarth/prices-2026-01-05.csv", "utf-8-sig", ",", "NW-41388")[4])
    doors = {
        "Larkmoor": larkmoor + supplier("larkmoor")["freight"]["charge"],
        "Pellbrook": pellbrook("NW-41388") + supplier("pellbrook")["freight"]["charge"],
        "Kesselried": kesselried,
        "Stonegarth": stonegarth + supplier("stonegarth")["freight"]["charge"],
        "Tavishollow": tavishollow + supplier("tavishollow")["freight"]["bands"][0]["charge"],
    }
    ranked = re.findall(r"^  \d\. ([\d.]+) USD at the door, here ([\d-]+), ([a-z ]+): (\w+)", printed, re.MULTILINE)
    assert [(D(amount), name) for amount, _, _, name in ranked] == [
        (amount, name) for name, amount in sorted(doors.items(), key=lambda one: one[1])
    ]
    wanted = toml("job.toml")["need_by"]
    assert [late for _, _, late, _ in ranked] == [
        "in time" if date.fromisoformat(day) <= wanted else "late" for _, day, _, _ in ranked
    ]


def test_days_of_arrival(printed: str) -> None:
    """Ordered Tuesday 13 January before every cut-off; working days by numpy; Monday 19 January is a holiday here.

    Larkmoor has none in stock and says '5-7 days'; the others have it and send it the same day.
    """
    leaves = {"Larkmoor": 7, "Pellbrook": 0, "Kesselried": 0, "Stonegarth": 0, "Tavishollow": 0}
    for day, name in re.findall(r"here ([\d-]+), [a-z ]+: (\w+)", printed):
        road: int = supplier(name.lower())["transit_days"][1]
        closed: list[date] = [] if name == "Kesselried" else [date(2026, 1, 19)]
        expected = np.busday_offset(
            np.datetime64("2026-01-13"), leaves[name] + road, holidays=[np.datetime64(one) for one in closed]
        )
        assert np.datetime64(day) == expected, name


def lines() -> dict[str, tuple[Decimal, Decimal, Decimal]]:
    """Each line's (goods for what is used, list price each, hours), Pellbrook's prices, pins ten to a pack."""
    pins_list = D(str(book_row("pellbrook/prices-2026-01-08.xlsx", "Price list", "NW-10408")[4])) / 100
    listed = {n: D(str(book_row("pellbrook/prices-2026-01-08.xlsx", "Price list", n)[4])) for n in NUMBERS.values()}
    job = toml("job.toml")
    hours = [D(str(line.get("hours", 0))) for line in (*job["agreed"], *job["add_ons"])]
    each = {
        "1": pellbrook(NUMBERS["1"]),
        "2": pellbrook("NW-10408", 7) / 100,  # ten pieces reach the break at ten
        **{label: pellbrook(NUMBERS[label]) for label in "ABC"},
    }
    return {
        label: (each[label], pins_list if label == "2" else listed[NUMBERS[label]], hour)
        for label, hour in zip("12ABC", hours, strict=True)
    }


NUMBERS = {"1": "NW-41388", "A": "NW-31207", "B": "PB-2220", "C": "NW-52626"}
PIECES = {"1": 1, "2": 2, "A": 2, "B": 1, "C": 1}


def total(labels: str) -> tuple[Decimal, Decimal]:
    """(before tax, with tax) of these lines: price bands, list cap, labour, supplies fee, tax once on the parts."""
    shop = toml("shop.toml")
    parts = labour = D(0)
    for label in labels:
        cost, listed, hours = lines()[label]
        factor = [band["multiplier"] for band in shop["markup_bands"] if band["from_cost"] <= cost][-1]
        parts += min(cents(cost * factor), cents(listed)) * PIECES[label]
        labour += cents(hours * shop["labour_rate"])
    fee = min(cents(labour * D(str(shop["supplies"]["percent_of_labour"])) / 100), shop["supplies"]["most"])
    (tax,) = shop["taxes"]
    before = parts + labour + fee
    return before, before + cents(parts * D(str(tax["percent"])) / 100)


def test_plan_and_threshold(printed: str) -> None:
    """Agreed parts alone pay freight; with the add-ons the order passes the free-freight limit."""
    freight = supplier("pellbrook")["freight"]
    goods = {label: cents(lines()[label][0] * (10 if label == "2" else PIECES[label])) for label in "12ABC"}
    alone, everything = goods["1"] + goods["2"], sum(goods.values())
    assert alone < freight["free_from"] <= everything
    assert f"agreed parts alone {alone + freight['charge']} USD" in printed
    assert f"with all add-ons {everything} USD" in printed
    ordered = everything - goods["C"]
    assert ordered >= freight["free_from"]
    assert f"{ordered} USD at the door (PO-2026-0001.html)" in printed


def test_quote_answers_and_margins(printed: str) -> None:
    """Totals, differences of totals, what she pays, what the job earned, what leaked."""
    agreed, everything, approved = total("12")[1], total("12ABC")[1], total("12AB")[1]
    assert f"agreed work {agreed} USD with tax" in printed and f"everything {everything} USD" in printed
    for label in "ABC":
        assert f"{label} {total('12' + label)[1] - agreed} USD" in printed
    assert f"she pays {approved} USD, {approved - agreed} USD more than agreed" in printed

    shop, used = toml("shop.toml"), sum(cents(lines()[label][0] * PIECES[label]) for label in "12AB")
    hours = sum((cents(lines()[label][2] * shop["technician_cost"]) for label in "12AB"), D(0))
    dearer = D("12.10") - lines()["B"][0]
    earned = total("12AB")[0] - (used + dearer) - hours
    assert f"the whole job earned {earned} USD" in printed
    priced = total("12AB")[0] - sum(
        (cents(lines()[label][2] * shop["labour_rate"]) for label in "12AB"), D(0)
    )  # parts and the supplies fee
    parts = priced - min(
        cents(sum((cents(lines()[one][2] * shop["labour_rate"]) for one in "12AB"), D(0)) * 5 / 100), D("12.00")
    )
    quoted, received = (cents((parts - cost) * 100 / parts) for cost in (used, used + dearer))
    assert f"quoted {quoted} %, ordered {quoted} %, received {received} %" in printed
    whole, cost = total("12AB")[0], total("12AB")[0] - earned
    margin, markup = cents(earned * 100 / whole), cents(earned * 100 / cost)
    assert f"margin {margin} % on price, markup {markup} % on cost" in printed
    shelf = cents(lines()["2"][0] * 8)
    capped = sum((list_cap(label, shop) for label in "12AB"), D(0))
    leaks = f"price rise absorbed {dearer} USD, list cap {capped} USD, surplus pack {shelf} USD"
    assert f"Leaks: {leaks}." in printed
    assert f"the bill would come to {approved} USD" in printed
    assert f"C as declined, offered at {total('12C')[1] - agreed} USD" in printed


def list_cap(label: str, shop: dict[str, Any]) -> Decimal:
    """What the list price took off the price that the bands make."""
    cost, listed, _ = lines()[label]
    factor = [band["multiplier"] for band in shop["markup_bands"] if band["from_cost"] <= cost][-1]
    return max(cents(cost * factor) - cents(listed), D(0)) * PIECES[label]
