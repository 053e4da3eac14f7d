"""The bridge of a job as a drawing and as a native chart, and the drawing of months and leaks."""

import io
import xml.etree.ElementTree as ET
from decimal import Decimal
from zipfile import ZipFile

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.margin import Bridge, JobMargin, Step
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.bridge import MINUS, bridge_svg, told
from sourcing.documents.bridge_sheet import DRAWN, bridge_table
from sourcing.documents.margin_charts import charts_svg
from sourcing.documents.margins import margins_html, margins_text, margins_xlsx
from sourcing.margins.figures import margin
from tests.builders import usd
from tests.documents.buying_values import JOB_MARGIN
from tests.documents.margin_values import MARGINS
from tests.documents.values import HOSTILE

SVG = "{http://www.w3.org/2000/svg}"


def over(start: str, *changes: str, complete: bool = True) -> JobMargin:
    """A job whose earnings start there and change by these."""
    at, steps = Decimal(start), []
    for number, change in enumerate(changes, 1):
        at += Decimal(change)
        steps.append(
            Step(name=f"cause {number}", amount=usd(change), after=usd(str(at)), labels=("1",), why=("line 1: so",))
        )
    ends = (margin(usd("1000.00"), usd("1000.00") - usd(one)) for one in (start, str(at)))
    made = Bridge(start=next(ends), steps=tuple(steps), end=next(ends), is_complete=complete)
    return changed(JOB_MARGIN, bridge=made)


def bars(drawing: str) -> list[tuple[int, int, str]]:
    """From where, how wide, and how each bar looks."""
    found = ET.fromstring(drawing).iter(f"{SVG}rect")
    return [
        (int(one.get("x", "0")), int(one.get("width", "0")), one.get("class", "").removeprefix("bar ")) for one in found
    ][1:]


def test_each_bar_ends_where_the_next_begins() -> None:
    """226 earned, a loss through nothing, a small gain, and the end below nothing."""
    first, loss, gain, last = bars(bridge_svg(over("226.00", "-300.00", "20.00")))
    assert [one[2] for one in (first, loss, gain, last)] == ["end", "loss", "gain", "end"]
    assert first[0] + first[1] == loss[0] + loss[1]
    assert loss[0] == gain[0]
    assert gain[0] + gain[1] == last[0]
    naught = first[0]
    assert loss[0] < naught == last[0] + last[1]


@given(st.lists(st.integers(-30_000, 30_000).filter(bool), max_size=8), st.integers(-30_000, 30_000))
def test_any_bridge_stays_on_its_paper(changes: list[int], start: int) -> None:
    """Small, large, below nothing: bars stay between their ends, words say sign and sum."""
    job = over(str(Decimal(start) / 100), *(str(Decimal(one) / 100) for one in changes))
    drawing = bridge_svg(job)
    for x, width, _ in bars(drawing):
        assert x >= 290 and width >= 2 and x + width <= 772
    assert job.bridge is not None
    for step in job.bridge.steps:
        assert (
            f">{str(step.amount.amount).replace('-', MINUS) if step.amount.amount < 0 else f'+{step.amount.amount}'}<"
            in drawing
        )


def test_it_tells_in_words_what_it_draws() -> None:
    drawing = bridge_svg(over("50.00", "-12.69"))
    root = ET.fromstring(drawing)
    assert root.get("role") == "img" and root.get("aria-labelledby") == "title what"
    described = root.find(f"{SVG}desc")
    assert described is not None and described.text == (
        "Quoted: earned 50.00, margin 5.00 % on price, markup 5.26 % on cost. cause 1 -12.69. "
        "Received: earned 37.31, margin 3.73 % on price, markup 3.88 % on cost."
    )
    title = root.find(f"{SVG}title")
    assert title is not None and title.text == "From the quoted to the received margin, job 2026-0001"
    assert "http" not in drawing.replace("http://www.w3.org/2000/svg", "")


def test_while_not_all_has_come_it_says_so() -> None:
    job = over("50.00", complete=False)
    assert "to the present margin" in bridge_svg(job) and "as far as it is known" in bridge_svg(job)
    assert job.bridge is not None and "Nothing moved it" in told(job.bridge)


def test_a_job_without_a_margin_is_not_drawn() -> None:
    with pytest.raises(Refused, match="2026-0001 has no approved line"):
        bridge_svg(changed(JOB_MARGIN, bridge=None))


def test_hostile_names_do_no_harm() -> None:
    drawing = bridge_svg(changed(over("50.00", "-1.00"), customer=HOSTILE))
    assert "<script" not in drawing and "\u202e" not in drawing
    ET.fromstring(drawing)


def test_very_many_reasons_are_cut_with_a_word() -> None:
    drawing = bridge_svg(over("50.00", *["-1.00"] * 60))
    assert "and 20 more" in drawing


def test_the_sheets_bars_stand_on_one_another() -> None:
    """What a spreadsheet stacks: base, then the part above nothing, apart from the part below."""
    table = bridge_table(over("74.76", "-140.00", "10.00"))
    drawn = [dict(zip(DRAWN, row[-6:], strict=True)) for row in table.rows]
    assert drawn[0]["Earned"] == Decimal("74.76") and drawn[-1]["Earned"] == Decimal("-55.24")
    assert (drawn[1]["Stands on"], drawn[1]["Loss"], drawn[1]["Loss below nothing"]) == (
        None, Decimal("74.76"), Decimal("-65.24"),
    )  # fmt: skip
    assert (drawn[2]["Stands on"], drawn[2]["Gain"], drawn[2]["Gain below nothing"]) == (
        Decimal("-55.24"), None, Decimal("-10.00"),
    )  # fmt: skip


def test_the_workbook_has_a_native_chart_of_the_bridge() -> None:
    data = margins_xlsx([over("50.00", "-12.69")])
    book = openpyxl.load_workbook(io.BytesIO(data))
    sheet = book["Bridge 2026-0001"]
    assert [cell.value for cell in sheet["A"]] == ["What", "quoted", "cause 1", "received"]
    chart = next(name for name in ZipFile(io.BytesIO(data)).namelist() if name.startswith("xl/charts/"))
    xml = ZipFile(io.BytesIO(data)).read(chart).decode()
    assert "<barChart>" in xml and 'grouping val="stacked"' in xml and "'Bridge 2026-0001'!$G$2:$G$4" in xml


def test_text_and_page_tell_the_bridge() -> None:
    job = over("50.00", "-12.69")
    lines = [" ".join(line.split()) for line in margins_text([job]).splitlines()]
    assert "cause 1 -12.69 37.31 USD" in lines
    assert "What moved the earnings on parts and freight" in margins_html([job])


def test_months_and_leaks_are_drawn_with_their_figures() -> None:
    drawing = charts_svg(MARGINS)
    root = ET.fromstring(drawing)
    words = [text.text for text in root.iter(f"{SVG}text")]
    assert "37.31, quoted 50.00; margin 3.73 %, markup 3.88 %" in words
    assert "second freight on backorder" in words and "14.95, after the quote" in words
    assert all(x >= 100 and x + width <= 652 for x, width, _ in bars(drawing))


def test_nothing_yet_is_not_drawn() -> None:
    with pytest.raises(Refused, match="no job has an approved line yet"):
        charts_svg(changed(MARGINS, months=(), groups=()))
