"""A job from the empty folder to its bill, command by command: what is cut off in between, and what is said again."""

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from tests.journeys.small_shop import HEADER, SHOP, SUPPLIERS, equivalence_file

JOB = "2026-0001"
BELT_ORDER, EXTRAS_ORDER, IDLER_ORDER = "PO-2026-0002", "PO-2026-0003", "PO-2026-0004"
STONEGARTH = [
    "NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock",
    "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock",
    "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock",
    "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock",
]
PELLBROOK = ["CV-B880K,Corrivane,Belt B88,199.00,131.00,2,In stock"]
HEAD = 'complaint = "Auger stops under load"\nreceived_on = 2026-03-02\nready_by = 2026-03-27\n'
BELT = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
FOUND = """
[[add_ons]]
title = "Keepers"
part = "KEEPER"
quantity = 2
hours = 0.3
[[add_ons]]
title = "Idler"
part = "IDLER"
quantity = 1
hours = 0.2
[[add_ons]]
title = "Bar"
part = "BAR"
quantity = 1
hours = 0.5
"""
TAIL = '[customer]\nname = "Maud Tilbrook"\n[machine]\ndescription = "snow thrower"\n'
MAUD = "--by 'Maud Tilbrook' --how telephone --contact 555-0142"


@dataclass(frozen=True)
class Step:
    """A command of the day. `name` of those that are cut off. `again`: what saying it once more does after it was kept:
    it changes nothing, or it is refused; blank: it is kept a second time, with the day and who. `prints`: the command
    that prints its papers anew, where the command itself does not. `rest`: the command that does the second deed of one
    that has two."""

    at: str
    words: str
    name: str = ""
    again: Literal["changes nothing", "refused", ""] = ""
    prints: str = ""
    rest: str = ""


DAY = (
    Step("2026-03-02T10:00", "setup .", "set up"),
    Step("2026-03-02T10:05", "import stonegarth pellbrook", "import", "changes nothing", rest="candidates"),
    Step("2026-03-02T10:15", "job job.toml", "take a job in"),
    Step("2026-03-02T10:20", f"quote {JOB} --html quote.html --xlsx quote.xlsx", "quote", "changes nothing"),
    Step("2026-03-02T10:25", f"given {JOB} --how 'in person'", "give"),
    Step("2026-03-02T10:30", f"answer {JOB} --yes agreed {MAUD}", "answer"),
    Step("2026-03-02T10:35", f"take-back {JOB} --line agreed {MAUD}", "take back", "refused"),
    Step("2026-03-02T10:40", f"answer {JOB} --yes agreed {MAUD}"),
    Step("2026-03-02T10:45", f"deposit {JOB} --taken 50.00 --how cash", "take a deposit"),
    Step("2026-03-02T11:00", f"order {JOB}", "order", "refused", "order-paper PO-2026-0001 --html {html} --csv {csv}"),
    Step("2026-03-03T09:00", "confirm PO-2026-0001 --price 1=139.59", "confirm"),
    # The decision, the cancelled line of the order and the yes let go: one deed.
    Step("2026-03-03T09:10", f"decide {JOB} 1 switch --agreed-by 'Maud Tilbrook' --how telephone", "decide"),
    Step("2026-03-03T09:15", f"quote {JOB}"),
    Step("2026-03-03T09:17", f"given {JOB} --how 'in person'"),
    Step("2026-03-03T09:20", f"answer {JOB} --yes agreed {MAUD}"),
    Step("2026-03-03T09:30", f"order {JOB}"),
    Step("2026-03-04T11:00", f"job job-torn-down.toml --replaces {JOB}", "change a job"),
    Step("2026-03-04T11:05", f"quote {JOB}"),
    Step("2026-03-04T11:10", f"given {JOB} --how telephone"),
    Step("2026-03-04T11:20", f"answer {JOB} --yes A --yes B --yes D --no C --words 'the rest can wait' {MAUD}"),
    Step("2026-03-04T11:30", f"order {JOB}"),
    Step(
        "2026-03-04T11:40",
        f"change-order {EXTRAS_ORDER} --line 1=1",
        "change an order",
        "refused",
        f"order-paper {EXTRAS_ORDER} --change 1 --html {{html}}",
    ),
    Step(
        "2026-03-04T11:45",
        f"cancel-order {EXTRAS_ORDER} --line 2",
        "cancel an order",
        "refused",
        f"order-paper {EXTRAS_ORDER} --change 2 --html {{html}}",
    ),
    Step("2026-03-04T11:50", f"order {JOB}"),
    Step("2026-03-04T12:00", f"promise {JOB} --said-by 'Oona Brandeth' --machine-ready 2026-03-27", "promise"),
    Step("2026-03-09T09:00", f"receive {BELT_ORDER} --paper D2 --freight 9.95", "receive", "refused"),
    Step("2026-03-09T09:05", f"receive {EXTRAS_ORDER} --paper D3 --freight 14.95"),
    Step(
        "2026-03-09T09:06",
        f"receive-again {EXTRAS_ORDER} --paper D3 --words 'counted wrongly'",
        "set a receipt aside",
        "refused",
    ),
    Step("2026-03-09T09:10", f"receive {EXTRAS_ORDER} --paper D3 --freight 14.95 --line 1=2"),
    Step("2026-03-09T09:15", f"receive {IDLER_ORDER} --paper D4 --freight 14.95"),
    Step("2026-03-09T09:20", f"send-back {EXTRAS_ORDER} --line 1 --goods --paper R1", "send back"),
    Step(
        "2026-03-09T09:25",
        f"gave-away {JOB} --what 'cable clip' --cost 1.20 --price 3.00 --words 'it was loose'",
        "give away",
        "refused",
    ),
    Step("2026-03-09T09:30", f"deposit {JOB} --back 10.00 --how cash", "give a deposit back"),
    Step("2026-03-10T16:30", f"bill {JOB} --html bill.html", "bill", "changes nothing"),
    Step("2026-03-11T09:00", "undo 2", "undo an import", "refused"),
)
CUT = tuple(step for step in DAY if step.name)


def begin(folder: Path) -> None:
    """The files a shop begins with; no database yet."""
    folder.mkdir()
    (folder / "shop.toml").write_text(SHOP)
    (folder / "suppliers.toml").write_text(SUPPLIERS)
    equivalence_file(folder / "equivalence.xlsx")
    (folder / "job.toml").write_text(HEAD + BELT + TAIL)
    (folder / "job-torn-down.toml").write_text(HEAD + BELT + FOUND + TAIL)
    for supplier, rows in (("stonegarth", STONEGARTH), ("pellbrook", PELLBROOK)):
        (folder / supplier).mkdir()
        (folder / supplier / "prices-2026-03-01.csv").write_text("\n".join([HEADER, *rows]) + "\n")
