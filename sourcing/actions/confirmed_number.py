"""A number a supplier confirms instead of the one ordered, against the number on the customer's paper and our table."""

from sqlalchemy import Connection

from ..basics.order import OrderEvent
from ..basics.order_now import OrderNow
from ..basics.part_number import PartNumber, number_key
from ..matching.equivalences.graph import Graph, graph_of
from ..matching.equivalences.must_nots import perhaps
from ..matching.equivalences.reach import Reach, reach
from ..ordering.changes import what_differs
from ..storage.quotes import quote
from .equivalences import table_around


def confirmed_otherwise(connection: Connection, before: OrderNow, event: OrderEvent) -> tuple[str, ...]:
    """What the supplier confirmed otherwise, as `what_differs`; of another number what her yes is for and how it is
    tied to that by our table."""

    def yes_for(at: int, number: str) -> str:
        line = next(one for one in before.order.lines if one.line == at)
        approved = quote(connection, line.job, line.revision).quote.line(line.label)
        if approved is None or not approved.number:
            return ""
        yes = f"the customer's yes is for {approved.number}"
        if number_key(approved.number).endswith(number_key(number)):
            return f"{yes}, which may be the same number"
        return f"{yes}; {_by_table(graph_of(table_around(connection, number)), number, approved.number)}"

    return what_differs(before, event, yes_for)


def _by_table(graph: Graph, confirmed: str, approved: str) -> str:
    """How the two are tied, with every statement on the way; each number under whatever maker it stands."""
    theirs, ours = perhaps(graph, PartNumber(printed=confirmed)), _as_on_paper(graph, approved)
    there, back = ([reach(graph.links, at, PartNumber(printed="")) for at in some] for some in (ours, theirs))
    for ahead in there:
        for at in theirs:
            if ban := ahead.forbidden.get(at):
                return f"by our table {graph.links.statements[ban]}"
            if at in ahead.way:
                return f"by our table {confirmed} {_ahead(ahead, at)} ({_links(ahead, at)})"
    for behind in back:
        for at in ours:
            if at in behind.way and at not in behind.forbidden:
                how = f"is an older number, replaced by {approved}" if _is_replaced(behind, at) else "only leads to it"
                return f"by our table {confirmed} {how} ({_links(behind, at)}); that it still serves nobody has stated"
    return f"no statement of our table ties {confirmed} to it"


def _ahead(found: Reach, at: int) -> str:
    """What the confirmed number is to the one approved, by the statements that lead from that to it."""
    relations = {link.relation for link in found.path(at).links}
    if relations <= {"same part"}:
        return "is the same part"
    return "may serve for it" if "substitute" in relations else "came after it"


def _is_replaced(found: Reach, at: int) -> bool:
    return any(link.relation == "superseded by" for link in found.path(at).links)


def _links(found: Reach, at: int) -> str:
    return "; ".join(map(str, found.path(at).links))


def _as_on_paper(graph: Graph, approved: str) -> list[int]:
    """The paper has the number with its maker before it, or alone where none is known."""
    key = number_key(approved)
    return [at for (maker, own), at in graph.links.index.items() if key in (own, number_key(f"{maker} {own}"))]
