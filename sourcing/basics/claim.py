"""What is claimed of a supplier for goods that did not come as ordered; and what waits to go back to him."""

from datetime import date, datetime
from typing import Literal

from .money import Money
from .order import Difference
from .value import Value


class Claim(Value, frozen=True, kw_only=True):
    """The paper for the supplier: what did not come as ordered, and what is asked for it. Nothing of the customer.

    `lines` are the differences he is asked about; those with an amount above nothing are claimed and sum to `claimed`,
    in his currency. `told` are differences that cost nothing, are in the shop's favour or are only asked about.
    `credited` is what he gave back already for pieces at fault.
    """

    order: str
    ordered_on: date
    supplier_name: str
    supplier_address: tuple[str, ...]
    shop_name: str
    shop_address: tuple[str, ...]
    shop_telephone: str
    shop_email: str
    currency: str
    made_at: datetime
    made_by: str
    lines: tuple[Difference, ...]
    told: tuple[Difference, ...]
    claimed: Money
    credited: Money

    @property
    def still_claimed(self) -> Money:
        """What is left to be given back."""
        return self.claimed - self.credited


class GoodsBackOpen(Value, frozen=True, kw_only=True):
    """Old parts (cores) or goods of one line that wait: to be sent back, or sent and not yet credited.

    `since`: the day they came, or were sent. `due`: the last day the supplier takes them, by his terms; None: his terms
    name no day, or it is he who has to act. `expected`: what he should give back, in his currency; None: not known.
    `fee`: his restocking charge by his terms, already off `expected`; None: none, or not known. `why` in words.
    `may`: good pieces nobody needs, which can go back if the shop wants.
    """

    order: str
    line: int
    job: str
    kind: Literal["core", "goods"]
    waits: Literal["to be sent", "for credit"]
    pieces: int
    supplier: str
    supplier_name: str
    number: str
    why: str
    since: date
    due: date | None
    expected: Money | None
    fee: Money | None = None
    may: bool = False
