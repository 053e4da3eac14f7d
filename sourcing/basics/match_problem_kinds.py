"""The kinds of problem met while matching rows to parts, and while judging what is alike."""

from .problem_kind import ProblemKind, kind

MATCH_KINDS: dict[str, ProblemKind] = {
    "no-four-columns": kind(
        "No number and no description",
        "no row near the top names a column of numbers or descriptions",
        'name the columns number, maker, description and price, or say which is which with --column "Artikel=number"',
    ),
    "no-answers": kind(
        "No answers",
        "no worksheet has the columns {known}",
        "add the column 'answer' with yes or no to what 'sourcing match' wrote, and name that file",
    ),
    "answer-about-nothing": kind(
        "Answer about a row that is not there",
        "the rows {found} are not both in the two files",
        "write the rows as 'sourcing match' shows them for these very files",
    ),
}
