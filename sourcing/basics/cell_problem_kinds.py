"""The kinds of problem of a single cell or row of a supplier's sheet."""

from .problem_kind import ProblemKind, kind

MENDED = "correct the cell and take the file in again, or ask the supplier"

CELL_KINDS: dict[str, ProblemKind] = {
    "price-basis-differs": kind(
        "Two units of the price",
        "the row says for how many pieces its price is in two ways: {found}",
        "ask the supplier which holds, correct the cell and take the file in again",
    ),
    "price-basis-unsaid": kind(
        "Unit of one price not said",
        "'{found}' does not say what it is for, and the price beside it is {other}",
        "ask the supplier, write it into the cell and take the file in again",
    ),
    "discount-disagrees": kind(
        "Multiplier and discount disagree",
        "multiplier and discount give two net prices: {found}",
        "ask the supplier which holds, or leave one column out with --column",
        at_counter="ask the supplier which holds; to leave one column out, take the sheet out and drop it again "
        "with another meaning",
    ),
    "break-without-quantity": kind(
        "A price without its quantity", "the price {found} stands without the quantity it holds from", MENDED
    ),
    "break-twice": kind(
        "Two prices from one quantity",
        "this part number has another price for a quantity of {found} and more already",
        MENDED,
    ),
    "number-with-remark": kind(
        "A remark behind the part number",
        "'{found}' holds more than a part number",
        "write the number alone and the remark into a column of its own, and take the file in again",
    ),
    "superseded-unclear": kind(
        "Superseded by what",
        "'{found}' is not one part number, so what takes the part's place can't be told",
        "write the one number to order, or leave the cell blank, and take the file in again",
    ),
    "number-missing": kind("No part number", "the row has no part number: {found}", MENDED),
    "number-damaged": kind(
        "Part number damaged",
        "'{found}' is what a spreadsheet makes of a part number, not the number itself{lost}",
        "write the number from the supplier's paper as text, or ask for the sheet as CSV",
    ),
    "number-lost-zero": kind(
        "Leading zero lost",
        "'{found}' is shorter than the other numbers of the column, which begin with 0",
        "write the number as text with its zeros, or ask the supplier",
    ),
    "number-too-long": kind("Not a part number", "'{found}' is too long for a part number", MENDED),
    "price-unreadable": kind("Price unreadable", "'{found}' is no price", MENDED),
    "price-ambiguous": kind(
        "Price unclear",
        "'{found}' can be read two ways, and no other cell of the column shows the decimal mark",
        "write the price with two decimals and take the file in again",
    ),
    "price-mark-differs": kind(
        "Decimal mark differs",
        "'{found}' is written with another decimal mark than the column, which uses '{mark}'",
        MENDED,
    ),
    "price-not-positive": kind("Price of nothing or less", "'{found}' is no price one can pay", MENDED),
    "price-other-currency": kind(
        "Price in another currency",
        "'{found}' is not in {currency}, the currency of the sheet",
        "put prices in another currency into a file of their own",
    ),
    "row-other-currency": kind(
        "Row in another currency",
        "the row is in {found}, the sheet in {currency}",
        "put rows in another currency into a file of their own",
    ),
    "currency-cell-unreadable": kind(
        "Unknown currency",
        "'{found}' is not a currency code of ISO 4217",
        "write the three-letter code, such as {currency}, and take the file in again",
    ),
    "quantity-unreadable": kind("Quantity unreadable", "'{found}' is no quantity of at least 1", MENDED),
    "quantity-ambiguous": kind(
        "Quantity unclear",
        "'{found}' can be read two ways",
        "write it without a thousands mark and take the file in again",
    ),
    "stock-unreadable": kind(
        "Stock unreadable",
        "'{found}' is not understood as stock and was left blank",
        'write pieces, yes or no, or leave the column out with --column "Header=not used"',
        at_counter="write pieces, yes or no; to leave the column out, take the sheet out and drop it again with "
        "another meaning",
    ),
    "price-basis-unreadable": kind(
        "Unit of the price unknown",
        "'{found}' does not say for how many pieces the price is",
        "write each, pack, 100 or 1000 and take the file in again",
    ),
    "pack-unknown": kind(
        "Pieces in a pack unknown",
        "the price is {found}, but the row does not say how many pieces that is",
        "add the pieces to the pack column and take the file in again",
    ),
    "yes-or-no-unreadable": kind("Not yes or no", "'{found}' is neither yes nor no", "write yes or no"),
    "row-too-wide": kind(
        "More cells than headers",
        "the row has more cells than the header, so its cells stand under the wrong headers: {found}",
        "put quotation marks around the cell that holds the delimiter and take the file in again",
    ),
    "row-struck-through": kind(
        "Struck through",
        "the row, its number or its price is struck through in the workbook, and nobody knows what that says",
        "ask the supplier whether the part can still be had at this price; if so, take the line through it away in the "
        "workbook and take the file in again",
    ),
    "row-swallowed-lines": kind(
        "Stray quotation mark",
        "a quotation mark made one cell of several rows: {found}",
        "remove or double the quotation mark and take the file in again",
    ),
    "day-unreadable": kind("Day unreadable", "'{found}' is no day", "write it as 2026-12-05, or ask the supplier"),
    "day-unclear": kind(
        "Day and month unclear",
        "'{found}' may be {one} or {other}, and no other cell of the column tells whether day or month stands first",
        "ask the supplier which day he means, and have the month written as a word",
    ),
    "discount-unclear": kind(
        "Discount unclear",
        "'{found}' does not say how many per cent are taken off the list price",
        "write it with its sign, such as 40%, or ask the supplier",
    ),
    "multiplier-unreadable": kind(
        "Multiplier unreadable",
        "'{found}' is nothing a list price is multiplied with",
        "write a number above 0 and below 5, such as 0.62, or ask the supplier",
    ),
    "gtin-unreadable": kind("GTIN unreadable", "'{found}' is no GTIN of 8, 12, 13 or 14 digits", MENDED),
    "gtin-check-digit": kind(
        "GTIN with a wrong check digit",
        "the last digit of '{found}' does not fit the digits before it, so one of them is wrong",
        MENDED,
    ),
    "gtin-lost-zero": kind(
        "Leading zero of a GTIN lost",
        "'{found}' is a GTIN that has lost its leading zeros",
        "write the GTIN as text with its zeros, or ask the supplier",
    ),
    "origin-unknown": kind(
        "Country unknown",
        "'{found}' is no country by its ISO 3166 code or name",
        "write the two-letter code, such as TW, or ask the supplier",
    ),
    "tariff-code-unreadable": kind(
        "Tariff code unreadable",
        "'{found}' is no tariff code of 6, 8 or 10 digits",
        MENDED,
    ),
    "tariff-code-lost-zero": kind(
        "Leading zero of a tariff code lost",
        "'{found}' has one digit less than the other tariff codes of the column",
        "write the code as text with its zero, or ask the supplier",
    ),
    "weight-unreadable": kind("Weight unreadable", "'{found}' is no weight", MENDED),
    "weight-unclear": kind(
        "Weight unclear",
        "'{found}' can be read two ways, and no other cell of the column shows the decimal mark",
        "write the weight with two decimals and take the file in again",
    ),
    "weight-unit-unknown": kind(
        "Unit of the weight unknown",
        "neither '{found}' nor the header says whether the weight is in kg, g, lb or oz",
        "write the unit into the header, such as Weight (lb), and take the file in again",
    ),
}
