"""The rows and sentences of a quote for the customer, made once and used by page, text, message and workbook.

Nothing here reads the owner's side of a line. Amounts are shown as they stand in the quote; none is worked out anew,
but for the part of the fees that stands on lines of its own.
"""

from collections.abc import Collection, Sequence
from decimal import Decimal

from ..basics.approval import how_words
from ..basics.money import Money, total
from ..basics.quote import AddOnPrice, DepositAsked, DocumentTotal, FreightCase, Quote, QuoteLine
from ..basics.settings import PriceKind, Tolerance
from .amounts import date_text, decimal_text, money_text, percent_text

KIND_WORDS: dict[PriceKind, str] = {
    "parts": "Parts",
    "labour": "Labour",
    "freight": "Freight",
    "fees": "Shop supplies and fees",
}
Row = tuple[str, Money]
"""A row of a table of amounts: its words and what it comes to."""


def line_rows(line: QuoteLine, locale: str) -> list[Row]:
    """What a line's price is made of, before tax: parts, labour, freight, fee; only what there is. Never empty."""
    rows: list[Row] = []
    if line.quantity:
        word = "Part" if line.quantity == 1 else "Parts"
        rows.append((f"{word}, {line.quantity} at {money_text(line.unit_price, locale)}", line.parts_price))
    if line.hours or line.labour_price.amount:
        rows.append((labour_words(line, locale), line.labour_price))
    if line.freight_price.amount:
        of = f" for {'line' if len(line.freight_for) == 1 else 'lines'} " if line.freight_for else ""
        rows.append((f"Freight{of}{', '.join(line.freight_for)}", line.freight_price))
    if line.fee_price is not None:
        rows.append(("Fee", line.fee_price))
    return rows or [("No charge", line.price)]


def answered_words(line: QuoteLine, locale: str) -> str:
    """What was said to the line already; blank where it is asked about on this paper."""
    if line.answered is None:
        return ""
    word = "yes" if line.answered.answer == "approved" else "no"
    day, said = date_text(line.answered.on, locale), how_words(line.answered.how)
    change = "" if word == "yes" else " Tell us if you want it after all."
    return f"{line.answered.who} said {word} to this line {said} on {day}; it is not asked again.{change}"


def goes_with(line: QuoteLine, quote: Quote) -> str:
    """What freight of the agreed work goes with, in one sentence: it has no answer of its own. Blank for other lines.

    The extra parts' freight is charged once for all of them, so it keeps its own answer.
    """
    if line.part or not line.freight_price.amount or line.kind != "agreed":
        return ""
    agreed = [one.label for one in quote.lines if one.part and one.kind == line.kind]
    labels = [one for one in agreed if not line.freight_for or one in line.freight_for]
    if not labels:
        return ""
    if len(labels) == 1:
        return f"It goes with line {labels[0]}: a yes to that line is a yes to its freight too."
    return f"It goes with lines {', '.join(labels)}: a yes to any of them is a yes to this freight too."


MOST_CASES = 3
"""So many choices with less freight are told one by one; of more, only that there are some."""


def freight_words(line: QuoteLine, every: Collection[str], locale: str) -> str:
    """That the freight of this line is charged at cost, and with which lines it comes to less; blank where it can't.
    `every`: the labels of all lines of its quote."""
    cases = line.freight_cases
    if not cases:
        return ""
    start = "Freight is charged at what it costs, and this is the most."
    if len(cases) <= MOST_CASES:
        return " ".join((start, *(_case_words(case, locale) for case in cases)))
    whole = line.freight_with(every)
    less = f" With everything in this quote it comes to {money_text(whole, locale)}."
    some = "With some choices of lines it comes to less; their totals are worked out with that."
    return f"{start}{less if whole < line.freight_price else ''} {some}"


def _case_words(case: FreightCase, locale: str) -> str:
    without = f", without {_and(case.without)}," if case.without else ""
    return f"With a yes to {_and(case.approved)}{without} it comes to {money_text(case.freight, locale)}."


def _and(labels: Sequence[str]) -> str:
    *first, last = labels
    return f"lines {', '.join(first)} and {last}" if first else f"line {last}"


def labour_words(line: QuoteLine, locale: str) -> str:
    """'Labour, 1.25 h at $96.00' or, where it has no rate, 'Labour, flat price'."""
    if line.labour_rate is None:
        return "Labour, flat price"
    return f"Labour, {decimal_text(line.hours, locale)} h at {_rate(line.labour_rate, line.labour_price, locale)}"


def _rate(rate: Decimal, like: Money, locale: str) -> str:
    """The rate as money, or with all its decimals where the currency has not so many."""
    money = Money(amount=rate, currency=like.currency)
    return money_text(money, locale) if money.rounded().amount == rate else decimal_text(rate, locale)


def total_rows(document: DocumentTotal, quote: Quote) -> list[Row]:
    """The sums of a total before tax, by kind; of the fees each by name. What comes to nothing is left out."""
    rows: list[Row] = []
    for kind, amount in document.sums:
        if kind == "fees":
            rows += [("Fees on lines of their own", _on_lines(document, quote)), *rule_fees(document, quote)]
        else:
            rows.append((KIND_WORDS[kind], amount))
    return [(words, amount) for words, amount in rows if amount.amount]


