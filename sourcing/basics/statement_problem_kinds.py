"""The kinds of problem met when a person changes the equivalence table: statements, doubts, makers' names."""

from .problem_kind import ProblemKind, kind

STATEMENT_KINDS: dict[str, ProblemKind] = {
    "no-such-statement": kind(
        "No such statement",
        "the table has no statement number {found}",
        "see the numbers with 'sourcing numbers NUMBER' or 'sourcing table export FILE.xlsx'",
        at_counter="see the numbers under 'page:table'",
    ),
    "statement-number-twice": kind(
        "Statement number twice",
        "statement number {found} stands in row {first} already",
        "leave the number of a new statement blank",
    ),
    "relation-changed": kind(
        "Other relation on the same source",
        "statement {number} says '{before}', the row now says '{now}', and names the same source for it: {source}",
        "name the source of the new claim, or take the row as it was and withdraw the old one with why:"
        " 'sourcing table withdraw {number} --reason WORDS'",
    ),
    "stated-in-the-future": kind(
        "Stated in the future",
        "it is said to be stated on {found}, and today is {today}",
        "correct the day",
    ),
    "kit-contains-itself": kind(
        "Kit that contains itself",
        "{found} would come to contain itself: {path}",
        "look which of the two holds the other",
    ),
    "statement-there-already": kind(
        "Statement there already",
        "statement {number} says the same: {found}",
        "nothing needs adding; 'sourcing table history {number}' shows what happened to it",
    ),
    "statement-withdrawn-before": kind(
        "Statement withdrawn before",
        "statement {number} says the same and was withdrawn: {found}",
        "if it holds after all, say so with 'sourcing table restore {number} --reason WORDS'",
    ),
    "statement-withdrawn": kind(
        "Statement withdrawn",
        "statement {found} is withdrawn",
        "restore it first with 'sourcing table restore {found} --reason WORDS'",
    ),
    "statement-not-withdrawn": kind(
        "Statement not withdrawn",
        "statement {found} is not withdrawn",
        "nothing needs restoring; 'sourcing table history {found}' shows what happened to it",
    ),
    "statement-not-doubted": kind(
        "Statement not doubted",
        "nobody doubts statement {found}",
        "nothing needs answering; 'sourcing table history {found}' shows what happened to it",
    ),
    "standing-unchanged": kind(
        "Standing unchanged",
        "statement {found} has the standing '{standing}' already",
        "name another standing; 'sourcing table history {found}' shows what happened to it",
    ),
    "source-blank": kind(
        "Source missing",
        "no source is given for the statement",
        "say where it is said with --source: which list, letter or job",
        at_counter="say where it is said: which list, letter or job",
    ),
    "reason-blank": kind(
        "Reason missing",
        "no reason is given for what is to be done with {found}",
        "say why in words with --reason",
        at_counter="say why in words",
    ),
    "number-looks-damaged": kind(
        "Number that looks damaged",
        "'{found}' is no part number as somebody would write it: {why}",
        "write it as it is printed; if it is printed so, set it apart with a dash or a blank",
    ),
    "statement-number-missing": kind(
        "Number missing",
        "{which} of the two numbers is missing",
        "write it as it is printed",
    ),
    "number-without-maker": kind(
        "Maker not said",
        "'{found}' does not say whose number it is",
        "write it as maker:number, such as Norrowby:NW-40388; ours:CODE for our own part; :NUMBER if nobody knows",
        at_counter="name its maker, or tick that it is our own part's code",
    ),
    "number-in-no-statement": kind(
        "Number in no statement",
        "no statement and no part of ours names '{found}'",
        "check the number, or add what is known of it with 'sourcing table add'",
    ),
    "table-import-problems": kind(
        "Rows that can't be used",
        "'{file}' has {count} that can't be used",
        "correct them, or add --keep-good to keep the others; nothing was changed",
        at_counter="correct them, or tick 'Leave rows out that can't be used' to keep the others; nothing was changed",
    ),
    "withdraw-with-problems": kind(
        "Not clear what is missing",
        "'{file}' has {count} that can't be used, so it is not clear which statements are missing from it",
        "correct the rows first, or leave out --withdraw-missing; nothing was changed",
        at_counter="correct the rows first, or leave blank for what reason missing statements are withdrawn; "
        "nothing was changed",
    ),
    "no-table-file": kind(
        "Not a table",
        "the folder '{found}' holds none of parts.csv, statements.csv, makers.csv",
        "name a folder as 'sourcing table export FOLDER' makes it, or an .xlsx file",
        at_counter="choose the XLSX, or the CSV files parts.csv, statements.csv and makers.csv",
        what_at_counter="no table of same parts is among what was sent",
    ),
    "table-file-kind": kind(
        "Kind of file not known",
        "'{found}' has no ending this command writes",
        "name a file that ends in .xlsx, or a folder for CSV files",
        at_counter="choose XLSX or CSV",
    ),
    "maker-name-blank": kind(
        "Maker's name blank",
        "'{found}' holds no letter and no digit",
        "write the name of the maker",
    ),
    "maker-name-same": kind(
        "Name of itself",
        "'{found}' and '{maker}' are the same name already, for case, blanks and punctuation never count",
        "nothing needs adding",
    ),
    "alias-of-another": kind(
        "Name of another maker",
        "'{found}' stands for {maker} already",
        "take that away first with 'sourcing table maker \"{found}\" --remove'",
        at_counter="take that away first under 'page:makers'",
    ),
    "alias-of-alias": kind(
        "Name that stands for another",
        "'{found}' is itself only another name of {maker}",
        "name {maker} instead",
    ),
    "maker-has-aliases": kind(
        "Maker with other names",
        "'{found}' is the name that {aliases} stand for",
        "take those away first with 'sourcing table maker NAME --remove'",
        at_counter="take those away first under 'page:makers'",
    ),
    "no-such-alias": kind(
        "No such name",
        "'{found}' is not kept as another name of a maker",
        "see the names with 'sourcing table makers'",
        at_counter="see the names under 'page:makers'",
    ),
}
