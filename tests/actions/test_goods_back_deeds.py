"""Old parts and goods sent back at the desk: kept, noted, listed with their last day; what is credited less is said."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.claims import claim, differences_of
from sourcing.actions.goods_back import BackStep, going_back, send_back
from sourcing.actions.history import history
from sourcing.actions.orders import place_orders
from sourcing.actions.receive import Delivery, receive, receive_again
from sourcing.actions.terms import set_terms
from sourcing.basics.problem import Refused
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import SHEET_DAY, ordered, priced
from tests.builders import usd
from tests.journeys.belt_job import approved
from tests.journeys.small_shop import desk_at, shop, take_in

WEDNESDAY = datetime(2026, 3, 4, 9, 30)
FRIDAY = datetime(2026, 3, 6, 9, 0)
TERMS = {"return_terms.restocking_percent": "15", "return_terms.within_days": "14", "return_terms.returnable": "true"}


def came(folder: Path, **delivery: object) -> str:
    """The belt and both keepers came on Wednesday, with this said beside; the order's number."""
    number = ordered(folder)
    desk = desk_at(folder, WEDNESDAY)
    set_terms(desk, "stonegarth", TERMS)
    receive(desk, number, Delivery(paper="D1", freight=Decimal("14.95"), **delivery))  # type: ignore[arg-type]
    return number


def step(line: int, word: str, **fields: object) -> BackStep:
    """A step of the goods of a line."""
    return BackStep(line=line, kind="goods", step=word, **fields)  # type: ignore[arg-type]


def test_a_damaged_keeper_from_the_door_to_the_credit(tmp_path: Path) -> None:
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    (waits,) = going_back(desk)
    assert (waits.due, waits.expected, waits.job) == (date(2026, 3, 18), usd("6.20"), "2026-0001")
    sent = send_back(desk, number, step(2, "sent", paper="R-7", freight=Decimal("4.10")))
    assert sent.step.freight == usd("4.10") and not sent.notes
    assert [one.waits for one in sent.still_open] == ["for credit"]
    done = send_back(desk, number, step(2, "credited", credit=Decimal("5.00"), paper="CN-1"))
    assert done.notes == ("6.20 USD was to be expected, 5.00 USD came: 1.20 USD less",) and not done.still_open
    told = [one.detail for one in history(desk, "2026-0001")][-2:]
    assert told == [
        f"goods NW-31207 of {number}, 1 x: sent back", f"goods NW-31207 of {number}, 1 x: credited, 5.00 USD"
    ]  # fmt: skip


def test_a_credit_of_more_than_was_to_be_expected_wants_a_word(tmp_path: Path) -> None:
    """It is kept for good, and a figure that is too high is more likely mistyped: nothing is kept without the word."""
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    send_back(desk, number, step(2, "sent"))
    with pytest.raises(Refused, match=r"99\.00 USD is more than the 6\.20 USD that was to be expected"):
        send_back(desk, number, step(2, "credited", credit=Decimal("99.00")))
    assert [one.waits for one in going_back(desk, number)] == ["for credit"]
    done = send_back(desk, number, step(2, "credited", credit=Decimal("7.00"), words="80 cents for the trouble"))
    assert done.notes == ("6.20 USD was to be expected, 7.00 USD came: 0.80 USD more",)


def test_after_the_last_day_it_is_recorded_and_said(tmp_path: Path) -> None:
    """What happened is kept; that the supplier may not take it is for a person to ask."""
    number = came(tmp_path, damaged={2: 1})
    late = send_back(desk_at(tmp_path, datetime(2026, 3, 20, 9, 0)), number, step(2, "sent"))
    assert late.notes == ("the last day for it was 2026-03-18, 2 days ago: ask the supplier whether he still takes it",)


def test_a_good_belt_sent_back_bears_the_fee_of_the_terms(tmp_path: Path) -> None:
    """15 % of 126.90 is 19.04 (19.035): 107.86 to come."""
    number, desk = came(tmp_path), desk_at(tmp_path, FRIDAY)
    assert not going_back(desk, number)
    (waits,) = send_back(desk, number, step(1, "sent")).still_open
    assert (waits.expected, waits.fee) == (usd("107.86"), usd("19.04"))
    credited = send_back(desk, number, step(1, "credited", credit=Decimal("107.86"), fee=Decimal("19.04")))
    assert not credited.notes and not credited.still_open


def test_a_step_that_can_not_follow_leaves_nothing(tmp_path: Path) -> None:
    number, desk = came(tmp_path), desk_at(tmp_path, FRIDAY)
    before = history(desk, "2026-0001")
    for said, told in (
        (step(1, "credited", credit=Decimal(1)), "say --sent first"),
        (step(1, "sent", pieces=2), "2 can't be sent back, for the pieces left for that come to 1"),
        (step(9, "sent"), "has no line 9"),
        (step(1, "lost"), "giving an old part or goods up"),
        (BackStep(line=1, kind="core", step="sent"), "no charge for an old part"),
    ):
        with pytest.raises(Refused, match=told):
            send_back(desk, number, said)
    assert history(desk, "2026-0001") == before and not going_back(desk)


