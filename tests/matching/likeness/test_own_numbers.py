"""The supplier's own numbers say nothing about the part; a maker's number that no part bears does."""

from sourcing.matching.likeness.own_numbers import own_numbers, scheme, without_own
from sourcing.matching.likeness.prepared import Prepared, prepare
from sourcing.matching.likeness.reasons import reasons
from sourcing.matching.likeness.said import Said, said
from sourcing.matching.likeness.scores import score

WORDS = (
    *("auger", "belt", "cable", "pulley", "bearing", "lever", "spring", "bushing"),
    *("gasket", "carburetor", "impeller", "chute", "skid", "shoe", "wheel"),
)
THINGS = [f"{one} {other} {third}" for one in WORDS for other in WORDS for third in WORDS if one < other < third][:300]
PARTS = [said([f"NW{at * 7919 % 100_000:05d}"], ["norrowby"], text, 10 + at) for at, text in enumerate(THINGS)]


def rows(numbers: list[str]) -> list[Said]:
    """The same things under other numbers."""
    return [
        said([key], ["norrowby"], text, 10 + at) for at, (key, text) in enumerate(zip(numbers, THINGS, strict=True))
    ]


def ready(table: list[Said]) -> Prepared:
    """Compared with the parts."""
    return prepare(table, PARTS, (THINGS, THINGS))


def test_a_column_of_own_numbers_leaves_agreeing_rows_to_a_person() -> None:
    """None of 300 numbers is a part's: what agrees in all else is asked about, with a sentence why."""
    table = ready(rows([f"{at * 104_729 % 1_000_000:06d}X" for at in range(300)]))
    scored = score(table.compared, table.twins)
    same = table.compared.row == table.compared.part
    assert same.sum() == 300 and scored.score[same].min() > 0.3
    facts = scored.facts[same][0].tolist()
    assert "own number" in reasons(table.rows[0], table.parts[0], facts)[0]


def test_a_scheme_that_no_part_has_is_the_suppliers_own_beside_makers_numbers() -> None:
    """Half of the rows bear the maker's number, half 'SG' and six figures."""
    numbers = [f"SG{at:06d}" if at % 2 else next(iter(PARTS[at].keys)) for at in range(300)]
    own = own_numbers(rows(numbers), PARTS, {at for at in range(300) if at % 2 == 0})
    assert own == frozenset(range(1, 300, 2))
    bare = without_own(rows(numbers), own)
    assert not bare[1].keys and bare[0].keys


def test_makers_numbers_that_no_part_bears_still_speak_against() -> None:
    """They have the parts' own scheme, though none of them meets a part's; and ten rows are too few to tell."""
    numbers = [f"NW{at * 104_729 % 100_000:05d}" for at in range(300)]
    table, met = rows([f"OV{at:06d}" if at < 200 else number for at, number in enumerate(numbers)]), set(range(200))
    assert own_numbers(table, PARTS, met) == frozenset()
    assert own_numbers(table[:10], PARTS, ()) == frozenset()


def test_a_scheme_is_letters_and_how_many_figures() -> None:
    """Not which figures."""
    assert scheme("SG10234A") == scheme("SG99118A") == "SG#5A" != scheme("SG1234A")
