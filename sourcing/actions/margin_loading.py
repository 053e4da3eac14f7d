"""Load what margins need of one job or of all: which answer holds, what was bought as it stands now, the owner's rules.

Which answers hold is said by `quoting.approvals` alone. Where every answer was given to the newest revision that rule
comes to the last answer of each label, and whole quotes need not be read; a test holds the two ways together.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import Any, TypeVar

from sqlalchemy import Connection

from ..basics.approval import Approval
from ..basics.bill import GivenAway
from ..basics.margin_facts import BillFacts, JobFacts, OrderFacts, Purchase, QuoteFacts
from ..basics.money import zero
from ..basics.order import GoodsBack, OrderEvent
from ..basics.quote import Quote
from ..basics.settings import Settings
from ..basics.value import Value
from ..margins.bought import Book, book_of
from ..margins.job_margin import OwnersRules
from ..ordering.order_now import order_now
from ..quoting.approvals import last_words
from ..quoting.carry_over import line_now
from ..quoting.totals import total_of
from ..storage.after_order import events, goods_back
from ..storage.after_quote import given_away
from ..storage.margin_rows import (
    AnswerRow,
    Jobs,
    answers_light,
    bills_light,
    every_settings,
    full_quotes,
    newest_quotes,
    orders_light,
    quote_light,
    receipts_light,
)
from ..storage.orders import order as stored_order
from ..storage.shop import terms_on


class Loaded(Value, frozen=True, kw_only=True):
    """Jobs with a quote, everything bought for them, and the owner's rules by job as they held on its quote's day.

    `suppliers`: names by supplier. `left_out`: jobs quoted in another currency than the shop's is now; they can't be
    added up with the rest.
    """

    jobs: tuple[JobFacts, ...]
    book: Book
    rules: Mapping[str, OwnersRules]
    currency: str
    left_out: tuple[str, ...] = ()
    purchases: tuple[Purchase, ...] = ()
    suppliers: Mapping[str, str] = {}

    def floors(self) -> dict[str, Decimal]:
        """The margin floor in per cent, by job."""
        return {job: rule.floor_percent for job, rule in self.rules.items()}


def load(connection: Connection, number: Jobs, day: date) -> Loaded:
    """What margins need of the job, or of all. `day` is the desk's; the shop's currency is the one it had then."""
    settings = every_settings(connection)
    currency = settings_of(settings, day).currency
    bills = bills_light(connection, number)
    every = [_as_billed(connection, one, bills) for one in newest_quotes(connection, number)]
    if isinstance(number, str) and every:
        currency = every[0].currency
    quotes = [one for one in every if one.currency == currency]
    answers: dict[str, list[AnswerRow]] = defaultdict(list)
    for row in answers_light(connection, number):
        answers[row.job].append(row)
    standing = _standing(connection, quotes, answers)
    extras = _given_away(connection, number)
    facts = [
        JobFacts(
            quote=quote,
            approved=one.approved,
            answers=one.words,
            bill=bills.get(quote.job),
            before_tax=one.before_tax,
            given_away=tuple(extras.get(quote.job, ())),
        )
        for quote, one in zip(quotes, standing, strict=True)
    ]
    labels = {quote.job: one.renamed for quote, one in zip(quotes, standing, strict=True) if one.renamed}
    purchases = load_purchases(connection, number, labels)
    rules = {one.job: _rules(settings_of(settings, one.made_at.date())) for one in quotes}
    return Loaded(
        jobs=tuple(facts),
        book=book_of(purchases, currency),
        rules=rules,
        currency=currency,
        purchases=tuple(purchases),
        suppliers={one.supplier: one.name for one in terms_on(connection, day).values()},
        left_out=tuple(one.job for one in every if one.currency != currency),
    )


def _as_billed(connection: Connection, newest: QuoteFacts, bills: Mapping[str, BillFacts]) -> QuoteFacts:
    """The revision a job was billed by, whatever was written after it; else the newest."""
    bill = bills.get(newest.job)
    if bill is None or bill.revision == newest.revision:
        return newest
    return quote_light(connection, newest.job, bill.revision)


def _given_away(connection: Connection, number: Jobs) -> dict[str, list[GivenAway]]:
    found: dict[str, list[GivenAway]] = {}
    for one in given_away(connection, number if isinstance(number, str) else None):
        found.setdefault(one.job, []).append(one)
    return found


def settings_of(settings: Sequence[tuple[date, Settings]], day: date) -> Settings:
    """The newest settings that started by the day; the first ones where none had. Raises IndexError where there are
    none at all: the caller has asked for them before."""
    started = [one for starts_on, one in settings if starts_on <= day]
    return started[-1] if started else settings[0][1]


def _rules(settings: Settings) -> OwnersRules:
    return OwnersRules(floor_percent=settings.margin_floor_percent, technician_cost=settings.technician_cost)


class _Standing(Value, frozen=True, kw_only=True):
    """Where a quote stands. `renamed`: the newest label by revision and label of what was bought."""

    approved: Mapping[str, date]
    words: Mapping[str, str]
    before_tax: Decimal
    renamed: Mapping[tuple[int, str], str] = {}


def _standing(
    connection: Connection, quotes: Sequence[QuoteFacts], answers: Mapping[str, Sequence[AnswerRow]]
) -> list[_Standing]:
    plain = {one.job: _plainly(one, answers.get(one.job, ())) for one in quotes}
    odd = [one.job for one in quotes if plain[one.job] is None]
    full = full_quotes(connection, odd) if odd else {}
    return [plain[one.job] or _wholly(one, full[one.job], answers.get(one.job, ())) for one in quotes]


def _plainly(quote: QuoteFacts, rows: Sequence[AnswerRow]) -> _Standing | None:
    """Where every answer was given to this revision, and its totals hold one of the approved lines; else None."""
    if any(row.revision != quote.revision for row in rows):
        return None
    last = {row.label: row for row in rows}
    holding = {label: row for label, row in last.items() if row.holds == "yes"}
    approved = {label: _day(row.at) for label, row in holding.items() if row.answer == "approved"}
    before_tax = _frozen_total(quote, approved)
    if before_tax is None:
        return None
    return _Standing(
        approved=approved, words={label: row.answer for label, row in holding.items()}, before_tax=before_tax
    )


def _frozen_total(quote: QuoteFacts, approved: Mapping[str, date]) -> Decimal | None:
    labels = set(approved)
    if not labels:
        return Decimal(0)
    for total in (quote.agreed_total, quote.everything_total):
        if labels == set(total.labels):
            return Decimal(total.before_tax.amount)
    return None


def _wholly(light: QuoteFacts, revisions: Mapping[int, Quote], rows: Sequence[AnswerRow]) -> _Standing:
    newest = revisions[light.revision]
    last = last_words(newest, [_approval(row, revisions[row.revision]) for row in rows], revisions)
    holding = {label: one for label, (one, why) in last.items() if not why}
    approved = {label: one.at.date() for label, one in holding.items() if one.answer == "approved"}
    return _Standing(
        approved=approved,
        words={label: one.answer for label, one in holding.items()},
        before_tax=total_of(newest, approved).before_tax.amount,
        renamed=_renamed(newest, revisions),
    )


def _approval(row: AnswerRow, quote: Quote) -> Approval:
    """The answer as the rule takes it. Its amount is the line's price on that revision, as it was when it was given."""
    line = quote.line(row.label)
    return Approval(
        job=row.job,
        revision=row.revision,
        label=row.label,
        answer="approved" if row.answer == "approved" else "declined",
        amount=line.price if line else zero(quote.currency),
        who="",
        how="in person",
        at=datetime.fromisoformat(row.at),
        taken_by="",
        holds="yes" if row.holds == "yes" else "withdrawn" if row.holds == "withdrawn" else "replaced",
    )


