"""Options that several commands share, and what they turn into."""

from __future__ import annotations

import getpass
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from ..basics.typed import amount, count, measure, one_word

if TYPE_CHECKING:
    from ..actions.desk import Desk

Database = Annotated[
    str,
    typer.Option(
        "--database", envvar="SOURCING_DATABASE", help="File that holds the shop's data, or a database address."
    ),
]
Sure = Annotated[
    bool, typer.Option("--sure", help="Figures far from usual or from the last ones are right as they stand.")
]
At = Annotated[
    datetime | None,
    typer.Option(
        "--at",
        envvar="SOURCING_AT",
        formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M", "%Y-%m-%d"],
        help="Work as if it were this moment. Left out: now.",
    ),
]
Who = Annotated[
    str, typer.Option("--who", envvar="SOURCING_WHO", help="Who does it. Left out: the name you are logged in as.")
]
Json = Annotated[bool, typer.Option("--json", help="Print the result as JSON.")]
Day = Annotated[
    datetime | None,
    typer.Option("--need-by", formats=["%Y-%m-%d"], help="Day by which the parts must be in the shop."),
]
AnyDay = Annotated[
    bool,
    typer.Option("--any-day", help="Whatever day the parts come, also where no day is known; not the job's own day."),
]
Xlsx = Annotated[Path | None, typer.Option("--xlsx", help="Also write it as a workbook to this file.")]

__all__ = ["amount", "count", "measure", "one_word"]

DEFAULT_DATABASE = "sourcing.db"


def desk(database: str, at: datetime | None, who: str) -> Desk:
    """The open desk for these options."""
    from ..actions.desk import open_desk
    from ..basics.contradiction import FIRST_YEAR, LAST_YEAR
    from ..basics.problem import refused

    moment = at or datetime.now().replace(second=0, microsecond=0)
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise refused("moment-far-off", found=moment.date(), first=FIRST_YEAR, last=LAST_YEAR)
    return open_desk(database, moment, who or _login_name())


def day_or_any(need_by: datetime | None, any_day: bool) -> date | Literal["any day"] | None:
    """The day that was said, or that any will do; None: nothing was said. Raises the error of usage for both."""
    if need_by and any_day:
        raise typer.BadParameter("--need-by and --any-day exclude each other")
    return "any day" if any_day else need_by.date() if need_by else None


def pairs(texts: list[str], example: str = "1=2") -> dict[str, str]:
    """'1=2' style arguments as a dict, in order."""
    from ..basics.problem import refused

    result = {}
    for text in texts:
        key, sign, value = text.rpartition("=")
        if not sign or not key or not value:
            raise refused("not-a-pair", found=text, example=example)
        result[key.strip()] = value.strip()
    return result


def _login_name() -> str:
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):  # no login name on this machine, as in a bare container
        return "unknown"
