"""The kinds of problem met when a deposit is taken and when a job is billed."""

from .problem_kind import ProblemKind, kind

BILL_KINDS: dict[str, ProblemKind] = {
    "billed-already": kind(
        "Billed already",
        "job {job} is billed already",
        "print the bill again with 'sourcing bill {job}'",
    ),
    "billed-stays": kind(
        "Billed, so it stays as it is",
        "job {job} is billed, so {found}",
        "take what was found since in as a new job with 'sourcing job'; 'sourcing show-job {job}' shows this one",
    ),
    "bill-before": kind(
        "Bill before what it bills",
        "the bill of job {job} would be dated {found}, before {what} of {on}",
        "check the day and time said with --at",
        at_counter="see that the clock of the shop's computer is right",
    ),
    "currency-of-open-jobs": kind(
        "Currency of open jobs",
        "the shop's currency can't become {found}: {jobs} would stand in {before}, with quotes and orders in it",
        "bill the open jobs first, or leave the currency in shop.toml as {before}",
        at_counter="bill the open jobs first, or leave the money as it is",
    ),
    "not-approved-for-bill": kind(
        "Line not approved",
        "line {label} of job {job} is {answer}, so it can't be billed",
        "record the customer's answer with 'sourcing answer {job}' first; where she gave none, leave the line undone "
        "with 'sourcing bill {job} --not-done {label}'",
        at_counter="record the customer's answer under 'page:answers' first; where she gave none, mark the line as not "
        "answered and not done",
    ),
    "bill-damaged": kind(
        "Bill damaged",
        "the kept bill of job {job} is no longer what was given out",
        "take the database from a backup",
    ),
    "above-approved": kind(
        "More than was approved",
        "line {label} of job {job} would be billed at {found}, approved was {approved}",
        "record the customer's yes to the newest revision with 'sourcing answer {job} --yes {label}' first",
    ),
    "bill-above-told": kind(
        "More than the customer was told",
        "the bill of job {job} would come to {found}; the customer was told {told}",
        "give the newest revision to the customer and record the answer with 'sourcing answer {job}' first",
    ),
    "not-received-for-bill": kind(
        "Goods have not come",
        "line {label} of job {job} can't be billed: {found}",
        "receive the goods first, or leave the line out with --not-done {label} and the reason with --words",
        at_counter="receive the goods first, or tick the line as approved but not done and say why",
    ),
    "other-number-for-bill": kind(
        "Another number came",
        "line {label} of job {job} can't be billed: {found} came, the customer said yes to {approved}",
        "ask the customer, and record the yes with 'sourcing decide {job} {label} hold --agreed-by'",
    ),
    "freight-not-said-for-bill": kind(
        "Freight not known yet",
        "line {label} of job {job} bills freight at cost, and of {found} nobody has said yet what it charges",
        "set the paper aside with 'sourcing receive-again ORDER --paper PAPER' and take it in with 'sourcing receive'",
        at_counter="say first what the paper charges",
    ),
    "freight-without-goods": kind(
        "Freight of nothing",
        "line {label} of job {job} is freight, and no line with a part that it was for is billed",
        "leave it out as well with --not-done {label}",
        at_counter="tick it as not done as well",
    ),
    "not-done-unknown": kind(
        "Can't be left out",
        "line {label} of job {job} can't be left out of the bill: {found}",
        "name lines that were approved and not done",
    ),
    "not-done-why": kind(
        "No reason given",
        "job {job} leaves out lines that were approved, without a reason",
        "say why with --words: it stands on the bill",
        at_counter="say why it was not done: it stands on the bill",
    ),
    "off-unknown": kind(
        "Nothing to take off",
        "job {job}: nothing can be taken off line {label}, for it is not on the bill",
        "name lines that are billed; 'sourcing bill {job} --look' shows them",
        at_counter="take amounts off lines that are billed; the bill as it would be shows them",
    ),
    "off-twice": kind(
        "Line named twice",
        "job {job}: two amounts are to be taken off line {label}",
        "name each line once, with all that is taken off it",
    ),
    "off-amount": kind(
        "Not an amount to take off",
        "{found} can't be taken off line {label} of job {job}",
        "write an amount above zero in {currency} with at most {places} decimals",
    ),
    "off-above-line": kind(
        "More than the line",
        "{found} can't be taken off line {label} of job {job}: it costs {price}",
        "take off no more than the line costs before tax",
    ),
    "off-why": kind(
        "No reason given",
        "job {job}: a discount without a reason",
        "say why with --off-words: the owner reads it later",
        at_counter="say why: the owner reads it later",
    ),
    "given-away-amount": kind(
        "Not an amount",
        "{found} is no {what} of an extra given away on job {job}",
        "write an amount above zero in {currency} with at most {places} decimals",
    ),
    "given-away-words": kind(
        "Not said",
        "job {job}: {what} of the extra given away is not said",
        "say what was fitted with --what and why with --words",
        at_counter="fill in what was fitted, and why it was fitted without asking",
    ),
    "given-away-already": kind(
        "Recorded already",
        "job {job}: {found} is recorded as given away already, at a cost of {cost}",
        "if it was given a second time, say so in --what, such as 'second cable clip'",
        at_counter="if it was given a second time, say so in 'What was fitted', such as 'second cable clip'",
    ),
    "deposit-amount": kind(
        "Not a deposit",
        "{found} is no amount that can be paid for job {job}",
        "write an amount above zero in {currency} with at most {places} decimals",
    ),
    "deposit-how": kind(
        "Way of paying not said",
        "job {job}: it is not said how the money was paid",
        "say it with --how, such as cash or card",
        at_counter="say how, such as cash or card",
    ),
    "deposit-above-total": kind(
        "Deposit above the total",
        "{found} is too much for job {job}: {held} is held, and what is not declined comes to {most} in all",
        "take less, or record the customer's answer first",
    ),
    "deposit-not-held": kind(
        "More than is held",
        "{found} can't be given back for job {job}: {held} is held",
        "check the amounts with 'sourcing deposit {job}'",
    ),
}
