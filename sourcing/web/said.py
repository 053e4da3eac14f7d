"""Sentences of the program on a page: where one names a command or a page, that page is linked instead."""

import re
from typing import Any

from flask import current_app, has_request_context, request, url_for
from markupsafe import Markup, escape
from werkzeug.routing import BuildError

from ..basics.problem import Problem, at_counter
from ..documents.as_written import as_written
from ..documents.plain_text import shown
from .desks import person
from .guard import OPEN_TO
from .words import _, later
from .written import locale

COMMAND = re.compile(
    r"'sourcing (?P<quoted>[a-z][a-z-]*)(?P<rest>[^']*)'"
    r"|(?:(?<=: )|(?<=with ))sourcing (?P<bare>[a-z][a-z-]*)(?P<numbers>(?: (?:--[a-z-]+|[A-Z0-9-]*[0-9]))*)"
    r"|'page:(?P<page>[a-z -]+)'"
)
PLACED = {"with ": "under ", "run ": "open ", "Run ": "Open "}
"""A command is run, a page is opened: words before a command, and what they are before the page."""

JOB = re.compile(r"(?<![\w-])\d{4}-\d{4,}\b")
"""Not the end of an order's number."""

ORDER = re.compile(r"\bPO-\d{4}-\d{4,}\b")
FILE_FIRST = re.compile(r"[^\s:]+\.[a-z]{2,5}\b")
NEED_BY = re.compile(r"--need-by (\d{4}-\d\d-\d\d)")
UNDER = re.compile(r"known under '([^']+)'")
STATEMENT = re.compile(r"(?:standing|doubt|answer|withdraw|restore|history) (\d+)\b")

LABEL = re.compile(r"\d{4}-\d{4,} ([A-Z0-9]{1,3})\b")
LINE = re.compile(r"--line (\d+)")

ON_THE_PAGE = {
    "--plan shop": later("choose 'the plan cheapest for the shop' under 'page:quote'"),
    "--plan customer": later("choose 'the plan under which the customer pays least' under 'page:quote'"),
    "take it whatever day it comes with --any-day": later("take it so: tick 'Whatever day they come' at 'page:quote'"),
    "with --agreed-by NAME --how HOW": later("with who said yes, and how"),
}
"""What stands on a page in the place of options that a sentence of an action names."""

PAGES: dict[str, tuple[str, str]] = {
    "answer": ("quotes.answer_page", later("Answers")),
    "take-back": ("quotes.answer_page", later("Answers")),
    "answers": ("quotes.answer_page", later("Answers")),
    "quote": ("jobs.write_page", later("Write the quote")),
    "revisions": ("quotes.quote_page", later("Quote")),
    "given": ("quotes.quote_page", later("Quote")),
    "bill": ("quotes.bill_page", later("Bill")),
    "deposit": ("quotes.bill_page", later("Bill")),
    "alarms": ("quotes.alarms_page", later("Not as approved")),
    "decide": ("quotes.alarms_page", later("Not as approved")),
    "show-job": ("jobs.job_page", later("Job")),
    "jobs": ("jobs.list_page", later("Jobs")),
    "job": ("jobs.new_page", later("New job")),
    "plan": ("jobs.plan_page", later("Plan")),
    "identity": ("jobs.evidence_page", later("Which part")),
    "evidence": ("jobs.evidence_page", later("Which part")),
    "accept-anyway": ("jobs.job_page", later("Job")),
    "belt-length": ("find.belt_page", later("Belt from two pulleys")),
    "promise": ("jobs.job_page", later("Job")),
    "promises": ("jobs.promises_page", later("Promised dates")),
    "history": ("jobs.history_page", later("History")),
    "order": ("orders.place_page", later("To order")),
    "orders": ("orders.list_page", later("Orders")),
    "confirm": ("orders.order_page", later("Order")),
    "change-order": ("orders.order_page", later("Order")),
    "cancel-order": ("orders.order_page", later("Order")),
    "order-paper": ("orders.paper_page", later("Paper")),
    "claim": ("orders.claim_page", later("Claim")),
    "receive": ("receiving.receive_page", later("Receive")),
    "receive-again": ("receiving.count_page", later("Papers taken in")),
    "differences": ("orders.order_page", later("Order")),
    "going-back": ("receiving.going_back_page", later("Going back")),
    "send-back": ("receiving.step_page", later("Send it back")),
    "compare": ("find.find_page", later("Find")),
    "numbers": ("find.find_page", later("Find")),
    "import": ("sheets.list_page", later("Sheets")),
    "sheets": ("sheets.list_page", later("Sheets")),
    "changes": ("sheets.list_page", later("Sheets")),
    "undo": ("sheets.list_page", later("Sheets")),
    "read": ("sheets.list_page", later("Sheets")),
    "candidates": ("alike.list_page", later("Look-alikes")),
    "judge": ("alike.list_page", later("Look-alikes")),
    "table": ("same.table_page", later("Same parts")),
    "table add": ("same.add_page", later("Add a statement")),
    "table add-part": ("same.add_part_page", later("Add a part of ours")),
    "table check": ("same.check_page", later("Check of the table")),
    "table statement": ("same.statement_page", later("Statement")),
    "table maker": ("same.makers_page", later("Other names of makers")),
    "table makers": ("same.makers_page", later("Other names of makers")),
    "number-rules": ("alike.rules_page", later("Number rules")),
    "judged": ("alike.answers_page", later("Answers to look-alikes")),
    "terms": ("shop.terms_page", later("Suppliers' terms")),
    "rates": ("shop.rates_page", later("Exchange rates")),
    "setup": ("shop.settings_page", later("Shop")),
    "margins": ("margins.margins_page", later("Margins")),
    "makers": ("same.makers_page", later("Other names of makers")),
    "one order": ("orders.order_page", later("Order")),
    "workbook": ("alike.file_page", later("Look-alikes by a workbook")),
}
"""By command, or by a name of its own: the page, and what it is called. A page that needs a number takes it from the
sentence, and the job or order from the page it stands on where the sentence names none."""


