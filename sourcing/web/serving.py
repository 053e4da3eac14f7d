"""Serve the counter with waitress, which runs as it is on Windows, macOS and Linux."""

import logging
from collections.abc import Callable
from contextlib import suppress
from threading import Thread
from typing import Any

from flask import Flask
from waitress.server import create_server

from ..actions.desk import Desk
from ..actions.first_pages import ready_first_pages
from ..actions.people import today_at
from ..basics.problem import refused
from .app import MOST_BYTES, make_app
from .counter import CounterSetup
from .desks import NOBODY, STORE

THREADS = 8
"""Pages made at once; ten people clicking are two or three at any moment."""

SLACK = 1_048_576


def serve_counter(setup: CounterSetup, host: str, port: int, behind: str, say: Callable[[str], None]) -> None:
    """Serve until stopped. `say` tells where it is reached. Refuses a port or address that can't be had."""
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)  # that somebody waited a moment is no news
    app = make_app(setup)
    proxy: dict[str, Any] = {}
    if behind:
        proxy = {"trusted_proxy": behind, "trusted_proxy_headers": "x-forwarded-for x-forwarded-proto"}
    try:
        server = create_server(
            app,
            host=host,
            port=port,
            threads=THREADS,
            ident=None,  # nobody needs to know what serves this
            max_request_body_size=MOST_BYTES + SLACK,
            clear_untrusted_proxy_headers=True,
            **proxy,
        )
    except (OSError, ValueError) as error:
        raise refused("can-not-listen", found=f"{host}:{port}", why=getattr(error, "strerror", None) or error) from None
    say(f"The counter is at {setup.outward} (stop it with Ctrl+C).")
    if setup.first_code:
        say(f"Code for the owner's first log-in, if nobody made it yet: {setup.first_code}")
    if not setup.outward.startswith("https://") and setup.first_code:
        say("Others on the network could read what is sent without https; see README, 'The counter'.")
    Thread(target=_ready, args=(app, setup), name="first-pages", daemon=True).start()
    try:
        server.run()  # ends by itself at Ctrl+C, unless that comes just before or while it ends
    except KeyboardInterrupt:
        pass
    finally:
        server.close()
    say("Stopped.")


def _ready(app: Flask, setup: CounterSetup) -> None:
    """So that nobody waits for what the first pages need. What goes wrong here goes wrong there, and is told there."""
    with suppress(Exception):
        ready_first_pages(Desk(store=app.config[STORE], at=today_at(setup.clock()), who=NOBODY))
