"""Every kind of problem the program tells a person of, in one table: code, title, wording, remedy.

A message is written once, here; pages, command line and documents only show it.
"""

from .problem_kind import ProblemKind
from .sheet_problem_kinds import SHEET_KINDS


def _kind(title: str, what: str, remedy: str) -> ProblemKind:
    return ProblemKind(title=title, what=what, remedy=remedy)


KINDS: dict[str, ProblemKind] = {
    **SHEET_KINDS,
    "currencies-mixed": _kind(
        "Two currencies in one sum",
        "{one} and {other} can't be added without a dated rate",
        "add a rate to rates.csv and run 'sourcing setup' again",
    ),
    "unknown-currency": _kind(
        "Unknown currency",
        "'{found}' is not a currency code of ISO 4217",
        "write the three-letter code, such as USD or EUR",
    ),
    "no-rate": _kind(
        "No exchange rate",
        "the rate table has no rate from {currency} to {into} on or before {day}",
        "add one with its date to rates.csv and run 'sourcing setup' again",
    ),
    "terms-contradict": _kind(
        "Supplier's terms contradict",
        "the terms of '{supplier}' can't hold: {found}",
        "correct suppliers.toml and run 'sourcing setup' again",
    ),
    "settings-contradict": _kind(
        "Settings contradict",
        "the shop's settings can't hold: {found}",
        "correct shop.toml and run 'sourcing setup' again",
    ),
    "job-contradicts": _kind("Job contradicts", "the job can't hold: {found}", "correct the job file and try again"),
    "never-open": _kind(
        "Calendar without working days",
        "a calendar has no working day for years before {day}",
        "correct 'week' and 'closed' of the calendar in suppliers.toml or shop.toml",
    ),
    "unknown-country": _kind(
        "Unknown country or region",
        "no public holidays are known for '{found}'",
        "write the country as two letters (US, DE) and a region of that country, or leave both blank",
    ),
    "no-equivalence-workbook": _kind(
        "Not an equivalence table",
        "'{found}' can't be opened as an XLSX workbook",
        "save the equivalence table as .xlsx with the worksheets 'parts' and 'statements'",
    ),
    "worksheet-missing": _kind(
        "Worksheet missing",
        "'{file}' has no worksheet '{found}', or it is empty",
        "add the worksheet with its header row; demo_prices/equivalence.xlsx shows how",
    ),
    "unknown-table-column": _kind(
        "Unknown column in the equivalence table",
        "the column '{found}' is not known",
        "use one of: {known}",
    ),
    "no-such-part": _kind(
        "Part of ours not in the table",
        "our part '{found}' is not on the worksheet 'parts'",
        "add it there, or correct the code",
    ),
    "statement-about-itself": _kind(
        "Statement about itself",
        "the statement ties {found} to itself",
        "delete the row or correct one of the numbers",
    ),
    "blank-number": _kind(
        "Blank number",
        "'{found}' holds no letter and no digit",
        "write the part number",
    ),
    "table-cell-blank": _kind(
        "Blank cell",
        "the column '{column}' is blank",
        "fill the cell",
    ),
    "unknown-word": _kind(
        "Unknown word",
        "'{found}' is not known in the column '{column}'",
        "use one of: {known}",
    ),
    "no-such-day": _kind(
        "Not a day",
        "'{found}' in '{column}' is not a day",
        "write it as year-month-day, such as 2026-01-13",
    ),
    "count-below-one": _kind(
        "Count below one",
        "'{found}' is not a count of pieces",
        "write a whole number of at least 1",
    ),
    "table-has-problems": _kind(
        "Equivalence table has problems",
        "the equivalence table has {count} rows that can't be used",
        "correct them and run 'sourcing setup' again; nothing was changed",
    ),
    "file-not-understood": _kind(
        "File not understood",
        "'{file}' can't be used: {found}",
        "correct the file and try again",
    ),
    "rates-row": _kind(
        "Rate not understood",
        "'{found}' is not a rate with its date",
        "write currency, into, rate, dated (2026-01-09) and source, with a rate above zero",
    ),
    "nothing-to-set-up": _kind(
        "Nothing to set up",
        "'{found}' holds none of shop.toml, suppliers.toml, rates.csv, equivalence.xlsx",
        "name the folder that has them; demo_prices/ shows what they look like",
    ),
    "supplier-not-named": _kind(
        "Supplier not known",
        "it is not clear whose sheet '{found}' is",
        "put it in a folder named after the supplier, or add --supplier with one of: {known}",
    ),
    "no-terms": _kind(
        "Supplier without terms",
        "there are no terms for the supplier '{supplier}' on {day}",
        "add a [[supplier]] entry to suppliers.toml and run 'sourcing setup' again",
    ),
    "sheet-not-dated": _kind(
        "Sheet without a date",
        "'{found}' does not say from which day its prices hold",
        "name the file like prices-2026-01-05.csv, or add --dated 2026-01-05",
    ),
    "sheet-without-offers": _kind(
        "Sheet without offers",
        "'{found}' holds no row that can be taken as an offer ({problems} rows have problems)",
        "look at the problems with 'sourcing read', then import it again",
    ),
    "no-sheets": _kind(
        "No sheets found",
        "there is no .csv, .tsv, .txt, .xlsx, .xlsm, .xls or .ods file in '{found}'",
        "name the sheets or the folder they are in",
    ),
    "no-sheet-number": _kind(
        "No such sheet",
        "there is no sheet number {found}",
        "see the numbers with 'sourcing sheets'",
    ),
    "number-not-known": _kind(
        "Number not known",
        "no part of ours is known under '{found}'",
        "add it to the equivalence table, or ask for another number of the same part",
    ),
    "number-of-several": _kind(
        "Number of several parts",
        "'{found}' is tied to more than one part of ours: {codes}",
        "ask for the part by our own code",
    ),
    "quantity-below-one": _kind(
        "Quantity below one",
        "{found} pieces can't be asked for",
        "ask for at least 1",
    ),
    "part-not-ours": _kind(
        "Part not in the table",
        "job line '{title}' asks for '{found}', which is not one of our parts",
        "correct the job file or add the part to the equivalence table",
    ),
    "line-has-no-offer": _kind(
        "Line without an offer",
        "job {job} can't be quoted: {found}",
        "import a newer sheet, allow a later day, or change the job",
    ),
    "no-quote": _kind(
        "No quote yet",
        "job {job} has no quote",
        "write one with 'sourcing quote {job}'",
    ),
    "not-entitled": _kind(
        "Not entitled to answer",
        "{who} is not named as someone who may answer for job {job} (named: {entitled})",
        "ask one of those named, or add the name to may_also_approve in the job with the customer's consent",
    ),
    "quote-expired": _kind(
        "Quote past its validity",
        "revision {revision} of job {job} was valid to {valid_to}",
        "make a new revision with 'sourcing quote {job}' and ask again",
    ),
    "answer-before-quote": _kind(
        "Answer before the quote",
        "the answer is dated {at}, before the quote of {made}",
        "check the day and time, then record it again with 'sourcing answer {job}'",
    ),
    "answered-both-ways": _kind(
        "Answered both ways",
        "line {label} is given both a yes and a no",
        "ask the customer which holds",
    ),
    "ordered-already": _kind(
        "Ordered already",
        "line {label} of job {job} is already on a purchase order",
        "speak to the supplier first; a no no longer undoes the order",
    ),
    "no-answer": _kind(
        "No answer given",
        "no line of job {job} was answered",
        "say --yes or --no with a line's label; a line not named stays waiting",
    ),
    "no-such-line": _kind(
        "No such line",
        "revision {revision} of job {job} has no line '{label}'",
        "answer one of: {known}",
    ),
    "freight-not-answered": _kind(
        "Freight not answered",
        "line {label} can't be ordered without the freight on line {freight}",
        "ask the customer about line {freight} too, and record both answers together",
    ),
    "nothing-approved": _kind(
        "Nothing approved",
        "no line of {job} that needs parts is approved and not yet ordered",
        "record the customer's answer with 'sourcing answer' first",
    ),
    "not-approved": _kind(
        "Line not approved",
        "line {label} of job {job} is {answer}, so it can't be ordered",
        "record the customer's yes with 'sourcing answer {job} --yes {label}' first",
    ),
    "approval-no-longer-covers": _kind(
        "Approval no longer covers it",
        "line {label} of job {job} waits for a new answer: {found}",
        "make a new revision with 'sourcing quote {job}' and ask the customer",
    ),
    "supplier-refuses": _kind(
        "Supplier refuses the order",
        "{found}",
        "order more there at once, or make a new revision that buys elsewhere",
    ),
    "freight-unknown-order": _kind(
        "Freight not known",
        "the order can't be priced: {found}",
        "add the freight rule to suppliers.toml and run 'sourcing setup' again",
    ),
    "no-such-order-line": _kind(
        "No such line on the order",
        "order {order} has no line {line}",
        "use one of: {known}",
    ),
    "price-without-goods": _kind(
        "Price without goods",
        "a price is given for line {line} of order {order}, but no pieces",
        "add --line {line}=PIECES",
    ),
    "charged-below-zero": _kind(
        "Charged below zero",
        "{found} for line {line} of order {order} is below zero",
        "write the price on the supplier's paper",
    ),
    "nothing-received": _kind(
        "Nothing received",
        "{found} pieces of line {line} of order {order} is not a receipt",
        "write at least 1, or leave the line out",
    ),
    "order-complete": _kind(
        "Order complete",
        "all of order {order} has come already",
        "check the number of the paper and of the order",
    ),
    "not-an-amount": _kind(
        "Not an amount",
        "'{found}' is not an amount of money",
        "write digits with a point, such as 12.50",
    ),
    "not-a-pair": _kind(
        "Not understood",
        "'{found}' can't be read as LINE=VALUE",
        "write it like 1=2",
    ),
    "no-sheet-yet": _kind(
        "No sheet yet",
        "no supplier's sheet has been imported",
        "import some with 'sourcing import'",
    ),
    "folder-not-empty": _kind(
        "Folder in use",
        "'{found}' is not empty",
        "name a new folder for the demo",
    ),
}