def said(sentence: str) -> Markup:
    """The sentence with commands turned into links to the pages that do the same. Everything else is escaped."""
    sentence = shown(sentence)
    return _linked(as_written(_without_options(sentence), locale()) if has_request_context() else sentence)


def in_a_file(sentence: str) -> str:
    """The sentence for a file of the counter: the names of the pages without links, days as files have them."""
    return str(_linked(_without_options(sentence)).striptags())


def _linked(sentence: str) -> Markup:
    made, at = Markup(), 0
    for found in COMMAND.finditer(sentence):
        link, before = _link(found, sentence), sentence[at : found.start()]
        for word, place in PLACED.items():
            if before.endswith(word) and link != escape(found.group(0)):
                before = before.removesuffix(word) + place
        told = f"{link.striptags()}: "  # "write the quote: Write the quote" says it twice
        if before.casefold().endswith(told.casefold()):
            before = before[: -len(told)]
        made += escape(before) + link
        at = found.end()
    return made + escape(sentence[at:])


def sentence(words: str) -> Markup:
    """Words that stand for themselves: a capital at the beginning, commands turned into links. A file keeps its."""
    return said(words if FILE_FIRST.match(words) else words[:1].upper() + words[1:])


def told(one: Problem) -> str:
    """A problem as the counter tells it, in one sentence whose pages are not linked yet."""
    return at_counter(one).sentence()


def _without_options(sentence: str) -> str:
    for option, words in ON_THE_PAGE.items():
        sentence = sentence.replace(option, _(words))
    return sentence


def _link(found: re.Match[str], sentence: str) -> Markup:
    command, rest = found["quoted"] or found["bare"] or found["page"], found["rest"] or found["numbers"] or ""
    statement = STATEMENT.search(rest)
    part = ""
    if command == "table":
        command, part = _of_table(rest, statement is not None)
    if command not in PAGES or not has_request_context():
        return escape(found.group(0))
    page, name = PAGES[command]
    if not _may_open(page):
        return escape(_(name))
    facts = _facts(rest, sentence) | ({"statement": statement.group(1)} if statement else {})
    needed: dict[str, Any] = {key: facts[key] for key in _needs(page) if key in facts}
    unknown = UNDER.search(sentence) if command == "table add-part" else None
    needed |= {"code": part} if part else {"code": unknown[1], "number": unknown[1]} if unknown else {}
    if day := NEED_BY.search(rest):
        needed["need_by"] = day.group(1)
    try:
        address = url_for(page, **needed)
    except BuildError:  # the sentence does not say of which job: the page is named all the same
        return escape(_(name))
    return Markup('<a href="{}">{}</a>').format(address, _(name))


def _facts(rest: str, sentence: str) -> dict[str, Any]:
    """The numbers a page may need: of the command, else of the sentence, else of the page it stands on."""
    numbers = {"job": JOB.search(rest) or JOB.search(sentence), "order": ORDER.search(sentence)}
    said = {key: number.group(0) for key, number in numbers.items() if number}
    said |= {"label": label[1]} if (label := LABEL.search(rest)) else {}
    line = LINE.search(rest)
    back = {"line": int(line[1]), "kind": "goods" if "--goods" in rest else "core"} if line else {}
    return {**(request.view_args or {}), **said, **back}


def _of_table(rest: str, is_statement: bool) -> tuple[str, str]:
    """Which page of the table is meant, and the code of the part that is named."""
    word, _blank, more = rest.strip().partition(" ")
    if is_statement:
        return "table statement", ""
    command = f"table {word}"
    return (command if command in PAGES else "table"), (more.strip() if word.endswith("-part") else "")


def _may_open(page: str) -> bool:
    """Whether the page opens to who reads the sentence: no link leads to a refusal."""
    me, roles = person(), getattr(current_app.view_functions.get(page), OPEN_TO, ())
    return me is not None and me.role in roles


def _needs(page: str) -> set[str]:
    """The numbers that stand in the page's address."""
    return {name for rule in current_app.url_map.iter_rules(page) for name in rule.arguments}
