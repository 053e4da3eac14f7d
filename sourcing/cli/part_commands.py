"""Commands of one part of ours: add it, change what is said of it, take it out again."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show

if TYPE_CHECKING:
    from ..basics.our_part import KeptPart

Code = Annotated[str, typer.Argument(help="The shop's own code for the part.")]


def add_to(table: typer.Typer) -> None:
    """Add these commands to those of the table."""
    table.command("add-part")(add_part)
    table.command("change-part")(change_part)
    table.command("take-part-out")(take_part_out)


def add_part(
    code: Code,
    name: Annotated[str, typer.Option("--name", help="What it is, such as 'Auger drive belt'.")] = "",
    size: Annotated[str, typer.Option("--size", help="Its size by a published standard: B36, 6203-2RS, #40.")] = "",
    category: Annotated[str, typer.Option("--category", help="Such as belt or bearing.")] = "",
    note: Annotated[str, typer.Option("--note", help="Anything else.")] = "",
    cord: Annotated[str, typer.Option("--cord", help="The cord an offer must have, such as aramid.")] = "",
    cover: Annotated[str, typer.Option("--cover", help="The cover an offer must have, such as wrapped.")] = "",
    cogs: Annotated[str, typer.Option("--cogs", help="cogged or plain.")] = "",
    side: Annotated[str, typer.Option("--side", help="left or right.")] = "",
    sold_as: Annotated[str, typer.Option("--sold-as", help="each, pair, 'matched set' or kit.")] = "",
    pieces: Annotated[str, typer.Option("--pieces", help="How many a set or kit holds.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Add a part of ours; statements then say under which numbers it is sold ('sourcing table add')."""
    from ..actions import part_deeds
    from ..basics.our_part import PartTold

    asked = {"cord": cord, "cover": cover, "cogs": cogs, "side": side, "sold_as": sold_as, "pieces": pieces}
    told = PartTold(code=code, name=name, size=size, category=category, note=note, **asked)
    _show(part_deeds.add_part(desk(database, at, who), told), json)


def change_part(
    code: Code,
    name: Annotated[str | None, typer.Option("--name", help="What it is. What is left out stays.")] = None,
    size: Annotated[str | None, typer.Option("--size", help="Its size; '' for none.")] = None,
    category: Annotated[str | None, typer.Option("--category", help="Such as belt or bearing.")] = None,
    note: Annotated[str | None, typer.Option("--note", help="Anything else.")] = None,
    cord: Annotated[str | None, typer.Option("--cord", help="The cord an offer must have.")] = None,
    cover: Annotated[str | None, typer.Option("--cover", help="The cover an offer must have.")] = None,
    cogs: Annotated[str | None, typer.Option("--cogs", help="cogged or plain.")] = None,
    side: Annotated[str | None, typer.Option("--side", help="left or right.")] = None,
    sold_as: Annotated[str | None, typer.Option("--sold-as", help="each, pair, 'matched set' or kit.")] = None,
    pieces: Annotated[str | None, typer.Option("--pieces", help="How many a set or kit holds.")] = None,
    look: Annotated[bool, typer.Option("--look", help="Only say what would change.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Change what is said of a part of ours, and say which offers another size holds back or lets through."""
    from ..actions.part_deeds import change_part, look_at_change, opened_part
    from ..basics.our_part import told_of
    from ..basics.value import changed

    texts = {"name": name, "size": size, "category": category, "note": note, "cord": cord, "cover": cover}
    texts |= {"cogs": cogs, "side": side, "sold_as": sold_as, "pieces": pieces}
    at_desk = desk(database, at, who)
    before = told_of(opened_part(at_desk, code).part)
    told = changed(before, **{field: text for field, text in texts.items() if text is not None})
    _show((look_at_change if look else change_part)(at_desk, told), json)


def take_part_out(
    code: Code,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take a part of ours out again: only one that no statement and no job names."""
    from ..actions.part_deeds import take_part_out

    gone = take_part_out(desk(database, at, who), code)
    show(gone, f"{gone.code} is no part of ours any more.", json)


def _show(kept: KeptPart, json: bool) -> None:
    from ..documents.our_part import kept_text

    show(kept, kept_text(kept), json)
