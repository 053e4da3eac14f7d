"""Commands of what happens to an order afterwards: confirmed, changed, cancelled."""

from __future__ import annotations

import typer


def register(app: typer.Typer) -> None:
    """Add these commands."""
