"""The kinds of problem met between job, quote, answer, order and receipt."""

from .problem_kind import ProblemKind, kind

JOB_KINDS: dict[str, ProblemKind] = {
    "job-contradicts": kind("Job contradicts", "the job can't hold: {found}", "correct it and try again"),
    "not-hours": kind("Not hours of work", "'{found}' is no number of hours", "write digits with a point, such as 1.5"),
    "part-not-ours": kind(
        "Part not in the table",
        "job line '{title}' asks for '{found}', which is not one of our parts",
        "correct the part's code or add the part to the equivalence table",
    ),
    "line-has-no-offer": kind(
        "Line without an offer",
        "job {job} can't be quoted: {found}",
        "import a newer sheet, allow a later day or any day, or change the job",
    ),
    "no-quote": kind(
        "No quote yet",
        "job {job} has no quote",
        "write one with 'sourcing quote {job}'",
    ),
    "not-entitled": kind(
        "Not entitled to answer",
        "{who} is not named as someone who may answer for job {job} (named: {entitled})",
        "ask one of those named, or add the name to may_also_approve in the job with the customer's consent",
        at_counter="ask one of those named, or add the name to the job under 'Who else may say yes' with the "
        "customer's consent",
    ),
    "quote-expired": kind(
        "Quote past its validity",
        "revision {revision} of job {job} was valid to {valid_to}",
        "make a new revision with 'sourcing quote {job}' and ask again",
    ),
    "answer-before-quote": kind(
        "Answer before the quote",
        "the answer is dated {at}, before the quote of {made}",
        "check the day and time, then record it again with 'sourcing answer {job}'",
    ),
    "answered-both-ways": kind(
        "Answered both ways",
        "line {label} is given both a yes and a no",
        "ask the customer which holds",
    ),
    "ordered-already": kind(
        "Ordered already",
        "line {label} of job {job} is already on a purchase order",
        "speak to the supplier first; a no no longer undoes the order",
    ),
    "no-answer": kind(
        "No answer given",
        "no line of job {job} was answered",
        "say --yes or --no with a line's label; a line not named stays waiting",
        at_counter="choose Yes or No for a line; a line left at 'Not yet' stays waiting",
    ),
    "no-such-line": kind(
        "No such line",
        "revision {revision} of job {job} has no line '{label}'",
        "answer one of: {known}",
    ),
    "freight-not-answered": kind(
        "Freight not answered",
        "line {label} can't be ordered without the freight on line {freight}",
        "record the yes to both together; if the customer was not told of line {freight}, ask first",
    ),
    "nothing-approved": kind(
        "Nothing approved",
        "no line of {job} that needs parts is approved and not yet ordered",
        "record the customer's answer with 'sourcing answer' first",
    ),
    "all-on-order": kind(
        "On order already",
        "all that is approved of {job} is ordered: {orders}",
        "print the paper again with 'sourcing order-paper {order}'; for more, record the customer's yes first",
    ),
    "not-as-looked-at": kind(
        "Not as looked at",
        "what would be ordered for {found} is not what was looked at: a price, an answer or a supplier's terms changed "
        "meanwhile",
        "nothing is ordered; look at it again",
    ),
    "line-declined": kind(
        "Line declined",
        "line {label} of job {job} is declined, so it can't be ordered",
        "if the customer has changed her mind, record it with 'sourcing answer {job} --yes {label} --instead' first",
    ),
    "not-approved": kind(
        "Line not approved",
        "line {label} of job {job} is {answer}, so it can't be ordered",
        "record the customer's yes with 'sourcing answer {job} --yes {label}' first",
    ),
    "approval-no-longer-covers": kind(
        "Approval no longer covers it",
        "line {label} of job {job} waits for a new answer: {found}",
        "make a new revision with 'sourcing quote {job}' and ask the customer",
    ),
    "supplier-refuses": kind(
        "Supplier refuses the order",
        "{found}",
        "order more there at once, or make a new revision that buys elsewhere",
    ),
    "freight-unknown-order": kind(
        "Freight not known",
        "the order can't be priced: {found}",
        "add the freight rule to suppliers.toml and run 'sourcing setup' again",
        at_counter="say under 'page:terms' how he charges freight",
    ),
    "no-such-order-line": kind(
        "No such line on the order",
        "order {order} has no line {line}",
        "use one of: {known}",
    ),
    "price-without-goods": kind(
        "Price without goods",
        "a price is given for line {line} of order {order}, but no pieces",
        "add --line {line}=PIECES",
        at_counter="say under 'Came' how many pieces of it came",
    ),
    "charged-below-zero": kind(
        "Charged below zero",
        "{found} for line {line} of order {order} is below zero",
        "write the price on the supplier's paper",
    ),
    "nothing-received": kind(
        "Nothing received",
        "{found} pieces of line {line} of order {order} is not a receipt",
        "write at least 1, or leave the line out",
    ),
    "order-complete": kind(
        "Order complete",
        "all of order {order} has come already",
        "check the number of the paper and of the order",
    ),
    "job-changed-meanwhile": kind(
        "Job changed meanwhile",
        "somebody else changed job {job} while this was typed ({last})",
        "look at it first with 'sourcing show-job {job}' and make the change then; nothing was overwritten",
    ),
    "not-a-photo": kind(
        "Not a photo",
        "what was sent is no photo the counter can read ({found})",
        "take it as JPEG or PNG, or send another",
    ),
    "photo-too-large": kind(
        "Photo too large",
        "the photo has {found}, the counter takes up to {most}",
        "take it with less resolution",
    ),
    "no-such-photo": kind("No such photo", "job {job} has no photo {found}", "look at the photos on the job's page"),
}
