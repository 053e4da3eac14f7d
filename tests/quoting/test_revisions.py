"""Two revisions compared in words: nothing that differs goes unsaid, nothing of the owner's is told unasked."""

import re
from datetime import date, datetime
from decimal import Decimal

import pytest

from sourcing.basics.job import Customer, Finding, Machine
from sourcing.basics.quote import AddOnPrice, Behind, DepositAsked, Quote, QuoteLine
from sourcing.basics.settings import ChargeRules, Shop, Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.revisions import LINES_NOT_COMPARED, NOT_COMPARED, compare_quotes
from tests.builders import usd
from tests.quoting.answered_quotes import of_lines, quote
from tests.quoting.test_pricing_and_totals import line

BEHIND = Behind(
    supplier="stonegarth",
    supplier_number="SG-77120",
    sheet=3,
    unit_cost=usd("71.25"),
    cost=usd("81.20"),
    surplus_cost=usd("0.00"),
    price_rule="71.25 x 1.55",
    landed_rule="goods and share of charges",
    latest=date(2026, 3, 6),
)
BASE = changed(
    quote(),
    lines=(changed(quote().lines[0], behind=BEHIND), *quote().lines[1:]),
    arrives=(date(2026, 3, 5), date(2026, 3, 6)),
    add_on_prices=(AddOnPrice(label="A", price=usd("58.28"), total_with_it=usd("336.76")),),
)


def with_line(**fields: object) -> Quote:
    """Line 1 otherwise."""
    return changed(BASE, lines=(changed(BASE.lines[0], **fields), *BASE.lines[1:]))


def test_the_same_content_is_told_as_nothing() -> None:
    """Whatever its number and the moment it was made."""
    again = changed(BASE, revision=2, made_at=datetime(2026, 3, 6, 9, 0))
    assert compare_quotes(BASE, again, owner=True) == ()


def test_a_dearer_part_is_told_with_the_sum_of_its_line_and_of_the_whole() -> None:
    """109.00 became 118.60; 7 % tax on parts: 10.27 more in all (9.60 x 1.07 = 10.272), once per document."""
    lines = (line("1", "118.60", "1.5"), *quote().lines[1:])
    assert compare_quotes(quote(), of_lines(*lines, revision=2)) == (
        "line 1 (Line 1): the price each now 118.60 USD, before 109.00 USD (9.60 USD more)",
        "line 1 (Line 1): the price of the parts now 118.60 USD, before 109.00 USD (9.60 USD more)",
        "line 1 (Line 1): together before tax 262.60 USD, before 253.00 USD (9.60 USD more)",
        "the total of the agreed work with tax now 278.10 USD, before 267.83 USD (10.27 USD more)",
        "Sales tax on the agreed work now 8.30 USD, before 7.63 USD (0.67 USD more)",
        "the total of everything with tax now 396.82 USD, before 386.55 USD (10.27 USD more)",
        "Sales tax on everything now 12.77 USD, before 12.10 USD (0.67 USD more)",
    )


def test_lines_that_came_went_or_moved() -> None:
    """B is gone, A is C now, D is new."""
    first = quote()
    moved = changed(first.lines[1], label="C")
    words = compare_quotes(first, changed(first, lines=(first.lines[0], moved, line("D", "5.00"))))
    assert "line C (Line A): it was line A before" in words
    assert "line B (Line B, 57.45 USD) is gone" in words
    assert "line D (Line D, 5.00 USD) is new" in words


def test_a_line_that_was_renamed_is_one_line_and_not_two() -> None:
    """Same label, same part."""
    assert compare_quotes(BASE, with_line(title="Both belts")) == (
        "line 1 (Both belts): the work now Both belts, before Line 1",
    )


def test_another_number_quantity_hours_and_days_are_told() -> None:
    """With both figures."""
    new = changed(
        with_line(number="CV-B880K", quantity=2, hours=Decimal("2.25")), arrives=None, ready_by=date(2026, 3, 9)
    )
    words = compare_quotes(BASE, new)
    assert "line 1 (Line 1): the part number now CV-B880K, before N" in words
    assert "line 1 (Line 1): pieces now 2, before 1" in words
    assert "line 1 (Line 1): hours now 2.25, before 1.5" in words
    assert "the parts are promised now none, before 2026-03-05 to 2026-03-06" in words
    one_day = changed(BASE, arrives=(date(2026, 3, 9), date(2026, 3, 9)))
    assert "the parts are promised now 2026-03-09, before 2026-03-05 to 2026-03-06" in compare_quotes(BASE, one_day)
    assert "the machine is promised for now 2026-03-09, before none" in words


@pytest.mark.parametrize(
    "fields",
    [
        {"behind": changed(BEHIND, supplier="larkmoor", cost=usd("60.00"))},
        {"behind": None},
        {"category": "belts"},
    ],
)
def test_supplier_and_cost_are_told_to_the_owner_alone(fields: dict[str, object]) -> None:
    """Never a word of it for the customer."""
    assert compare_quotes(BASE, with_line(**fields)) == ()
    assert compare_quotes(BASE, with_line(**fields), owner=True)


