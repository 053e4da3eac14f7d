"""The command `sourcing`: every command gathers input, calls one action and shows the result."""

from __future__ import annotations

import sys
import tempfile
import traceback

import typer

from . import (
    alarm_commands,
    answer_commands,
    bill_commands,
    compare_command,
    demo_command,
    identity_commands,
    job_commands,
    landed_commands,
    margin_commands,
    match_commands,
    number_commands,
    order_change_commands,
    order_commands,
    plan_command,
    promise_commands,
    quote_commands,
    rate_commands,
    receive_commands,
    review_commands,
    serve_command,
    sheet_commands,
    table_commands,
    terms_commands,
)

app = typer.Typer(
    name="sourcing",
    help=(
        "Read suppliers' price sheets, find the right part under any number, compare what it costs at the door and "
        "when it comes, quote the customer, order what was approved, see what the job earned."
    ),
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
)
for module in (
    demo_command,
    sheet_commands,
    compare_command,
    terms_commands,
    rate_commands,
    table_commands,
    number_commands,
    match_commands,
    job_commands,
    plan_command,
    landed_commands,
    identity_commands,
    review_commands,
    quote_commands,
    answer_commands,
    order_commands,
    order_change_commands,
    alarm_commands,
    promise_commands,
    receive_commands,
    bill_commands,
    margin_commands,
    serve_command,
):
    module.register(app)


def run() -> None:
    """Run the command line. Exit 0 done, 1 data or decision, 2 usage, 3 a fault of the program."""
    from ..basics.problem import Refused

    try:
        app()
    except Refused as refusal:
        for one in refusal.problems:
            typer.echo(f"sourcing: {one.sentence()}", err=True)
        sys.exit(1)
    except BrokenPipeError:  # the reader of a pipe went away: nothing to tell anyone
        sys.exit(0)
    except Exception as fault:  # the last door: a fault is told as ours, never dressed up as the user's error
        with tempfile.NamedTemporaryFile(
            "w", prefix="sourcing-fault-", suffix=".txt", delete=False, encoding="utf-8"
        ) as kept:
            kept.write(traceback.format_exc())
        told = f"a fault of this program ({type(fault).__name__}), not of your files; details are in {kept.name}."
        typer.echo(f"sourcing: {told}", err=True)
        sys.exit(3)
