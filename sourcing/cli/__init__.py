"""Typer commands: gather input, call one action, show the result."""
