"""Commands of the equivalence table: write it out, take it in, check it, and what is done with one statement."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from . import part_commands
from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk, one_word
from .output import show, write

if TYPE_CHECKING:
    from collections.abc import Callable

    from ..actions.desk import Desk
    from ..basics.equivalence import Standing
    from ..basics.statement_history import KeptStatement

    Deed = Callable[[Desk, int, str], KeptStatement]

Number = Annotated[int, typer.Argument(help="Number of the statement, as 'sourcing numbers' shows it.")]
Reason = Annotated[str, typer.Option("--reason", help="Why, in words; it stays in the statement's history.")]
StandingOption = Annotated[
    str, typer.Option("--standing", help="How far it is trusted: fitted, maker, supplier or unchecked.")
]

table = typer.Typer(
    name="table",
    help="The equivalence table: statements that numbers stand for the same part.",
    rich_markup_mode=None,
    no_args_is_help=True,
)


def register(app: typer.Typer) -> None:
    """Add these commands."""
    part_commands.add_to(table)
    app.add_typer(table)


@table.command("export")
def export(
    to: Annotated[Path, typer.Argument(help="A file that ends in .xlsx, or a folder for CSV files.")],
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """Write the table out, to be edited and taken in again."""
    from ..actions.equivalences import table_to_write
    from ..basics.problem import refused
    from ..documents.equivalences import export_text, table_csvs, table_xlsx

    sheets = table_to_write(desk(database, None, ""))
    if to.suffix.casefold() == ".xlsx":
        write(to, table_xlsx(sheets))
    elif to.suffix:
        raise refused("table-file-kind", found=to.name)
    else:
        _make_folder(to)
        for name, text in table_csvs(sheets).items():
            write(to / name, text)
    show(
        {"file": str(to), "rows": {name: len(rows) for name, (_, rows) in sheets.items()}},
        export_text(sheets, str(to)),
        json,
    )


@table.command("import")
def import_(
    file: Annotated[Path, typer.Argument(help="The edited .xlsx, or the folder of the CSV files.")],
    look: Annotated[bool, typer.Option("--look", help="Only say what would change.")] = False,
    keep_good: Annotated[
        bool, typer.Option("--keep-good", help="Leave rows that can't be used out and keep the others.")
    ] = False,
    withdraw_missing: Annotated[
        str, typer.Option("--withdraw-missing", help="Withdraw statements not in the file, for this reason.")
    ] = "",
    file_wins: Annotated[
        bool, typer.Option("--file-wins", help="Let the file undo what was changed since it was written.")
    ] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take an edited table in and say what changed. What is not in the file stays, unless told otherwise.

    What was changed since the file was written stays too, and is told.
    """
    from ..actions.table_import import Wanted, import_table
    from ..documents.equivalences import changes_text

    wanted = Wanted(look=look, keep_good=keep_good, withdraw_missing=withdraw_missing, file_wins=file_wins)
    found = import_table(desk(database, at, who), file, wanted)
    show(found, changes_text(found), json)
    if found.problems and not found.done:
        raise typer.Exit(1)


@table.command("check")
def check(database: Database = DEFAULT_DATABASE, json: Json = False) -> None:
    """List what to look at in the table, each with its statements. Exit 1 if anything contradicts itself."""
    from ..actions.equivalences import contradictions, is_contradiction
    from ..documents.table_check import check_text

    found = contradictions(desk(database, None, ""))
    show(found, check_text(found), json)
    if any(map(is_contradiction, found)):
        raise typer.Exit(1)


