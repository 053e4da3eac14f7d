"""A job as it stands now: its newest quote with the answers, what is on order for each line, and what came."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection

from ..basics.alarm import Decision
from ..basics.job import Job
from ..basics.money import Money
from ..basics.order import Receipt
from ..basics.order_now import LineNow, OrderNow
from ..basics.promise import Promise
from ..basics.quote import QuoteLine
from ..ordering.order_now import good_pieces, order_now
from ..ordering.promised import days_of
from ..quoting.deposit_held import deposit_held
from ..storage.after_order import events, promises
from ..storage.after_quote import bill_of, deposits
from ..storage.jobs import job as stored_job
from ..storage.orders import orders, receipts
from ..storage.quotes import newest_quote
from .answers import Standing, standing_of
from .decided import decisions_now


@dataclass(frozen=True)
class OnOrder:
    """A line of an order for the job: the whole order, the line as it stands, every day said of it, good pieces that
    came, and the deliveries of the order."""

    order: OrderNow
    line: LineNow
    days: tuple[Promise, ...]
    came: int
    receipts: tuple[Receipt, ...]

    @property
    def is_complete(self) -> bool:
        """Whether all that is wanted has come."""
        return self.came >= self.line.pieces


@dataclass(frozen=True)
class JobNow:
    """`on_order` by label; cancelled lines are in none. `decisions`: the last of each label."""

    job: Job
    standing: Standing
    on_order: Mapping[str, tuple[OnOrder, ...]]
    decisions: Mapping[str, Decision]
    deposit: Money

    @property
    def approved(self) -> tuple[QuoteLine, ...]:
        """The approved lines."""
        words = self.standing.words()
        return tuple(line for line in self.standing.quote.lines if words[line.label] == "approved")

    @property
    def parts(self) -> tuple[QuoteLine, ...]:
        """The approved lines that need a part."""
        return tuple(line for line in self.approved if line.part)

    def left(self, line: QuoteLine) -> int:
        """Pieces of an approved line that stand on no order yet."""
        return max(line.quantity - sum(one.line.pieces for one in self.on_order.get(line.label, ())), 0)


def job_now(connection: Connection, number: str) -> JobNow | None:
    """The job as it stands; None where nothing waits for it any more: no quote yet, or billed already."""
    job = stored_job(connection, number)
    if newest_quote(connection, number) is None or bill_of(connection, number) is not None:
        return None
    standing = standing_of(connection, number)
    part_of = {line.label: line.part for line in standing.quote.lines}
    on_order: dict[str, tuple[OnOrder, ...]] = {}
    for one in lines_on_order(connection, number):
        label = one.line.line.label
        if part_of.get(label) == one.line.line.part:
            on_order[label] = (*on_order.get(label, ()), one)
    return JobNow(
        job=job,
        standing=standing,
        on_order=on_order,
        decisions=decisions_now(connection, standing.quote),
        deposit=deposit_held(deposits(connection, number), standing.quote.currency),
    )


def lines_on_order(connection: Connection, number: str) -> list[OnOrder]:
    """Every line of every order for the job that is not cancelled, oldest order first."""
    said = promises(connection, number)
    found = []
    for order in orders(connection, number):
        now = order_now(order, events(connection, order.number))
        came = receipts(connection, order.number)
        found += [_on_order(now, line, said, came) for line in now.lines if line.line.job == number and line.pieces]
    return found


def _on_order(now: OrderNow, line: LineNow, said: Sequence[Promise], came: Sequence[Receipt]) -> OnOrder:
    good = good_pieces(came).get(line.line.line, 0)
    days = days_of(line, now.order, said)
    return OnOrder(order=now, line=line, days=days, came=good, receipts=tuple(came))
