"""Exchange rates that were taken back: how the ledger has them, and the question where one of them is typed again."""

import re
from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal

from sqlalchemy import Connection

from ..basics.deed import Deed
from ..basics.problem import Problem, problem
from ..basics.rate import Rate
from ..storage.deeds import deeds
from ..storage.shop import rates

SUBJECT, WITHDRAW = "rates", "withdraw rate"
"""What deeds about rates are entered under, and the one that takes a rate back."""

WORDS = re.compile(r"1 ([A-Z]{3}) = ([0-9.]+) ([A-Z]{3}) on (\d{4}-\d\d-\d\d) \(")
"""How the entry of such a deed begins (`Rate.words`)."""


def taken_back(connection: Connection) -> list[Deed]:
    """The deeds that took rates back, oldest first."""
    return [one for one in deeds(connection, SUBJECT) if one.deed == WITHDRAW]


def come_back(connection: Connection, new: Sequence[Rate]) -> Iterator[Problem]:
    """Which of the new rates were taken back before: a file that still has one would put it in again in silence.

    Nothing of one that was kept again since, for somebody was sure of it.
    """
    there = {one for into in {one.into for one in new} for one in map(_key, rates(connection, into).rates)}
    gone = {_key_in(one.detail): one for one in taken_back(connection)}
    for rate in new:
        deed = gone.get(_key(rate))
        if deed is not None and _key(rate) not in there:
            at = f"{deed.at:%Y-%m-%d}"
            yield problem("rate-comes-back", found=rate.words(), who=deed.who, at=at)


def _key(rate: Rate) -> tuple[str, str, date, Decimal]:
    return rate.currency, rate.into, rate.dated, rate.rate


def _key_in(detail: str) -> tuple[str, str, date, Decimal] | None:
    found = WORDS.match(detail)
    return (found[1], found[3], date.fromisoformat(found[4]), Decimal(found[2])) if found else None
