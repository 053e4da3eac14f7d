"""In which order candidates are shown to a person: likely rows, then what is worth most, all parts of a row together.

Rows none of whose parts is likely come after all that are: a clerk who works down the list reaches the yeses first.

A row is worth what its likeliest part is worth: price for one piece times how often that part was asked for, by lines
of jobs and by days on which it was looked up. A part nobody ever asked for counts as a tenth of one that was asked for
once, so that it comes later and still in order of price (rule of this program). Without a price nothing can be said of
the worth: such rows come after all others, those asked for most often first. The score decides only between rows worth
the same.
"""

from collections.abc import Iterable
from decimal import Decimal

from ..basics.value import Value

NEVER_ASKED = Decimal("0.1")
"""What a part counts as that no job and no look-up has asked for."""


class InQueue(Value, frozen=True, kw_only=True):
    """A candidate to be put in order. `row` is the same for all parts of one row; prices are in one currency.

    `likely`: it is likelier right than wrong, and nothing speaks against it.
    """

    candidate: int
    row: int
    price: Decimal | None
    asked: int
    score: float
    rank: int
    likely: bool = True

    @property
    def worth(self) -> Decimal | None:
        """See `worth`."""
        return worth(self.price, self.asked)


def worth(price: Decimal | None, asked: int) -> Decimal | None:
    """Price times asked, not rounded, in the price's currency; None without a price, which is not zero."""
    return None if price is None else price * (asked or NEVER_ASKED)


def in_order(waiting: Iterable[InQueue]) -> list[InQueue]:
    """Likely rows first, of those most worth first, rows whole, likeliest part of each row first.

    The order given does not matter.
    """
    rows: dict[int, list[InQueue]] = {}
    for one in sorted(waiting, key=lambda one: (one.rank, -one.score, one.candidate)):
        rows.setdefault(one.row, []).append(one)
    return [one for some in sorted(rows.values(), key=_place) for one in some]


def _place(row: list[InQueue]) -> tuple[bool, bool, Decimal, int, float, int]:
    first = row[0]
    value = first.worth
    unlikely = not any(one.likely for one in row)
    return unlikely, value is None, -(value or Decimal(0)), -first.asked, -first.score, first.candidate
