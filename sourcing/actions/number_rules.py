"""What suppliers put before or after every number: proposed by their sheets, confirmed by a person, withdrawn."""

from collections.abc import Sequence
from datetime import date

from sqlalchemy import Connection

from ..basics.kept_number_rule import KeptNumberRule, NumberRules, ProposedRule
from ..basics.number_rule import NumberRule
from ..basics.part_number import OURS, maker_key
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.statement_history import Signed
from ..matching.numbers.affixes import propose_affixes, strip
from ..storage.candidates import sheet_rows
from ..storage.number_rules import add_rule, kept_rules, withdraw_rule
from .candidates import sheets_to_look_through
from .desk import Desk
from .our_side import OurSide, our_side
from .our_side_now import our_side_now

SHORT = 20_000
"""Offers of a sheet that is read at once, whoever waits."""


def number_rules(desk: Desk, supplier: str = "") -> NumberRules:
    """The rules of one supplier or all, and what is proposed. Refuses a supplier who has no sheet."""
    with desk.store.reading() as connection:
        kept = tuple(one for one in kept_rules(connection) if supplier in ("", one.rule.supplier))
        there = [one.rule for one in kept if one.holds]
        proposed = tuple(one for one in _proposals(connection, supplier, desk.at.date()) if one.rule not in there)
        return NumberRules(kept=kept, proposed=proposed)


def rules_at_hand(desk: Desk, supplier: str = "") -> tuple[NumberRules, tuple[str, ...]]:
    """The same for a page that must not wait: of long sheets nothing is proposed unless their supplier is named.

    With it the suppliers whose sheets were not looked at.
    """
    with desk.store.reading() as connection:
        kept = tuple(one for one in kept_rules(connection) if supplier in ("", one.rule.supplier))
        sheets = sheets_to_look_through(connection, desk.at.date(), supplier)
        left = [] if supplier else [one for one in sheets if one.offers > SHORT]
        there, told = [one.rule for one in kept if one.holds], {one.sheet for one in left}
        short = [one for one in sheets if one.sheet not in told]
        proposed = _proposed(connection, our_side_now(connection, desk), short)
        rules = NumberRules(kept=kept, proposed=tuple(one for one in proposed if one.rule not in there))
        return rules, tuple(one.supplier for one in left)


def confirm_number_rule(desk: Desk, rule: NumberRule) -> KeptNumberRule:
    """Let the rule hold: from now on numbers are looked up without it. A rule nobody proposed is a person's own word.

    Refuses a rule that holds already, and one that no number on the supplier's newest sheet bears out.
    """
    with desk.writing("confirm number rule") as pen:
        connection = pen.connection
        there = [one for one in kept_rules(connection) if one.holds and one.rule == rule]
        if there:
            raise refused("number-rule-there", found=there[0].number)
        numbers = _numbers(connection, rule.supplier, desk.at.date())
        bearing = sum(strip([rule], number) != number.strip() for number in numbers)
        if not bearing:
            where = "before" if rule.kind == "prefix" else "after"
            raise refused("number-rule-bears-nothing", supplier=rule.supplier, found=rule.text, where=where)
        proposed = [one for one in _proposals(connection, rule.supplier, desk.at.date()) if one.rule == rule]
        own = f"{bearing} of {len(numbers)} numbers bear it; a person's own word, the numbers do not suggest it"
        kept = add_rule(connection, rule, proposed[0].words if proposed else own, _signed(desk))
        pen.note(f"supplier {rule.supplier}", f"number rule {kept.number}: {rule}")
        return kept


def withdraw_number_rule(desk: Desk, number: int, why: str) -> KeptNumberRule:
    """Let the rule hold no more, for a reason. Statements made while it held stay."""
    if not why.strip():
        raise refused("number-rule-words")
    with desk.writing("withdraw number rule") as pen:
        kept = withdraw_rule(pen.connection, number, _signed(desk), why.strip())
        pen.note(f"supplier {kept.rule.supplier}", f"number rule {number} withdrawn: {why.strip()}")
        return kept


def _signed(desk: Desk) -> Signed:
    return Signed(at=desk.at, who=desk.who)


def _proposals(connection: Connection, supplier: str, day: date) -> list[ProposedRule]:
    return _proposed(connection, our_side(connection, day), sheets_to_look_through(connection, day, supplier))


def _proposed(connection: Connection, side: OurSide, sheets: Sequence[KeptSheet]) -> list[ProposedRule]:
    known = _known(side, {maker_key(sheet.supplier) for sheet in sheets})
    return [
        ProposedRule(rule=one.rule, words=one.words)
        for sheet in sheets
        for one in propose_affixes(sheet.supplier, sheet_rows(connection, sheet.sheet).supplier_number, known)
    ]


def _known(side: OurSide, suppliers: set[str]) -> frozenset[str]:
    """The keys of makers' numbers: a supplier's own numbers and our codes say nothing of what he adds."""
    nodes = side.every.graph.links.nodes
    return frozenset(key for maker, key in nodes if maker != OURS and maker not in suppliers and key)


def _numbers(connection: Connection, supplier: str, day: date) -> list[str]:
    (sheet,) = sheets_to_look_through(connection, day, supplier)
    return list(sheet_rows(connection, sheet.sheet).supplier_number)
