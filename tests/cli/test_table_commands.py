"""The commands of the equivalence table as a person meets them: what they print, exit codes, one-sentence refusals."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from tests.cli import running

DEMO = Path(__file__).parents[2] / "demo_prices"
SAME = ("table", "add", "Norrowby:NW-40388", "same part", "Corrivane:CV 99")


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the demo's table and one sheet taken in."""
    folder = tmp_path_factory.mktemp("table")
    assert sourcing(folder, "setup", str(DEMO))[0] == 0
    assert sourcing(folder, "import", str(DEMO / "stonegarth"))[0] == 0
    return folder


def sourcing(folder: Path, *words: str) -> tuple[int, str, str]:
    """The same moment for every command, which then stands in the histories."""
    return running.sourcing(folder, *words, at="2026-01-13T10:15")


def test_one_statement_through_its_life(shop: Path) -> None:
    code, output, _ = sourcing(shop, *SAME, "--source", "cross list", "--json")
    assert code == 0
    number = str(json.loads(output)["statement"]["number"])
    for words in (
        ("doubt", number, "--reason", "loose"),
        ("answer", number, "--reason", "spring", "--standing", "supplier"),
        ("standing", number, "fitted", "--reason", "served"),
        ("withdraw", number, "--reason", "slipped"),
    ):
        assert sourcing(shop, "table", *words)[0] == 0, words
    code, _, errors = sourcing(shop, *SAME, "--source", "cross list")
    assert (code, errors.count("\n")) == (1, 1) and "was withdrawn: slipped" in errors
    assert sourcing(shop, "table", "restore", number, "--reason", "measured")[0] == 0
    code, output, _ = sourcing(shop, "table", "history", number)
    assert code == 0
    told = [line.split(": ")[1] for line in output.splitlines() if line.startswith("  2026-01-13 10:15  Oona Brandeth")]
    assert told == [
        *("stated", "doubted", "doubt answered", "standing changed", "standing changed", "withdrawn", "restored"),
    ]


def test_refusals_are_one_sentence_with_what_to_do(shop: Path) -> None:
    for words, said in (
        (("table", "doubt", "999", "--reason", "x"), "the table has no statement number 999"),
        (("table", "withdraw", "1", "--reason", " "), "say why in words with --reason"),
        (("table", "standing", "1", "sure", "--reason", "x"), "use one of: fitted, maker, supplier, unchecked"),
        (("table", "add", "NW-1", "same part", "x:NW-2", "--source", "x"), "write it as maker:number"),
        (("table", "export", "table.pdf"), "name a file that ends in .xlsx"),
        (("table", "import", "nowhere.xlsx"), "there is no file 'nowhere.xlsx'"),
        (("table", "maker", "ZZ", "--remove"), "'ZZ' is not kept"),
        (("numbers", "NW-40338"), "no statement and no part of ours names 'NW-40338'"),
    ):
        code, output, errors = sourcing(shop, *words)
        assert (code, output, errors.count("\n")) == (1, "", 1), words
        assert said in errors, errors
    assert sourcing(shop, "table", "doubt", "1")[0] == 2
    assert sourcing(shop, "table", "maker", "ZZ")[0] == 2
    assert sourcing(shop, "numbers", "NW-40388", "--serial", "7")[0] == 2


def test_export_edit_import(shop: Path) -> None:
    assert "31 parts" in sourcing(shop, "table", "export", "out")[1]
    file = shop / "out" / "statements.csv"
    text = file.read_text(encoding="utf-8")
    line = next(one for one in text.splitlines() if "DM-77120" in one)
    file.write_text(text.replace(line, line.replace('"supplier"', '"fitted"')).replace('"same part"', '"like"', 1))
    code, output, errors = sourcing(shop, "table", "import", "out")
    assert (code, output) == (1, "") and "statements.csv, row 2: 'like' is not one of the words" in errors
    code, output, _ = sourcing(shop, "table", "import", "out", "--look", "--json")
    looked = json.loads(output)
    assert code == 1 and not looked["done"] and len(looked["problems"]) == len(looked["changed"]) == 1
    code, output, errors = sourcing(shop, "table", "import", "out", "--keep-good")
    assert (code, errors) == (0, "") and "1 changed" in output and "standing: 'supplier' becomes 'fitted'" in output


