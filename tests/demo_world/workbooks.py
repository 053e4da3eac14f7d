"""Larkmoor's and Pellbrook's price workbooks, and how a workbook is saved to the same bytes every time."""

import io
import re
import zipfile
from collections.abc import Iterable
from decimal import Decimal

from openpyxl import Workbook
from openpyxl.styles import Font
from openpyxl.worksheet.worksheet import Worksheet

from .catalogue import Listing, Numbers, money
from .dice import Dice
from .story import LARKMOOR, PELLBROOK

MONEY = "#,##0.00"
BOLD = Font(bold=True)
SAVED_AT = "2026-01-08T08:00:00Z"
LARKMOOR_WAITS = ("5-7 days", "5-7 days", "3-4 days", "2 weeks", "Backorder", "Call")
LARKMOOR_COVER = (
    "Larkmoor Wholesale", "Dealer price workbook", "Effective 7 January 2026, prices in US dollars", "",
    "Worksheet 'Prices' holds our whole range under the makers' own numbers.",
    "Net is your price each. List is the maker's suggested retail price.",
    "On hand 0: see Lead time. Where Lead time is blank, goods leave on the next working day.",
    "Cross references are given on request and without warranty: check size and construction before fitting.",
)  # fmt: skip
PELLBROOK_COLUMNS = (
    "Item No.", "Maker", "Maker's No.", "Description", "List", "1-4", "5-9", "10+", "Price per", "Pack",
    "Core", "Qty available",
)  # fmt: skip
PELLBROOK_NOTES = (
    "Core: a deposit on each piece, charged with the order and given back for the old part within 60 days.",
    "Price per EA: each. Price per C: List and all prices are per hundred pieces.",
    "Price breaks 1-4, 5-9 and 10+ count pieces of one item on one order. Packs are not opened.",
)
PELLBROOK_DIGITS = {
    "4": "AUGER BELTS, TRACTION BELTS, DECK AND PTO BELTS",
    "2": "BEARINGS, ROLLER CHAIN, PULLEYS AND IDLERS, SPRINGS",
    "3": "BELT KEEPERS AND GUIDES, CHUTE PARTS, CONTROLS",
    "1": "FILTERS, SHEAR PINS AND BOLTS, CARBURETOR PARTS, SPARK PLUGS, SEALS AND GASKETS, HARDWARE",
    "5": "SKID SHOES, SCRAPER BARS, AUGER GEARBOX, AUGERS AND IMPELLERS",
    "6": "STARTERS, RECOIL PARTS, ELECTRICAL",
    "7": "CABLES",
    "8": "FRICTION WHEELS, WHEELS AND TIRES, TRANSMISSION",
}


def larkmoor(listings: list[Listing]) -> bytes:
    """A cover worksheet, then the prices under a title and a header of two rows with merged groups."""
    dice = Dice("Larkmoor")
    rows: list[tuple[str, str, str, str, str, int, str]] = list(LARKMOOR)
    for maker, count in (("Corrivane", 790), ("Dunmarrow", 680)):
        mine = [one for one in listings if one.maker == maker]
        rows += [_larkmoor_row(listing, dice) for listing in dice.some(mine, count)]
    book, cover, prices = _book("Read me", "Prices")
    for line in LARKMOOR_COVER:
        cover.append([line])
    prices.append(["Larkmoor Wholesale - dealer prices - January 2026"])
    prices.append(["Item", None, None, "Price USD", None, "Availability", None])
    prices.append(["Number", "Maker", "Description", "List", "Net", "On hand", "Lead time"])
    for group in ("A2:C2", "D2:E2", "F2:G2"):
        prices.merge_cells(group)
    for number, maker, description, retail, net, on_hand, wait in sorted(rows, key=lambda row: (row[1], row[0])):
        prices.append([number, maker, description, Decimal(retail), Decimal(net), on_hand, wait or None])
    _dress(prices, header_rows=3, money_columns="DE", text_columns="A")
    return saved(book)


def _larkmoor_row(listing: Listing, dice: Dice) -> tuple[str, str, str, str, str, int, str]:
    on_hand = dice.number(1, dice.pick((6, 25, 90))) if dice.chance(76) else 0
    net = listing.cents * dice.number(50, 64) // 100
    wait = "" if on_hand else dice.pick(LARKMOOR_WAITS)
    prices = money(listing.cents), money(net)
    return listing.number, listing.maker, listing.part.comma_style(), *prices, on_hand, wait


