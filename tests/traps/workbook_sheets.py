"""Workbooks whose trap is in what a spreadsheet does: formats, formulas, hidden and merged cells, odd dimensions."""

from tests.traps.workbook_writer import Cell, Fault, Formula, Number, Rich, Sheet, workbook

HEADER: list[Cell] = ["Part Number", "Description", "Net Price", "Stock"]
BELT: list[Cell] = ["NW-40388", "Belt auger drive", Number("119"), Number("2")]
BEARING: list[Cell] = ["NW-3120", "Idler bearing", Number("11.6"), Number("18")]
KIT: list[Cell] = ["OS-2210", "Gearbox seal kit", Number("26.4"), Number("5")]
SHOE: list[Cell] = ["NW-5501", "Skid shoe", Number("14.25"), Number("7")]
DOLLARS, EUROS = '"$"#,##0.00', "#,##0.00\\ [$€-407]"
DAY = "yyyy\\-mm\\-dd"


def named(number: Cell, description: str, *rest: Cell) -> list[Cell]:
    """A row with another number or more cells."""
    return [number, description, *rest]


def cell_sheets() -> dict[str, bytes]:
    """Workbooks whose cells are the trap."""
    numbers = [
        named(Number("123", "000000"), "Shear bolt kit", Number("3.15")),
        named(Number("40388", "0000000"), "Belt auger drive", Number("119")),
        named(Number("55", '"NW-"00000'), "Skid shoe", Number("14.25")),
        named("0002210", "Gearbox seal kit", Number("26.4")),
    ]
    money = [
        named("NW-40388", "Belt auger drive", Number("1119", DOLLARS)),
        named("NW-3120", "Idler bearing", Number("11.6", DOLLARS)),
        named("KR-204.0388", "Keilriemen", Number("89.4", EUROS)),
        named("OS-2210", "Gearbox seal kit", Number("26.4", "0.00")),
    ]
    formulas = [
        named("NW-40388", "Belt auger drive", Number("140"), Formula("C2*0.85", "119")),
        named("NW-3120", "Idler bearing", Number("16.2"), Formula("C3*0.72")),
        named("OS-2210", "Gearbox seal kit", Number("33"), Formula("C4*0.8", "26.4")),
    ]
    faults = [BELT, named("NW-3120", "Idler bearing", Fault("#REF!"), Number("18")),
              named("OS-2210", "Gearbox seal kit", Fault("#N/A"), Number("5")), SHOE]  # fmt: skip
    noise = [
        named("NW-3120", "Idler bearing", Number("12.499999999999998")),
        named("NW-1041", "Shear bolt nut", Number("0.30000000000000004")),
        named("NW-40388", "Belt auger drive", Number("1.19E2")),
    ]
    long = [
        named(Number("123456789012"), "Auger gearbox", Number("310")),
        named(Number("40388"), "Belt auger drive", Number("119")),
        named(Number("4.1003882201990001E+18"), "Gearbox housing", Number("96")),
    ]
    three = HEADER[:3]
    return {
        "number-format-with-zeros.xlsx": _one(three, *numbers),
        "currency-only-in-the-format.xlsx": _one(three, *money),
        "formula-without-a-value.xlsx": _one(["Part Number", "Description", "List Price", "Net Price"], *formulas),
        "error-values.xlsx": _one(HEADER, *faults),
        "binary-noise-in-prices.xlsx": _one(three, *noise),
        "long-number-shown-as-exponent.xlsx": _one(three, *long),
        "text-in-runs.xlsx": _one(
            HEADER,
            named(Rich(("NW-", "40388")), "Belt auger drive", Number("119"), Number("2")),
            named("NW-3120", "  Idler bearing ", Rich(("11", ".60")), Number("18")),
        ),
    }


def more_cell_sheets() -> dict[str, bytes]:
    """Workbooks with per cents, dates and yes or no as cells."""
    discount: list[Cell] = ["Part Number", "Description", "List Price", "Discount"]
    dates: list[Cell] = ["Part Number", "Description", "Net Price", "Valid To"]
    yes: list[Cell] = ["Part Number", "Description", "Net Price", "Oversize"]
    return {
        "discount-in-per-cent-format.xlsx": _one(
            discount,
            named("NW-01220", "Belt keeper pair", Number("10"), Number("0.38", "0%")),
            named("NW-3120", "Idler bearing", Number("16.25"), Number("0.275", "0.0%")),
        ),
        "dates-as-date-cells.xlsx": _one(
            dates,
            named("NW-40388", "Belt auger drive", Number("119"), Number("46203", DAY)),
            named("NW-3120", "Idler bearing", Number("11.6"), Number("46203", "m/d/yy")),
        ),
        "number-became-a-date-cell.xlsx": _one(
            HEADER[:3],
            named("5-12-A", "Skid shoe", Number("14.25")),
            named(Number("46084", "d\\-mmm"), "Scraper bar", Number("22.1")),
            named("40-388", "Belt auger drive", Number("119")),
        ),
        "yes-and-no-as-truth-cells.xlsx": _one(
            yes,
            named("NW-82600", "Auger housing", Number("1049"), True),
            named("NW-3120", "Idler bearing", Number("11.6"), False),
            named("OS-2210", "Gearbox seal kit", Number("26.4")),
        ),
    }


