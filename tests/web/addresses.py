"""Every address of the counter with things that are in the test world: a new argument without an example is an error.

The examples go with `orders_world`, where PO-2026-0001 has come and PO-2026-0002 is open.
"""

from typing import Any, NamedTuple

from flask import Flask
from werkzeug.routing import Rule

from sourcing.web.guard import ANYBODY, OPEN_TO

EXAMPLES: dict[str, object] = {
    "job": "2026-0001",
    "order": "PO-2026-0002",
    "label": "A",
    "line": 1,
    "kind": "xlsx",
    "revision": 1,
    "at": 1,
    "link": 1,
    "number": 1,
    "candidate": 1,
    "rule": 1,
    "sheet": 6,
    "supplier": "stonegarth",
    "statement": 1,
    "part": "prices",
    "starts_on": "2026-01-13",
    "currency": "EUR",
    "dated": "2026-01-09",
    "secret": "A" * 43,
    "sent": "none",
    "work": "none",
    "told": "none",
    "held": "none",
}

KINDS = {
    "receiving.step_page": "goods",
    "orders.paper_file": "pdf",
    "quotes.bill_file": "pdf",
    "quotes.quote_file": "pdf",
    "margins.all_file": "csv",
    "margins.job_file": "csv",
}
"""Kinds of file where there is no workbook."""

QUERIES = {
    "find.find_page": "?number=NW-40388&quantity=2",
    "find.offers_file": "?number=NW-40388&quantity=2",
    "find.drawing_itself": "?number=NW-40388&quantity=2",
    "find.landed_page": "?supplier=kesselried&number=KR-204.0177&quantity=2",
    "find.landed_file": "?supplier=kesselried&number=KR-204.0177&quantity=2",
    "same.number_page": "?number=NW-40388",
    "same.drawing_itself": "?number=NW-40388",
    "same.statement_asked": "?statement=1",
    "same.change_part_page": "?code=BELT-AUGER",
    "same.take_part_out_page": "?code=BELT-AUGER",
    "search.search_page": "?for=belt",
}
"""What an address is asked for, where it gives nothing without."""

OTHERS_MAKE = frozenset({"static"})


class Address(NamedTuple):
    """One address and who may open it: roles, or 'anybody'."""

    endpoint: str
    path: str
    methods: frozenset[str]
    roles: tuple[str, ...]

    @property
    def is_for_anybody(self) -> bool:
        """Whether it opens without a log-in."""
        return self.roles == (ANYBODY,)


def addresses(app: Flask) -> list[Address]:
    """All of them but the files of the program itself. KeyError where an argument has no example here."""
    return [_address(app, rule) for rule in app.url_map.iter_rules() if rule.endpoint not in OTHERS_MAKE]


def _address(app: Flask, rule: Rule) -> Address:
    named: dict[str, Any] = {name: EXAMPLES[name] for name in rule.arguments}
    if "kind" in named:
        named["kind"] = KINDS.get(rule.endpoint, named["kind"])
    with app.test_request_context():
        path = app.url_for(rule.endpoint, **named)
    roles = getattr(app.view_functions[rule.endpoint], OPEN_TO, ())
    methods = frozenset(rule.methods or ()) - {"OPTIONS"}
    return Address(rule.endpoint, path, methods, (ANYBODY,) if roles == ANYBODY else tuple(roles))
