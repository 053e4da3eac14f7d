"""Commands of deposits and of the final paper."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, amount, desk
from .output import show, write

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("deposit")(deposit)
    app.command("bill")(bill)


def deposit(
    number: JobNumber,
    taken: Annotated[str, typer.Option("--taken", help="Amount the customer paid ahead, such as 113.10.")] = "",
    back: Annotated[str, typer.Option("--back", help="Amount given back to the customer.")] = "",
    how: Annotated[str, typer.Option("--how", help="How it was paid: cash, card or such.")] = "",
    words: Annotated[str, typer.Option("--words", help="What should be remembered about it.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record a deposit taken or given back, or show what is asked and held."""
    from ..actions.deposits import deposits_of, give_back, take_deposit
    from ..documents.job_list import deposits_text

    if taken and back:
        raise typer.BadParameter("say --taken or --back, not both")
    at_desk = desk(database, at, who)
    if taken:
        found = take_deposit(at_desk, number, amount(taken), how, words)
    elif back:
        found = give_back(at_desk, number, amount(back), how, words)
    else:
        found = deposits_of(at_desk, number)
    show(found, deposits_text(found.job, found.kept, found.asked, found.held, found.open), json)


def bill(
    number: JobNumber,
    look: Annotated[bool, typer.Option("--look", help="Only show what the bill would be; keep nothing.")] = False,
    not_done: Annotated[
        list[str] | None, typer.Option("--not-done", help="An approved line that was not done: it is not billed.")
    ] = None,
    words: Annotated[str, typer.Option("--words", help="Why it was not done; stands on the bill.")] = "",
    html: Annotated[Path | None, typer.Option("--html", help="Write the paper to this file.")] = None,
    pdf: Annotated[Path | None, typer.Option("--pdf", help="Also write the paper as PDF to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write the bill of a job, which closes it; or print the bill again to the letter."""
    from ..actions.bill import bill_if_any, look_at_bill, write_bill
    from ..basics.bill import LeftOut
    from ..documents.bill_paper import bill_html, bill_pdf, bill_text

    at_desk = desk(database, at, who)
    left_out = LeftOut(labels=tuple(not_done or ()), words=words)
    if look:
        found = look_at_bill(at_desk, number, left_out)
        show(found, f"Only a look; nothing is kept.\n{bill_text(found)}", json)
        return
    # A bill that is there is printed again, but never in answer to a wish to change it.
    frozen = None if left_out.labels else bill_if_any(at_desk, number)
    news = "Printed again as it was made.\n"
    if frozen is None:
        frozen, news = write_bill(at_desk, number, bill_html, left_out), ""
    path = html or Path(f"{frozen.bill.number}.html")
    write(path, frozen.paper)
    if pdf:
        write(pdf, bill_pdf(frozen.bill, frozen.paper))
    show(frozen, f"{news}{bill_text(frozen.bill)}\nThe paper is in {path}.", json)
