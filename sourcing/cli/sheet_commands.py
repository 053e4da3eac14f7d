"""Commands of the clerk's desk: set up, import sheets, look at them, undo."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Sure, Who, Xlsx, count, desk, pairs
from .output import progress, show, show_bytes, show_csv, write

if TYPE_CHECKING:
    from ..actions.import_sheets import Said
    from ..basics.problem import Refused
    from ..basics.sheet import Field

Supplier = Annotated[str, typer.Option("--supplier", help="Whose sheets they are. Left out: the name of their folder.")]
Dated = Annotated[
    datetime | None,
    typer.Option("--dated", formats=["%Y-%m-%d"], help="Day from which the prices hold. Left out: from the file name."),
]
ColumnMeanings = Annotated[
    list[str] | None,
    typer.Option("--column", help='What a column means, such as --column "Price=net price"; remembered on import.'),
]
ColumnsFile = Annotated[
    Path | None,
    typer.Option("--columns", help="A file that says what the columns mean, as 'read --write-columns' makes it."),
]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("setup")(setup)
    app.command("import")(import_)
    app.command("read")(read)
    app.command("changes")(changes)
    app.command("sheets")(sheets)
    app.command("undo")(undo)


def setup(
    folder: Annotated[Path, typer.Argument(help="Folder with shop.toml, suppliers.toml, rates.csv, equivalence.xlsx.")],
    keep_good: Annotated[
        bool, typer.Option("--keep-good", help="Leave rows of the table that can't be used out and keep the others.")
    ] = False,
    sure: Sure = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take in the shop's settings, suppliers' terms, exchange rates and equivalence table."""
    from ..actions.setup import set_up
    from ..documents.equivalences import set_up_text
    from ..documents.terms import warnings_text

    done = set_up(desk(database, at, who), folder, keep_good, sure)
    text = (
        f"Read {', '.join(done.files)}: {done.suppliers} suppliers, {done.rates} exchange rates, "
        f"{done.parts} of our parts, {done.statements} statements.{set_up_text(done.changes)}"
        f"{warnings_text(done.warnings)}"
    )
    show(done, text, json)


