"""`sourcing serve`: the counter, pages for clerk, technician, owner and customer, served from this computer."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from datetime import datetime
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database

LOOPBACK = ("127.0.0.1", "localhost", "::1")
PORT = 8420
CODE_BYTES = 6


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("serve")(serve)


def serve(
    database: Database = DEFAULT_DATABASE,
    host: Annotated[
        str, typer.Option("--host", help="Address to listen at; left out, only this computer reaches the counter.")
    ] = LOOPBACK[0],
    port: Annotated[int, typer.Option("--port", help="Port to listen at.", min=1, max=65535)] = PORT,
    outward: Annotated[
        str,
        typer.Option("--address", help="Address people reach the counter at, where it differs: https://shop.example."),
    ] = "",
    behind: Annotated[
        str, typer.Option("--behind", help="Address of the proxy that brings https, whose word on visitors counts.")
    ] = "",
    at: At = None,
) -> None:
    """Serve the counter until it is stopped with Ctrl+C. The first visit makes the owner's log-in."""
    from ..web.counter import CounterSetup
    from ..web.serving import serve_counter

    shown = f"[{host}]" if ":" in host else host
    only_here = host in LOOPBACK and not outward
    setup = CounterSetup(
        database=database,
        outward=(outward or f"http://{shown}:{port}").rstrip("/"),
        first_code="" if only_here else secrets.token_hex(CODE_BYTES),
        clock=_clock(at),
    )
    serve_counter(setup, host, port, behind, typer.echo)


def _clock(at: datetime | None) -> Callable[[], datetime]:
    """This computer's clock, or one that goes on from the moment said."""
    if at is None:
        return datetime.now
    ahead = at - datetime.now()
    return lambda: datetime.now() + ahead
