"""The command of suppliers' terms, as a person types it."""

import json
import shutil
from pathlib import Path

import pytest

from tests.cli.running import sourcing

DEMO = Path(__file__).parents[2] / "demo_prices"
AT = "2026-01-13T11:30"


@pytest.fixture(scope="module")
def set_up(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A shop set up from the demo's files, made once."""
    folder = tmp_path_factory.mktemp("terms") / "shop"
    folder.mkdir()
    assert sourcing(folder, "setup", str(DEMO), at=AT)[0] == 0
    return folder


@pytest.fixture
def shop(set_up: Path, tmp_path: Path) -> Path:
    """A copy of it for one test."""
    return Path(shutil.copytree(set_up, tmp_path / "shop"))


def test_look_change_and_look_again(shop: Path) -> None:
    """From a day on; before it, what held before."""
    code, output, _ = sourcing(shop, "terms", at=AT)
    assert code == 0 and "stonegarth, Stonegarth" in output
    words = ["terms", "stonegarth", "--set", "minimum_order=30.00", "--set", "freight.free_from=250", "--from"]
    code, output, _ = sourcing(shop, *words, "2026-02-01", at=AT)
    assert code == 0 and output == (
        "Stonegarth Trade Parts, from 2026-02-01 on:\n  freight.free_from 200.00 -> 250\n"
        "  minimum_order 25.00 -> 30.00\n"
    )
    assert "Minimum order: 25.00 USD" in sourcing(shop, "terms", "stonegarth", at=AT)[1]
    output = sourcing(shop, "terms", "stonegarth", "--on", "2026-02-01", at=AT)[1]
    assert "Minimum order: 30.00 USD" in output and "Oona Brandeth: from 2026-02-01 on; freight.free_from" in output
    output = sourcing(shop, "terms", "stonegarth", "--withdraw", "2026-02-01", "--why", "a slip", at=AT)[1]
    assert "the terms from 2026-02-01 on are withdrawn" in output


def test_the_past_is_refused_without_a_reason(shop: Path) -> None:
    words = ["terms", "stonegarth", "--set", "minimum_order=30.00", "--from", "2025-12-01"]
    code, output, errors = sourcing(shop, *words, at=AT)
    assert (code, output) == (1, "") and "--past" in errors and errors.count("\n") == 1
    assert sourcing(shop, *words, "--past", "his letter came late", at=AT)[0] == 0


def test_what_is_written_out_is_taken_in_again(shop: Path) -> None:
    """Unchanged it changes nothing; edited it does."""
    assert (
        sourcing(shop, "terms", "--write", "terms.toml", at=AT)[1] == "Wrote the terms of 5 suppliers to terms.toml.\n"
    )
    code, output, _ = sourcing(shop, "terms", "--file", "terms.toml", at=AT)
    assert (code, output) == (0, "Nothing changed: all of it is kept already.\n")
    text = (shop / "terms.toml").read_text().replace("minimum_order = 25.00", "minimum_order = 26.00")
    (shop / "terms.toml").write_text(text.replace("starts_on = 2025-10-01", "starts_on = 2026-02-01"))
    code, output, _ = sourcing(shop, "terms", "--file", "terms.toml", at=AT)
    assert code == 0 and output == "Stonegarth Trade Parts, from 2026-02-01 on:\n  minimum_order 25.00 -> 26.00\n"


def test_json_says_the_same(shop: Path) -> None:
    code, output, _ = sourcing(shop, "terms", "kesselried", "--json", at=AT)
    found = json.loads(output)
    assert code == 0 and found["versions"][0]["freight"]["charge"] == "24.00" and found["not_known"]
    code, output, _ = sourcing(shop, "terms", "kesselried", "--set", "handling=1", "--json", at=AT)
    assert code == 0 and json.loads(output)["changes"] == [{"field": "handling", "before": "0", "after": "1"}]


@pytest.mark.parametrize(
    "words",
    [
        ["stonegarth", "--set", "handling=1", "--withdraw", "2025-10-01"],
        ["--set", "handling=1"],
        ["stonegarth", "--set", "handling=1", "--on", "2026-01-01"],
        ["stonegarth", "--file", "terms.toml"],
        ["stonegarth", "--from", "2026-02-01"],
        ["stonegarth", "--withdraw", "yesterday"],
    ],
    ids=" ".join,
)
def test_what_does_not_go_together_is_usage(shop: Path, words: list[str]) -> None:
    assert sourcing(shop, "terms", *words, at=AT)[0] == 2


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["nobody"], "there are no terms of 'nobody'; name one of: kesselried, larkmoor"),
        (["stonegarth", "--set", "handling"], "'handling' says nothing of what is meant"),
        (["stonegarth", "--set", "handling=-1"], "'handling' is -1"),
        (["stonegarth", "--withdraw", "2026-01-01", "--why", "x"], "has no terms that begin on 2026-01-01"),
        (["--file", "nowhere.toml"], "there is no file 'nowhere.toml'"),
    ],
)
def test_bad_input_is_one_sentence(shop: Path, words: list[str], said: str) -> None:
    code, output, errors = sourcing(shop, "terms", *words, at=AT)
    assert (code, output) == (1, "") and said in errors and errors.count("\n") == 1


def test_setting_up_tells_every_problem_of_its_files(shop: Path) -> None:
    """Two entries, one sentence each, nothing changed."""
    folder = shop / "files"
    folder.mkdir()
    text = (DEMO / "suppliers.toml").read_text()
    text = text.replace("duty_percent = 3.0", "duty_percent = -3.0").replace(
        "transit_days = [2, 3]", "transit_days = [3, 2]"
    )
    (folder / "suppliers.toml").write_text(text)
    code, output, errors = sourcing(shop, "setup", "files", at=AT)
    told = errors.splitlines()
    assert (code, output, len(told)) == (1, "", 2)
    assert "entry 2 (kesselried), 'duty_percent' is -3.0" in told[0]
    assert "entry 3 (larkmoor), 'transit_days' has the larger number first (3, 2)" in told[1]


def test_what_lies_far_off_is_asked_about_and_kept_with_its_option(shop: Path) -> None:
    """A field typed, an entry of a file, a folder set up: one rule, one option."""
    typed = ["terms", "stonegarth", "--set", "freight.charge=1495"]
    code, output, errors = sourcing(shop, *typed, at=AT)
    assert (code, output) == (1, "") and errors.count("\n") == 1
    assert "'freight.charge' is 1495; until now 14.95; usual is 0.00 to 480.00" in errors and "with --sure" in errors
    assert sourcing(shop, *typed, "--sure", at=AT)[0] == 0
    folder = shop / "files"
    folder.mkdir()
    text = (DEMO / "suppliers.toml").read_text().replace("duty_percent = 3.0", "duty_percent = 300")
    (folder / "suppliers.toml").write_text(text.replace("starts_on = 2025-10-01", "starts_on = 2026-02-01"))
    for words in (["setup", "files"], ["terms", "--file", "files/suppliers.toml"]):
        code, output, errors = sourcing(shop, *words, at=AT)
        assert (code, output) == (
            1,
            "",
        ) and "suppliers.toml: kesselried from 2026-02-01 on, 'duty_percent' is" in errors
    assert sourcing(shop, "setup", "files", "--sure", at=AT)[0] == 0
    assert "300" in sourcing(shop, "terms", "kesselried", "--on", "2026-02-01", at=AT)[1]
