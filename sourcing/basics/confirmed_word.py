"""A supplier's word on the price or number of goods on order, which is newer than the sheet they were ordered by."""

from datetime import datetime

from .later_word import is_said_of
from .offer import Offer
from .value import Value


class ConfirmedWord(Value, frozen=True, kw_only=True):
    """What a supplier confirmed otherwise than it was ordered by his sheet. `words` say who confirmed what, when, of
    which order. A sheet dated after the day of `said_at` takes over again."""

    supplier: str
    supplier_number: str
    maker_number: str
    said_at: datetime
    words: str

    def is_about(self, offer: Offer) -> bool:
        """Whether it is about these goods and no older than the sheet they stand on."""
        return is_said_of(offer, self.supplier, (self.supplier_number, self.maker_number), self.said_at)