PellbrookRow = tuple[str, str, str, str, str, tuple[str, str, str], str, int, str, int | None]


def pellbrook(listings: list[Listing]) -> bytes:
    """Price breaks, packs, prices per hundred and core charges under Pellbrook's own item numbers."""
    dice = Dice("Pellbrook")
    numbers = Numbers(dice)
    rows: list[PellbrookRow] = list(PELLBROOK)
    for maker, count in (("Norrowby", 610), ("Ostrevik", 120), ("Corrivane", 370)):
        mine = [one for one in listings if one.maker == maker]
        rows += [_pellbrook_row(listing, dice, numbers) for listing in dice.some(mine, count)]
    book, prices, notes = _book("Price list", "Cores and packs")
    prices.append(["Pellbrook Power Parts - price list of January 8, 2026"])
    prices.append(["US dollars. For cores and packs see the second worksheet."])
    prices.append([])
    prices.append(list(PELLBROOK_COLUMNS))
    for number, maker, theirs, what, retail, breaks, per, pack, core, quantity in sorted(rows, key=lambda row: row[0]):
        sums = [Decimal(text) for text in (retail, *breaks)]
        prices.append([number, maker, theirs, what, *sums, per, pack, Decimal(core) if core else None, quantity])
    for line in PELLBROOK_NOTES:
        notes.append([line])
    _dress(prices, header_rows=4, money_columns="EFGHK", text_columns="AC")
    return saved(book)


def _pellbrook_row(listing: Listing, dice: Dice, numbers: Numbers) -> PellbrookRow:
    part = listing.part
    per, times = ("C", 100) if part.family.per_hundred else ("EA", 1)
    retail = listing.cents * times
    net = retail * dice.number(52, 64) // 100
    breaks = money(net), money(net * 965 // 1000), money(net * 93 // 100)
    core = money(part.core_cents) if part.core_cents else ""
    quantity = None if dice.chance(2) else part.pack * dice.number(1, dice.pick((5, 20, 80))) * dice.chance(75)
    digit = next(digit for digit, sections in PELLBROOK_DIGITS.items() if part.family.section in sections.split(", "))
    number = numbers.new(f"PB-{digit}???")
    described = number, listing.maker, listing.number, part.plain_style(), money(retail)
    return *described, breaks, per, part.pack, core, quantity


def table(title: str, columns: Iterable[str], rows: Iterable[Iterable[object]], book: Workbook) -> None:
    """Adds a worksheet that is one table with a header, for a person to edit."""
    worksheet = book.create_sheet(title)
    worksheet.append(list(columns))
    for row in rows:
        worksheet.append(list(row))
    _dress(worksheet, header_rows=1, money_columns="", text_columns="")


def _book(first: str, second: str) -> tuple[Workbook, Worksheet, Worksheet]:
    book = Workbook()
    book.remove(book.worksheets[0])
    return book, book.create_sheet(first), book.create_sheet(second)


def _dress(worksheet: Worksheet, header_rows: int, money_columns: str, text_columns: str) -> None:
    """Bold header, frozen; money with two decimals; part numbers marked as text; columns wide enough to read."""
    worksheet.freeze_panes = f"A{header_rows + 1}"
    for row in worksheet.iter_rows(max_row=header_rows):
        for cell in row:
            cell.font = BOLD
    for at, column in enumerate(worksheet.iter_cols(min_row=header_rows + 1)):
        letter = chr(ord("A") + at)
        widest = max((len(str(cell.value)) for cell in column if cell.value is not None), default=8)
        worksheet.column_dimensions[letter].width = min(max(widest + 2, 10), 60)
        for cell in column:
            if letter in money_columns or letter in text_columns:
                cell.number_format = MONEY if letter in money_columns else "@"


def saved(book: Workbook) -> bytes:
    """The workbook's file with every time stamp set to one moment, so that the same content gives the same bytes."""
    raw, fixed = io.BytesIO(), io.BytesIO()
    book.save(raw)
    with zipfile.ZipFile(raw) as before, zipfile.ZipFile(fixed, "w", zipfile.ZIP_DEFLATED) as after:
        for entry in sorted(before.namelist()):
            data = before.read(entry)
            if entry == "docProps/core.xml":
                data = re.sub(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", SAVED_AT.encode(), data)
            after.writestr(zipfile.ZipInfo(entry, (2026, 1, 8, 8, 0, 0)), data, zipfile.ZIP_DEFLATED)
    return fixed.getvalue()
