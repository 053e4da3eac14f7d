"""The command that plans the orders for a job's parts, or for a basket."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from .basket_files import BasketFile, basket_of
from .compare_command import InStock, PerDay, Trusted
from .options import DEFAULT_DATABASE, AnyDay, At, Database, Day, Json, Xlsx, amount, day_or_any, desk, one_word
from .output import show, write

if TYPE_CHECKING:
    from ..actions.desk import Desk
    from ..basics.plan import Plan

MORE = ("whatever pays", "cheaper break", "never")


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("plan")(plan)


def plan(
    number: Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")] = "",
    file: BasketFile = None,
    need_by: Day = None,
    any_day: AnyDay = False,
    soonest: Annotated[
        bool, typer.Option("--soonest", help="The soonest complete plan, cheapest among these. Left out: the cheapest.")
    ] = False,
    value_per_day: PerDay = "",
    front: Annotated[bool, typer.Option("--front", help="Also every plan none beats in cost and day.")] = False,
    most_suppliers: Annotated[
        int | None, typer.Option("--most-suppliers", min=1, help="Order from at most so many suppliers.")
    ] = None,
    trusted: Trusted = False,
    in_stock: InStock = False,
    more_than_needed: Annotated[
        str, typer.Option("--more-than-needed", help=f"When to buy pieces to spare: {', '.join(MORE)}.")
    ] = "",
    surplus_credit: Annotated[
        str, typer.Option("--surplus-credit", help="Per cent of the cost of pieces to spare that counts as got back.")
    ] = "",
    cores_lost: Annotated[
        bool, typer.Option("--cores-lost", help="The old parts will not go back: core charges are cost.")
    ] = False,
    seconds: Annotated[
        int | None, typer.Option("--seconds", min=1, help="Stop after so long and show what was found. Left out: 30.")
    ] = None,
    schema: Annotated[
        str, typer.Option("--schema", help="Print the JSON Schema of a basket, or of the answer, and do nothing else.")
    ] = "",
    only_agreed: Annotated[bool, typer.Option("--only-agreed", help="Leave a job's add-ons out.")] = False,
    left_to_order: Annotated[
        bool, typer.Option("--left-to-order", help="Only what is approved and on no order yet.")
    ] = False,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Find the best set of orders for a job's parts, or for the needs of a basket."""
    if schema:
        _show_schema(schema)
        return
    if file and number:
        raise typer.BadParameter(f"the job {number} and the basket of --file are two plans: name one of them")
    if not (file or number):
        raise typer.BadParameter("name a job, or a basket with --file")
    if file and any_day:
        raise typer.BadParameter("--any-day is for a job; leave need_by out of the basket instead")
    if soonest and value_per_day:
        raise typer.BadParameter("--soonest and --value-per-day exclude each other")
    if only_agreed and left_to_order:
        raise typer.BadParameter("--only-agreed and --left-to-order exclude each other")
    if file and left_to_order:
        raise typer.BadParameter("--left-to-order is for a job: nothing of a basket is approved or ordered")
    day = day_or_any(need_by, any_day)
    asked: dict[str, object] = {
        "objective": "date" if soonest else "cost and days" if value_per_day else None,
        "need_by": need_by.date() if need_by else None,
        "value_per_day": amount(value_per_day) if value_per_day else None,
        "most_suppliers": most_suppliers,
        "more_than_needed": one_word(more_than_needed, "--more-than-needed", MORE) if more_than_needed else None,
        "surplus_credit_percent": amount(surplus_credit) if surplus_credit else None,
        "cores_lost": cores_lost or None,
        "in_stock_only": in_stock or None,
        "trusted_only": trusted or None,
        "front": front or None,
        "seconds": seconds,
    }
    said = {name: value for name, value in asked.items() if value is not None}
    which = {"only_agreed": only_agreed, "left_to_order": left_to_order}
    found = _of_basket(file, at, said) if file else _of_job(desk(database, at, ""), number, day, which, said)
    _show(found, xlsx, json)


def _of_basket(file: Path, at: datetime | None, said: Mapping[str, object]) -> Plan:
    """What was said on the command line goes before the file's own wishes."""
    from ..actions.basket import plan_basket
    from ..basics.value import changed

    basket = basket_of(file, at)
    return plan_basket(basket, changed(basket.wishes, **said))


def _of_job(
    at_desk: Desk,
    number: str,
    day: date | Literal["any day"] | None,
    which: Mapping[str, bool],
    said: Mapping[str, object],
) -> Plan:
    from ..actions.plan import JOB_WISHES, plan_job
    from ..basics.value import changed

    return plan_job(at_desk, number, day, wishes=changed(JOB_WISHES, **said), **which)


def _show(found: Plan, xlsx: Path | None, json: bool) -> None:
    from ..documents.plan_paper import plan_text, plan_xlsx

    if xlsx:
        write(xlsx, plan_xlsx(found))
    show(found, plan_text(found), json)


def _show_schema(word: str) -> None:
    from ..documents.schemas import ANSWER_SCHEMA, BASKET_SCHEMA, shipped_schema

    name = BASKET_SCHEMA if one_word(word, "--schema", ("basket", "answer")) == "basket" else ANSWER_SCHEMA
    typer.echo(shipped_schema(name), nl=False)
