"""A supplier's word on goods he has on order for us, which counts before what an older sheet of his says of them."""

from datetime import date, datetime

from .offer import Offer
from .part_number import number_key
from .value import Value


class LaterWord(Value, frozen=True, kw_only=True):
    """The days a supplier last named for a number of his. `pieces` were on order when he said it.

    A sheet dated after the day of `said_at` takes over again. `words` say who said what, when, of which order.
    """

    supplier: str
    supplier_number: str
    maker_number: str
    pieces: int
    earliest: date
    latest: date
    said_at: datetime
    words: str

    def is_about(self, offer: Offer) -> bool:
        """Whether it is about these goods and no older than the sheet they stand on; numbers as keys, for both write
        them as they please. Where only one of the two names a maker's number, his own number decides."""
        return is_said_of(offer, self.supplier, (self.supplier_number, self.maker_number), self.said_at)


def is_said_of(offer: Offer, supplier: str, numbers: tuple[str, str], said_at: datetime) -> bool:
    """Whether what a supplier said of his and the maker's number is about these goods, no older than their sheet."""
    supplier_number, maker_number = numbers
    if offer.supplier != supplier or offer.source.sheet_date > said_at.date():
        return False
    if number_key(offer.supplier_number) != number_key(supplier_number):
        return False
    both = (offer.maker_number, maker_number)
    return not all(both) or number_key(both[0]) == number_key(both[1])
