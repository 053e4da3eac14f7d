"""The desk an action works at: the open store, the moment, and who stands there."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime

from sqlalchemy import Connection

from ..basics.confirmed_word import ConfirmedWord
from ..basics.deed import Deed
from ..basics.later_word import LaterWord
from ..basics.problem import Refused
from ..basics.rate import Rates
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..landed_cost.date_checks import check_zone
from ..landed_cost.door import Door
from ..storage.database import Store, open_store
from ..storage.deeds import record
from ..storage.shop import rates, settings_on, terms_on
from .confirmed_since import confirmed_since
from .told_since import told_since


@dataclass(frozen=True)
class Desk:
    """`at` is local time without a zone; every action takes its today from it. `who` signs the deeds."""

    store: Store
    at: datetime
    who: str

    @contextmanager
    def writing(self, deed: str) -> Iterator["Pen"]:
        """One transaction for one deed: all of it is kept, or nothing."""
        with self.store.writing() as connection:
            yield Pen(connection=connection, desk=self, deed=deed)


def open_desk(address: str, at: datetime, who: str) -> Desk:
    """A desk at the shop's data: a file, made if it is not there, or a database address."""
    return Desk(store=open_store(address), at=at, who=who)


@dataclass(frozen=True)
class Pen:
    """An open transaction that knows who writes."""

    connection: Connection
    desk: Desk
    deed: str

    def note(self, subject: str, detail: str) -> None:
        """Enter the deed in the ledger, in the same transaction as what it did."""
        entry = Deed(at=self.desk.at, who=self.desk.who, deed=self.deed, subject=subject, detail=detail)
        record(self.connection, entry)


@dataclass(frozen=True)
class ShopNow:
    """Settings, terms and rates as they hold at the desk's moment, and by supplier what he said since his sheet."""

    settings: Settings
    terms: dict[str, Terms]
    rates: Rates
    later_words: Mapping[str, tuple[LaterWord, ...]] = field(default_factory=dict)
    confirmed: Mapping[str, tuple[ConfirmedWord, ...]] = field(default_factory=dict)

    def door(self, supplier: str, at: datetime) -> Door:
        """What stands between that supplier and the shop. Refuses where a currency of his has no rate, or
        where he has a time zone and the shop has none."""
        terms = self.terms[supplier]
        wrong = check_zone(terms, self.settings)
        if wrong:
            raise Refused(*wrong)
        return Door(
            terms=terms,
            rate=self.rates.on(terms.currency, at.date()),
            mileage_rate=self.settings.mileage_rate,
            driver_cost=self.settings.clerk_cost,
            shop_calendar=self.settings.calendar,
            shop_time_zone=self.settings.time_zone,
            rate_per_km=self.settings.rate_per_km,
            other_rates=tuple(self.rates.on(currency, at.date()) for currency in _other_currencies(terms)),
            later_words=self.later_words.get(supplier, ()),
        )


def _other_currencies(terms: Terms) -> list[str]:
    """The currencies of entry fees that are not the supplier's own."""
    return sorted({fee.currency for fee in terms.entry_fees} - {"", terms.currency})


def shop_now(connection: Connection, at: datetime) -> ShopNow:
    """Load what holds at that moment. Refuses where the shop was never set up."""
    settings = settings_on(connection, at.date())
    return ShopNow(
        settings=settings,
        terms=terms_on(connection, at.date()),
        rates=rates(connection, settings.currency),
        later_words=told_since(connection, at),
        confirmed=confirmed_since(connection, at),
    )
