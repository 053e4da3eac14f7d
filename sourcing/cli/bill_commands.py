"""Commands of deposits and of the final paper."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, amount, desk, pairs
from .output import check_pdf, paper_is_in, show, write, write_pdf

if TYPE_CHECKING:
    from ..actions.desk_work import PaperToSay

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("deposit")(deposit)
    app.command("bill")(bill)
    app.command("gave-away")(gave_away)


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
    from ..documents.job_list import deposits_text, same_again_text

    if taken and back:
        raise typer.BadParameter("say --taken or --back, not both")
    at_desk = desk(database, at, who)
    if taken:
        found = take_deposit(at_desk, number, amount(taken), how, words)
    elif back:
        found = give_back(at_desk, number, amount(back), how, words)
    else:
        found = deposits_of(at_desk, number)
    text = deposits_text(found.job, found.kept, found.asked, found.held, found.open, found.over)
    show(found, text + same_again_text(found.kept, found.same_today), json)


def bill(
    number: JobNumber,
    look: Annotated[bool, typer.Option("--look", help="Only show what the bill would be; keep nothing.")] = False,
    not_done: Annotated[
        list[str] | None,
        typer.Option("--not-done", help="A line approved or without an answer that was not done: not billed."),
    ] = None,
    words: Annotated[str, typer.Option("--words", help="Why it was not done; stands on the bill.")] = "",
    off: Annotated[
        list[str] | None, typer.Option("--off", help="Taken off a line before tax, such as A=5.00; for each line anew.")
    ] = None,
    off_words: Annotated[str, typer.Option("--off-words", help="Why it was taken off; the owner reads it.")] = "",
    html: Annotated[Path | None, typer.Option("--html", help="Write the paper to this file.")] = None,
    pdf: Annotated[Path | None, typer.Option("--pdf", help="Also write the paper as PDF to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write the bill of a job, which closes it; or print the bill again to the letter."""
    from ..actions.after_bill import left_with_suppliers
    from ..actions.bill import bill_if_any, look_at_bill, write_bill
    from ..actions.desk_work import desk_work
    from ..basics.bill import LeftOut, Off
    from ..documents.bill_paper import bill_html, bill_pdf, bill_text

    if off_words and not off:
        raise typer.BadParameter("--off-words says why --off was given, and there is no --off")
    at_desk = desk(database, at, who)
    left_out = LeftOut(labels=tuple(not_done or ()), words=words)
    taken_off = Off(amounts=tuple(_off(text) for text in off or ()), words=off_words)
    if look:
        found = look_at_bill(at_desk, number, left_out, taken_off)
        show(
            found,
            f"Only a look; nothing is kept.\n{bill_text(found)}{_to_say(desk_work(at_desk, number).papers)}",
            json,
        )
        return
    check_pdf(pdf)
    # A bill that is there is printed again, but never in answer to a wish to change it.
    frozen = None if left_out.labels or taken_off.amounts else bill_if_any(at_desk, number)
    news = "Printed again as it was made.\n"
    if frozen is None:
        frozen, news = write_bill(at_desk, number, bill_html, left_out, taken_off), ""
    path = html or Path(f"{frozen.bill.number}.html")
    write(path, frozen.paper)
    if pdf:
        kept = frozen
        write_pdf(pdf, lambda: bill_pdf(kept.bill, kept.paper), f"bill {frozen.bill.number} is kept", path)
    left = "".join(f"\nStill to do: {one}." for one in left_with_suppliers(at_desk, number))
    papers = _to_say(desk_work(at_desk, number).papers)
    show(frozen, f"{news}{bill_text(frozen.bill)}\n{paper_is_in(path, pdf)}{left}{papers}", json)


def gave_away(
    number: JobNumber,
    what: Annotated[str, typer.Option("--what", help="What was fitted without a yes.")] = "",
    cost: Annotated[str, typer.Option("--cost", help="What it cost the shop, such as 1.20.")] = "",
    price: Annotated[str, typer.Option("--price", help="What it would have been charged at before tax.")] = "",
    words: Annotated[str, typer.Option("--words", help="Why it was fitted without asking.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record an extra that was fitted without the customer's yes: it is never billed. Or show what is recorded."""
    from ..actions.given_away import gave_away as record_it
    from ..actions.given_away import given_away_on
    from ..documents.given_away import given_away_text

    at_desk = desk(database, at, who)
    if what or cost or price or words:
        if not cost:
            raise typer.BadParameter("say what it cost the shop with --cost")
        never = amount(price) if price else None
        found = record_it(at_desk, number, (what, words), amount(cost), never)
    else:
        found = given_away_on(at_desk, number)
    show(found, given_away_text(number, found), json)


def _to_say(papers: Iterable[PaperToSay]) -> str:
    words = "Look at this: the charges of paper {} of {} are not said yet: the job's cost is not known."
    return "".join(f"\n{words.format(one.paper, one.order)}" for one in papers)


def _off(text: str) -> tuple[str, Decimal]:
    ((label, taken),) = pairs([text], "A=5.00").items()
    return label, amount(taken)
