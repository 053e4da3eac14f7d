"""The shop's settings, suppliers' terms and exchange rates, each with the day from which it holds."""

from collections.abc import Sequence
from datetime import date

from sqlalchemy import Connection, delete, func, select

from ..basics.problem import refused
from ..basics.rate import Rate, Rates
from ..basics.settings import Settings
from ..basics.terms import Terms
from .rows import as_text, as_value, replace_row
from .shop_tables import EXCHANGE_RATES, SHOP_SETTINGS, SUPPLIER_TERMS


def has_settings(connection: Connection) -> bool:
    """Whether the shop was ever set up."""
    return bool(connection.execute(select(func.count()).select_from(SHOP_SETTINGS)).scalar())


def put_settings(connection: Connection, settings: Settings, starts_on: date) -> None:
    """Keep settings that hold from that day on. Settings of the same day are replaced, earlier ones stay."""
    replace_row(connection, SHOP_SETTINGS, {"starts_on": starts_on, "body": as_text(settings)})


def settings_on(connection: Connection, day: date) -> Settings:
    """The newest settings that start on or before the day. Refuses where there are none."""
    table = SHOP_SETTINGS
    newest = select(table.c.body).where(table.c.starts_on <= day).order_by(table.c.starts_on.desc()).limit(1)
    body = connection.execute(newest).scalar()
    if body is None:
        raise refused("no-settings", day=day)
    return as_value(body, Settings)


def put_terms(connection: Connection, terms: Sequence[Terms]) -> None:
    """Keep suppliers' terms. Terms of the same supplier and day are replaced, earlier ones stay."""
    for one in terms:
        row = {"supplier": one.supplier, "starts_on": one.starts_on, "body": as_text(one)}
        replace_row(connection, SUPPLIER_TERMS, row)


def terms_on(connection: Connection, day: date) -> dict[str, Terms]:
    """Each supplier's newest terms that start on or before the day, suppliers in order of the alphabet."""
    table = SUPPLIER_TERMS
    query = select(table.c.body).where(table.c.starts_on <= day).order_by(table.c.starts_on)
    found = [as_value(body, Terms) for body in connection.execute(query).scalars()]
    newest = {one.supplier: one for one in found}
    return {supplier: newest[supplier] for supplier in sorted(newest)}


def every_terms(connection: Connection, supplier: str = "") -> list[Terms]:
    """All terms there are of one supplier or of all, by supplier and the day from which they hold."""
    table = SUPPLIER_TERMS
    query = select(table.c.body).order_by(table.c.supplier, table.c.starts_on)
    if supplier:
        query = query.where(table.c.supplier == supplier)
    return [as_value(body, Terms) for body in connection.execute(query).scalars()]


def remove_terms(connection: Connection, supplier: str, starts_on: date) -> None:
    """Take the supplier's terms of that day out; those before them hold on. The deed keeps what they said."""
    table = SUPPLIER_TERMS
    connection.execute(delete(table).where(table.c.supplier == supplier, table.c.starts_on == starts_on))


def put_rates(connection: Connection, rates: Sequence[Rate]) -> None:
    """Keep exchange rates. A rate of the same currencies and day is replaced, others stay.

    Raises DigitsLost (a refusal once it leaves the transaction) for more than ten decimals.
    """
    for one in rates:
        row = {name: getattr(one, name) for name in ("currency", "into", "dated", "rate", "source")}
        replace_row(connection, EXCHANGE_RATES, row)


def remove_rate(connection: Connection, gone: Rate) -> None:
    """Take the rate of that day out; the one before it holds on. The deed keeps what it said."""
    table = EXCHANGE_RATES
    mine = (table.c.currency == gone.currency) & (table.c.into == gone.into) & (table.c.dated == gone.dated)
    connection.execute(delete(table).where(mine))


def rates(connection: Connection, into: str) -> Rates:
    """The whole rate table into that currency, by currency and day."""
    table = EXCHANGE_RATES
    query = select(table).where(table.c.into == into).order_by(table.c.currency, table.c.dated)
    found = (Rate(**row._mapping) for row in connection.execute(query))
    return Rates(into=into, rates=tuple(found))
