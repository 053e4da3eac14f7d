"""People's answers to candidates: kept for ever, taken back, and what can be learnt from them."""

from typing import Any

from sqlalchemy import Connection, Row, insert, select, update

from ..basics.judgement import Judgement, RowYes
from ..basics.match import Judged
from ..basics.part_number import number_key
from ..basics.statement_history import Signed
from .match_tables import JUDGEMENTS
from .rows import as_text, as_value

PLAIN_FIELDS = (
    *("candidate", "supplier", "supplier_number", "maker", "maker_number", "description", "sheet", "sheet_date"),
    *("part", "answer", "how", "at", "who", "score", "against", "standing", "statement", "words"),
    *("taken_back_at", "taken_back_by", "taken_back_why"),
)


def add_judgement(connection: Connection, one: Judgement) -> int:
    """Keep an answer; its number."""
    row: dict[str, Any] = {name: getattr(one, name) for name in PLAIN_FIELDS}
    row |= {"reasons": as_text(one.reasons), "facts": as_text(one.facts)}
    return int(connection.execute(insert(JUDGEMENTS).values(row).returning(JUDGEMENTS.c.judgement)).scalar_one())


def take_judgement_back(connection: Connection, judgement: int, signed: Signed, why: str) -> None:
    """Let an answer count no more; it stays, with who took it back, when and why."""
    values = {"taken_back_at": signed.at, "taken_back_by": signed.who, "taken_back_why": why}
    connection.execute(update(JUDGEMENTS).where(JUDGEMENTS.c.judgement == judgement).values(values))


def judgements(connection: Connection, candidate: int | None = None) -> list[Judgement]:
    """Every answer there ever was, those taken back among them, or those to one candidate; oldest first."""
    query = select(JUDGEMENTS).order_by(JUDGEMENTS.c.judgement)
    if candidate is not None:
        query = query.where(JUDGEMENTS.c.candidate == candidate)
    return [_judgement(row) for row in connection.execute(query)]


def judgements_in_force(connection: Connection) -> list[Judgement]:
    """Answers nobody has taken back, oldest first."""
    query = select(JUDGEMENTS).where(JUDGEMENTS.c.taken_back_at.is_(None)).order_by(JUDGEMENTS.c.judgement)
    return [_judgement(row) for row in connection.execute(query)]


def yes_to_rows(connection: Connection) -> dict[tuple[str, str], tuple[RowYes, ...]]:
    """Every yes in force that a person gave to a row she read, by supplier and the key of his number, oldest first.

    A yes by score alone is left out: nobody read that row.
    """
    table = JUDGEMENTS
    fields = ("supplier", "supplier_number", "maker", "maker_number", "description", "part", "who", "words")
    query = select(*(table.c[name] for name in (*fields, "at")))
    query = query.where(table.c.answer == "yes", table.c.how != "by score", table.c.taken_back_at.is_(None))
    found: dict[tuple[str, str], tuple[RowYes, ...]] = {}
    for row in connection.execute(query.order_by(table.c.judgement)):
        one = RowYes(on=row.at.date(), **{name: row._mapping[name] for name in fields})
        key = one.supplier, number_key(one.supplier_number)
        found[key] = (*found.get(key, ()), one)
    return found


def judged_examples(connection: Connection) -> list[Judged]:
    """What the score can learn from: the facts of each answer in force, oldest first.

    Answers given by score alone are left out, for the score would be told what it said itself; and so are answers
    without facts, to a candidate that went by its number alone.
    """
    table = JUDGEMENTS
    query = select(table.c.facts, table.c.answer).where(table.c.taken_back_at.is_(None), table.c.how != "by score")
    rows = connection.execute(query.order_by(table.c.judgement)).all()
    examples = (Judged(facts=as_value(facts, tuple[int, ...]), same=answer == "yes") for facts, answer in rows)
    return [one for one in examples if one.facts]


def _judgement(row: Row[Any]) -> Judgement:
    return Judgement(
        judgement=row.judgement,
        reasons=as_value(row.reasons, tuple[str, ...]),
        facts=as_value(row.facts, tuple[int, ...]),
        **{name: row._mapping[name] for name in PLAIN_FIELDS},
    )
