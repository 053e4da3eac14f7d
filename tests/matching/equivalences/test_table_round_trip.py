"""A table written as worksheets and read back is the same table."""

from collections.abc import Sequence
from datetime import date
from typing import get_args

from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.asked import Asked, Cogs, Side, SoldAs
from sourcing.basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Relation, Standing, Statement
from sourcing.basics.part_number import OURS, PartNumber, maker_key, number_key
from sourcing.basics.value import changed
from sourcing.matching.equivalences.makers import Makers
from sourcing.matching.equivalences.number_cells import damage_of
from sourcing.matching.equivalences.table_file import read_table, read_table_csv
from sourcing.matching.equivalences.table_sheets import table_sheets

from .tables import csv_file, workbook

CODES = ("BELT", "KEEPER-2", "6203")
LETTERS = st.characters(categories=("L", "N", "P", "Zs"), exclude_characters="'")


def text(least: int = 0) -> st.SearchStrategy[str]:
    """Words as a person writes them into a cell: no blanks around them, no formula."""
    some = st.text(LETTERS, min_size=least, max_size=12).map(str.strip)
    return some.filter(lambda one: len(one) >= least and one[:1] not in ("=", "+", "-", "@", "＝", "＋", "－", "＠"))


PRINTED = text(1).filter(lambda one: bool(number_key(one)) and not damage_of(one))
NUMBERS = st.one_of(
    st.sampled_from(CODES).map(lambda code: PartNumber(printed=code, maker=OURS)),
    st.builds(PartNumber, printed=PRINTED, maker=text().filter(lambda one: one.casefold() != OURS)),
)
SERIALS = st.one_of(st.just(""), st.integers(1, 99).map(lambda one: f"A-{one:04}"))
ASKED = st.builds(
    Asked,
    cord=text(),
    cover=text(),
    cogs=st.sampled_from(get_args(Cogs)),
    side=st.sampled_from(get_args(Side)),
    sold_as=st.sampled_from(get_args(SoldAs)),
    pieces=st.integers(0, 99),
)


@st.composite
def statements(draw: st.DrawFn, at: int) -> Statement:
    """A statement that can be read back; its number keeps it apart from every other."""
    relation = draw(st.sampled_from(get_args(Relation)))
    first, last = sorted((draw(SERIALS), draw(SERIALS)), reverse=False)
    return Statement(
        left=draw(NUMBERS),
        relation=relation,
        right=draw(NUMBERS),
        standing=draw(st.sampled_from(get_args(Standing))),
        source=draw(text(1)),
        stated_on=draw(st.dates(date(2000, 1, 1))),
        stated_by=draw(text(1)),
        condition=draw(text()),
        machine=draw(st.one_of(st.just(""), PRINTED)),
        serial_from=first,
        serial_to=last,
        count=draw(st.integers(1, 999)) if relation == "kit contains" else 1,
        doubt=draw(text()),
        number=at,
    )


@st.composite
def tables(draw: st.DrawFn) -> EquivalenceTable:
    """Parts, some statements about them and others, and makers' names."""
    aliases = draw(st.lists(st.builds(MakerAlias, alias=text(1), maker=text(1)), max_size=3))
    kept = tuple(one for one in aliases if OURS not in (one.alias, one.maker) and _two_names(one))
    makers = Makers(kept)
    every = [draw(statements(at)) for at in range(1, draw(st.integers(0, 5)) + 1)]
    apart = [one for one in every if makers.node(one.left) != makers.node(one.right)]
    parts = tuple(
        OurPart(code=code, name=draw(text()), size=draw(text()), note=draw(text()), asked=draw(ASKED)) for code in CODES
    )
    numbered = tuple(changed(one, row=at) for at, one in enumerate(apart, 2))
    return EquivalenceTable(parts=parts, statements=numbered, aliases=kept)


def _two_names(one: MakerAlias) -> bool:
    keys = maker_key(one.alias), maker_key(one.maker)
    return all(keys) and keys[0] != keys[1]


@settings(max_examples=150, deadline=None)
@given(tables())
def test_written_and_read_back_it_is_the_same_table(table: EquivalenceTable) -> None:
    """As a workbook and as CSV, with every column."""
    rows: dict[str, Sequence[Sequence[object]]] = {
        name: [header, *body] for name, (header, body) in table_sheets(table).items()
    }
    assert read_table(workbook(rows), "t.xlsx") == (table, ())
    assert read_table_csv({f"{name}.csv": csv_file(some) for name, some in rows.items()}, "folder") == (table, ())
