"""Evidence, judgement, an offer taken all the same, and belt length, at the command line."""

import json
from datetime import datetime
from pathlib import Path

import pytest
from typer.testing import CliRunner

from sourcing.basics.problem import Refused
from sourcing.cli.main import app
from tests.journeys.belt_job import BELT_LINE, take_in
from tests.journeys.small_shop import sheet, shop

AT = datetime(2026, 3, 2, 10, 15)


class Counter:
    """The counter: commands on the shop's database as Oona Brandeth."""

    def __init__(self, folder: Path) -> None:
        """A shop with one wrong belt and one job whose evidence is not in yet."""
        self.folder = folder
        desk = shop(folder, AT)
        sheet(
            desk, folder, "stonegarth", "2026-03-01", ["NW-77120,Norrowby,Belt B88 polyester,189.50,126.90,2,In stock"]
        )
        self.job = take_in(desk, folder, BELT_LINE[: BELT_LINE.index("[[agreed.evidence]]")])

    def says(self, *words: str, exit_code: int = 0) -> str:
        """What the command prints, blanks single."""
        done = CliRunner().invoke(app, words)
        if isinstance(done.exception, Refused):
            raise done.exception
        assert done.exit_code == exit_code, done.output
        return " ".join(done.output.split())


@pytest.fixture
def counter(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Counter:
    """The counter."""
    monkeypatch.setenv("SOURCING_WHO", "Oona Brandeth")
    monkeypatch.setenv("SOURCING_AT", "2026-03-02T10:15")
    monkeypatch.setenv("SOURCING_DATABASE", str(tmp_path / "sourcing.db"))
    return Counter(tmp_path)


def test_evidence_is_added_and_the_judgement_shown(counter: Counter) -> None:
    assert "Not settled" in counter.says("identity", counter.job, "1")
    added = ["--kind", "machine list", "--maker", "Norrowby", "--number", "NW-77120", "--size", "B88"]
    more = ["--model", "NW-4210", "--serial-from", "1000000", "--photo", "pictures/plate.jpg", "--list", "list of 2025"]
    said = counter.says("evidence", counter.job, "1", *added, *more)
    assert "It is BELT. One list says BELT (Auger drive belt)" in said
    assert "list of 2025; for NW-4210; serial 1000000 and up; photo plate.jpg; Oona Brandeth on 2026-03-02" in said
    assert "Asked of an offer: cord aramid, cover wrapped" in said
    again = counter.says("evidence", counter.job, "1", "--take-back", "1", "--says", "list of another model")
    assert "Not settled" in again and "taken back by Oona Brandeth on 2026-03-02: list of another model" in again
    told = counter.says("history", counter.job)
    assert "add evidence" in told and "take evidence back" in told


def test_a_rejected_offer_is_shown_then_taken_by_name(counter: Counter) -> None:
    line = ["--job", counter.job, "--line", "1"]
    said = counter.says("compare", "NW-77120", *line)
    assert "No offer can be ranked." in said
    assert "Rejected: not what is asked" in said and "cord: asked is aramid, the offer says 'polyester'" in said
    counter.says("accept-anyway", counter.job, "1", "stonegarth", "NW-77120", "--words", "customer insists")
    taken = counter.says("compare", "NW-77120", *line)
    assert "Warning: accepted by Oona Brandeth on 2026-03-02: customer insists (although: cord" in taken
    assert "customer insists" in counter.says("identity", counter.job, "1")
    assert "customer insists" in counter.says("plan", counter.job)
    with pytest.raises(Refused, match="nothing speaks against NW-77120"):
        counter.says("accept-anyway", counter.job, "1", "stonegarth", "NW-77120", "--words", "again")
    counter.says("accept-anyway", counter.job, "1", "stonegarth", "NW-77120", "--words", "she waits", "--take-back")
    assert "No offer can be ranked." in counter.says("compare", "NW-77120", *line)


def test_refusals_name_what_is_wrong(counter: Counter) -> None:
    for words, told in [
        (["identity", counter.job, "9"], "has no line '9'; use one of: 1"),
        (
            ["evidence", counter.job, "1", "--kind", "hearsay", "--says", "x"],
            "'hearsay' is not one of the words for 'kind'",
        ),
        (["evidence", counter.job, "1", "--kind", "machine list"], "names no number, no size and no words"),
        (["evidence", counter.job, "1", "--take-back", "3", "--says", "x"], "no line of evidence 3"),
        (["accept-anyway", counter.job, "1", "larkmoor", "NW-77120", "--words", "x"], "no offer NW-77120 of larkmoor"),
        (["compare", "KEEPER", "--job", counter.job, "--line", "1"], "asks for BELT"),
    ]:
        with pytest.raises(Refused, match=told):
            counter.says(*words)
    backwards = ["--kind", "machine list", "--number", "X", "--serial-from", "9", "--serial-to", "1"]
    with pytest.raises(Refused, match="runs backwards"):
        counter.says("evidence", counter.job, "1", *backwards)


def test_a_look_up_without_a_job(counter: Counter) -> None:
    """A machine and its evidence in a file; nothing is kept."""
    path = counter.folder / "look.toml"
    path.write_text(
        '[machine]\ndescription = "snow thrower"\nmodel = "NW-4210"\nserial = "7"\n'
        '[[evidence]]\nkind = "machine list"\nmaker = "Norrowby"\nnumber = "NW-77120"\nmodel = "NW-4210"\n'
    )
    assert "It is BELT." in counter.says("identity", "--file", str(path))
    assert "Look-up" in counter.says("identity", "--file", str(path))


def test_the_judgement_as_json(counter: Counter) -> None:
    found = json.loads(counter.says("identity", counter.job, "1", "--json"))
    assert (found["identity"]["part"], found["identity"]["certainty"]) == ("", "not settled")


def test_belt_length_shows_formula_and_caution() -> None:
    """3 and 9.5 in at 18 in: 36 + pi x 6.25 + 42.25/72 = 56.22 in, by hand."""
    arguments = ["belt-length", "--driver", "3", "--driven", "9-1/2", "--centers", "18", "--unit", "in"]
    said = CliRunner().invoke(app, arguments).output
    assert "L = 2C + pi(D + d)/2 + (D - d)^2/(4C)" in said and "56.22 in" in said
    assert "is a clue: it gives a size, never the part" in said and "spark-plug wire off" in said
    back = CliRunner().invoke(app, ["belt-length", "--driver", "3", "--driven", "9.5", "--length", "56.22"]).output
    assert "2 x 18.00" in back
    assert CliRunner().invoke(app, ["belt-length", "--driver", "3", "--driven", "9"]).exit_code == 2
