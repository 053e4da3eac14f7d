"""The final paper of a job for the customer: HTML, PDF from the same HTML, and plain text.

It shows what the bill holds and works nothing out but what a row is called. Costs, suppliers and margins are not in the
value it is given. The same bill gives the same bytes: no clock, no random names.
"""

from itertools import groupby

from ..basics.bill import ApprovedBy, Bill, DeclinedLine, DepositKept, LineOff
from ..basics.money import Money, total
from ..basics.quote import QuoteLine
from ..basics.value import Value, changed
from .amounts import date_text, money_text, page_language
from .pages import render
from .paper_size import paper_size
from .pdf import pdf_bytes
from .plain_text import document, wrapped
from .quote_words import KIND_WORDS, line_rows, tax_rows

TEXT_WIDTH = 72
Row = tuple[str, Money]


class Occasion(Value, frozen=True, kw_only=True):
    """Lines that were answered with one word of the customer."""

    labels: str
    by: ApprovedBy


def bill_html(bill: Bill) -> str:
    """The paper, ready to print. Refuses a locale that does not exist."""
    return render(
        "bill.html",
        bill=bill,
        lines=[(line, billed_of(bill, line)) for line in bill.lines],
        sums=sum_rows(bill),
        taxes=tax_rows(bill.total, bill.locale),
        paid=[deposit_row(one, bill.locale) for one in bill.deposits],
        due=due_row(bill),
        glance=glance(bill),
        no_tax=no_tax_words(bill),
        occasions=occasions(bill),
        machine_facts=machine_words(bill),
        page_size=paper_size(bill.paper_size, bill.locale),
        locale=bill.locale,
        language=page_language(bill.locale),
    )


def bill_pdf(bill: Bill, paper: str) -> bytes:
    """The kept paper of a bill as a PDF: the same words. Refuses where the PDF library is missing."""
    return pdf_bytes(paper, paper_size(bill.paper_size, bill.locale), f"Bill {bill.number}")


def bill_text(bill: Bill) -> str:
    """The bill for a screen or a message: lines, total, what was paid, what is due, what was declined."""
    locale = bill.locale
    lines = [f"{bill.shop.name}: bill {bill.number} for job {bill.job}"]
    lines += wrapped(f"{bill.customer.name}: {bill.machine.description}", width=TEXT_WIDTH)
    lines += ["", "Work done (before tax)"]
    for line in bill.lines:
        less = "".join(f" ({_less(one, locale)})" for one in bill.off if one.label == line.label)
        lines += wrapped(f"{line.label}  {line.title}: {money_text(line.price, locale)}{less}", 2, TEXT_WIDTH)
    lines += [] if bill.lines else ["  none"]
    rows = [*_fee_rows(bill), *tax_rows(bill.total, locale), ("Total", bill.total.total)]
    rows += [*(deposit_row(one, locale) for one in bill.deposits), due_row(bill)]
    for words, amount in rows:
        lines += wrapped(f"{words}: {money_text(amount, locale)}", 2, TEXT_WIDTH)
    lines += wrapped(no_tax_words(bill), 2, TEXT_WIDTH) if no_tax_words(bill) else []
    for sentence in bill.notes:
        lines += wrapped(sentence, 2, TEXT_WIDTH)
    if bill.declined:
        lines += ["", "Work you declined, not done"]
        for one in bill.declined:
            lines += _declined_text(one, locale)
    for heading, is_answered in (("Approved, not done and not billed", True), ("Not answered, not done", False)):
        some = [left for left in bill.not_done if left.answered is is_answered]
        lines += ["", heading] if some else []
        for left in some:
            why = f": {left.words}" if left.words else ""
            lines += wrapped(f"{left.label}  {left.title}{why}", 2, TEXT_WIDTH)
    return document(lines)


def made_of(line: QuoteLine, locale: str) -> str:
    """What a line's price is made of, in one sentence part; blank where its title says it all."""
    rows = line_rows(line, locale)
    if len(rows) > 1:
        return "; ".join(f"{words}: {money_text(amount, locale)}" for words, amount in rows)
    return rows[0][0] if line.quantity or line.hours else ""


