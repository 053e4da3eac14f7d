"""The shop's equivalence table: its own parts, and statements that tie them to the makers' numbers."""

from openpyxl import Workbook

from .catalogue import Part
from .dice import Dice
from .story import NEW_BELT, OLD_BELT
from .workbooks import saved, table

PART_COLUMNS = ("code", "name", "size", "category", "note")
STATEMENT_COLUMNS = (
    "left maker", "left number", "relation", "count", "right maker", "right number",
    "condition", "standing", "source", "stated on", "stated by",
)  # fmt: skip
OURS = "(ours)"
GRETA, OONA, PIET = "Greta Lindqvare", "Oona Brandeth", "Piet Halloway-Rusk"
PARTS_LIST = "Norrowby parts list NW-826"

Statement = tuple[str, str, str, int, str, str, str, str, str, str, str]

STORY_PARTS = (
    ("BELT-AUGER", "Auger drive belt", "B36", "belts", "aramid cord, wrapped; size and construction both matter"),
    ("KEEPER-BELT", "Belt keeper", "", "belts", "two on the machine; fit both"),
    ("BRG-IDLER", "Idler bearing", "6203-2RS", "bearings", "in the auger drive idler"),
    ("BAR-SCRAPER", "Scraper bar 26 in", "", "wear parts", ""),
    ("PIN-SHEAR", "Auger shear pin", "", "wear parts", "soft on purpose: never a plain bolt"),
    ("STARTER-120V", "Electric starter 120 V", "", "electrical", "core charge: send the old one back"),
)


def _said(left: tuple[str, str], relation: str, right: tuple[str, str], standing: str, *rest: str) -> Statement:
    """A statement; `rest` is source, day, who, and a condition where there is one."""
    source, day, who, *condition = rest
    return (*left, relation, 1, *right, "".join(condition), standing, source, day, who)


BELT = ("Norrowby", OLD_BELT)
KEEPER = ("Norrowby", "NW-31207")
BEARING = ("Norrowby", "NW-22203")
SAME = "same part"
STORY_STATEMENTS: tuple[Statement, ...] = (
    _said((OURS, "BELT-AUGER"), SAME, BELT, "maker", PARTS_LIST, "2024-10-21", OONA),
    _said(BELT, "superseded by", ("Norrowby", NEW_BELT), "maker", "Norrowby service letter 25-07", "2025-12-15", OONA),
    _said(BELT, SAME, ("Ostrevik", "OV 20 417"), "maker", "Ostrevik drive OK-12 parts list", "2024-10-21", OONA),
    _said(BELT, SAME, ("Corrivane", "CV-B36K"), "fitted", "fitted on job 2025-0193, served", "2025-03-04", PIET),
    _said(BELT, SAME, ("Dunmarrow", "DM-77120"), "supplier", "Larkmoor's cross list", "2025-11-18", OONA),
    _said((OURS, "KEEPER-BELT"), SAME, KEEPER, "maker", PARTS_LIST, "2024-10-21", OONA),
    _said(KEEPER, SAME, ("Corrivane", "CV-K12"), "fitted", "fitted on job 2025-0193, served", "2025-03-04", PIET),
    _said((OURS, "BRG-IDLER"), SAME, BEARING, "maker", PARTS_LIST, "2024-10-21", OONA),
    _said(BEARING, SAME, ("Corrivane", "6203-2RS"), "maker", "Corrivane bearing list 2025", "2025-02-11", OONA),
    _said(BEARING, SAME, ("Dunmarrow", "DM-6203RS"), "maker", "Dunmarrow bearing list 2025", "2025-02-11", OONA),
    _said((OURS, "BAR-SCRAPER"), SAME, ("Norrowby", "NW-52626"), "maker", PARTS_LIST, "2024-10-21", OONA),
    _said((OURS, "PIN-SHEAR"), SAME, ("Norrowby", "NW-10408"), "maker", PARTS_LIST, "2024-10-21", OONA),
    _said((OURS, "STARTER-120V"), SAME, ("Norrowby", "NW-66120"), "maker", PARTS_LIST, "2024-10-21", OONA),
)

OTHER_PARTS = (
    ("BELT-TRACTION", "TRACTION BELTS", "traction drive", "belts"),
    ("BELT-DECK", "DECK AND PTO BELTS", "deck drive", "belts"),
    ("BELT-PTO", "DECK AND PTO BELTS", "PTO", "belts"),
    ("BELT-PUMP", "DECK AND PTO BELTS", "pump drive", "belts"),
    ("BRG-WHEEL", "BEARINGS", "ball", "bearings"),
    ("CHAIN-AXLE", "ROLLER CHAIN", "roller, 44 links", "chain"),
    ("CHAIN-LINK", "ROLLER CHAIN", "connecting link", "chain"),
    ("FILTER-AIR", "FILTERS", "air, paper", "filters"),
    ("FILTER-FUEL", "FILTERS", "fuel, in-line", "filters"),
    ("FILTER-OIL", "FILTERS", "oil, spin-on", "filters"),
    ("CABLE-AUGER", "CABLES", "auger clutch", "cables"),
    ("CABLE-DRIVE", "CABLES", "drive clutch", "cables"),
    ("CABLE-SPEED", "CABLES", "speed selector", "cables"),
    ("CARB-KIT", "CARBURETOR PARTS", "rebuild kit", "engine"),
    ("WHEEL-FRICTION", "FRICTION WHEELS", "rubber ring", "drive"),
    ("SHOE-SKID", "SKID SHOES", "steel, pair", "wear parts"),
    ("PULLEY-IDLER", "PULLEYS AND IDLERS", "idler, flat", "drive"),
    ("SPRING-IDLER", "SPRINGS", "extension, idler", "drive"),
    ("SEAL-SHAFT", "SEALS AND GASKETS", "shaft", "seals"),
    ("KIT-GEARBOX-SEAL", "SEALS AND GASKETS", "gearbox kit", "seals"),
    ("GEAR-WORM", "AUGER GEARBOX", "worm gear", "drive"),
    ("CHUTE-RING", "CHUTE PARTS", "ring gear", "chute"),
    ("WHEEL-TIRE", "WHEELS AND TIRES", "tire", "wheels"),
    ("SWITCH-IGNITION", "ELECTRICAL", "ignition switch", "electrical"),
    ("FAN-HYDRO", "TRANSMISSION", "hydrostatic fan", "drive"),
)
"""Code, family section, use, category: for each, one part of the catalogue that two makers sell."""

