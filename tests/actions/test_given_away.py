"""Given away, through the actions: extras without a yes, discounts at the counter; what is kept, and what it cost."""

from decimal import Decimal
from pathlib import Path

import pytest
from sqlalchemy import text

from sourcing.actions.bill import bill_if_any, look_at_bill, write_bill
from sourcing.actions.given_away import gave_away, given_away_on
from sourcing.actions.history import history
from sourcing.actions.job_states import whole_job
from sourcing.actions.margins import margins, margins_by
from sourcing.basics.bill import Off
from sourcing.basics.problem import Refused
from sourcing.documents.bill_paper import bill_html, bill_text
from sourcing.documents.job_list import job_text
from sourcing.documents.margins import margins_text
from tests.actions.billed_shop import BILLING, billing, received
from tests.builders import usd
from tests.journeys.small_shop import desk_at, shop, take_in

CLIP = ("cable clip", "the old one fell apart")
REGULAR = Off(amounts=(("A", Decimal("5.00")),), words="regular customer")


def refusals(caught: pytest.ExceptionInfo[Refused]) -> list[str]:
    """The codes of what was refused."""
    return [one.code for one in caught.value.problems]


def test_an_extra_is_on_record_and_a_leak_and_never_on_the_bill(tmp_path: Path) -> None:
    """It can be recorded before the bill and after it, and changes nothing of it."""
    number, desk = received(tmp_path), billing(tmp_path)
    (before,) = margins(desk, number)
    plain = look_at_bill(desk, number)
    gave_away(desk, number, CLIP, Decimal("1.20"), Decimal("3.00"))
    assert look_at_bill(desk, number) == plain
    bill = write_bill(desk, number, bill_html).bill
    assert "cable clip" not in bill_html(bill) + bill_text(bill)
    found = gave_away(desk, number, ("split pin", "lost in the snow"), Decimal("0.35"))
    assert [(one.what, one.cost, one.price) for one in found] == [
        ("cable clip", usd("1.20"), usd("3.00")), ("split pin", usd("0.35"), None),
    ]  # fmt: skip
    assert given_away_on(desk, number) == found and bill_if_any(desk, number).bill == bill  # type: ignore[union-attr]

    (after,) = margins(desk, number)
    leaks = [one for one in after.leaks if one.name == "unapproved extra given away"]
    assert [(one.amount, one.label) for one in leaks] == [(usd("1.20"), "extra 1"), (usd("0.35"), "extra 2")]
    assert dict(after.whole)["received"].earned == dict(before.whole)["received"].earned - usd("1.55")
    (named,) = [one for one in margins_by(desk).leaks if one.name == "unapproved extra given away"]
    assert (named.count, named.amount, named.worst_job) == (2, usd("1.55"), number)
    assert "price never charged 3.00" in " ".join(margins_text([after]).split())


def test_the_deed_and_the_job_say_what_was_given(tmp_path: Path) -> None:
    number, desk = received(tmp_path), billing(tmp_path)
    gave_away(desk, number, CLIP, Decimal("1.20"), Decimal("3.00"))
    last = history(desk, number)[-1]
    assert (last.deed, last.who, last.detail) == (
        "gave an extra away",
        desk.who,
        "cable clip, cost 1.20 USD, price never charged 3.00 USD: fitted without a yes, never billed; the old one fell "
        "apart",
    )
    shown = " ".join(job_text(whole_job(desk, number)).split())
    assert "Given away: never approved, never billed" in shown
    assert f"cable clip: cost 1.20 USD, price never charged 3.00 USD, by {desk.who}: the old one fell apart" in shown


