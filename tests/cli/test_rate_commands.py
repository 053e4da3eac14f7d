"""The command of exchange rates: shown, added with its question, taken back for a reason."""

import json
from pathlib import Path

import pytest

from tests.cli.running import sourcing

DEMO = Path(__file__).parents[2] / "demo_prices"
AT = "2026-01-13T11:45"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A folder with a shop that was set up from the demo's files."""
    assert sourcing(tmp_path, "setup", str(DEMO), at=AT)[0] == 0
    return tmp_path


def test_what_holds_and_every_rate_is_shown(shop: Path) -> None:
    code, output, _ = sourcing(shop, "rates", at=AT)
    assert code == 0 and "Holds today: 1 EUR = 1.085 USD on 2026-01-09" in output and "2025-12-05" in output


def test_a_rate_far_from_the_last_needs_its_option(shop: Path) -> None:
    typed = ["rates", "EUR", "--rate", "108", "--source", "our bank"]
    code, output, errors = sourcing(shop, *typed, at=AT)
    assert (code, output) == (1, "") and "is far from" in errors and "with --sure" in errors
    assert sourcing(shop, *typed, "--sure", at=AT)[0] == 0
    assert "Holds today: 1 EUR = 108.00 USD on 2026-01-13" in sourcing(shop, "rates", at=AT)[1]


def test_a_rate_is_taken_back_for_a_reason_and_stays_to_be_read(shop: Path) -> None:
    typed = ["rates", "EUR", "--withdraw", "2026-01-09"]
    code, output, errors = sourcing(shop, *typed, at=AT)
    assert (code, output) == (1, "") and "no reason is given" in errors
    code, output, _ = sourcing(shop, *typed, "--why", "typed for the wrong day", at=AT)
    assert code == 0 and "in its place: 1 EUR = 1.079 USD on 2025-12-05" in output
    _, output, _ = sourcing(shop, "rates", at=AT)
    assert "Holds today: 1 EUR = 1.079 USD" in output
    assert "Oona Brandeth" in output and "typed for the wrong day" in " ".join(output.split())
    code, _, errors = sourcing(shop, *typed, "--why", "again", at=AT)
    assert code == 1 and "there is no rate from EUR into USD of 2026-01-09; name the day of one there is" in errors


def test_a_file_that_still_has_it_does_not_put_it_in_again_in_silence(shop: Path) -> None:
    sourcing(shop, "rates", "EUR", "--withdraw", "2025-12-05", "--why", "typed for the wrong day", at=AT)
    code, output, errors = sourcing(shop, "setup", str(DEMO), at=AT)
    assert (code, output) == (1, "") and errors.count("\n") == 1
    assert "'1 EUR = 1.0790 USD on 2025-12-05' was taken back by Oona Brandeth on 2026-01-13; take it out" in errors
    assert sourcing(shop, "setup", str(DEMO), "--sure", at=AT)[0] == 0
    assert sourcing(shop, "setup", str(DEMO), at=AT)[0] == 0, "it is there again"


def test_of_the_last_rate_it_is_told_who_can_not_be_priced(shop: Path) -> None:
    for day in ("2026-01-09", "2025-12-05"):
        code, output, _ = sourcing(shop, "rates", "EUR", "--withdraw", day, "--why", "a slip", at=AT)
    assert code == 0 and "there is no rate before it" in output and "Mind: Kesselried Antriebsteile" in output


def test_json_says_the_same(shop: Path) -> None:
    sourcing(shop, "rates", "CAD", "--withdraw", "2026-01-09", "--why", "a slip", at=AT)
    found = json.loads(sourcing(shop, "rates", "--json", at=AT)[1])
    assert [one["currency"] for one in found["every"]] == ["EUR", "EUR"]
    assert found["taken_back"][0]["who"] == "Oona Brandeth"


@pytest.mark.parametrize(
    "words", [["EUR"], ["--rate", "1.1"], ["EUR", "--rate", "1.1", "--withdraw", "2026-01-09"]], ids=" ".join
)
def test_what_does_not_go_together_is_usage(shop: Path, words: list[str]) -> None:
    assert sourcing(shop, "rates", *words, at=AT)[0] == 2
