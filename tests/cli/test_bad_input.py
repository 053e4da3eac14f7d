"""Bad input through the command line: one sentence that says what and what to do, exit 1, the data as they were."""

import shutil
import sqlite3
from pathlib import Path

import pytest

from tests.cli.running import sourcing

COMMANDS = "demo setup import read sheets undo compare job jobs plan quote answer history order orders receive margins"
DEMO = Path(__file__).parents[2] / "demo_prices"
AT = "2026-01-13T11:45"


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A finished demo, made once."""
    folder = tmp_path_factory.mktemp("bad") / "shop"
    assert sourcing(folder.parent, "demo", str(folder))[0] == 0
    return folder


@pytest.fixture
def shop(demo: Path, tmp_path: Path) -> Path:
    """A copy of it for one test."""
    return Path(shutil.copytree(demo, tmp_path / "shop"))


def contents(folder: Path) -> list[str]:
    """Everything the database holds, as SQL text."""
    with sqlite3.connect(folder / "sourcing.db") as connection:
        return list(connection.iterdump())


REFUSED = [
    (["import", "nowhere.csv", "--supplier", "larkmoor"], "there is no file 'nowhere.csv'"),
    (["import", "letter.pdf", "--supplier", "larkmoor", "--dated", "2026-01-13"], "letter.pdf"),
    (["import", "empty-2026-01-13.csv", "--supplier", "larkmoor"], "empty"),
    (["import", "prices-2026-01-13.csv", "--supplier", "nobody"], "there are no terms for the supplier 'nobody'"),
    (["import", "prices-2026-01-13.csv"], "it is not clear whose sheet"),
    (["import", "undated.csv", "--supplier", "larkmoor"], "does not say from which day its prices hold"),
    (["import", "prices-2026-01-13.csv", "--supplier", "larkmoor"], "--column"),
    (["import", "euro-2026-01-13.csv", "--supplier", "larkmoor"], "EUR"),
    (["setup", "strange-money"], "'XYZ' is not a currency code of ISO 4217"),
    (["setup", "slip"], "unknown field 'labor_rate'"),
    (["setup", "empty-folder"], "holds none of shop.toml"),
    (["compare", "NW-4038"], "no part of ours is known under 'NW-4038'"),
    (["compare", "NW-40388", "--quantity", "0"], "0 pieces can't be asked for"),
    (["plan", "2026-0009"], "2026-0009"),
    (["quote", "2026-0001", "--revision", "7"], "7"),
    (["job", "bad-job.toml"], "NOT-A-PART"),
    (["answer", "2026-0001", "--yes", "Z", "--by", "Maud Tilbrook", "--how", "telephone"], "has no line 'Z'"),
    (["answer", "2026-0001", "--yes", "C", "--by", "A Neighbour", "--how", "telephone"], "not named as someone who"),
    (
        ["answer", "2026-0001", "--no", "A", "--by", "Maud Tilbrook", "--how", "telephone"],
        "already on a purchase order",
    ),
    (["order", "2026-0001", "--line", "C"], "line C of job 2026-0001 is declined, so it can't be ordered"),
    (["order", "2026-0001"], "all that is approved of 2026-0001 is ordered: PO-2026-0001"),
    (["receive", "PO-2026-0001", "--paper", "DN-88213", "--freight", "0"], "was taken in for order PO-2026-0001"),
    (["receive", "PO-2026-0001", "--paper", "X", "--freight", "0", "--line", "9=1"], "has no line 9"),
    (["receive", "PO-2026-0001", "--paper", "X", "--freight", "1e3"], "'1e3' is not an amount of money"),
    (["receive", "PO-2026-0099", "--paper", "X", "--freight", "0"], "PO-2026-0099"),
    (["undo", "99"], "there is no sheet number 99"),
    (["demo", "."], "is not empty"),
]


@pytest.mark.parametrize(("words", "said"), REFUSED, ids=[" ".join(words[:3]) for words, _ in REFUSED])
def test_one_sentence_and_nothing_changed(words: list[str], said: str, shop: Path) -> None:
    """No traceback, no half-done deed."""
    (shop / "letter.pdf").write_bytes(b"%PDF-1.7\n" + bytes(range(256)) * 9)
    (shop / "empty-2026-01-13.csv").write_bytes(b"")
    (shop / "prices-2026-01-13.csv").write_text("Number,Price\nA-1,2.50\n")
    (shop / "undated.csv").write_text("Number,Net\nA-1,2.50\n")
    (shop / "euro-2026-01-13.csv").write_text("Number,Net EUR\nA-1,2.50\n")
    (shop / "bad-job.toml").write_text((DEMO / "job.toml").read_text().replace("BELT-AUGER", "NOT-A-PART"))
    for folder, old, new in (("strange-money", '"USD"', '"XYZ"'), ("slip", "labour_rate", "labor_rate")):
        (shop / folder).mkdir()
        (shop / folder / "shop.toml").write_text((DEMO / "shop.toml").read_text().replace(old, new))
    (shop / "empty-folder").mkdir()
    before = contents(shop)
    at = [] if words[0] in ("undo", "demo") else ["--at", AT]
    code, output, errors = sourcing(shop, *words, *(at if words[0] != "job" else ["--at", AT]))
    assert code == 1, (output, errors)
    assert said in errors and "Traceback" not in errors and output == ""
    assert all(line.startswith("sourcing: ") for line in errors.splitlines())
    assert contents(shop) == before


def test_several_sheets_are_all_or_nothing(shop: Path) -> None:
    """The second file is refused, so the first is not kept either."""
    good, bad = shop / "good-2026-01-13.csv", shop / "bad-2026-01-13.csv"
    good.write_text("Number,Net\nA-1,2.50\n")
    bad.write_text("Number,Colour\nA-1,red\n")
    before = contents(shop)
    code, _, errors = sourcing(shop, "import", str(good), str(bad), "--supplier", "larkmoor", "--at", AT)
    assert code == 1 and "bad-2026-01-13.csv" in errors
    assert contents(shop) == before


def test_the_same_bytes_twice_do_nothing(shop: Path) -> None:
    """Told, nothing doubled."""
    before = contents(shop)
    code, output, _ = sourcing(shop, "import", "prices", "--at", AT)
    assert code == 0 and output.count("nothing was done") == 6
    assert contents(shop) == before


def test_a_column_is_asked_once_and_remembered(shop: Path) -> None:
    """'Price' could be list or net: confirmed, then known."""
    first, second = shop / "a-2026-01-13.csv", shop / "b-2026-01-14.csv"
    first.write_text("Number,Price\nA-1,2.50\n")
    second.write_text("Number,Price\nA-1,2.60\n")
    words = ["import", str(first), "--supplier", "larkmoor", "--at", AT]
    assert sourcing(shop, *words)[0] == 1
    assert sourcing(shop, *words, "--column", "Price=net price")[0] == 0
    assert sourcing(shop, "import", str(second), "--supplier", "larkmoor", "--at", "2026-01-14T09:00")[0] == 0


def test_usage_is_exit_2_and_no_database_is_told(tmp_path: Path) -> None:
    """A wrong word, a wrong option, and a folder where nothing was set up."""
    assert sourcing(tmp_path, "no-such-word")[0] == 2
    assert sourcing(tmp_path, "compare")[0] == 2
    code, _, errors = sourcing(tmp_path, "compare", "NW-40388")
    assert code == 1 and "sourcing setup" in errors


def test_json_everywhere(shop: Path) -> None:
    """Machines read the same answers."""
    import json

    for words in (
        ["compare", "NW-40388", "--at", AT],
        ["plan", "2026-0001", "--at", AT],
        ["quote", "2026-0001", "--revision", "1"],
        ["margins", "--at", "2026-01-15T10:00"],
        *(["sheets"], ["jobs"], ["orders"], ["history"]),
        ["read", "prices/larkmoor/prices-2026-01-07.xlsx"],
    ):
        code, output, errors = sourcing(shop, *words, "--json")
        assert code == 0, errors
        json.loads(output)


def test_a_revision_prints_again_to_the_letter(shop: Path) -> None:
    """After the settings changed and newer revisions came."""
    paper = (shop / "quote-2026-0001-1.html").read_bytes()
    (shop / "quote-2026-0001-1.html").unlink()
    assert sourcing(shop, "quote", "2026-0001", "--revision", "1")[0] == 0
    assert (shop / "quote-2026-0001-1.html").read_bytes() == paper


def test_an_import_can_be_undone(shop: Path) -> None:
    """Stonegarth's newer sheet goes; the older one counts again."""
    assert sourcing(shop, "undo", "5", "--at", AT)[0] == 0
    code, output, _ = sourcing(shop, "compare", "NW-40388", "--at", AT)
    assert code == 0 and "118.40 USD" in output and "127.90 USD" not in output


def test_help_is_quick_and_names_every_command(tmp_path: Path) -> None:
    """One line each."""
    code, output, _ = sourcing(tmp_path, "--help")
    assert code == 0
    for command in [
        "demo",
        "setup",
        "import",
        "read",
        "sheets",
        "undo",
        "compare",
        "job",
        "jobs",
        "plan",
        "quote",
        "answer",
        "history",
        "order",
        "orders",
    ]:
        assert f"  {command} " in output
