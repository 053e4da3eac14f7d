"""Commands around a job: take it in, quote it, record the customer's answers."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Day, Json, Who, desk
from .output import show, write

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("job")(job)
    app.command("jobs")(jobs)
    app.command("quote")(quote)
    app.command("answer")(answer)
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


def jobs(database: Database = DEFAULT_DATABASE, json: Json = False) -> None:
    """List the jobs."""
    from ..actions.jobs import all_jobs

    found = all_jobs(desk(database, None, ""))
    lines = [f"{one.number}  {one.received_on}  {one.customer.name}: {one.machine.description}" for one in found]
    show(found, "\n".join(lines) or "No job has been taken in yet.", json)


def quote(
    number: JobNumber,
    need_by: Day = None,
    revision: Annotated[int | None, typer.Option("--revision", help="Print this revision again instead.")] = None,
    html: Annotated[Path | None, typer.Option("--html", help="Write the paper to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write the customer's quote as a new revision, or print an old one again to the letter."""
    from ..actions.quotes import reprint, write_quote
    from ..documents.quote_paper import quote_html, quote_text

    at_desk = desk(database, at, who)
    if revision is None:
        written = write_quote(at_desk, number, quote_html, need_by.date() if need_by else None)
        frozen, news = written.frozen, "" if written.is_new else "Nothing has changed; the last revision stands.\n"
    else:
        frozen, news = reprint(at_desk, number, revision), "Printed again as it was made.\n"
    path = html or Path(f"quote-{number}-{frozen.quote.revision}.html")
    write(path, frozen.paper)
    warnings = "".join(f"For the owner: {words}\n" for words in frozen.quote.warnings)
    show(frozen, f"{news}{quote_text(frozen.quote)}\n{warnings}The paper is in {path}.", json)


def answer(
    number: JobNumber,
    by: Annotated[str, typer.Option("--by", help="Who gave the answer.")],
    how: Annotated[str, typer.Option("--how", help="in person, telephone, text, e-mail or customer's page.")],
    yes: Annotated[list[str] | None, typer.Option("--yes", help="Line approved: a label, or 'agreed'.")] = None,
    no: Annotated[list[str] | None, typer.Option("--no", help="Line declined: a label, or 'agreed'.")] = None,
    contact: Annotated[str, typer.Option("--contact", help="Number called, or address.")] = "",
    words: Annotated[str, typer.Option("--words", help="What the customer said, conditions included.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record a customer's answers to the newest revision. A line not named stays as it was: silence is no yes."""
    from ..actions.answers import Spoken, record
    from ..documents.answers import answers_text

    spoken = Spoken(yes=tuple(yes or ()), no=tuple(no or ()), who=by, how=how, contact=contact, words=words)
    standing = record(desk(database, at, who), number, spoken)
    show(standing.answers, answers_text(standing.quote, standing.answers), json)


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
