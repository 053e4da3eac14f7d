"""Commands of promised days: what is open, oldest first."""

from __future__ import annotations

import typer


def register(app: typer.Typer) -> None:
    """Add these commands."""