def test_an_old_export_undoes_nothing_unless_told_to(shop: Path) -> None:
    """Told by row with who and when, in words and as JSON; the option lets the file have its way."""
    family = json.loads(sourcing(shop, "numbers", "NW-40388", "--json")[1])["families"][0]
    number = str(family["edges"][0]["statement"]["number"])
    sourcing(shop, "table", "export", "old.xlsx")
    sourcing(shop, "table", "standing", number, "unchecked", "--reason", "the list is of another year")
    code, output, _ = sourcing(shop, "table", "import", "old.xlsx")
    said = " ".join(output.split())
    assert code == 0 and "changed at the desk since this file was written, by Oona Brandeth on 2026-01-13" in said
    assert "counts as unchecked" in sourcing(shop, "table", "history", number)[1]
    looked = json.loads(sourcing(shop, "table", "import", "old.xlsx", "--look", "--file-wins", "--json")[1])
    assert [one["now"]["number"] for one in looked["changed"]] == [int(number)] and not looked["stay_changed"]
    assert sourcing(shop, "table", "import", "old.xlsx", "--file-wins")[0] == 0
    assert "counts as unchecked" not in sourcing(shop, "table", "history", number)[1]


def test_a_number_shows_its_family_and_draws_it(shop: Path) -> None:
    code, output, _ = sourcing(shop, "numbers", "nw 40388", "--svg", "belt.svg", "--machine", "NW-826", "--serial", "7")
    assert code == 0
    assert output.startswith("BELT-AUGER: Auger drive belt, size B36\n")
    assert "Norrowby NW-41388: counts as maker; the newest number that is sold" in output
    assert "superseded by Norrowby NW-41388; not sold, by the newest sheets" in " ".join(output.split())
    words = "".join(ElementTree.parse(shop / "belt.svg").getroot().itertext())
    assert "BELT-AUGER" in words and "For the machine NW-826, serial 7." in words
    family = json.loads(sourcing(shop, "numbers", "BELT-AUGER", "--json")[1])["families"][0]
    assert family["part"]["code"] == "BELT-AUGER" and len(family["members"]) >= 4


def test_makers_names_change_whose_numbers_are_met(shop: Path) -> None:
    assert sourcing(shop, "table", "maker", "NWB Inc", "Norrowby")[1] == "'NWB Inc' is Norrowby.\n"
    assert sourcing(shop, "table", "makers")[1] == "'NWB Inc' is Norrowby\n"
    code, output, _ = sourcing(shop, "numbers", "NW-40388", "--maker", "nwb inc")
    assert code == 0 and "BELT-AUGER" in output
    assert sourcing(shop, "table", "maker", "nwb-inc", "--remove")[0] == 0
    assert sourcing(shop, "numbers", "NW-40388", "--maker", "nwb inc")[0] == 1


def test_a_check_ends_with_1_only_where_the_table_contradicts_itself(shop: Path) -> None:
    assert sourcing(shop, "table", "check")[0] == 0
    add = ("table", "add", "Norrowby:NW-40388", "must not", "Norrowby:NW-41388", "--source", "job 2026-0002")
    told = json.loads(sourcing(shop, *add, "--json")[1])
    number = str(told["statement"]["number"])
    assert [one["kind"] for one in told["findings"]] == ["same part and must not"]
    code, output, _ = sourcing(shop, *add[:-1], "job 2026-0003")
    assert code == 0 and "Same part and must not: 1" in output and "Said before: 1" in output
    again = output.split()[1]
    sourcing(shop, "table", "withdraw", again, "--reason", "said before")
    code, output, _ = sourcing(shop, "table", "check")
    assert code == 1 and f"      {number}  Norrowby NW-41388 must not serve for Norrowby NW-40388" in output
    assert json.loads(sourcing(shop, "table", "check", "--json")[1])[0]["kind"] == "same part and must not"
    sourcing(shop, "table", "withdraw", number, "--reason", "a slip of the pen")
    sourcing(shop, "table", "doubt", "1", "--reason", "which list?")
    code, output, _ = sourcing(shop, "table", "check")
    assert code == 0 and "Doubted: 1" in output
    assert sourcing(shop, "table", "answer", "1", "--reason", "seen it")[0] == 0
