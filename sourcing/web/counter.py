"""What the counter is started with."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime


@dataclass(frozen=True)
class CounterSetup:
    """`database` is a file or an address. `outward` is the address people type and customers' links begin with.

    `first_code` must be typed to make the owner's log-in; blank where only this computer reaches the counter.
    `clock` gives local time without a zone. `hosts` are further names under which the counter may be asked for.
    """

    database: str
    outward: str = "http://127.0.0.1:8420"
    first_code: str = ""
    clock: Callable[[], datetime] = field(default=datetime.now)
    hosts: tuple[str, ...] = ()

    @property
    def is_https(self) -> bool:
        """Whether browsers reach it encrypted, so that cookies may be kept to that."""
        return self.outward.startswith("https://")
