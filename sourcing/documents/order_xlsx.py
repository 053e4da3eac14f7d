"""The purchase order as a workbook: the same columns as its CSV, numbers as numbers."""

from ..basics.order import PurchaseOrder
from .order_paper import CSV_HEADERS, order_rows
from .workbook import Table, workbook_bytes


def order_xlsx(order: PurchaseOrder) -> bytes:
    """The order's lines on one worksheet named after its number."""
    return workbook_bytes([Table(title=order.number, headers=CSV_HEADERS, rows=order_rows(order))])
