"""The table of same parts is kept between two pages, and never a page older than what somebody has stated."""

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.equivalences import table_to_write
from sourcing.actions.jobs import take_in_job
from sourcing.actions.known_table import LEAVE_IT, KnownTable, known_table
from sourcing.actions.maker_names import add_maker_name
from sourcing.actions.statement_add import Told, add_statement
from sourcing.actions.statement_deeds import withdraw_statement
from sourcing.actions.table_import import Wanted, import_sent
from sourcing.documents.equivalences import table_csvs
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, Browser


@pytest.fixture
def desk(app: Flask) -> Desk:
    """Somebody else's desk at the same data."""
    return Desk(store=app.config[STORE], at=NOW, who=CLERK)


def table(desk: Desk) -> KnownTable:
    """The table a page would use now."""
    with desk.store.reading() as connection:
        return known_table(desk.store, connection)


def test_a_deed_that_leaves_the_table_as_it_is_does_not_read_it_anew(desk: Desk) -> None:
    """A job taken in changes no number."""
    before = table(desk)
    take_in_job(desk, demo_folder() / "job.toml")
    assert table(desk) is before


def test_what_is_stated_counts_on_the_next_page(desk: Desk, clerk: Browser) -> None:
    """And what is withdrawn counts no more."""
    assert clerk.status("/find?number=NW-99999") == 409
    told = Told(
        left="Norrowby:NW-40388",
        relation="same part",
        right="Norrowby:NW-99999",
        source="a letter of today",
        standing="maker",
    )
    kept = add_statement(desk, told)
    assert "Norrowby NW-99999" in clerk.get("/find?number=NW-99999")
    assert kept.statement.number is not None
    withdraw_statement(desk, kept.statement.number, "misread")
    assert clerk.status("/find?number=NW-99999") == 409


def test_another_name_of_a_maker_counts_at_once(desk: Desk) -> None:
    """No statement changes by it."""
    before = table(desk)
    add_maker_name(desk, "Norrowby Works", "Norrowby")
    after = table(desk)
    assert after is not before and after.every.graph.makers.key("Norrowby Works") == before.every.graph.makers.key(
        "Norrowby"
    )


def test_a_part_of_another_name_is_named_so_at_once(desk: Desk, clerk: Browser) -> None:
    """Only the parts' worksheet differs: as many parts and the same statements as before."""
    assert "<h1>Auger drive belt</h1>" in clerk.get("/find?number=BELT-AUGER")
    files = {
        name: text.replace("Auger drive belt", "Belt of the auger")
        for name, text in table_csvs(table_to_write(desk)).items()
    }
    import_sent(desk, {name: text.encode() for name, text in files.items()}, Wanted())
    assert "<h1>Belt of the auger</h1>" in clerk.get("/find?number=BELT-AUGER")
    assert "Belt of the auger" in clerk.get("/search?for=auger")


def test_no_deed_on_the_table_is_taken_for_one_that_leaves_it() -> None:
    """The names under which statements, parts and makers' names are kept, as the ledger has them."""
    changing = (
        *(
            "add statement",
            "withdraw statement",
            "restore statement",
            "doubt statement",
            "answer doubt",
            "change standing",
        ),
        *("import table", "set up", "name maker", "take maker's name away"),
        *("add part", "change part", "take part out"),
        *("judge candidate", "judge file", "accept by score", "take answer back"),
    )
    assert not LEAVE_IT & set(changing)
