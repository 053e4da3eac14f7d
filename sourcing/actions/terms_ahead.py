"""Terms that change between the moment of asking and the day on which an order of that moment counts."""

from sqlalchemy import Connection

from ..basics.terms_view import changed_fields
from ..landed_cost.order_day import order_day
from ..storage.shop import every_terms
from .sorted_offers import ShopAt


def terms_ahead(connection: Connection, here: ShopAt, supplier: str) -> tuple[str, ...]:
    """A sentence where the supplier's terms are others on the day the order counts than those used; else nothing.

    Costs are worked out by the terms of the moment of asking. Nothing is said where nothing of him can be priced.
    """
    if supplier not in here.shop.terms or here.shut(supplier):
        return ()
    used = here.shop.terms[supplier]
    counts, _ = order_day(here.door(supplier), here.at)
    later = [one for one in every_terms(connection, supplier) if used.starts_on < one.starts_on <= counts]
    if not later or not changed_fields(used, later[-1]):
        return ()
    what = ", ".join(dict.fromkeys(one.field for one in changed_fields(used, later[-1])))
    return (
        f"the terms of {used.name} from {later[-1].starts_on} on hold on the day this order counts, {counts}: not used "
        f"here, they change {what}",
    )
