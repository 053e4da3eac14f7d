"""The kinds of problem found while reading a supplier's sheet."""

from .cell_problem_kinds import CELL_KINDS
from .column_problem_kinds import COLUMN_KINDS
from .problem_kind import ProblemKind, kind

FILE_KINDS: dict[str, ProblemKind] = {
    "no-such-file": kind(
        "File not found",
        "there is no file '{found}'",
        "check the name and the folder, then run the command again",
        at_counter="send the file again",
    ),
    "file-empty": kind("Empty file", "the file is empty", "ask the supplier to send the sheet again"),
    "not-a-sheet": kind(
        "Not a sheet",
        "this is no price sheet but {found}",
        "give a CSV, XLSX, XLS or ODS file",
    ),
    "workbook-damaged": kind(
        "Damaged workbook",
        "the workbook is damaged or cut off and can't be opened",
        "open it in a spreadsheet and save it as XLSX, or ask the supplier to send it again",
    ),
    "password-protected": kind(
        "Protected by a password",
        "the workbook is protected by a password",
        "open it with the password, save it without one and import that file",
    ),
    "unpacks-too-large": kind(
        "Unpacks too large",
        "the workbook unpacks to {megabytes} MB, too much to read safely",
        "save the price table alone as CSV and import that file",
    ),
    "worksheet-too-wide": kind(
        "Stray cell far off",
        "a worksheet reaches over {rows} rows and {columns} columns, too much to read",
        "delete the stray cells far right of or below the table, or save the table as CSV",
    ),
    "quote-not-closed": kind(
        "Quote not closed",
        "a quotation mark opens a cell here and is never closed, so the rows after it can't be told apart",
        "remove or double the quotation mark and take the file in again",
    ),
    "text-too-large": kind(
        "Too many cells",
        "the file has {lines} lines with {cells} cells, too much to read safely",
        "split it into several files, or leave out the rows that are not needed",
    ),
    "cell-too-long": kind(
        "Cell too long",
        "the workbook holds a longer text than a cell can have",
        "save the price table alone as CSV and import that file",
    ),
    "too-many-cells": kind(
        "Too many cells in the workbook",
        "the workbook has more than {most} filled cells or different texts, too much to read safely",
        "split it into several files, or save the price table alone as CSV",
    ),
    "too-many-merged": kind(
        "Too many merged cells",
        "a worksheet has more than {most} merged regions, too much to read safely",
        "save the price table alone as CSV and import that file",
    ),
    "too-many-errors": kind(
        "Too many cells without a value",
        "a worksheet has more than {most} error cells and formulas without a value, too much to read safely",
        "let a spreadsheet calculate it, save the price table alone as CSV and import that file",
    ),
    "workbook-declares": kind(
        "Workbook not written by a spreadsheet",
        "the workbook's XML declares a document type, which no spreadsheet writes and which can hide anything",
        "open it in a spreadsheet and save it as XLSX, or ask the supplier to send it again",
    ),
}

