"""The quote as a message for a telephone: what it comes to, each extra line, how long it holds, how to answer.

It stays under 480 characters (about three text messages) for a usual quote with three add-ons. Where it is longer,
the machine and then the day of arrival are left out; an add-on, an amount, the deposit, the validity and the way to
answer never are, and no title is cut: the message is then as long as it is.
"""

import re

from ..basics.quote import AddOnPrice, Quote, QuoteLine
from .amounts import date_text, money_text
from .plain_text import shown
from .quote_words import add_on_lines, arrival_words, deposit_words, taxed

LONGEST = 480
"""Characters aimed at: three parts of 153 and a little; a part of a long message holds 153 (3GPP TS 23.038, 23.040,
GSM 7 bit alphabet, from memory)."""


def quote_message(quote: Quote) -> str:
    """The message, lines parted by line ends, none at its end. Amounts are with tax. Nothing is sent by the program."""
    machine = f"Machine: {quote.machine.description}."
    arrival = f"Parts expected: {arrival_words(quote)}."
    for left_out in ((), (machine,), (machine, arrival)):
        text = "\n".join(_plain(line) for line in _lines(quote, machine, arrival) if line and line not in left_out)
        if len(text) <= LONGEST:
            break
    return text


def _lines(quote: Quote, machine: str, arrival: str) -> list[str]:
    locale, paid = quote.locale, " with tax" if taxed(quote) else ""
    extras = add_on_lines(quote)
    everything = money_text(quote.everything_total.total, locale)
    return [
        f"{quote.shop.name}: quote {quote.job}, revision {quote.revision}.",
        machine,
        f"Work you asked for: {money_text(quote.agreed_total.total, locale)}{paid}.",
        *(["Extra work we found, each your choice:"] if extras else []),
        *(_extra(line, price, locale) for line, price in extras),
        f"With all of it: {everything}." if extras else "",
        arrival,
        deposit_words(quote.deposit, locale) if quote.deposit else "",
        f"Valid to {date_text(quote.valid_to, locale)}. Part numbers, terms and cautions: see the paper.",
        f"Please answer yes or no to the work you asked for{' and to each letter' if extras else ''}. "
        "No answer is not a yes.",
    ]


def _extra(line: QuoteLine, price: AddOnPrice, locale: str) -> str:
    special = ", ordered specially" if line.special_order else ""
    back = ", your old part goes back to the supplier" if line.core_words else ""
    return f"{line.label} {line.title}: {money_text(price.price, locale)}{special}{back}"


def _plain(line: str) -> str:
    """On one line, harmless, and with plain blanks: one no-break blank would make a telephone send many more parts."""
    return re.sub(r"\s+", " ", shown(line)).strip()
