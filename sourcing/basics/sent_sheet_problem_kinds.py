"""The kinds of problem with sheets that are sent to the counter, and with the answers about their columns."""

from .problem_kind import ProblemKind, kind

SENT_SHEET_KINDS: dict[str, ProblemKind] = {
    "column-not-answered": kind(
        "Left open",
        "nothing is chosen for '{found}'",
        "choose what it is; 'not used' leaves it out",
    ),
    "columns-not-answered": kind(
        "Left open",
        "no column was given a meaning",
        "say which column holds the part numbers and which the prices",
    ),
    "quantity-of-no-price": kind(
        "A quantity that is no price's",
        "'{found}' is called '{meaning}' and given a quantity, which only a net price can have",
        "leave the quantity blank, or call the column net price",
    ),
    "discount-of-what": kind(
        "A discount off what",
        "'{found}' is called a discount, and no column is called the list price it comes off",
        "call that column list price, or say that the discount is not used because it has come off already",
    ),
    "sheet-asked-anew": kind(
        "Asked anew meanwhile",
        "somebody has answered for this sheet already",
        "look at what is asked now",
    ),
    "columns-shown-first": kind(
        "Shown first",
        "you asked to see what the columns of '{found}' are read as",
        "look them over, and change what is wrong",
    ),
    "sheet-much-shorter": kind(
        "Much shorter than before",
        "'{found}' has {count} offers, and the supplier's sheet that counts now has {before}",
        "if that is all he sells, keep it so; if it is a part of his list, leave it and ask him for the whole",
    ),
    "sheet-of-another": kind(
        "Kept as another supplier's",
        "'{found}' is to the letter the file that is kept as sheet {sheet} of {supplier}",
        "leave it unless both suppliers sell by one and the same list",
    ),
    "reading-broke-off": kind(
        "Reading broke off",
        "the reading of '{found}' broke off",
        "nothing of it was kept; drop the file again, or save its table alone as CSV first",
    ),
    "reading-too-long": kind(
        "Reading took too long",
        "the reading of '{found}' was stopped after {minutes} minutes",
        "nothing of it was kept; save its table alone as CSV, or split it, and drop that",
    ),
    "supplier-not-chosen": kind("Supplier not chosen", "nobody said whose sheet it is", "choose the supplier"),
    "day-not-said": kind(
        "Day not said", "nobody said from which day the prices hold", "pick the day; the supplier's paper names it"
    ),
    "file-kind-unknown": kind("No such file", "there is no file of kind '{found}'", "choose CSV or XLSX"),
    "sheet-not-held": kind(
        "No longer held",
        "the file '{found}' is not held any more",
        "drop it again",
    ),
    "too-many-sheets": kind(
        "Too many files at once",
        "{count} files were sent",
        "send at most {most} at once",
    ),
}
