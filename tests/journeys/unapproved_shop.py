"""A shop with two keepers the customer did not approve, for every reason there is; for tests that try all the same.

The belt was approved, ordered and has come. Two keepers (A) and their freight (B) were found at tear-down.
"""

import hashlib
import shlex
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

from sqlalchemy import Connection

from sourcing.actions.answers import TakenBack, record, withdraw
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.order_changes import cancel
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.bill import Bill, FrozenBill
from sourcing.storage.quotes import approvals, newest_quote
from tests.actions.answered_shop import BELT, STONEGARTH, said
from tests.journeys.cutting import Host
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in
from tests.journeys.test_worked_days import paper

MONDAY, FOUND, LATER = datetime(2026, 3, 2, 10, 0), datetime(2026, 3, 4, 11, 0), datetime(2026, 3, 5, 9, 0)
PELLBROOK = "CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"
KEEPERS = '[[add_ons]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0.3\n'
JOB, BELT_ORDER = "2026-0001", "PO-2026-0001"
ORDER_LINE = (
    'INSERT INTO purchase_order_lines ("order", line, job, revision, label, approval, answer, holds, cancelled) '
    "VALUES (:order, 9, :job, 2, 'A', :approval, :answer, :holds, 'no')"
)
RECEIPT_LINE = 'INSERT INTO receipt_lines (receipt, "order", line, pieces, cancelled) VALUES (1, :order, :line, 2, :no)'
BILL = (
    "INSERT INTO bills (job, number, at, who, body, paper, sha256) VALUES (:job, 'B-9', '2026-03-05', 'me', '', '', '')"
)
BILL_LINE = (
    "INSERT INTO bill_lines (job, label, approval, answer, holds) VALUES (:job, 'A', :approval, :answer, :holds)"
)
CLAIMS = [
    (answer, holds) for answer in ("approved", "declined", None) for holds in ("yes", "withdrawn", "replaced", None)
]


def waiting(desk: Desk, folder: Path) -> None:
    """She has said nothing about A."""


def declined(desk: Desk, folder: Path) -> None:
    """She said no."""
    record(desk, JOB, said(no=("A", "B")))


def withdrawn(desk: Desk, folder: Path) -> None:
    """She said yes and took it back."""
    record(desk, JOB, said("A", "B"))
    withdraw(desk, JOB, TakenBack(labels=("A", "B"), who="Maud Tilbrook", how="telephone"))


def replaced(desk: Desk, folder: Path) -> None:
    """She said yes and then no instead."""
    record(desk, JOB, said("A", "B"))
    record(desk, JOB, said(no=("A", "B"), instead=True))


def of_another_job(desk: Desk, folder: Path) -> None:
    """Another customer said yes to the very same work on her own machine."""
    other = take_in(desk, folder, BELT + KEEPERS)
    write_quote(desk, other, paper)
    record(desk, other, said("agreed", "A", "B"))


def let_go(desk: Desk, folder: Path) -> None:
    """Ordered on a yes, cancelled, and then taken back."""
    record(desk, JOB, said("A", "B"))
    (placed,) = place_orders(desk, [JOB]).orders
    cancel(desk, placed.number)
    withdraw(desk, JOB, TakenBack(labels=("A", "B"), who="Maud Tilbrook", how="telephone"))


def dearer_since(desk: Desk, folder: Path) -> None:
    """She said yes to 6.40; the newest revision asks for 7.40."""
    record(desk, JOB, said("A", "B"))
    risen = [row.replace("13.50,6.40", "15.50,7.40") for row in STONEGARTH]
    sheet(desk, folder, "stonegarth", "2026-03-04", risen)
    assert write_quote(desk, JOB, paper).frozen.quote.revision == 3


CASES: dict[str, Callable[[Desk, Path], None]] = {
    one.__name__: one for one in (waiting, declined, withdrawn, replaced, of_another_job, let_go, dearer_since)
}
# Whether an older yes covers a newer price is worked out in the core: the database knows of no revisions.
HELD_BY_DATABASE = [name for name in CASES if name != "dearer_since"]


@dataclass
class World:
    """A shop for each case, and a process to run commands in."""

    host: Host
    scratch: Path

    def case(self, name: str) -> Path:
        """The folder of the case, made the first time it is asked for."""
        folder = self.scratch / name
        if not folder.exists():
            shutil.copytree(self._begun(), folder)
            CASES[name](desk_at(folder, FOUND), folder)
        return folder

    def _begun(self) -> Path:
        folder = self.scratch / "begun"
        if not folder.exists():
            folder.mkdir()
            begin(folder)
        return folder

    def command(self, folder: Path, words: str) -> tuple[int, str]:
        """Exit code and what was told."""
        code = self.host.run(folder, f"{LATER:%Y-%m-%dT%H:%M}", tuple(shlex.split(words)))
        return code, self.host.told.read_text()


def begin(folder: Path) -> None:
    """The belt approved, ordered and here; the keepers quoted as revision 2."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "pellbrook", "2026-03-01", [PELLBROOK])
    sheet(desk, folder, "stonegarth", "2026-03-01", STONEGARTH)
    assert take_in(desk, folder, BELT) == JOB
    write_quote(desk, JOB, paper)
    record(desk, JOB, said("agreed"))
    place_orders(desk, [JOB])
    receive(desk_at(folder, FOUND), BELT_ORDER, Delivery(paper="D1", freight=Decimal("9.95")))
    change_job_from(desk_at(folder, FOUND), JOB, job_file(folder, BELT + KEEPERS))
    assert write_quote(desk_at(folder, FOUND), JOB, paper).frozen.quote.labels("add-on") == ("A", "B")


def answers_at_hand(connection: Connection) -> dict[str, int | None]:
    """Every answer somebody might point at: each to A, each of another job, one that nobody gave, none."""
    mine = {f"{one.answer} {one.holds}": at for at, one in approvals(connection, JOB) if one.label == "A"}
    other = {f"other {one.label}": at for at, one in approvals(connection, "2026-0002")}
    return {**mine, **other, "nobody's": 999, "none": None}


def forged(connection: Connection) -> FrozenBill:
    """A bill of line A, whatever she said of it."""
    newest = newest_quote(connection, JOB)
    assert newest is not None
    quote = newest.quote
    same = ("job", "revision", "shop", "customer", "machine", "complaint", "locale", "currency")
    fields: dict[str, Any] = {name: getattr(quote, name) for name in same}
    bill = Bill(
        **fields,
        number="B-2026-0009",
        made_at=LATER,
        made_by="Oona Brandeth",
        lines=tuple(line for line in quote.lines if line.label == "A"),
        approvals=(),
        total=quote.everything_total,
        declined=(),
        deposits=(),
        due=quote.everything_total.total,
    )
    return FrozenBill(bill=bill, paper="a bill", sha256=hashlib.sha256(b"a bill").hexdigest())
