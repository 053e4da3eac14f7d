"""One sheet that is kept: its counts, its columns, its problems; and taken out again."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.import_sheets import undo_import
from ...actions.sheet_list import problems_page, sheet_whole
from ...actions.sheet_users import worked_out_from
from ...documents.sheet_words import meaning_words, problems_csv, told_words, wrong_words
from ...documents.sheets import account_words
from ..desks import desk
from ..files import attachment
from ..forms import deed, mind, tell
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of sheets."""
    blueprint.add_url_rule("/sheets/<int:sheet>", "sheet_page", sheet_page)
    blueprint.add_url_rule("/sheets/<int:sheet>/problems.csv", "problems_file", problems_file)
    blueprint.add_url_rule("/sheets/<int:sheet>/take-out", "take_out_page", take_out_page, methods=["GET", "POST"])


@open_to(*WITH_COSTS)
def sheet_page(sheet: int) -> ResponseReturnValue:
    """What came of it."""
    found = sheet_whole(desk(), sheet)
    return show(
        "sheets/sheet.html",
        found=found,
        problems_shown=problems_page(found.summary, request.args.get("page", 1, type=int)),
        account=account_words,
        meaning=meaning_words,
        words=told_words,
        without_place=wrong_words,
    )


@open_to(*WITH_COSTS)
def problems_file(sheet: int) -> ResponseReturnValue:
    """All problems and notes."""
    found = sheet_whole(desk(), sheet)
    return attachment(problems_csv((*found.summary.problems, *found.summary.notes)), f"problems-sheet-{sheet}", "csv")


@open_to(*WITH_COSTS)
def take_out_page(sheet: int) -> ResponseReturnValue:
    """What it means to take it out; and the deed."""
    if request.method == "POST" and (gone := deed(lambda: _take_out(sheet))):
        return gone
    return show("sheets/take_out.html", found=sheet_whole(desk(), sheet), used=worked_out_from(desk(), sheet))


def _take_out(sheet: int) -> str:
    used = worked_out_from(desk(), sheet)
    gone = undo_import(desk(), sheet)
    told = _("Sheet %(sheet)s is taken out: %(file)s. To have it again, drop the file again.")
    tell(told % {"sheet": gone.sheet, "file": gone.file})
    if used:
        jobs = ", ".join(dict.fromkeys(one.job for one in used))
        mind(_("Worked out from it, and marked there: job %(jobs)s.") % {"jobs": jobs})
    if request.form.get("again"):
        return url_for("sheets.list_page", supplier=gone.supplier, look="yes")
    return url_for("sheets.supplier_page", supplier=gone.supplier)
