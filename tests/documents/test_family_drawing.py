"""The drawing of a family: valid XML, everything said in words, nothing on top of anything else."""

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from sourcing.basics.equivalence import OurPart
from sourcing.basics.family_view import FamilyEdge, FamilyView, PartFamily
from sourcing.basics.value import changed
from sourcing.documents.drawn_family import BOX, Link, Number, drawn
from sourcing.documents.family_drawing import family_svg
from tests.documents.family_values import BELT, CHEAP, CODE, FAMILY, KIT, OLD, VIEW, by, member, said
from tests.documents.test_paper_look import contrast

NAMESPACE = "{http://www.w3.org/2000/svg}"


def elements(svg: str, tag: str) -> list[ElementTree.Element]:
    """All elements with that tag. Raises where the drawing is no valid XML."""
    return list(ElementTree.fromstring(svg).iter(f"{NAMESPACE}{tag}"))


def texts(svg: str) -> list[str]:
    """Every line of text."""
    return [element.text or "" for element in elements(svg, "text")]


def words(svg: str) -> str:
    """All the text in one string."""
    return " ".join(texts(svg))


def test_every_number_stands_there_under_its_maker() -> None:
    svg = family_svg(VIEW)
    found = texts(svg)
    numbers = [element.text for element in elements(svg, "text") if "number" in element.get("class", "").split()]
    for printed in (
        "BELT-AUGER",
        "NW-40388",
        "NW-41388",
        "CV-B36K",
        "CV-B36H",
        "DM-77120",
        "4L390 <light>",
        "NW-K 900",
    ):
        assert numbers.count(printed) == 1, printed
    for maker in ("Our part", "Norrowby", "Corrivane", "Dunmarrow", "Maker not known"):
        assert maker in found


def test_every_line_says_relation_standing_and_source_in_words() -> None:
    said_there = words(family_svg(VIEW))
    for expected in (
        "same part (maker) 1: Norrowby parts list NW-826, 2025-10-21",
        "superseded by (maker) only for machine NW-826 serial 0700 to any 2: Norrowby service letter 25-07",
        "same part (fitted) 3: fitted on job 2025-0193, served",
        "same part (supplier; doubted: slips & burns) 4: Larkmoor's cross list",
        "must not (fitted) 5: burned on job 2025-0101",
        "is in this kit (maker) 6: Norrowby kit list",
        "substitute (unchecked) only if sheave above 5 in",
        "also: Norrowby NW-41388 is the same part as Corrivane CV-B36K (unchecked), statement 7",
        "the newest number that is sold",
        "superseded by Norrowby NW-41388",
        "must not serve",
        "the whole path counts as unchecked",
        "Dead end: Norrowby NW-3120",
        "Left aside: Corrivane CV-B36H may serve for Corrivane CV-B36K",
    ):
        assert expected in said_there, expected


def looks(svg: str) -> list[str]:
    """The looks of the lines that carry words, without the legend's."""
    return [
        look.removeprefix("line ")
        for element in elements(svg, "path")
        if (look := element.get("class", "")).startswith("line ") and "h40" not in element.get("d", "")
    ]


def test_looks_follow_standing_and_a_doubt_shows_as_a_doubt() -> None:
    svg = family_svg(VIEW)
    assert sorted(looks(svg)) == ["doubted", "fitted", "maker", "maker", "maker", "must-not", "unchecked"]
    for look in ("doubted", "supplier", "unchecked", "must-not"):
        assert re.search(rf"\.{look} {{ stroke-dasharray:", svg), look


def test_only_what_holds_one_way_has_an_arrow() -> None:
    """Superseded by and substitute; 'must not' ends in a cross."""
    paths = [element.get("d", "") for element in elements(family_svg(VIEW), "path")]
    assert sum(path.endswith("l10 5l-10 5z") for path in paths) == 2
    assert sum(path.endswith("l10 10m0 -10l-10 10") for path in paths) == 1


def test_hostile_text_stays_text() -> None:
    hostile = '</text><script>alert(1)</script>"&\x1b[31m\u202e'
    part = OurPart(code="X", name=hostile)
    link = said(1, CODE, "same part", by(hostile, hostile), source=hostile, doubt=hostile)
    family = PartFamily(
        part=part,
        members=(member(CODE), member(link.right, link)),
        edges=(FamilyEdge(left=0, right=1, statement=link, on_path=True),),
    )
    svg = family_svg(FamilyView(asked=hostile, families=(family,)))
    assert elements(svg, "script") == []
    assert "\x1b" not in svg and "\u202e" not in svg
    assert "alert(1)" in words(svg)