def _renamed(newest: Quote, revisions: Mapping[int, Quote]) -> dict[tuple[int, str], str]:
    found = {}
    for revision, old in revisions.items():
        for line in old.lines:
            now = line_now(newest, old, line)
            if now and now.label != line.label:
                found[revision, line.label] = now.label
    return found


def _day(at: str) -> date:
    return date.fromisoformat(at[:10])


def load_purchases(
    connection: Connection, number: Jobs, labels: Mapping[str, Mapping[tuple[int, str], str]]
) -> list[Purchase]:
    """Every order, or those of the job, with what followed. `labels`: by job, lines renamed since they were bought."""
    orders, came = orders_light(connection, number), receipts_light(connection, number)
    wanted = {one.number for one in orders}
    happened, back = _by_order(events(connection), wanted), _by_order(goods_back(connection), wanted)
    return [
        Purchase(
            order=one,
            receipts=tuple(came.get(one.number, ())),
            back=tuple(back.get(one.number, ())),
            labels=_labels(one, labels),
            **_as_it_stands(connection, one, happened.get(one.number, ())),
        )
        for one in orders
    ]


T = TypeVar("T", OrderEvent, GoodsBack)


def _by_order(kept: Iterable[T], wanted: Collection[str]) -> dict[str, list[T]]:
    found: dict[str, list[T]] = {}
    for one in kept:
        if one.order in wanted:
            found.setdefault(one.order, []).append(one)
    return found


def _as_it_stands(connection: Connection, order: OrderFacts, happened: Sequence[OrderEvent]) -> dict[str, Any]:
    """Pieces and goods by line where something that happened changed them: days and numbers change no cost."""
    placed = {line.line: line for line in order.lines}
    said = [one for event in happened for one in event.lines if one.line in placed]
    if not any(
        one.pieces not in (None, placed[one.line].ordered) or one.unit_price not in (None, placed[one.line].unit_price)
        for one in said
    ):
        return {}
    now = order_now(stored_order(connection, order.number), happened)
    moved = [one for one in now.lines if one.pieces != one.line.ordered or one.goods != one.line.goods]
    return {
        "pieces": {one.line.line: one.pieces for one in moved},
        "goods": {one.line.line: one.goods.amount for one in moved},
    }


def _labels(order: OrderFacts, labels: Mapping[str, Mapping[tuple[int, str], str]]) -> dict[int, str]:
    if not labels:
        return {}
    return {
        line.line: labels[line.job][line.revision, line.label]
        for line in order.lines
        if line.job in labels and (line.revision, line.label) in labels[line.job]
    }
