"""What of a door does not depend on the goods, worked out once: rates in minor units, what each line pays."""

from decimal import Decimal
from functools import lru_cache

from ..basics.currency import minor_units
from ..basics.freight import Oversize
from ..basics.money import Money, from_minor
from ..basics.terms import Terms
from .door import Door
from .duty import duty_percents
from .minor import counted, whole


class Prepared:
    """A door made ready to work out many lines. `here` turns the supplier's minor units into the shop's."""

    def __init__(self, door: Door) -> None:
        terms = door.terms
        self.door: Door = door
        self.terms: Terms = terms
        self.factor: Decimal = door.rate.rate.scaleb(minor_units(door.currency) - minor_units(terms.currency))
        self.discount: Decimal = terms.discount_percent
        self.oversize: Oversize | None = terms.freight.oversize if terms.freight else None
        self.per_line: int = self.here(counted(terms.handling_per_line, terms.currency))
        self._duties: dict[tuple[str, str], tuple[Decimal, ...]] = {}

    def here(self, amount: int) -> int:
        """Minor units of the supplier's currency in those of the shop's, rounded once."""
        return amount if self.factor == 1 else whole(amount * self.factor)

    def duties(self, origin: str, tariff_code: str) -> tuple[Decimal, ...]:
        """The duty rates that could hold, kept for the next line of that origin and code."""
        known = self._duties.get((origin, tariff_code))
        if known is None:
            known = self._duties[origin, tariff_code] = duty_percents(origin, tariff_code, self.terms)
        return known

    def money(self, amount: int) -> Money:
        """Minor units of the shop's currency as money."""
        return from_minor(amount, self.door.currency)


@lru_cache(maxsize=256)
def prepared(door: Door) -> Prepared:
    """The door made ready; the same door is made ready once."""
    return Prepared(door)
