"""Goods counted against their order before they are taken in: what a scan counts for, or why it counts for nothing."""

from collections.abc import Mapping
from typing import Literal

from sqlalchemy import Connection

from ..basics.landed_cost import CostLine
from ..basics.order import Receipt
from ..basics.order_now import LineNow
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..basics.value import Value
from ..ordering.number_came import NumberCame, is_ordered_number
from ..ordering.order_now import good_pieces, open_pieces
from ..ordering.receiving import same_paper
from ..storage.orders import receipts
from .desk import Desk
from .number_on_part import number_on_part
from .order_changes import now_of


class CountLine(Value, frozen=True, kw_only=True):
    """A line to count, without any price. `keys`: keys of the numbers a scan counts for it at once; none where what
    stands on the part must be looked at first. `says`: the other number the supplier said he sends; blank: none."""

    line: int
    number: str
    maker_number: str
    description: str
    job: str
    label: str
    wanted: int
    left: int
    pack: int
    says: str
    keys: tuple[str, ...]


class CountSheet(Value, frozen=True, kw_only=True):
    """An order to count goods against. `before`: the papers taken in so far. `charges`: what the order names beside
    goods and freight, such as an entry fee, under the name a paper should have it by."""

    order: str
    supplier_name: str
    currency: str
    lines: tuple[CountLine, ...]
    before: tuple[str, ...]
    charges: tuple[str, ...] = ()

    @property
    def is_complete(self) -> bool:
        """Whether nothing is still to come."""
        return not any(line.left for line in self.lines)


class ForLine(Value, frozen=True, kw_only=True):
    """What a number would count as if it came for that line."""

    line: int
    number: str
    came: NumberCame


class Scanned(Value, frozen=True, kw_only=True):
    """`line`: the line one more piece was counted for; None: it is on no line and nothing was counted, `others` say
    what it would be for each. `what`: 'over' where the line had all of its pieces before. `number`: to be kept beside
    the count, because the supplier had said that he sends another; blank: none."""

    typed: str
    what: Literal["counted", "over", "on no line"]
    line: int | None = None
    number: str = ""
    others: tuple[ForLine, ...] = ()


def count_sheet(desk: Desk, number: str, but: str = "") -> CountSheet:
    """The lines of an order to count against. `but`: a paper that was only counted, taken in anew: what came on it is
    still to come here. Refuses an unknown order and one of which nothing stands."""
    with desk.store.reading() as connection:
        now, came = now_of(connection, number), _papers(connection, number, but)
    if now.cancelled:
        raise refused("order-was-cancelled", order=number)
    left = open_pieces(now, good_pieces(came))
    return CountSheet(
        order=number,
        supplier_name=now.order.supplier_name,
        currency=now.order.currency,
        lines=tuple(_line(one, left.get(one.line.line, 0)) for one in now.lines if one.pieces),
        before=tuple(one.paper for one in came),
        charges=tuple(dict.fromkeys(one.name for one in now.order.charges if _may_stand_on_a_paper(one))),
    )


def _may_stand_on_a_paper(one: CostLine) -> bool:
    return not (one.is_goods or one.is_freight) and one.amount.amount > 0


def scan(desk: Desk, number: str, typed: str, pieces: Mapping[int, int], but: str = "") -> Scanned:
    """What one scan counts for, with `pieces` counted so far: the line that bears the number and still lacks pieces.

    A number that is on no line counts for nothing: a person says for which line it came. `but` as for `count_sheet`.
    Refuses what is no number.
    """
    if not number_key(typed):
        raise refused("scan-not-read", found=typed[:30])
    with desk.store.reading() as connection:
        now = now_of(connection, number)
        left = open_pieces(now, good_pieces(_papers(connection, number, but)))
        standing = [one for one in now.lines if one.pieces]
        mine = [one for one in standing if is_ordered_number(one.line, typed)]
        if mine:
            return _counted(mine, left, typed, pieces)
        judged = [
            (one, *number_on_part(connection, desk, now.order, one, PartNumber(printed=typed))) for one in standing
        ]
    return Scanned(typed=typed, what="on no line", others=_best_first(judged, left))


def only_counted_paper(desk: Desk, number: str, paper: str) -> Receipt:
    """The delivery of that paper as it was only counted, for its prices to be said. Refuses a paper not taken in, and
    one whose prices were said."""
    with desk.store.reading() as connection:
        kept = receipts(connection, now_of(connection, number).order.number)
    found = same_paper(kept, paper)
    if found is None:
        known = ", ".join(one.paper for one in kept) or "none"
        raise refused("no-such-paper", order=number, found=paper, known=known)
    if not found.only_counted:
        raise refused("paper-not-only-counted", order=number, found=found.paper)
    return found


def _papers(connection: Connection, number: str, but: str) -> list[Receipt]:
    kept = receipts(connection, number)
    same = same_paper(kept, but) if but else None
    return [one for one in kept if one is not same]


def _line(one: LineNow, left: int) -> CountLine:
    placed = one.line
    says = "" if is_ordered_number(placed, one.number) else one.number
    keys = {number_key(placed.supplier_number), number_key(placed.maker_number)} - {""}
    return CountLine(
        line=placed.line,
        number=placed.supplier_number,
        maker_number=placed.maker_number if placed.maker_number != placed.supplier_number else "",
        description=placed.description,
        job=placed.job,
        label=placed.label,
        wanted=one.pieces,
        left=left,
        pack=placed.pack,
        says=says,
        keys=() if says else tuple(sorted(keys)),
    )


def _counted(mine: list[LineNow], left: Mapping[int, int], typed: str, pieces: Mapping[int, int]) -> Scanned:
    lacking = [one for one in mine if pieces.get(one.line.line, 0) < left.get(one.line.line, 0)]
    one = (lacking or mine)[0]
    other = "" if is_ordered_number(one.line, one.number) else typed
    return Scanned(typed=typed, what="counted" if lacking else "over", line=one.line.line, number=other)


def _best_first(judged: list[tuple[LineNow, str, NumberCame]], left: Mapping[int, int]) -> tuple[ForLine, ...]:
    order = ("same part", "another part", "not wanted", "as ordered")
    found = sorted(judged, key=lambda one: (order.index(one[2].came), one[0].line.line not in left, one[0].line.line))
    return tuple(ForLine(line=line.line.line, number=number, came=came) for line, number, came in found)
