"""Jobs as typed: the list with who waits for whom, all of one job, its deeds in order."""

import json
from pathlib import Path

import pytest

from tests.actions.billed_shop import answered
from tests.cli.running import sourcing

AT = "2026-03-04T12:00"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """The worked job: belt ordered, A and B approved and not yet ordered, C declined."""
    answered(tmp_path)
    return tmp_path


def test_the_list_says_where_each_job_is(shop: Path) -> None:
    """State, since when, who waits, what comes next."""
    code, output, errors = sourcing(shop, "jobs", at=AT)
    assert code == 0, errors
    assert " ".join(output.split()) == (
        "2026-0001 Maud Tilbrook: snow thrower ordered in part since 2026-03-02; waits for us: order lines A, B: "
        "sourcing order 2026-0001."
    )


def test_the_list_for_machines(shop: Path) -> None:
    """The same words."""
    found = json.loads(sourcing(shop, "jobs", "--json", at=AT)[1])
    assert found["left_out"] == 0
    assert found["jobs"][0]["state"]["words"] == "ordered in part" and found["jobs"][0]["state"]["waits_for"] == "us"


def test_all_of_a_job_on_a_page(shop: Path) -> None:
    """Machine, lines with answers, what is on order, deeds."""
    code, output, errors = sourcing(shop, "show-job", "2026-0001", at=AT)
    assert code == 0, errors
    for words in (
        "Job 2026-0001: Maud Tilbrook, snow thrower",
        "C  Bar, 1 x Norrowby NW-52626: 147.20 USD before tax, declined",
        "approved: 413.19 USD with tax",
        "PO-2026-0001 to Pellbrook Power Parts, 2026-03-02",
        "1  1 x CV-B880K: 0 good, nothing came yet",
        "Piet Halloway-Rusk: answer",
    ):
        assert words in output, words
    assert json.loads(sourcing(shop, "show-job", "2026-0001", "--json", at=AT)[1])["job"]["number"] == "2026-0001"


def test_a_job_before_its_quote(shop: Path) -> None:
    """Its lines are told as not quoted; the machine's own tag and the component's stand apart."""
    text = """
complaint = "Drive slips"
received_on = 2026-03-04
findings = [{ what = "Drive hub cracked", photos = ["IMG_1.jpg", "IMG_2.jpg"], found_by = "Piet Halloway-Rusk" }]
[customer]
name = "Greta Lindqvare"
telephone = "555-0142"
may_also_approve = ["Oona Brandeth"]
[machine]
description = "snow thrower"
maker = "Norrowby"
serial = "5180427"
component = "auger drive"
component_maker = "Ostrevik"
component_model = "OK-12"
[[agreed]]
title = "Look at the drive"
hours = 0.5
"""
    (shop / "second.toml").write_text(text)
    code, _, errors = sourcing(shop, "job", "second.toml", at=AT)
    assert code == 0, errors
    output = sourcing(shop, "show-job", "2026-0002", at=AT)[1]
    for words in (
        "taken in since 2026-03-04; waits for us: write the quote: sourcing quote 2026-0002.",
        "snow thrower, Norrowby, serial 5180427",
        "with auger drive; its own tag: Ostrevik, OK-12",
        "Drive hub cracked (Piet Halloway-Rusk); photos IMG_1.jpg, IMG_2.jpg",
        "1  Look at the drive: not quoted yet",
        "may also say yes: Oona Brandeth",
    ):
        assert words in output, words


def test_the_history_is_in_order_and_a_strange_number_is_told(shop: Path) -> None:
    """Deeds of the orders as well."""
    output = sourcing(shop, "history", "2026-0001")[1]
    deeds = [line.split(": ")[1].split(",")[0] for line in output.splitlines()]
    assert deeds[:3] == ["take in job", "quote", "answer"] and "order" in deeds
    code, _, errors = sourcing(shop, "show-job", "2026-0009")
    assert code == 1 and "Perhaps: 2026-0001." in errors


def test_a_hostile_name_forges_no_line(shop: Path) -> None:
    """A line end or a terminal code in a customer's name stays within its line."""
    text = (
        'complaint = "x"\nreceived_on = 2026-03-04\n[customer]\nname = "Eve\\n2026-0099  Nobody: closed\\u001b[2J"\n'
        '[machine]\ndescription = "mower"\n[[agreed]]\ntitle = "Look"\nhours = 0.5\n'
    )
    (shop / "hostile.toml").write_text(text)
    assert sourcing(shop, "job", "hostile.toml", at=AT)[0] == 0
    for words in (["jobs"], ["show-job", "2026-0002"]):
        output = sourcing(shop, *words, at=AT)[1]
        assert "\x1b" not in output and not any(line.startswith("2026-0099") for line in output.splitlines())
