"""Margins as files to take along: XLSX with charts, CSV, a page to print, JSON. For the owner alone."""

from collections.abc import Callable, Sequence

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue

from ...actions.margins import margins
from ...basics.margin import JobMargin, Margins
from ...basics.value import to_json
from ...documents.margin_groups import groups_csv, groups_html, groups_xlsx
from ...documents.margin_pages import job_csv
from ...documents.margins import margins_html, margins_xlsx
from ..desks import desk
from ..files import attachment
from ..guard import OWNER, open_to

ALL: dict[str, Callable[[Margins], bytes | str]] = {
    "xlsx": groups_xlsx,
    "csv": groups_csv,
    "html": groups_html,
    "json": to_json,
}
ONE: dict[str, Callable[[Sequence[JobMargin]], bytes | str]] = {
    "xlsx": margins_xlsx,
    "csv": job_csv,
    "html": margins_html,
    "json": to_json,
}


def add_to(blueprint: Blueprint) -> None:
    """Add these files to the pages of margins."""
    blueprint.add_url_rule("/margins.<kind>", view_func=all_file)
    blueprint.add_url_rule("/margins/<job>/margins.<kind>", view_func=job_file)


@open_to(*OWNER)
def all_file(kind: str) -> ResponseReturnValue:
    """What the page shows, whole."""
    from .margins import found_margins

    if kind not in ALL:
        abort(404)
    return attachment(ALL[kind](found_margins()), "margins", kind)


@open_to(*OWNER)
def job_file(job: str, kind: str) -> ResponseReturnValue:
    """One job."""
    if kind not in ONE:
        abort(404)
    found = margins(desk(), job)
    return attachment(ONE[kind](found), f"margins-{found[0].job}", kind)
