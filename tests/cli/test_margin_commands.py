"""The commands of margins and of other bands, as typed: text, JSON, papers, and one sentence for what can't be."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.actions.test_margins_of_all import BELT, a_job, a_shop
from tests.cli.running import sourcing
from tests.journeys.small_shop import take_in

AT = "2026-03-20T10:00"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A shop with one approved job."""
    a_job(a_shop(tmp_path), tmp_path)
    return tmp_path


def test_all_jobs_added_up(folder: Path) -> None:
    """By job unless said; both words; the workbook, page and drawing beside it."""
    papers = ("--xlsx", "m.xlsx", "--html", "m.html", "--chart", "m.svg")
    code, out, err = sourcing(folder, "margins", *papers, at=AT)
    assert (code, err) == (0, "")
    assert "margin on price markup on cost" in out and "\n2026-0001 Maud Tilbrook\n  quoted" in out
    assert "37.75" in out and "list cap: 1.44 USD on 1 line; most on job 2026-0001" in out
    assert (folder / "m.xlsx").read_bytes()[:2] == b"PK"
    assert "<h1>Margins</h1>" in (folder / "m.html").read_text()
    assert ElementTree.parse(folder / "m.svg").getroot().tag.endswith("svg")
    code, out, _ = sourcing(folder, "margins", "--by", "Supplier", "--json", at=AT)
    told = json.loads(out)
    assert (told["by"], told["groups"][0]["title"]) == ("supplier", "Pellbrook Power Parts")


def test_one_job_in_every_figure(folder: Path) -> None:
    code, out, _ = sourcing(folder, "margins", "2026-0001", "--bridge", "b.svg", at=AT)
    assert code == 0 and "Job 2026-0001, revision 1, Maud Tilbrook: approved lines, before tax" in out
    assert ElementTree.parse(folder / "b.svg").getroot().tag.endswith("svg")
    _, each, _ = sourcing(folder, "margins", "--each", at=AT)
    assert each == out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("margins", "--bridge", "b.svg"), "--bridge can be made of one job only"),
        (("margins", "2026-0001", "--by", "month"), "--by adds up many jobs, and job 2026-0001 is one"),
        (("margins", "2026-0001", "--chart", "m.svg"), "--chart adds up many jobs"),
        (("margins", "--by", "week"), "'week'"),
        (("margins", "2026-0002", "--bridge", "b.svg"), "job 2026-0002 has no approved line"),
        (("what-if",), "no markup bands are given to try"),
        (("what-if", "--band", "50"), "'50'"),
        (("what-if", "--band", "0=0.5"), "sold for less than it costs"),
        (("what-if", "bare.toml"), "no markup bands are given to try"),
        (("what-if", "gone.toml"), "gone.toml"),
    ],
)
def test_what_cannot_be_is_one_sentence(folder: Path, words: tuple[str, ...], told: str) -> None:
    from datetime import datetime

    from sourcing.actions.quotes import write_quote
    from tests.actions.test_margins_of_all import paper
    from tests.journeys.small_shop import desk_at

    desk = desk_at(folder, datetime(2026, 3, 2, 11, 0))
    write_quote(desk, take_in(desk, folder, BELT), paper)
    (folder / "bare.toml").write_text('currency = "USD"\n')
    code, out, err = sourcing(folder, *words, at=AT)
    assert (code, out) == (1, "") and err.startswith("sourcing: ") and told in err
    assert err.count("\n") == 1 and not (folder / "b.svg").exists()


def test_nothing_approved_is_said_and_not_drawn(tmp_path: Path) -> None:
    a_shop(tmp_path)
    code, out, _ = sourcing(tmp_path, "margins", at=AT)
    assert (code, out) == (0, "No job has an approved line yet.\n")
    code, _, err = sourcing(tmp_path, "margins", "--chart", "m.svg", at=AT)
    assert code == 1 and "no job has an approved line yet" in err
    code, out, _ = sourcing(tmp_path, "what-if", "--band", "0=2", at=AT)
    assert (code, out) == (0, "No approved line of a past job can be priced by bands.\n")


def test_other_bands_by_option_and_by_file(folder: Path) -> None:
    code, out, _ = sourcing(folder, "what-if", "--band", "0=2.5", "--band", "50=1.50", "--xlsx", "w.xlsx", at=AT)
    assert code == 0 and "from 50, cost x 1.50: as priced" in out
    assert "Earned 2.12 USD less in all: 1 of 1 line on 1 of 1 job would have another price." in out
    assert "the customers' answers might have been others at other prices" in out
    code, out, _ = sourcing(folder, "what-if", "shop.toml", "--json", at=AT)
    assert code == 0 and json.loads(out)["lines_changed"] == 0
