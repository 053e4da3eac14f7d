"""The kinds of problem found while reading a supplier's sheet."""

from .column_problem_kinds import COLUMN_KINDS
from .problem_kind import ProblemKind


def _kind(title: str, what: str, remedy: str) -> ProblemKind:
    return ProblemKind(title=title, what=what, remedy=remedy)


FILE_KINDS: dict[str, ProblemKind] = {
    "no-such-file": _kind(
        "File not found",
        "there is no file '{found}'",
        "check the name and the folder, then run the command again",
    ),
    "file-empty": _kind("Empty file", "the file is empty", "ask the supplier to send the sheet again"),
    "not-a-sheet": _kind(
        "Not a sheet",
        "this is no price sheet but {found}",
        "give a CSV, XLSX, XLS or ODS file",
    ),
    "workbook-damaged": _kind(
        "Damaged workbook",
        "the workbook is damaged or cut off and can't be opened",
        "open it in a spreadsheet and save it as XLSX, or ask the supplier to send it again",
    ),
    "password-protected": _kind(
        "Protected by a password",
        "the workbook is protected by a password",
        "open it with the password, save it without one and import that file",
    ),
    "unpacks-too-large": _kind(
        "Unpacks too large",
        "the workbook unpacks to {megabytes} MB, too much to read safely",
        "save the price table alone as CSV and import that file",
    ),
    "worksheet-too-wide": _kind(
        "Stray cell far off",
        "a worksheet reaches over {rows} rows and {columns} columns, too much to read",
        "delete the stray cells far right of or below the table, or save the table as CSV",
    ),
    "quote-not-closed": _kind(
        "Quote not closed",
        "a quotation mark opens a cell here and is never closed, so the rows after it can't be told apart",
        "remove or double the quotation mark and import the file again",
    ),
    "text-too-large": _kind(
        "Too many cells",
        "the file has {lines} lines with {cells} cells, too much to read safely",
        "split it into several files, or leave out the rows that are not needed",
    ),
    "cell-too-long": _kind(
        "Cell too long",
        "the workbook holds longer texts, or more of them, than a price sheet can have",
        "save the price table alone as CSV and import that file",
    ),
    "workbook-declares": _kind(
        "Workbook not written by a spreadsheet",
        "the workbook's XML declares a document type, which no spreadsheet writes and which can hide anything",
        "open it in a spreadsheet and save it as XLSX, or ask the supplier to send it again",
    ),
}

TABLE_KINDS: dict[str, ProblemKind] = {
    "no-table": _kind(
        "No price table",
        "no row of headers such as 'Part number' and 'Net price' was found",
        'add a header row, or tell what the columns mean with --column "Header=net price"',
    ),
    "no-number-column": _kind(
        "No number column",
        "no column is known to hold part numbers; the headers are {found}",
        'tell which one it is with --column "Header=supplier number"',
    ),
    "no-price-column": _kind(
        "No price column",
        "no column is known to hold prices; the headers are {found}",
        'tell which one it is with --column "Header=net price"',
    ),
    "price-column-unclear": _kind(
        "Net price or list price",
        "column '{found}' could be the net price or the list price",
        'confirm with --column "{found}=net price" or --column "{found}=list price"',
    ),
    "meaning-twice": _kind(
        "Two columns with one meaning",
        "more than one column means '{meaning}': {found}",
        'say which is not used, for example --column "{word}=not used"',
    ),
    "header-became-date": _kind(
        "Header turned into a date",
        "the quantity-break header '{found}' was turned into a date by a spreadsheet",
        "write the quantities back as text, such as 5-9, or ask the supplier to send the sheet again",
    ),
    "table-not-read": _kind(
        "Another table",
        "another table that lacks part numbers or prices stands here and was not read: {found}",
        "if it holds offers, name its columns with --column",
    ),
    "price-unit-unread": _kind(
        "Price per something else",
        "column '{found}' holds prices per {unit}, which can't be compared with prices for pieces",
        'leave it out with --column "{found}=not used"',
    ),
    "rows-hidden": _kind(
        "Hidden rows",
        "hidden rows were read like the others: {found}",
        "delete them in a spreadsheet and import again if they do not count",
    ),
    "columns-hidden": _kind(
        "Hidden columns",
        "hidden columns were read like the others: {found}",
        'leave one out with --column "Header=not used" if it does not count',
    ),
    "more-left-blank": _kind(
        "More cells left blank",
        "{count} more cells of this column can't be read and were left blank",
        "ask the supplier if they matter",
    ),
    "worksheet-hidden": _kind(
        "Hidden worksheet",
        "the worksheet is hidden and was not read",
        "show it in a spreadsheet, save and import again if its prices count",
    ),
    "currency-mixed": _kind(
        "Two currencies",
        "the sheet names more than one currency: {found}",
        "put each currency into a file of its own",
    ),
    "currency-not-known": _kind(
        "Currency not known",
        "neither the sheet nor the supplier's terms say which currency the prices are in",
        "add it to suppliers.toml and run 'sourcing setup' again, or say --currency when you only read the sheet",
    ),
    "currency-differs": _kind(
        "Another currency than agreed",
        "the sheet is in {found}, the supplier's terms are in {expected}",
        "correct the currency in suppliers.toml, or ask the supplier for a sheet in {expected}",
    ),
}

