"""Steps of goods going back that were taken down wrongly: the last is taken back, kept, and what waited waits again."""

from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.claims import differences_of
from sourcing.actions.desk import Desk
from sourcing.actions.goods_back import LastStep, going_back, send_back, steps_of, take_step_back
from sourcing.actions.history import for_the_bench, history
from sourcing.actions.job_states import state_of, whole_job
from sourcing.actions.margins import margins
from sourcing.basics.problem import Refused
from sourcing.storage.after_order import every_step_back, goods_back
from tests.actions.test_goods_back_deeds import FRIDAY, came, step
from tests.builders import usd
from tests.journeys.small_shop import desk_at

JOB = "2026-0001"


def wrongly(number: str, line: int = 2, words: str = "wrong line", known: int | None = None) -> LastStep:
    """The last step of the goods of a line, and why it goes."""
    return LastStep(order=number, line=line, kind="goods", words=words, known=known)


def everything(desk: Desk, number: str) -> tuple[object, ...]:
    """All that follows from the steps."""
    state, money = state_of(desk, JOB), margins(desk)
    return going_back(desk), differences_of(desk, number), state, money, whole_job(desk, JOB).receipts


def test_a_credit_and_then_the_sending_are_taken_back_one_by_one(tmp_path: Path) -> None:
    """After each everything stands as it did before that step; the ledger and the steps keep both, with who and why."""
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    before = everything(desk, number)
    send_back(desk, number, step(2, "sent", paper="R-7", freight=Decimal("4.10")))
    sent = everything(desk, number)
    send_back(desk, number, step(2, "credited", credit=Decimal("6.20"), paper="CN-1"))
    assert not going_back(desk) and before != sent
    gone = take_step_back(desk, wrongly(number, words=" credit note of another order "))
    assert gone.step.credit == usd("6.20") and [one.waits for one in gone.still_open] == ["for credit"]
    assert everything(desk, number) == sent
    take_step_back(desk, wrongly(number))
    assert everything(desk, number) == before
    told = history(desk, JOB)[-2:]
    assert [(one.deed, one.who, one.detail) for one in told] == [
        (
            "take step back",
            "Oona Brandeth",
            f"goods NW-31207 of {number}, 1 x: credited on 2026-03-06, taken back: credit note of another order",
        ),
        (
            "take step back",
            "Oona Brandeth",
            f"goods NW-31207 of {number}, 1 x: sent back on 2026-03-06, taken back: wrong line",
        ),
    ]
    assert [one.detail for one in for_the_bench(told)] == ["", ""]
    kept = steps_of(desk, number, 2, "goods")
    assert [(one.step.step, one.taken_back.words if one.taken_back else "") for one in kept.steps] == [
        ("sent", "wrong line"),
        ("credited", "credit note of another order"),
    ]
    assert (kept.known, kept.last) == (4, None)


def test_a_step_can_be_taken_down_anew_and_only_the_line_and_kind_named_is_touched(tmp_path: Path) -> None:
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    send_back(desk, number, step(2, "sent"))
    send_back(desk, number, step(1, "sent"))
    take_step_back(desk, wrongly(number))
    send_back(desk, number, step(2, "sent", paper="R-8"))
    with desk.store.reading() as connection:
        assert [(one.line, one.paper) for one in goods_back(connection, number)] == [(1, ""), (2, "R-8")]
        assert goods_back(connection) == goods_back(connection, number)
        assert len(every_step_back(connection)) == 4
    last = steps_of(desk, number, 2, "goods").last
    assert last is not None and last.paper == "R-8"


def test_what_can_not_be_taken_back_is_refused(tmp_path: Path) -> None:
    """Nothing stands, no reason, or somebody took another step since the page was opened; then nothing is changed."""
    number = came(tmp_path, damaged={2: 1})
    desk = desk_at(tmp_path, FRIDAY)
    with pytest.raises(Refused, match=f"nothing is taken down of the goods of line 2 of order {number}"):
        take_step_back(desk, wrongly(number))
    with pytest.raises(Refused, match="has no line 9"):
        take_step_back(desk, wrongly(number, line=9))
    send_back(desk, number, step(2, "sent"))
    shown = steps_of(desk, number, 2, "goods").known
    send_back(desk, number, step(2, "credited", credit=Decimal("6.20")))
    with pytest.raises(Refused, match="no reason is given for taking a step back"):
        take_step_back(desk, wrongly(number, words=" "))
    with pytest.raises(Refused, match="somebody has taken down or back another step of the goods of line 2"):
        take_step_back(desk, wrongly(number, known=shown))
    take_step_back(desk, wrongly(number, known=shown + 1))
    with pytest.raises(Refused, match="another step"):
        take_step_back(desk, wrongly(number, known=shown + 1))
    assert [one.step.step for one in steps_of(desk, number, 2, "goods").steps if one.taken_back is None] == ["sent"]
