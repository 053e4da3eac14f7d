"""Who may open what: every role tries every address of the others. Made from the map of addresses itself."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from tests.web.addresses import QUERIES, Address, addresses
from tests.web.orders_world import counter_with_order
from tests.web.world import Browser, logged_in

ROLES = ("technician", "clerk", "owner")

FOR_ANYBODY = {
    "people.log_in_page",
    "people.log_in_now",
    "people.log_out_now",
    "people.first_visit_page",
    "people.first_visit_now",
    "customer.customer_page",
    "customer.customer_paper",
    "customer.customer_photo",
    "customer.customer_signature",
}
"""Who adds a page without a log-in says so here too."""

OWNERS_AREAS = ("margins", "people", "history", "what-if", "shop.toml")
"""Beginnings of addresses that are the owner's alone, said here once more: a page marked wrongly is found."""

COSTS_AREAS = ("orders/", "sheets", "look-alikes", "terms", "rates", "going-back", "suppliers.toml", "shop")
"""The same for pages with what the shop pays."""

NOT_THERE = {404, 409}
"""What an address may answer that leads to something the test world has not got, such as a bill."""

IS_NOT_THERE = {
    "alike.looking_page",
    "alike.told_page",
    "alike.rule_page",
    "alike.take_back_page",
    "links.revoke_page",
    "links.signature",
    "orders.claim_page",
    "photos.photo_file",
    "quotes.bill_itself",
    "quotes.bill_file",
    "quotes.decide_page",
    "same.look_page",
    "sheets.how_far",
    "sheets.sent_page",
    "shop.withdraw_page",
    "shop.withdraw_terms_page",
}

CAN_NOT_BE_SHOWN = {
    "margins.what_if_table",
    "margins.what_if_workbook",
    "quotes.anew_page",
    "receiving.receipt_page",
    "sheets.changes_file",
    "sheets.changes_page",
}
"""Pages that say why they can show nothing of the test world: 409."""


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """One counter for the module: nothing here is let through that would change it."""
    with counter_with_order(Path(tmp_path_factory.mktemp("roles"))) as made:
        yield made


@pytest.fixture(scope="module")
def browsers(app: Flask) -> dict[str, Browser]:
    """A browser of each role."""
    return {role: logged_in(app, role) for role in ROLES}


def token(browser: Browser) -> str:
    """A CSRF token that is good, taken from a page every role may open."""
    return browser.hidden("/my-password", "/my-password")["csrf_token"]


def closed_to(app: Flask, role: str) -> list[Address]:
    """The addresses this role may not open."""
    return [one for one in addresses(app) if not one.is_for_anybody and role not in one.roles]


@pytest.mark.parametrize("role", ["technician", "clerk"])
def test_another_roles_pages_are_refused(app: Flask, browsers: dict[str, Browser], role: str) -> None:
    """Read, asked for by HEAD, or sent with a good token: 403, and nothing about the page."""
    client, good = browsers[role].client, token(browsers[role])
    closed = closed_to(app, role)
    assert len(closed) > 20  # else this test would look at nothing
    for one in closed:
        for method in sorted(one.methods):
            answer = client.open(one.path, method=method, data={"csrf_token": good} if method == "POST" else None)
            assert answer.status_code == 403, f"{role}: {method} {one.path}: {answer.status}"


def test_without_a_log_in_every_page_leads_to_it(app: Flask) -> None:
    """Also with a good token, taken from the log-in; the addresses open to anybody are the known ones."""
    nobody = Browser(app)
    good = nobody.hidden("/log-in", "/log-in")["csrf_token"]
    for one in addresses(app):
        if one.is_for_anybody:
            assert one.endpoint in FOR_ANYBODY, one
            continue
        for method in sorted(one.methods):
            answer = nobody.client.open(one.path, method=method, data={"csrf_token": good} if method == "POST" else {})
            assert answer.status_code == 302, f"{method} {one.path}: {answer.status}"
            assert answer.location.startswith("/log-in"), one.path


def test_the_owner_opens_every_page(app: Flask, browsers: dict[str, Browser]) -> None:
    """No page of the map breaks; what is not in the test world is said to be not there."""
    broken = []
    for one in addresses(app):
        if "GET" not in one.methods or one.is_for_anybody:
            continue
        answer = browsers["owner"].client.get(one.path + QUERIES.get(one.endpoint, ""))
        said_so = one.endpoint in IS_NOT_THERE and answer.status_code in NOT_THERE
        why_not = one.endpoint in CAN_NOT_BE_SHOWN and answer.status_code == 409
        if answer.status_code not in (200, 302, 303) and not said_so and not why_not:
            broken.append(f"{one.endpoint} {one.path}: {answer.status}")
    assert not broken, "\n".join(broken)


@pytest.mark.parametrize(("role", "beginnings"), [("clerk", OWNERS_AREAS), ("technician", OWNERS_AREAS + COSTS_AREAS)])
def test_whole_areas_are_closed(app: Flask, role: str, beginnings: tuple[str, ...]) -> None:
    """What the marks say is what was meant: no page below these beginnings is open to the role."""
    for one in addresses(app):
        if one.path[1:].startswith(beginnings):
            assert role not in one.roles, one
            assert not one.is_for_anybody, one


def test_every_page_of_the_owner_alone_is_closed_by_default(app: Flask) -> None:
    """A page nobody marked opens to nobody, not even the owner."""
    for one in addresses(app):
        assert one.roles, f"{one.endpoint} opens to nobody: mark it with open_to"


def test_one_technicians_form_can_not_be_sent_by_nobody(app: Flask, browsers: dict[str, Browser]) -> None:
    """A token belongs to one browser: in another one it is refused before anything is done."""
    stolen = token(browsers["owner"])
    clerk = logged_in(app, "clerk")
    answer = clerk.client.post("/my-password", data={"csrf_token": stolen, "once": "x"})
    assert answer.status_code == 400, answer.status
