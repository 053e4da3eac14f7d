"""The kinds of part a dealer for outdoor power equipment lists, with invented price ranges.

Belt, bearing and chain designations are those of open standards (belts: letter and inside length in inches, or 4L/5L
and outside length in tenths of an inch; bearings: ISO 15 numbers; chain: ASME B29.1 and ISO 606 numbers).
"""

from dataclasses import dataclass

BEARINGS = [
    "608",
    "6000",
    "6001",
    "6002",
    "6003",
    "6004",
    "6005",
    "6006",
    "6200",
    "6201",
    "6202",
    "6204",
    "6205",
    "6206",
    "6207",
    "6300",
    "6301",
    "6302",
    "6303",
    "6304",
    "6305",
]
"""Without 6203: the demo's idler bearing stands in the story rows only."""

WIDTHS = ("21 in", "22 in", "24 in", "26 in", "28 in", "30 in", "32 in", "36 in")
HORSE_POWER = ("5 hp", "6 hp", "7 hp", "8 hp", "9 hp", "10 hp", "11 hp", "13 hp")
BOLTS = ("1/4 x 1-1/4", "1/4 x 1-1/2", "1/4 x 1-3/4", "5/16 x 1-1/2", "5/16 x 1-3/4", "5/16 x 2", "M6 x 40", "M6 x 45")


@dataclass(frozen=True)
class Family:
    """One kind of part: what it is called in English and German, its prices in cents, its share of number ranges.

    `uses` pairs English with German words. `per_hundred`: pieces in a pack of goods priced per hundred, 0 for none.
    """

    section: str
    noun: str
    german: str
    uses: tuple[tuple[str, str], ...]
    specs: tuple[str, ...]
    cents: tuple[int, int]
    count: int
    norrowby: str
    corrivane: str
    dunmarrow: str
    ostrevik: str = ""
    per_hundred: int = 0
    core: bool = False


def _belts(low: int, high: int, step: int) -> tuple[str, ...]:
    """Belt sizes of sections A, B, 4L, 5L. Left out: B36 and what fits its place, so that the story stays clear."""
    classical = [f"{letter}{size}" for size in range(low, high, step) for letter in "AB"]
    light = [f"{letter}L{size}0" for size in range(low + 1, high, step) for letter in "45"]
    return tuple(size for size in classical + light if size not in ("B36", "A36", "4L390", "5L390", "4L380"))


PULLEY_SIZES = tuple(
    f"{size} in"
    for size in ["2", "2-1/4", "2-1/2", "2-3/4", "3", "3-1/4", "3-1/2", "4", "4-1/2", "5", "6", "7-1/2", "8-1/4", "9"]
)
AUGER = ("auger drive", "Schneckenantrieb")
TRACTION = ("traction drive", "Fahrantrieb")

