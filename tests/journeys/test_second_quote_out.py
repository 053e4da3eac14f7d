"""A second quote is made while the first lies with the customer: what her answer covers, and whose answer counts.

Belt 126.90 from Stonegarth, 1.5 h: 177.66 each and 357.29 in all, valid for a week. At 139.59 it would be
195.43 and 376.31, at 120.00 it would be 168.00.
"""

from datetime import date, datetime, time, timedelta
from pathlib import Path

import pytest

from sourcing.actions.answers import Standing, record, standing
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import all_orders, place_orders
from sourcing.actions.quotes import reprint, write_quote
from sourcing.actions.revisions import answer_record
from sourcing.actions.sendings import given
from sourcing.basics.problem import Refused
from sourcing.basics.quote import Quote
from tests.actions.answered_shop import said
from tests.builders import usd
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in
from tests.journeys.test_worked_days import paper

MONDAY, TUESDAY, WEDNESDAY = datetime(2026, 3, 2, 10, 0), datetime(2026, 3, 3, 9, 0), datetime(2026, 3, 4, 9, 0)
BELT = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
KEEPERS = '[[add_ons]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0.3\n'
KEEPER_ROW = "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"
HUSBAND = "Tam Tilbrook"


def belt(price: str) -> str:
    """Stonegarth's row of the belt at that net price."""
    return f"NW-77120,Norrowby,Belt B88,208.45,{price},2,In stock"


def first_given(folder: Path) -> str:
    """Revision 1 made on Monday and handed over."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", [belt("126.90"), KEEPER_ROW])
    number = take_in(desk, folder, BELT)
    assert write_quote(desk, number, paper).frozen.quote.agreed_total.total == usd("357.29")
    given(desk, number, None, "in person", "")
    return number


def second(folder: Path, number: str, price: str = "126.90", body: str = BELT) -> Quote:
    """Revision 2 made on Tuesday, after a new sheet or tear-down; it lies on the desk."""
    desk = desk_at(folder, TUESDAY)
    sheet(desk, folder, "stonegarth", "2026-03-03", [belt(price), KEEPER_ROW])
    change_job_from(desk, number, job_file(folder, body))
    written = write_quote(desk, number, paper)
    assert written.is_new and written.frozen.quote.revision == 2
    return written.frozen.quote


def answer(folder: Path, number: str, *yes: str, **fields: object) -> Standing:
    """Her answer on Wednesday."""
    return record(desk_at(folder, WEDNESDAY), number, said(*yes, **fields))  # type: ignore[arg-type]


def code(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The code of the refusal."""
    return caught.value.problems[0].code


def nothing_kept(folder: Path, number: str) -> bool:
    """Whether no answer is on record, no deed tells of one, and nothing can be ordered."""
    desk = desk_at(folder, WEDNESDAY)
    with pytest.raises(Refused, match="is approved and not yet ordered"):
        place_orders(desk, [number])
    told = any(one.deed == "answer" for one in history(desk, number))
    return not answer_record(desk, number).occasions and not told


def test_it_must_be_said_which_quote_she_answered(tmp_path: Path) -> None:
    """Only the first was given to her: a yes without a revision could be to either, and is kept for neither."""
    number = first_given(tmp_path)
    second(tmp_path, number, body=BELT + KEEPERS)
    with pytest.raises(Refused) as caught:
        answer(tmp_path, number, "agreed")
    assert code(caught) == "which-revision"
    assert nothing_kept(tmp_path, number)


def test_a_yes_to_the_first_covers_what_both_have_in_common(tmp_path: Path) -> None:
    """The belt and its freight are the same on both; the keepers she has never seen wait."""
    number = first_given(tmp_path)
    second(tmp_path, number, body=BELT + KEEPERS)
    words = answer(tmp_path, number, "agreed", revision=1).words()
    assert (words["1"], words["A"]) == ("approved", "waiting")
    (occasion,) = answer_record(desk_at(tmp_path, WEDNESDAY), number).occasions
    first = reprint(desk_at(tmp_path, WEDNESDAY), number, 1)
    assert (occasion.revision, occasion.sha256) == (1, first.sha256)  # the paper she held in her hand
    placed = place_orders(desk_at(tmp_path, WEDNESDAY), [number])
    assert [line.part for order in placed.orders for line in order.lines] == ["BELT"]


