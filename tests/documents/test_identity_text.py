"""The judgement which part it is, as a person reads it: verdict, evidence by trust, conflicts, what to look for."""

from datetime import date, datetime

from sourcing.basics.asked import Asked
from sourcing.basics.evidence import AcceptedAnyway, Evidence
from sourcing.basics.identity import Identity, Seen
from sourcing.documents.identity import identity_text

STAMP = Evidence(kind="printed on the removed part", number="4L880", seen_by="Oona Brandeth", seen_on=date(2026, 3, 2))
LIST = Evidence(
    kind="machine list", maker="Norrowby", number="NW-77120", size="B88", model="NW-4210", serial_from="1000",
    serial_to="1999", source="list of 2025", photo="plate.jpg", seen_by="Oona Brandeth", seen_on=date(2026, 3, 2),
)  # fmt: skip
JUDGED = Identity(
    part="BELT",
    leaning="BELT",
    certainty="one list",
    words="one list says BELT",
    seen=(
        Seen(at=1, evidence=STAMP, use="clue", ties=(), words="a clue only"),
        Seen(at=2, evidence=LIST, use="decides", ties=(), words="NW-77120 is BELT"),
    ),
    conflicts=("stamped 4L880, the machine list says B88: too narrow",),
    next_steps=("read the tag on the gearbox",),
    asked=Asked(cord="aramid", sold_as="matched set", pieces=2),
)
WORD = AcceptedAnyway(
    supplier="pellbrook", number="DM-1", objections=("too narrow",), words="till Friday\x1b[31m", who="Oona Brandeth",
    at=datetime(2026, 3, 2, 10, 0),
)  # fmt: skip


def test_the_whole_text() -> None:
    text = identity_text(("Job 2026-0001, line 1: Belt",), JUDGED, (WORD,))
    assert text == (
        "Job 2026-0001, line 1: Belt\n"
        "\n"
        "It is BELT. One list says BELT.\n"
        "Asked of an offer: cord aramid, matched set of 2\n"
        "\n"
        "Evidence, most trusted kind first\n"
        "  2. machine list: Norrowby NW-77120, B88\n"
        "      decides: NW-77120 is BELT\n"
        "      list of 2025; for NW-4210; serial 1000 to 1999; photo plate.jpg; Oona Brandeth on 2026-03-02\n"
        "  1. printed on the removed part: 4L880\n"
        "      clue: a clue only\n"
        "      Oona Brandeth on 2026-03-02\n"
        "\n"
        "Conflicts\n"
        "  stamped 4L880, the machine list says B88: too narrow\n"
        "\n"
        "Look for next\n"
        "  read the tag on the gearbox\n"
        "\n"
        "Offers taken in spite of what is asked\n"
        "  pellbrook DM-1\n"
        "      accepted by Oona Brandeth on 2026-03-02: till Friday\ufffd[31m (although: too narrow)\n"
    )


def test_not_settled_is_not_dressed_up() -> None:
    open_one = Identity(
        part="", leaning="", certainty="not settled", words="not settled: nothing is known", seen=(), conflicts=(),
        next_steps=(), asked=Asked(),
    )  # fmt: skip
    assert identity_text(("Look-up",), open_one, ()) == "Look-up\n\nNot settled: nothing is known.\n"
