"""The kinds of problem about what the columns of a sheet mean, and how they differ from the supplier's last sheet."""

from .problem_kind import ProblemKind, kind

COLUMN_KINDS: dict[str, ProblemKind] = {
    "column-guess": kind(
        "A column to confirm",
        "column '{found}' may be '{meaning}': {reason}",
        'confirm with --column "{found}={meaning}", say another meaning, or --column "{found}=not used"',
        at_counter="choose what it is, or 'not used'",
    ),
    "numbers-left-out": kind(
        "Numbers that would be left out",
        "nobody knows what column '{found}' is, and {why}",
        'say --column "{found}=maker number" if they are the makers\' numbers, another meaning, or --column '
        '"{found}=not used"',
        at_counter="choose 'maker number' if they are the makers' numbers, another meaning, or 'not used'",
    ),
    "column-contradicted": kind(
        "Header and values disagree",
        "the header of column '{found}' and its values disagree: {why}",
        'look at the column and say what it holds, for example --column "{found}=not used"',
        at_counter="look at the column and choose what it holds, or 'not used'",
    ),
    "column-surcharge": kind(
        "A charge on top of the price",
        "column '{found}' seems to hold a charge on top of the price, which an offer has no place for",
        'have it added to the prices, or leave it out with --column "{found}=not used"',
        at_counter="have it added to the prices, or choose 'not used' to leave it out",
    ),
    "price-with-tax": kind(
        "Prices with tax",
        "column '{found}' holds prices with tax, which are not what the shop pays for the part",
        "ask the supplier for prices without tax, or say what the column is with "
        '--column "{found}=net price" or --column "{found}=not used"',
        at_counter="ask the supplier for prices without tax, or choose what the column is: net price or not used",
    ),
    "two-worksheets": kind(
        "Two prices on two worksheets",
        "{count} numbers, such as {first}, have another price on worksheet '{found}' than on '{other}'",
        'say which worksheet is not used, for example --column "worksheet {other}=not used"',
        at_counter="choose 'not used' for the worksheet that does not count",
    ),
    "price-doubted": kind(
        "A price that contradicts the others",
        "column '{found}' may be no price of one piece: {why}",
        'if it is one, say --column "{found}=net price" (a price break keeps its quantity); else '
        '--column "{found}=not used"',
        at_counter="if it is one, choose 'net price' (a price break keeps its quantity); else 'not used'",
    ),
    "price-of-a-later-day": kind(
        "A price of a later day",
        "by its header, column '{found}' holds prices from {day} on, and the sheet is of {dated}",
        'if another column holds the prices of today, say --column "{found}=not used"; with '
        '--column "{found}=net price" it is kept, and its prices are not ranked before that day',
        at_counter="choose 'not used' if another column holds the prices of today; as 'net price' it is kept, and its "
        "prices are not ranked before that day",
    ),
    "later-price-used": kind(
        "Prices of a later day",
        "by its header, column '{found}' holds prices from {day} on, and the sheet is of {dated}: before that day they "
        "are not what the supplier asks",
        "ask the supplier for the prices of today",
    ),
    "price-years-differ": kind(
        "Prices of different years",
        "the price columns name different years: {found}",
        'say which is not used, for example --column "{column}=not used", or what each is',
        at_counter="choose 'not used' for the one that does not count, or what each is",
    ),
    "discount-beside-net": kind(
        "A discount beside a net price",
        "column '{found}' is a discount and '{net}' a net price, and nothing says whether it has come off already",
        'say --column "{found}=not used" if it has, or --column "{net}=list price" if it has not',
        at_counter="choose 'not used' if it has; if it has not, choose 'discount', and 'list price' for the other "
        "column",
    ),
    "net-of-tax": kind(
        "A price without tax that may be the customer's",
        "column '{found}' is '{other}' without tax, which may be what the customer pays and not the shop",
        'confirm with --column "{found}=net price" or --column "{found}=list price"',
        at_counter="choose which it is for the shop: net price or list price",
    ),
    "line-about-prices": kind(
        "A line that speaks of the prices",
        "the line '{found}' may change what the prices mean: {why}",
        'if the prices hold as they stand in the cells, say --column "{found}=not used"; if the line says what they '
        'are for, --column "{found}=price basis"; else make the cells say it',
        at_counter="choose 'not used' if the prices hold as they stand in the cells, 'price basis' if the line "
        "says what they are for; else make the cells say it and drop the file again",
    ),
    "price-of-a-package": kind(
        "A price of a piece or of a package",
        "the header of the price column '{column}' names a package, {beside}: its prices may be for a piece or for a "
        "whole package",
        'if they are for a whole package, say --column "{found}=price basis"; if each is for one piece, '
        '--column "{found}=not used"',
        at_counter="choose what they are for; the description of a row, or the supplier's last bill, may tell",
    ),
    "package-price-said": kind(
        "What the prices of a column are for",
        "the prices of column '{found}' are read as {basis}, as a person has said",
        "nothing need be done",
    ),
    "line-applied": kind(
        "A line taken as what prices are for",
        "the prices under the line '{found}' are read as {basis}, as a person has said",
        "nothing need be done",
    ),
    "header-gone": kind(
        "A header is gone",
        "column '{found}', which meant '{meaning}' on the sheet before, is not on this sheet",
        "ask the supplier if it matters",
    ),
    "header-new": kind(
        "A new header",
        "column '{found}' was not on the sheet before; it is read as '{meaning}'",
        'if that is wrong, say what it is with --column "{found}=..."',
        at_counter="if that is wrong, take the sheet out and drop it again with another meaning",
    ),
    "header-changed": kind(
        "A header changed",
        "{meaning} was '{before}' on the sheet before and is '{found}' now",
        'if that is wrong, say what it is with --column "{found}=..."',
        at_counter="if that is wrong, take the sheet out and drop it again with another meaning",
    ),
    "header-means-other": kind(
        "A header means something else now",
        "column '{found}' meant '{before}' on the sheet before and is read as '{meaning}' now",
        'if that is wrong, say what it is with --column "{found}=..."',
        at_counter="if that is wrong, take the sheet out and drop it again with another meaning",
    ),
    "confirmed-header-gone": kind(
        "A confirmed header is gone",
        "column '{found}', which a person confirmed as '{meaning}', is not on this sheet",
        'if it has another name now, say so with --column "Header={meaning}"',
        at_counter="if it has another name now, take the sheet out and drop it again to say which column it is",
    ),
}
