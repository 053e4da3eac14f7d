"""Bytes of a file to worksheets of cells: what is a row and what is a cell, and nothing of what they mean."""