def damaged_cell_sheets() -> dict[str, bytes]:
    """Workbooks whose cells a spreadsheet made something else of, and a price whose unit only its format shows."""
    three = HEADER[:3]
    return {
        "price-became-a-date-cell.xlsx": _one(
            HEADER, BELT, named("NW-3120", "Idler bearing", Number("46358", "d\\-mmm"), Number("18")), KIT
        ),
        "price-basis-only-in-the-format.xlsx": _one(
            three,
            named("NW-1040", "Shear bolt M8", Number("105", '0.00"/C"')),
            named("NW-40388", "Belt auger drive", Number("119", "0.00")),
        ),
        "damaged-number-cells.xlsx": _one(
            HEADER,
            BELT,
            named(Number("1.1"), "Idler bearing", Number("11.6"), Number("18")),
            named(True, "Skid shoe", Number("14.25"), Number("7")),
            KIT,
        ),
    }


def layout_sheets() -> dict[str, bytes]:
    """Workbooks whose rows, columns and worksheets are the trap."""
    cover = Sheet("Cover", [["Larkmoor Wholesale"], ["Dealer price list"], [], ["Valid from 2026-01-07"]])
    terms = Sheet("Terms", [["Terms"], ["Freight", "9.50 per order"], ["Minimum order", Number("25")]])
    second: list[Cell] = ["Description", "Net Price", "Part Number"]
    gears = Sheet("Gearboxes", [second, ["Auger gearbox", Number("310"), "OS-2218"]])
    hidden_cells = Sheet("Prices", [HEADER, BELT, BEARING, KIT, SHOE], hidden_rows=(3, 4), hidden_columns=(2,))
    old = Sheet("Old prices", [HEADER, named("NW-40388", "Belt auger drive", Number("99"), Number("2"))], hidden=True)
    indent: list[Cell] = [None, None]
    return {
        "cover-terms-and-prices.xlsx": workbook(cover, terms, Sheet("Prices", [HEADER, BELT, BEARING])),
        "two-price-worksheets.xlsx": workbook(Sheet("Belts", [HEADER, BELT, BEARING]), gears),
        "hidden-rows-and-columns.xlsx": workbook(hidden_cells),
        "hidden-worksheet.xlsx": workbook(Sheet("Prices", [HEADER, BELT, BEARING]), old),
        "table-not-at-the-corner.xlsx": workbook(
            Sheet("Prices", [[], [], [], indent + HEADER, [], indent + BELT, indent + KIT], dimension="C4:F7")
        ),
        "stated-dimension-too-small.xlsx": workbook(Sheet("Prices", [HEADER, BELT, BEARING, KIT], dimension="A1:B2")),
        "stated-dimension-too-large.xlsx": workbook(
            Sheet("Prices", [HEADER, BELT, BEARING, KIT], dimension="A1:XFD1048576")
        ),
        "macros.xlsm": workbook(Sheet("Prices", [HEADER, BELT]), extra={"xl/vbaProject.bin": b"Sub Auto_Open()\r\n"}),
    }


def merged_sheets() -> dict[str, bytes]:
    """Workbooks with merged cells: only the first cell of an area holds its text."""
    group: list[Cell] = ["Part Number", "Description", "Net Price by Quantity"]
    brands: list[Cell] = ["Brand", "Part Number", "Description", "Net Price"]
    return {
        "merged-header-over-price-breaks.xlsx": workbook(
            Sheet(
                "Prices",
                [group, [None, None, "1-9", "10-49", "50+"],
                 named("NW-1040", "Shear bolt M8", Number("1.25"), Number("1.1"), Number("0.98")),
                 named("NW-3120", "Idler bearing", Number("12.4"), Number("11.6"))],
                merged=("A1:A2", "B1:B2", "C1:E1"),
            )
        ),
        "header-in-two-rows.xlsx": workbook(
            Sheet(
                "Prices",
                [["Part", None, "Price"], ["Number", "Description", "List", "Net"],
                 named("NW-40388", "Belt auger drive", Number("140"), Number("119")),
                 named("NW-3120", "Idler bearing", Number("16.2"), Number("11.6"))],
                merged=("C1:D1",),
            )
        ),
        "merged-maker-cells.xlsx": workbook(
            Sheet(
                "Prices",
                [brands, named("Norrowby", "NW-40388", "Belt auger drive", Number("119")),
                 named(None, "NW-3120", "Idler bearing", Number("11.6")),
                 named(None, "NW-5501", "Skid shoe", Number("14.25")),
                 named("Ostrevik", "OS-2210", "Gearbox seal kit", Number("26.4")),
                 named(None, "OS-2218", "Gearbox housing", Number("96"))],
                merged=("A2:A4", "A5:A6"),
            )
        ),
        "merged-section-rows.xlsx": workbook(
            Sheet(
                "Prices",
                [["Tavishollow Engine Supply"], HEADER, ["AUGER BELTS"], BELT, ["BEARINGS"], BEARING, KIT],
                merged=("A1:D1", "A3:D3", "A5:D5"),
            )
        ),
    }  # fmt: skip


def _one(*rows: list[Cell]) -> bytes:
    return workbook(Sheet("Prices", rows))


def workbook_sheets() -> dict[str, bytes]:
    """Name to bytes."""
    return cell_sheets() | more_cell_sheets() | damaged_cell_sheets() | layout_sheets() | merged_sheets()
