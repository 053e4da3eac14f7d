"""What jobs earned, each by itself, for the owner: text, XLSX and HTML. Lines under the floor come first.

Margin is on price, markup is on cost; both words stand wherever a figure does. Before tax, in the shop's currency;
core charges are in neither. These papers are the owner's: they carry costs and never go to a customer.
"""

from collections.abc import Sequence

from ..basics.margin import JobMargin, LineMargin, Margin, Stage
from .amounts import percent_text
from .bridge_sheet import bridge_table
from .margin_words import FIGURES, HEADS, bridge_lines, by_when, figures, leak_words, left_words, margin_cells
from .pages import render
from .plain_text import document, row, underline, widths_for, wrapped, yes_no
from .workbook import Table, workbook_bytes

HEADER = ("stage", *HEADS)
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
    """Worksheets Lines (under the floor first), Jobs, Leaks, and a Bridge with its chart for each of at most ten."""
    lines = [
        (
            *(job.job, line.label, line.title, line.answer, line.supplier, line.category, line.month),
            *(yes_no(line.below_floor), job.floor_percent, stage, *figures(margin)),
        )
        for job, line in _lines_of(jobs)
        for stage, margin in line.stages
    ]
    whole = [
        (job.job, job.customer, job.revision, part, stage, *figures(margin))
        for job in jobs
        for part, stages in (("parts and freight", job.parts), ("with labour", job.whole))
        for stage, margin in stages
    ]
    leaks = [
        (job.job, leak.name, leak.label, leak.amount.amount, leak.amount.currency, leak.when, leak.why)
        for job in jobs
        for leak in job.leaks
    ]
    of_line = (
        "Job",
        "Line",
        "Title",
        "Answer",
        "Supplier",
        "Category",
        "Month",
        "Under the floor",
        "Floor, %",
        "Stage",
    )
    of_leak = ("Job", "Leak", "Line", "Amount", "Currency", "Where it stands", "Why")
    return workbook_bytes(
        (
            Table(title="Lines", headers=(*of_line, *FIGURES), rows=tuple(lines)),
            Table(title="Jobs", headers=("Job", "Customer", "Revision", "What", "Stage", *FIGURES), rows=tuple(whole)),
            Table(title="Leaks", headers=of_leak, rows=tuple(leaks)),
            *[bridge_table(job) for job in jobs[:10] if job.bridge],
        )
    )


def margins_html(jobs: Sequence[JobMargin]) -> str:
    """The same as a page to print."""
    below = [(job, line) for job, line in _lines_of(jobs) if line.below_floor]
    return render(
        "margins.html",
        jobs=jobs,
        below=below,
        language="en",
        ordered_lines=floor_first,
        by_when=by_when,
        bridge_lines=bridge_lines,
        left_words=left_words,
    )


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
    cells = [(f"  {stage}", *margin_cells(margin)) for _, stages in blocks for stage, margin in stages]
    widths = widths_for([HEADER, *cells], MOST)
    lines += [*row(HEADER, widths, RIGHT), underline(widths)]
    for title, stages in blocks:
        lines += wrapped(title) if stages else []
        for stage, margin in stages:
            lines += row((f"  {stage}", *margin_cells(margin)), widths, RIGHT)
    lines += [*_bridge(job), *_leaks(job)]
    return lines + [text for note in job.notes for text in wrapped(f"Note: {note}")]


def _line_title(line: LineMargin, job: JobMargin) -> str:
    under = f"; UNDER THE FLOOR of {percent_text(job.floor_percent)}" if line.below_floor else ""
    return f"{line.label} {line.title} ({line.answer}{under})"


def _bridge(job: JobMargin) -> list[str]:
    if job.bridge is None or not job.bridge.steps:
        return []
    rows = bridge_lines(job.bridge)
    widths = widths_for(rows, (44, 14, 18))
    lines = ["What moved the earnings on parts and freight"]
    return lines + [f"  {line}" for cells in rows for line in row(cells, widths, frozenset((1, 2)))]


def _leaks(job: JobMargin) -> list[str]:
    if not job.leaks:
        return ["Leaks: none found."]
    lines = ["Leaks"]
    for words, leaks in by_when(job.leaks):
        lines += wrapped(words, 1)
        for leak in leaks:
            lines += wrapped(leak_words(leak), 2)  # type: ignore[arg-type]
    left = left_words(job)
    return [*lines, *(wrapped(f"{left}.") if left else ())]
