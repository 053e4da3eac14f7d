"""A yes taken back: until it is ordered, by who may answer, with its freight, and never to come back by itself."""

from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, standing, withdraw
from sourcing.actions.order_changes import cancel
from sourcing.actions.orders import place_orders
from sourcing.actions.revisions import answer_record
from sourcing.basics.problem import Refused
from sourcing.storage.after_quote import withdrawals
from sourcing.storage.deeds import deeds
from sourcing.storage.quotes import approvals
from tests.actions.answered_shop import CALLED, MONDAY, at, quoted, said, torn_down
from tests.builders import usd
from tests.journeys.small_shop import desk_at

LATER = datetime(2026, 3, 4, 12, 0)


def back(*labels: str, who: str = "Maud Tilbrook") -> TakenBack:
    """By e-mail, with her words."""
    return TakenBack(labels=labels, who=who, how="e-mail", contact="maud@example.org", words="Too dear after all.")


def all_approved(folder: Path) -> str:
    """Belt, keepers, idler and bar with their freight: all yes."""
    number = quoted(folder)
    record(desk_at(folder, MONDAY), number, said("agreed"))
    torn_down(folder, number)
    record(at(folder), number, said("A", "B", "C", "D"))
    return number


def test_a_yes_taken_back_waits_again_and_cannot_be_ordered(tmp_path: Path) -> None:
    """The rest is ordered; the total of what is approved falls."""
    number = all_approved(tmp_path)
    found = withdraw(at(tmp_path, LATER), number, back("C"))
    assert found.words() == {
        "1": "approved", "2": "approved", "A": "approved", "B": "approved", "C": "waiting", "D": "approved",
    }  # fmt: skip
    assert found.answers.approved_total == usd("413.19")
    assert any("line C waits" in note and "the yes was taken back" in note for note in found.answers.notes)
    with pytest.raises(Refused, match=f"line C of job {number} is waiting, so it can't be ordered"):
        place_orders(at(tmp_path, LATER), [number], ["C"])
    ordered = [line.part for order in place_orders(at(tmp_path, LATER), [number]).orders for line in order.lines]
    assert {"IDLER", "KEEPER"} <= set(ordered) and "BAR" not in ordered


def test_what_is_taken_back_stays_on_record_with_the_words(tmp_path: Path) -> None:
    """The yes too; the ledger names both."""
    number = all_approved(tmp_path)
    withdraw(at(tmp_path, LATER), number, back("C"))
    with at(tmp_path).store.reading() as connection:
        (one,) = withdrawals(connection, number)
        yes = dict(approvals(connection, number))[one.approval]
        last = deeds(connection)[-1]
    assert (one.label, one.who, one.how, one.at, one.taken_by) == (
        "C", "Maud Tilbrook", "e-mail", LATER, "Piet Halloway-Rusk",
    )  # fmt: skip
    assert (one.contact, one.words) == ("maud@example.org", "Too dear after all.")
    assert (yes.label, yes.answer, yes.holds) == ("C", "approved", "withdrawn")
    assert (last.deed, last.subject) == ("take back", number)
    assert last.detail == "Maud Tilbrook by e-mail took the yes back: C"
    shown = answer_record(at(tmp_path), number).occasions[-1]
    assert [(line.label, line.answer, line.holds) for line in shown.lines] == [("C", "taken back", "withdrawn")]


def test_once_ordered_it_cannot_be_taken_back(tmp_path: Path) -> None:
    """Neither the line nor the freight that an ordered part needs; nothing of the rest either."""
    number = all_approved(tmp_path)
    place_orders(at(tmp_path), [number], ["A"])
    with pytest.raises(Refused, match=f"line A of job {number} is already on a purchase order"):
        withdraw(at(tmp_path, LATER), number, back("C", "A"))
    with pytest.raises(Refused, match="line A can't be ordered without the freight on line D"):
        withdraw(at(tmp_path, LATER), number, back("D"))
    assert set(standing(at(tmp_path), number).words().values()) == {"approved"}


