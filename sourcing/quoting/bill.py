"""The bill: approved lines and nothing else, never above what was approved or told, less deposits.

Totals follow EN 16931 (rules BR-CO-10 to BR-CO-17): lines are rounded, added, and each tax is rounded once on its sum;
what is due is the total less what was paid. A declined line stays on the paper with the price offered and the
customer's word (a habit of authorisation rules for other trades; rules of a place differ).
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime

from ..basics.approval import Approval
from ..basics.bill import ApprovedBy, Bill, DeclinedLine, DepositKept, LeftOut, NotDone, Off
from ..basics.money import Money, total
from ..basics.problem import Problem, Refused, problem, refused
from ..basics.quote import DocumentTotal, Quote, QuoteLine
from ..basics.value import Value, changed
from .freight_at_cost import at_cost
from .off import less_off
from .tolerance import may_rise_to
from .totals import document_total, total_of


class Billed(Value, frozen=True, kw_only=True):
    """What a bill is made of. `quote` is the newest revision, `holding` the answer that holds for each of its lines,
    `answered` the revisions answered to, `missing` why a line's goods are not here, by label; `told`: the total the
    customer was last told for the approved lines, None where none is on record. `other_number`: the number that came in
    place of the one approved, by label, without the customer's yes to it; `agreed_number`: with it. `off`: discounts
    given at the counter. `charges_not_said`: by label of a freight line, papers that were only counted."""

    quote: Quote
    holding: Mapping[str, Approval]
    answered: Mapping[int, Quote]
    missing: Mapping[str, str]
    deposits: tuple[DepositKept, ...]
    left_out: LeftOut = LeftOut()
    told: Money | None = None
    other_number: Mapping[str, str] = {}
    agreed_number: Mapping[str, str] = {}
    off: Off = Off()
    charges_not_said: Mapping[str, str] = {}


def make_bill(made: Billed, number: str, at: datetime, who: str) -> Bill:
    """The bill of that number. Refuses what was not approved, has not come or costs more than was said; every line
    that stands in the way is told at once."""
    quote = made.quote
    lines = billed_lines(made)
    _not_above_told(made, lines)  # before the discount: it is no way to bill what was not approved
    left, off = less_off(lines, made.off, quote.job)
    document = document_total(left, quote.charge_rules, quote.made_at.date(), quote.currency)
    paid = total((one.amount for one in made.deposits), quote.currency)
    return Bill(
        number=number,
        job=quote.job,
        revision=quote.revision,
        shop=quote.shop,
        customer=quote.customer,
        machine=quote.machine,
        complaint=quote.complaint,
        made_at=at,
        made_by=who,
        locale=quote.locale,
        currency=quote.currency,
        lines=tuple(_for_customer(made, line) for line in left),
        approvals=tuple(_approved_by(line.label, made.holding[line.label]) for line in lines),
        total=document,
        declined=tuple(_declined(made, line) for line in quote.lines if _answer(made, line) == "declined"),
        deposits=made.deposits,
        due=document.total - paid,
        findings=quote.findings,
        terms_text=quote.terms_text,
        cautions=quote.cautions,
        cautions_dated=quote.cautions_dated,
        paper_size=quote.paper_size,
        tax_exempt=quote.charge_rules.tax_exempt,
        notes=tuple(_other_number_note(made, line) for line in lines if line.label in made.agreed_number),
        not_done=tuple(_not_done(made, line) for line in quote.lines if line.label in made.left_out.labels),
        exempt_because=quote.customer.exempt_because if quote.charge_rules.tax_exempt else "",
        off=off,
    )


def billed_lines(made: Billed) -> tuple[QuoteLine, ...]:
    """The lines that may be billed. Refuses with a sentence for each line that stands in the way."""
    _check_left_out(made)
    wrong = [found for line in made.quote.lines if (found := _why_not(made, line)) is not None]
    lines = tuple(line for line in made.quote.lines if _is_billed(made, line))
    wrong += _freight_of_nothing(made.quote, lines)
    if wrong:
        raise Refused(*wrong)
    return at_cost(lines, _approved(made))


def offered_with_tax(quote: Quote, label: str) -> Money:
    """What a line was offered at with tax and fees: as printed for an add-on, else the difference of the agreed total
    with and without it."""
    printed = next((one.price for one in quote.add_on_prices if one.label == label), None)
    if printed is not None:
        return printed
    return quote.agreed_total.total - _without(quote, label).total


def _without(quote: Quote, label: str) -> DocumentTotal:
    return total_of(quote, [one for one in quote.labels("agreed") if one != label])


def _answer(made: Billed, line: QuoteLine) -> str:
    found = made.holding.get(line.label)
    return found.answer if found is not None and found.holds == "yes" else "waiting"


def _approved(made: Billed) -> frozenset[str]:
    """What was approved, done or not: all of it was ordered, and freight came to what that costs."""
    return frozenset(line.label for line in made.quote.lines if _answer(made, line) == "approved")


def _is_billed(made: Billed, line: QuoteLine) -> bool:
    return _answer(made, line) == "approved" and line.label not in made.left_out.labels


def _why_not(made: Billed, line: QuoteLine) -> Problem | None:
    """Why a line keeps the job from being billed; None where it is declined, left out, or may stand on the bill."""
    job, label, answer = made.quote.job, line.label, _answer(made, line)
    if answer == "waiting" and label not in made.left_out.labels:
        return problem("not-approved-for-bill", job=job, label=label, answer=answer)
    if not _is_billed(made, line):
        return None
    approved = made.holding[label].amount
    if may_rise_to(approved, made.quote.tolerance) < line.price:
        return problem("above-approved", job=job, label=label, found=line.price, approved=approved)
    if label in made.missing:
        return problem("not-received-for-bill", job=job, label=label, found=made.missing[label])
    if label in made.other_number:
        came = made.other_number[label]
        return problem("other-number-for-bill", job=job, label=label, found=came, approved=line.number)
    if label in made.charges_not_said:
        return problem("freight-not-said-for-bill", job=job, label=label, found=made.charges_not_said[label])
    return None


def _freight_of_nothing(quote: Quote, lines: Sequence[QuoteLine]) -> Iterable[Problem]:
    """Freight is billed only with goods: each kind of line has a freight line of its own, for its own parts."""
    for line in lines:
        if line.freight_price.amount and not any(one.part and one.kind == line.kind for one in lines):
            yield problem("freight-without-goods", job=quote.job, label=line.label)


def _check_left_out(made: Billed) -> None:
    job = made.quote.job
    approved = _approved(made).intersection(made.left_out.labels)
    if approved and not made.left_out.words.strip():  # of a line without an answer it is said that there was none
        raise refused("not-done-why", job=job)
    for label in made.left_out.labels:
        line = made.quote.line(label)
        if line is None:
            raise refused("not-done-unknown", job=job, label=label, found="the newest revision has no such line")
        if _answer(made, line) == "declined":
            raise refused("not-done-unknown", job=job, label=label, found="it is declined, and not billed anyway")


def _not_above_told(made: Billed, lines: Sequence[QuoteLine]) -> None:
    """A fee or a tax that rose with a later revision is no line of its own, but the total the customer was told shows
    it: the last one she was told in all, and what these lines came to when she answered them. Lines that rose within
    the shop's tolerance count here as they were approved."""
    quote, told = made.quote, [one for one in (made.told, _told_for(made, lines)) if one is not None]
    if not told:
        return
    held = [_as_approved(made, line) for line in lines]
    comes_to = document_total(held, quote.charge_rules, quote.made_at.date(), quote.currency).total
    least = min(told, key=lambda one: one.amount)
    if least < comes_to:
        raise refused("bill-above-told", job=quote.job, found=comes_to, told=least)


