"""Commands of deposits and of the final paper."""

from __future__ import annotations

import typer


def register(app: typer.Typer) -> None:
    """Add these commands."""
