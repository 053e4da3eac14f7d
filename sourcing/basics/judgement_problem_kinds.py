"""The kinds of problem met when a person judges candidates, one by one or in a file, and confirms number rules."""

from .problem_kind import ProblemKind, kind

JUDGEMENT_KINDS: dict[str, ProblemKind] = {
    "no-such-candidate": kind(
        "No such candidate",
        "no candidate number {found} is there any more",
        "see what waits with 'sourcing candidates'; a newer sheet has new numbers",
    ),
    "candidate-judged": kind(
        "Candidate judged before",
        "{who} said {answer} to candidate {found} on {day}",
        "take that back first with 'sourcing judge {found} --take-back --words WHY' if it does not hold",
    ),
    "candidate-not-judged": kind(
        "Candidate not judged",
        "there is no answer to candidate {found} that could be taken back",
        "see the answers with 'sourcing judged'",
    ),
    "against-without-words": kind(
        "Something speaks against it",
        "something speaks against candidate {found}: {reasons}",
        "say in words why it is the right part all the same, or say no",
    ),
    "number-of-another-part": kind(
        "Number of another part of ours",
        "{found} is tied to our part {other} already, by {statement}",
        "withdraw that first if it is wrong; one number can't stand for two of our parts",
    ),
    "take-back-without-words": kind(
        "No reason given",
        "taking back an answer needs a reason",
        "say why in words; it stays with the answer",
    ),
    "no-candidates-by-score": kind(
        "Nothing to accept",
        "no waiting candidate of '{supplier}' has a score of {least} or more with nothing against it",
        "see what waits with 'sourcing candidates {supplier}'",
    ),
    "score-not-between": kind(
        "Not a score",
        "'{found}' is not a score",
        "write a number from 0.5 to 1 such as 0.95; what is likelier wrong than right is judged one by one",
    ),
    "other-count-by-score": kind(
        "Another number of candidates",
        "{found} were to be accepted, but there are {count}",
        "look at them again and then say --accept {count}",
        at_counter="look at them again and then accept them",
    ),
    "no-judged-workbook": kind(
        "Not a file of answers",
        "'{found}' can't be opened as an XLSX workbook",
        "fill in the workbook that 'sourcing candidates --xlsx FILE' writes and save it as .xlsx",
        at_counter="take the workbook along again under 'page:workbook', fill it in and save it as .xlsx",
    ),
    "judged-column-missing": kind(
        "Column missing",
        "the first worksheet of '{file}' has no column '{found}'",
        "fill in the workbook that 'sourcing candidates --xlsx FILE' writes and leave its header row as it is",
        at_counter="take the workbook along again under 'page:workbook', fill it in and leave its header row as it is",
    ),
    "unknown-answer": kind(
        "Answer not understood",
        "'{found}' is no answer",
        "write yes fitted, yes or no, or leave it blank to judge later",
    ),
    "candidate-number-unclear": kind(
        "Candidate number not readable",
        "'{found}' is not the number of a candidate",
        "leave the columns other than 'answer' and 'words' as they were written",
    ),
    "candidate-twice": kind(
        "Answered twice",
        "candidate {found} is answered in more than one row, so neither answer is taken",
        "leave one row of it",
    ),
    "row-of-two-parts": kind(
        "Yes to two parts",
        "row {found} of the supplier's sheet has a yes to {parts}, so neither is taken",
        "say yes to one of them only",
    ),
    "judged-row-edited": kind(
        "Row was edited",
        "candidate {candidate} has '{kept}' as its {column} and the file has '{found}'",
        "write the file out again and fill in 'answer' and 'words' only",
    ),
    "no-such-number-rule": kind(
        "No such number rule",
        "there is no number rule {found}",
        "see them with 'sourcing number-rules'",
    ),
    "number-rule-there": kind(
        "Number rule there already",
        "the rule is kept already as number {found}",
        "nothing needs doing; 'sourcing number-rules withdraw {found} --words WHY' lets it hold no more",
        at_counter="nothing needs doing; withdraw it under 'page:number-rules' if it is to hold no more",
    ),
    "number-rule-withdrawn": kind(
        "Number rule withdrawn",
        "number rule {found} was withdrawn before: {why}",
        "nothing needs doing",
    ),
    "number-rule-bears-nothing": kind(
        "Nobody's numbers",
        "no number on the newest sheet of '{supplier}' has '{found}' {where} it",
        "write it as it is printed, with its dash, and name the supplier as 'sourcing sheets' does",
        at_counter="write it as it is printed, with its dash, and choose the supplier whose numbers have it",
    ),
    "number-rule-words": kind(
        "No reason given",
        "withdrawing a number rule needs a reason",
        "say why in words; it stays with the rule",
    ),
    "no-newest-sheet": kind(
        "No sheet of the supplier",
        "there is no sheet of '{supplier}'",
        "import one, or name the supplier as 'sourcing sheets' does",
        at_counter="take one in under 'page:sheets', or choose another supplier",
    ),
}
