"""Days and amounts inside sentences, written as pages and papers write them.

Sentences are made where the program decides, for files, commands and pages alike, with days as 2026-01-16 (ISO 8601)
and amounts as 104.50 USD. On a page that writes 'Jan 16, 2026' and '$104.50' beside them they read like another
program's. Files and `--json` keep the standard's form.
"""

import re
from datetime import datetime
from decimal import Decimal

from ..basics.currency import is_currency, minor_units
from ..basics.money import Money
from .amounts import clock_text, date_text, money_text

_DAY = r"(?<!such as )(?<![\w./'-])(?:19|20)\d\d-\d\d-\d\d(?![\w./'-]*\w)"
_CLOCK = r"(?P<clock>[ T]\d\d:\d\d(?![:\d]))"
_NOT_BEFORE = (
    "number|numbers|part|parts|code|codes|file|files|bears|bear|names|name|called|model|serial|ours|maker|paper"
)
_MOMENTS = re.compile(rf"(?P<day>{_DAY}){_CLOCK}")
_DAYS = re.compile(
    rf"(?P<before>(?<![\w'-])(?!(?:{_NOT_BEFORE})\b)(?:[a-z]+[:,]?|Here|On|By|Today) "
    r"|^(?=\S+(?:,| to| is| or| and) )|(?<=-\d\d), |\()"
    rf"(?P<day>{_DAY})(?!{_CLOCK})"
)
_AMOUNT = re.compile(r"(?<![\w.,'/-])(?P<amount>-?\d{1,12}(?:\.\d+)?) (?P<currency>[A-Z]{3})(?![\w-])")

_OF_NUMBERS = ("superseded by", "same part as", "serve for", "serve where", "contains", "tied to", "known under")
"""Sentences with these words speak of part numbers, one of which may look like a day; a number is never rewritten."""


def as_written(sentence: str, locale: str) -> str:
    """The sentence with its days and amounts as the locale writes them. What stands in quotes is somebody's and stays.

    A day is only what stands where a sentence has a day: after a word such as 'on', 'to' or 'leaves', or before a
    clock; not after a name, which is whose number it may be, nor after 'number' and the like, nor after 'such as',
    where it shows how a day is typed. An amount with more decimals than its currency has, a price for one piece, keeps
    its form.
    """
    if "-" in sentence:
        sentence = _MOMENTS.sub(lambda found: _moment(found, locale), sentence)
        if not any(words in sentence for words in _OF_NUMBERS):
            sentence = _DAYS.sub(lambda found: _day(found, locale), sentence)
    return _AMOUNT.sub(lambda found: _amount(found, locale), sentence)


def _moment(found: re.Match[str], locale: str) -> str:
    try:
        return clock_text(datetime.fromisoformat(found.group(0)), locale)
    except ValueError:
        return found.group(0)


def _day(found: re.Match[str], locale: str) -> str:
    try:
        return found["before"] + date_text(datetime.fromisoformat(found["day"]).date(), locale)
    except ValueError:
        return found.group(0)


def _amount(found: re.Match[str], locale: str) -> str:
    amount, currency = Decimal(found["amount"]), found["currency"]
    if not is_currency(currency) or -int(amount.as_tuple().exponent) != minor_units(currency):
        return found.group(0)
    return money_text(Money(amount=amount, currency=currency), locale)