def billed_of(bill: Bill, line: QuoteLine) -> str:
    """What a line of the bill is made of, with what was taken off it: 'Part, 1 at $20.00: $20.00; less $5.00'."""
    for one in bill.off:
        if one.label == line.label:
            rows = line_rows(_before_off(line, one), bill.locale)
            told = [f"{words}: {money_text(amount, bill.locale)}" for words, amount in rows]
            return "; ".join((*told, _less(one, bill.locale)))
    return made_of(line, bill.locale)


def _less(off: LineOff, locale: str) -> str:
    """The reason stays with the owner."""
    return f"less {money_text(off.amount, locale)}"


def _before_off(line: QuoteLine, off: LineOff) -> QuoteLine:
    return changed(
        line,
        parts_price=line.parts_price + off.parts,
        labour_price=line.labour_price + off.labour,
        freight_price=line.freight_price + off.freight,
        fee_price=None if line.fee_price is None else line.fee_price + off.fee,
    )


def sum_rows(bill: Bill) -> list[Row]:
    """Sums by kind before tax, then the fees by rule, each by name. What comes to nothing is left out."""
    kinds = [(KIND_WORDS[kind], amount) for kind, amount in bill.total.sums if kind != "fees"]
    rows = [*kinds, ("Fees of this job", _fees_on_lines(bill)), *_fee_rows(bill)]
    return [(words, amount) for words, amount in rows if amount.amount]


def due_row(bill: Bill) -> Row:
    """What is left to pay, or what the shop owes the customer, never below zero in words and figures."""
    if bill.due.amount < 0:
        return "We owe you", -bill.due
    return ("Left to pay", bill.due)


def glance(bill: Bill) -> str:
    """The one sentence to read first."""
    if not bill.due.amount:
        return "Nothing is left to pay."
    words, amount = due_row(bill)
    return f"{words}: {money_text(amount, bill.locale)}."


def deposit_row(one: DepositKept, locale: str) -> Row:
    """Money paid ahead is taken off, money given back is added again."""
    day = date_text(one.at.date(), locale)
    words = "Deposit paid" if one.amount.amount >= 0 else "Deposit given back"
    return f"{words} on {day}, {one.how}", -one.amount


def no_tax_words(bill: Bill) -> str:
    """Why no tax is charged; blank where one is."""
    if bill.total.taxes:
        return ""
    if bill.tax_exempt:
        return f"No tax is charged: {bill.exempt_because or 'you are exempt from tax.'}"
    return "No tax is charged."


def occasions(bill: Bill) -> list[Occasion]:
    """Approvals of one word together: same person, way, moment and revision."""
    found = []
    for _, some in groupby(bill.approvals, key=lambda one: (one.who, one.how, one.at, one.revision, one.words)):
        together = list(some)
        found.append(Occasion(labels=", ".join(one.label for one in together), by=together[0]))
    return found


def machine_words(bill: Bill) -> list[tuple[str, str]]:
    """What the machine's tag says, and the component's; only what is known."""
    machine = bill.machine
    facts = [
        ("maker", machine.maker), ("model", machine.model), ("serial", machine.serial), ("with", machine.component),
        ("its maker", machine.component_maker), ("its model", machine.component_model),
        ("its serial", machine.component_serial),
    ]  # fmt: skip
    return [(words, value) for words, value in facts if value]


def _fee_rows(bill: Bill) -> list[Row]:
    """Fees by rule, each by name; under one word what an older paper did not tell apart."""
    named = [(fee.name, fee.amount) for fee in bill.total.fees]
    told = total((amount for _, amount in named), bill.currency) + _fees_on_lines(bill)
    untold = dict(bill.total.sums).get("fees", told) - told
    return [*named, (KIND_WORDS["fees"], untold)] if untold.amount else named


def _fees_on_lines(bill: Bill) -> Money:
    return total((line.fee_price for line in bill.lines if line.fee_price is not None), bill.currency)


def _declined_text(one: DeclinedLine, locale: str) -> list[str]:
    price = f"{money_text(one.offered, locale)} before tax, {money_text(one.offered_with_tax, locale)} in all"
    said = f'{one.who}, {date_text(one.at.date(), locale)}: "{one.words}"' if one.words else ""
    lines = wrapped(f"{one.label}  {one.title}: offered at {price}", 2, TEXT_WIDTH)
    for words in (said, one.if_declined):
        lines += wrapped(words, 5, TEXT_WIDTH) if words else []
    return lines
