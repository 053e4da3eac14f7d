"""The invented catalogues: the same every time, true to their gold, and as hard as they are meant to be."""

import csv
import html
from pathlib import Path

import pytest

from tests.benchmarks.match_quality import read_lines
from tests.match_corpus import baselines, judge
from tests.match_corpus.chance import Chance
from tests.match_corpus.corpus import COLUMNS, lay_out, write_gold, write_listings
from tests.match_corpus.damaged import key
from tests.match_corpus.judge import Line
from tests.match_corpus.products import REFURBISHED
from tests.match_corpus.sides import W1, W2
from tests.match_corpus.worlds import NAMES, corpus


@pytest.mark.parametrize("world", NAMES)
def test_a_seed_always_gives_the_same_catalogues(world: str) -> None:
    """Made twice, the same; another seed, others."""
    assert corpus(world, 5, 200, 300) == corpus(world, 5, 200, 300)
    assert corpus(world, 5, 200, 300).sheet != corpus(world, 6, 200, 300).sheet


@pytest.mark.parametrize("world", NAMES)
def test_sizes_are_about_what_was_asked_and_gold_points_at_rows(world: str) -> None:
    """A little more where things are listed twice; a kind for every row; many rows without a part on each side."""
    made = corpus(world, 5, 300, 600)
    assert 300 <= len(made.sheet) == len(made.kinds) <= 330
    assert 600 <= len(made.parts) <= 660
    assert 0.3 < len(made.gold) / len(made.sheet) < 0.75
    assert all(places and max(places) < len(made.parts) for places in made.gold.values())


def test_different_things_of_a_maker_have_different_numbers() -> None:
    """But for the refurbished ones, whose description says it; else no program could know."""
    layout = lay_out(W1, Chance("different"), 500, 8000)
    things = {id(one): one for one in (*layout.of_parts, *layout.of_sheet)}.values()
    keys = [(one.maker.name, key(one.number), one.is_refurbished) for one in things]
    assert len(set(keys)) == len(keys)


def test_gold_ties_a_thing_to_itself_only() -> None:
    """Every place of it in the parts, and no place of another."""
    layout = lay_out(W2, Chance("itself"), 300, 300)
    gold = layout.places()
    for row, one in enumerate(layout.of_sheet):
        assert gold.get(row, frozenset()) == {at for at, part in enumerate(layout.of_parts) if part is one}


def test_what_is_refurbished_always_says_so() -> None:
    """In plain words on the sheet, however cut or dressed the description is."""
    made = corpus("W2", 5, 600, 600)
    marks = {mark.strip("()").lower() for mark in REFURBISHED}
    shown = [
        html.unescape(one.description).lower()
        for one, kind in zip(made.sheet, made.kinds, strict=True)
        if kind.endswith("refurbished")
    ]
    assert shown
    assert all(any(mark in text for mark in marks) for text in shown)


def test_sisters_are_near_in_number() -> None:
    """Most families hold two numbers that differ in one character or in their end."""
    layout = lay_out(W1, Chance("sisters"), 100, 900)
    families: dict[int, set[str]] = {}
    for one in layout.of_parts:
        families.setdefault(one.family, set()).add(key(one.number))
    large = [numbers for numbers in families.values() if len(numbers) > 2]
    near = sum(any(_near(one, other) for one in numbers for other in numbers if one < other) for numbers in large)
    assert near / len(large) > 0.9


def _near(one: str, other: str) -> bool:
    one_off = len(one) == len(other) and sum(a != b for a, b in zip(one, other, strict=True)) == 1
    return one_off or one.startswith(other) or other.startswith(one)


@pytest.mark.parametrize("world", ["W2", "W3"])
def test_plain_ways_do_neither_well_nor_nothing(world: str) -> None:
    """Numbers alone find much and err often, likeness of words alone does badly: else the corpus teaches nothing."""
    made = corpus(world, 5, 1500, 2500)
    rows = range(0, len(made.sheet), 8)
    gold, _ = judge.of_rows(made.gold, [], rows)
    by_number = judge.pairs(gold, baselines.by_number(made.sheet, made.parts, rows), 0.5).f1
    by_words = judge.best_pairs(gold, baselines.token_set(made.sheet, made.parts, rows))[1].f1
    assert 0.78 < by_number < 0.93
    assert 0.3 < by_words < 0.65


def test_files_hold_what_was_made(tmp_path: Path) -> None:
    """Read back cell by cell; gold has a line for every row at least, blank where there is no part."""
    made = corpus("W3", 5, 200, 300)
    write_listings(tmp_path / "sheet.csv", made.sheet)
    write_gold(tmp_path / "gold.csv", made)
    with (tmp_path / "sheet.csv").open(newline="", encoding="utf-8") as file:
        head, *rows = csv.reader(file)
    assert tuple(head) == COLUMNS
    assert rows == [[one.number, one.maker, one.description, one.price] for one in made.sheet]
    with (tmp_path / "gold.csv").open(newline="", encoding="utf-8") as file:
        lines = list(csv.DictReader(file))
    assert {int(line["sheet_row"]) for line in lines} == set(range(len(made.sheet)))
    pairs = {(int(line["sheet_row"]), int(line["part_row"])) for line in lines if line["part_row"]}
    assert pairs == {(row, place) for row, places in made.gold.items() for place in places}


def test_lines_of_the_command_are_read_without_those_that_name_no_part() -> None:
    """A bare list, or a list under a name; the command counts rows as a spreadsheet does, the corpora from 0."""
    one = '{"row": 3, "part_row": 8, "tier": "candidate", "score": 0.5, "rank": 1, "reasons": ["same size"]}'
    none = '{"row": 4, "part_row": null, "tier": "none", "score": 0, "rank": 1, "reasons": []}'
    assert read_lines(f"[{one}, {none}]") == [Line(1, 6, "candidate", 0.5, 1)]
    assert read_lines(f'{{"lines": [{one}], "problems": []}}') == [Line(1, 6, "candidate", 0.5, 1)]
