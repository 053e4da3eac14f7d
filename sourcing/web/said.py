"""Sentences of the program on a page: where one names a command, the page that does the same is linked instead."""

import re
from typing import Any

from flask import has_request_context, url_for
from markupsafe import Markup, escape
from werkzeug.routing import BuildError

from ..documents.plain_text import shown
from .words import _

COMMAND = re.compile(r"'sourcing ([a-z][a-z-]*)([^']*)'|(?<=: )sourcing ([a-z][a-z-]*)((?: [A-Z0-9-]*[0-9])*)")
JOB = re.compile(r"\b\d{4}-\d{4,}\b")
ORDER = re.compile(r"\bPO-\d{4}-\d{4,}\b")

PAGES: dict[str, tuple[str, str]] = {
    "answer": ("quotes.answer_page", "Answers"),
    "take-back": ("quotes.answer_page", "Answers"),
    "answers": ("quotes.answer_page", "Answers"),
    "quote": ("quotes.quote_page", "Quote"),
    "revisions": ("quotes.quote_page", "Quote"),
    "given": ("quotes.quote_page", "Quote"),
    "bill": ("quotes.bill_page", "Bill"),
    "deposit": ("quotes.bill_page", "Bill"),
    "alarms": ("quotes.alarms_page", "Not as approved"),
    "decide": ("quotes.alarms_page", "Not as approved"),
    "show-job": ("jobs.job_page", "Job"),
    "jobs": ("jobs.list_page", "Jobs"),
    "job": ("jobs.new_page", "New job"),
    "plan": ("jobs.plan_page", "Plan"),
    "identity": ("jobs.job_page", "Job"),
    "evidence": ("jobs.job_page", "Job"),
    "promise": ("jobs.job_page", "Job"),
    "promises": ("jobs.promises_page", "Promised dates"),
    "history": ("jobs.history_page", "History"),
    "order": ("orders.place_page", "To order"),
    "orders": ("orders.list_page", "Orders"),
    "confirm": ("orders.order_page", "Order"),
    "change-order": ("orders.order_page", "Order"),
    "cancel-order": ("orders.order_page", "Order"),
    "receive": ("receiving.receive_page", "Receive"),
    "receive-again": ("orders.order_page", "Order"),
    "differences": ("orders.order_page", "Order"),
    "going-back": ("receiving.going_back_page", "Going back"),
    "send-back": ("receiving.going_back_page", "Going back"),
    "compare": ("find.find_page", "Find"),
    "numbers": ("find.find_page", "Find"),
    "import": ("sheets.list_page", "Sheets"),
    "sheets": ("sheets.list_page", "Sheets"),
    "candidates": ("alike.list_page", "Look-alikes"),
    "judge": ("alike.list_page", "Look-alikes"),
    "table": ("same.table_page", "Same parts"),
    "terms": ("shop.terms_page", "Suppliers' terms"),
    "setup": ("shop.settings_page", "Shop"),
    "margins": ("margins.margins_page", "Margins"),
}
"""By command: the page, and what it is called. A page that needs a number takes it from the sentence."""


def said(sentence: str) -> Markup:
    """The sentence with commands turned into links to the pages that do the same. Everything else is escaped."""
    sentence = shown(sentence)
    made, at = Markup(), 0
    for found in COMMAND.finditer(sentence):
        made += escape(sentence[at : found.start()]) + _link(found, sentence)
        at = found.end()
    return made + escape(sentence[at:])


def sentence(words: str) -> Markup:
    """Words that stand for themselves: a capital at the beginning, commands turned into links."""
    return said(words[:1].upper() + words[1:])


def _link(found: re.Match[str], sentence: str) -> Markup:
    command, rest = found.group(1) or found.group(3), found.group(2) or found.group(4) or ""
    if command not in PAGES or not has_request_context():
        return escape(found.group(0))
    page, name = PAGES[command]
    numbers = {"job": JOB.search(rest) or JOB.search(sentence), "order": ORDER.search(sentence)}
    facts = {key: number.group(0) for key, number in numbers.items() if number}
    needed: dict[str, Any] = {key: facts[key] for key in _needs(page) if key in facts}
    try:
        address = url_for(page, **needed)
    except BuildError:
        return escape(found.group(0))
    return Markup('<a href="{}">{}</a>').format(address, _(name))


def _needs(page: str) -> set[str]:
    """The numbers that stand in the page's address."""
    from flask import current_app

    return {name for rule in current_app.url_map.iter_rules(page) for name in rule.arguments}