SIZED = ("BELTS", "BEARINGS", "CHAIN")


def equivalence_table(all_parts: list[Part]) -> bytes:
    """The workbook with worksheets 'parts' and 'statements'."""
    dice = Dice("equivalence")
    ours = [(code, category, _chosen(all_parts, section, use)) for code, section, use, category in OTHER_PARTS]
    entries = [(code, part.plain_style(), _size(part), category, "") for code, category, part in ours]
    said = [statement for code, _, part in ours for statement in _ties(code, part, dice)]
    book = Workbook()
    book.remove(book.worksheets[0])
    table("parts", PART_COLUMNS, [*STORY_PARTS, *entries], book)
    statements = [*STORY_STATEMENTS, *said, *_particular(all_parts)]
    table("statements", STATEMENT_COLUMNS, [[cell or None for cell in row] for row in statements], book)
    return saved(book)


def _chosen(all_parts: list[Part], section: str, use: str) -> Part:
    """The first part of that kind that the machine maker and another maker sell."""
    kind = [part for part in all_parts if part.family.section == section and part.use == use]
    shared = [part for part in kind if part.numbers[0][0] == "Norrowby" and len(part.numbers) > 1]
    if not shared:
        raise ValueError(f"no {section} '{use}' is sold by Norrowby and another maker: change families.py or the list")
    return shared[0]


def _size(part: Part) -> str:
    """Only a designation by a published standard counts as a size; of chain, the numbers with # as printed."""
    return part.spec if part.family.section.endswith(SIZED) else ""


def _ties(code: str, part: Part, dice: Dice) -> list[Statement]:
    """The machine maker's number from its parts list, the others' as such statements come to a shop."""
    first, *others = part.numbers
    model = dice.pick(("NW-624", "NW-826", "NW-828", "NW-1030"))
    ties = [_said((OURS, code), SAME, first, "maker", f"Norrowby parts list {model}", "2024-10-21", OONA)]
    for number in others:
        ties.append(_said(first, SAME, number, *_source(number[0], dice)))
    return ties


def _source(maker: str, dice: Dice) -> tuple[str, str, str, str]:
    """Standing, source, day and who."""
    job = f"fitted on job 2025-{dice.number(20, 180):04d}, served"
    fitted = ("fitted", job, f"2025-{dice.number(1, 5):02d}-{dice.number(10, 28)}", PIET)
    cross = ("supplier", "Larkmoor's cross list", "2025-11-18", OONA)
    if maker == "Ostrevik":
        return "maker", "Ostrevik parts list 2025", "2025-02-11", OONA
    if maker == "Corrivane":
        return dice.pick((fitted, ("maker", "Corrivane catalog 2025", "2025-02-11", OONA), cross))
    return dice.pick((cross, cross, ("unchecked", "heard at the counter", "2025-09-02", OONA)))


def _particular(all_parts: list[Part]) -> list[Statement]:
    """A few statements of the other relations: a kit's contents, a substitute with its condition, what must not be."""
    kit = _chosen(all_parts, "CARBURETOR PARTS", "rebuild kit").numbers[0]
    gaskets = _chosen(all_parts, "CARBURETOR PARTS", "gasket kit").numbers[0]
    steel = _chosen(all_parts, "SKID SHOES", "steel, pair").numbers[0]
    poly = _chosen(all_parts, "SKID SHOES", "poly, pair").numbers[0]
    paper = _chosen(all_parts, "FILTERS", "air, paper").numbers[0]
    foam = _chosen(all_parts, "FILTERS", "air, foam").numbers[0]
    bolt = _chosen(all_parts, "HARDWARE", "carriage bolt").numbers[0]
    return [
        _said(kit, "kit contains", gaskets, "maker", "Norrowby parts list NW-826", "2024-10-21", OONA),
        _said(steel, "substitute", poly, "fitted", "fitted on job 2025-0041, served", "2025-01-28", PIET,
              "the customer clears paving and wants it unscratched"),
        _said(paper, "must not", foam, "fitted", "tried 2024-11, leaks dust past the seat", "2024-11-14", PIET),
        _said((OURS, "PIN-SHEAR"), "must not", bolt, "maker", "Norrowby owner's manual NW-826: use shear pins only",
              "2024-10-21", GRETA),
    ]  # fmt: skip
