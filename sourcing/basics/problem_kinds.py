"""Every kind of problem the program tells a person of, in one table: code, title, wording, remedy.

A message is written once, here; pages, command line and documents only show it.
"""

from .problem_kind import ProblemKind
from .sheet_problem_kinds import SHEET_KINDS


def _kind(title: str, what: str, remedy: str) -> ProblemKind:
    return ProblemKind(title=title, what=what, remedy=remedy)


KINDS: dict[str, ProblemKind] = {
    **SHEET_KINDS,
    "currencies-mixed": _kind(
        "Two currencies in one sum",
        "{one} and {other} can't be added without a dated rate",
        "add a rate to rates.csv and run 'sourcing setup' again",
    ),
    "unknown-currency": _kind(
        "Unknown currency",
        "'{found}' is not a currency code of ISO 4217",
        "write the three-letter code, such as USD or EUR",
    ),
    "no-rate": _kind(
        "No exchange rate",
        "the rate table has no rate from {currency} to {into} on or before {day}",
        "add one with its date to rates.csv and run 'sourcing setup' again",
    ),
    "terms-contradict": _kind(
        "Supplier's terms contradict",
        "the terms of '{supplier}' can't hold: {found}",
        "correct suppliers.toml and run 'sourcing setup' again",
    ),
    "settings-contradict": _kind(
        "Settings contradict",
        "the shop's settings can't hold: {found}",
        "correct shop.toml and run 'sourcing setup' again",
    ),
    "job-contradicts": _kind("Job contradicts", "the job can't hold: {found}", "correct the job file and try again"),
}
