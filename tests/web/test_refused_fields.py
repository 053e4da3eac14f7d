"""What was refused leads to the field it is about, and the field says so: by links and ids alone, without a script."""

import re

import pytest
from flask import Flask

from sourcing.actions.customer_answer import ABOUT_LINES
from sourcing.basics.problem import Refused, problem
from sourcing.web.fields import refused_here, refused_lines
from sourcing.web.forms import refuse
from tests.web.linked import HER, customer, made, send
from tests.web.world import APPROVED, ORDERED, QUOTED, Browser

ANSWERS, ORDERED_ANSWERS = f"/jobs/{QUOTED}/answers", f"/jobs/{ORDERED}/answers"


def led_to(html: str) -> list[str]:
    """The ids that the refusals above the page lead to, each of which is a field on the page that says it is wrong."""
    box = re.search(r'<div class="refused".*?</div>', html, re.DOTALL)
    assert box, html[:3000]
    found = re.findall(r'<a href="#([^"]+)">Go to this field: [^<]+</a>', box.group(0))
    for at in found:
        assert len(re.findall(f'id="{re.escape(at)}"', html)) == 1, at
    told = re.findall(r'id="(refused-\d+)"', box.group(0))
    assert told and all(html.count(f'id="{one}"') == 1 for one in told)
    described = re.findall(
        r'aria-describedby="([^"]*)" aria-invalid="true"|aria-invalid="true" aria-describedby="([^"]*)"', html
    )
    assert [bool(set(told) & set((one or other).split())) for one, other in described] == [True] * len(found)
    return found


@pytest.mark.parametrize(
    ("fields", "at"),
    [
        ({"line_1": "approve", "line_2": "approve", "name": ""}, "field-name"),
        ({"line_1": "approve", "line_2": "approve", "name": "Somebody Else"}, "field-name"),
        ({}, "field-line-1"),
        ({"line_A": "decline", "conditions": "only by Friday"}, "field-conditions"),
        ({"line_1": "approve", "conditions": "x" * 2001}, "field-conditions"),
        ({"line_1": "approve", "words": "x" * 2001}, "field-words"),
    ],
)
def test_a_refusal_on_the_customers_page_leads_to_the_field(
    app: Flask, clerk: Browser, fields: dict[str, str], at: str
) -> None:
    """Name, conditions, words, the line that is asked about; the first line where none is answered."""
    answer = send(customer(app), made(clerk), **{"line_A": "", "line_1": "", "line_2": "", **fields})
    assert answer.status_code == 409 and led_to(answer.text) == [at]


def test_a_drawing_that_can_not_be_read_leads_to_its_wiping(app: Flask, clerk: Browser) -> None:
    answer = send(customer(app), made(clerk), line_1="approve", line_2="approve", drawing="data:image/png;base64,AAAA")
    assert '<a href="#wipe">Go to this field: Signature</a>' in answer.text
    assert 'id="wipe" aria-describedby="refused-1"' in answer.text


@pytest.mark.parametrize(
    ("page", "to", "fields", "at"),
    [
        (f"/jobs/{APPROVED}/bill", f"/jobs/{APPROVED}/deposit/take", {"taken": "forty", "how": "cash"}, "field-taken"),
        (f"/jobs/{QUOTED}/promise", "", {"kind": "answer", "earliest": "soon"}, "field-earliest"),
        (f"/jobs/{QUOTED}/promise", "", {"kind": "answer", "earliest": "2026-01-16", "said_by": ""}, "field-said_by"),
        (f"/jobs/{QUOTED}/links", "", {"until": "2027-01-01"}, "field-until"),
        ("/going-back/PO-2026-0001/1/goods", "", {"step": "sent", "pieces": "two"}, "field-pieces"),
        ("/going-back/PO-2026-0001/1/goods", "", {"step": "lost", "pieces": "1", "words": ""}, "field-words"),
        ("/going-back/PO-2026-0001/1/goods", "", {"step": "sent", "pieces": "1", "credit": "3"}, "field-credit"),
        ("/orders/PO-2026-0001/confirm", "", {"price_1": "12,50"}, "field-price_1"),
        ("/same-parts/our-parts/add", "", {"code": " ", "name": "Belt"}, "field-code"),
        (
            ANSWERS,
            "",
            {"line-1": "yes", "line-2": "yes", "who": "another", "another": "Ada", "how": "text"},
            "field-who",
        ),
        (ANSWERS, "", {"line-1": "yes", "line-2": "yes", "how": "text"}, "field-who"),
        (ANSWERS, "", {"line-1": "yes", "line-2": "yes", "who": HER}, "field-how"),
        (ANSWERS, "", {"who": HER, "how": "text"}, "field-line-1"),
        (ANSWERS, "", {"line-1": "no", "who": HER, "how": "text", "condition": "by Friday"}, "field-condition"),
        (ORDERED_ANSWERS, "", {"line-1": "no", "who": HER, "how": "text", "instead": "1"}, "field-line-1"),
    ],
)
def test_a_refusal_on_the_shops_pages_does_too(
    clerk: Browser, page: str, to: str, fields: dict[str, str], at: str
) -> None:
    answer = clerk.send(page, to, **fields)
    assert answer.status_code == 409 and led_to(answer.text) == [at]


def test_what_is_about_no_field_of_the_page_leads_nowhere(clerk: Browser) -> None:
    """A form sent without its name."""
    answer = clerk.client.post(
        f"/jobs/{QUOTED}/promise",
        data={**clerk.hidden(f"/jobs/{QUOTED}/promise", f"/jobs/{QUOTED}/promise"), "once": ""},
    )
    assert answer.status_code == 409 and led_to(answer.text) == []


def test_several_refusals_lead_each_to_its_own_field_and_one_field_says_all_that_is_wrong_with_it(app: Flask) -> None:
    """What is about lines leads to the first of them that is on the page; a field that was not sent to none."""
    freight, name, again = (
        problem("link-freight-for-nothing", found="B, C"),
        problem("link-name-missing"),
        problem("link-name-unknown", found="Ada"),
    )
    with app.test_request_context("/", method="POST", data={"line-A": "", "line-C": "approve", "name": "Ada"}):
        refuse(Refused(freight, name, again))
        assert refused_here("line-A", "at-a", "A") == "" == refused_here("conditions", "at-conditions", "Conditions")
        assert refused_here("line-C", "at-c", "C") == "refused-1"
        assert refused_here("name", "at-name", "Name") == "refused-2 refused-3"
        lines, _ = refused_lines([freight, name, again])
        assert [(one.at, one.led.at if one.led else "") for one in lines] == [
            ("refused-1", "at-c"),
            ("refused-2", "at-name"),
            ("refused-3", "at-name"),
        ]


@pytest.mark.parametrize("kind", sorted(ABOUT_LINES))
def test_a_refusal_about_a_line_names_it(kind: str) -> None:
    assert "line B" in problem(kind, found="B").sentence()
