"""Cells to values: prices, quantities, lead times, numbers, one module a kind."""