def rule_fees(document: DocumentTotal, quote: Quote) -> list[Row]:
    """The fees that stand on no line, each by name; under one word where they were not told apart."""
    named = [(fee.name, fee.amount) for fee in document.fees]
    fees = total((amount for kind, amount in document.sums if kind == "fees"), quote.currency)
    untold = fees - _on_lines(document, quote) - total((amount for _, amount in named), quote.currency)
    return [(words, amount) for words, amount in [*named, (KIND_WORDS["fees"], untold)] if amount.amount]


def _on_lines(document: DocumentTotal, quote: Quote) -> Money:
    counted = (line for line in quote.lines if line.label in document.labels)
    return total((line.fee_price for line in counted if line.fee_price is not None), quote.currency)


def tax_rows(document: DocumentTotal, locale: str) -> list[Row]:
    """Each tax with its per cent and what it is charged on."""
    return [
        (f"{tax.name}, {percent_text(tax.percent)} of {money_text(tax.taxable, locale)}", tax.amount)
        for tax in document.taxes
    ]


def taxed(quote: Quote) -> bool:
    """Whether the quote charges a tax at all: then, and only then, its words say 'with tax'."""
    return bool(quote.everything_total.taxes)


def exempt_words(quote: Quote) -> str:
    """The sentence that the customer pays no tax, with the words of the certificate; blank where tax is charged."""
    if not quote.charge_rules.tax_exempt:
        return ""
    because = quote.customer.exempt_because
    return f"No tax is charged: {because}" if because else "No tax is charged: you are exempt from tax."


def add_on_lines(quote: Quote) -> list[tuple[QuoteLine, AddOnPrice]]:
    """Each add-on with its price; a line without one is a bug and raises KeyError."""
    prices = {price.label: price for price in quote.add_on_prices}
    return [(line, prices[line.label]) for line in quote.lines if line.kind == "add-on"]


def customer_facts(quote: Quote) -> list[tuple[str, str]]:
    """Who the quote is for, how to reach them, and who else may answer; only what is known."""
    customer = quote.customer
    facts = [
        ("Customer", customer.name), ("Address", ", ".join(customer.address)), ("Telephone", customer.telephone),
        ("Text messages", customer.text_number), ("E-mail", customer.email),
        ("May also say yes", ", ".join(customer.may_also_approve)),
    ]  # fmt: skip
    return [(words, value) for words, value in facts if value]


def machine_facts(quote: Quote) -> list[tuple[str, str]]:
    """What the machine's tag says, and the component with what its own tag says; only what is known."""
    machine = quote.machine
    facts = [
        ("maker", machine.maker), ("model", machine.model), ("serial", machine.serial),
        ("with", machine.component), ("its maker", machine.component_maker), ("its model", machine.component_model),
        ("its serial", machine.component_serial),
    ]  # fmt: skip
    return [(words, value) for words, value in facts if value]


def arrival_words(quote: Quote) -> str:
    """The day or the days between which the parts come."""
    if quote.arrives is None:
        return "the day is not known yet; we tell you when it is"
    first, last = (date_text(day, quote.locale) for day in quote.arrives)
    return first if first == last else f"between {first} and {last}"


def ready_words(quote: Quote) -> str:
    """The day the customer wants the machine back, and a word where the parts may come too late for it."""
    if quote.ready_by is None:
        return ""
    day = date_text(quote.ready_by, quote.locale)
    late = quote.arrives is not None and quote.arrives[1] > quote.ready_by
    return f"{day}; the parts may come too late for this day" if late else day


def deposit_words(deposit: DepositAsked, locale: str) -> str:
    """One sentence: what is asked before parts are ordered. An amount of nothing is said in words."""
    agreed, everything = deposit.agreed, deposit.everything
    if agreed == everything:
        return f"Before we order we ask for {money_text(agreed, locale)}."
    if not agreed.amount:
        return (
            "For the work you asked for we ask for nothing before we order; "
            f"with all the extra work for {money_text(everything, locale)}."
        )
    return (
        f"Before we order we ask for {money_text(agreed, locale)} for the work you asked for, "
        f"or {money_text(everything, locale)} with all the extra work."
    )


def approved_deposit_words(deposit: Money, locale: str) -> str:
    """One or two sentences: what is asked ahead for what the customer approved, nothing said in words."""
    if not deposit.amount:
        return "For what you approved we ask for nothing before we order."
    asked = f"Before we order what you approved we ask for {money_text(deposit, locale)}."
    return f"{asked} It is part of the total, not on top of it."


def tolerance_words(tolerance: Tolerance, currency: str, locale: str) -> str:
    """How far a price may rise without being asked anew: what the customer agrees to with a yes."""
    amount = Money(amount=tolerance.amount, currency=currency)
    percent = percent_text(tolerance.percent)
    if tolerance.percent and tolerance.amount:
        most = f"by up to {percent} of the line, and by no more than {money_text(amount, locale)},"
    elif tolerance.percent or tolerance.amount:
        most = f"by up to {percent} of the line" if tolerance.percent else f"by up to {money_text(amount, locale)}"
    else:
        return "Anything else, such as a higher price or another part number, is asked anew."
    return f"A line may cost more {most} without our asking again. Anything else is asked anew."
