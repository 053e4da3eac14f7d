"""What jobs earned, where it leaked, and what other prices would have brought. For the owner alone."""

from typing import get_args

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.after_bill import left_with_suppliers
from ...actions.margin_months import Months, months_typed
from ...actions.margins import margins
from ...actions.margins_kept import margins_kept
from ...basics.margin import By, Margins
from ...basics.typed import one_word
from ...documents.bridge import bridge_svg
from ...documents.margin_charts import charts_svg
from ...documents.margin_pages import MOST_BACK, MOST_LOW, STAGES, groups_page, stage_rows
from ...documents.margin_words import bridge_lines, by_when, group_head, leak_words, left_words
from ..desks import desk, now
from ..files import drawing
from ..guard import OWNER, open_to
from ..show import show
from . import margin_files, margin_what_if

blueprint = Blueprint("margins", __name__)
margin_files.add_to(blueprint)
margin_what_if.add_to(blueprint)

EVERY: tuple[By, ...] = get_args(By)


def asked() -> tuple[By, Months | None, dict[str, str]]:
    """What the address asks for: added up by what, of which months (None: all), and the same as words of an address."""
    by = one_word(request.args.get("by") or "job", "by", EVERY)
    if request.args.get("months") == "all":
        return by, None, {"by": by, "months": "all"}
    within = months_typed(request.args.get("since", ""), request.args.get("until", ""), now().date())
    return by, within, {"by": by, "since": within.since, "until": within.until}


def found_margins() -> Margins:
    """The margins the address asks for."""
    by, within, _words = asked()
    return margins_kept(desk(), by, within)


@blueprint.get("/margins")
@open_to(*OWNER)
def margins_page() -> ResponseReturnValue:
    """Lines under the floor first, then groups, leaks by name, months drawn, what waits to go back."""
    by, within, words = asked()
    stage = one_word(request.args.get("stage") or "by now", "stage", STAGES)
    found = margins_kept(desk(), by, within)
    return show(
        "margins/all.html",
        found=found,
        within=within,
        words=words,
        stage=stage,
        stages=STAGES,
        head=group_head(found),
        groups=groups_page(found, stage, request.args.get("page", 1, type=int)),
        low=found.low[:MOST_LOW],
        back=found.back[:MOST_BACK],
        leaks=list(by_when(found.leaks)),
    )


@blueprint.get("/margins/chart.svg")
@open_to(*OWNER)
def chart() -> ResponseReturnValue:
    """Months and leaks drawn."""
    return drawing(charts_svg(found_margins()))


@blueprint.get("/margins/<job>")
@open_to(*OWNER)
def job_page(job: str) -> ResponseReturnValue:
    """One job in every figure, and its way from the quoted margin to what it is now."""
    found = margins(desk(), job)[0]
    return show(
        "margins/job.html",
        found=found,
        rows=stage_rows(found),
        steps=bridge_lines(found.bridge) if found.bridge else [],
        leaks=list(by_when(found.leaks)),
        leak_words=leak_words,
        left=left_words(found),
        to_do=left_with_suppliers(desk(), job),
    )


@blueprint.get("/margins/<job>/bridge.svg")
@open_to(*OWNER)
def bridge(job: str) -> ResponseReturnValue:
    """The way drawn."""
    return drawing(bridge_svg(margins(desk(), job)[0]))
