"""How two revisions of a quote differ, in words, line by line. Nothing said means that they are the same.

Every field of both is compared: what has no words of its own is told by its name, so that no difference goes unsaid.
What only the owner may see (supplier, cost, warnings) is said where asked for.
"""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal

from ..basics.money import Money
from ..basics.part_number import number_key
from ..basics.quote import Behind, DocumentTotal, Quote, QuoteLine
from ..basics.value import Value
from .carry_over import line_now

NOT_COMPARED = frozenset(("job", "revision", "made_at"))
LINES_NOT_COMPARED = frozenset(("answered",))
"""What the customer said already is no difference between what two papers offer."""
TOLD_APART = frozenset(("lines", "agreed_total", "everything_total", "add_on_prices"))
CUSTOMERS = frozenset(
    (
        *("shop", "customer", "machine", "complaint", "valid_to", "locale", "currency", "arrives", "ready_by"),
        *("terms_text", "cautions", "cautions_dated", "law_text", "charge_rules", "findings", "deposit", "paper_size"),
        *("kind", "title", "part", "number", "description", "quantity", "unit_price", "parts_price", "hours"),
        *("labour_price", "labour_rate", "freight_price", "fee_price", "found", "why", "if_declined"),
        *("special_order", "return_words", "core_words", "photos", "freight_cases"),
    )
)
"""What the customer may see of a quote and its lines; whatever is not named here is the owner's."""
NAMES = {
    "arrives": "the parts are promised",
    "ready_by": "the machine is promised for",
    "valid_to": "valid to",
    "deposit": "the deposit asked",
    "terms_text": "the terms",
    "law_text": "the words on the law",
    "cautions_dated": "the day of the cautions",
    "charge_rules": "the rules of taxes and fees",
    "number": "the part number",
    "part": "our part",
    "quantity": "pieces",
    "unit_price": "the price each",
    "parts_price": "the price of the parts",
    "labour_price": "the price of the labour",
    "freight_price": "the freight",
    "freight_cases": "where the freight comes to less",
    "fee_price": "the fee",
    "labour_rate": "the labour rate",
    "return_words": "the terms of return",
    "core_words": "what becomes of the old part",
    "description": "what the part is called",
    "special_order": "ordered specially",
    "found": "what was found",
    "why": "why it matters",
    "if_declined": "what happens if declined",
    "title": "the work",
    "kind": "agreed or add-on",
    "supplier_number": "the supplier's number",
    "sheet": "the sheet",
    "cost": "the landed cost",
    "surplus_cost": "the cost of what goes on the shelf",
    "price_rule": "how the price came",
    "landed_rule": "how the cost came",
    "latest": "the supplier's goods here by",
    "returnable": "can go back to the supplier",
    "held": "the price is held",
}


def compare_quotes(old: Quote, new: Quote, owner: bool = False) -> tuple[str, ...]:
    """What the new revision says otherwise than the old one, one sentence each; empty where they are the same.

    Day, number and job of a revision are not compared. Totals are with tax. `owner`: with supplier, cost and warnings,
    never for the customer.
    """
    words = [*_lines(old, new, owner), *_totals(old, new)]
    for name in Quote.__struct_fields__:
        if name not in NOT_COMPARED | TOLD_APART and (owner or name in CUSTOMERS):
            words += _field(name, getattr(old, name), getattr(new, name))
    return tuple(words)


def _lines(old: Quote, new: Quote, owner: bool) -> Iterator[str]:
    pairs = _pairs(old, new)
    for line in old.lines:
        now = pairs.get(line.label)
        if now is None:
            yield f"line {line.label} ({line.title}, {line.price}) is gone"
        else:
            yield from (f"line {now.label} ({now.title}): {words}" for words in _line(line, now, owner))
    known = {line.label for line in pairs.values()}
    for line in new.lines:
        if line.label not in known:
            yield f"line {line.label} ({line.title}, {line.price}) is new"
    order = [pairs[line.label].label for line in old.lines if line.label in pairs]
    if order != [line.label for line in new.lines if line.label in order]:
        yield f"the lines stand in another order: {', '.join(line.label for line in new.lines)}"


def _pairs(old: Quote, new: Quote) -> dict[str, QuoteLine]:
    """For each old label the line it is now: the same work, else what is left under the same label with that part."""
    pairs = {line.label: now for line in old.lines if (now := line_now(new, old, line))}
    taken = {now.label for now in pairs.values()}
    for line in old.lines:
        same = new.line(line.label)
        if line.label not in pairs and same and same.label not in taken and same.part == line.part:
            pairs[line.label] = same
    return pairs


