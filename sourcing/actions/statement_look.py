"""What a statement that was just added does to the table: looked at where it hangs, not in the whole table."""

from sqlalchemy import Connection

from ..basics.equivalence import Statement
from ..basics.problem import refused
from ..basics.table_finding import FINDING_KINDS, Finding
from ..matching.equivalences.check import check_table
from ..matching.equivalences.graph import graph_of
from ..matching.equivalences.kits import way_back
from ..storage.statements import statements_between
from .equivalences import hanging_together


def found_of(connection: Connection, new: Statement) -> tuple[Finding, ...] | None:
    """What the check finds with this statement in it, and the statements that said the same on another source.

    None where it hangs together with so much that only the check of the whole table tells.
    """
    table = hanging_together(connection, new.left.key, new.right.key)
    if table is None:
        return None
    found = [one for one in check_table(table) if any(said.number == new.number for said in one.statements)]
    found += _said_before(connection, new)
    return tuple(sorted(found, key=lambda one: FINDING_KINDS.index(one.kind)))


def refuse_round_kit(connection: Connection, new: Statement) -> None:
    """Refuses a kit that would come to contain itself, the same part under other numbers counted in."""
    if new.relation != "kit contains":
        return
    table = hanging_together(connection, new.left.key, new.right.key)
    if table is None:
        return
    graph = graph_of(table)
    index = graph.links.index
    kit, item = index.get(graph.node(new.left)), index.get(graph.node(new.right))
    way = None if kit is None or item is None else way_back(graph.links, item, kit)
    if way is not None:
        raise refused("kit-contains-itself", found=str(new.left), path="; ".join(map(str, way)))


def _said_before(connection: Connection, new: Statement) -> list[Finding]:
    ends = {new.left.node, new.right.node}
    same = tuple(
        one.statement
        for one in statements_between(connection, {new.left.key, new.right.key})
        if not one.withdrawn
        and one.statement.number != new.number
        and one.statement.relation == new.relation
        and {one.statement.left.node, one.statement.right.node} == ends
        and (new.relation == "same part" or one.statement.left.node == new.left.node)
    )
    return [Finding(kind="said before", words=f"it was said before: {new.claim}", statements=same)] if same else []
