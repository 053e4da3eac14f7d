"""The numbers and rows of the story that the demo tells; exact figures, checked by hand in the tests.

Moment: Tuesday 2026-01-13, 10:15; the parts must be in the shop on Friday 2026-01-16. The true belt is a B36 (36 in
inside) with aramid cord, wrapped. The near number NW-40338 is a 4L390: light duty, thinner, too weak.
"""

from .dice import key

OLD_BELT, NEW_BELT, NEAR_BELT = "NW-40388", "NW-41388", "NW-40338"

STORY_KEYS = tuple(
    key(number)
    for number in (
        OLD_BELT, NEW_BELT, NEAR_BELT, "NW-31207", "NW-22203", "NW-52626", "NW-10408", "NW-66120",
        "OV 20 417", "CV-B36K", "CV-K12", "6203-2RS", "DM-77120", "DM-6203RS",
        "KR-204.0388", "KR-310.0012", "PB-4038", "PB-3120", "PB-2220", "PB-5262", "PB-1040", "PB-6612",
    )
)  # fmt: skip
"""Numbers that chance must not hand out, nor any number one slip away from them."""

STONEGARTH_OLD = (
    ("AUGER BELTS", OLD_BELT, "Norrowby", "Belt, auger drive, B36 aramid", "189.95", "118.40", "4", "In stock", ""),
    ("BELT KEEPERS AND GUIDES", "NW-31207", "Norrowby", "Keeper, belt, engine", "13.95", "7.60", "18", "In stock", ""),
    ("BEARINGS", "NW-22203", "Norrowby", "Bearing, idler, 6203-2RS", "18.95", "9.35", "12", "In stock", ""),
    ("SCRAPER BARS", "NW-52626", "Norrowby", "Scraper bar, steel, 26 in", "79.95", "43.50", "6", "In stock", ""),
    ("SHEAR PINS AND BOLTS", "NW-10408", "Norrowby", "Shear pin, auger, 1/4 x 1-3/4", "2.75", "0.90", "160",
     "In stock", ""),
)  # fmt: skip
"""Section, then the sheet's columns."""

STONEGARTH_NEW = (
    ("AUGER BELTS", OLD_BELT, "Norrowby", "Belt, auger drive, B36 aramid", "", "", "", "No longer available", NEW_BELT),
    ("AUGER BELTS", NEW_BELT, "Norrowby", "Belt, auger drive, B36 aramid", "204.95", "127.90", "3", "In stock", ""),
    ("BELT KEEPERS AND GUIDES", "NW-31207", "Norrowby", "Keeper, belt, engine", "14.95", "8.10", "22", "In stock", ""),
    ("BEARINGS", "NW-22203", "Norrowby", "Bearing, idler, 6203-2RS", "19.95", "9.80", "9", "In stock", ""),
    ("SCRAPER BARS", "NW-52626", "Norrowby", "Scraper bar, steel, 26 in", "79.95", "43.50", "5", "In stock", ""),
    ("SHEAR PINS AND BOLTS", "NW-10408", "Norrowby", "Shear pin, auger, 1/4 x 1-3/4", "2.95", "0.95", "140",
     "In stock", ""),
)  # fmt: skip

KESSELRIED = (
    ("KR-204.0388", "Ostrevik", "OV 20 417", "Keilriemen Schneckenantrieb B36 Aramid", "89,40", "149,00", "1",
     "6", "ab Lager"),
    ("KR-310.0012", "Corrivane", "CV-K12", "Riemenhalter Motor", "5,60", "11,90", "1", "24", "ab Lager"),
)  # fmt: skip

LARKMOOR = (
    ("CV-B36K", "Corrivane", "Belt, auger, B36 aramid wrapped", "172.00", "104.50", 0, "5-7 days"),
    ("CV-K12", "Corrivane", "Keeper, belt, engine", "12.50", "6.90", 40, ""),
    ("6203-2RS", "Corrivane", "Bearing, ball, 6203-2RS", "16.00", "7.90", 60, ""),
    ("DM-77120", "Dunmarrow", "Belt auger drive B36", "139.00", "78.25", 11, ""),
)

PELLBROOK = (
    ("PB-4038", "Norrowby", NEW_BELT, "Auger drive belt B36", "198.00", ("119.00", "115.00", "109.00"), "EA", 1, "", 7),
    ("PB-3120", "Norrowby", "NW-31207", "Belt keeper, engine", "14.95", ("8.45", "8.10", "7.75"), "EA", 1, "", 15),
    ("PB-2220", "Corrivane", "6203-2RS", "Ball bearing 6203-2RS", "21.50", ("11.60", "11.10", "10.60"), "EA",
     1, "", 30),
    ("PB-5262", "Norrowby", "NW-52626", "Steel scraper bar 26 in", "84.95", ("46.00", "45.00", "43.00"), "EA",
     1, "", 4),
    ("PB-1040", "Norrowby", "NW-10408", "Auger shear pin 1/4 x 1-3/4", "295.00", ("85.00", "82.00", "79.00"),
     "C", 10, "", 600),
    ("PB-6612", "Norrowby", "NW-66120", "Electric starter 120 V", "289.00", ("186.00", "181.00", "176.00"),
     "EA", 1, "25.00", 3),
)  # fmt: skip
"""Columns of the sheet, the three breaks together; the shear pins are priced and listed per hundred."""

AT_ONCE = "In stock, ships same day"

TAVISHOLLOW = (
    ("OV 20 417", "Ostrevik", "Belt, auger drive, B36 aramid", "136.00", "199.00", AT_ONCE),
    (NEAR_BELT, "Norrowby", "Belt, auger drive, 4L390 1/2 x 39", "31.50", "49.95", AT_ONCE),
    ("6203-2RS", "Corrivane", "Bearing, ball, 6203-2RS", "12.40", "19.00", AT_ONCE),
    ("NW-31207", "Norrowby", "Keeper, belt, engine", "9.95", "15.50", AT_ONCE),
)
