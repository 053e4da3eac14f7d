"""What a supplier glues to all numbers: proposed with its evidence, never applied by itself (common practice)."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.number_rule import NumberRule
from sourcing.basics.part_number import number_key
from sourcing.matching.numbers.affixes import AffixProposal, propose_affixes, strip

NUMBERS = [f"NW-{at * 37 % 100_000:05d}" for at in range(1, 101)]
KEYS = {number_key(text) for text in NUMBERS}


def rules_of(printed: list[str], known: set[str]) -> list[tuple[str, str]]:
    """Kind and text of what is proposed."""
    return [(one.rule.kind, one.rule.text) for one in propose_affixes("Stonegarth", printed, known)]


def test_a_prefix_before_nearly_all_numbers() -> None:
    """97 of 100 bear it and are then known."""
    found = propose_affixes("Stonegarth", [f"PB-{text}" for text in NUMBERS[:97]] + ["X1", "X2", "X3"], KEYS)
    rule = NumberRule(supplier="Stonegarth", kind="prefix", text="PB-")
    assert found == (AffixProposal(rule=rule, rows=100, bearing=97, met=97, known=0),)
    assert found[0].words == (
        "Stonegarth puts 'PB-' before 97 of 100 numbers; 97 of them are numbers we know without it, 0 as they stand"
    )


@pytest.mark.parametrize(
    ("made", "rule"),
    [("{}-DST", ("suffix", "-DST")), ("{}DST", ("suffix", "DST")), ("SG {}", ("prefix", "SG ")),
     ("sg{}", ("prefix", "SG")), ("7/{}", ("prefix", "7/"))],
)  # fmt: skip
def test_affixes_of_every_dress(made: str, rule: tuple[str, str]) -> None:
    """With a sign between or without; figures alone only with one."""
    bare = [text.removeprefix("NW-") for text in NUMBERS] if made == "sg{}" else NUMBERS
    assert rules_of([made.format(text) for text in bare], {number_key(text) for text in bare}) == [rule]


def test_a_prefix_on_some_numbers_is_proposed_where_many_are_then_known() -> None:
    """30 of 500 numbers, all known without it."""
    dice = random.Random(1)
    others = [f"{dice.choice('ABCDEFGH')}{dice.randrange(10**7):07d}" for _ in range(470)]
    assert rules_of([f"PB-{text}" for text in NUMBERS[:30]] + others, KEYS) == [("prefix", "PB-")]
    assert rules_of([f"PB-{text}" for text in NUMBERS[:15]] + others, KEYS) == []


def test_the_makers_own_letters_are_no_affix() -> None:
    """All numbers begin with NW, and so they are known."""
    assert rules_of(NUMBERS, KEYS) == []
    assert rules_of(NUMBERS, KEYS | {text.removeprefix("NW-") for text in NUMBERS[:5]}) == []


def test_short_numbers_met_by_chance_found_nothing() -> None:
    """Half of all five-digit numbers are known: cutting a letter off meets half of them, which is chance."""
    dice = random.Random(2)
    known = {f"{key:05d}" for key in dice.sample(range(100_000), 50_000)}
    other = [f"Q{dice.randrange(10**5):05d}" for _ in range(300)] + [f"ZX{dice.randrange(10**9)}" for _ in range(700)]
    assert rules_of(other, known) == []


def test_too_few_numbers_tell_nothing() -> None:
    """Nine rows."""
    assert rules_of([f"PB-{text}" for text in NUMBERS[:9]], KEYS) == []
    assert rules_of([], KEYS) == [] and rules_of(["", "--", "n/a"], KEYS) == []


RULES = (
    NumberRule(supplier="Stonegarth", kind="prefix", text="PB-"),
    NumberRule(supplier="Stonegarth", kind="prefix", text="PB-X-"),
    NumberRule(supplier="Stonegarth", kind="suffix", text="-DST"),
)


@pytest.mark.parametrize(
    ("printed", "rest"),
    [
        ("PB-NW40388", "NW40388"), ("pb-NW40388", "NW40388"), ("PB–NW40388", "NW40388"),
        (" PB-NW40388-DST ", "NW40388"),        ("PB-X-NW40388", "NW40388"),
        ("PBNW40388", "PBNW40388"), ("PB NW40388", "PB NW40388"), ("PB-12", "PB-12"),
        ("NW40388", "NW40388"), ("PB-PB-NW40388", "PB-NW40388"), ("", ""),
    ],
)  # fmt: skip
def test_confirmed_rules_are_cut_off_once_and_to_the_letter(printed: str, rest: str) -> None:
    """Case and the kind of dash do not count; 'PB-' is not 'PB'; something must be left."""
    assert strip(RULES, printed) == rest


def test_without_rules_nothing_is_cut() -> None:
    """A proposal is not a rule."""
    assert strip((), "PB-NW40388") == "PB-NW40388"


@given(st.text(alphabet="PB-XßDST1２–ǆŉ ", max_size=14))
def test_any_text(printed: str) -> None:
    """Never an error; what is left was there."""
    assert strip(RULES, printed) in printed


@given(st.lists(st.text(alphabet="PB-Xß１2 ǆ", max_size=8), max_size=30))
def test_any_column(printed: list[str]) -> None:
    """Every proposal's counts can be."""
    for one in propose_affixes("Stonegarth", printed, {"PB1", "X22"}):
        assert one.met <= one.bearing <= one.rows <= len(printed)
