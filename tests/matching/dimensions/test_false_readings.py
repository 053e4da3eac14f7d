"""What must not be read as a size: part numbers, counts, bolts, prices, dates, and things made for a belt or a
bearing."""

import pytest

from sourcing.matching.dimensions.reading import MOST_DESIGNATIONS, may_hold_size, read_size
from sourcing.matching.dimensions.size_check import check_size

NO_GROUND = [
    *["A-4412", "B 12 345", "NW-40388", "A36", "B36", "L 14", "M8x20", "40 W", "608 pcs", "25 mm", "#10 screw", "V 12"],
    *[
        "12V 5A",
        "$62.03",
        "62.03",
        "2026-01-05",
        "5/6/2026",
        "OV 20 417",
        "CV-B36K",
        "CV-4L390",
        "6203",
        "40",
        "#40",
        "35",
    ],
    *[
        "150L",
        "5 L 400",
        "6 pk 2120",
        "3V600mA",
        "5V 500 mA",
        "SPA 1600",
        "AA51",
        "13x2240",
        "4L 390",
        "5V 1180",
        "5/8 x 91-1/2",
        "845K8",
    ],
    *[
        "1/2 x 1/8",
        '1/2" x 5/16"',
        "17x40x12",
        "1/2 x 1-1/8 x 5/16",
        "R8",
        "R10",
        "16 T5/500",
        "40-2",
        "2/B36",
        "T10 x 500",
    ],
    *["540L10", "D105", "120XL", "62/22", "41-2", "9N 1500", "Tire 13 x 4.00-6", "O-ring 13x2", "ORDER 12 A", "B3"],
    *[
        "A36 or A38",
        "A-1200",
        "",
        "6203 kit",
        "Crankcase gasket seal 20 x 40 x 7 mm",
        "Auger, shaft, 32 in",
        "NW-62032",
    ],
]

OTHER_THINGS = [
    *[
        "Oil filter A36",
        "Bolt 1/4 x 1-3/4",
        "Carriage bolt 5/8 x 12",
        "belt guide 5/8 x 20",
        "Keeper, belt, engine, 24 in",
    ],
    *[
        "Belt keeper A36",
        "Riemenscheibe A36",
        "poulie pour courroie A36",
        "Belt tensioner 13x2240",
        "sanding belt 13x457",
    ],
    *["bearing housing 6203", "bearing puller 6203", "Lagergehäuse 6203", "sprocket, chain 40-12", "Kettenrad 40-1"],
    *[
        "Artikel 6203 ab Lager",
        "6203 auf Lager",
        "chain saw chain 3/8 52P",
        "Pair tire chains 13 x 4.00-6",
        "Sägekette 25 52P",
        "chain bolt 1/2 x 5/16",
        "Sägekette 3/8 x 1,3 mm",
        "Chain saw chain 1/2 x 1/8",
        "Seal for bearing 6203-2RS",
        "Wheel with bearing 6203-2RS",
        "joint de roulement 6203-2RS",
        "bearing cap 6203",
        "Oil seal 17x40x7 for bearing",
        "joint spi 17x40x7 roulement",
        "retén 17x40x7 rodamiento",
        "Deckel für Lager 6203",
        "Pulley with belt B36",
        "auf Lager: 17x40x12",
        "Torx T20-100 belt guard",
    ],
]

OTHER_NUMBERS = [
    *[
        "belt A-4412",
        "belt B 12 345",
        "Belt, model B 36",
        "belt 36 in",
        "belt 12 V",
        "belt 40",
        "belt kit A 12 pcs",
        "belt A 17 x 1000 Li",
    ],
    *[
        "bearing kit 608 pcs",
        "bearing 608 mm",
        "bearing 62.03",
        "bearing 6203-AB450",
        "belt 2B36",
        "bearing NW-6203-450",
        "bearing 6203-450",
        "bearing $608",
        "bearing 608 x 22",
    ],
    *[
        "Chain, roller, 40 links",
        "chain 40 ft",
        "chain 35.50",
        "chain $40",
        "chain 50 pcs",
        "chain NW-40",
        "chain 40-12",
        "chain 60-1/2",
        "chain 40 x 44",
        "chain 1/2 x 5/16 x 3/4",
        "chain 1/2 x 2",
        "chain 1/2 x 7/8",
        "chain 1/4 x 20 ft",
        "Ref. R10 bearing",
        "bearing 618",
        "bearing R134",
        "bearing 200 x 50 x 20",
        "bearing 20x40x10 cm",
        "Kugellager 17x40x12 Wellendichtring",
        "Belt fits C48",
        "Belt, model no. C48",
        "correa para modelo A48",
        "belt T10 x 100",
    ],
    *[
        "belt NW-A36",
        "belt 4L390-2B",
        "belt X4L390",
        "belt 14L390",
        "belt 4L39",
        "belt 6PK21200",
        "belt 13x22",
        "belt 5/8 x 3",
    ],
]


@pytest.mark.parametrize("text", NO_GROUND)
def test_a_number_without_ground_is_no_size(text: str) -> None:
    """Nothing in the text says what it is a size of."""
    assert read_size(text) is None


