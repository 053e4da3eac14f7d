"""What answers told to the shop come to before they are written down."""

from collections.abc import Mapping
from itertools import product

import pytest

from sourcing.basics.approval import Approval
from sourcing.quoting.answers_told import MOST_TOLD, to_answer, total_told, totals_told
from sourcing.quoting.totals import total_of
from tests.quoting.test_choices import LINES, freight, line, paper, said

QUOTE = paper()


def test_freight_of_agreed_work_has_no_answer_of_its_own() -> None:
    """It goes with its parts; that of the extra parts is answered by itself."""
    assert to_answer(QUOTE) == ("1", "2", "A", "B", "C")


@pytest.mark.parametrize(
    ("yes", "no", "held", "counted"),
    [
        ((), (), (), ""),
        (("1",), (), (), "13"),
        (("1", "A", "C"), ("B",), (), "13AC"),
        ((), ("A",), ("1", "2", "3", "A"), "123"),
        ((), ("1",), ("1", "2", "3"), "23"),
        (("A",), ("1", "2"), ("1", "2", "3"), "A"),
    ],
)
def test_all_that_is_approved_afterwards_is_counted(
    yes: tuple[str, ...], no: tuple[str, ...], held: tuple[str, ...], counted: str
) -> None:
    """What holds stays unless it is declined now; freight comes in with the first part and goes with the last."""
    holding: Mapping[str, Approval] = {label: said(QUOTE, label, "approved") for label in held}
    assert total_told(QUOTE, yes, no, holding) == total_of(QUOTE, counted).total


def test_every_total_stands_at_the_number_its_answers_make() -> None:
    """To the base of three, the first line lowest: as it is 0, yes 1, no 2."""
    holding: Mapping[str, Approval] = {"A": said(QUOTE, "A", "approved"), "B": said(QUOTE, "B", "declined")}
    labels, totals = to_answer(QUOTE), totals_told(QUOTE, holding)
    assert len(totals) == 3 ** len(labels)
    for marks in product(range(3), repeat=len(labels)):
        yes, no = ([label for label, mark in zip(labels, marks, strict=True) if mark == word] for word in (1, 2))
        place = sum(mark * 3**at for at, mark in enumerate(marks))
        assert totals[place] == total_told(QUOTE, yes, no, holding), marks


def test_too_many_lines_have_no_list_of_totals() -> None:
    """The page then has only the button that asks the server."""
    more = [line(str(at), "10.00") for at in range(1, MOST_TOLD + 2)]
    assert totals_told(paper(*more), {}) == ()
    assert len(totals_told(paper(*more[:-1], freight("9", "5.00")), {})) == 3**MOST_TOLD
    assert len(LINES) == len(to_answer(QUOTE)) + 1
