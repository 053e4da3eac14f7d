"""A row taken apart: codes, colours, sides, what else it may be."""

from sourcing.matching.likeness.said import Said, said


def text(words: str) -> Said:
    """A row that has a description only."""
    return said([], [], words)


def test_codes_are_found_however_they_are_written() -> None:
    """Whole, with a gap, and as part of a longer one; each is kept apart."""
    found = text("Norrowby DSC-W90/B camera PS LX350H")
    assert {"DSCW90B", "LX350H"} <= found.codes
    assert "PSLX350H" in found.joined
    assert "DSCW90" in found.runs and "DSCW90" not in found.codes


def test_measures_are_no_codes() -> None:
    """'120gb' and '1000w' are measured, not compared as numbers of parts."""
    assert text("drive 120gb 1000w").codes == frozenset()


def test_sides_colours_and_kinds() -> None:
    """Also as 'L.H.', and in other languages."""
    assert text("brake band L.H.").sides == text("brake band, left").sides == text("bremsband links").sides == {"left"}
    assert text("bin, BLACK").colours == {"black"}
    assert text("reman. starter, remanufactured").things == {"used"}
    assert text("cover for NW-826").things == {"made for another"}
    assert text("gasket kit").things == {"kit"}


def test_generations_are_one_in_roman_and_arabic() -> None:
    """'type 2', '(II)' and 'series ii'."""
    assert (
        text("pump type 2").generations == text("pump (II)").generations == text("pump series ii").generations == {"2"}
    )
    assert text("belt A36 wrapped").generations == frozenset()


def test_html_and_full_width_signs_are_read() -> None:
    """As retail lists write them."""
    assert text("belt 1/2&quot; x 88&quot;").measures == text('belt 1/2" x 88"').measures
    assert "NW40388" in text("ＮＷ-４０３８８").codes


def test_a_price_of_nothing_is_no_price() -> None:
    """None, blank and zero say nothing."""
    assert [said([], [], "x", price).price for price in (None, "", 0)] == [None] * 3


def test_words_that_mean_two_things() -> None:
    """'links' beside a chain, 'used on', a French article."""
    assert text("roller chain 60 links").sides == text("huile de l'arbre").sides == frozenset()
    assert "used" not in text("belt used on NW-826").things
    assert text("spindle 1½ in").measures == text("spindle 1-1/2 in").measures != frozenset()


def test_lengths_keep_how_roundly_they_are_written() -> None:
    """So that a person is told; a bore stays as it is."""
    assert text("blade 53 cm").measures == {("length", "530 ±5")}
    assert text("blade 533 mm, bore 2 cm").measures == {("length", "533"), ("length", "20")}


def test_a_word_counts_in_every_form_it_has() -> None:
    """Plurals and forms that once only the careful reader knew."""
    assert text("Halter, rechtes Teil").sides == text("Halter rechts").sides == {"right"}
    assert text("Bausatz Vergaser").things == text("repair kits").things == {"kit"}
