"""Leaks that are no step after the quote: those the quoted margin holds already, and those beside every margin."""

from collections.abc import Sequence

from ..basics.margin import When
from ..basics.margin_facts import QuotedLine
from . import names
from .bought import Bought
from .going_back import NOTHING
from .line import Change, Told
from .minor import part_of, shared
from .quoted import capped_from


def beside_of(told: Told, places: int) -> list[Change]:
    """Every leak of a line that is no step after the quote, but for freight, which is the job's."""
    found: list[Change] = []
    if told.line and told.line.behind and not told.left_off:  # what is not billed lost nothing to a list price
        _cap(told.line, told.line.behind.price_rule, places, found)
    for one in told.bought:
        ordered = one.ordered
        if ordered.drive or ordered.small:
            _fees(one, found)
        if ordered.surplus or one.received:
            _surplus(one, found)
        if one.came.bad:
            _bad(one, found)
        if one.back is not NOTHING:
            _back(one, found)
    return found


def not_billed(carriers: Sequence[int], quoted: Sequence[int], billed: int) -> list[Change | None]:
    """Freight as ordered that the customer was not billed for, shared over the lines it came with.

    Freight above what the quote counted with is left out: that is a step after the quote.
    """
    paid = min(sum(carriers), sum(quoted))
    if paid <= billed:
        return [None] * len(carriers)
    words, figures = "inbound freight {0}, billed {1}", (paid, billed)
    return [
        Change(name=names.NOT_BILLED, amount=-share, words=words, figures=figures, when="within the quote")
        if share
        else None
        for share in shared(paid - billed, carriers)
    ]


def _cap(line: QuotedLine, rule: str, places: int, found: list[Change]) -> None:
    cap = capped_from(rule, places)
    if cap:
        words = "the bands make it {0} each, the list price is {1}"
        _lost(found, (names.CAP, "within the quote"), (cap[0] - cap[1]) * line.quantity, words, *cap)


def _lost(found: list[Change], kind: tuple[str, When], amount: int, words: str, *figures: int | str) -> None:
    if amount:
        found.append(Change(name=kind[0], amount=-amount, words=words, figures=figures, when=kind[1]))


def _fees(one: Bought, found: list[Change]) -> None:
    drive, small = one.ordered.drive, one.ordered.small
    if drive:
        words, figures = "its share of fetching {1}: {0}", (drive, one.number)
        found.append(Change(name=names.DRIVE, amount=-drive, words=words, figures=figures, when="within the quote"))
    if small and one.came.other is None:
        words, figures = "its share of the small-order fee of {1}: {0}", (small, one.number)
        found.append(Change(name=names.SMALL, amount=-small, words=words, figures=figures, when="within the quote"))


def _surplus(one: Bought, found: list[Change]) -> None:
    amount = one.received.surplus if one.received else one.ordered.surplus
    if amount:
        pieces = one.came.good if one.received else one.ordered.pieces
        spare = str(pieces - one.ordered.line.needed)
        words = "{0} of {1} pieces lie on the shelf, at cost {2}"
        _lost(found, (names.SURPLUS, "beside the margin"), amount, words, spare, str(pieces), amount)


def _bad(one: Bought, found: list[Change]) -> None:
    """Charged and no use; what of it was credited or will never be is told under its own name."""
    came, back = one.came, one.back
    pieces = came.pieces - came.good
    still_open = max(0, pieces - back.credited - back.missed)
    amount = part_of(came.bad, still_open, pieces) if pieces else came.bad
    words = "{0} charged on {1} for pieces that are damaged, wrong or did not come: the supplier's to make good"
    _lost(found, (names.BAD, "beside the margin"), amount, words, amount, one.number)


def _back(one: Bought, found: list[Change]) -> None:
    back = one.back
    for name, amount, words in (
        (names.RESTOCKED, back.goods_fee, "fee and freight {0} for what went back of {1}"),
        (names.RETURN_SHORT, back.goods_short, "credited {0} less than was charged on {1}"),
        (names.RETURN_MISSED, back.goods_missed, "{0} charged on {1} for useless pieces that can't go back any more"),
        (names.CORE_LOST, back.core_lost, "old part of {1}: {0} of the core charge will not come back"),
        (names.CORE_COSTS, back.core_fee, "old part of {1}: fee and freight {0}"),
    ):
        _lost(found, (name, "beside the margin"), amount, words, amount, one.number)
