"""A bill is younger than what it bills; the shop's currency stays while jobs are open."""

from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.bill import bill_if_any, look_at_bill, write_bill
from sourcing.actions.setup import set_up
from sourcing.basics.problem import Refused
from sourcing.documents.bill_paper import bill_html
from tests.actions.billed_shop import DELIVERY, TEAR_DOWN, answered, billing, received
from tests.journeys.small_shop import SHOP, desk_at

DATED = "the bill of job 2026-0001 would be dated 2026-03-0"


@pytest.mark.parametrize(
    ("at", "words"),
    [
        (TEAR_DOWN.replace(hour=10, minute=59), "4 10:59, before goods for line 1 of 2026-03-09 09:00"),
        (DELIVERY.replace(hour=8, minute=59), "9 08:59, before goods for line 1 of 2026-03-09 09:00"),
    ],
)
def test_a_bill_before_its_goods_is_refused(tmp_path: Path, at: datetime, words: str) -> None:
    """Looked at or written; at the moment of the last delivery it is made."""
    number = received(tmp_path)
    desk = desk_at(tmp_path, at)
    for bill in (lambda: look_at_bill(desk, number), lambda: write_bill(desk, number, bill_html)):
        with pytest.raises(Refused) as caught:
            bill()
        assert caught.value.problems[0].code == "bill-before" and DATED + words in str(caught.value)
    assert bill_if_any(desk, number) is None
    assert write_bill(desk_at(tmp_path, DELIVERY), number, bill_html).bill.made_at == DELIVERY


def test_a_bill_before_the_last_answer_is_refused(tmp_path: Path) -> None:
    """Though the quote was there."""
    number = answered(tmp_path)
    with pytest.raises(Refused, match="before the answer to line A of 2026-03-04 11:20"):
        look_at_bill(desk_at(tmp_path, TEAR_DOWN), number)


def test_the_currency_stays_while_a_job_is_open(tmp_path: Path) -> None:
    """Its quotes and orders stand in it; once it is billed the shop may change."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    (tmp_path / "shop.toml").write_text(SHOP.replace('"USD"', '"EUR"'))
    with pytest.raises(Refused, match="currency can't become EUR: job 2026-0001 would stand in USD"):
        set_up(desk, tmp_path)
    assert look_at_bill(desk, number).currency == "USD"
    write_bill(desk, number, bill_html)
    set_up(desk, tmp_path)
