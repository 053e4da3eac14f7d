"""The counter as a browser reaches it: over waitress, on a free port of this computer, with a clock tests can turn."""

import socket
import threading
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from flask import Flask
from waitress.server import create_server

from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web.world import NOW, new_database

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIEnvironment


class Switch:
    """One server for the whole run, in front of the counter of the test that runs: starting one takes a while."""

    def __init__(self) -> None:
        self.app: Flask | None = None
        self.socket = socket.socket()
        self.socket.bind(("127.0.0.1", 0))
        self.address = f"http://127.0.0.1:{self.socket.getsockname()[1]}"

    def __call__(self, environ: "WSGIEnvironment", start: "StartResponse") -> Iterable[bytes]:
        """Hand the request on; between two tests nobody answers."""
        if self.app is None:
            start("503 Service Unavailable", [])
            return []
        return self.app(environ, start)


class Counter:
    """The counter a test opens pages of. `at` is its clock, local time without a zone."""

    def __init__(self, address: str, database: Path) -> None:
        self.address, self.database, self.at = address, database, NOW

    def now(self) -> datetime:
        """Read the clock."""
        return self.at


@contextmanager
def switch() -> Iterator[Switch]:
    """Serve in a thread until the end."""
    made = Switch()
    sockets: dict[int, Any] = {}
    server: Any = create_server(made, map=sockets, sockets=[made.socket], threads=4, clear_untrusted_proxy_headers=True)
    thread = threading.Thread(target=server.run, name="counter", daemon=True)
    thread.start()
    try:
        yield made
    finally:
        # in the loop's own thread, which ends when nothing is left; it must not wait for what another thread closed
        server.trigger.pull_trigger(lambda: [one.close() for one in list(sockets.values())])
        server.task_dispatcher.shutdown()
        thread.join(timeout=5)


@contextmanager
def counter_behind(made: Switch, folder: Path) -> Iterator[Counter]:
    """The counter over a fresh copy of the test world (tests/web/world.py)."""
    counter = Counter(made.address, new_database(folder))
    app = make_app(CounterSetup(database=str(counter.database), outward=made.address, clock=counter.now))
    made.app = app
    try:
        yield counter
    finally:
        made.app = None
        app.config[STORE].close()
