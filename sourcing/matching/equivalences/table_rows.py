"""One row of the edited table to a part, a statement or a maker's other name; refuses what can't be understood."""

from collections.abc import Callable, Mapping
from datetime import date
from functools import lru_cache
from typing import Any, get_args

from ...basics.asked import Asked, Cogs, Side, SoldAs
from ...basics.equivalence import MakerAlias, OurPart, Relation, Standing, Statement
from ...basics.part_number import OURS, PartNumber, maker_key, number_key
from ...basics.problem import refused
from .bench import span_is_backwards
from .table_columns import AS_OF_COLUMN

Row = Mapping[str, str]
_KINDS = {"relation": Relation, "standing": Standing, "cogs": Cogs, "side": Side, "sold as": SoldAs}
_WORDS = {column: {word: word for word in get_args(kind)} for column, kind in _KINDS.items()}
"""The words a column knows."""


def part_of(row: Row, at: int) -> OurPart:
    """A row of 'parts'; blank cells of what is asked mean: not asked."""
    code = _filled(row, "code")
    if not number_key(code):
        raise refused("blank-number", found=code)
    pieces = row.get("pieces") or "0"
    return OurPart(
        code=code,
        name=row.get("name", ""),
        size=row.get("size", ""),
        category=row.get("category", ""),
        note=row.get("note", ""),
        asked=Asked(
            cord=row.get("cord", ""),
            cover=row.get("cover", ""),
            cogs=_word(row.get("cogs", ""), "cogs"),
            side=_word(row.get("side", ""), "side"),
            sold_as=_word(row.get("sold as", ""), "sold as"),
            pieces=0 if pieces == "0" else _count(pieces),
        ),
    )


def statement_of(row: Row, at: int) -> Statement:
    """A row of 'statements'; `at` is kept as its row."""
    relation: Relation = _word(_filled(row, "relation"), "relation")
    statement = Statement(
        left=_number(row, "left maker", "left number"),
        relation=relation,
        right=_number(row, "right maker", "right number"),
        standing=_word(_filled(row, "standing"), "standing"),
        source=_filled(row, "source"),
        stated_on=_day(_filled(row, "stated on")),
        stated_by=_filled(row, "stated by"),
        condition=row.get("condition", ""),
        machine=row.get("machine", ""),
        serial_from=row.get("serial from", ""),
        serial_to=row.get("serial to", ""),
        count=_count(row.get("count") or "1"),
        doubt=row.get("doubt", ""),
        row=at,
        number=_own_number(row.get("number", "")),
    )
    _sensible(statement)
    return statement


def as_of(row: Row) -> int | None:
    """The change up to which a row of 'statements' knows of everything; None where it does not say."""
    found = row.get(AS_OF_COLUMN, "")
    if not found or found == "0":
        return None if not found else 0
    return _whole(found, lambda: refused("not-a-change-number", found=found))


def alias_of(row: Row, at: int) -> MakerAlias:
    """A row of 'makers'."""
    alias, maker = _filled(row, "alias"), _filled(row, "maker")
    for name in (alias, maker):
        if _maker(name) == OURS:
            raise refused("alias-of-ours", found=name)
        if not maker_key(name):
            raise refused("blank-number", found=name)
    if maker_key(alias) == maker_key(maker):
        raise refused("alias-of-itself", found=alias, maker=maker)
    return MakerAlias(alias=alias, maker=maker)


def _sensible(statement: Statement) -> None:
    for number in (statement.left, statement.right):
        if not number_key(number.printed):
            raise refused("blank-number", found=number.printed)
    if statement.count != 1 and statement.relation != "kit contains":
        raise refused("count-without-kit", found=statement.count, relation=statement.relation)
    if statement.serial_from and span_is_backwards(statement.serial_from, statement.serial_to):
        raise refused("serials-backwards", found=statement.serial_from, last=statement.serial_to)


def _number(row: Row, maker: str, number: str) -> PartNumber:
    return PartNumber(printed=_filled(row, number), maker=_maker(row.get(maker, "")))


@lru_cache(maxsize=10_000)
def _maker(name: str) -> str:
    return OURS if name.casefold() == OURS else name


def _filled(row: Row, column: str) -> str:
    if not row.get(column):
        raise refused("table-cell-blank", column=column)
    return row[column]


def _word(found: str, column: str) -> Any:
    known = _WORDS[column]
    word = known.get(found) or known.get(found.casefold())
    if word is None:
        raise refused("unknown-word", found=found, column=column, known=", ".join(filter(None, known)))
    return word


@lru_cache(maxsize=10_000)
def _day(found: str) -> date:
    try:
        return date.fromisoformat(found)
    except ValueError:
        raise refused("no-such-day", found=found, column="stated on") from None


def _count(found: str) -> int:
    return _whole(found, lambda: refused("count-below-one", found=found))


def _own_number(found: str) -> int | None:
    return _whole(found, lambda: refused("not-a-statement-number", found=found)) if found else None


def _whole(found: str, problem: Callable[[], Exception]) -> int:
    if not (found.isascii() and found.isdecimal() and len(found) < 16 and int(found)):
        raise problem()
    return int(found)
