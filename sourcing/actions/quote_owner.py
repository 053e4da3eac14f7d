"""A revision explained to the owner: its figures, and what it earns as it was quoted."""

from ..basics.owners_quote import LineEarns, OwnersQuote
from ..basics.quote import FrozenQuote
from ..quoting.explain import explain
from ..storage.shop import settings_on, terms_on
from .desk import Desk
from .quote_margins import agreed_margin, everything_margin, parts_margins, under_floor
from .quotes import reprint


def owners_quote(desk: Desk, number: str, revision: int | None = None) -> OwnersQuote:
    """A revision of the job, the newest where none is named. Refuses where there is none."""
    return explained(desk, reprint(desk, number, revision))


def explained(desk: Desk, frozen: FrozenQuote) -> OwnersQuote:
    """That revision explained. Costs are those it was quoted on; names and floor are the shop's of today."""
    with desk.store.reading() as connection:
        settings = settings_on(connection, desk.at.date())
        names = {supplier: terms.name for supplier, terms in terms_on(connection, desk.at.date()).items()}
    lines = tuple(
        LineEarns(
            label=line.label,
            title=line.title,
            supplier_name=names.get(line.behind.supplier, line.behind.supplier),
            supplier_number=line.behind.supplier_number,
            margin=one,
            under_floor=under_floor(one, settings),
        )
        for line, one in parts_margins(frozen.quote)
        if line.behind
    )
    return OwnersQuote(
        frozen=frozen,
        lines=lines,
        agreed=agreed_margin(frozen.quote),
        everything=everything_margin(frozen.quote),
        floor_percent=settings.margin_floor_percent,
        explained=explain(frozen.quote),
    )
