"""What jobs earned, for the owner: text, XLSX and HTML. Lines under the floor come first; margin and markup together.

Margin is on price, markup is on cost; both words stand wherever a figure does. Before tax, in the shop's currency;
core charges are in neither. These papers are the owner's: they carry costs and never go to a customer.
"""

from collections.abc import Sequence
from decimal import Decimal

from ..basics.margin import JobMargin, LineMargin, Margin, Stage
from .amounts import percent_text
from .csv_text import Cell
from .pages import render
from .plain_text import document, row, underline, widths_for, wrapped, yes_no
from .workbook import Table, workbook_bytes

HEADER = ("stage", "price", "cost", "earned", "margin on price", "markup on cost")
MOST = (34, 14, 14, 14, 15, 14)
RIGHT = frozenset(range(1, len(HEADER)))

Stages = tuple[tuple[Stage, Margin], ...]


def margins_text(jobs: Sequence[JobMargin]) -> str:
    """Each job: lines under the floor, then all lines, parts and the whole job at every stage, then the leaks."""
    if not jobs:
        return "No job has an approved line yet.\n"
    lines: list[str] = []
    for job in jobs:
        lines += ["", *_job(job)] if lines else _job(job)
    return document(lines)


def margins_xlsx(jobs: Sequence[JobMargin]) -> bytes:
    """Worksheets Lines (under the floor first), Jobs, Leaks."""
    figures = ("Stage", "Price", "Cost", "Earned", "Currency", "Margin on price, %", "Markup on cost, %")
    lines = [
        (
            job.job,
            line.label,
            line.title,
            line.answer,
            yes_no(line.below_floor),
            job.floor_percent,
            *_figures(stage, margin),
        )
        for job, line in _lines_of(jobs)
        for stage, margin in line.stages
    ]
    whole = [
        (job.job, job.customer, job.revision, part, *_figures(stage, margin))
        for job in jobs
        for part, stages in (("parts and freight", job.parts), ("with labour", job.whole))
        for stage, margin in stages
    ]
    leaks = [
        (job.job, leak.name, leak.label, leak.amount.amount, leak.amount.currency, leak.why)
        for job in jobs
        for leak in job.leaks
    ]
    return workbook_bytes(
        (
            Table(
                title="Lines",
                headers=("Job", "Line", "Title", "Answer", "Under the floor", "Floor, %", *figures),
                rows=tuple(lines),
            ),
            Table(title="Jobs", headers=("Job", "Customer", "Revision", "What", *figures), rows=tuple(whole)),
            Table(title="Leaks", headers=("Job", "Leak", "Line", "Amount", "Currency", "Why"), rows=tuple(leaks)),
        )
    )


def margins_html(jobs: Sequence[JobMargin]) -> str:
    """The same as a page to print."""
    below = [(job, line) for job, line in _lines_of(jobs) if line.below_floor]
    return render("margins.html", jobs=jobs, below=below, language="en", ordered_lines=floor_first)


def floor_first(lines: Sequence[LineMargin]) -> list[LineMargin]:
    """Lines under the floor first, else in the order given."""
    return sorted(lines, key=lambda line: not line.below_floor)


def _lines_of(jobs: Sequence[JobMargin]) -> list[tuple[JobMargin, LineMargin]]:
    """Every line with its job, those under the floor first over all jobs."""
    return sorted(((job, line) for job in jobs for line in job.lines), key=lambda pair: not pair[1].below_floor)


def _job(job: JobMargin) -> list[str]:
    lines = wrapped(f"Job {job.job}, revision {job.revision}, {job.customer}: approved lines, before tax")
    blocks = [(_line_title(line, job), line.stages) for line in floor_first(job.lines)]
    blocks += [("Parts and freight together", job.parts), ("The whole job with labour", job.whole)]
    cells = [(f"  {stage}", *_margin_cells(margin)) for _, stages in blocks for stage, margin in stages]
    widths = widths_for([HEADER, *cells], MOST)
    lines += [*row(HEADER, widths, RIGHT), underline(widths)]
    for title, stages in blocks:
        lines += wrapped(title) if stages else []
        for stage, margin in stages:
            lines += row((f"  {stage}", *_margin_cells(margin)), widths, RIGHT)
    lines += _leaks(job)
    return lines + [text for note in job.notes for text in wrapped(f"Note: {note}")]


def _line_title(line: LineMargin, job: JobMargin) -> str:
    under = f"; UNDER THE FLOOR of {percent_text(job.floor_percent)}" if line.below_floor else ""
    return f"{line.label} {line.title} ({line.answer}{under})"


def _margin_cells(margin: Margin) -> tuple[str, ...]:
    money = (str(amount) for amount in (margin.price, margin.cost, margin.earned))
    return (*money, percent_text(margin.margin_percent), percent_text(margin.markup_percent))


def _leaks(job: JobMargin) -> list[str]:
    if not job.leaks:
        return ["Leaks: none found."]
    lines = ["Leaks"]
    for leak in job.leaks:
        where = f", line {leak.label}" if leak.label else ""
        lines += wrapped(f"{leak.name}{where}: {leak.amount}; {leak.why}", 2)
    return lines


def _figures(stage: Stage, margin: Margin) -> tuple[Cell, ...]:
    percents: tuple[Decimal | None, ...] = (margin.margin_percent, margin.markup_percent)
    amounts = (margin.price.amount, margin.cost.amount, margin.earned.amount)
    return (stage, *amounts, margin.price.currency, *percents)
