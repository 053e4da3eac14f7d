"""Commands around a job: take it in, list the jobs, show what was done for one."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("job")(job)
    app.command("jobs")(jobs)
    app.command("show-job")(show_job)
    app.command("history")(history)


def job(
    file: Annotated[Path, typer.Argument(help="Job file (TOML); demo_prices/job.toml shows one.")],
    replaces: Annotated[str, typer.Option("--replaces", help="Number of the job whose content it replaces.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take a job in from a file and give it its number, or replace what a job holds."""
    from ..actions.jobs import change_job_from, take_in_job

    at_desk = desk(database, at, who)
    kept = change_job_from(at_desk, replaces, file) if replaces else take_in_job(at_desk, file)
    agreed, add_ons = (
        f"{len(some)} {word}{'' if len(some) == 1 else 's'}"
        for some, word in ((kept.agreed, "agreed line"), (kept.add_ons, "add-on"))
    )
    text = f"Job {kept.number}: {kept.machine.description} of {kept.customer.name}, {agreed}, {add_ons}."
    show(kept, text, json)


def jobs(
    every: Annotated[bool, typer.Option("--all", help="Closed jobs too.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """List the jobs: where each is, since when, and who waits for whom."""
    from ..actions.job_states import job_list
    from ..documents.job_list import jobs_text

    found = job_list(desk(database, at, ""), every)
    show(found, jobs_text(found.jobs, found.left_out), json)


def show_job(number: JobNumber, database: Database = DEFAULT_DATABASE, at: At = None, json: Json = False) -> None:
    """Show everything of one job: machine, findings, lines and answers, orders, goods, promises, deposits, deeds."""
    from ..actions.job_states import whole_job
    from ..actions.sheets_gone import sheets_gone_from_quote
    from ..documents.job_list import job_text

    at_desk = desk(database, at, "")
    found = whole_job(at_desk, number)
    show(found, job_text(found, sheets_gone_from_quote(at_desk, number)), json)


def history(
    subject: Annotated[
        str | None, typer.Argument(help="A job's number, or 'sheet 3', or 'shop'. Left out: all.")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """Show who did what when, in order."""
    from ..actions.history import history as deeds

    found = deeds(desk(database, None, ""), subject)
    lines = [f"{one.at:%Y-%m-%d %H:%M}  {one.who}: {one.deed}, {one.subject}: {one.detail}" for one in found]
    show(found, "\n".join(lines) or "Nothing has been done yet.", json)
