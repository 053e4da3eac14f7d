"""The shop's settings by the day from which they hold: all of them, and one taken out."""

from datetime import date

from sqlalchemy import Connection, delete

from .margin_rows import every_settings
from .shop_tables import SHOP_SETTINGS

__all__ = ["every_settings", "remove_settings"]


def remove_settings(connection: Connection, starts_on: date) -> None:
    """Take the settings of that day out; those before them hold on. The deed keeps what they changed."""
    connection.execute(delete(SHOP_SETTINGS).where(SHOP_SETTINGS.c.starts_on == starts_on))
