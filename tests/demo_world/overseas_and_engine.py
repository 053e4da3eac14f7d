"""Two plain text sheets: Kesselried's in German with decimal commas, Tavishollow's with lead times in words."""

import csv
import io

from .catalogue import Listing, Numbers, money
from .dice import Dice
from .families import FAMILIES
from .story import AT_ONCE, KESSELRIED, TAVISHOLLOW

KESSELRIED_COLUMNS = (
    "Artikel-Nr.", "Hersteller", "Herstellernummer", "Bezeichnung", "EK netto EUR", "UVP EUR", "VPE",
    "Bestand", "Lieferzeit",
)  # fmt: skip
KESSELRIED_GROUPS = {"AUGER BELTS": 204, "TRACTION BELTS": 205, "DECK AND PTO BELTS": 206, "BEARINGS": 220}
KEEPERS = "BELT KEEPERS AND GUIDES"
GERMAN_WAITS = ("3-5 Tage", "1 Woche", "2 Wochen", "2-3 Wochen", "auf Anfrage", "nicht mehr lieferbar")

TAVISHOLLOW_COLUMNS = ("Part No", "Manufacturer", "Description", "Net", "List", "Availability")
WAITS = ("2-3 wks", "1 week", "1 week", "Backorder", "Special order 10-14 days", "Call")


def kesselried(listings: list[Listing]) -> bytes:
    """Semicolons, Windows code page 1252, CRLF; prices in EUR, 1.249,00 for a thousand and more; own numbers."""
    dice = Dice("Kesselried")
    numbers = Numbers(dice)
    rows: list[tuple[str, ...]] = list(KESSELRIED)
    for maker, count in (("Ostrevik", 215), ("Corrivane", 260), ("Dunmarrow", 165)):
        mine = [one for one in listings if one.maker == maker]
        rows += [_kesselried_row(listing, dice, numbers) for listing in dice.some(mine, count)]
    text = io.StringIO()
    lines = csv.writer(text, delimiter=";", lineterminator="\r\n")
    lines.writerow(KESSELRIED_COLUMNS)
    lines.writerows(sorted(rows))
    return text.getvalue().encode("cp1252")


def _kesselried_row(listing: Listing, dice: Dice, numbers: Numbers) -> tuple[str, ...]:
    part = listing.part
    retail = listing.cents * dice.number(74, 84) // 100
    stock = dice.number(1, dice.pick((5, 20, 60))) if dice.chance(70) else 0
    return (
        numbers.new(f"KR-{_group(part.family.section)}.????"),
        listing.maker,
        listing.number,
        part.german_style(),
        _german(retail * dice.number(48, 62) // 100),
        _german(retail),
        str(part.pack if part.family.per_hundred else dice.pick((1, 1, 1, 1, 1, 1, 2)) if listing.cents < 900 else 1),
        str(stock),
        "ab Lager" if stock else dice.pick(GERMAN_WAITS),
    )


def _group(section: str) -> int:
    """Kesselried's group of goods, the first digits of its numbers."""
    place = [family.section for family in FAMILIES].index(section)
    return 310 if section == KEEPERS else KESSELRIED_GROUPS.get(section, 320 + 10 * place)


def _german(cents: int) -> str:
    return f"{cents // 100:,}".replace(",", ".") + f",{cents % 100:02d}"


def tavishollow(listings: list[Listing]) -> bytes:
    """Tabs, UTF-16 little endian with its mark, CRLF; every maker's own numbers, no stock figures."""
    dice = Dice("Tavishollow")
    rows: list[tuple[str, ...]] = list(TAVISHOLLOW)
    for maker, count in (("Norrowby", 130), ("Ostrevik", 90), ("Corrivane", 130), ("Dunmarrow", 80)):
        mine = [one for one in listings if one.maker == maker]
        rows += [_tavishollow_row(listing, dice) for listing in dice.some(mine, count)]
    text = io.StringIO()
    lines = csv.writer(text, delimiter="\t", lineterminator="\r\n")
    lines.writerow(TAVISHOLLOW_COLUMNS)
    lines.writerows(sorted(rows))
    return b"\xff\xfe" + text.getvalue().encode("utf-16-le")


def _tavishollow_row(listing: Listing, dice: Dice) -> tuple[str, ...]:
    net = listing.cents * dice.number(58, 72) // 100
    availability = AT_ONCE if dice.chance(66) else dice.pick(WAITS)
    description = listing.part.comma_style()
    return listing.number, listing.maker, description, money(net), money(listing.cents), availability
