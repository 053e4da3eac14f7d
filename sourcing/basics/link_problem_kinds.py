"""The kinds of problem met with customers' links: what the shop is told, and what a customer is told on her page.

A customer reads no command, no cost and nobody else's name, and every sentence ends with what she can do.
"""

from .problem_kind import ProblemKind, kind

LINK_KINDS: dict[str, ProblemKind] = {
    "link-day-wrong": kind(
        "Link open for the wrong days",
        "the link would be open until {found}, and revision {revision} can be answered from today to {valid_to}",
        "choose a day up to {valid_to}, or make a new revision with 'sourcing quote {job}'",
    ),
    "link-secret-wrong": kind(
        "Link can't be made from this page",
        "the page did not send what makes the link impossible to guess",
        "open the page anew and make the link from there",
    ),
    "link-nothing-asked": kind(
        "Nothing left to ask",
        "every line of revision {revision} is answered, so a link would ask the customer nothing",
        "print the quote for her to read; to ask anew, make a new revision with 'sourcing quote {job}'",
    ),
    "link-not-open": kind(
        "Link not open",
        "link {found} of job {job} takes no answers any more",
        "look at the list of links",
    ),
    "link-unknown": kind(
        "Link opens nothing",
        "there is no quote to be read under this link",
        "ask the shop for a new one",
    ),
    "link-over": kind("Link no longer open", "this link was open until {until}", "ask the shop for a new one"),
    "link-quote-over": kind(
        "Quote no longer valid", "this quote was valid to {valid_to}", "ask the shop for a new one, prices may differ"
    ),
    "link-replaced": kind(
        "Quote changed since",
        "the shop has changed this quote since it gave you this link",
        "ask the shop for the new one",
    ),
    "link-job-billed": kind(
        "Work billed already",
        "the work is done and billed, so this quote takes no more answers",
        "call the shop if something is not as you wanted it",
    ),
    "link-answered": kind(
        "Answered already",
        "this quote was answered through this link before, and what you sent just now was not taken",
        "read below what was answered; to change it, call the shop",
    ),
    "link-name-missing": kind(
        "Name missing", "your name is missing", "type it under your answers; a yes counts with the name of who gives it"
    ),
    "link-name-unknown": kind(
        "Name not noted",
        "the shop has not noted '{found}' as somebody who may answer this quote",
        "type the name as it stands on the quote, or call the shop",
    ),
    "link-nothing-answered": kind(
        "Nothing answered",
        "no line has a yes or a no yet",
        "choose for at least one line; a line you leave open waits",
    ),
    "link-answered-otherwise": kind(
        "Answered otherwise meanwhile",
        "the shop was given another answer to one of these lines meanwhile",
        "see below which line is answered; call the shop to change it, the others can be sent from here",
    ),
    "link-line-ordered": kind(
        "Ordered already",
        "the part of line {found}, which you decline, is ordered already",
        "call the shop if you no longer want it; the other lines can be sent from here",
    ),
    "link-freight-needed": kind(
        "Freight needed",
        "a part that you approve can't come without its freight, which is a line of its own: line {found}",
        "approve the freight too, or decline the part",
    ),
    "link-freight-for-nothing": kind(
        "Freight for nothing",
        "the freight is approved without any part that it would bring (line {found})",
        "approve one of the parts too, or decline the freight",
    ),
    "link-condition-without-yes": kind(
        "Condition without a yes",
        "a condition belongs to a yes, and no line is approved",
        "approve the line it is about, or write it under 'Anything else'",
    ),
    "link-not-taken": kind(
        "Answer not taken", "your answer could not be taken down", "call the shop; nothing was changed"
    ),
    "words-too-long": kind(
        "Too many words", "{count} characters were written under '{found}'", "keep it to {most}, or call the shop"
    ),
    "drawing-not-read": kind(
        "Signature not read",
        "what was drawn could not be read",
        "draw it again or leave it out; your typed name is enough",
    ),
}
