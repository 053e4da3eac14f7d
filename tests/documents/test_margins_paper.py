"""Margins for the owner: both words with both numbers, lines under the floor first, leaks by name."""

import pytest

from sourcing.basics.value import changed
from sourcing.documents.margins import margins_html, margins_text, margins_xlsx
from tests.documents.buying_values import JOB_MARGIN
from tests.documents.html_reader import Page
from tests.documents.test_comparison_paper import sheets_of
from tests.documents.values import HOSTILE


def test_the_line_under_the_floor_comes_first_with_both_words_and_both_numbers() -> None:
    text = margins_text([JOB_MARGIN])
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert "margin on price markup on cost" in lines[1]
    assert lines[3] == "1 Replace the auger drive belt (approved; UNDER THE FLOOR of 25 %)"
    assert lines[4] == "quoted 166.60 USD 131.50 USD 35.10 USD 21.07 % 26.69 %"
    assert lines[5] == "received 166.60 USD 138.75 USD 27.85 USD 16.72 % 20.07 %"
    assert lines.index("A Belt keepers (approved)") > 5
    assert "quoted 0.00 USD 4.10 USD -4.10 USD none -100.00 %" in lines
    assert "price rise after the quote, line 1: 7.25 USD; charged 126.25, ordered at 119.00" in lines
    assert max(len(line) for line in text.splitlines()) <= 100


def test_no_leak_and_no_job_are_said() -> None:
    assert "Leaks: none found." in margins_text([changed(JOB_MARGIN, leaks=())])
    assert margins_text([]) == "No job has an approved line yet.\n"
    assert "No job has an approved line yet." in Page(margins_html([])).text


def test_as_workbook() -> None:
    sheets = sheets_of(margins_xlsx([JOB_MARGIN]))
    assert list(sheets) == ["Lines", "Jobs", "Leaks"]
    header, *rows = sheets["Lines"]
    assert header[-2:] == ["Margin on price, %", "Markup on cost, %"]
    assert [(row[1], row[7], row[-2], row[-1]) for row in rows] == [
        ("1", "yes", 21.07, 26.69),
        ("1", "yes", 16.72, 20.07),
        ("A", "no", "", -100),
    ]
    assert sheets["Leaks"][1][1:4] == ["price rise after the quote", "1", 7.25]


def test_as_page() -> None:
    page = Page(margins_html([JOB_MARGIN, changed(JOB_MARGIN, job="2026-0002", lines=())]))
    text = page.text
    assert next(words for level, words in page.headings if level == 2) == "Lines under the floor"
    assert "Job 2026-0001, line 1: Replace the auger drive belt; under the floor of 25 %" in text
    assert "quoted 166.60 131.50 35.10 21.07 % 26.69 %" in text and "7.25 USD" in text
    assert "none -100.00 %" in text


@pytest.mark.parametrize("field", ["job", "customer"])
def test_hostile_text_is_harmless(field: str) -> None:
    hostile = changed(JOB_MARGIN, **{field: HOSTILE}, lines=(changed(JOB_MARGIN.lines[1], title=HOSTILE),))
    html = margins_html([hostile])
    assert "<script" not in html and "\u202e" not in html and "\x1b" not in html
    assert Page(html).headings[0] == (1, "Margins")
    assert not any(line.startswith("Total 0.00") for line in margins_text([hostile]).splitlines())
