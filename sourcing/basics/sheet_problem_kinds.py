"""The kinds of problem found while reading a supplier's sheet."""

from .cell_problem_kinds import CELL_KINDS
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
        "remove or double the quotation mark and take the file in again",
    ),
    "text-too-large": _kind(
        "Too many cells",
        "the file has {lines} lines with {cells} cells, too much to read safely",
        "split it into several files, or leave out the rows that are not needed",
    ),
    "cell-too-long": _kind(
        "Cell too long",
        "the workbook holds a longer text than a cell can have",
        "save the price table alone as CSV and import that file",
    ),
    "too-many-cells": _kind(
        "Too many cells in the workbook",
        "the workbook has more than {most} filled cells or different texts, too much to read safely",
        "split it into several files, or save the price table alone as CSV",
    ),
    "too-many-merged": _kind(
        "Too many merged cells",
        "a worksheet has more than {most} merged regions, too much to read safely",
        "save the price table alone as CSV and import that file",
    ),
    "too-many-errors": _kind(
        "Too many cells without a value",
        "a worksheet has more than {most} error cells and formulas without a value, too much to read safely",
        "let a spreadsheet calculate it, save the price table alone as CSV and import that file",
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
    "number-with-two-prices": _kind(
        "One number, two prices",
        "'{found}' stands in rows {rows} with different prices, and each is an offer",
        "ask the supplier which holds",
    ),
    "more-with-two-prices": _kind(
        "More numbers with two prices",
        "{count} more part numbers stand twice with different prices",
        "ask the supplier which hold",
    ),
    "discount-above": _kind(
        "Discount above the table",
        "a line above the table speaks of a discount, and no net price is worked out from it: {found}",
        "ask the supplier for net prices, or add a column with the discount",
    ),
    "no-such-header": _kind(
        "No such column",
        "no column is called '{found}'; the headers are {known}",
        "write the header as the sheet has it, or 'column D' for a column by its letter",
    ),
    "net-price-gone": _kind(
        "Net price gone",
        "the supplier's sheet before had net prices in {found}, this one has no column known to hold them",
        'tell which column it is with --column "Header=net price", or take the sheet without net prices by saying '
        '--column "{found}=not used"',
    ),
    "fewer-offers": _kind(
        "Far fewer offers",
        "the sheet has {count} offers, the supplier's sheet before had {before}",
        "look at what vanished with 'sourcing changes'; if it is a part only, take the sheet out with 'sourcing undo'",
    ),
    "numbers-without-zeros": _kind(
        "Part numbers stored as numbers",
        "{count} of {rows} part numbers in the column '{found}' are stored as numbers: a spreadsheet has dropped zeros "
        "before them, if there were any",
        "compare some with the supplier's paper or web page; ask him for a file in which they are text",
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

SHEET_KINDS: dict[str, ProblemKind] = {**FILE_KINDS, **TABLE_KINDS, **COLUMN_KINDS, **CELL_KINDS}
