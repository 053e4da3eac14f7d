"""Two names that may be one maker's, and the command that says so; nothing a shell would take for more."""

import pytest

from sourcing.matching.makers_alike import command_for, makers_alike
from tests.matching.test_offer_match import match


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("Norrowby Inc.", "Norrowby", True),
        ("NORROWBY GMBH & CO. KG", "Norrowby", True),
        ("Norrowby Power Parts", "Norrowby", True),
        ("Norowby", "Norrowby", True),
        ("Ostrevík", "Ostrevik", True),
        ("Dunmarrow", "Norrowby", False),
        ("Norr", "Norrowby", False),
        ("Inc.", "Co.", False),
        ("", "Norrowby", False),
    ],
)
def test_names_that_may_be_one_makers(one: str, other: str, alike: bool) -> None:
    assert makers_alike(one, other) is alike and makers_alike(other, one) is alike


def test_the_command_is_ready_to_be_typed() -> None:
    assert command_for("Norrowby Inc.", "Norrowby") == 'sourcing table maker "Norrowby Inc." Norrowby'


@pytest.mark.parametrize(
    "name", ["Norrowby $(reboot)", "Norrowby `x`", 'Norrowby"; x', "Norrowby\\", "-Norrowby", "Norrowby!"]
)
def test_a_name_from_a_sheet_never_runs_anything(name: str) -> None:
    """Such a name is told in the reason, and no command is made of it."""
    assert command_for(name, "Norrowby") == ""


def test_the_doubt_about_another_maker_names_the_command_where_the_names_are_alike() -> None:
    (alike,) = match(number="NW-40388", maker="Norrowby Inc.", description="Belt").reasons
    (other,) = match(number="NW-40388", maker="Dunmarrow", description="Belt").reasons
    assert alike.endswith('; if the two are one maker: sourcing table maker "Norrowby Inc." Norrowby')
    assert other == "the number is that of Norrowby NW-40388, but the row names Dunmarrow"
