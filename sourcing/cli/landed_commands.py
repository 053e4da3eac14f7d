"""The command that shows what things cost at the door: one offer, a placed order, a whole sheet."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, desk
from .output import progress, show, write


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("landed")(landed)


def landed(
    supplier: Annotated[str, typer.Argument(help="The supplier, by the name of his folder.")] = "",
    number: Annotated[
        str, typer.Argument(help="A number on his newest sheet, his own or the maker's. Left out: the whole sheet.")
    ] = "",
    quantity: Annotated[int | None, typer.Option("--quantity", help="Pieces needed. Left out: 1.")] = None,
    order: Annotated[
        str, typer.Option("--order", help="Number of a placed order, to work out what it would cost now.")
    ] = "",
    csv: Annotated[Path | None, typer.Option("--csv", help="Also write it as CSV to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show what an offer, a placed order or a whole sheet costs at the door, and when it comes."""
    if bool(supplier) == bool(order):
        raise typer.BadParameter("say a supplier, or a placed order with --order")
    if quantity is not None and not number:
        raise typer.BadParameter("--quantity goes with a number")
    at_desk = desk(database, at, "")
    if order:
        from ..actions.landed import landed_again
        from ..documents.landed import landed_again_csv, landed_again_text

        again = landed_again(at_desk, order)
        if csv:
            write(csv, landed_again_csv(again))
        show(again, landed_again_text(again), json)
    elif number:
        from ..actions.landed import landed_offers
        from ..documents.landed import landed_offers_csv, landed_offers_text

        offers = landed_offers(at_desk, supplier, number, 1 if quantity is None else quantity)
        if csv:
            write(csv, landed_offers_csv(offers))
        show(offers, landed_offers_text(offers), json)
    else:
        from ..actions.landed_sheet import landed_sheet
        from ..documents.landed import landed_sheet_csv, landed_sheet_text

        with progress() as tell:
            sheet = landed_sheet(at_desk, supplier, tell)
        if csv:
            write(csv, landed_sheet_csv(sheet))
        show(sheet, landed_sheet_text(sheet), json)
