"""How long one number of a long equivalence table takes to look up, and loading all of it; ratios to a bare SELECT.

Run by hand: `python -m tests.benchmarks.table_speed [statements]`. The table: parts in families of five statements,
kits and must-nots among them, and 200 bolts each in very many kits. Everything in one run on one database, so that the
ratios hold on any machine; the seconds are of this one.
"""

import random
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path
from typing import TypeVar

from sqlalchemy import Connection, select

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.equivalences import family_of
from sourcing.basics.equivalence import OurPart, Statement
from sourcing.basics.part_number import PartNumber
from sourcing.basics.statement_history import Signed
from sourcing.matching.equivalences.graph import graph_of
from sourcing.matching.equivalences.number_book import number_book
from sourcing.storage.equivalence import equivalence_table, put_parts
from sourcing.storage.shop_tables import STATEMENTS
from sourcing.storage.statements import state
from tests.builders import number, statement
from tests.matching.equivalences.tables import about, ours

T = TypeVar("T")
COUNT, LOOK_UPS, AT_ONCE = 250_000, 50, 20_000
AT = datetime(2026, 1, 12, 9, 30)
MAKERS = ("Norrowby", "Ostrevik", "Corrivane", "Dunmarrow")


def printed(dice: random.Random) -> str:
    """Two letters and six figures."""
    return "".join(dice.choice("ABCDEFGHJKMNPRTUVWXY") for _ in range(2)) + f"{dice.randrange(10**6):06d}"


def family(dice: random.Random, at: int, bolts: list[PartNumber]) -> Iterator[Statement]:
    """Five statements about one part of ours."""
    makers = dice.sample(MAKERS, 3)
    old, new = number(printed(dice), makers[0]), number(printed(dice), makers[0])
    other, serves = number(printed(dice), makers[1]), number(printed(dice), makers[2])
    yield statement(ours(f"P{at:06d}"), "same part", old)
    yield statement(old, "superseded by", new)
    yield statement(new, "same part", other, "supplier")
    yield statement(other, "substitute", serves, "unchecked")
    if at % 10 == 0:
        yield statement(new, "must not", number(printed(dice), makers[2]))
    else:
        held = dice.choice(bolts) if at % 10 > 4 else new
        yield about(statement(number(f"KIT{new.printed}", makers[0]), "kit contains", held), count=2)


def keep(desk: Desk, count: int) -> tuple[int, PartNumber]:
    """Keep such a table; how many parts it has, and one of the bolts."""
    dice = random.Random(7)
    bolts = [number(printed(dice), "Ostrevik") for _ in range(200)]
    parts = count // 5
    every = [one for at in range(parts) for one in family(dice, at, bolts)]
    with desk.writing("table") as pen:
        put_parts(pen.connection, [OurPart(code=f"P{at:06d}", name="Belt") for at in range(parts)])
        for start in range(0, len(every), AT_ONCE):
            some = every[start : start + AT_ONCE]
            state(pen.connection, some, Signed(at=AT, who="Greta Lindqvare"), ["list"] * len(some))
    return parts, bolts[0]


def timed(told: str, bare: float, work: Callable[[], T], times: int = 1) -> tuple[T, float]:
    """Do it, print the seconds it takes each time and how many bare SELECTs that is."""
    started = time.perf_counter()
    for _ in range(times):
        result = work()
    took = (time.perf_counter() - started) / times
    print(f"{told:<48}{took:10.3f} s{took / bare if bare else 1.0:10.3f} x a bare SELECT", flush=True)
    return result, took


def load(connection: Connection) -> None:
    """Measure what matching a whole sheet needs of the table."""
    _, bare = timed("bare SELECT of every statement", 0, lambda: connection.execute(select(STATEMENTS)).all())
    whole, _ = timed("the table as values", bare, lambda: equivalence_table(connection))
    graph, _ = timed("the graph of it", bare, lambda: graph_of(whole))
    timed("every number of every part", bare, lambda: number_book(graph))


def look_up(desk: Desk, parts: int, bolt: PartNumber) -> None:
    """Measure one number after the other."""
    dice = random.Random(8)
    with desk.store.reading() as connection:
        _, bare = timed("bare SELECT again", 0, lambda: connection.execute(select(STATEMENTS)).all())
    codes = iter([f"P{dice.randrange(parts):06d}" for _ in range(LOOK_UPS)])
    timed("one number looked up", bare, lambda: family_of(desk, next(codes)), LOOK_UPS)
    timed("a bolt in very many kits", bare, lambda: family_of(desk, bolt.printed))


def run() -> None:
    """Make the table in a folder of its own, measure, and leave nothing behind."""
    count = int(sys.argv[1]) if sys.argv[1:] else COUNT
    with tempfile.TemporaryDirectory() as folder:
        desk = open_desk(str(Path(folder) / "shop.db"), AT, "Greta Lindqvare")
        parts, bolt = keep(desk, count)
        print(f"{count:,} statements, {parts:,} parts")
        with desk.store.reading() as connection:
            load(connection)
        look_up(desk, parts, bolt)
        desk.store.close()


if __name__ == "__main__":
    run()
