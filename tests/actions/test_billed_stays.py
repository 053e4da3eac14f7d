"""A billed job stays as it is: it is not quoted anew and no file replaces it, and its margins go by what was billed."""

from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.bill import write_bill
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.margins import margins
from sourcing.actions.quotes import check_quote, freeze, reprint, write_quote
from sourcing.basics.money import Money
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.bill_paper import bill_html
from sourcing.storage.jobs import job as stored_job
from sourcing.storage.quotes import add_quote
from tests.actions.billed_shop import billing, received
from tests.journeys.small_shop import job_file
from tests.journeys.test_worked_days import ADD_ONS, paper


def billed(folder: Path) -> tuple[Desk, str]:
    """The worked job with its bill."""
    number = received(folder)
    desk = billing(folder)
    write_bill(desk, number, bill_html)
    return desk, number


def figures(desk: Desk, number: str) -> list[tuple[str, Money, Money]]:
    """Price and cost of the parts at each stage."""
    (one,) = margins(desk, number)
    return [(stage, margin.price, margin.cost) for stage, margin in one.parts]


def test_a_billed_job_is_not_quoted_anew(tmp_path: Path) -> None:
    """Not even looked at: its paper is the bill. Its revisions still print again."""
    desk, number = billed(tmp_path)
    for again in (lambda: write_quote(desk, number, paper), lambda: check_quote(desk, number)):
        with pytest.raises(
            Refused, match="job 2026-0001 is billed, so it is not quoted anew; take what was found since"
        ):
            again()
    assert reprint(desk, number, None).quote.revision == 2


def test_no_file_replaces_a_billed_job(tmp_path: Path) -> None:
    """What it holds stays to be read."""
    desk, number = billed(tmp_path)
    with desk.store.reading() as connection:
        before = stored_job(connection, number)
    with pytest.raises(Refused, match="job 2026-0001 is billed, so a file no longer replaces it"):
        change_job_from(desk, number, job_file(tmp_path, ADD_ONS.replace("hours = 1.5", "hours = 9")))
    with desk.store.reading() as connection:
        assert stored_job(connection, number) == before


def test_margins_of_a_billed_job_go_by_the_revision_billed(tmp_path: Path) -> None:
    """A later revision, as older databases may hold one, moves no figure of it."""
    desk, number = billed(tmp_path)
    before = figures(desk, number)
    assert [stage for stage, _, _ in before] == ["quoted", "ordered", "received"]
    last = reprint(desk, number, None).quote
    belt = changed(last.lines[0], quantity=3, parts_price=last.lines[0].parts_price * 3, hours=Decimal(9))
    with desk.store.writing() as connection:
        add_quote(connection, freeze(changed(last, revision=3, lines=(belt,)), paper), "somebody")
    assert figures(desk, number) == before