def import_(
    paths: Annotated[list[Path], typer.Argument(help="Sheets, or folders of sheets.")],
    supplier: Supplier = "",
    dated: Dated = None,
    column: ColumnMeanings = None,
    columns: ColumnsFile = None,
    without_prices: Annotated[
        bool, typer.Option("--without-prices", help="Keep a sheet though no row of it has a net price.")
    ] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take in suppliers' price sheets: all of them, or none if one is refused."""
    from ..actions.import_sheets import import_sheets
    from ..actions.left_by_import import left_by_import
    from ..basics.value import changed
    from ..documents.sheets import import_text, same_bytes_text

    at_desk, said = desk(database, at, who), _said(supplier, dated, column, columns)
    with progress() as tell:
        done = import_sheets(at_desk, paths, changed(said, without_prices=without_prices), tell)
        done = left_by_import(at_desk, done, tell)
    texts = [
        same_bytes_text(one.kept, bool(column or columns))
        if one.summary is None
        else import_text(one.kept, one.summary, one.changed, one.left)
        for one in done
    ]
    show(done, "\n\n".join(texts), json)


def _refused(error: Refused, file: Path, said: Said, json: bool, write_columns: Path | None) -> None:
    """What can still be given of a sheet that could not be read: why, and its columns to fill in."""
    from ..actions.read_file import columns_to_fill
    from ..documents.sheet_json import refusal_json
    from ..documents.sheets import columns_file

    if json:
        show_bytes(refusal_json(file.name, error.problems))
    columns = columns_to_fill(file, said) if write_columns else ()
    if write_columns and columns:
        write(write_columns, columns_file(file.name, columns))


def read(
    file: Annotated[Path, typer.Argument(help="The sheet to read.")],
    currency: Annotated[str, typer.Option("--currency", help="Its currency, where the sheet does not say.")] = "",
    column: ColumnMeanings = None,
    columns: ColumnsFile = None,
    write_columns: Annotated[
        Path | None, typer.Option("--write-columns", help="Write what the columns mean to this file, to correct.")
    ] = None,
    grid: Annotated[bool, typer.Option("--grid", help="Print every row of the file as plain CSV.")] = False,
    table: Annotated[bool, typer.Option("--table", help="Print the table alone, header and body, as CSV.")] = False,
    json: Json = False,
) -> None:
    """Read a sheet and say what it holds, without keeping anything. Exit 1 if it leaves a question open."""
    from ..actions.read_file import read_only, rows_of, table_of
    from ..basics.problem import Refused
    from ..documents.sheet_json import reading_json
    from ..documents.sheets import columns_file, summary_text

    if grid + table + json > 1:
        raise typer.BadParameter("say one of --grid, --table and --json")
    said = _said("", None, column, columns)
    if grid:
        show_csv(rows_of(file))
        return
    if table:
        found = table_of(file, said)
        show_csv(found.all_rows)
        if found.others:
            typer.echo(f"sourcing: {found.others} more tables are in the file; this is the longest.", err=True)
        return
    try:
        with progress() as tell:
            reading = read_only(file, said, currency, tell)
    except Refused as error:
        _refused(error, file, said, json, write_columns)
        raise
    if write_columns:
        write(write_columns, columns_file(file.name, reading.summary.columns))
    if json:
        show_bytes(reading_json(reading.summary, reading.offers, reading.structure))
    else:
        show(reading.summary, summary_text(reading.summary), False)
    if reading.summary.questions:
        raise typer.Exit(1)


def changes(
    supplier: Annotated[str, typer.Argument(help="The supplier, by the name of his folder.")],
    sheet: Annotated[
        int | None, typer.Option("--sheet", help="The later sheet, by its number. Left out: his latest.")
    ] = None,
    against: Annotated[
        int | None, typer.Option("--against", help="The earlier sheet. Left out: the one before it.")
    ] = None,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """Show what rose, fell, vanished, appeared and was superseded between two sheets of a supplier."""
    from ..actions.changes import sheet_changes
    from ..documents.changes import changes_text, changes_xlsx

    found = sheet_changes(desk(database, None, ""), supplier, sheet, against)
    if xlsx:
        write(xlsx, changes_xlsx(found))
    show(found, changes_text(found), json)


def sheets(database: Database = DEFAULT_DATABASE, at: At = None, json: Json = False) -> None:
    """List the sheets that are kept, and which of each supplier counts that day."""
    from ..actions.import_sheets import sheets as kept
    from ..documents.sheets import sheets_text

    found = kept(desk(database, at, ""))
    show(found, sheets_text(found), json)


def undo(
    sheet: Annotated[int, typer.Argument(help="Number of the sheet, as 'sourcing sheets' shows it.")],
    look: Annotated[
        bool, typer.Option("--look", help="Only say which open quotes and orders were worked out from it.")
    ] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take an imported sheet out again."""
    from ..actions.import_sheets import undo_import
    from ..actions.sheet_users import worked_out_from
    from ..documents.sheets import worked_out_text

    at_desk = desk(database, at, who)
    found = worked_out_from(at_desk, sheet)
    told = worked_out_text(sheet, [(one.job, one.customer, one.order, one.words()) for one in found])
    if look:
        show(found, told, json)
        return
    gone = undo_import(at_desk, sheet)
    text = f"Took sheet {gone.sheet} out again: {gone.file} of {gone.supplier}, {gone.offers} offers."
    show(gone, f"{text}\n{told}" if found else text, json)


def _said(supplier: str, dated: datetime | None, columns: list[str] | None, file: Path | None = None) -> Said:
    from ..actions.import_sheets import Said
    from ..actions.read_file import columns_from

    named = {**(columns_from(file) if file else {}), **pairs(columns or [], '"Price=net price"')}
    fields, quantities = _meanings(named)
    return Said(supplier=supplier, dated=dated.date() if dated else None, columns=fields, quantities=quantities)


def _meanings(columns: dict[str, str]) -> tuple[dict[str, Field], dict[str, int]]:
    """What each column means, and the quantity where it is said, as in 'net price from 10'."""
    from typing import get_args

    from ..basics.problem import refused
    from ..basics.sheet import Field

    fields, quantities = {}, {}
    for header, words in columns.items():
        field, _, quantity = words.partition(" from ")
        if quantity and field == "net price":
            quantities[header] = count(quantity)
        elif quantity:
            field = words
        if words.startswith("stock in "):  # as 'read --write-columns' shows it; the warehouse stands in the header
            field = "stock"
        if field not in get_args(Field):
            raise refused("unknown-word", found=words, column=header, known=", ".join(get_args(Field)))
        fields[header] = field
    return fields, quantities  # type: ignore[return-value]
