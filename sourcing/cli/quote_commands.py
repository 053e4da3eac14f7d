"""Commands of the quote: write it, print a revision again, say what a new one would change, explain it to the owner."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, AnyDay, At, Database, Day, Json, Who, day_or_any, desk, one_word
from .output import check_pdf, paper_is_in, show, tell, write, write_pdf

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import date

    from ..actions.desk import Desk
    from ..actions.plan import AnyDay as AnyDayWord
    from ..actions.whose_plan import PlanFor
    from ..basics.quote import FrozenQuote

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]
Plan = Annotated[
    str,
    typer.Option(
        "--plan",
        help="Buy by the plan that is cheapest for the 'shop', or by the one under which the 'customer' pays least. "
        "Left out: as the last revision does, and what is approved keeps its number.",
    ),
]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("quote")(quote)


def quote(
    number: JobNumber,
    need_by: Day = None,
    any_day: AnyDay = False,
    plan: Plan = "",
    check: Annotated[
        bool, typer.Option("--check", help="Only say what a new revision would change. Nothing is written.")
    ] = False,
    owner: Annotated[
        bool, typer.Option("--owner", help="Only explain every figure of the last revision, with costs and margins.")
    ] = False,
    revision: Annotated[int | None, typer.Option("--revision", help="Print this revision again instead.")] = None,
    html: Annotated[Path | None, typer.Option("--html", help="Write the paper to this file.")] = None,
    pdf: Annotated[Path | None, typer.Option("--pdf", help="Also write the paper as PDF to this file.")] = None,
    xlsx: Annotated[Path | None, typer.Option("--xlsx", help="Also write it as a workbook for the customer.")] = None,
    owner_xlsx: Annotated[
        Path | None, typer.Option("--owner-xlsx", help="Also write the owner's workbook, with costs, to this file.")
    ] = None,
    message: Annotated[bool, typer.Option("--message", help="Print it short enough for a phone message.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write the customer's quote as a new revision, or print an old one again to the letter."""
    at_desk = desk(database, at, who)
    day = day_or_any(need_by, any_day)
    papers = [path for path in (html, pdf, xlsx) if path] or message
    if check and (owner or owner_xlsx or revision is not None or papers):
        raise typer.BadParameter("--check writes no paper and looks at the newest revision: name it alone")
    if owner and (papers or plan or day):
        raise typer.BadParameter("--owner explains a revision that is there: write the customer's papers without it")
    if revision is not None and (plan or day):
        raise typer.BadParameter("a revision is printed as it was made: --plan and --need-by are for a new one")
    if check:
        _check(at_desk, number, day, _whose(plan), json)
        return
    if owner:
        _explain(at_desk, number, revision, owner_xlsx, json)
        return
    check_pdf(pdf)
    frozen, news, told = _kept(at_desk, number, revision, day, _whose(plan))
    path = html or Path(f"quote-{number}-{frozen.quote.revision}.html")
    if owner_xlsx:
        _write_owners(at_desk, frozen, owner_xlsx)
    _papers(frozen, path, pdf, xlsx)
    tell(told)
    _say(frozen, message, news, paper_is_in(path, pdf), json)


def _whose(plan: str) -> PlanFor | str:
    return one_word(plan, "--plan", ("shop", "customer")) if plan else ""


def _kept(
    at_desk: Desk, number: str, revision: int | None, need_by: date | AnyDayWord | None, plan: PlanFor | str
) -> tuple[FrozenQuote, str, str]:
    """The revision, the news of it, and what the owner is told before it goes out."""
    from ..actions.quotes import reprint, write_quote
    from ..documents.quote_paper import quote_html

    if revision is not None:
        frozen = reprint(at_desk, number, revision)
        return frozen, "Printed again as it was made.\n", _for_owner(frozen.quote.warnings)
    written = write_quote(at_desk, number, quote_html, need_by, plan)  # type: ignore[arg-type]  # one of its words
    news = "" if written.is_new else "Nothing has changed; the last revision stands.\n"
    return written.frozen, news, _for_owner((*written.warnings, *written.notes))


def _for_owner(words: Iterable[str]) -> str:
    """First of all, and apart from what the customer may read."""
    told = "".join(f"For the owner: {one}\n" for one in words)
    return f"{told}\n" if told else ""


def _say(frozen: FrozenQuote, message: bool, news: str, where: str, json: bool) -> None:
    """A message stands alone on the output, ready to be sent on; what else there is to say goes beside it."""
    from ..documents.quote_message import quote_message
    from ..documents.quote_paper import quote_text

    if not message:
        show(frozen, f"{news}{quote_text(frozen.quote)}\n{where}", json)
        return
    tell(f"{news}{where}")
    show(frozen, quote_message(frozen.quote), json)


def _papers(frozen: FrozenQuote, html: Path, pdf: Path | None, xlsx: Path | None) -> None:
    """The other papers first: where the PDF can't be made all the same, they are there and are named."""
    from ..documents.quote_paper import quote_pdf
    from ..documents.quote_xlsx import quote_xlsx

    write(html, frozen.paper)
    if xlsx:
        write(xlsx, quote_xlsx(frozen.quote))
    if pdf:
        of = frozen.quote
        write_pdf(pdf, lambda: quote_pdf(frozen), f"revision {of.revision} of job {of.job} is kept", html)


def _write_owners(at_desk: Desk, frozen: FrozenQuote, path: Path) -> None:
    from ..actions.quote_owner import explained
    from ..documents.quote_explained import owners_xlsx

    write(path, owners_xlsx(explained(at_desk, frozen)))


def _explain(at_desk: Desk, number: str, revision: int | None, xlsx: Path | None, json: bool) -> None:
    from ..actions.quote_owner import owners_quote
    from ..documents.quote_explained import owners_text, owners_xlsx

    found = owners_quote(at_desk, number, revision)
    if xlsx:
        write(xlsx, owners_xlsx(found))
    show(found, owners_text(found), json)


def _check(at_desk: Desk, number: str, need_by: date | AnyDayWord | None, plan: PlanFor | str, json: bool) -> None:
    from ..actions.quotes import check_quote
    from ..documents.quote_explained import checked_text

    found = check_quote(at_desk, number, need_by, plan)  # type: ignore[arg-type]  # one of its words
    show(found, checked_text(found), json)