@table.command("add")
def add(
    left: Annotated[str, typer.Argument(help="maker:number, ours:CODE for our own part, :NUMBER if nobody knows.")],
    relation: Annotated[
        str,
        typer.Argument(
            help="'same part', 'superseded by', 'substitute' (RIGHT may serve where LEFT is asked for), 'kit contains' "
            "or 'must not' (RIGHT must not serve where LEFT is asked for)."
        ),
    ],
    right: Annotated[str, typer.Argument(help="The other number, written the same way.")],
    source: Annotated[str, typer.Option("--source", help="Where it is said: which list, letter or job.")],
    standing: StandingOption = "unchecked",
    condition: Annotated[str, typer.Option("--condition", help="When it holds, in words.")] = "",
    machine: Annotated[str, typer.Option("--machine", help="Model of the only machine it holds for.")] = "",
    serial_from: Annotated[str, typer.Option("--serial-from", help="First serial number it holds for.")] = "",
    serial_to: Annotated[str, typer.Option("--serial-to", help="Last serial number it holds for.")] = "",
    count: Annotated[int, typer.Option("--count", help="How many of them the kit contains.")] = 1,
    stated_on: Annotated[
        datetime | None, typer.Option("--stated-on", formats=["%Y-%m-%d"], help="When it was said. Left out: today.")
    ] = None,
    stated_by: Annotated[str, typer.Option("--stated-by", help="Who says it. Left out: who does this.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Add one statement, read from left to right: LEFT is the 'same part' as RIGHT; LEFT is 'superseded by' RIGHT;
    'substitute': RIGHT may serve where LEFT is asked for; the kit LEFT 'kit contains' RIGHT; 'must not': RIGHT must not
    serve where LEFT is asked for. What the check of the table finds about it is said at once.
    """
    from ..actions.statement_add import Told, add_statement
    from ..documents.table_check import added_text

    told = Told(
        left=left,
        relation=relation,
        right=right,
        source=source,
        standing=standing,
        condition=condition,
        machine=machine,
        serial_from=serial_from,
        serial_to=serial_to,
        count=count,
        stated_on=stated_on.date() if stated_on else None,
        stated_by=stated_by,
    )
    kept = add_statement(desk(database, at, who), told)
    show(kept, added_text(kept, kept.findings), json)


def _with_reason(name: str, told: str, find: Callable[[], Deed]) -> None:
    """Add a command that does something to one statement for a reason. `find` loads what it does when it is run."""

    @table.command(name, help=told)
    def command(
        number: Number,
        reason: Reason,
        database: Database = DEFAULT_DATABASE,
        at: At = None,
        who: Who = "",
        json: Json = False,
    ) -> None:
        _show(find()(desk(database, at, who), number, reason), json)


def _doubt() -> Deed:
    from ..actions.statement_deeds import doubt_statement

    return doubt_statement


_with_reason("doubt", "Doubt a statement: it counts as unchecked until somebody answers.", _doubt)


@table.command("answer")
def answer(
    number: Number,
    reason: Reason,
    standing: StandingOption = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Lay the doubt about a statement aside, perhaps with another standing."""
    from ..actions.statement_deeds import answer_doubt

    trust = _standing(standing) if standing else None
    _show(answer_doubt(desk(database, at, who), number, reason, trust), json)


@table.command("standing")
def standing(
    number: Number,
    standing: Annotated[str, typer.Argument(help="fitted, maker, supplier or unchecked.")],
    reason: Reason,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Trust a statement more or less than before."""
    from ..actions.statement_deeds import set_standing

    _show(set_standing(desk(database, at, who), number, _standing(standing), reason), json)


def _withdraw() -> Deed:
    from ..actions.statement_deeds import withdraw_statement

    return withdraw_statement


def _restore() -> Deed:
    from ..actions.statement_deeds import restore_statement

    return restore_statement


_with_reason("withdraw", "Let a statement count no more. It is not deleted.", _withdraw)
_with_reason("restore", "Let a withdrawn statement count again.", _restore)


@table.command("history")
def history(number: Number, database: Database = DEFAULT_DATABASE, json: Json = False) -> None:
    """Show a statement and all that happened to it."""
    from ..actions.statement_deeds import statement_history

    _show(statement_history(desk(database, None, ""), number), json)


@table.command("maker")
def maker(
    name: Annotated[str, typer.Argument(help="What suppliers write on their sheets.")],
    stands_for: Annotated[str, typer.Argument(metavar="MAKER", help="The maker as the shop writes it.")] = "",
    remove: Annotated[bool, typer.Option("--remove", help="Let the name stand for nobody else any more.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Keep another name of a maker, or take it away."""
    from ..actions.maker_names import add_maker_name, remove_maker_name
    from ..documents.equivalences import alias_words

    if remove == bool(stands_for):
        raise typer.BadParameter("say the maker the name stands for, or --remove")
    at_desk = desk(database, at, who)
    one = remove_maker_name(at_desk, name) if remove else add_maker_name(at_desk, name, stands_for)
    show(one, f"{alias_words(one)}{' no longer' if remove else ''}.", json)


@table.command("makers")
def makers(database: Database = DEFAULT_DATABASE, json: Json = False) -> None:
    """List the other names of makers."""
    from ..actions.maker_names import maker_names
    from ..documents.equivalences import aliases_text

    found = maker_names(desk(database, None, ""))
    show(found, aliases_text(found), json)


def _show(kept: KeptStatement, json: bool) -> None:
    from ..documents.equivalences import history_text

    show(kept, history_text(kept), json)


def _standing(word: str) -> Standing:
    from ..basics.equivalence import STANDINGS

    return one_word(word, "standing", STANDINGS)


def _make_folder(folder: Path) -> None:
    from ..basics.problem import refused

    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise refused("can-not-write", found=str(folder), why=error.strerror or "the system refused") from None