TABLE_KINDS: dict[str, ProblemKind] = {
    "no-table": kind(
        "No price table",
        "no row of headers such as 'Part number' and 'Net price' was found",
        'add a header row, or tell what the columns mean with --column "Header=net price"',
        at_counter="write a row of headers over the table and drop the file again",
    ),
    "no-number-column": kind(
        "No number column",
        "no column is known to hold part numbers; the headers are {found}",
        'tell which one it is with --column "Header=supplier number"',
        at_counter="write a header such as 'Part number' over that column and drop the file again",
    ),
    "no-price-column": kind(
        "No price column",
        "no column is known to hold prices; the headers are {found}",
        'tell which one it is with --column "Header=net price"',
        at_counter="write a header such as 'Net price' over that column and drop the file again",
    ),
    "price-column-unclear": kind(
        "Net price or list price",
        "column '{found}' could be the net price or the list price",
        'confirm with --column "{found}=net price" or --column "{found}=list price"',
        at_counter="choose which of the two it is",
    ),
    "meaning-twice": kind(
        "Two columns with one meaning",
        "more than one column means '{meaning}': {found}",
        'say which is not used, for example --column "{word}=not used"',
        at_counter="choose 'not used' for the one that does not count",
    ),
    "header-became-date": kind(
        "Header turned into a date",
        "the quantity-break header '{found}' was turned into a date by a spreadsheet",
        "write the quantities back as text, such as 5-9, or ask the supplier to send the sheet again",
    ),
    "table-not-read": kind(
        "Another table",
        "another table that lacks part numbers or prices stands here and was not read: {found}",
        "if it holds offers, name its columns with --column",
        at_counter="if it holds offers, save it as a file of its own, with headers over its columns, and drop that",
    ),
    "price-unit-unread": kind(
        "Price per something else",
        "column '{found}' holds prices per {unit}, which can't be compared with prices for pieces",
        'leave it out with --column "{found}=not used"',
        at_counter="choose 'not used', or ask the supplier for prices a piece",
    ),
    "rows-hidden": kind(
        "Hidden rows",
        "hidden rows were read like the others: {found}",
        "delete them in a spreadsheet and import again if they do not count",
    ),
    "columns-hidden": kind(
        "Hidden columns",
        "hidden columns were read like the others: {found}",
        'leave one out with --column "Header=not used" if it does not count',
        at_counter="if one does not count, take the sheet out and drop it again to say that it is not used",
    ),
    "number-with-two-prices": kind(
        "One number, two prices",
        "'{found}' stands in rows {rows} with different prices, and each is an offer",
        "ask the supplier which holds",
    ),
    "more-with-two-prices": kind(
        "More numbers with two prices",
        "{count} more part numbers stand twice with different prices",
        "ask the supplier which hold",
    ),
    "discount-above": kind(
        "Discount above the table",
        "a line above the table speaks of a discount, and no net price is worked out from it: {found}",
        "ask the supplier for net prices, or add a column with the discount",
    ),
    "no-such-header": kind(
        "No such column",
        "no column is called '{found}'; the headers are {known}",
        "write the header as the sheet has it, or 'column D' for a column by its letter",
    ),
    "net-price-gone": kind(
        "Net price gone",
        "the supplier's sheet before had net prices in {found}, this one has no column known to hold them",
        'tell which column it is with --column "Header=net price", or take the sheet without net prices by saying '
        '--column "{found}=not used"',
        at_counter="choose which column holds them now, or choose 'not used' to take the sheet without net prices",
    ),
    "net-price-worked-out-now": kind(
        "Net prices worked out from now on",
        "the supplier's sheet before had net prices in '{before}'; this one has no such column, and its net prices are "
        "worked out from the list price in '{found}' and the {by} in '{off}'",
        'if that is right, say --column "{found}=list price"; if the {by} has come off already, --column '
        '"{found}=net price"',
        at_counter="choose 'list price' if that is right, 'net price' if it has come off already",
    ),
    "net-price-worked-out": kind(
        "Net prices worked out",
        "net prices, which stood in '{before}' on the sheet before, are worked out from the list price in '{found}' "
        "and the {by} in '{off}'",
        "compare one with the supplier's last bill",
    ),
    "sheet-without-prices": kind(
        "No price in any row",
        "no row of '{found}' has a net price, so none of its {count} offers could be ranked or ordered",
        'tell which column holds it with --column "Header=net price", or keep the sheet so with --without-prices',
        at_counter="say below which column holds it, or keep the sheet so",
    ),
    "kept-without-prices": kind(
        "Kept without prices",
        "no row has a net price, so none of its {count} offers can be ranked or ordered",
        "take the sheet out again once his prices are here, and read it with them",
    ),
    "fewer-offers": kind(
        "Far fewer offers",
        "the sheet has {count} offers, the supplier's sheet before had {before}",
        "look at what vanished with 'sourcing changes'; if it is a part only, take the sheet out with 'sourcing undo'",
        at_counter="look at what vanished since the sheet before; if it is a part only, take this sheet out",
    ),
    "numbers-without-zeros": kind(
        "Part numbers stored as numbers",
        "{count} of {rows} part numbers in the column '{found}' are stored as numbers: a spreadsheet has dropped zeros "
        "before them, if there were any",
        "compare some with the supplier's paper or web page; ask him for a file in which they are text",
    ),
    "more-left-blank": kind(
        "More cells left blank",
        "{count} more cells of this column can't be read and were left blank",
        "ask the supplier if they matter",
    ),
    "worksheet-hidden": kind(
        "Hidden worksheet",
        "the worksheet is hidden and was not read",
        "show it in a spreadsheet, save and import again if its prices count",
    ),
    "currency-mixed": kind(
        "Two currencies",
        "the sheet names more than one currency: {found}",
        "put each currency into a file of its own",
    ),
    "currency-by-column": kind(
        "Two currencies",
        "the sheet names more than one currency: {found}",
        "leave out the price columns of all but one of them, with 'not used', or ask the supplier for a sheet in one",
    ),
    "currency-not-known": kind(
        "Currency not known",
        "neither the sheet nor the supplier's terms say which currency the prices are in",
        "add it to suppliers.toml and run 'sourcing setup' again, or say --currency when you only read the sheet",
        at_counter="say under 'page:terms' which money he charges in, then drop the file again",
    ),
    "currency-differs": kind(
        "Another currency than agreed",
        "the sheet is in {found}, the supplier's terms are in {expected}",
        "correct the currency in suppliers.toml, or ask the supplier for a sheet in {expected}",
        at_counter="correct the money in his terms, or ask the supplier for a sheet in that of his terms",
    ),
}

SHEET_KINDS: dict[str, ProblemKind] = {**FILE_KINDS, **TABLE_KINDS, **COLUMN_KINDS, **CELL_KINDS}
