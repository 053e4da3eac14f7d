"""Conditions of several statements on one path that cannot all hold."""

import pytest

from sourcing.matching.conditions import contradiction


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("with spacer", "without spacer"),
        ("only with spacer", "w/o spacer"),
        ("mit Buchse", "ohne Buchse"),
        ("engine before 2019", "engine after 2019"),
        ("when the guard is fitted", "when the guard is not fitted"),
        ("Left side", "right side"),
    ],
)
def test_opposites_of_one_thing_contradict(one: str, other: str) -> None:
    """In either order, with the words of both told."""
    found = contradiction([one, "paved yards", other])
    assert f"'{one}' and '{other}'" in found and contradiction([other, one])


@pytest.mark.parametrize(
    ("one", "other"),
    [("with spacer", "without gasket"), ("with spacer", "with spacer"), ("", ""), ("not", "with"), ("left", "wide")],
)
def test_what_may_both_hold_is_left_to_a_person(one: str, other: str) -> None:
    """Different things, or the same said twice."""
    assert contradiction([one, other]) == ""