def _line(old: QuoteLine, new: QuoteLine, owner: bool) -> Iterator[str]:
    if old.label != new.label:
        yield f"it was line {old.label} before"
    for name in QuoteLine.__struct_fields__:
        if name not in LINES_NOT_COMPARED | {"label", "behind"} and (owner or name in CUSTOMERS):
            told = _field(name, getattr(old, name), getattr(new, name))
            same = name == "number" and number_key(old.number) == number_key(new.number)
            yield from (f"{words} (the same number, written otherwise)" if same else words for words in told)
    if old.price != new.price:
        yield f"together before tax {_said(new.price)}, before {_said(old.price)}{_more(old.price, new.price)}"
    if owner:
        yield from _behind(old.behind, new.behind)


def _behind(old: Behind | None, new: Behind | None) -> Iterator[str]:
    if old is None or new is None:
        if old != new:
            yield f"supplier now {new.supplier if new else 'none'}, before {old.supplier if old else 'none'}"
        return
    for name in Behind.__struct_fields__:
        yield from _field(name, getattr(old, name), getattr(new, name))


def _totals(old: Quote, new: Quote) -> Iterator[str]:
    then, now = ({one.label: one for one in each.add_on_prices} for each in (old, new))
    for line in new.lines:
        # What is new or gone is told as a line.
        if old.line(line.label):
            pair = then.get(line.label), now.get(line.label)
            for name, words in (("price", "add-on {} with tax"), ("total_with_it", "the total with add-on {}")):
                yield from _field(words.format(line.label), *(getattr(one, name, None) for one in pair))
    yield from _total("the agreed work", old.agreed_total, new.agreed_total)
    yield from _total("everything", old.everything_total, new.everything_total)


def _total(what: str, old: DocumentTotal, new: DocumentTotal) -> Iterator[str]:
    """The total, and what of its make-up changed without changing it or beside it."""
    yield from _field(f"the total of {what} with tax", old.total, new.total)
    then = {tax.name: tax for tax in old.taxes}
    for tax in new.taxes:
        before = then.pop(tax.name, None)
        yield from _field(f"{tax.name} on {what}", before.amount if before else None, tax.amount)
        yield from _field(f"per cent of {tax.name} on {what}", before.percent if before else None, tax.percent)
    for name, tax in then.items():
        yield from _field(f"{name} on {what}", tax.amount, None)
    fees, fees_then = ({fee.name: fee.amount for fee in each.fees} for each in (new, old))
    for name in dict.fromkeys((*fees_then, *fees)):
        yield from _field(f"{name} on {what}", fees_then.get(name), fees.get(name))


def _field(name: str, old: object, new: object) -> Iterator[str]:
    if old == new:
        return
    words = NAMES.get(name, name.replace("_", " "))
    if isinstance(old, Value) and isinstance(new, Value) and type(old) is type(new) and not isinstance(old, Money):
        for inner in old.__struct_fields__:
            yield from _field(f"{words}, {NAMES.get(inner, inner.replace('_', ' '))}", *_both(old, new, inner))
        return
    more = _more(old, new) if isinstance(old, Money) and isinstance(new, Money) else ""
    yield f"{words} now {_said(new)}, before {_said(old)}{more}"


def _both(old: object, new: object, name: str) -> tuple[object, object]:
    return getattr(old, name), getattr(new, name)


def _more(old: Money, new: Money) -> str:
    if old.currency != new.currency:
        return ""
    apart = new - old
    return f" ({-apart} less)" if apart.amount < 0 else f" ({apart} more)"


def _said(value: object) -> str:
    """A value in words: exact, blanks as 'none'."""
    if value is None or value == "" or value == ():
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Decimal):
        return f"{value:f}"
    if isinstance(value, Money):
        return f"{value.amount:f} {value.currency}"
    if isinstance(value, tuple):
        if all(isinstance(one, date) for one in value):
            return " to ".join(dict.fromkeys(_said(one) for one in value))
        return "; ".join(_said(one) for one in value)
    if isinstance(value, Value):
        said = (_said(each) for name in value.__struct_fields__ if (each := getattr(value, name)) not in ("", ()))
        return ", ".join(dict.fromkeys(said))
    return str(value)
