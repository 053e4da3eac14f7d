"""Figures and words that every paper about margins shares. These papers are the owner's and never go to a customer."""

from collections.abc import Iterator, Sequence

from ..basics.margin import Bridge, Group, JobMargin, Leak, Margin, Margins, NamedLeak
from .amounts import percent_text
from .bridge import end_word, signed
from .csv_text import Cell

HEADS = ("price", "cost", "earned", "margin on price", "markup on cost")
"""Both words wherever a figure stands."""

FIGURES = ("Price", "Cost", "Earned", "Currency", "Margin on price, %", "Markup on cost, %")


def margin_cells(margin: Margin) -> tuple[str, ...]:
    """The figures under `HEADS`, as text."""
    money = (str(amount) for amount in (margin.price, margin.cost, margin.earned))
    return (*money, percent_text(margin.margin_percent), percent_text(margin.markup_percent))


def bare_cells(margin: Margin) -> tuple[str, ...]:
    """The same without the currency, where the table's heading has it."""
    money = (f"{amount.rounded().amount:,}" for amount in (margin.price, margin.cost, margin.earned))
    return (*money, percent_text(margin.margin_percent), percent_text(margin.markup_percent))


def figures(margin: Margin) -> tuple[Cell, ...]:
    """The figures under `FIGURES`, as numbers."""
    amounts = (margin.price.amount, margin.cost.amount, margin.earned.amount)
    return (*amounts, margin.price.currency, margin.margin_percent, margin.markup_percent)


def leak_words(leak: Leak) -> str:
    """A leak in one sentence."""
    where = f", line {leak.label}" if leak.label else ""
    return f"{leak.name}{where}: {leak.amount}; {leak.why}"


WHEN_WORDS = {
    "after the quote": "After the quote (these lead from the quoted margin to what it is now)",
    "within the quote": "Within the quote (the quoted margin is lower for them already)",
    "beside the margin": "Beside the margin (on the shelf, with the supplier, a deposit, or off labour)",
}


def by_when(leaks: Sequence[Leak] | Sequence[NamedLeak]) -> Iterator[tuple[str, list[Leak | NamedLeak]]]:
    """Leaks under the words that say where they stand, in that order; what has none is left out."""
    for when, words in WHEN_WORDS.items():
        found: list[Leak | NamedLeak] = [leak for leak in leaks if leak.when == when]
        if found:
            yield words, found


def bridge_lines(bridge: Bridge) -> list[tuple[str, str, str]]:
    """The bridge as rows: what, by how much, what is earned after it."""
    rows = [("quoted", "", str(bridge.start.earned))]
    rows += [(step.name, signed(step.amount.rounded().amount), str(step.after)) for step in bridge.steps]
    return [*rows, (end_word(bridge), "", str(bridge.end.earned))]


def left_words(job: JobMargin) -> str:
    """What is left on parts once the leaks beside the margin are off; blank where there are none."""
    if job.bridge is None or job.left is None or job.left == job.bridge.end.earned:
        return ""
    return f"Earned on parts {job.bridge.end.earned}; less what is lost beside the margin: {job.left}"


def group_head(found: Margins) -> str:
    """The heading over the groups."""
    words = {"job": "By job", "supplier": "By supplier", "category": "By category", "line": "By line"}
    return words.get(found.by, "By month of the customer's yes")


def group_name(group: Group) -> str:
    """A group's name with its words."""
    return f"{group.name} {group.title}".rstrip()


def told_of(groups: Sequence[Group]) -> list[Group]:
    """The groups with anything in them: freight billed on a line of its own is shared over the parts."""
    return [one for one in groups if any(amount for figure in (one.quoted, one.known)
                                         for amount in (figure.price.amount, figure.cost.amount))]  # fmt: skip


def how_far(group: Group) -> str:
    """How much of a group has come: '9 of 12 lines here'."""
    return f"{group.received_lines:,} of {group.lines:,} here"
