"""The kinds of problem found while reading a supplier's sheet."""

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
    "second-table": _kind(
        "Another table begins",
        "another table with other columns begins here: {found}",
        "put it into a file or worksheet of its own and import both",
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
    "number-missing": _kind("No part number", "the row has no part number: {found}", MENDED),
    "number-damaged": _kind(
        "Part number damaged",
        "'{found}' is what a spreadsheet makes of a part number, not the number itself",
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
}

SHEET_KINDS: dict[str, ProblemKind] = {**FILE_KINDS, **TABLE_KINDS, **CELL_KINDS}
