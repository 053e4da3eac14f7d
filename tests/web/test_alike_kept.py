"""What is remembered between two pages: as long as no deed may have changed it, and never what is not yet kept."""

from datetime import timedelta

from flask import Flask
from sqlalchemy import Connection

from sourcing.actions.desk import Desk
from sourcing.actions.kept_until import KeptUntil
from sourcing.storage.deeds import Since
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW


def _nothing_but_jobs(value: int, _: Connection, since: Since) -> int | None:
    return value if since.subjects <= {"2026-0001"} else None


def _note(desk: Desk, subject: str) -> None:
    with desk.writing("test") as pen:
        pen.note(subject, "a deed")


def test_it_is_worked_out_anew_only_for_what_it_depends_on(app: Flask) -> None:
    """A deed about a job lets it stand; another deed and another day do not."""
    desk, made, kept = Desk(store=app.config[STORE], at=NOW, who=CLERK), list[int](), KeptUntil(_nothing_but_jobs)

    def get(at: Desk = desk) -> int:
        with at.store.reading() as connection:
            return kept.get(connection, at, lambda: made.append(1) or len(made))  # type: ignore[func-returns-value]

    assert (get(), get()) == (1, 1)
    _note(desk, "2026-0001")
    assert get() == 1
    _note(desk, "statement 5")
    assert (get(), get()) == (2, 2)
    assert get(Desk(store=desk.store, at=NOW + timedelta(days=1), who=CLERK)) == 3


def test_a_page_that_began_before_the_last_deed_sees_what_was_and_keeps_nothing(app: Flask) -> None:
    """Its transaction does not see the deed; what others remember stays."""
    desk, kept = Desk(store=app.config[STORE], at=NOW, who=CLERK), KeptUntil(_nothing_but_jobs)
    with desk.store.reading() as before:
        before.exec_driver_sql("SELECT max(deed) FROM deeds").scalar()  # its snapshot begins here
        _note(desk, "statement 5")
        with desk.store.reading() as now:
            assert kept.get(now, desk, lambda: 1) == 1
        assert kept.get(before, desk, lambda: 2) == 2
    with desk.store.reading() as now:
        assert kept.get(now, desk, lambda: 3) == 1
