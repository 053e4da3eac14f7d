"""The form in which goods are counted: what its fields say of a delivery, and the same form with one more counted."""

from collections.abc import Mapping
from decimal import Decimal

from werkzeug.datastructures import MultiDict

from ..actions.counting import CountSheet, Scanned
from ..actions.receive import Delivery
from ..basics.order import Receipt
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..basics.typed import amount, count, one_word
from ..basics.value import changed
from .forms import day, marked, read_typed

Form = MultiDict[str, str]

OTHER_CHARGES = range(1, 4)
"""Rows for charges on the paper beside goods and freight."""


def counts(form: Mapping[str, str], sheet: CountSheet) -> dict[int, int]:
    """Pieces counted by line; a line of which nothing is typed is left out."""
    return _counts(form, sheet, "came")


def add_one(form: Form, found: Scanned) -> Form:
    """The form with one more piece for the line the scan counts for, and the scan field empty."""
    if found.line is not None:
        form[f"came_{found.line}"] = str(_count(form, f"came_{found.line}") + 1)
        if found.number:
            form[f"number_{found.line}"] = found.number
    form["scan"] = ""
    return form


def add_other(form: Form, line: str) -> Form:
    """The form with one more piece for that line under the number that was scanned last and is on no line."""
    scanned = form.get("scanned", "").strip()
    there = form.get(f"number_{line}", "").strip()
    if there and number_key(there) != number_key(scanned):
        raise refused("one-number-a-paper", line=line, there=there, found=scanned)
    before = _count(form, f"came_{line}")
    under = _count(form, f"under_{line}") if there else 0
    under = before if there and not under else under  # no count beside the number: all of them bear it
    form[f"came_{line}"], form[f"under_{line}"] = str(before + 1), str(under + 1)
    form[f"number_{line}"] = scanned
    form["scan"] = ""
    return form


def all_of_it(form: Form, sheet: CountSheet) -> Form:
    """The form with everything that is still to come filled in."""
    for line in sheet.lines:
        if line.left:
            form[f"came_{line.line}"] = str(line.left)
    form["scan"] = ""
    return form


def as_counted(receipt: Receipt) -> Form:
    """The form as a delivery was counted before, for its prices to be said."""
    form: Form = MultiDict({"paper": receipt.paper, "words": receipt.words})
    for line in receipt.lines:
        said = {"came": line.quantity, "damaged": line.damaged or "", "number": line.number}
        said["under"] = line.under_number or ""
        form.update({f"{name}_{line.line}": str(value) for name, value in said.items()})
    if receipt.dated:
        form["dated"] = receipt.dated.isoformat()
    if any(line.keeps_more for line in receipt.lines):
        form["keep_more"] = "yes"
    return form


def delivery(form: Mapping[str, str], sheet: CountSheet, with_costs: bool) -> Delivery:
    """What the form says. `with_costs`: what the paper charges too; else the goods are only counted.

    Refuses a form in which nothing is counted, and silence about the freight.
    """
    said = Delivery(
        paper=_text(form, "paper"),
        freight=_freight(form) if with_costs else Decimal(0),
        quantities={at: some for at, some in counts(form, sheet).items() if some or _text(form, f"charged_{at}")},
        damaged={at: some for at, some in _counts(form, sheet, "damaged").items() if some},
        numbers=_numbers(form, sheet),
        under_number=_counts(form, sheet, "under"),
        dated=day("dated"),
        keep_more=bool(marked("keep_more")),
        words=_text(form, "words"),
        only_counted=not with_costs,
    )
    if not said.quantities:
        raise refused("nothing-counted", order=sheet.order)
    return _with_costs(form, sheet, said) if with_costs else said


def _with_costs(form: Mapping[str, str], sheet: CountSheet, said: Delivery) -> Delivery:
    return changed(
        said,
        prices=_amounts(form, sheet, "price"),
        charged=_counts(form, sheet, "charged"),
        cores=_amounts(form, sheet, "core"),
        other_charges=_charges_of(form, sheet),
        supplier_total=_amount(form, "total"),
        freight_by=one_word(_text(form, "freight_by") or "value", "freight", ("value", "weight")),
        rate=_amount(form, "rate"),
    )


def _freight(form: Mapping[str, str]) -> Decimal:
    freight = _amount(form, "freight")
    if freight is None:
        raise refused("freight-not-said", found=_text(form, "paper"))
    return freight


def _charges_of(form: Mapping[str, str], sheet: CountSheet) -> dict[str, Decimal]:
    """Those the order has, under its own names; then others. A blank says that the paper has none."""
    rows = ((name, _amount(form, f"ordered_charge_{at}")) for at, name in enumerate(sheet.charges, 1))
    found = {name: charged for name, charged in rows if charged is not None}
    others = _other_charges(form)
    if twice := [name for name in others if name in found]:
        raise refused("charge-not-clear", found=twice[0])
    return {**found, **others}


def _other_charges(form: Mapping[str, str]) -> dict[str, Decimal]:
    found: dict[str, Decimal] = {}
    for at in OTHER_CHARGES:
        name, charged = _text(form, f"charge_name_{at}"), _amount(form, f"charge_{at}")
        if name and charged is not None and name not in found:
            found[name] = charged
        elif name or charged is not None:
            read_typed(f"charge_name_{at}", name or str(charged), _not_clear)
    return found


def _not_clear(found: str) -> None:
    raise refused("charge-not-clear", found=found)


def _numbers(form: Mapping[str, str], sheet: CountSheet) -> dict[int, PartNumber]:
    typed = ((line.line, _text(form, f"number_{line.line}"), _text(form, f"maker_{line.line}")) for line in sheet.lines)
    return {at: PartNumber(printed=printed, maker=maker) for at, printed, maker in typed if printed}


def _counts(form: Mapping[str, str], sheet: CountSheet, name: str) -> dict[int, int]:
    rows = ((line.line, f"{name}_{line.line}") for line in sheet.lines)
    return {at: _count(form, field) for at, field in rows if _text(form, field)}


def _amounts(form: Mapping[str, str], sheet: CountSheet, name: str) -> dict[int, Decimal]:
    rows = ((line.line, _amount(form, f"{name}_{line.line}")) for line in sheet.lines)
    return {at: some for at, some in rows if some is not None}


def _count(form: Mapping[str, str], name: str) -> int:
    typed = _text(form, name)
    return read_typed(name, typed, count) if typed else 0


def _amount(form: Mapping[str, str], name: str) -> Decimal | None:
    typed = _text(form, name)
    return read_typed(name, typed, amount) if typed else None


def _text(form: Mapping[str, str], name: str) -> str:
    return form.get(name, "").strip()
