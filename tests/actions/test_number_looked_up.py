"""One number looked up in the database: only what hangs together with it is read; the answer is the whole table's."""

from datetime import date, datetime
from pathlib import Path

import pytest

from sourcing.actions import equivalences
from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.equivalences import family_of, sold_now, table_around
from sourcing.actions.statement_deeds import restore_statement, withdraw_statement
from sourcing.basics.equivalence import EquivalenceTable
from sourcing.basics.part_number import OURS
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Signed
from sourcing.basics.value import changed
from sourcing.matching.equivalences.family_view import family_view
from sourcing.matching.equivalences.graph import graph_of
from sourcing.storage.equivalence import equivalence_table, put_aliases, put_parts
from sourcing.storage.statements import correct, set_withdrawn, state
from tests.actions.kept_sheets import keep
from tests.builders import number, statement
from tests.matching.equivalences.tables import ours, table
from tests.matching.equivalences.test_around import random_whole
from tests.storage.kept_values import offer_row

AT = datetime(2026, 1, 12, 9, 30)
NW, OS = number("NW-1", "Norrowby"), number("OS-2", "Ostrevik")


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk at an empty database."""
    return open_desk(str(tmp_path / "shop.db"), AT, "Greta Lindqvare")


def keep_table(desk: Desk, whole: EquivalenceTable) -> list[int]:
    """Keep the table in the place of the one before; the statements' numbers."""
    with desk.writing("table") as pen:
        put_parts(pen.connection, whole.parts)
        put_aliases(pen.connection, whole.aliases)
        new = [changed(one, number=None) for one in whole.statements]
        return state(pen.connection, new, Signed(at=AT, who="Greta Lindqvare"), ["list"] * len(new))


def test_the_answer_is_the_whole_tables(desk: Desk) -> None:
    """Random tables, and sheets on which some numbers are sold, some no longer, some under the supplier's own."""
    for seed in range(300, 315):
        whole = random_whole(seed)
        numbers = keep_table(desk, whole)
        rows = [
            offer_row(1, "1-00", maker="osv"),
            offer_row(2, "1-03"),
            offer_row(3, "LM-9", maker="Norrowby Parts", maker_number="1-04"),
            offer_row(4, "1-05", maker="Norrowby", no_longer_available=True),
        ]
        if seed % 5:
            keep(desk, "larkmoor", date(2026, 1, 5 + seed - 300), *rows[-(seed % 5) :])
        with desk.store.reading() as connection:
            graph = graph_of(equivalence_table(connection))
            sold = sold_now(connection, graph.makers, desk.at.date())
            for asked in sorted({key for _, key in graph.links.nodes}):
                for maker in ("", "Norrowby", "OSV", OURS):
                    told = family_view(graph, asked, sold, None, maker)
                    if told.families:
                        assert family_of(desk, asked, maker) == told, (seed, asked, maker)
        with desk.writing("clear") as pen:
            set_withdrawn(pen.connection, numbers, True)


def test_only_what_hangs_together_is_read(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """A far chain, withdrawn statements and another maker's same number stay unread; a tangle is read whole."""
    far = statement(number("NW-1", "Corrivane"), "superseded by", number("CV-7", "Corrivane"))
    further = statement(number("CV-7", "Corrivane"), "superseded by", number("CV-8", "Corrivane"))
    numbers = keep_table(desk, table(statement(ours(), "same part", NW), far, further, codes=("BELT", "KEEPER")))
    with desk.store.reading() as connection:
        found = table_around(connection, "belt")
        assert [one.number for one in found.statements] == numbers[:1]
        assert [part.code for part in found.parts] == ["BELT"]
        monkeypatch.setattr("sourcing.matching.equivalences.around.MOST_TIES", 0)
        assert table_around(connection, "nw-1") == equivalence_table(connection)


def test_keys_follow_what_a_statement_says(desk: Desk) -> None:
    """Corrected, withdrawn and restored: a look-up sees it at once."""
    (at,) = keep_table(desk, table(statement(ours(), "same part", NW)))
    with desk.writing("correct") as pen:
        correct(pen.connection, [changed(statement(ours(), "same part", OS), number=at)])
    assert [str(one.number) for one in family_of(desk, "os 2").families[0].members] == ["BELT", "Ostrevik OS-2"]
    with pytest.raises(Refused, match="NW-1"):
        family_of(desk, "NW-1")
    withdraw_statement(desk, at, "slipped on job 2026-0003")
    with pytest.raises(Refused, match="OS-2"):
        family_of(desk, "OS-2")
    restore_statement(desk, at, "it was the idler")
    assert family_of(desk, "OS-2").families[0].part


def test_very_many_numbers_are_looked_for_among_all_that_is_sold(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """The two ways to find what is sold say the same, also where nobody has sent a sheet."""
    keep_table(desk, table(statement(ours(), "same part", NW)))
    told = [family_of(desk, "BELT")]
    monkeypatch.setattr(equivalences, "MOST_KEYS", 0)
    told.append(family_of(desk, "BELT"))
    keep(desk, "larkmoor", date(2026, 1, 5), offer_row(1, "NW 1", maker="Norrowby"))
    told.append(family_of(desk, "BELT"))
    monkeypatch.undo()
    told.append(family_of(desk, "BELT"))
    assert [one.families[0].members[1].sold for one in told] == [None, None, True, True]
