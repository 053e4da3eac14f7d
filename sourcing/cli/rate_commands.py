"""The command of exchange rates: look at them, add one with its day and source, take one back."""

from __future__ import annotations

from datetime import datetime
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Sure, Who, desk
from .output import show


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("rates")(rates)


def rates(
    currency: Annotated[str, typer.Argument(help="The money a rate is added or taken back for, such as EUR.")] = "",
    rate: Annotated[
        str, typer.Option("--rate", help="Add this rate: what one of it is worth in the shop's money.")
    ] = "",
    dated: Annotated[
        datetime | None, typer.Option("--dated", formats=["%Y-%m-%d"], help="Of which day it is. Left out: today.")
    ] = None,
    source: Annotated[str, typer.Option("--source", help="Who says so: the bank or list it was taken from.")] = "",
    withdraw: Annotated[
        datetime | None, typer.Option("--withdraw", formats=["%Y-%m-%d"], help="Take the rate of that day back.")
    ] = None,
    why: Annotated[str, typer.Option("--why", help="Why it is taken back, in words.")] = "",
    sure: Sure = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Show the exchange rates and what was taken back; or add one, or take one back."""
    from ..actions.rates import add_rate, rates_now, withdraw_rate
    from ..documents.rates import rate_gone_text, rates_text
    from ..documents.terms import warnings_text

    if rate and withdraw:
        raise typer.BadParameter("say one of --rate and --withdraw")
    if (rate or withdraw) and not currency:
        raise typer.BadParameter("say which money the rate is of, such as EUR")
    if currency and not (rate or withdraw):
        raise typer.BadParameter("say --rate or --withdraw; without a currency all rates are shown")
    at_desk = desk(database, at, who)
    if rate:
        told = add_rate(at_desk, currency, rate, dated.date() if dated else None, source, sure)
        show(told, f"The rate is kept.{warnings_text(told)}", json)
    elif withdraw:
        gone = withdraw_rate(at_desk, currency, withdraw.date(), why)
        show(gone, f"{rate_gone_text(gone.rate, gone.instead)}{warnings_text(gone.told)}", json)
    else:
        found = rates_now(at_desk)
        show(found, rates_text(found.every, found.holding, found.taken_back), json)
