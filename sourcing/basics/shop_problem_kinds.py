"""The kinds of problem met in money, settings, terms, files a person edits, sheets taken in and look-ups."""

from .problem_kind import ProblemKind, kind

SHOP_KINDS: dict[str, ProblemKind] = {
    "currencies-mixed": kind(
        "Two currencies in one sum",
        "{one} and {other} can't be added without a dated rate",
        "add a rate to rates.csv and run 'sourcing setup' again",
        at_counter="add a rate under 'page:rates'",
    ),
    "unknown-currency": kind(
        "Unknown currency",
        "'{found}' is not a currency code of ISO 4217",
        "write the three-letter code, such as USD or EUR",
    ),
    "no-rate": kind(
        "No exchange rate",
        "the rate table has no rate from {currency} to {into} on or before {day}",
        "add one with its date to rates.csv and run 'sourcing setup' again",
        at_counter="add one with its date under 'page:rates'",
    ),
    "terms-contradict": kind(
        "Supplier's terms contradict",
        "the terms of '{supplier}' can't hold: {found}",
        "correct suppliers.toml and run 'sourcing setup' again",
        at_counter="correct them under 'page:terms'",
    ),
    "settings-contradict": kind(
        "Settings contradict",
        "the shop's settings can't hold: {found}",
        "correct the shop's settings: 'sourcing setup'",
        at_counter="correct them under 'page:setup'",
    ),
    "never-open": kind(
        "Calendar without working days",
        "a calendar has no working day for years before {day}",
        "correct 'week' and 'closed' of the calendar in suppliers.toml or shop.toml",
        at_counter="correct the days that are worked and the closing days, under 'page:setup' or 'page:terms'",
    ),
    "unknown-country": kind(
        "Unknown country or region",
        "no public holidays are known for '{found}'",
        "write the country as two letters (US, DE) and a region of that country, or leave both blank",
    ),
    "no-equivalence-workbook": kind(
        "Not an equivalence table",
        "'{found}' can't be opened as an XLSX workbook",
        "save the equivalence table as .xlsx with the worksheets 'parts' and 'statements'",
    ),
    "worksheet-missing": kind(
        "Worksheet missing",
        "'{file}' has no worksheet '{found}', or it is empty",
        "add the worksheet with its header row; demo_prices/equivalence.xlsx shows how",
        at_counter="add the worksheet with its header row, as in the table saved from 'page:table'",
    ),
    "unknown-table-column": kind(
        "Unknown column in the equivalence table",
        "the column '{found}' is not known",
        "use one of: {known}",
    ),
    "no-such-part": kind(
        "Part of ours not in the table",
        "our part '{found}' is not on the worksheet 'parts'",
        "add it there, or correct the code",
    ),
    "statement-about-itself": kind(
        "Statement about itself",
        "the statement ties {found} to itself",
        "correct one of the numbers, or leave the statement out",
    ),
    "blank-number": kind(
        "Blank number",
        "'{found}' holds no letter and no digit",
        "write the part number",
    ),
    "table-cell-blank": kind(
        "Blank cell",
        "'{column}' is blank",
        "fill it in",
    ),
    "unknown-word": kind(
        "Unknown word",
        "'{found}' is not one of the words for '{column}'",
        "use one of: {known}",
    ),
    "no-such-day": kind(
        "Not a day",
        "'{found}' in '{column}' is not a day",
        "write it as year-month-day, such as 2026-01-13",
    ),
    "count-below-one": kind(
        "Count below one",
        "'{found}' is not a count of pieces",
        "write a whole number of at least 1, of at most nine digits",
    ),
    "table-has-problems": kind(
        "Equivalence table has problems",
        "the equivalence table has {count} rows that can't be used",
        "correct them and run 'sourcing setup' again; nothing was changed",
        at_counter="correct them and send the file again, or tick that such rows are left out; nothing was changed",
    ),
    "file-not-understood": kind(
        "File not understood",
        "'{file}' can't be used: {found}",
        "correct the file and try again",
    ),
    "rate-far-off": kind(
        "Far from the last rate",
        "'{found}' is far from '{last}'",
        "look at the decimal point; if it is right as typed, say so with --sure and keep it",
        at_counter="look at the decimal point; if it is right as typed, tick that it is, and keep it",
    ),
    "rate-comes-back": kind(
        "Taken back before",
        "'{found}' was taken back by {who} on {at}",
        "take it out of rates.csv; if it is right all the same, say so with --sure and keep it",
        at_counter="look whether it is right this time; if it is, tick that it is, and keep it",
    ),
    "figure-far-off": kind(
        "Far from usual",
        "{entry}'{field}' {found}",
        "look at the decimal point; if it is right as typed, say so with --sure and keep it",
        at_counter="look at the decimal point; if it is right as typed, tick that it is, and keep it",
    ),
    "rate-needs-why": kind(
        "Reason missing",
        "no reason is given for taking the rate back",
        "say why it was wrong, for those who read it later; nothing was changed",
    ),
    "no-such-rate": kind(
        "No such rate",
        "there is no rate from {found} into {into} of {dated}",
        "name the day of one there is: {known}",
    ),
    "rates-row": kind(
        "Rate not understood",
        "'{found}' is not a rate with its date",
        "write currency, into, rate, dated (2026-01-09) and source, with a rate above zero",
    ),
    "nothing-to-set-up": kind(
        "Nothing to set up",
        "'{found}' holds none of shop.toml, suppliers.toml, rates.csv, equivalence.xlsx",
        "name the folder that has them; demo_prices/ shows what they look like",
        at_counter="choose one of the four; nothing was changed",
    ),
    "supplier-not-named": kind(
        "Supplier not known",
        "it is not clear whose sheet '{found}' is",
        "put it in a folder named after the supplier, or add --supplier with one of: {known}",
        at_counter="choose whose sheet it is",
    ),
    "no-terms": kind(
        "Supplier without terms",
        "there are no terms for the supplier '{supplier}' on {day}",
        "add a [[supplier]] entry to suppliers.toml and run 'sourcing setup' again",
        at_counter="choose another supplier, or take him in under 'page:terms'",
    ),
    "sheet-not-dated": kind(
        "Sheet without a date",
        "'{found}' does not say from which day its prices hold",
        "name the file like prices-2026-01-05.csv, or add --dated 2026-01-05",
        at_counter="say from which day its prices hold",
    ),
    "sheet-without-offers": kind(
        "Sheet without offers",
        "'{found}' holds no row that can be taken as an offer ({problems} rows have problems)",
        "look at the problems with 'sourcing read', then import it again",
        at_counter="look at what is wrong with its rows, correct them and drop the file again",
    ),
    "no-sheets": kind(
        "No sheets found",
        "there is no .csv, .tsv, .txt, .xlsx, .xlsm, .xls or .ods file in '{found}'",
        "name the sheets or the folder they are in",
    ),
    "no-sheet-number": kind(
        "No such sheet",
        "there is no sheet number {found}",
        "see the numbers with 'sourcing sheets'",
    ),
    "nothing-to-compare": kind(
        "Nothing to compare with",
        "{supplier} has no sheet before the one of {day}",
        "import an older or a newer one with 'sourcing import'",
    ),
    "no-sheet-of-supplier": kind(
        "No sheet of that supplier",
        "there is no sheet of '{found}'",
        "see the sheets with 'sourcing sheets'",
    ),
    "not-a-sheet-of": kind(
        "Not a sheet of that supplier",
        "{supplier} has no sheet number {found}",
        "see the numbers with 'sourcing sheets'",
    ),
    "number-not-known": kind(
        "Number not known",
        "no part of ours is known under '{found}'",
        "say which part it is with 'sourcing table add', add a part of ours with 'sourcing table add-part', or ask for "
        "another number of the same part",
        at_counter="say which part it is: 'page:table add'; if the shop does not have the part yet: "
        "'page:table add-part'; or ask for another number of the same part",
    ),
    "number-must-not": kind(
        "Number that must not serve",
        "no part of ours is known under '{found}', and it is forbidden: {ban}",
        "ask for a number of the part itself; 'sourcing numbers {found}' shows what is stated",
    ),
    "number-of-several": kind(
        "Number of several parts",
        "'{found}' is tied to more than one part of ours: {codes}",
        "ask for the part by our own code",
    ),
    "quantity-below-one": kind(
        "Quantity below one",
        "{found} pieces can't be asked for",
        "ask for at least 1",
    ),
    "not-an-amount": kind(
        "Not an amount",
        "'{found}' is not an amount of money",
        "write digits with a point, such as 12.50; at most twelve on either side of it",
    ),
    "moment-far-off": kind(
        "Moment too far off",
        "{found} is no day to work on",
        "write a moment between the years {first} and {last} with --at",
        at_counter="see that the clock of the shop's computer is right",
    ),
    "not-a-pair": kind(
        "Not understood",
        "'{found}' says nothing of what is meant: there must be a name, '=' and a value",
        "write it like {example}",
    ),
    "folder-not-empty": kind(
        "Folder in use",
        "'{found}' is not empty",
        "name a new folder for the demo",
    ),
    "can-not-write": kind("File not written", "'{found}' can't be written: {why}", "name another file or folder"),
}