FAMILIES = (
    Family(
        "AUGER BELTS", "Belt", "Keilriemen",
        (AUGER,),
        _belts(26, 56, 1),
        (2890, 9890), 95, "40", "B", "77", "20",
    ),
    Family(
        "TRACTION BELTS", "Belt", "Keilriemen",
        (TRACTION,),
        _belts(28, 62, 1),
        (2490, 8490), 80, "42", "B", "78", "21",
    ),
    Family(
        "DECK AND PTO BELTS", "Belt", "Keilriemen",
        (("deck drive", "Mähdeck"), ("PTO", "Zapfwelle"), ("pump drive", "Pumpenantrieb")),
        _belts(64, 128, 2),
        (3290, 13900), 150, "44", "B", "79",
    ),
    Family(
        "BEARINGS", "Bearing", "Rillenkugellager",
        (("ball", "einreihig"),),
        tuple(f"{size}-{seal}" for size in BEARINGS for seal in ("2RS", "ZZ")),
        (690, 3490), 42, "22", "", "", "31",
    ),
    Family(
        "ROLLER CHAIN", "Chain", "Rollenkette",
        (("roller, 10 ft", "10 ft"), ("connecting link", "Verschlussglied"), ("offset link", "gekröpftes Glied"),
         ("roller, 44 links", "44 Glieder"), ("roller, 36 links", "36 Glieder")),
        ("#25", "#35", "#40", "#41", "#50", "#60", "06B-1", "08B-1"),
        (190, 5900), 36, "24", "C", "64", "33",
    ),
    Family(
        "BELT KEEPERS AND GUIDES", "Keeper", "Riemenhalter",
        (("belt, engine", "Motor"), ("belt, idler", "Spannrolle"), ("belt guide", "Riemenführung"),
         ("belt finger", "Finger")),
        WIDTHS,
        (690, 2490), 28, "31", "K", "36", "41",
    ),
    Family(
        "FILTERS", "Filter", "Filter",
        (("air, paper", "Luft, Papier"), ("air, foam", "Luft, Schaumstoff"), ("fuel, in-line", "Kraftstoff"),
         ("oil, spin-on", "Öl"), ("hydrostatic oil", "Hydrostatöl")),
        (*HORSE_POWER, "16 hp", "18 hp", "20 hp", "24 hp"),
        (490, 3990), 56, "12", "F", "21",
    ),
    Family(
        "SHEAR PINS AND BOLTS", "Shear pin", "Scherstift",
        (("auger", "Schnecke"), ("impeller", "Wurfrad"), ("auger, with nut", "Schnecke, mit Mutter")),
        BOLTS,
        (165, 690), 22, "10", "P", "11", per_hundred=10,
    ),
    Family(
        "CABLES", "Cable", "Bowdenzug",
        (("auger clutch", "Schneckenkupplung"), ("drive clutch", "Fahrkupplung"), ("speed selector", "Gangwahl"),
         ("chute deflector", "Auswurfklappe"), ("throttle", "Gas"), ("blade brake", "Messerbremse")),
        tuple(f"{inches} in" for inches in range(28, 68, 2)),
        (1490, 5490), 105, "17", "W", "45",
    ),
    Family(
        "CARBURETOR PARTS", "Carburetor", "Vergaser",
        (("rebuild kit", "Reparatursatz"), ("gasket kit", "Dichtsatz"), ("float kit", "Schwimmersatz"),
         ("bowl", "Schwimmerkammer"), ("assembly", "komplett"), ("needle and seat", "Schwimmernadel"),
         ("primer bulb", "Primerpumpe")),
        HORSE_POWER,
        (590, 9890), 54, "14", "R", "52",
    ),
    Family(
        "FRICTION WHEELS", "Friction wheel", "Reibrad",
        (("rubber ring", "Gummiring"), ("disc", "Scheibe"), ("hub", "Nabe"), ("with hub", "mit Nabe")),
        ("4-1/4 in", "4-3/8 in", "5 in", "5-1/2 in", "6 in", "6-1/8 in"),
        (1890, 8490), 22, "28", "D", "33", "25",
    ),
    Family(
        "SKID SHOES", "Skid shoe", "Gleitkufe",
        (("steel, pair", "Stahl, Paar"), ("steel, reversible", "Stahl, wendbar"), ("poly, pair", "Kunststoff, Paar"),
         ("poly", "Kunststoff")),
        WIDTHS,
        (1290, 5990), 30, "53", "S", "84",
    ),
    Family(
        "SCRAPER BARS", "Scraper bar", "Schürfleiste",
        (("steel", "Stahl"), ("poly", "Kunststoff"), ("steel, heavy", "Stahl, verstärkt")),
        tuple(width for width in WIDTHS if width != "26 in"),
        (3490, 9990), 20, "52", "L", "86",
    ),
    Family(
        "SPARK PLUGS", "Spark plug", "Zündkerze",
        (("14 mm", "14 mm"), ("14 mm resistor", "14 mm entstört")),
        ("3/8 in reach", "1/2 in reach", "3/4 in reach", "12.7 mm reach", "19 mm reach"),
        (290, 890), 10, "11", "Z", "15",
    ),
    Family(
        "STARTERS", "Starter", "Anlasser",
        (("electric, 120 V", "elektrisch, 120 V"), ("electric, 12 V", "elektrisch, 12 V"),
         ("solenoid type", "mit Magnetschalter")),
        HORSE_POWER,
        (14900, 34900), 24, "66", "E", "91", core=True,
    ),
    Family(
        "RECOIL PARTS", "Recoil starter", "Seilzugstarter",
        (("assembly", "komplett"), ("pulley", "Seilrolle"), ("spring", "Feder"), ("pawl kit", "Klinkensatz")),
        HORSE_POWER,
        (490, 7990), 30, "67", "Y", "92",
    ),
    Family(
        "PULLEYS AND IDLERS", "Pulley", "Riemenscheibe",
        (("idler, flat", "Spannrolle, flach"), ("idler, V", "Spannrolle, V"), ("engine, A groove", "Motor, Rille A"),
         ("engine, B groove", "Motor, Rille B"), ("impeller", "Wurfrad"), ("deck spindle", "Messerwelle")),
        PULLEY_SIZES,
        (1290, 8990), 78, "26", "U", "34", "27",
    ),
    Family(
        "SPRINGS", "Spring", "Feder",
        (("extension, idler", "Zugfeder, Spannarm"), ("extension, clutch", "Zugfeder, Kupplung"),
         ("torsion, lever", "Drehfeder, Hebel"), ("governor", "Regler"), ("brake return", "Bremse")),
        tuple(f"{size} in" for size in ("1-1/2", "2", "2-1/2", "3", "3-3/4", "4-1/2", "5-1/4", "6", "7", "8", "9")),
        (290, 1690), 50, "19", "G", "38",
    ),
    Family(
        "SEALS AND GASKETS", "Seal", "Dichtung",
        (("shaft", "Wellendichtring"), ("crankcase gasket", "Kurbelgehäuse"), ("head gasket", "Zylinderkopf"),
         ("exhaust gasket", "Auspuff"), ("intake gasket", "Ansaugung"), ("gearbox kit", "Getriebe, Satz")),
        (*HORSE_POWER, "3/4 x 1-1/4", "1 x 1-5/8", "17 x 35 x 7 mm", "20 x 40 x 7 mm", "25 x 47 x 7 mm"),
        (290, 4990), 70, "15", "Q", "23", "52",
    ),
    Family(
        "AUGER GEARBOX", "Gearbox", "Getriebe",
        (("assembly", "komplett"), ("worm gear", "Schneckenrad"), ("worm shaft", "Schneckenwelle"),
         ("housing half", "Gehäusehälfte"), ("input shaft", "Eingangswelle"), ("bushing", "Buchse"),
         ("thrust washer", "Anlaufscheibe")),
        ("OK-8", "OK-10", "OK-12", "OK-14", "OK-16", "OK-18"),
        (390, 149900), 40, "57", "X", "48", "60",
    ),
    Family(
        "AUGERS AND IMPELLERS", "Auger", "Räumschnecke",
        (("left", "links"), ("right", "rechts"), ("flight, left", "Segment links"),
         ("flight, right", "Segment rechts"), ("shaft", "Welle"), ("impeller", "Wurfrad")),
        WIDTHS,
        (3990, 32900), 44, "58", "A", "81",
    ),
    Family(
        "CHUTE PARTS", "Chute", "Auswurfkamin",
        (("assembly", "komplett"), ("deflector", "Klappe"), ("ring gear", "Zahnkranz"), ("crank rod", "Kurbelstange"),
         ("clamp", "Klemme"), ("worm", "Schnecke")),
        WIDTHS,
        (390, 12900), 46, "61", "H", "71",
    ),
    Family(
        "WHEELS AND TIRES", "Wheel goods", "Rad",
        (("wheel assembly", "komplett"), ("tire", "Reifen"), ("tube", "Schlauch"), ("rim", "Felge"),
         ("tire chains, pair", "Schneeketten, Paar")),
        ("13 x 4.00-6", "13 x 5.00-6", "14 x 4.50-6", "15 x 5.00-6", "16 x 4.80-8", "16 x 6.50-8"),
        (790, 11900), 28, "62", "T", "72",
    ),
    Family(
        "ELECTRICAL", "Electrical", "Elektrik",
        (("ignition switch", "Zündschalter"), ("interlock switch", "Sicherheitsschalter"),
         ("LED light", "LED-Leuchte"), ("ignition coil", "Zündspule"), ("stator", "Lichtmaschine"),
         ("harness", "Kabelbaum"), ("regulator", "Regler")),
        HORSE_POWER,
        (590, 12900), 52, "68", "J", "94",
    ),
    Family(
        "CONTROLS", "Control", "Bedienteil",
        (("lever, left", "Hebel links"), ("lever, right", "Hebel rechts"), ("knob", "Knauf"), ("grip", "Griff"),
         ("bracket", "Halter"), ("rod", "Stange")),
        WIDTHS,
        (290, 4490), 46, "69", "N", "96",
    ),
    Family(
        "HARDWARE", "Hardware", "Normteil",
        (("cotter pin", "Splint"), ("hairpin", "Federstecker"), ("flange nut", "Bundmutter"),
         ("flat washer", "Unterlegscheibe"), ("carriage bolt", "Schlossschraube"), ("roll pin", "Spannstift"),
         ("Woodruff key", "Scheibenfeder")),
        ("3/32 x 3/4", "1/8 x 1", "3/16 x 1", "1/4-20", "5/16-18", "3/8-16", "1/4 x 3/4", "5/16 x 1", "3/8 x 1", "M6",
         "M8", "M10"),
        (45, 390), 80, "18", "V", "12", per_hundred=25,
    ),
    Family(
        "TRANSMISSION", "Drive", "Antrieb",
        (("hydrostatic fan", "Hydrostatlüfter"), ("pinion", "Ritzel"), ("axle", "Achse"),
         ("differential lock", "Sperre"), ("gear", "Zahnrad"), ("clutch arm", "Kupplungsarm")),
        ("8 T", "10 T", "12 T", "14 T", "18 T", "22 T", "24 in", "28 in", "32 in"),
        (990, 18900), 48, "29", "M", "35", "28",
    ),
)  # fmt: skip