MENDED = "correct the cell and import the file again, or ask the supplier"

CELL_KINDS: dict[str, ProblemKind] = {
    "price-basis-differs": _kind(
        "Two units of the price",
        "the row says for how many pieces its price is in two ways: {found}",
        "ask the supplier which holds, correct the cell and import the file again",
    ),
    "discount-disagrees": _kind(
        "Multiplier and discount disagree",
        "multiplier and discount give two net prices: {found}",
        "ask the supplier which holds, or leave one column out with --column",
    ),
    "break-twice": _kind(
        "Two prices from one quantity",
        "there is a price from {found} pieces on already for this part number",
        MENDED,
    ),
    "number-missing": _kind("No part number", "the row has no part number: {found}", MENDED),
    "number-damaged": _kind(
        "Part number damaged",
        "'{found}' is what a spreadsheet makes of a part number, not the number itself{lost}",
        "write the number from the supplier's paper as text, or ask for the sheet as CSV",
    ),
    "number-lost-zero": _kind(
        "Leading zero lost",
        "'{found}' is shorter than the other numbers of the column, which begin with 0",
        "write the number as text with its zeros, or ask the supplier",
    ),
    "number-too-long": _kind("Not a part number", "'{found}' is too long for a part number", MENDED),
    "price-unreadable": _kind("Price unreadable", "'{found}' is no price", MENDED),
    "price-ambiguous": _kind(
        "Price unclear",
        "'{found}' can be read two ways, and no other cell of the column shows the decimal mark",
        "write the price with two decimals and import the file again",
    ),
    "price-mark-differs": _kind(
        "Decimal mark differs",
        "'{found}' is written with another decimal mark than the column, which uses '{mark}'",
        MENDED,
    ),
    "price-not-positive": _kind("Price of nothing or less", "'{found}' is no price one can pay", MENDED),
    "price-other-currency": _kind(
        "Price in another currency",
        "'{found}' is not in {currency}, the currency of the sheet",
        "put prices in another currency into a file of their own",
    ),
    "row-other-currency": _kind(
        "Row in another currency",
        "the row is in {found}, the sheet in {currency}",
        "put rows in another currency into a file of their own",
    ),
    "currency-cell-unreadable": _kind(
        "Unknown currency",
        "'{found}' is not a currency code of ISO 4217",
        "write the three-letter code, such as {currency}, and import the file again",
    ),
    "quantity-unreadable": _kind("Quantity unreadable", "'{found}' is no quantity of at least 1", MENDED),
    "quantity-ambiguous": _kind(
        "Quantity unclear",
        "'{found}' can be read two ways",
        "write it without a thousands mark and import the file again",
    ),
    "stock-unreadable": _kind(
        "Stock unreadable",
        "'{found}' is not understood as stock",
        'write pieces, yes or no, or leave the column out with --column "Header=not used"',
    ),
    "price-basis-unreadable": _kind(
        "Unit of the price unknown",
        "'{found}' does not say for how many pieces the price is",
        "write each, pack, 100 or 1000 and import the file again",
    ),
    "pack-unknown": _kind(
        "Pieces in a pack unknown",
        "the price is per '{found}', but the row does not say how many pieces that is",
        "add the pieces to the pack column and import the file again",
    ),
    "yes-or-no-unreadable": _kind("Not yes or no", "'{found}' is neither yes nor no", "write yes or no"),
    "row-too-wide": _kind(
        "More cells than headers",
        "the row has more cells than the header, so its cells stand under the wrong headers: {found}",
        "put quotation marks around the cell that holds the delimiter and import the file again",
    ),
    "row-swallowed-lines": _kind(
        "Stray quotation mark",
        "a quotation mark made one cell of several rows: {found}",
        "remove or double the quotation mark and import the file again",
    ),
    "day-unreadable": _kind("Day unreadable", "'{found}' is no day", "write it as 2026-12-05, or ask the supplier"),
    "day-unclear": _kind(
        "Day and month unclear",
        "'{found}' can be read with the day or the month first, and no other cell of the column tells which",
        "write it as 2026-12-05, or ask the supplier",
    ),
    "discount-unclear": _kind(
        "Discount unclear",
        "'{found}' does not say how many per cent are taken off the list price",
        "write it with its sign, such as 40%, or ask the supplier",
    ),
    "multiplier-unreadable": _kind(
        "Multiplier unreadable",
        "'{found}' is nothing a list price is multiplied with",
        "write a number above 0 and below 5, such as 0.62, or ask the supplier",
    ),
    "gtin-unreadable": _kind("GTIN unreadable", "'{found}' is no GTIN of 8, 12, 13 or 14 digits", MENDED),
    "gtin-check-digit": _kind(
        "GTIN with a wrong check digit",
        "the last digit of '{found}' does not fit the digits before it, so one of them is wrong",
        MENDED,
    ),
    "gtin-lost-zero": _kind(
        "Leading zero of a GTIN lost",
        "'{found}' is a GTIN that has lost its leading zeros",
        "write the GTIN as text with its zeros, or ask the supplier",
    ),
    "origin-unknown": _kind(
        "Country unknown",
        "'{found}' is no country by its ISO 3166 code or name",
        "write the two-letter code, such as TW, or ask the supplier",
    ),
    "tariff-code-unreadable": _kind(
        "Tariff code unreadable",
        "'{found}' is no tariff code of 6, 8 or 10 digits",
        MENDED,
    ),
    "tariff-code-lost-zero": _kind(
        "Leading zero of a tariff code lost",
        "'{found}' has one digit less than the other tariff codes of the column",
        "write the code as text with its zero, or ask the supplier",
    ),
    "weight-unreadable": _kind("Weight unreadable", "'{found}' is no weight", MENDED),
    "weight-unclear": _kind(
        "Weight unclear",
        "'{found}' can be read two ways, and no other cell of the column shows the decimal mark",
        "write the weight with two decimals and import the file again",
    ),
    "weight-unit-unknown": _kind(
        "Unit of the weight unknown",
        "neither '{found}' nor the header says whether the weight is in kg, g, lb or oz",
        "write the unit into the header, such as Weight (lb), and import the file again",
    ),
}

SHEET_KINDS: dict[str, ProblemKind] = {**FILE_KINDS, **TABLE_KINDS, **COLUMN_KINDS, **CELL_KINDS}
