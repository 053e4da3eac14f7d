"""The kinds of problem met in the rows of an equivalence table that a person has edited."""

from .problem_kind import ProblemKind, kind

TABLE_KINDS: dict[str, ProblemKind] = {
    "table-number-damaged": kind(
        "Number changed by a spreadsheet",
        "the column '{column}' holds a damaged number: {why}",
        "write it as it is printed, in a cell formatted as text",
    ),
    "table-column-missing": kind(
        "Column missing in the equivalence table",
        "the column '{found}' is missing, so none of its rows can be read",
        "add the column; an exported table has them all",
    ),
    "table-column-twice": kind(
        "Column twice in the equivalence table",
        "the column '{found}' is there twice, so none of its rows can be read",
        "keep one of the two",
    ),
    "not-a-change-number": kind(
        "No number of a change",
        "the column 'as of change' holds '{found}', which no export writes there",
        "leave it as it was exported, or blank for a row that is to count whatever was done since",
    ),
    "change-not-yet": kind(
        "Row from another table",
        "the column 'as of change' says {found}, but the newest change of this table is {newest}",
        "the row is from another table, or a spreadsheet counted on while cells were filled down: "
        "export the table anew, or leave the cell blank",
    ),
    "part-row-unusable": kind(
        "Part whose row can't be used",
        "it speaks of our part '{found}', whose row {part_row} of 'parts' can't be used",
        "correct that row; this one then counts",
    ),
    "part-twice": kind(
        "Part of ours twice",
        "our part '{found}' is on row {first} already",
        "keep one of the two rows; case, spaces and punctuation make no difference",
    ),
    "statement-twice": kind(
        "Statement twice",
        "it says what row {first} says: {found}",
        "keep one of the two rows, or say what the other one rests on",
    ),
    "serials-backwards": kind(
        "Serial numbers backwards",
        "the serial numbers from {found} to {last} end before they begin",
        "swap or correct them; both ends belong to the span",
    ),
    "count-without-kit": kind(
        "Count without a kit",
        "a count of {found} says nothing where the relation is '{relation}'",
        "write 1, or the relation 'kit contains'",
    ),
    "not-a-statement-number": kind(
        "Not a statement's number",
        "'{found}' in the column 'number' is not a whole number",
        "leave the cell as it was exported; blank it for a new statement",
    ),
    "alias-of-ours": kind(
        "Not another maker's name",
        "'{found}' stands for our own parts and can be neither a maker nor his other name",
        "write the names of makers",
    ),
    "alias-of-itself": kind(
        "Maker's name for itself",
        "'{found}' and '{maker}' are the same name; case, spaces and punctuation make no difference",
        "leave it out",
    ),
}
