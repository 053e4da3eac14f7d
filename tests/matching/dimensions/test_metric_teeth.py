"""Synchronous belts T and AT. Sources: tooth pitches of DIN 7721 / ISO 17396 and the spellings from memory."""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.size import BeltSize
from sourcing.matching.dimensions.size_check import check_size


@pytest.mark.parametrize(
    ("text", "section", "teeth", "length", "width"),
    [
        ("belt T5-500-16", "T5", 100, "500", "16"),
        ("Zahnriemen 16 T5/500", "T5", 100, "500", "16"),
        ("Zahnriemen 16T5/500", "T5", 100, "500", "16"),
        ("belt 500-T5-16", "T5", 100, "500", "16"),
        ("courroie T5 x 500", "T5", 100, "500", None),
        ("correa 25 AT10/1250", "AT10", 125, "1250", "25"),
        ("belt AT5 500 mm", "AT5", 100, "500", None),
        ("belt T2.5-200-6", "T2.5", 80, "200", "6"),
        ("Riemen T2,5-200-6", "T2.5", 80, "200", "6"),
    ],
)
def test_pitch_length_and_width(text: str, section: str, teeth: int, length: str, width: str | None) -> None:
    """Of two figures the larger is the length."""
    size = read_size(text)
    assert isinstance(size, BeltSize)
    assert (size.section.name, size.count, size.length.value) == (section, teeth, Decimal(length))
    assert size.width == (Decimal(width) if width else None)


@pytest.mark.parametrize(
    "text",
    ["16 T5/500", "Screw T20 x 100", "belt T10 x 100", "Torx T20 belt cover screw", "belt T5-501-16",
     "belt T5-500-16-2", "belt T4-500", "belt T5", "bit T10-500"],
)  # fmt: skip
def test_screwdrivers_and_what_no_tooth_count_gives_are_not_read(text: str) -> None:
    """A belt must be spoken of, the length is a whole count of teeth, and of enough of them."""
    assert read_size(text) is None


@pytest.mark.parametrize(
    ("asked", "offered", "verdict"),
    [
        ("T5-500-16", "belt 16 T5/500", "same size"),
        ("T5-500-16", "16T5/500", "same size"),
        ("T5-500-16", "belt 25 T5/500", "different"),
        ("T5-500-16", "belt T5-505-16", "different"),
        ("T5-500-16", "belt AT5-500-16", "different"),  # other teeth
        ("T5-500-16", "belt 500-5M-16", "different"),
        ("T5-500-16", "belt T5/500", "cannot be compared"),
        ("T5-500-16", "belt 120XL037", "different"),
    ],
)
def test_toothed_belts_compared(asked: str, offered: str, verdict: str) -> None:
    """Profile, pitch, teeth, width."""
    check = check_size(asked, offered)
    assert check.verdict == verdict
    assert "profile is not said" not in check.words
