"""The test shop grown: hundreds of open jobs like the approved one, and a long table of same parts."""

import hashlib
import sqlite3
from collections.abc import Callable
from pathlib import Path

from tests.web.world import APPROVED

FIRST = 10
"""The running number of the first job added."""


def lengthen(database: Path, jobs: int, statements: int) -> None:
    """Add so many jobs, and the table's parts and statements again under other numbers until there are so many."""
    with sqlite3.connect(database) as kept:
        for serial in range(FIRST, FIRST + jobs):
            _one_job_more(kept, serial)
        _right_hashes(kept)
        there = kept.execute("SELECT count(*) FROM statements").fetchone()[0]
        for k in range(1, statements // there + 1):
            _table_again(kept, f"X{k:04d}", k)
    kept.close()


def _one_job_more(kept: sqlite3.Connection, serial: int) -> None:
    """The approved job once more, with its quote and its answers, under another number."""
    number = f"{APPROVED[:4]}-{serial:04d}"
    for table, key in (("jobs", "number"), ("quote_revisions", "job"), ("approvals", "job")):

        def anew(name: str) -> str:
            if name == "serial":
                return str(serial)
            if name in ("number", "job"):
                return f"'{number}'"
            return f"replace(\"{name}\", '{APPROVED}', '{number}')" if name in ("body", "paper") else f'"{name}"'

        _copy(kept, table, anew, without="approval" if table == "approvals" else "", where=f"{key} = '{APPROVED}'")


def _right_hashes(kept: sqlite3.Connection) -> None:
    for job, revision, paper in kept.execute("SELECT job, revision, paper FROM quote_revisions").fetchall():
        digest = hashlib.sha256(paper.encode()).hexdigest()
        kept.execute("UPDATE quote_revisions SET sha256 = ? WHERE job = ? AND revision = ?", (digest, job, revision))


def _table_again(kept: sqlite3.Connection, behind: str, k: int) -> None:
    """The first parts and statements under numbers that end otherwise."""
    parts = kept.execute("SELECT count(*) FROM our_parts WHERE code NOT LIKE '%-X____'").fetchone()[0]
    own = {"code": f"code || '-{behind}'", "position": f"position + {k * parts}"}
    _copy(kept, "our_parts", lambda name: own.get(name, f'"{name}"'), where="code NOT LIKE '%-X____'")
    sides = {f"{side}_printed": f"{side}_printed || '-{behind}'" for side in ("left", "right")}
    keys = {f"{side}_key": f"{side}_key || '{behind}'" for side in ("left", "right")}
    said = {**sides, **keys, "position": f"position + {k * 1_000_000}"}
    _copy(
        kept,
        "statements",
        lambda name: said.get(name, f'"{name}"'),
        without="statement",
        where="left_key NOT LIKE '%X____'",
    )


def _copy(kept: sqlite3.Connection, table: str, anew: Callable[[str], str], without: str = "", where: str = "") -> None:
    columns = [row[1] for row in kept.execute(f"PRAGMA table_info({table})") if row[1] != without]
    names, values = ", ".join(f'"{name}"' for name in columns), ", ".join(anew(name) for name in columns)
    kept.execute(f"INSERT INTO {table} ({names}) SELECT {values} FROM {table} WHERE {where}")
