"""Candidates that wait for a person, her answers to them, and what tells one row of a supplier's sheet from another."""

from collections.abc import Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .equivalence import OurPart
from .money import Money
from .offer import Offer
from .part_number import OURS, PartNumber, maker_key
from .problem import Problem
from .value import Value

Answer = Literal["yes", "no"]

Trust = Literal["unchecked", "fitted"]
"""Standing of the statement that a yes makes: nobody has fitted it yet, or the shop has and it served."""

How = Literal["alone", "file", "by score"]
"""One by one, in a file that was read back, or many at once because of their score. Nothing is learnt from the last:
the score would only be told what it said itself."""


class RowKeys(Value, frozen=True, kw_only=True):
    """By what a row is known again on a later sheet: its supplier and the keys of its numbers and maker, blank or not.

    `maker` is the key of the name the shop uses. Without a number of the maker's own, the supplier's is the maker's.
    `reads`: its description, spaces and case set aside; it tells nothing of which row it is, only how it reads.
    """

    supplier: str
    supplier_key: str
    maker: str = ""
    maker_number_key: str = ""
    reads: str = ""

    @property
    def makers_number(self) -> tuple[str, str] | None:
        """Maker key and number key where the row names its maker: the same at every supplier. Else None."""
        number = self.maker_number_key or self.supplier_key
        return (self.maker, number) if self.maker and number else None


def reads_as(description: str) -> str:
    """A description as two of them are compared: spaces and case set aside."""
    return " ".join(description.casefold().split())


class KeptCandidate(Value, frozen=True, kw_only=True):
    """A part that a row of a sheet may be, as it was found; `candidate` is the number a person names it by.

    `score` is between 0 and 1; `rank` 1 is the likeliest part of the row; `reasons`, `against` and `facts` as in
    `basics.match.RowMatch`.
    """

    candidate: int
    offer: Offer
    part: str
    score: float
    rank: int
    reasons: tuple[str, ...]
    against: bool
    facts: tuple[int, ...]
    found_at: datetime


class Waiting(Value, frozen=True, kw_only=True):
    """A candidate in the queue. `price` is for one piece in the shop's currency, None where it is not known.

    `asked` counts the lines of jobs that call for the part and the days it was looked up on. `worth` is in the shop's
    currency, None without a price. `near`: the row's number and the number of the part that are most alike, None
    where the part has no number to set beside it.
    """

    kept: KeptCandidate
    part: OurPart
    supplier_name: str
    price: Money | None
    asked: int
    worth: Money | None
    near: tuple[PartNumber, PartNumber] | None = None


class ReviewQueue(Value, frozen=True, kw_only=True):
    """What waits: rows and candidates in all, and those shown, most worth first; all parts of one row together."""

    supplier: str
    rows: int
    candidates: int
    shown: tuple[Waiting, ...]
    not_looked_through: tuple[int, ...] = ()
    """Sheets that count and in which nobody has looked for candidates yet."""
    table_changed_since: tuple[int, ...] = ()
    """Sheets looked through before our parts or statements changed: there may be more on them by now."""
    likely: int = 0
    """Rows, of all that wait, with a candidate of a score of one half or more against which nothing speaks."""


class Judgement(Value, frozen=True, kw_only=True):
    """A person's answer to a candidate, with what she was shown. It is never deleted; it can be taken back.

    `candidate` is the number it had. `standing` is blank with a no. `statement` is the number of the statement that
    the yes made. `judgement` is None before it is kept.
    """

    candidate: int
    supplier: str
    supplier_number: str
    maker: str
    maker_number: str
    description: str
    sheet: int
    sheet_date: date
    part: str
    answer: Answer
    how: How
    at: datetime
    who: str
    score: float
    against: bool
    reasons: tuple[str, ...]
    facts: tuple[int, ...]
    standing: Literal["", "unchecked", "fitted"] = ""
    statement: int | None = None
    words: str = ""
    taken_back_at: datetime | None = None
    taken_back_by: str = ""
    taken_back_why: str = ""
    judgement: int | None = None

    @property
    def in_force(self) -> bool:
        """Whether nobody has taken it back."""
        return self.taken_back_at is None


class RowYes(Value, frozen=True, kw_only=True):
    """A person's yes to a row as one of our parts: the row as she read it, who, when, why; blank: no reason."""

    supplier: str
    supplier_number: str
    maker: str
    maker_number: str
    description: str
    part: str
    who: str
    on: date
    words: str = ""

    def sentence(self, against: Sequence[str]) -> str:
        """'judged to be BELT by Oona Brandeth on 2026-03-02: same bag (although: ...)'."""
        why = f": {self.words}" if self.words else ""
        return f"judged to be {self.part} by {self.who} on {self.on}{why} (although: {'; '.join(against)})"


class AnswerKept(Value, frozen=True, kw_only=True):
    """An answer kept, and what follows from it as a sentence; `row` is its row in the file it was read from."""

    judgement: Judgement
    told: str
    row: int | None = None


class SheetLookedThrough(Value, frozen=True, kw_only=True):
    """What looking for candidates in a sheet gave: its rows are automatic, have candidates, or are like none."""

    sheet: int
    supplier: str
    file: str
    sheet_date: date
    rows: int
    automatic: int
    with_candidates: int
    like_none: int
    candidates: int
    at: datetime


class LeftByImport(Value, frozen=True, kw_only=True):
    """What a sheet just taken in leaves for a person. `looked`: its rows were looked through; else the rest is 0.

    `ours` are the rows that are parts of ours by number and table alone, `waiting` those nobody has answered that may
    be, `likely` those among them with a candidate of a score of one half or more against which nothing speaks.
    """

    looked: bool
    ours: int = 0
    waiting: int = 0
    likely: int = 0


class ByScore(Value, frozen=True, kw_only=True):
    """All of one supplier's candidates from a score on that nothing speaks against, one part for each row.

    `left_out` says in words which were not taken and why. `done`: blank as long as they were only shown.
    """

    supplier: str
    least: Decimal
    shown: tuple[Waiting, ...]
    left_out: tuple[str, ...] = ()
    done: tuple[AnswerKept, ...] = ()


class JudgedFile(Value, frozen=True, kw_only=True):
    """What became of each row of a file of answers: kept with what follows, left because it is blank, or a problem.

    `noted` are the blank ones that have words all the same, `again` the rows whose very answer was kept before.
    """

    file: str
    kept: tuple[AnswerKept, ...]
    blank: int
    problems: tuple[Problem, ...]
    noted: int = 0
    again: int = 0


def judged_number(offer: Offer) -> PartNumber:
    """The number that a yes ties to our part: the maker's where the row names one, else the supplier's own.

    A maker that is written as the shop itself, '(ours)', is no maker.
    """
    for number in offer.numbers():
        if number.maker not in ("", OURS) and maker_key(number.maker):
            return number
    return PartNumber(printed=offer.supplier_number, maker=offer.supplier)
