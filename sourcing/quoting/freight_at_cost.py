"""Freight at cost: what a freight line comes to with the parts that are chosen, never more than stands on it.

A freight line states what the freight is at most. Where the orders of a choice of parts cost less (with the extra parts
they pass free freight, say), that choice is a case of the line, and every total, answer and bill counts it so.
"""

from collections.abc import Collection, Mapping, Sequence

from ..basics.money import Money
from ..basics.quote import FreightCase, QuoteLine
from ..basics.value import changed

Choices = Mapping[frozenset[str], Money]
"""For a choice of parts, by label of their lines, what the inbound freight of all their orders comes to."""


def at_cost(lines: Sequence[QuoteLine], labels: Collection[str] | None = None) -> tuple[QuoteLine, ...]:
    """The lines with freight as it comes to where those labels are approved (None: these lines), and no cases left."""
    chosen = frozenset(line.label for line in lines) if labels is None else labels
    return tuple(
        changed(line, freight_price=line.freight_with(chosen), freight_cases=()) if line.freight_cases else line
        for line in lines
    )


def with_cases(agreed: QuoteLine | None, extras: QuoteLine | None, choices: Choices) -> list[QuoteLine | None]:
    """The two freight lines with every choice of parts that makes one of them less. What a choice costs is first of the
    agreed work, as far as its line goes; only what is more is of the extra parts."""
    every = sorted(frozenset().union(*choices), key=_in_order)
    cases: tuple[list[FreightCase], list[FreightCase]] = ([], [])
    for choice in sorted(choices, key=lambda one: [label not in one for label in every]):
        left = choices[choice]
        for line, found, is_of in ((agreed, cases[0], str.isdigit), (extras, cases[1], _is_extra)):
            if line is None or not any(is_of(label) for label in choice):
                continue
            freight = min(line.freight_price, left, key=lambda one: one.amount)
            left = left - freight
            if freight.amount < line.freight_price.amount:
                approved = tuple(label for label in every if label in choice)
                without = tuple(label for label in every if label not in choice)
                found.append(FreightCase(approved=approved, without=without, freight=freight))
    return [
        changed(line, freight_cases=tuple(_merged(found))) if line is not None and found else line
        for line, found in zip((agreed, extras), cases, strict=True)
    ]


def _merged(cases: list[FreightCase]) -> list[FreightCase]:
    """Two choices that differ in one line and come to the same are one case that does not speak of that line."""
    for at, one in enumerate(cases):
        for other in cases[at + 1 :]:
            apart = {*one.approved} ^ {*other.approved}
            if len(apart) == 1 and one.freight == other.freight and {*one.labels} == {*other.labels}:
                both = changed(
                    one,
                    approved=tuple(label for label in one.approved if label not in apart),
                    without=tuple(label for label in one.without if label not in apart),
                )
                return _merged([both if case is one else case for case in cases if case is not other])
    return cases


def _is_extra(label: str) -> bool:
    return not label.isdigit()


def _in_order(label: str) -> tuple[bool, int, str]:
    return _is_extra(label), len(label), label
