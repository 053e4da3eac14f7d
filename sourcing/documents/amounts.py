"""Money, dates and per cent as a paper shows them. Decimal from end to end, never binary float.

Amounts carry the currency's minor unit by ISO 4217 (`basics.currency.minor_units`). Babel's own number of decimals
follows cash practice and differs for some currencies, so only the pattern, the symbols and the separators are Babel's.
"""

import copy
from datetime import date, datetime
from decimal import Decimal
from functools import cache, lru_cache

from babel import Locale
from babel.dates import format_date, format_skeleton, format_time
from babel.numbers import NumberPattern, format_decimal

from ..basics.currency import minor_units
from ..basics.locales import known_locale
from ..basics.money import Money
from ..basics.problem import refused


@cache
def paper_locale(locale: str) -> Locale:
    """The locale of that name ('en_US' or 'en-US'). Refuses a name that is no locale: the owner typed it."""
    known = known_locale(locale)
    if known is None:
        raise refused(
            "settings-contradict", found=f"'{locale}' is not a known locale; write one such as en_US or en_GB"
        )
    return known


def page_language(locale: str) -> str:
    """The `lang` of a paper as BCP 47. The words of the papers are English: with another language's locale the
    numbers and dates are written its way, but the page is still announced as English, or a screen reader would
    read English words by that language's sounds (WCAG 2.2, success criterion 3.1.1).
    """
    known = paper_locale(locale)
    return str(known).replace("_", "-") if known.language == "en" else "en"


@lru_cache(maxsize=4096)
def money_text(money: Money, locale: str) -> str:
    """The amount as the locale writes it ('$166.60'), rounded half up to the currency's ISO minor unit.

    Remembered: a paper shows many amounts twice or more, and writing one takes longer than the line around it.
    """
    pattern = _pattern(locale, minor_units(money.currency))
    text: str = pattern.apply(
        money.rounded().amount, paper_locale(locale), currency=money.currency, currency_digits=False
    )
    return text


@cache
def _pattern(locale: str, decimals: int) -> NumberPattern:
    pattern: NumberPattern = copy.copy(paper_locale(locale).currency_formats["standard"])
    pattern.frac_prec = (decimals, decimals)
    return pattern


def date_text(day: date, locale: str) -> str:
    """The day with the month in letters where the locale does so ('Jan 16, 2026'): never 01/02 against 02/01."""
    return format_date(day, format="medium", locale=paper_locale(locale))


def clock_text(moment: datetime, locale: str) -> str:
    """The day and the time of it to the minute ('Jan 16, 2026, 10:15 AM')."""
    return f"{date_text(moment, locale)}, {format_time(moment, format='short', locale=paper_locale(locale))}"


def month_text(month: str, locale: str) -> str:
    """A month such as '2026-01' in words: 'January 2026'. What is none stays as it is, such as a heading."""
    try:
        day = date.fromisoformat(f"{month}-01")
    except ValueError:
        return month
    return str(format_skeleton("yMMMM", day, locale=paper_locale(locale)))


def decimal_text(value: Decimal, locale: str) -> str:
    """An exact number, with all its decimals and none added ('0.5', '1,250')."""
    return format_decimal(value, locale=paper_locale(locale), decimal_quantization=False)


def percent_text(percent: Decimal | None) -> str:
    """'6.5 %', with the decimals it has; 'none' where there is no base to take a per cent of."""
    return "none" if percent is None else f"{percent:f} %"
