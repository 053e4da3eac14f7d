"""What a supplier last said of ordered goods: it is newer than his sheet, and holds for whoever buys the same there."""

from collections.abc import Iterable, Mapping

from ..basics.later_word import LaterWord
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..basics.promise import Promise
from .promised import AT_THE_EARLIEST, days_of


def words_on_order(now: OrderNow, promises: Iterable[Promise], came: Mapping[int, int]) -> tuple[LaterWord, ...]:
    """The days the supplier last named for each line, cancelled ones too: he has the goods no sooner for that.

    `promises` are those kept for its jobs: only what names the order is his word, and the shop's own reckoning is none.
    `came`: good pieces by line; of a line that came whole nothing is left to wait for.
    """
    named = [one for one in promises if one.order == now.order.number]
    waited_for = [line for line in now.lines if not 0 < line.pieces <= came.get(line.line.line, 0)]
    return tuple(word for line in waited_for if (word := _word(now, line, named)) is not None)


def newest_words(words: Iterable[LaterWord]) -> tuple[LaterWord, ...]:
    """Of each number of each supplier the word said last."""
    last: dict[tuple[str, str, str], LaterWord] = {}
    for one in sorted(words, key=lambda one: one.said_at):
        last[one.supplier, number_key(one.supplier_number), number_key(one.maker_number)] = one
    return tuple(last.values())


def _word(now: OrderNow, line: LineNow, promises: Iterable[Promise]) -> LaterWord | None:
    order, placed = now.order, line.line
    his = [one for one in days_of(line, order, promises) if one.said_by not in ("", order.shop_name)]
    if not his:
        return None
    last = his[-1]
    days = f"{last.latest}" if last.earliest == last.latest else f"{last.earliest} to {last.latest}"
    at_least = f" {AT_THE_EARLIEST}" if last.words.startswith(AT_THE_EARLIEST) else ""
    return LaterWord(
        supplier=order.supplier,
        supplier_number=placed.supplier_number,
        maker_number=placed.maker_number,
        pieces=placed.ordered,
        earliest=last.earliest,
        latest=last.latest,
        said_at=last.said_at,
        words=f"{last.said_by} said on {last.said_at.date()} of order {order.number}: here {days}{at_least}",
    )