def test_a_yes_to_the_first_does_not_cover_a_dearer_second(tmp_path: Path) -> None:
    """177.66 + 144.00 of labour was printed for line 1, now it is 195.43 + 144.00: told with both, nothing is kept."""
    number = first_given(tmp_path)
    assert second(tmp_path, number, "139.59").agreed_total.total == usd("376.31")
    with pytest.raises(Refused, match=r"the price is now 339\.43 USD before tax, then it was 321\.66 USD") as caught:
        answer(tmp_path, number, "agreed", revision=1)
    assert code(caught) == "older-revision"
    assert nothing_kept(tmp_path, number)
    given(desk_at(tmp_path, WEDNESDAY), number, None, "text", "555-0142")
    answer(tmp_path, number, "agreed")
    (order,) = place_orders(desk_at(tmp_path, WEDNESDAY), [number]).orders
    assert standing(desk_at(tmp_path, WEDNESDAY), number).approved.total == usd("376.31")
    assert order.lines[0].goods_cost == usd("139.59")


def test_a_yes_given_before_the_price_rose_waits_for_a_new_one(tmp_path: Path) -> None:
    """She said yes to 177.66 on Monday; since Tuesday's revision asks 195.43 the line waits, and the freight stands."""
    number = first_given(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed"))
    second(tmp_path, number, "139.59")
    where = standing(desk_at(tmp_path, WEDNESDAY), number)
    assert (where.words()["1"], where.words()["2"]) == ("waiting", "approved")
    assert any("the price is now 339.43 USD before tax, then it was 321.66 USD" in note for note in where.answers.notes)
    with pytest.raises(Refused, match="is approved and not yet ordered"):
        place_orders(desk_at(tmp_path, WEDNESDAY), [number])


def test_a_yes_to_the_first_covers_a_cheaper_second(tmp_path: Path) -> None:
    """120.00 makes 168.00: 168.00 + 14.95 + 144.00 + 7.20 and 12.81 of tax are 346.96, and no more is ever billed."""
    number = first_given(tmp_path)
    assert second(tmp_path, number, "120.00").agreed_total.total == usd("346.96")
    where = answer(tmp_path, number, "agreed", revision=1)
    assert (where.words()["1"], where.approved.total) == ("approved", usd("346.96"))
    assert place_orders(desk_at(tmp_path, WEDNESDAY), [number]).orders


def test_a_no_to_the_first_is_a_no_to_a_dearer_second_and_none_to_a_cheaper(tmp_path: Path) -> None:
    """Who declines 177.66 has declined 195.43; for 168.00 she may want it."""
    for price, kept in (("139.59", True), ("120.00", False)):
        folder = tmp_path / price
        folder.mkdir()
        number = first_given(folder)
        second(folder, number, price)
        if kept:
            assert answer(folder, number, no=("agreed",), revision=1).words()["1"] == "declined"
            continue
        with pytest.raises(Refused) as caught:
            answer(folder, number, no=("agreed",), revision=1)
        assert code(caught) == "older-revision"
        assert nothing_kept(folder, number)


def test_once_the_second_was_given_too_a_plain_yes_is_to_it(tmp_path: Path) -> None:
    """And one to the first has still to be said as such."""
    number = first_given(tmp_path)
    second(tmp_path, number, "139.59")
    given(desk_at(tmp_path, TUESDAY), number, 2, "e-mail", "maud@home.example")
    where = answer(tmp_path, number, "agreed")
    assert (where.quote.revision, where.approved.total) == (2, usd("376.31"))
    (occasion,) = answer_record(desk_at(tmp_path, WEDNESDAY), number).occasions
    assert occasion.revision == 2


def test_an_expired_quote_is_answered_on_a_new_one(tmp_path: Path) -> None:
    """On its last day she may say yes; a day later it takes a new revision, though nothing on it has changed."""
    number = first_given(tmp_path)
    valid_to = reprint(desk_at(tmp_path, MONDAY), number, 1).quote.valid_to
    late = desk_at(tmp_path, datetime.combine(valid_to + timedelta(days=1), time(8, 0)))
    with pytest.raises(Refused) as caught:
        record(late, number, said("agreed"))
    assert code(caught) == "quote-expired"
    assert nothing_kept(tmp_path, number)
    written = write_quote(late, number, paper)
    assert written.is_new and written.frozen.quote.agreed_total.total == usd("357.29")
    given(late, number, None, "telephone", "555-0142")
    assert record(late, number, said("agreed")).words()["1"] == "approved"


def test_on_its_last_day_a_quote_can_be_answered(tmp_path: Path) -> None:
    """Until the evening."""
    number = first_given(tmp_path)
    last = reprint(desk_at(tmp_path, MONDAY), number, 1).quote.valid_to
    evening = desk_at(tmp_path, datetime.combine(last, time(23, 59)))
    assert record(evening, number, said("agreed")).words()["1"] == "approved"
    assert last >= date(2026, 3, 9)


def test_a_neighbours_yes_is_none(tmp_path: Path) -> None:
    """Told who may say yes; nothing is kept and nothing is ordered."""
    number = first_given(tmp_path)
    with pytest.raises(Refused, match="Maud Tilbrook") as caught:
        answer(tmp_path, number, "agreed", who=HUSBAND)
    assert code(caught) == "not-entitled"
    assert nothing_kept(tmp_path, number)


def test_her_husband_may_answer_once_she_has_named_him(tmp_path: Path) -> None:
    """Named on Tuesday, without a new quote; the record has his name, and the order stands on his yes."""
    number = first_given(tmp_path)
    with pytest.raises(Refused, match="not named"):
        answer(tmp_path, number, "agreed", who=HUSBAND)
    path = job_file(tmp_path, BELT)
    path.write_text(path.read_text().replace("[machine]", f'may_also_approve = ["{HUSBAND}"]\n[machine]'))
    change_job_from(desk_at(tmp_path, TUESDAY), number, path)
    where = answer(tmp_path, number, "agreed", who="tam  tilbrook", words="she is away")
    assert (where.quote.revision, where.words()["1"]) == (1, "approved")
    found = answer_record(desk_at(tmp_path, WEDNESDAY), number)
    assert [one.who for one in found.occasions] == ["tam  tilbrook"]
    assert found.may_answer == ("Maud Tilbrook", HUSBAND)
    place_orders(desk_at(tmp_path, WEDNESDAY), [number])
    assert len(all_orders(desk_at(tmp_path, WEDNESDAY), number)) == 1


def test_a_name_taken_off_the_job_answers_no_more(tmp_path: Path) -> None:
    """Named on revision 2, taken off since without a new one: neither his yes is kept nor is he in the record."""
    number = first_given(tmp_path)
    path = job_file(tmp_path, BELT)
    path.write_text(path.read_text().replace("[machine]", f'may_also_approve = ["{HUSBAND}"]\n[machine]'))
    desk = desk_at(tmp_path, TUESDAY)
    change_job_from(desk, number, path)
    assert HUSBAND in write_quote(desk, number, paper).frozen.quote.customer.may_also_approve
    given(desk, number, None, "in person", "")
    change_job_from(desk, number, job_file(tmp_path, BELT))
    with pytest.raises(Refused, match=f"{HUSBAND} is not named"):
        answer(tmp_path, number, "agreed", who=HUSBAND)
    assert answer_record(desk, number).may_answer == ("Maud Tilbrook",)
    assert answer(tmp_path, number, "agreed").words()["1"] == "approved"


def test_when_both_answer_the_second_who_says_otherwise_is_told(tmp_path: Path) -> None:
    """Her no after his yes is kept only when it is said to take its place; then nothing is ordered any more."""
    number = first_given(tmp_path)
    path = job_file(tmp_path, BELT)
    path.write_text(path.read_text().replace("[machine]", f'may_also_approve = ["{HUSBAND}"]\n[machine]'))
    change_job_from(desk_at(tmp_path, TUESDAY), number, path)
    answer(tmp_path, number, "agreed", who=HUSBAND)
    with pytest.raises(Refused, match=f"stands as approved by {HUSBAND}") as caught:
        answer(tmp_path, number, no=("agreed",))
    assert code(caught) == "answered-otherwise"
    where = answer(tmp_path, number, no=("agreed",), instead=True, words="we buy a new one")
    assert where.words()["1"] == "declined"
    with pytest.raises(Refused, match="is approved and not yet ordered"):
        place_orders(desk_at(tmp_path, WEDNESDAY), [number])
