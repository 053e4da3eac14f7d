"""The kinds of problem about what the columns of a sheet mean, and how they differ from the supplier's last sheet."""

from .problem_kind import ProblemKind, kind

COLUMN_KINDS: dict[str, ProblemKind] = {
    "column-guess": kind(
        "A column to confirm",
        "column '{found}' may be '{meaning}': {reason}",
        'confirm with --column "{found}={meaning}", say another meaning, or --column "{found}=not used"',
    ),
    "column-contradicted": kind(
        "Header and values disagree",
        "the header of column '{found}' and its values disagree: {why}",
        'look at the column and say what it holds, for example --column "{found}=not used"',
    ),
    "column-surcharge": kind(
        "A charge on top of the price",
        "column '{found}' seems to hold a charge on top of the price, which an offer has no place for",
        'have it added to the prices, or leave it out with --column "{found}=not used"',
    ),
    "price-with-tax": kind(
        "Prices with tax",
        "column '{found}' holds prices with tax, which are not what the shop pays for the part",
        "ask the supplier for prices without tax, or say what the column is with "
        '--column "{found}=net price" or --column "{found}=not used"',
    ),
    "two-worksheets": kind(
        "Two prices on two worksheets",
        "{count} numbers, such as {first}, have another price on worksheet '{found}' than on '{other}'",
        'say which worksheet is not used, for example --column "worksheet {other}=not used"',
    ),
    "price-doubted": kind(
        "A price that contradicts the others",
        "column '{found}' may be no price of one piece: {why}",
        'if it is one, say --column "{found}=net price" (a price break keeps its quantity); else '
        '--column "{found}=not used"',
    ),
    "price-years-differ": kind(
        "Prices of different years",
        "the price columns name different years: {found}",
        'say which is not used, for example --column "{column}=not used", or what each is',
    ),
    "discount-beside-net": kind(
        "A discount beside a net price",
        "column '{found}' is a discount and '{net}' a net price, and nothing says whether it has come off already",
        'say --column "{found}=not used" if it has, or --column "{net}=list price" if it has not',
    ),
    "net-of-tax": kind(
        "A price without tax that may be the customer's",
        "column '{found}' is '{other}' without tax, which may be what the customer pays and not the shop",
        'confirm with --column "{found}=net price" or --column "{found}=list price"',
    ),
    "line-about-prices": kind(
        "A line that speaks of the prices",
        "the line '{found}' may change what the prices mean: {why}",
        'if the prices hold as they stand in the cells, say --column "{found}=not used"; if the line says what they '
        'are for, --column "{found}=price basis"; else make the cells say it',
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
    ),
    "header-changed": kind(
        "A header changed",
        "{meaning} was '{before}' on the sheet before and is '{found}' now",
        'if that is wrong, say what it is with --column "{found}=..."',
    ),
    "header-means-other": kind(
        "A header means something else now",
        "column '{found}' meant '{before}' on the sheet before and is read as '{meaning}' now",
        'if that is wrong, say what it is with --column "{found}=..."',
    ),
    "confirmed-header-gone": kind(
        "A confirmed header is gone",
        "column '{found}', which a person confirmed as '{meaning}', is not on this sheet",
        'if it has another name now, say so with --column "Header={meaning}"',
    ),
}
