"""The command line's commands are built from their functions once in a process, as for a person who types one."""

from functools import cache

import typer.main
import typer.testing


def use() -> None:
    """From now on a command is built once in this process, however often it is run."""
    once = cache(typer.main.get_command)
    vars(typer.main).update(get_command=once)
    vars(typer.testing).update(_get_command=once)
