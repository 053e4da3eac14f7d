"""One delivery as it was taken in: what to do about the goods, what to ask about its amounts, what differs."""

from collections.abc import Iterator

from sqlalchemy import Connection

from ..basics.money import Money
from ..basics.order import Difference, Receipt
from ..basics.order_now import OrderNow
from ..basics.part_number import PartNumber
from ..basics.problem import refused
from ..basics.value import Value
from ..ordering.claims import differences
from ..ordering.number_came import ties_now
from ..ordering.order_now import good_pieces, open_pieces
from ..ordering.receiving import freight_shares, same_paper
from ..storage.orders import receipts
from .desk import Desk
from .number_on_part import number_on_part
from .order_changes import now_of
from .receipt_to_do import money_to_do, numbers_to_do, over_to_do
from .receive import later_charge


class ReceiptTold(Value, frozen=True, kw_only=True):
    """`goods`: what to do about what came, for everybody. `amounts`: what to ask about what was charged; it names
    costs. `differs`: what of this paper is not as ordered. `left`: pieces of the order still to come by line."""

    now: OrderNow
    receipt: Receipt
    goods: tuple[str, ...]
    amounts: tuple[str, ...]
    differs: tuple[Difference, ...]
    left: dict[int, int]
    freight_shares: dict[int, Money]


def receipt_told(desk: Desk, number: str, paper: str) -> ReceiptTold:
    """The delivery of that paper. Refuses a paper that was not taken in, or was set aside."""
    with desk.store.reading() as connection:
        now, papers = now_of(connection, number), receipts(connection, number)
        found = same_paper(papers, paper)
        if found is None:
            known = ", ".join(one.paper for one in papers) or "none"
            raise refused("no-such-paper", order=number, found=paper, known=known)
        so_far = papers[: papers.index(found) + 1]
        every = differences(now, so_far, later_charge(connection, desk, now.order))
        return ReceiptTold(
            now=now,
            receipt=found,
            goods=(
                *numbers_to_do(now, found),
                *_tied_since(connection, desk, now, found),
                *over_to_do(now, so_far[:-1], found),
            ),
            amounts=tuple(money_to_do(now, so_far, found)),
            differs=tuple(one for one in every if one.paper == found.paper),
            left=open_pieces(now, good_pieces(papers)),
            freight_shares=freight_shares(now.order, found),
        )


def _tied_since(connection: Connection, desk: Desk, now: OrderNow, receipt: Receipt) -> Iterator[str]:
    """Of what was taken in as another part, what the table calls the same part by now: a paper is judged once."""
    for came in receipt.lines:
        line = now.line(came.line)
        if line is None or came.came != "another part":
            continue
        _, judged = number_on_part(connection, desk, now.order, line, PartNumber(printed=came.number))
        if judged.came == "same part":
            yield ties_now(line.line, came.number, receipt.paper, judged.why)
