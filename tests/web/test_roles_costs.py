"""What a role must not know is on no page it can reach: looked for by odd amounts in the whole text of every answer."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from sourcing.basics.problem import problem
from sourcing.basics.problem_kinds import KINDS
from sourcing.web.told_to import WITH_COSTS_IN_THEM, told_to
from tests.web.addresses import QUERIES as QUERIES_OF
from tests.web.addresses import addresses
from tests.web.canaries import Crawl, Secrets, found_in, odd_counter, secrets_of
from tests.web.linked import customer, made
from tests.web.world import QUOTED, Browser, logged_in


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the store of this module is."""
    return Path(tmp_path_factory.mktemp("canaries"))


@pytest.fixture(scope="module")
def app(folder: Path) -> Iterator[Flask]:
    """The counter over the world with odd costs."""
    with odd_counter(folder) as one:
        yield one


@pytest.fixture(scope="module")
def secrets(app: Flask, folder: Path) -> Secrets:
    """What is looked for; made before any page changes the world."""
    found = secrets_of(folder / "shop.db")
    assert len(found.costs) > 30 and len(found.margins) >= 3
    return found


def leaks(crawl: Crawl, forbidden: frozenset[str]) -> list[str]:
    """Pages with something forbidden, and what."""
    told = ((address, found_in(text, forbidden)) for address, text in crawl.read.items())
    return [f"{address}: {sorted(found)}" for address, found in told if found]


QUERIES = (
    "/find?number=NW-40388&quantity=2",
    "/find?number=BELT-AUGER&quantity=9&alike=yes",
    "/same-parts/number?number=NW-40388",
    "/search?for=Tilbrook",
    "/search?for=PB-4038",
    "/jobs/2026-0001/not-as-approved",
    "/receive/PO-2026-0001?scanned=PB-4038",
    "/receive/PO-2026-0001/paper?paper=DN-88213",
)


def open_to(app: Flask, role: str) -> list[str]:
    """Every address that opens to the role, whether a link leads there or not."""
    mine = (one for one in addresses(app) if role in one.roles and "GET" in one.methods)
    return [(one.path + QUERIES_OF.get(one.endpoint, "")).replace("PO-2026-0002", "PO-2026-0001") for one in mine]


def test_the_canaries_are_on_the_owners_pages(app: Flask, secrets: Secrets) -> None:
    """The search can find what it looks for: an order and the margins show them to the owner."""
    owner = logged_in(app, "owner")
    assert found_in(owner.get("/orders/PO-2026-0001"), secrets.costs)
    assert found_in(owner.get("/margins/2026-0001"), secrets.costs | secrets.margins)


EARNED = re.compile(r"(?i)\b(?:margins?|mark-?ups?|earned|multipliers?)\b")
"""Words that stand beside what is earned, or what prices are made with."""

STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)
"""A paper's own style speaks of margins of another kind."""


def test_a_technician_sees_no_cost_and_no_margin(app: Flask, secrets: Secrets) -> None:
    """On every page, file, refusal and answer to a form that she can reach."""
    crawl = Crawl(logged_in(app, "technician"))
    crawl.from_pages("/", *QUERIES, *open_to(app, "technician"))
    assert len(crawl.read) > 50 and len(crawl.forms) > 10
    crawl.send_all("9999")
    assert leaks(crawl, secrets.costs | secrets.margins) == []
    assert [one for one, status in crawl.statuses.items() if status >= 500] == []
    assert [one for one, status in crawl.statuses.items() if status == 403] == []  # no link leads to a refusal


def test_a_clerk_sees_no_margin(app: Flask, secrets: Secrets) -> None:
    """Costs she may see; what is earned on them, and the factors prices are made with, she may not."""
    crawl = Crawl(logged_in(app, "clerk"))
    crawl.from_pages("/", *QUERIES, *open_to(app, "clerk"))
    assert leaks(crawl, secrets.margins) == []
    told = {address: EARNED.findall(STYLE.sub("", text)) for address, text in crawl.read.items()}
    assert {address: words for address, words in told.items() if words} in (
        {},
        {"/shop": ["markup"]},
    )  # who carries freight
    assert [one for one, status in crawl.statuses.items() if status == 403] == []


def test_a_customer_sees_no_cost_and_no_supplier(app: Flask, secrets: Secrets) -> None:
    """Her page before and after the answer, its paper, and what it says to odd answers."""
    page = made(logged_in(app, "clerk"), QUOTED)
    her = customer(app)
    crawl = Crawl(her)
    crawl.from_pages(page, f"{page}/paper", f"{page}/photo/1.jpg", f"{page}/signature.png")
    for value in ("", "approve", "9999"):
        crawl.send_all(value)
    crawl.read["again"] = her.client.get(page).text
    assert leaks(crawl, secrets.costs | secrets.margins) == []
    told = {address: [word for word in secrets.suppliers if word in text] for address, text in crawl.read.items()}
    assert {address: words for address, words in told.items() if words} == {}
    assert page in crawl.read and max(crawl.statuses.values()) < 500


COSTS = {"cost", "costs", "landed", "margin", "paid", "net", "multiplier"}
"""Names of facts that are what the shop pays or earns."""


def test_kinds_of_problem_with_a_cost_are_known() -> None:
    """A new kind that tells a cost has to be kept from those who see none."""
    with_costs = {code for code, kind in KINDS.items() if any("{" + name + "}" in kind.what for name in COSTS)}
    assert with_costs - WITH_COSTS_IN_THEM - {"discount-beside-net"} == set()  # its net is a column's header
    assert set(KINDS) >= WITH_COSTS_IN_THEM


def test_a_refusal_with_a_cost_is_told_only_to_who_sees_costs() -> None:
    """Others read that there is something, and how to ask for it."""
    one = problem("given-away-already", job="2026-0001", found="a clip", cost="7.91 USD")
    (told,) = told_to((one,), False)
    assert "7.91" not in told.sentence() and "given-away-already" in told.sentence()
    assert told_to((one,), True) == (one,)


def test_a_refusal_on_a_page_goes_through_that_rule(app: Flask, monkeypatch: pytest.MonkeyPatch) -> None:
    """The technician's page says to ask the clerk; the clerk's page says why."""
    from sourcing.basics.problem import refused

    def refuse_all(*_: object) -> object:
        raise refused("given-away-already", job="2026-0001", found="a clip", cost="7.91 USD")

    monkeypatch.setattr("sourcing.web.views.jobs.opened", refuse_all, raising=False)
    for role, sees in (("technician", False), ("clerk", True)):
        text = _refused_page(logged_in(app, role))
        assert ("7.91" in text) == sees, role


def _refused_page(browser: Browser) -> str:
    answer = browser.client.get("/jobs/2026-0001")
    assert answer.status_code == 409, answer.status
    return answer.text
