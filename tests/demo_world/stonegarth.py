"""Stonegarth's two price files: the machine maker's numbers, sections, a newer sheet with rises and supersessions."""

import csv
import io
from dataclasses import dataclass, replace

from .catalogue import Listing, Numbers, shop_price
from .dice import Dice
from .families import FAMILIES
from .story import STONEGARTH_NEW, STONEGARTH_OLD

COLUMNS = ("Part Number", "Brand", "Description", "List", "Dealer Net", "Stock", "Lead Time", "Superseded By")
OLD_ITEMS, VANISHED, REPLACED, ADDED = 812, 22, 14, 26
WAITS = ("3-5 days", "1 week", "1 week", "2 weeks", "2-3 weeks", "Backorder", "Special order")
NOTE = "Dealer net is your price each, before freight. List is suggested retail. Core charges, where due, are extra."
TERMS = "Terms: net 30 days. Prices may change without notice. No claim after 10 days. Printed for your account only."


@dataclass(frozen=True)
class Row:
    """One item; money in cents, None where the sheet leaves it blank."""

    section: str
    number: str
    brand: str
    description: str
    list_cents: int | None
    net_cents: int | None
    stock: int | None
    lead_time: str
    superseded_by: str = ""

    def cells(self) -> tuple[str, ...]:
        """The row as the file shows it."""
        prices = [_price(self.list_cents), _price(self.net_cents)]
        stock = "" if self.stock is None else str(self.stock)
        return (self.number, self.brand, self.description, *prices, stock, self.lead_time, self.superseded_by)


def _price(cents: int | None) -> str:
    """Thousands get a comma, so dear items stand in quotes: '1,249.00'."""
    return "" if cents is None else f"{cents // 100:,}.{cents % 100:02d}"


def both_files(listings: list[Listing]) -> tuple[bytes, bytes]:
    """The files of 1 December 2025 and of 5 January 2026."""
    dice = Dice("Stonegarth")
    stocked = _stocked(listings, dice)
    fresh = stocked[-ADDED:]
    before = [_row(listing, dice) for listing in stocked[:-ADDED]]
    old = [*before, *map(_story_row, STONEGARTH_OLD)]
    new = [*_a_month_later(before, dice), *(_row(listing, dice) for listing in fresh), *map(_story_row, STONEGARTH_NEW)]
    return _file(old, "Monday, December 1, 2025"), _file(new, "Monday, January 5, 2026", calls_for_price=True)


def _stocked(listings: list[Listing], dice: Dice) -> list[Listing]:
    """What Stonegarth lists: mostly the machine maker's parts; the last `ADDED` are new in January."""
    wanted = (("Norrowby", 620), ("Ostrevik", 130), ("Corrivane", OLD_ITEMS - 750 - len(STONEGARTH_OLD)))
    chosen = [one for maker, count in wanted for one in dice.some([x for x in listings if x.maker == maker], count)]
    others = [x for x in listings if x.maker == "Norrowby" and x not in chosen]
    return [*chosen, *dice.some(others, ADDED)]


def _row(listing: Listing, dice: Dice) -> Row:
    part = listing.part
    net = listing.cents * dice.number(52, 66) // 100
    stock, lead_time = _availability(dice)
    return Row(
        part.family.section, listing.number, listing.maker, part.comma_style(), listing.cents, net, stock, lead_time
    )  # fmt: skip


def _availability(dice: Dice) -> tuple[int | None, str]:
    if dice.chance(3):
        return None, ""
    stock = dice.number(1, dice.pick((4, 12, 40, 150))) if dice.chance(74) else 0
    return stock, "In stock" if stock else dice.pick(WAITS)


def _story_row(cells: tuple[str, ...]) -> Row:
    section, number, brand, description, list_price, net, stock, lead_time, superseded_by = cells
    cents = [int(text.replace(".", "")) if text else None for text in (list_price, net)]
    count = int(stock) if stock else None
    return Row(section, number, brand, description, cents[0], cents[1], count, lead_time, superseded_by)


def _a_month_later(before: list[Row], dice: Dice) -> list[Row]:
    """Some rows gone, some replaced by a new number, many dearer, a few cheaper."""
    gone = dice.some(before, VANISHED)
    left = [row for row in before if row not in gone]
    replaced = dice.some([row for row in left if row.brand == "Norrowby"], REPLACED)
    numbers, taken = Numbers(dice), {row.number for row in before}
    rows: list[Row] = []
    for row in left:
        if row in replaced:
            rows += _superseded(row, len(rows) % 4 == 0, _new_number(row, numbers, taken), dice)
        else:
            rows.append(_repriced(row, dice))
    return rows


def _new_number(row: Row, numbers: Numbers, taken: set[str]) -> str:
    """The maker's habit: the old number plus 1000, or the next free one."""
    number = f"NW-{int(row.number[3:]) + 1000}"
    while number in taken or not numbers.free(number):
        number = f"NW-{int(number[3:]) + 7}"
    return number


def _superseded(row: Row, has_rest: bool, new_number: str, dice: Dice) -> list[Row]:
    """The old number with what stock is left, or without price; and the new one."""
    old = replace(row, superseded_by=new_number, stock=dice.number(1, 3), lead_time="While stock lasts")
    if not has_rest:
        old = replace(old, list_cents=None, net_cents=None, stock=None, lead_time="No longer available")
    stock, lead_time = _availability(dice)
    new = replace(_dearer(row, dice.number(103, 109)), number=new_number, stock=stock, lead_time=lead_time)
    return [old, new]


def _repriced(row: Row, dice: Dice) -> Row:
    kind = dice.number(1, 100)
    percent = dice.number(102, 109) if kind <= 62 else dice.number(93, 98) if kind <= 67 else 100
    stock, lead_time = _availability(dice)
    return replace(_dearer(row, percent), stock=stock, lead_time=lead_time)


def _dearer(row: Row, percent: int) -> Row:
    assert row.list_cents is not None and row.net_cents is not None
    if percent == 100:
        return row
    retail = shop_price(row.list_cents * percent // 100)
    return replace(row, list_cents=retail, net_cents=row.net_cents * percent // 100)


def _file(rows: list[Row], day: str, calls_for_price: bool = False) -> bytes:
    """Preamble, header, sections, footer. `calls_for_price`: the dearest row says CALL where its net price was."""
    text = io.StringIO()
    lines = csv.writer(text, lineterminator="\r\n")
    preamble = ("Stonegarth Trade Parts", "Dealer price file", "Account: 20-4471 Wickenby Yard Machine Repair")
    lines.writerows([line] for line in (*preamble, f"Prices effective {day}", NOTE))
    lines.writerow([])
    lines.writerow(COLUMNS)
    dearest = max(rows, key=lambda row: row.list_cents or 0)
    for section in (family.section for family in FAMILIES):
        lines.writerow([section, *[""] * (len(COLUMNS) - 1)])
        for row in sorted((row for row in rows if row.section == section), key=lambda row: row.number):
            cells = row.cells()
            lines.writerow((*cells[:4], "CALL", *cells[5:]) if calls_for_price and row is dearest else cells)
    lines.writerow([])
    lines.writerows(([f"End of file - {len(rows)} items"], [TERMS]))
    return text.getvalue().encode("utf-8")
