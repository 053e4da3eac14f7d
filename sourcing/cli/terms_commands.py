"""The command of suppliers' terms: look at them, take them in from a file, change a field from a day on, withdraw."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Sure, Who, desk
from .output import show, write

if TYPE_CHECKING:
    from ..actions.desk import Desk


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("terms")(terms)


def terms(
    supplier: Annotated[str, typer.Argument(help="The supplier, by the name of his folder. Left out: all.")] = "",
    on: Annotated[
        datetime | None, typer.Option("--on", formats=["%Y-%m-%d"], help="Show what held on that day. Left out: today.")
    ] = None,
    file: Annotated[
        Path | None, typer.Option("--file", help="Take the entries of this file in; it is written like suppliers.toml.")
    ] = None,
    set_: Annotated[
        list[str] | None,
        typer.Option("--set", help="Change a field: minimum_order=30.00, freight.free_from=250.00; blank: not set."),
    ] = None,
    from_: Annotated[
        datetime | None,
        typer.Option("--from", formats=["%Y-%m-%d"], help="Day from which the change holds. Left out: today."),
    ] = None,
    withdraw: Annotated[
        datetime | None,
        typer.Option("--withdraw", formats=["%Y-%m-%d"], help="Withdraw the terms that begin on that day."),
    ] = None,
    why: Annotated[str, typer.Option("--why", help="Why they are withdrawn, in words.")] = "",
    past: Annotated[
        str, typer.Option("--past", help="Why days that are over are changed: what was worked out for them changes.")
    ] = "",
    write_to: Annotated[
        Path | None, typer.Option("--write", help="Write what holds to this file, to be edited and taken in again.")
    ] = None,
    sure: Sure = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Show what holds with each supplier, what changed when, and what is not known; or change it from a day on."""
    from ..actions.terms import set_terms, take_terms, withdraw_terms
    from ..documents.terms import terms_change_text

    deeds = {"--file": file is not None, "--set": bool(set_), "--withdraw": withdraw is not None}
    _usage([name for name, given in deeds.items() if given], supplier, bool(on or write_to), from_ is not None)
    at_desk = desk(database, at, who)
    if file:
        done = take_terms(at_desk, file, past, sure)
        show(done, terms_change_text(done), json)
    elif set_ or withdraw:
        one = (
            withdraw_terms(at_desk, supplier, withdraw.date(), why, past)
            if withdraw
            else set_terms(at_desk, supplier, _fields(set_ or []), from_.date() if from_ else None, past, sure)
        )
        show(one, terms_change_text([one]), json)
    else:
        _look(at_desk, supplier, on.date() if on else None, write_to, json)


def _usage(deeds: list[str], supplier: str, looks: bool, dated: bool) -> None:
    """What goes together. Raises the error of usage that typer shows."""
    if len(deeds) > 1:
        raise typer.BadParameter(f"say one of {' and '.join(deeds)}")
    if deeds and looks:
        raise typer.BadParameter(f"--on and --write only look: say them without {deeds[0]}")
    if deeds and deeds[0] != "--file" and not supplier:
        raise typer.BadParameter(f"say whose terms {deeds[0]} is for")
    if deeds == ["--file"] and supplier:
        raise typer.BadParameter("the file says whose terms they are: leave the supplier out")
    if dated and deeds != ["--set"]:
        raise typer.BadParameter("--from goes with --set")


def _fields(texts: list[str]) -> dict[str, str]:
    """'minimum_order=30.00' as field and text; the text may be blank, and may itself have '='."""
    from ..basics.problem import refused

    fields = {}
    for text in texts:
        field, sign, value = text.partition("=")
        if not sign or not field.strip():
            raise refused("not-a-pair", found=text, example="--set minimum_order=30.00")
        fields[field.strip()] = value.strip()
    return fields


def _look(at_desk: Desk, supplier: str, on: date | None, write_to: Path | None, json: bool) -> None:
    """Show what holds, or write it to a file."""
    from ..actions.terms import every_suppliers_terms, suppliers_terms
    from ..documents.terms import supplier_terms_text, terms_list_text, terms_toml, written_text

    found = (suppliers_terms(at_desk, supplier, on),) if supplier else every_suppliers_terms(at_desk, on)
    text = supplier_terms_text(found[0]) if supplier else terms_list_text(found)
    if write_to:
        write(write_to, terms_toml(found))
        text = written_text(found, str(write_to))
    show(found[0] if supplier else found, text, json)
