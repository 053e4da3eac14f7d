"""Job files that can't hold: each fault told with file and field, and nothing kept."""

import re
from pathlib import Path

import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.files import read_toml
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.basics.job import Job
from sourcing.basics.problem import Refused
from sourcing.quoting.job_checks import job_contradictions
from tests.actions.quoted_shop import (
    BELT_LINE,
    MONDAY,
)
from tests.journeys.small_shop import job_file, shop, take_in


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ('fees = [{ name = "Pick-up", amount = 0 }]\n', "'fees.1.amount' is 0; leave the fee out"),
        ('fees = [{ name = " ", amount = 1 }]\n', "'fees.1.name' is blank"),
        ('fees = [{ name = "Pick-up", amount = 1.005 }]\n', "'fees.1.amount' is 1.005, finer than the smallest coin"),
        ("ready_by = 2026-03-01\n", "'ready_by' is 2026-03-01, before the machine came on 2026-03-02"),
        ("need_by = 2026-03-09\nready_by = 2026-03-06\n", "'need_by' is 2026-03-09, after the machine is to be ready"),
        ('findings = [{ what = "" }]\n', "'findings.1.what' is blank"),
        ('findings = [{ what = "Bent", photos = ["a.jpg", "a.jpg"] }]\n', "'findings.1.photos.2' is 'a.jpg' a second"),
    ],
)
def test_what_cannot_hold_in_a_job_file_is_told_with_its_place(tmp_path: Path, body: str, words: str) -> None:
    """File, field, and what is wrong; nothing is kept."""
    desk = shop(tmp_path, MONDAY)
    with pytest.raises(Refused, match=re.escape(f"job.toml: {words}")):
        take_in(desk, tmp_path, body + BELT_LINE)
    assert not [one for one in history(desk, None) if one.deed == "take in job"]


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("labour_rate = 90\nlabour_flat = 10\n", "job.toml: the job can't hold: 'Look' has both a labour rate and"),
        ("labour_rate = 90\n", "job.toml: 'agreed.1.labour_rate' is given, but no hours are"),
        ("special_order = true\n", "job.toml: 'agreed.1.special_order' is given, but the line has no part"),
        ('category = "belts"\n', "job.toml: 'agreed.1.category' is given, but the line has no part"),
        ("labour_flat = 10.001\n", "job.toml: 'agreed.1.labour_flat' is 10.001, finer than the smallest coin, 0.01"),
    ],
)
def test_what_cannot_hold_in_a_line_is_told_with_its_place(tmp_path: Path, more: str, words: str) -> None:
    """The same for a line without a part."""
    desk = shop(tmp_path, MONDAY)
    with pytest.raises(Refused, match=re.escape(words)):
        take_in(desk, tmp_path, f'[[agreed]]\ntitle = "Look"\n{more}')


def test_tax_free_customers_need_their_words_and_words_need_the_customer(tmp_path: Path) -> None:
    """Each without the other is a question."""
    desk = shop(tmp_path, MONDAY)
    for fields, words in (
        ("tax_exempt = true", "'customer.exempt_because' is blank, but tax_exempt is true"),
        ('exempt_because = "certificate 88-2"', "'customer.exempt_because' is given, but tax_exempt is not true"),
    ):
        path = job_file(tmp_path, BELT_LINE)
        path.write_text(path.read_text().replace("[customer]\n", f"[customer]\n{fields}\n"))
        with pytest.raises(Refused, match=re.escape(f"job.toml: {words}")):
            change_job_from(desk, take_in_plain(desk, tmp_path), path)


def take_in_plain(desk: Desk, folder: Path) -> str:
    """A job that is there, from a file of its own."""
    other = folder / "plain"
    other.mkdir(exist_ok=True)
    return take_in(desk, other, BELT_LINE)


@pytest.mark.parametrize("instead", ["labour_flat", "labour_rate"])
def test_what_the_demos_job_file_shows_as_a_comment_can_be_said(tmp_path: Path, instead: str) -> None:
    """Every commented field taken in as it stands there; a rate and a flat price are one or the other."""
    text = (Path(__file__).parents[2] / "demo_prices" / "job.toml").read_text(encoding="utf-8")
    said = re.sub(rf"^# (?=(?!{instead})[a-z_]+ = )", "", text, flags=re.MULTILINE)
    assert said.count("\n# ") < text.count("\n# ") - 8
    path = tmp_path / "job.toml"
    path.write_text(said, encoding="utf-8")
    found = read_toml(path, Job)
    assert found.customer.tax_exempt and found.fees and found.findings and found.ready_by and found.agreed[0].photos
    assert not job_contradictions(found, "USD")
