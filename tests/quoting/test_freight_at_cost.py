"""What a freight line comes to with each choice of parts: of the agreed work first, then of the extra parts."""

from sourcing.basics.quote import FreightCase, QuoteLine
from sourcing.basics.value import changed
from sourcing.documents.quote_words import freight_words
from sourcing.quoting.freight_at_cost import Choices, at_cost, with_cases
from sourcing.quoting.lines import plain_line
from tests.builders import usd


def freight(label: str, amount: str) -> QuoteLine:
    """A line of freight."""
    return changed(plain_line(label, "Inbound freight", "USD"), freight_price=usd(amount))


def choices(**amounts: str) -> Choices:
    """By the labels together: 'l1AB' is lines 1, A and B."""
    return {frozenset(labels[1:]): usd(amount) for labels, amount in amounts.items()}


def sums(lines: list[QuoteLine], *labels: str) -> str:
    """What the freight lines come to together for a choice, those of a kind without a part in it left out."""
    kinds = {label.isdigit() for label in labels}
    found = [line for line in lines if line.label.isdigit() in kinds]
    return str(sum(line.freight_price.amount for line in at_cost(found, labels)))


TWO = choices(l1="9.50", lA="0.00", lB="12.00", l1A="0.00", l1B="21.50", lAB="12.00", l1AB="12.00")
"""Line 1 and A are from one supplier, free with A; B from another at 12.00. Together it is 2.50 more than alone."""


def test_each_choice_pays_what_it_costs_and_never_more_than_was_said() -> None:
    """1 and B would cost 21.50; the paper said 9.50 and 2.50 more for the extra parts, so 12.00 it is."""
    lines = [one for one in with_cases(freight("2", "9.50"), freight("C", "2.50"), TWO) if one]
    found = {labels: sums(lines, *labels) for labels in ("1", "1A", "1B", "1AB", "A", "B", "AB")}
    assert found == {
        "1": "9.50", "1A": "0.00", "1B": "12.00", "1AB": "12.00", "A": "0.00", "B": "2.50", "AB": "2.50",
    }  # fmt: skip


def test_choices_that_differ_in_nothing_that_counts_are_one_case() -> None:
    """A makes the order free, whatever is said to B."""
    free = choices(l1="9.50", lA="0.00", lB="9.50", l1A="0.00", l1B="9.50", lAB="0.00", l1AB="0.00")
    agreed, extras = with_cases(freight("2", "9.50"), None, free)
    assert extras is None and agreed is not None
    assert agreed.freight_cases == (FreightCase(approved=("1", "A"), without=(), freight=usd("0.00")),)


def test_a_line_that_never_costs_less_has_no_case_and_no_words() -> None:
    line, _ = with_cases(freight("2", "9.50"), None, choices(l1="9.50", lA="9.50", l1A="9.50"))
    assert line == freight("2", "9.50")
    assert not freight_words(line, ("1", "2", "A"), "en_US")


def test_few_cases_are_told_one_by_one_and_many_as_some() -> None:
    one = FreightCase(approved=("1",), without=("A", "B"), freight=usd("3.00"))
    line = changed(freight("2", "9.50"), freight_cases=(one,))
    start = "Freight is charged at what it costs, and this is the most."
    words = "With a yes to line 1, without lines A and B, it comes to $3.00."
    assert freight_words(line, ("1", "2", "A", "B"), "en_US") == f"{start} {words}"
    every = changed(one, approved=("1", "A", "B"), without=(), freight=usd("0.00"))
    many = changed(line, freight_cases=(one, *(changed(one, approved=(label,)) for label in "345"), every))
    some = "With some choices of lines it comes to less; their totals are worked out with that."
    whole = "With everything in this quote it comes to $0.00."
    assert freight_words(many, ("1", "2", "A", "B"), "en_US") == f"{start} {whole} {some}"
