"""Part numbers that are near one another: how a number gets damaged, and what a near one means."""
