"""What suppliers put before or after every number, as confirmed; withdrawn rules stay."""

from typing import Any

from sqlalchemy import Connection, Row, select, update

from ..basics.kept_number_rule import KeptNumberRule
from ..basics.number_rule import NumberRule
from ..basics.problem import refused
from ..basics.statement_history import Signed
from .match_tables import NUMBER_RULES
from .rows import add_row

PLAIN_FIELDS = ("grounds", "confirmed_at", "confirmed_by", "withdrawn_at", "withdrawn_by", "withdrawn_why")


def confirmed_rules(connection: Connection, supplier: str) -> tuple[NumberRule, ...]:
    """The rules of one supplier that hold, oldest first."""
    return tuple(one.rule for one in kept_rules(connection) if one.holds and one.rule.supplier == supplier)


def rules_by_supplier(connection: Connection) -> dict[str, tuple[NumberRule, ...]]:
    """The rules that hold of every supplier that has any."""
    found: dict[str, tuple[NumberRule, ...]] = {}
    for one in kept_rules(connection):
        if one.holds:
            found[one.rule.supplier] = (*found.get(one.rule.supplier, ()), one.rule)
    return found


def kept_rules(connection: Connection) -> list[KeptNumberRule]:
    """Every rule there ever was, oldest first."""
    return [_kept(row) for row in connection.execute(select(NUMBER_RULES).order_by(NUMBER_RULES.c.rule))]


def add_rule(connection: Connection, rule: NumberRule, grounds: str, signed: Signed) -> KeptNumberRule:
    """Keep a confirmed rule and give it its number."""
    row: dict[str, Any] = {
        **{name: getattr(rule, name) for name in ("supplier", "kind", "text")},
        "grounds": grounds,
        "confirmed_at": signed.at,
        "confirmed_by": signed.who,
        "withdrawn_by": "",
        "withdrawn_why": "",
    }
    return _one(connection, add_row(connection, NUMBER_RULES, row))


def withdraw_rule(connection: Connection, number: int, signed: Signed, why: str) -> KeptNumberRule:
    """Let a rule hold no more, for a reason. Refuses a number there is none of, and a rule withdrawn before."""
    kept = _one(connection, number)
    if not kept.holds:
        raise refused("number-rule-withdrawn", found=number, why=kept.withdrawn_why)
    values = {"withdrawn_at": signed.at, "withdrawn_by": signed.who, "withdrawn_why": why}
    connection.execute(update(NUMBER_RULES).where(NUMBER_RULES.c.rule == number).values(values))
    return _one(connection, number)


def _one(connection: Connection, number: int) -> KeptNumberRule:
    found = connection.execute(select(NUMBER_RULES).where(NUMBER_RULES.c.rule == number)).one_or_none()
    if found is None:
        raise refused("no-such-number-rule", found=number)
    return _kept(found)


def _kept(row: Row[Any]) -> KeptNumberRule:
    rule = NumberRule(supplier=row.supplier, kind=row.kind, text=row.text)
    return KeptNumberRule(number=row.rule, rule=rule, **{name: row._mapping[name] for name in PLAIN_FIELDS})
