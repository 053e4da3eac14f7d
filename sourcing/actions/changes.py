"""What changed since a supplier's last sheet."""

from collections.abc import Sequence

from ..basics.change import SheetChanges
from ..basics.collecting import without_collecting
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.value import changed
from ..sheets.changes import compare_sheets
from ..storage.numbers import nearest
from ..storage.offers import offers_of_sheet
from ..storage.sheets import kept_sheets
from .desk import Desk


def sheet_changes(desk: Desk, supplier: str, sheet: int | None = None, against: int | None = None) -> SheetChanges:
    """Compare two sheets of one supplier, by the numbers 'sourcing sheets' shows.

    `sheet` left out: the one of the latest date, also where its day is still to come.
    `against` left out: the one before it, by date, of one day the one imported first.
    Refuses a supplier without sheets, a sheet of another supplier, and a sheet with none before it.
    """
    with desk.store.reading() as connection, without_collecting():
        kept = _in_order(kept_sheets(connection, desk.at.date()), supplier)
        now = _of(kept, sheet) if sheet is not None else kept[-1]
        before = _of(kept, against) if against is not None else _before(kept, now)
        found = compare_sheets(offers_of_sheet(connection, before.sheet), offers_of_sheet(connection, now.sheet))
    return changed(found, supplier=now.supplier, before=before, now=now)


def _in_order(kept: Sequence[KeptSheet], supplier: str) -> list[KeptSheet]:
    """The supplier's sheets, oldest first; the same order that decides which counts."""
    own = [one for one in kept if one.supplier == supplier]
    if not own:
        suggestions = nearest(supplier, {one.supplier for one in kept})
        raise refused("no-sheet-of-supplier", found=supplier, suggestions=suggestions)
    return sorted(own, key=lambda one: (one.sheet_date, one.sheet))


def _of(kept: Sequence[KeptSheet], sheet: int) -> KeptSheet:
    found = next((one for one in kept if one.sheet == sheet), None)
    if found is None:
        raise refused("not-a-sheet-of", found=sheet, supplier=kept[0].supplier)
    return found


def _before(kept: Sequence[KeptSheet], now: KeptSheet) -> KeptSheet:
    at = kept.index(now)
    if at == 0:
        raise refused("nothing-to-compare", supplier=now.supplier, day=now.sheet_date)
    return kept[at - 1]