def test_a_paper_whose_goods_went_back_can_not_be_set_aside(tmp_path: Path) -> None:
    number, desk = came(tmp_path, damaged={2: 1}), desk_at(tmp_path, FRIDAY)
    send_back(desk, number, step(2, "sent"))
    with pytest.raises(Refused, match="line 2 on paper D1"):
        receive_again(desk, number, "D1", "slip")


def test_another_paper_of_the_line_can_be(tmp_path: Path) -> None:
    """What went back came on the first; the second, typed wrongly, is put right."""
    number = ordered(tmp_path)
    first = Delivery(paper="D1", freight=Decimal(0), quantities={1: 1, 2: 1}, damaged={2: 1})
    receive(desk_at(tmp_path, WEDNESDAY), number, first)
    desk = desk_at(tmp_path, FRIDAY)
    send_back(desk, number, step(2, "sent"))
    receive(desk, number, Delivery(paper="D2", freight=Decimal(0), quantities={2: 1}))
    assert receive_again(desk, number, "D2", "two pieces came").paper == "D2"
    assert [one.waits for one in going_back(desk, number)] == ["for credit"]
    with pytest.raises(Refused, match="line 2 on paper D1"):
        receive_again(desk, number, "D1", "slip")


def test_the_claim_names_no_customer_and_no_job(tmp_path: Path) -> None:
    """What is claimed and what was credited of it."""
    number = came(tmp_path, damaged={2: 1}, prices={1: Decimal("130.00")})
    desk = desk_at(tmp_path, FRIDAY)
    send_back(desk, number, step(2, "sent"))
    send_back(desk, number, step(2, "credited", credit=Decimal("6.20")))
    made = claim(desk, number)
    assert (made.claimed, made.credited, made.still_claimed) == (usd("9.30"), usd("6.20"), usd("3.10"))
    assert [one.what for one in made.lines] == [
        "NW-77120: charged 130.00 instead of 126.90 on paper D1", "NW-31207: 1 of 2 damaged"
    ]  # fmt: skip
    everything = repr(made)
    assert "Tilbrook" not in everything and "2026-0001" not in everything.replace(number, "")
    found = differences_of(desk, number)
    assert (found.claimed, found.credited) == (usd("9.30"), usd("6.20"))


def test_nothing_to_claim_is_a_sentence(tmp_path: Path) -> None:
    number = came(tmp_path)
    with pytest.raises(Refused, match="nothing of order PO-2026-0001 cost more than agreed"):
        claim(desk_at(tmp_path, FRIDAY), number)


def test_an_old_part_from_the_order_to_the_credit(tmp_path: Path) -> None:
    """The sheet's charge for the old part stands on order and receipt, waits thirty days, and is in no claim."""
    number = ordered_with_core(tmp_path)
    desk = desk_at(tmp_path, WEDNESDAY)
    set_terms(desk, "stonegarth", {"core_return.within_days": "30"})
    done = receive(desk, number, Delivery(paper="D1", freight=Decimal("14.95"), supplier_total=Decimal("140.00")))
    # 100.00 for the starter, 25.00 for the old one, 14.95 freight: 139.95.
    assert done.to_do[0].startswith("0.05 USD of paper D1 is not explained")
    (waits,) = going_back(desk)
    assert (waits.kind, waits.due, waits.expected) == ("core", date(2026, 4, 3), usd("25.00"))
    send_back(desk, number, BackStep(line=1, kind="core", step="sent", paper="R-1"))
    after = send_back(desk, number, BackStep(line=1, kind="core", step="credited", credit=Decimal("20.00")))
    assert after.notes == ("25.00 USD was to be expected, 20.00 USD came: 5.00 USD less",)
    assert not after.still_open and not differences_of(desk, number).claimed.amount


def ordered_with_core(folder: Path) -> str:
    """An idler at 100.00 with 25.00 for the old one, ordered on Monday; the order's number."""
    desk = shop(folder, datetime(2026, 3, 2, 9, 0))
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-22203", "100.00", core_charge=Decimal("25.00")))
    job = take_in(desk, folder, '[[agreed]]\ntitle = "Idler"\npart = "IDLER"\nquantity = 1\nhours = 1\n')
    approved(desk, job)
    return place_orders(desk, [job]).orders[0].number


def test_switched_off_in_the_middle_nothing_is_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each deed is all or nothing: here it fails at its last step, the entry in the ledger."""
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    before = going_back(desk), differences_of(desk, number)

    def fails(*_: object) -> None:
        raise OSError("no power")

    monkeypatch.setattr("sourcing.actions.desk.record", fails)
    with pytest.raises(OSError, match="no power"):
        send_back(desk, number, step(2, "sent"))
    with pytest.raises(OSError, match="no power"):
        receive(desk, number, Delivery(paper="D2", freight=Decimal(0), quantities={2: 1}))
    with pytest.raises(OSError, match="no power"):
        receive_again(desk, number, "D1", "slip")
    assert (going_back(desk), differences_of(desk, number)) == before