def _told_for(made: Billed, lines: Sequence[QuoteLine]) -> Money | None:
    """What these lines came to in the newest revision that one of them was answered in; None where none is known."""
    revisions = [made.holding[line.label].revision for line in lines]
    newest = max((one for one in revisions if one in made.answered), default=None)
    if newest is None:
        return None
    of = made.answered[newest]
    labels = {made.holding[label].label for label in _approved(made)}
    then = at_cost([_as_answered(made, line) or line for line in lines], labels)
    return document_total(then, of.charge_rules, of.made_at.date(), of.currency).total


def _as_approved(made: Billed, line: QuoteLine) -> QuoteLine:
    then = _as_answered(made, line)
    return then if then is not None and made.holding[line.label].amount < line.price else line


def _as_answered(made: Billed, line: QuoteLine) -> QuoteLine | None:
    one = made.holding[line.label]
    return made.answered[one.revision].line(one.label) if one.revision in made.answered else None


def _approved_by(label: str, one: Approval) -> ApprovedBy:
    return ApprovedBy(
        label=label,
        revision=one.revision,
        who=one.who,
        how=one.how,
        at=one.at,
        taken_by=one.taken_by,
        contact=one.contact,
        words=one.words,
    )


def _declined(made: Billed, line: QuoteLine) -> DeclinedLine:
    """The price is what she was offered when she declined, in that revision."""
    one = made.holding[line.label]
    return DeclinedLine(
        label=line.label,
        title=line.title,
        offered=one.amount,
        offered_with_tax=offered_with_tax(made.answered[one.revision], one.label),
        who=one.who,
        at=one.at,
        words=one.said,
        if_declined=line.if_declined,
    )


def _for_customer(made: Billed, line: QuoteLine) -> QuoteLine:
    """Without the owner's side, and under the number that was fitted."""
    return changed(line, behind=None, number=made.agreed_number.get(line.label, line.number))


def _other_number_note(made: Billed, line: QuoteLine) -> str:
    return f"Line {line.label}: you agreed to {made.agreed_number[line.label]} in place of {line.number}."


def _not_done(made: Billed, line: QuoteLine) -> NotDone:
    is_answered = line.label in _approved(made)
    return NotDone(label=line.label, title=line.title, words=made.left_out.words.strip(), answered=is_answered)
