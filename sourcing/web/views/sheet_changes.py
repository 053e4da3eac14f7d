"""What changed in price between two sheets of a supplier: worked out in the background where they are long."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.sheet_list import SheetWhole, sheet_whole, sheets_of
from ...basics.problem import Refused, refused
from ...basics.sheet import KeptSheet
from ...documents.changes_shown import section_page
from ..desks import desk
from ..files import attachment
from ..forms import refuse
from ..guard import WITH_COSTS, open_to
from ..sheet_desk import sheet_desk
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of sheets."""
    blueprint.add_url_rule("/sheets/<int:sheet>/changes", "changes_page", changes_page)
    blueprint.add_url_rule("/sheets/<int:sheet>/changes.<kind>", "changes_file", changes_file)


@open_to(*WITH_COSTS)
def changes_page(sheet: int) -> ResponseReturnValue:
    """What rose first, the biggest rise on top."""
    found = sheet_whole(desk(), sheet)
    before = _before(found)
    if waiting := _until_ready(found, before, "csv"):
        return waiting
    changes = sheet_desk().compare(found, before, "csv").result
    only = request.args.get("only", "")
    part = section_page(changes, only, request.args.get("page", 1, type=int)) if only else None
    others = [one for one in sheets_of(desk(), found.kept.supplier)[0].sheets if one.sheet != sheet]
    return show("sheets/changes.html", found=found, before=before, changes=changes, part=part, others=others)


@open_to(*WITH_COSTS)
def changes_file(sheet: int, kind: str) -> ResponseReturnValue:
    """All of it; the page waits until the file is written and then gives it."""
    if kind not in ("csv", "xlsx"):
        raise refused("file-kind-unknown", found=kind[:20])
    found = sheet_whole(desk(), sheet)
    before = _before(found)
    if waiting := _until_ready(found, before, kind):
        return waiting
    content = sheet_desk().compared_file(found, before, kind).read_bytes()
    return attachment(content, f"changes-sheet-{before.sheet}-{sheet}", kind)


def _before(found: SheetWhole) -> KeptSheet:
    """The sheet compared with: as asked for, else the one before it. Refuses where there is none."""
    asked = request.args.get("against", 0, type=int)
    if not asked:
        if found.before is None:
            raise refused("nothing-to-compare", supplier=found.kept.supplier, day=found.kept.sheet_date)
        return found.before
    every = sheets_of(desk(), found.kept.supplier)[0].sheets
    before = next((one for one in every if one.sheet == asked != found.kept.sheet), None)
    if before is None:
        raise refused("not-a-sheet-of", found=asked, supplier=found.kept.supplier)
    return before


def _until_ready(found: SheetWhole, before: KeptSheet, kind: str) -> ResponseReturnValue | None:
    """The page to be shown as long as the comparison is not there; None once it is."""
    at = sheet_desk()
    work = at.compare(found, before, kind)
    if not work.is_over:
        return show("sheets/waiting.html", work=work, before=at.works.before(work), sent=None)
    if work.how == "done":
        return None
    del at.compared[before.sheet, found.kept.sheet, kind]
    refuse(Refused(*work.problems) if work.problems else refused("reading-broke-off", found=found.kept.file))
    back = url_for("sheets.sheet_page", sheet=found.kept.sheet)
    return show("sheets/not_compared.html", back=back, found=found)
