"""A person's word lets an offer in for what was known, and for nothing else; never past a must-not."""

from datetime import datetime

from sourcing.basics.asked import Asked
from sourcing.basics.evidence import AcceptedAnyway
from sourcing.basics.value import changed
from sourcing.matching.identity.verdict import Verdict, ban_on, verdict
from tests.builders import number, offer, statement

LOOSE = offer(supplier="pellbrook", number="CV-B740", description="Belt, each, polyester")
ASKED = Asked(cord="aramid")
OBJECTION = "cord: asked is aramid, the offer says 'polyester'"
WORD = AcceptedAnyway(
    supplier="pellbrook",
    number="cv b740",
    objections=(OBJECTION,),
    words="till Friday",
    who="Oona Brandeth",
    at=datetime(2026, 3, 2, 10, 15),
)


def judged(*overrides: AcceptedAnyway, against: tuple[str, ...] = (), banned: str = "") -> Verdict:
    """The belt judged with these words on the line."""
    return verdict(LOOSE, against, ASKED, overrides, banned, 1)


def test_without_a_word_it_is_out() -> None:
    found = judged()
    assert not found.stands and found.objections == (OBJECTION,)


def test_with_a_word_it_is_in_and_the_word_is_shown() -> None:
    found = judged(WORD)
    assert found.stands and found.warnings[0] == (
        f"accepted by Oona Brandeth on 2026-03-02: till Friday (although: {OBJECTION})"
    )


def test_a_new_objection_is_not_covered() -> None:
    assert not judged(WORD, against=("different length",)).stands


def test_a_word_about_another_offer_or_taken_back_covers_nothing() -> None:
    assert not judged(changed(WORD, supplier="larkmoor")).stands
    assert not judged(changed(WORD, number="CV-B741")).stands
    assert not judged(changed(WORD, taken_back="Oona Brandeth on 2026-03-03: misread")).stands


def test_a_must_not_is_covered_by_no_word() -> None:
    """The shop's own word that the part fails: whoever knows better withdraws that statement first."""
    ban = statement(number("BELT", "(ours)"), "must not", number("CV-B740", "Corrivane"))
    said = ban_on([("corrivane", "CVB740")], {("corrivane", "CVB740"): ban})
    assert said.startswith("Corrivane CV-B740 must not serve for BELT")
    both = changed(WORD, objections=(OBJECTION, said))
    assert not judged(both, against=(said,), banned=said).stands
    assert ban_on([("corrivane", "CVB741")], {("corrivane", "CVB740"): ban}) == ""
