"""The kinds of problem met when goods come, go back, or an old part is sent in."""

from .problem_kind import ProblemKind, kind

RECEIPT_KINDS: dict[str, ProblemKind] = {
    "scan-not-read": kind(
        "No number scanned",
        "'{found}' has no letter or digit, so it is no number of a part",
        "scan it again, or type what stands on the part",
    ),
    "nothing-counted": kind(
        "Nothing counted",
        "no piece of order {order} is counted yet",
        "scan the parts or type how many came; 'All of it came' fills in what is still to come",
    ),
    "freight-not-said": kind(
        "Freight not said",
        "nothing is said of freight on paper {found}",
        "type the freight the paper charges, and 0 where it charges none",
    ),
    "credit-above-expected": kind(
        "More than to be expected",
        "a credit of {found} is more than the {expected} that was to be expected, and nobody says why",
        "read the credit note again; if it is right, say in a few words what it is for",
    ),
    "charge-not-clear": kind(
        "Charge not clear",
        "the other charge '{found}' has a name without an amount, an amount without a name, or stands there twice",
        "say each charge once, by the name it has on the paper and its amount",
    ),
    "one-number-a-paper": kind(
        "Two other numbers on one line",
        "line {line} is counted as {there} on this paper already, and {found} is another number",
        "take {found} in by itself, with a paper number of its own such as the paper's with 'b' behind it",
    ),
    "paper-not-only-counted": kind(
        "Its prices are said",
        "what paper {found} of order {order} charges was taken in already",
        "if it was taken in wrongly, set it aside and take it in again",
    ),
    "paper-has-no-number": kind(
        "Paper without a number",
        "'{found}' is no number of a delivery note or invoice",
        "say the number on the supplier's paper; where it has none, the day it came",
    ),
    "paper-counted-before": kind(
        "Paper counted before",
        "paper '{paper}' was taken in for order {order} on {on} by {who}, as '{found}'",
        "each counts once; if it was taken in wrongly, say 'sourcing receive-again {order} --paper {found}' first",
    ),
    "not-so-many": kind(
        "No count of pieces",
        "{found} pieces of line {line} of order {order} can be neither received nor charged",
        "write a whole number from 0 up, of at most nine digits",
    ),
    "line-was-cancelled": kind(
        "Line was cancelled",
        "line {line} of order {order} was cancelled, so nothing can be taken in for it",
        "put the goods aside and ask the supplier how they go back",
    ),
    "order-was-cancelled": kind(
        "Order was cancelled",
        "all of order {order} was cancelled, so nothing can be taken in for it",
        "put the goods aside and ask the supplier how they go back",
    ),
    "more-than-came": kind(
        "More than came",
        "{found} of line {line} of order {order} is more than the {came} that came",
        "say with --line how many came in all",
        at_counter="say under 'Came' how many came in all",
    ),
    "said-without-goods": kind(
        "Said of a line that did not come",
        "{found} is said of line {line} of order {order}, but no pieces",
        "add --line {line}=PIECES",
        at_counter="say under 'Came' how many pieces of it came",
    ),
    "weight-not-known": kind(
        "Weight not known",
        "freight of order {order} can't be shared by weight: nobody knows what line {lines} weighs",
        "share it by value, with --share-by value",
        at_counter="share the freight by value",
    ),
    "rate-not-usable": kind(
        "Rate not usable",
        "{found} is no rate from {currency} to {into}",
        "say what one {currency} cost on the day of the paper, and nothing where both are the same currency",
    ),
    "dated-before-order": kind(
        "Paper dated before the order",
        "the paper is dated {found}, and order {order} was placed on {placed}",
        "check the day and the year on the paper, and the number of the order",
    ),
    "came-before-order": kind(
        "Came before it was ordered",
        "it would be taken in on {found}, and order {order} was placed on {placed}",
        "check the day and time said with --at, and the number of the order",
        at_counter="see that the clock of the shop's computer is right, and check the number of the order",
    ),
    "dated-ahead": kind(
        "Paper dated ahead",
        "the paper is dated {found}, after today, {today}",
        "check the day on the paper",
    ),
    "no-such-paper": kind(
        "No such paper",
        "no paper '{found}' was taken in for order {order}",
        "use one of: {known}",
    ),
    "gone-back-already": kind(
        "Gone back already",
        "goods of line {line} on paper {paper} of order {order} went back already",
        "what was sent back can't be taken out of the books; ask the owner",
    ),
    "back-more-than-came": kind(
        "More than there is",
        "line {line} of order {order}: {found} can't be {step}, for the pieces left for that come to {left}",
        "check the pieces, or say what came with 'sourcing receive {order}' first",
    ),
    "no-old-part": kind(
        "No old part to send in",
        "line {line} of order {order} has no charge for an old part",
        "say --goods where it is the goods that go back",
        at_counter="if it is the goods that go back, choose 'Send back goods' of the line under 'page:one order'",
    ),
    "credit-without-sending": kind(
        "Credit before sending",
        "line {line} of order {order}: {found} can't be {step}, for the pieces sent and not settled come to {left}",
        "say --sent first; where he wants nothing back, say so with --words",
        at_counter="keep 'Sent back' first; where he wants nothing back, write that under 'What was said'",
    ),
    "credit-not-said": kind(
        "Credit without an amount",
        "no amount is said that was credited for line {line} of order {order}",
        "say it with --credited; 0 where he gave nothing back",
        at_counter="fill in 'He gave back'; 0 where he gave nothing back",
    ),
    "no-step-to-take-back": kind(
        "No step to take back",
        "nothing is taken down of the {found} of line {line} of order {order} going back",
        "look at 'sourcing going-back {order}', and see that line and old part or goods are the right ones",
        at_counter="look under 'page:one order' what was taken down of its goods going back",
    ),
    "step-changed-meanwhile": kind(
        "Another step meanwhile",
        "somebody has taken down or back another step of the {found} of line {line} of order {order} meanwhile",
        "look at it as it stands now, then take back what is wrong",
    ),
    "pieces-missing": kind(
        "Pieces missing",
        "{found} pieces of line {line} of order {order} can't go back",
        "say at least 1",
    ),
    "amount-with-wrong-step": kind(
        "Amount with the wrong step",
        "a {found} is said for goods that are {step}",
        "say a credit or a fee with --credited, and freight with --sent",
        at_counter="fill in what he gave back and his fee with 'Credited', and what sending it cost with 'Sent back'",
    ),
    "back-below-zero": kind(
        "Amount below zero",
        "{found} is below zero",
        "write the amount on the supplier's paper",
    ),
    "nothing-to-claim": kind(
        "Nothing to claim",
        "nothing of order {order} cost more than agreed",
        "see 'sourcing differences {order}' for what is still open",
        at_counter="look under 'page:one order' for what is still open",
    ),
}
