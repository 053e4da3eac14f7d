"""All tables in one MetaData, complete once this module is imported: what migrations are compared with."""

from . import after_tables, counter_tables, job_tables, match_tables, sheet_tables, shop_tables
from .metadata import METADATA

__all__ = ["METADATA", "after_tables", "counter_tables", "job_tables", "match_tables", "sheet_tables", "shop_tables"]
