"""Evidence and what is asked as values: nothing blank passes for a word, and old jobs still read."""

import pytest

from sourcing.basics.asked import Asked
from sourcing.basics.evidence import Evidence
from sourcing.basics.job import Job
from sourcing.basics.problem import Refused
from sourcing.basics.value import from_json

OLD_JOB = """{"customer": {"name": "Maud Tilbrook", "telephone": "", "email": "", "may_also_approve": []},
"machine": {"description": "snow thrower", "maker": "", "model": "", "serial": "", "component": ""}, "complaint": "x",
"agreed": [{"title": "Belt", "part": "BELT", "quantity": 1, "hours": "1.5", "found": "", "why": "", "if_declined": ""}],
"add_ons": [], "received_on": "2026-03-02", "need_by": null, "number": "2026-0001"}"""


def test_a_job_kept_before_evidence_still_reads() -> None:
    """Stored bodies have no evidence, nothing asked and nothing accepted."""
    (line,) = from_json(OLD_JOB, Job).agreed
    assert (line.evidence, line.asked, line.overrides) == ((), Asked(), ())


def test_evidence_says_something() -> None:
    with pytest.raises(Refused, match="names no number, no size and no words"):
        Evidence(kind="machine list")
    with pytest.raises(Refused, match="no letter"):
        Evidence(kind="machine list", number="--")
    said = Evidence(kind="machine list", maker="Norrowby", number="NW-77120", size="B88", words="aramid cord")
    assert said.says == "Norrowby NW-77120, B88, aramid cord"


def test_what_is_asked_in_words() -> None:
    assert Asked().words() == ()
    assert Asked(cord="aramid", cogs="plain", side="left", sold_as="matched set", pieces=2).words() == (
        "cord aramid", "without cogs", "left side", "matched set of 2",
    )  # fmt: skip
    assert [Asked(sold_as=one, pieces=3).set_of for one in ("", "each", "pair", "matched set")] == [1, 1, 2, 3]