@pytest.mark.parametrize("text", OTHER_THINGS)
def test_what_is_made_for_a_thing_is_not_the_thing(text: str) -> None:
    """A keeper, a pulley, a housing, a sprocket; and 'Lager' that means the warehouse."""
    assert read_size(text) is None


@pytest.mark.parametrize("text", OTHER_NUMBERS)
def test_other_numbers_in_a_text_about_one(text: str) -> None:
    """The word is there; the number is a part number, a count, a price or another measure."""
    assert read_size(text) is None


@pytest.mark.parametrize(
    "text",
    ["belt A36 or A38", "4L390/4L400", "4L390 4L400", "belt B36 A36", "bearing 6203-2RS/6204-2RS", "chain #40 #41",
     "belt 13x1000 Li 13x1100 Li", "6203-2RS 6203-ZZ", "belt B36 4L390"],
)  # fmt: skip
def test_two_sizes_in_one_text_are_none(text: str) -> None:
    """Which one is it? Not ours to guess."""
    assert read_size(text) is None


@pytest.mark.parametrize(
    ("text", "designation"),
    [
        ("4L390 1/2 x 39", "4L390"),
        ("belt B36 5/8 x 39", "B36"),
        ("belt A88 = 13x2240 Li", "A88"),
        ("6203-2RS (6203)", "6203-2RS"),
        ("belt B36, B-36", "B36"),
    ],
)
def test_two_names_of_one_size_are_one(text: str, designation: str) -> None:
    """The one that says more is kept."""
    size = read_size(text)
    assert size is not None and size.designation == designation


def test_the_word_may_stand_in_another_text_of_the_offer() -> None:
    """Number A36: with 'belt' beside it a size; beside 'oil filter' none; alone, a belt asked for, it is one."""
    assert check_size("B36", "A36", "", "Auger belt").verdict == "different"
    assert check_size("B36", "A36", "", "Oil filter").verdict == "cannot be compared"
    assert check_size("B36", "A36").verdict == "different"
    assert check_size("B36", "A36", "", "Widget").verdict == "cannot be compared"
    assert check_size("B36", "A36", "", "Keeper for belt").verdict == "cannot be compared"
    assert check_size("B36", "NW-A36-2").verdict == "cannot be compared"


@pytest.mark.parametrize(
    ("asked", "offered", "verdict"),
    [
        ("A36", "belt A36 or A38", "cannot be compared"),
        ("A36", "belt A37 or A38", "different"),
        ("B36", "belt B36 4L390", "cannot be compared"),
        ("6203-2RS", "bearing 6203-2RS (17x47x12)", "cannot be compared"),
        ("08B-1", "Rollenkette 1/2 x 1/8, 08B-1", "cannot be compared"),
    ],
)
def test_a_text_that_names_several_sizes_is_a_question(asked: str, offered: str, verdict: str) -> None:
    """Ours may be among them: it is held back, not passed over in silence."""
    check = check_size(asked, offered)
    assert check.verdict == verdict and check.vetoes


@pytest.mark.parametrize(
    "text", ["bearing 6203-2RS, seals on both sides", "Bearing, 2 seals, 6203-2RS", "Spindle bearing 6203-2RS"]
)
def test_a_bearing_with_what_belongs_to_it_is_a_bearing(text: str) -> None:
    """Not what is made for it."""
    assert check_size("6203-2RS", text).verdict == "same size"


def test_a_hostile_text_is_cut_and_a_list_of_sizes_names_no_one_thing() -> None:
    """Behind 3,000 characters nothing is read; of more than 64 designations none is."""
    assert read_size("belt A36") is not None
    assert read_size("belt " + "x" * 3000 + " A36") is None
    assert read_size("belt" + " A36" * MOST_DESIGNATIONS) is not None
    assert read_size("belt" + " A36" * (MOST_DESIGNATIONS + 1)) is None
    for piece in ("#40 44 links ", "6203-2RS ", "1/2 x ", "A36/", "'", "\u00df"):
        assert check_size("B36", "belt " + piece * 5000).verdict == "cannot be compared"


def test_the_most_cautious_of_several_texts_is_the_answer() -> None:
    """The number says B36, the description 4L390: held back."""
    assert check_size("B36", "B36", "belt 4L390").verdict == "different"


def test_another_kind_of_thing_is_different_unless_ours_is_spoken_of() -> None:
    """A bearing where a belt is asked for; but not in a kit that has both."""
    assert check_size("B36", "6203-2RS").verdict == "different"
    assert check_size("B36", "Belt kit with bearing 6203-2RS").verdict == "cannot be compared"
    assert check_size("B36", "Belt kit B36 with bearing 6203-2RS").verdict == "same size"


def test_a_family_known_from_elsewhere_is_ground_enough() -> None:
    """The shop says the text is about a belt, a bearing, a chain."""
    for text, family, designation in (("A36", "belt", "A36"), ("6203", "bearing", "6203"), ("40", "chain", "40")):
        size = read_size(text, family=family)  # type: ignore[arg-type]
        assert size is not None and size.designation == designation
        assert read_size(text) is None


@pytest.mark.parametrize("text", ["Starter, electric, 12 V", "Friction wheel 6-1/8", "Carburetor 5 hp", "NW-40388", ""])
def test_the_quick_look_dismisses_most_texts(text: str) -> None:
    """Nothing to read there, told without reading."""
    assert not may_hold_size(text)
