"""A customer's answer to a line: recorded with who, how, when and who took it down.

Fields follow what repair-authorisation rules published for other trades ask for (California Code of Regulations,
title 16, sections 2722 and 3353: date, time, who authorised, number called, who took it, parts and labour, extra
cost); rules for outdoor power equipment differ by place.
"""

from datetime import datetime
from typing import Literal

from .money import Money
from .value import Value

AnswerWord = Literal["approved", "declined", "waiting"]
"""A line without an answer is waiting; silence is never a yes."""

How = Literal["in person", "telephone", "text", "e-mail", "customer's page"]


class Approval(Value, frozen=True, kw_only=True):
    """One answer to one line of one revision. `amount` is the line's price before tax, as printed there.

    `extra` and `total_after` are what the whole occasion (all lines answered together) came to with tax: the total
    extra cost over the agreed work and the new total the customer was told; None in records from before they were kept.
    `holds` 'withdrawn' or 'replaced': a later word of the customer took its place, and it covers nothing any more.
    """

    job: str
    revision: int
    label: str
    answer: Literal["approved", "declined"]
    amount: Money
    who: str
    how: How
    at: datetime
    taken_by: str
    contact: str = ""
    words: str = ""
    extra: Money | None = None
    total_after: Money | None = None
    holds: Literal["yes", "withdrawn", "replaced"] = "yes"


class Withdrawal(Value, frozen=True, kw_only=True):
    """The customer took a yes back before the part was ordered: which answer, who, how, when, who took it down."""

    approval: int
    job: str
    label: str
    who: str
    how: How
    at: datetime
    taken_by: str
    contact: str = ""
    words: str = ""


class Answers(Value, frozen=True, kw_only=True):
    """Where a revision stands: each line's answer, and the total of what is approved."""

    job: str
    revision: int
    by_label: tuple[tuple[str, AnswerWord], ...]
    approved_total: Money
    extra: Money

    def of(self, label: str) -> AnswerWord:
        """The answer to a line; waiting where none was given."""
        return dict(self.by_label).get(label, "waiting")
