"""What is asked and found of a supplier's sheet, in words for a page, and its problems as CSV."""

from collections.abc import Iterable

from ..basics.problem import Place, Problem, at_counter
from ..basics.sheet import Column, Field
from ..basics.sheet_sample import Concern
from ..basics.value import changed
from .csv_text import csv_text

PROBLEM_HEADERS = ("Worksheet", "Row", "Column", "Text found", "What is wrong", "What to do")

FIELD_WORDS: dict[Field, str] = {
    "supplier number": "supplier number: what he is ordered by",
    "maker": "maker",
    "maker number": "maker number: the maker's own",
    "gtin": "GTIN: the number under a bar code",
    "description": "description",
    "list price": "list price: before any discount",
    "net price": "net price: what the shop pays",
    "discount code": "discount code: a letter",
    "discount": "discount: per cent off the list price",
    "multiplier": "multiplier: the list price times this",
    "price basis": "price basis: how many pieces a price is for",
    "currency": "currency",
    "pack": "pack: pieces in one",
    "order multiple": "order multiple: ordered by so many",
    "minimum": "minimum: fewest that can be ordered",
    "break quantity": "break quantity: from how many pieces the price of the row holds",
    "stock": "stock",
    "lead time": "lead time",
    "core charge": "core charge",
    "superseded by": "superseded by: the number that replaces it",
    "no longer available": "no longer available",
    "weight": "weight",
    "package length": "package length",
    "package width": "package width",
    "package height": "package height",
    "package dimensions": "package dimensions: all three in one",
    "oversize": "oversize",
    "hazardous": "hazardous",
    "returnable": "returnable",
    "origin": "origin: country",
    "tariff code": "tariff code",
    "valid from": "valid from",
    "valid to": "valid to",
    "note": "note: kept as words",
    "not used": "not used",
}


ANSWER_WORDS: dict[tuple[str, str], str] = {
    ("price-of-a-package", "price basis"): "a whole package: the price of one piece is a part of it",
    ("price-of-a-package", "not used"): "one piece",
    ("line-about-prices", "price basis"): "the line says what the prices are for",
    ("line-about-prices", "not used"): "the prices hold as they stand in the cells",
    ("two-worksheets", "not used"): "this worksheet does not count",
    ("net-price-gone", "not used"): "take the sheet without net prices",
}
"""What an answer to a question about something else than a column says."""

HEADINGS = {
    "price-of-a-package": "What the prices of a column are for",
    "two-worksheets": "A worksheet",
    "net-price-gone": "A column that is gone",
}
"""What is asked about where it is neither a column of the file nor a line in it."""


def answer_words(asked: Iterable[Problem], field: Field) -> str:
    """What it says to answer so, to what is asked."""
    return next((words for one in asked if (words := ANSWER_WORDS.get((one.code, field)))), FIELD_WORDS[field])


def asked_heading(asked: Iterable[Problem]) -> str:
    """What is asked about, where it is no column."""
    return next((words for one in asked if (words := HEADINGS.get(one.code))), "A line")


def field_options() -> tuple[tuple[str, str], ...]:
    """Every meaning with the words for it, what costs money or decides what is ordered first."""
    first: tuple[Field, ...] = ("not used", "supplier number", "maker", "maker number", "net price", "list price")
    rest = [field for field in FIELD_WORDS if field not in first]
    return tuple((field, FIELD_WORDS[field]) for field in (*first, *rest))


def asked_words(one: Problem) -> str:
    """A question without what answers it, where the page says that for several: where, and what is not clear."""
    return f"{_inside(one).fault()}."


def told_words(one: Problem) -> str:
    """A question, a problem or a note with what helps at the counter; which file it is the page says."""
    return at_counter(_inside(one)).sentence()


def wrong_words(one: Problem) -> str:
    """The same without its place, for a table that has a column for it."""
    return told_words(changed(one, place=None))


def meaning_words(column: Column) -> str:
    """'net price from 10', 'stock in Dallas'; 'not used' where nothing is known."""
    quantity = f" from {column.from_quantity}" if column.from_quantity is not None else ""
    place = f" in {column.place}" if column.place else ""
    return f"{column.field}{quantity}{place}" if column.field else "not used"


def concern_words(one: Concern) -> str:
    """'our BELT-AUGER; open job 2026-0001'."""
    jobs = f"; open {'job' if len(one.jobs) == 1 else 'jobs'} {', '.join(one.jobs)}" if one.jobs else ""
    return f"our {one.part}{jobs}"


def problems_csv(problems: Iterable[Problem]) -> str:
    """A row for each: where, the text as it stood, what is wrong, what to do."""
    return csv_text(PROBLEM_HEADERS, map(_cells, problems))


def _cells(one: Problem) -> tuple[str | int | None, ...]:
    place, shown = one.place or Place(), at_counter(one)
    return place.worksheet, place.row, place.column, one.found, shown.what, shown.remedy


def _inside(one: Problem) -> Problem:
    """The problem with its place inside the file alone."""
    return changed(one, place=changed(one.place, file="") if one.place else None)
