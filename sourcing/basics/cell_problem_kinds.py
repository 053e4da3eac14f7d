"""The kinds of problem of a single cell or row of a supplier's sheet."""

from .problem_kind import ProblemKind


def _kind(title: str, what: str, remedy: str) -> ProblemKind:
    return ProblemKind(title=title, what=what, remedy=remedy)


MENDED = "correct the cell and take the file in again, or ask the supplier"

CELL_KINDS: dict[str, ProblemKind] = {
    "price-basis-differs": _kind(
        "Two units of the price",
        "the row says for how many pieces its price is in two ways: {found}",
        "ask the supplier which holds, correct the cell and take the file in again",
    ),
    "price-basis-unsaid": _kind(
        "Unit of one price not said",
        "'{found}' does not say what it is for, and the price beside it is {other}",
        "ask the supplier, write it into the cell and take the file in again",
    ),
    "discount-disagrees": _kind(
        "Multiplier and discount disagree",
        "multiplier and discount give two net prices: {found}",
        "ask the supplier which holds, or leave one column out with --column",
    ),
    "break-without-quantity": _kind(
        "A price without its quantity", "the price {found} stands without the quantity it holds from", MENDED
    ),
    "break-twice": _kind(
        "Two prices from one quantity",
        "there is a price from {found} pieces on already for this part number",
        MENDED,
    ),
    "number-with-remark": _kind(
        "A remark behind the part number",
        "'{found}' holds more than a part number",
        "write the number alone and the remark into a column of its own, and take the file in again",
    ),
    "superseded-unclear": _kind(
        "Superseded by what",
        "'{found}' is not one part number, so what takes the part's place can't be told",
        "write the one number to order, or leave the cell blank, and take the file in again",
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
        "write the price with two decimals and take the file in again",
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
        "write the three-letter code, such as {currency}, and take the file in again",
    ),
    "quantity-unreadable": _kind("Quantity unreadable", "'{found}' is no quantity of at least 1", MENDED),
    "quantity-ambiguous": _kind(
        "Quantity unclear",
        "'{found}' can be read two ways",
        "write it without a thousands mark and take the file in again",
    ),
    "stock-unreadable": _kind(
        "Stock unreadable",
        "'{found}' is not understood as stock and was left blank",
        'write pieces, yes or no, or leave the column out with --column "Header=not used"',
    ),
    "price-basis-unreadable": _kind(
        "Unit of the price unknown",
        "'{found}' does not say for how many pieces the price is",
        "write each, pack, 100 or 1000 and take the file in again",
    ),
    "pack-unknown": _kind(
        "Pieces in a pack unknown",
        "the price is per '{found}', but the row does not say how many pieces that is",
        "add the pieces to the pack column and take the file in again",
    ),
    "yes-or-no-unreadable": _kind("Not yes or no", "'{found}' is neither yes nor no", "write yes or no"),
    "row-too-wide": _kind(
        "More cells than headers",
        "the row has more cells than the header, so its cells stand under the wrong headers: {found}",
        "put quotation marks around the cell that holds the delimiter and take the file in again",
    ),
    "row-swallowed-lines": _kind(
        "Stray quotation mark",
        "a quotation mark made one cell of several rows: {found}",
        "remove or double the quotation mark and take the file in again",
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
        "write the weight with two decimals and take the file in again",
    ),
    "weight-unit-unknown": _kind(
        "Unit of the weight unknown",
        "neither '{found}' nor the header says whether the weight is in kg, g, lb or oz",
        "write the unit into the header, such as Weight (lb), and take the file in again",
    ),
}
