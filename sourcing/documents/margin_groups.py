"""What all jobs earned, added up, for the owner: text, XLSX with charts, HTML. Lines under the floor come first."""

from collections.abc import Sequence

from ..basics.margin import Group, LowLine, Margin, Margins
from .amounts import percent_text
from .csv_text import Cell, csv_text
from .margin_words import FIGURES, HEADS, bare_cells, by_when, figures, group_head, group_name, how_far, told_of
from .pages import render
from .plain_text import count, document, row, underline, widths_for, wrapped, yes_no
from .workbook import Table, workbook_bytes
from .workbook_bars import Bars

MOST_LOW, MOST_GROUPS, MOST_BACK = 20, 40, 20
"""What a screen shows; the workbook has all of it."""

RIGHT = frozenset(range(1, 6))
MOST = (30, 12, 12, 12, 15, 14)


def groups_text(found: Margins) -> str:
    """Lines under the floor, the groups, the leaks by name, what waits to go back."""
    if not found.groups:
        return "No job has an approved line yet.\n"
    head = f"{count(found.jobs, 'job')}, {count(found.whole.lines, 'line')}"
    head += f": parts and freight before tax, in {found.currency}"
    lines = wrapped(head)
    lines += [*_low(found), "", group_head(found), *_groups(told_of(found.groups)), *_leaks(found), *_back(found)]
    return document([*lines, *(text for note in found.notes for text in wrapped(f"Note: {note}"))])


def _low(found: Margins) -> list[str]:
    if not found.low:
        return ["No line is under the floor."]
    blocks = [(_line(one), [(f"  {one.stage}", one.margin)]) for one in found.low[:MOST_LOW]]
    lines = ["", f"Under the floor: {count(len(found.low), 'line')}", *_blocks(blocks)]
    return [*lines, *_more(len(found.low) - MOST_LOW)]


def _line(one: LowLine) -> str:
    return f"Job {one.job}, line {one.label} {one.title} (floor {percent_text(one.floor_percent)})"


def _groups(groups: Sequence[Group]) -> list[str]:
    """Each group as quoted, and as far as it is known by now."""
    shown = groups[:MOST_GROUPS]
    blocks = [(group_name(one), [("  quoted", one.quoted), (f"  by now, {how_far(one)}", one.known)]) for one in shown]
    return [*_blocks(blocks), *_more(len(groups) - MOST_GROUPS)]


def _blocks(blocks: Sequence[tuple[str, Sequence[tuple[str, Margin]]]]) -> list[str]:
    """Each name on a line of its own, its figures below it."""
    rows = [(words, *bare_cells(margin)) for _, stages in blocks for words, margin in stages]
    widths = widths_for([("", *HEADS), *rows], MOST)
    lines = [*row(("", *HEADS), widths, RIGHT), underline(widths)]
    for name, stages in blocks:
        lines += wrapped(name)
        for words, margin in stages:
            lines += row((words, *bare_cells(margin)), widths, RIGHT)
    return lines


def _leaks(found: Margins) -> list[str]:
    if not found.leaks:
        return ["", "Leaks: none found."]
    lines = ["", "Leaks"]
    for words, leaks in by_when(found.leaks):
        lines += wrapped(words, 1)
        for one in leaks:
            times, worst = getattr(one, "count", 1), getattr(one, "worst_job", "")
            lines += wrapped(f"{one.name}: {one.amount} on {count(times, 'line')}; most on job {worst}", 2)
    return lines


def _back(found: Margins) -> list[str]:
    if not found.back:
        return []
    lines = ["", "Old parts and goods that wait to go back, or for their credit"]
    for one in found.back[:MOST_BACK]:
        by = f"by {one.by}" if one.by else "no deadline is known"
        lines += wrapped(f"{one.order}, job {one.job}: {one.what}; {by}{'; TOO LATE' if one.is_late else ''}", 2)
    return [*lines, *_more(len(found.back) - MOST_BACK)]


def _more(left: int) -> list[str]:
    return [f"  and {left:,} more; --xlsx has all of them"] if left > 0 else []


def groups_xlsx(found: Margins) -> bytes:
    """Worksheets Under the floor, the groups, Months and Leaks with native charts, Going back."""
    return workbook_bytes((_low_table(found), _group_table(found), _month_table(found), *_leak_tables(found)))


def groups_csv(found: Margins) -> str:
    """The groups, a row for each stage; as the second worksheet has them."""
    made = _group_table(found)
    return csv_text(made.headers, made.rows)


def _low_table(found: Margins) -> Table:
    rows = tuple(
        (one.job, one.label, one.title, one.supplier, one.floor_percent, one.stage, *figures(one.margin))
        for one in found.low
    )
    headers = ("Job", "Line", "Title", "Supplier", "Floor, %", "Stage", *FIGURES)
    return Table(title="Under the floor", headers=headers, rows=rows)


def _group_table(found: Margins) -> Table:
    headers = ("Name", "Words", "Lines", "Under the floor", "Stage", "Lines at it", *FIGURES, "Leaked")
    rows: list[tuple[Cell, ...]] = []
    for one in found.groups:
        for stage, lines, margin in (
            ("quoted", one.lines, one.quoted),
            ("ordered", one.ordered_lines, one.ordered),
            ("received", one.received_lines, one.received),
            ("by now", one.lines, one.known),
        ):
            leaked = one.leaked.amount if stage == "by now" else None
            rows.append((one.name, one.title, one.lines, one.under_floor, stage, lines, *figures(margin), leaked))
    return Table(title=group_head(found).replace("'", "")[:31], headers=headers, rows=tuple(rows))


def _month_table(found: Margins) -> Table:
    headers = ("Month", "Lines", "Quoted, earned", "By now, earned", "Currency",
               "Margin on price, %", "Markup on cost, %", "Leaked")  # fmt: skip
    rows = tuple(
        (
            *(one.name, one.lines, one.quoted.earned.amount, one.known.earned.amount, found.currency),
            *(one.known.margin_percent, one.known.markup_percent, one.leaked.amount),
        )
        for one in found.months
    )
    bars = Bars(
        title="Earned on parts and freight by month of the customer's yes",
        names="Month",
        series=(("Quoted, earned", "open"), ("By now, earned", "full")),
        up=f"Earned, {found.currency}",
    )
    return Table(title="Months", headers=headers, rows=rows, bars=bars)


def _leak_tables(found: Margins) -> tuple[Table, Table]:
    rows = tuple(
        (one.name, one.amount.amount, one.amount.currency, one.count, one.worst_job, one.when) for one in found.leaks
    )
    bars = Bars(title="Leaks by name", names="Leak", series=(("Amount", "hatched"),), up=found.currency)
    back = tuple((one.order, one.job, one.what, one.by, yes_no(one.is_late)) for one in found.back)
    return (
        Table(title="Leaks", headers=("Leak", "Amount", "Currency", "Lines", "Most on job", "Where it stands"),
              rows=rows, bars=bars),
        Table(title="Going back", headers=("Order", "Job", "What", "By", "Too late"), rows=back),
    )  # fmt: skip


def groups_html(found: Margins) -> str:
    """The same as a page to print."""
    return render(
        "margin_groups.html",
        found=found,
        language="en",
        head=group_head(found),
        low=found.low[:MOST_LOW],
        groups=told_of(found.groups)[:MOST_GROUPS],
        back=found.back[:MOST_BACK],
        more=(len(found.low) - MOST_LOW, len(told_of(found.groups)) - MOST_GROUPS, len(found.back) - MOST_BACK),
        by_when=by_when,
        how_far=how_far,
        name=group_name,
    )
