"""The columns of a table to offers, and what costs a row or only its cell."""
