"""Two people answer the same quote at once, in threads and in processes of their own: nobody's word is lost unseen."""

import subprocess
import sys
import threading
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, standing, withdraw
from sourcing.actions.orders import place_orders
from sourcing.basics.problem import Refused
from sourcing.storage.quotes import approvals
from tests.actions.answered_shop import at, quoted, said, torn_down

PROGRAM = """
import sys
from datetime import datetime
from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import open_desk
from sourcing.basics.problem import Refused
path, number, yes, no = sys.argv[1:]
desk = open_desk(path, datetime(2026, 3, 4, 11, 20), "Oona Brandeth")
spoken = Spoken(yes=tuple(yes.split()), no=tuple(no.split()), who="Maud Tilbrook", how="telephone")
print("ready", flush=True)
sys.stdin.readline()
try:
    record(desk, number, spoken)
    print("kept")
except Refused as refusal:
    print(refusal.problems[0].code)
"""


SWITCHED_OFF = """
import os, signal
import sourcing.actions.desk as at_desk
# The ledger is written last: at that moment the machine loses its power.
at_desk.record = lambda *_words: os.kill(os.getpid(), signal.SIGKILL)
"""


def asked(folder: Path) -> str:
    """Three add-ons that wait."""
    number = quoted(folder)
    torn_down(folder, number)
    return number


@pytest.mark.parametrize("turn", range(3))
def test_of_two_contrary_answers_at_once_one_is_kept_and_the_other_is_told(tmp_path: Path, turn: int) -> None:
    """Never both, never none, never the second over the first."""
    number = asked(tmp_path)
    start, told = threading.Barrier(2), []

    def answer(yes: tuple[str, ...], no: tuple[str, ...]) -> None:
        desk = at(tmp_path)
        start.wait()
        try:
            record(desk, number, said(*yes, no=no))
            told.append("kept")
        except Refused as refusal:
            told.append(refusal.problems[0].code)

    two = [((), ("C",)), (("C", "D"), ())]
    threads = [threading.Thread(target=answer, args=one) for one in (two if turn % 2 else reversed(two))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(told) == ["answered-otherwise", "kept"]
    with at(tmp_path).store.reading() as connection:
        assert len({one.answer for _, one in approvals(connection, number) if one.label == "C"}) == 1


def test_answers_to_different_lines_at_once_are_both_kept(tmp_path: Path) -> None:
    """Two programs on one file: the belt and the bar."""
    number = asked(tmp_path)
    each = [
        subprocess.Popen(
            [sys.executable, "-c", PROGRAM, str(tmp_path / "sourcing.db"), number, yes, no],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        for yes, no in (("agreed", ""), ("", "C"))
    ]
    for one in each:
        assert one.stdout and one.stdout.readline() == "ready\n"
    for one in each:
        assert one.stdin
        one.stdin.write("\n")
        one.stdin.flush()
    assert [one.communicate()[0] for one in each] == ["kept\n", "kept\n"]
    words = standing(at(tmp_path), number).words()
    assert (words["1"], words["2"], words["C"], words["A"]) == ("approved", "approved", "declined", "waiting")


def test_taking_back_and_ordering_at_once_never_both_succeed(tmp_path: Path) -> None:
    """Either it is ordered and the yes stands, or it is taken back and nothing is ordered."""
    number = asked(tmp_path)
    record(at(tmp_path), number, said("C", "D"))
    start, told = threading.Barrier(2), {}

    def order() -> None:
        desk = at(tmp_path)
        start.wait()
        try:
            told["order"] = bool(place_orders(desk, [number], ["C"]).orders)
        except Refused:
            told["order"] = False

    def take_back() -> None:
        desk = at(tmp_path)
        start.wait()
        try:
            withdraw(desk, number, TakenBack(labels=("C", "D"), who="Maud Tilbrook", how="telephone"))
            told["back"] = True
        except Refused:
            told["back"] = False

    threads = [threading.Thread(target=order), threading.Thread(target=take_back)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert told["order"] is not told["back"]
    assert standing(at(tmp_path), number).words()["C"] == ("approved" if told["order"] else "waiting")


def test_a_machine_switched_off_in_the_middle_of_an_answer_keeps_nothing_of_it(tmp_path: Path) -> None:
    """Kill -9 after the answers were written and before the ledger was; reopened, all lines wait, and it works on."""
    number = asked(tmp_path)
    database = str(tmp_path / "sourcing.db")
    done = subprocess.run(
        [sys.executable, "-c", SWITCHED_OFF + PROGRAM, database, number, "agreed", "C"],
        input="\n",
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout) == (-9, "ready\n"), done.stderr
    assert set(standing(at(tmp_path), number).words().values()) == {"waiting"}
    with at(tmp_path).store.reading() as connection:
        assert approvals(connection, number) == []
    assert record(at(tmp_path), number, said("agreed")).words()["1"] == "approved"