def test_a_number_that_is_struck_is_struck_wherever_it_stands() -> None:
    ban = said(9, OLD, "must not", CHEAP, standing="fitted", source="burned")
    members = tuple(changed(one, forbidden=ban) if one.number == CHEAP else one for one in FAMILY.members)
    svg = family_svg(FamilyView(asked="x", families=(changed(FAMILY, members=members),)))
    struck = {element.text for element in elements(svg, "text") if element.get("class") == "struck number"}
    assert struck == {"DM-77120", "4L390 <light>"}
    assert "must not serve: burned" in words(svg)


def test_a_number_nobody_knows_and_one_without_a_part_are_drawn() -> None:
    assert "No statement of the table names 'ZZ-1'." in words(family_svg(FamilyView(asked="ZZ-1")))
    alone = PartFamily(part=None, members=(member(KIT, asked=True),))
    said_there = words(family_svg(FamilyView(asked="NW-K 900", families=(alone,))))
    assert "Norrowby NW-K 900 is tied to no part of ours." in said_there


def test_several_parts_stand_below_one_another() -> None:
    other = changed(FAMILY, part=changed(BELT, code="OTHER"))
    svg = family_svg(FamilyView(asked="nw 40388", families=(FAMILY, other)))
    assert no_overlap(svg) == 2 * no_overlap(family_svg(VIEW))


def no_overlap(svg: str) -> int:
    """Asserts that no two boxes and no two lines of text of a column touch; the number of boxes."""
    columns: dict[int, list[tuple[int, int]]] = {}
    for element in elements(svg, "rect"):
        if element.get("class") != "sheet":
            top = int(element.get("y", ""))
            columns.setdefault(int(element.get("x", "")), []).append((top, top + int(element.get("height", ""))))
    for spans in columns.values():
        for upper, lower in pairwise(sorted(spans)):
            assert upper[1] < lower[0]
    lines: dict[int, list[int]] = {}
    for element in elements(svg, "text"):
        lines.setdefault(int(element.get("x", "")), []).append(int(element.get("y", "")))
    for places in lines.values():
        for above, below in pairwise(sorted(places)):
            assert below - above >= 12, places
    return sum(len(spans) for spans in columns.values())


@pytest.mark.parametrize("many", [1, 2, 60])
def test_nothing_lies_on_anything_else_however_many_numbers(many: int) -> None:
    links = [
        said(
            at, CODE if at % 3 else OLD, "same part", by(f"Maker {at % 7}", f"N-{at} " * (1 + at % 9)), source="s " * at
        )
        for at in range(1, many + 1)
    ]
    first = said(0, CODE, "same part", OLD)
    direct = [member(one.right, one) if at % 3 else member(one.right, first, one) for at, one in enumerate(links, 1)]
    family = PartFamily(
        part=BELT,
        members=(member(CODE), member(OLD, first), *direct),
        edges=(
            FamilyEdge(left=0, right=1, statement=first, on_path=True),
            *(
                FamilyEdge(left=0 if at % 3 else 1, right=at + 1, statement=one, on_path=True)
                for at, one in enumerate(links, 1)
            ),
        ),
    )
    assert no_overlap(family_svg(FamilyView(asked="x", families=(family,)))) == many + 2


def test_several_links_to_one_number_have_a_band_each() -> None:
    numbers = [
        Number(name="a", column=0, maker="Ours", printed="A"),
        Number(name="b", column=0, maker="Ours", printed="B"),
        Number(name="c", column=1, maker="M", printed="C"),
    ]
    links = [Link(left=left, right="c", look="maker", tip="", words=("one", "two", "three")) for left in "ab"]
    found = drawn(numbers, links, 50)
    box = found.boxes[-1]
    assert box.width == BOX and all(box.y < line.to_y <= box.y + box.height for line in found.lines)
    assert len({line.to_y for line in found.lines}) == 2
    assert len({line.trunk for line in found.lines}) == 2  # each starts from a box of its own


def test_words_stand_out_on_light_and_on_dark() -> None:
    """Contrast of WCAG 2.2, success criterion 1.4.6 (7 to 1)."""
    palettes = re.findall(r"--ink: (#\w{6}); --quiet: (#\w{6}); --paper: (#\w{6})", family_svg(VIEW))
    assert len(palettes) == 3
    for ink, quiet, paper in palettes:
        assert contrast(ink, paper) >= 7 and contrast(quiet, paper) >= 7


def test_the_drawing_needs_nothing_from_outside() -> None:
    svg = family_svg(VIEW)
    assert "href" not in svg and "url(" not in svg and "@import" not in svg
    assert svg.lstrip().startswith("<svg ")