@pytest.mark.parametrize(
    ("said", "cost", "price", "code"),
    [
        (("", "why"), "1.20", None, "given-away-words"),
        (("clip", "  "), "1.20", None, "given-away-words"),
        (("clip", "why"), "0", None, "given-away-amount"),
        (("clip", "why"), "-1", None, "given-away-amount"),
        (("clip", "why"), "1.205", None, "given-away-amount"),
        (("clip", "why"), "NaN", None, "given-away-amount"),
        (("clip", "why"), "1" + "0" * 30, None, "given-away-amount"),
        (("clip", "why"), "1.20", "0", "given-away-amount"),
        (("Cable  CLIP", "again"), "1.20", None, "given-away-already"),
    ],
)
def test_what_is_no_extra_is_refused(
    tmp_path: Path, said: tuple[str, str], cost: str, price: str | None, code: str
) -> None:
    """With nothing kept; the same extra twice is asked about."""
    number, desk = received(tmp_path), billing(tmp_path)
    kept = gave_away(desk, number, CLIP, Decimal("1.20"))
    with pytest.raises(Refused) as caught:
        gave_away(desk, number, said, Decimal(cost), None if price is None else Decimal(price))
    assert refusals(caught) == [code] and given_away_on(desk, number) == kept


def test_a_job_that_is_unknown_or_not_quoted_is_refused(tmp_path: Path) -> None:
    desk = shop(tmp_path, BILLING)
    number = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5')
    for job, code in ((number, "no-quote"), ("2020-0001", "no-such-job")):
        with pytest.raises(Refused) as caught:
            gave_away(desk, job, CLIP, Decimal("1.20"))
        assert refusals(caught) == [code]


def test_a_discount_is_billed_told_and_found_again(tmp_path: Path) -> None:
    """5.00 off the keepers: 5.35 less with tax; the owner's deed says why; the margin names it and adds up."""
    number, desk = received(tmp_path), billing(tmp_path)
    seen = look_at_bill(desk, number, None, REGULAR)
    frozen = write_bill(desk, number, bill_html, None, REGULAR)
    assert frozen.bill == seen and frozen.bill.total.total == usd("407.84")
    assert history(desk, number)[-1].detail == (
        "wrote bill B-2026-0001: total 407.84 USD, due 407.84 USD; 5.00 USD off line A (5.00 off parts): regular "
        "customer"
    )
    (found,) = margins(desk, number)
    (leak,) = [one for one in found.leaks if one.name == "discount at the counter"]
    assert (leak.label, leak.amount) == ("A", usd("5.00"))
    assert found.bridge is not None
    moved = sum(step.amount.amount for step in found.bridge.steps)
    assert found.bridge.start.earned.amount + moved == found.bridge.end.earned.amount
    assert "less 5.00 USD on line A: regular customer" in job_text(whole_job(desk, number))


def test_a_refused_discount_bills_nothing(tmp_path: Path) -> None:
    """Neither looked at nor written; and a job billed already gets no discount any more."""
    number, desk = received(tmp_path), billing(tmp_path)
    for off, code in (
        (Off(amounts=(("A", Decimal("999")),), words="why"), "off-above-line"),
        (Off(amounts=(("C", Decimal("1")),), words="why"), "off-unknown"),
        (Off(amounts=(("A", Decimal("1")),)), "off-why"),
    ):
        for act in (lambda off=off: look_at_bill(desk, number, None, off),
                    lambda off=off: write_bill(desk, number, bill_html, None, off)):  # fmt: skip
            with pytest.raises(Refused) as caught:
                act()
            assert refusals(caught) == [code] and bill_if_any(desk, number) is None
    write_bill(desk, number, bill_html)
    with pytest.raises(Refused) as caught:
        write_bill(desk, number, bill_html, None, REGULAR)
    assert refusals(caught) == ["billed-already"]


def test_a_bill_of_before_is_printed_again_to_the_letter(tmp_path: Path) -> None:
    """Its kept content knows of no discounts; it reads, and its paper is the same."""
    number, desk = received(tmp_path), billing(tmp_path)
    frozen = write_bill(desk, number, bill_html)
    with desk.store.writing() as connection:
        done = connection.execute(text("""UPDATE bills SET body = replace(body, ',"off":[]', '')"""))
        body = connection.execute(text("SELECT body FROM bills")).scalar()
        assert done.rowcount == 1 and '"off"' not in str(body)
    assert bill_if_any(desk_at(tmp_path, BILLING), number) == frozen
    assert margins(desk, number)[0].job == number
