"""A purchase order as lists show it: as it stands, what is still to come, by when."""

from datetime import date
from typing import Literal

from .order_now import OrderNow
from .value import Value


class OrderRow(Value, frozen=True, kw_only=True):
    """`left`: pieces still to come by line number. `due`: the last day of all that is still to come, by the last word,
    `first_due` the earliest such day of a line; None where nothing is to come or no day is known. `papers` were taken
    in; of those `only_counted` nobody said yet what they charge."""

    now: OrderNow
    left: dict[int, int]
    due: date | None
    first_due: date | None
    papers: tuple[str, ...] = ()
    only_counted: tuple[str, ...] = ()

    @property
    def number(self) -> str:
        """The order's number."""
        return self.now.order.number

    @property
    def serial(self) -> tuple[int, ...]:
        """Year and running number, to sort by."""
        return tuple(int(part) for part in self.number.split("-")[1:])

    @property
    def jobs(self) -> tuple[str, ...]:
        """The jobs it has goods for."""
        return tuple(sorted({line.job for line in self.now.order.lines}))

    @property
    def is_open(self) -> bool:
        """Whether something is still to come."""
        return bool(self.left)

    def is_late(self, today: date) -> bool:
        """Whether something of it should have been here before today."""
        return self.first_due is not None and self.first_due < today

    def word(self, today: date) -> Literal["late", "on its way", "not confirmed", "all came", "cancelled"]:
        """Where it stands."""
        if self.now.cancelled:
            return "cancelled"
        if not self.left:
            return "all came"
        return "late" if self.is_late(today) else "on its way" if self.now.confirmed else "not confirmed"
