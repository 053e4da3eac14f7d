"""Two measures under one number: a stronger shear pin costs the gearbox, a shorter cable does not reach."""

import pytest

from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.part_number import OURS
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families
from sourcing.matching.offer_match import Known, match_offer
from tests.builders import number, offer, statement


@pytest.mark.parametrize(
    ("ours", "offered", "against"),
    [
        ("Shear pin 1/4 x 1-1/2", "Shear pin 5/16 x 1-3/4", "5/16 in, where ours is 1/4 in"),
        ('Shear pin 1/4" x 1-1/2"', 'Shear pin 5/16" x 1-3/4"', "length 44.45, 7.938 mm, where ours is 38.1, 6.35 mm"),
        ("Auger clutch cable 42 in", "Clutch cable 38 in", "length 965.2 mm, where ours is 1067 mm"),
        ("Auger clutch cable 42 in", 'Clutch cable 42"', ""),
        ("Auger clutch cable 42 in", "Clutch cable 1067 mm", ""),
        ("Auger clutch cable 42 in", "Clutch cable, 42 in, casing 38 in", ""),
        ("Auger clutch cable 42 in, casing 30 in", "Clutch cable 42 in, casing 38 in", ""),
        ("Auger clutch cable 42 in", "Clutch cable", ""),
        ("Shear pin 1/4 x 1-1/2", "Shear pin", ""),
    ],
)
def test_measures_with_nothing_in_common_hold_a_number_back(ours: str, offered: str, against: str) -> None:
    """An inch is 25.4 mm exactly (international inch, ISO 31-1): 42 in are 1066.8 mm, written 1067."""
    said = (statement(number("PART", OURS), "same part", number("0746-0442", "Norrowby"), "maker"),)
    every = families(EquivalenceTable(parts=(OurPart(code="PART", name=ours),), statements=said))
    row = offer(number="0746-0442", maker="Norrowby", description=offered)
    found = match_offer(row, every["PART"], Known(bearers(every.values())))
    assert (found.tier, found.reasons if against else ()) == (
        ("candidate", (against,)) if against else ("automatic", ())
    )