def test_once_its_order_is_cancelled_it_can(tmp_path: Path) -> None:
    """Or be declined; what was cancelled lets go of the yes."""
    number = all_approved(tmp_path)
    (order,) = place_orders(at(tmp_path), [number], ["A", "B"]).orders
    with pytest.raises(Refused, match=r"line B .* is already on a purchase order"):
        record(at(tmp_path, LATER), number, said(no=("B",), instead=True))
    cancel(at(tmp_path, LATER), order.number, words="the customer thinks it over")
    assert withdraw(at(tmp_path, LATER), number, back("A")).words()["A"] == "waiting"
    assert record(at(tmp_path, LATER), number, said(no=("B",), instead=True)).words()["B"] == "declined"


def test_freight_can_be_taken_back_with_all_the_parts_it_brings(tmp_path: Path) -> None:
    """Together; not alone."""
    number = all_approved(tmp_path)
    with pytest.raises(Refused, match="without the freight on line D"):
        withdraw(at(tmp_path, LATER), number, back("A", "B", "D"))
    found = withdraw(at(tmp_path, LATER), number, back("A", "B", "C", "D"))
    assert found.answers.approved_total == usd("278.48")


@pytest.mark.parametrize(
    ("labels", "who", "moment", "words"),
    [
        (("C",), "A Neighbour", LATER, "A Neighbour is not named"),
        (("Z",), "Maud Tilbrook", LATER, "no line 'Z'"),
        ((), "Maud Tilbrook", LATER, "no line of job"),
        (("C",), "Maud Tilbrook", datetime(2026, 3, 4, 11, 19), "the yes to line C .* is of 2026-03-04 11:20"),
    ],
)
def test_what_is_no_taking_back(
    tmp_path: Path, labels: tuple[str, ...], who: str, moment: datetime, words: str
) -> None:
    """One sentence each."""
    number = all_approved(tmp_path)
    with pytest.raises(Refused, match=words):
        withdraw(at(tmp_path, moment), number, back(*labels, who=who))


def test_only_a_yes_can_be_taken_back(tmp_path: Path) -> None:
    """Not a no, not a silence, and not twice."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    record(at(tmp_path), number, said("agreed", no=("C",)))
    for label, word in (("C", "declined"), ("A", "waiting")):
        with pytest.raises(Refused, match=f"line {label} of job {number} is {word}"):
            withdraw(at(tmp_path, LATER), number, back(label))
    withdraw(at(tmp_path, LATER), number, back("agreed"))
    with pytest.raises(Refused, match=f"line 1 of job {number} is waiting"):
        withdraw(at(tmp_path, LATER), number, back("1"))


def test_an_earlier_yes_does_not_rise_again_when_the_later_is_taken_back(tmp_path: Path) -> None:
    """Yes on revision 1, yes again on revision 2, taken back: the line waits."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed"))
    torn_down(tmp_path, number)
    record(at(tmp_path), number, said("agreed"))
    assert withdraw(at(tmp_path, LATER), number, back("agreed")).words()["1"] == "waiting"


def test_she_may_say_yes_again(tmp_path: Path) -> None:
    """Without 'instead': nothing stands any more."""
    number = all_approved(tmp_path)
    withdraw(at(tmp_path, LATER), number, back("C"))
    assert record(at(tmp_path, LATER), number, said("C")).words()["C"] == "approved"
    assert record(at(tmp_path, CALLED), number, said("C")).words()["C"] == "approved"


def test_a_quote_past_its_validity_can_still_be_taken_back(tmp_path: Path) -> None:
    """The shop's day must not bind her longer."""
    number = all_approved(tmp_path)
    assert withdraw(at(tmp_path, datetime(2026, 4, 1, 9, 0)), number, back("C")).words()["C"] == "waiting"
