"""Show a result: as text, as JSON, or written to a file whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import typer


def show(value: object, text: str, as_json: bool) -> None:
    """Print the value as JSON or its text."""
    if as_json:
        from ..basics.value import to_json

        typer.echo(to_json(value).decode())
    else:
        typer.echo(text.rstrip("\n"))


def write(path: Path, content: str | bytes) -> None:
    """Write a file beside its final name and move it there, so that nothing half-written is left."""
    from ..basics.problem import refused

    data = content.encode() if isinstance(content, str) else content
    part = path.with_name(path.name + ".part")
    try:
        part.write_bytes(data)
        os.replace(part, path)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise refused("can-not-write", found=str(path), why=error.strerror or "the system refused") from None
