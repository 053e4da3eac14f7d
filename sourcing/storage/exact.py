"""Column types that keep what they are given: exact decimals as scaled integers, moments as ISO 8601 text.

Databases differ in what they do with decimals (SQLite keeps binary floats), so an amount is stored as a whole
number of millionths, or of a finer part, and no digit is ever rounded away on the way in.
"""

from datetime import datetime
from decimal import Decimal

from sqlalchemy import BigInteger, Text
from sqlalchemy.engine import Dialect
from sqlalchemy.exc import DontWrapMixin
from sqlalchemy.types import TypeDecorator

PRICE_PLACES = 6
"""Decimals of an amount or price: a price per thousand of a cheap screw still fits."""

RATE_PLACES = 10
"""Decimals of an exchange rate: 1 IDR is about 0.00006 USD."""

LARGEST = 2**63 - 1
SHOWN_PLACES = 2
SHOWN_UNIT = 10 ** (PRICE_PLACES - SHOWN_PLACES)


class DigitsLost(DontWrapMixin, ValueError):
    """A number that can't be stored without losing digits, or is too large, or is not finite."""

    def __init__(self, value: Decimal, places: int) -> None:
        super().__init__(f"{value} can't be stored exactly with {places} decimals")
        self.value = value
        self.places = places


def scaled(value: Decimal, places: int) -> int:
    """The value as a whole number of units of ten to the minus `places`. Raises DigitsLost where that is not exact."""
    if not isinstance(value, Decimal):
        raise TypeError(f"{value!r} is {type(value).__name__}; only Decimal is stored as an exact number")
    if not value.is_finite() or value.adjusted() > 19:
        raise DigitsLost(value, places)
    numerator, denominator = value.as_integer_ratio()
    whole, rest = divmod(numerator * int(10**places), denominator)
    if rest or abs(whole) > LARGEST:
        raise DigitsLost(value, places)
    return whole


def unscaled(stored: int, places: int) -> Decimal:
    """The Decimal back: as many decimals as it needs, at least two (12.5 comes back as 12.50)."""
    if places == PRICE_PLACES and stored % SHOWN_UNIT == 0:  # nearly every price; the loop takes twice as long
        return Decimal(stored // SHOWN_UNIT).scaleb(-SHOWN_PLACES)
    while places > SHOWN_PLACES and stored % 10 == 0:
        stored, places = stored // 10, places - 1
    return Decimal(stored).scaleb(-places)


class Exact(TypeDecorator[Decimal]):
    """A Decimal with up to `places` decimals, stored as a 64-bit integer. A lost digit raises DigitsLost."""

    impl = BigInteger
    cache_ok = True

    def __init__(self, places: int = PRICE_PLACES) -> None:
        super().__init__()
        self.places = places

    def process_bind_param(self, value: Decimal | None, dialect: Dialect) -> int | None:
        """To the database; None stays None (no price, never zero)."""
        return None if value is None else scaled(value, self.places)

    def process_result_value(self, value: int | None, dialect: Dialect) -> Decimal | None:
        """From the database."""
        return None if value is None else unscaled(value, self.places)


class Moment(TypeDecorator[datetime]):
    """A datetime as ISO 8601 text exactly as given: the shop's local time, without a zone."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:
        """To the database."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: str | None, dialect: Dialect) -> datetime | None:
        """From the database."""
        return None if value is None else datetime.fromisoformat(value)
