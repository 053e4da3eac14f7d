"""`plan --file` and `compare --file`: a basket in, the answer out, nothing kept; exit codes and sentences."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from sourcing.cli.main import app
from sourcing.documents.schemas import ANSWER_SCHEMA, BASKET_SCHEMA, shipped_schema
from tests.basket.baskets import BASKET, spoilt
from tests.cli.running import sourcing


@pytest.fixture
def basket(tmp_path: Path) -> str:
    """The small basket as a file."""
    path = tmp_path / "basket.json"
    path.write_text(json.dumps(BASKET), encoding="utf-8")
    return str(path)


def _run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(app, list(words))
    return done.exit_code, done.stdout


def test_a_plan_in_words(basket: str) -> None:
    """Total, how sure, when; the orders; what else there is."""
    code, text = _run("plan", "--file", basket)
    assert code == 0
    assert text.startswith("1 order: 74.52 USD at the door, proven to be the least, all of it here by 2026-01-2")
    assert "  line 1: 2 pieces of K-9036: 21.50 EUR each, 74.52 USD at the door\n" in text
    assert max(len(line) for line in text.splitlines()) <= 100


def test_the_answer_in_json_fits_its_schema(basket: str) -> None:
    """With the front, which has every kind of entry."""
    code, text = _run("plan", "--file", basket, "--json", "--front")
    answer = json.loads(text)
    assert code == 0
    assert list(Draft202012Validator(json.loads(shipped_schema(ANSWER_SCHEMA))).iter_errors(answer)) == []
    assert answer["total"] == {"amount": "74.52", "currency": "USD"} and answer["proven"] is True
    assert len(answer["front"]) == 2 and len(answer["alternatives"]) >= 2


def test_options_go_before_the_files_wishes(tmp_path: Path) -> None:
    """What is asked at the command line holds, what is not stays as the file has it."""
    path = tmp_path / "basket.json"
    path.write_bytes(spoilt("wishes", {"need_by": "2026-01-16", "surplus_credit_percent": "50"}))
    wishes = json.loads(_run("plan", "--file", str(path), "--json", "--need-by", "2026-02-20", "--cores-lost")[1])[
        "wishes"
    ]
    assert (wishes["need_by"], wishes["surplus_credit_percent"], wishes["cores_lost"]) == ("2026-02-20", "50", True)


@pytest.mark.parametrize(
    ("options", "field", "value"),
    [
        (["--soonest"], "objective", "date"), (["--value-per-day", "2.50"], "objective", "cost and days"),
        (["--value-per-day", "2.50"], "value_per_day", "2.50"), (["--front"], "front", True),
        (["--most-suppliers", "2"], "most_suppliers", 2), (["--trusted"], "trusted_only", True),
        (["--in-stock"], "in_stock_only", True), (["--more-than-needed", "never"], "more_than_needed", "never"),
        (["--surplus-credit", "25"], "surplus_credit_percent", "25"), (["--cores-lost"], "cores_lost", True),
        (["--seconds", "5"], "seconds", 5), (["--need-by", "2026-01-30"], "need_by", "2026-01-30"),
    ],
)  # fmt: skip
def test_every_wish_has_an_option(basket: str, options: list[str], field: str, value: object) -> None:
    """And the answer says which wishes it followed."""
    assert json.loads(_run("plan", "--file", basket, "--json", *options)[1])["wishes"][field] == value


def test_the_moment_may_be_said(basket: str) -> None:
    """`--at` goes before the file's: after the cut-off it comes a day later."""
    early, late = (
        json.loads(_run("plan", "--file", basket, "--json", "--soonest", "--at", f"2026-01-13T{hour}:00")[1])["latest"]
        for hour in ("12", "14")
    )
    assert (early, late) == ("2026-01-15", "2026-01-16")


def test_one_need_compared(basket: str) -> None:
    """The offers of the need in order, for its quantity or another."""
    code, text = _run("compare", "--file", basket, "--need", "1", "--json")
    ranked = json.loads(text)["ranked"]
    assert code == 0
    assert [(one["place"], one["priced"]["landed"]["total"]["amount"]) for one in ranked] == [
        (1, "74.52"),
        (2, "77.95"),
    ]
    other = json.loads(_run("compare", "--file", basket, "--need", "1", "--quantity", "10", "--json")[1])
    assert other["quantity"] == 10


def test_everything_wrong_is_told_and_nothing_is_printed(tmp_path: Path) -> None:
    """Exit code 1, one sentence a line, each with its place."""
    (tmp_path / "basket.json").write_bytes(spoilt("needs.0", {"label": "1", "our_part": "X", "quantty": 1}))
    code, out, errors = sourcing(tmp_path, "plan", "--file", "basket.json")
    assert (code, out) == (1, "")
    assert errors.splitlines() == [
        "sourcing: basket.json: needs[0].quantty: not a field; correct its name or take it out. Perhaps: quantity.",
        "sourcing: basket.json: needs[0].quantity is left out; write a whole number up to a thousand million.",
    ]


def test_no_database_is_made(tmp_path: Path) -> None:
    """The folder holds the basket, and then still only the basket."""
    (tmp_path / "basket.json").write_text(json.dumps(BASKET), encoding="utf-8")
    assert sourcing(tmp_path, "plan", "--file", "basket.json")[0] == 0
    assert [path.name for path in tmp_path.iterdir()] == ["basket.json"]


@pytest.mark.parametrize(
    "words",
    [
        ["plan"], ["plan", "2026-0001", "--file", "x.json"], ["compare"], ["compare", "--need", "1"],
        ["compare", "NW-1", "--file", "x.json", "--need", "1"], ["compare", "NW-1", "--need", "1"],
        ["plan", "--file", "x.json", "--soonest", "--value-per-day", "1"],
        ["plan", "--file", "x.json", "--most-suppliers", "0"],
    ],
)  # fmt: skip
def test_what_does_not_go_together_is_a_slip_of_usage(words: list[str]) -> None:
    """Exit code 2, before any file is opened."""
    assert CliRunner().invoke(app, words).exit_code == 2


def test_a_workbook_of_the_plan(basket: str, tmp_path: Path) -> None:
    """Written whole beside the text."""
    assert _run("plan", "--file", basket, "--xlsx", str(tmp_path / "plan.xlsx"))[0] == 0
    assert (tmp_path / "plan.xlsx").read_bytes()[:2] == b"PK"


def test_the_schemas_are_printed() -> None:
    """As they are shipped."""
    assert _run("plan", "--schema", "basket") == (0, shipped_schema(BASKET_SCHEMA))
    assert _run("plan", "--schema", "answer") == (0, shipped_schema(ANSWER_SCHEMA))
