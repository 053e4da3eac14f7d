"""Commands of alarms: what is no longer as approved, and the way out a person takes."""

from __future__ import annotations

import typer


def register(app: typer.Typer) -> None:
    """Add these commands."""
