"""Extras given away, as text for the shop. For the owner's eyes: it carries costs and never goes to a customer."""

from collections.abc import Iterator, Sequence

from ..basics.bill import GivenAway
from ..basics.money import total
from .plain_text import document, wrapped


def given_away_text(job: str, found: Sequence[GivenAway]) -> str:
    """What was given away on a job and what it cost in all."""
    if not found:
        return f"Nothing was given away on job {job}.\n"
    lines = wrapped(f"Given away on job {job}: never approved, never billed.")
    lines += [line for words in given_away_lines(found) for line in wrapped(words, 2)]
    currencies = dict.fromkeys(one.cost.currency for one in found)
    costs = [total((one.cost for one in found if one.cost.currency == each), each) for each in currencies]
    return document([*lines, f"Cost in all: {', '.join(map(str, costs))}."])


def given_away_lines(found: Sequence[GivenAway]) -> Iterator[str]:
    """Each extra in a sentence: what, its cost, the price never charged, who and why."""
    for one in found:
        price = "price not known" if one.price is None else f"price never charged {one.price}"
        yield f"{one.at:%Y-%m-%d %H:%M}  {one.what}: cost {one.cost}, {price}, by {one.who}: {one.words}"
