"""A customer's answer to a line: recorded with who, how, when and who took it down; and what a shop can show of it.

Fields follow what repair-authorisation rules published for other trades ask for (California Code of Regulations,
title 16, sections 2722 and 3353: date, time, who authorised, number called, who took it, parts and labour, extra
cost); rules for outdoor power equipment differ by place.
"""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .money import Money
from .value import Value

AnswerWord = Literal["approved", "declined", "waiting"]
"""A line without an answer is waiting; silence is never a yes."""

How = Literal["in person", "telephone", "text", "e-mail", "customer's page"]

GivenBy = Literal["in person", "telephone", "text", "e-mail", "customer's page", "post"]
"""How a person gave a quote to the customer: handed over, read out by telephone, sent."""


def how_words(how: str) -> str:
    """How something was said, to be read after a name: 'in person', 'by telephone', 'on the customer's page'."""
    if how == "customer's page":
        return f"on the {how}"
    return how if how == "in person" else f"by {how}"


ON_CONDITION = "On condition that: "
"""Stands before a condition among the words of an answer."""


class Approval(Value, frozen=True, kw_only=True):
    """One answer to one line of one revision. `amount` is the line's price before tax, as printed there.

    `extra` and `total_after` are what the whole occasion (all lines answered together) came to with tax: the new total
    of all that is approved, and what of it is beyond the agreed work; `extra` None where not all agreed work is
    approved, both None in records from before they were kept. `words` hold conditions too.
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

    @property
    def condition(self) -> str:
        """On which condition the yes was given; blank where on none. A no has no condition."""
        return self.words.partition(ON_CONDITION)[2].strip() if self.answer == "approved" else ""

    @property
    def said(self) -> str:
        """The customer's words, for a no without a condition that belonged to a yes given at the same time."""
        return self.words if self.answer == "approved" else self.words.partition(ON_CONDITION)[0].strip()


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
    """Where a revision stands: each line's answer, and the total of what is approved.

    `notes`, for the shop: answers that no longer hold and why, prices and days that are not as they were approved.
    """

    job: str
    revision: int
    by_label: tuple[tuple[str, AnswerWord], ...]
    approved_total: Money
    extra: Money
    notes: tuple[str, ...] = ()

    def of(self, label: str) -> AnswerWord:
        """The answer to a line; waiting where none was given."""
        return dict(self.by_label).get(label, "waiting")


class AnsweredLine(Value, frozen=True, kw_only=True):
    """A line as it was answered: parts and labour, and whether that answer still holds. Amounts are before tax.

    `charges` are freight and fees of the line. 'taken back': the customer took an earlier yes back.
    """

    label: str
    title: str
    answer: Literal["approved", "declined", "taken back"]
    number: str
    quantity: int
    parts: Money
    hours: Decimal
    labour: Money
    charges: Money
    amount: Money
    holds: Literal["yes", "withdrawn", "replaced"]


class Occasion(Value, frozen=True, kw_only=True):
    """One time the customer answered: all that was said together. `sha256` is of the paper the answer was to.

    Totals are with tax. `total_before` is what was authorised by the occasion before, None at the first; None
    elsewhere: not written down then.
    """

    at: datetime
    who: str
    how: How
    contact: str
    taken_by: str
    words: str
    revision: int
    sha256: str
    lines: tuple[AnsweredLine, ...]
    extra: Money | None
    total_before: Money | None
    total_after: Money | None


class AgreedOnAlarm(Value, frozen=True, kw_only=True):
    """A yes given when something was no longer as approved, with the way out that was taken; it is to no paper. `what`
    says which, `words` what was said."""

    at: datetime
    who: str
    how: How
    contact: str
    taken_by: str
    revision: int
    line: str
    what: str
    words: str = ""


class AnswerRecord(Value, frozen=True, kw_only=True):
    """All answers of a job in the order given, those taken back and declined among them; and who may answer.

    `agreed`: what was said yes to beside them, when an alarm was decided, oldest first.
    """

    job: str
    shop: str
    customer: str
    may_answer: tuple[str, ...]
    machine: str
    locale: str
    occasions: tuple[Occasion, ...]
    waiting: tuple[str, ...]
    agreed: tuple[AgreedOnAlarm, ...] = ()


class GivenOut(Value, frozen=True, kw_only=True):
    """A revision given to the customer by a person; the program sends nothing."""

    job: str
    revision: int
    at: datetime
    who: str
    how: str
    sent_to: str = ""
    notes: tuple[str, ...] = ()


class RevisionRow(Value, frozen=True, kw_only=True):
    """A revision in a list: who made it when, the hash of its paper, totals with tax, when it was given out."""

    revision: int
    made_at: datetime
    made_by: str
    sha256: str
    valid_to: date
    agreed: Money
    everything: Money
    given: tuple[GivenOut, ...]


class Revisions(Value, frozen=True, kw_only=True):
    """All revisions of a job, and how two of them differ, in words; `compared` None where there is but one."""

    job: str
    locale: str
    rows: tuple[RevisionRow, ...]
    compared: tuple[int, int] | None
    differences: tuple[str, ...]
