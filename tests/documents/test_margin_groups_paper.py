"""All jobs added up, for the owner: text, workbook and page. Both words, the floor first, leaks by where they stand."""

import io
from zipfile import ZipFile

from sourcing.basics.margin import BandChange, WhatIf
from sourcing.basics.value import changed
from sourcing.documents.margin_groups import groups_html, groups_text, groups_xlsx
from sourcing.documents.what_if import what_if_text, what_if_xlsx
from tests.documents.html_reader import Page
from tests.documents.margin_values import KNOWN, MARGINS, QUOTED
from tests.documents.test_comparison_paper import sheets_of
from tests.documents.values import HOSTILE


def test_the_floor_comes_first_and_both_words_stand_by_every_figure() -> None:
    text = groups_text(MARGINS)
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert lines[0] == "3 jobs, 12 lines: parts and freight before tax, in USD"
    assert lines.index("Under the floor: 1 line") < lines.index("By supplier")
    assert "by now, 9 of 12 here 1,000.00 962.69 37.31 3.73 % 3.88 %" in lines
    assert "second freight on backorder: 14.95 USD on 2 lines; most on job 2026-0001" in lines
    assert "PO-2026-0001, job 2026-0001: old part, 1 x NW-40388; by 2026-04-01; TOO LATE" in lines
    assert "Note: quoted in another currency than USD and not counted: 2026-0003" in lines
    assert max(len(line) for line in text.splitlines()) <= 100
    assert "no supplier" not in text  # freight on a line of its own is shared out and leaves nothing to show


def test_no_line_under_the_floor_and_no_leak_are_said() -> None:
    text = groups_text(changed(MARGINS, low=(), leaks=(), back=()))
    assert "No line is under the floor." in text and "Leaks: none found." in text
    assert groups_text(changed(MARGINS, groups=())) == "No job has an approved line yet.\n"


def test_a_long_list_says_how_much_is_left() -> None:
    text = groups_text(changed(MARGINS, low=MARGINS.low * 25))
    assert "Under the floor: 25 lines" in text and "and 5 more; --xlsx has all of them" in text


def test_as_workbook_with_native_charts() -> None:
    data = groups_xlsx(MARGINS)
    sheets = sheets_of(data)
    assert list(sheets) == ["Under the floor", "By supplier", "Months", "Leaks", "Going back"]
    assert sheets["Months"][1] == ["2026-03", 12, 50, 37.31, "USD", 3.73, 3.88, 14.95]
    assert [row[0] for row in sheets["Leaks"][1:]] == ["second freight on backorder", "surplus pack"]
    charts = [name for name in ZipFile(io.BytesIO(data)).namelist() if name.startswith("xl/charts/chart")]
    assert len(charts) == 2
    assert all("<barChart>" in ZipFile(io.BytesIO(data)).read(name).decode() for name in charts)


def test_as_page() -> None:
    page = Page(groups_html(MARGINS))
    assert [words for level, words in page.headings if level == 2] == [
        "Lines under the floor", "By supplier", "Leaks", "Waiting to go back, or for a credit",
    ]  # fmt: skip
    assert "1000.00 962.69 37.31 3.73 % 3.88 %" in page.text and "too late" in page.text


def test_hostile_words_are_harmless() -> None:
    hostile = changed(MARGINS, groups=(changed(MARGINS.groups[0], title=HOSTILE),), notes=(HOSTILE,))
    html = groups_html(hostile)
    assert "<script" not in html and "\u202e" not in html and "\x1b" not in groups_text(hostile)


BAND = BandChange(band="from 50, cost x 1.60", lines=4, changed=3, before=QUOTED, after=KNOWN)
TRIED = WhatIf(
    currency="USD", bands="from 50 x 1.60", jobs=2, jobs_changed=1, lines=4, lines_changed=3, not_repriced=1, capped=2,
    by_band=(BAND,), before=QUOTED, after=KNOWN, under_floor_before=1, under_floor_after=2,
    notes=("the customers' answers might have been others at other prices",),
)  # fmt: skip


def test_other_bands_are_told_with_what_they_leave_alone() -> None:
    text = what_if_text(TRIED)
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert "3 lines of 4 changed 1,000.00 962.69 37.31 3.73 % 3.88 %" in lines
    assert "Earned 12.69 USD less in all: 3 of 4 lines on 1 of 2 jobs would have another price." in lines
    assert "Under the floor: 1 lines as priced, 2 by the others." in lines
    assert "The list price holds 2 lines down by the other bands." in lines
    assert any(line.startswith("1 line left as they are: their price is not by the bands") for line in lines)
    assert lines[-1] == "Note: the customers' answers might have been others at other prices."
    assert max(len(line) for line in text.splitlines()) <= 100
    rows = sheets_of(what_if_xlsx(TRIED))["Other bands"]
    assert [row[:2] for row in rows[1:]] == [
        ["from 50, cost x 1.60", "as priced"], ["from 50, cost x 1.60", "by the other bands"],
        ["all", "as priced"], ["all", "by the other bands"],
    ]  # fmt: skip