@pytest.mark.parametrize("fields", [{"warnings": ("under the floor",)}, {"tolerance": Tolerance(percent=Decimal(1))}])
def test_what_the_owner_is_warned_of_is_hers_alone(fields: dict[str, object]) -> None:
    """Of the whole quote."""
    assert compare_quotes(BASE, changed(BASE, **fields)) == ()
    assert compare_quotes(BASE, changed(BASE, **fields), owner=True)


def test_another_supplier_is_named_to_the_owner() -> None:
    """With the cost."""
    dearer = changed(BEHIND, supplier="larkmoor", cost=usd("90.00"))
    assert compare_quotes(BASE, with_line(behind=dearer), owner=True) == (
        "line 1 (Line 1): supplier now larkmoor, before stonegarth",
        "line 1 (Line 1): the landed cost now 90.00 USD, before 81.20 USD (8.80 USD more)",
    )


QUOTE_CHANGES: dict[str, object] = {
    "shop": Shop(name="Another shop"),
    "customer": Customer(name="Maud Tilbrook", telephone="555-0199"),
    "machine": Machine(description="Snow thrower", serial="7"),
    "complaint": "Howls",
    "valid_to": date(2026, 3, 12),
    "locale": "en_GB",
    "currency": "EUR",
    "lines": BASE.lines[:2],
    "agreed_total": changed(BASE.agreed_total, total=usd("1.00")),
    "everything_total": changed(BASE.everything_total, taxes=()),
    "add_on_prices": (),
    "arrives": None,
    "terms_text": ("Pay on collection.",),
    "cautions": ("Key out.",),
    "cautions_dated": date(2026, 1, 2),
    "warnings": ("under the floor",),
    "charge_rules": ChargeRules(tax_exempt=True),
    "findings": (Finding(what="bent keeper", photos=("1.jpg",)),),
    "deposit": DepositAsked(agreed=usd("50.00"), everything=usd("60.00"), rule="half of the parts"),
    "tolerance": Tolerance(percent=Decimal(1)),
    "law_text": ("Ask for an estimate.",),
    "paper_size": "A4",
    "ready_by": date(2026, 3, 9),
}
LINE_CHANGES: dict[str, object] = {
    "label": "2",
    "kind": "add-on",
    "title": "Another",
    "part": "Q",
    "number": "M",
    "description": "longer",
    "quantity": 2,
    "unit_price": usd("1.00"),
    "parts_price": usd("1.00"),
    "hours": Decimal("9"),
    "labour_price": usd("1.00"),
    "freight_price": usd("1.00"),
    "found": "worn",
    "why": "it matters",
    "if_declined": "it breaks",
    "behind": None,
    "category": "belts",
    "labour_rate": Decimal("99.00"),
    "fee_price": usd("1.00"),
    "special_order": True,
    "return_words": ("no return",),
    "photos": ("1.jpg",),
}


@pytest.mark.parametrize("name", [name for name in Quote.__struct_fields__ if name not in NOT_COMPARED])
def test_no_difference_of_a_quote_goes_unsaid(name: str) -> None:
    """Every field there is; one that is new to the value and not listed here is tried as 'other'."""
    other = changed(BASE, **{name: QUOTE_CHANGES.get(name, "other")})
    assert compare_quotes(BASE, other, owner=True)
    assert compare_quotes(other, BASE, owner=True)


@pytest.mark.parametrize("name", [name for name in QuoteLine.__struct_fields__ if name not in LINES_NOT_COMPARED])
def test_no_difference_of_a_line_goes_unsaid(name: str) -> None:
    """The like for each field of a line."""
    other = with_line(**{name: LINE_CHANGES.get(name, "other")})
    assert compare_quotes(BASE, other, owner=True)
    assert compare_quotes(other, BASE, owner=True)


@pytest.mark.parametrize("name", Behind.__struct_fields__)
def test_no_difference_behind_a_line_goes_unsaid(name: str) -> None:
    """Nor for the owner's side."""
    value = usd("1.23") if name in ("unit_cost", "cost", "surplus_cost") else "other"
    assert compare_quotes(BASE, with_line(behind=changed(BEHIND, **{name: value})), owner=True)


def test_the_lines_in_another_order_are_told() -> None:
    """Nothing else differs."""
    turned = changed(BASE, lines=(BASE.lines[0], BASE.lines[2], BASE.lines[1]))
    assert compare_quotes(BASE, turned) == ("the lines stand in another order: 1, B, A",)


def test_amounts_are_told_exactly() -> None:
    """No rounding and no exponents: what is told is what is kept."""
    words = " ".join(compare_quotes(BASE, with_line(labour_rate=Decimal("1E+2"), unit_price=usd("0.125"))))
    assert re.search(r"labour rate now 100, before none", words)
    assert "0.125 USD" in words
