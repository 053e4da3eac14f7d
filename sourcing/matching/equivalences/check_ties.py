"""Numbers tied where they should not be: to two of our parts, to other sizes, to what must not serve."""

from collections.abc import Callable, Iterable, Iterator

from ...basics.equivalence import EquivalenceTable, OurPart, Relation
from ...basics.part_number import OURS, number_key
from ...basics.table_finding import Finding, FindingKind
from ...basics.value import changed
from ..dimensions.size_check import SizeCheck
from .components import components
from .links import Links
from .reach import Tree, steps_in
from .spread import MOST_SHOWN, meetings, spread

THE_SAME: tuple[Relation, ...] = ("same part", "superseded by")
MOST_WALKED = 3_000_000
"""So many steps are taken in all to find how contradictions come about; after that only that they are there is said."""


Compare = Callable[[str, str], SizeCheck]
"""How two sizes stand to one another, the first known to be a designation."""


def ties_of_parts(table: EquivalenceTable, links: Links) -> Iterator[Finding]:
    """Two of our parts tied together, or one number that belongs to two; each pair once, by the shortest way.

    Substitutes are left aside: one may serve for two parts.
    """
    parts = {links.index[OURS, number_key(part.code)]: part for part in table.parts}
    found = spread(links, parts, THE_SAME)
    for at in meetings(found, THE_SAME, lambda one, other: True):
        one, other = (parts[found.source[end]] for end in (links.left[at], links.right[at]))
        statements, more = found.line(at)
        number = _number_between(links, parts, at)
        kind: FindingKind = "two of our parts tied together" if number is None else "one number of two parts"
        words = f"{number} is tied to {one.code} and to {other.code}"
        if number is None:
            words = f"our parts {one.code} and {other.code} are said to be the same"
        yield Finding(kind=kind, words=words, statements=statements, parts=(one, other), more=more)


def sizes_that_disagree(table: EquivalenceTable, links: Links, compare: Compare) -> Iterator[Finding]:
    """Two readable sizes that differ although 'same part' and 'superseded by' tie them: of our parts, or in numbers."""
    parts = {links.index[OURS, number_key(part.code)]: part for part in table.parts}
    sizes = _sizes(links, parts, compare)
    found = spread(links, sizes, THE_SAME, backwards=True)
    known: dict[tuple[str, str], SizeCheck] = {}

    def answer(one: int, other: int) -> SizeCheck:
        pair = (sizes[other], sizes[one]) if other in parts else (sizes[one], sizes[other])
        if pair not in known:
            known[pair] = compare(*pair)
        return known[pair]

    for at in meetings(found, THE_SAME, lambda one, other: answer(one, other).vetoes):
        one, other = found.source[links.left[at]], found.source[links.right[at]]
        statements, more = found.line(at)
        ours = tuple(parts[node] for node in (one, other) if node in parts)
        words = answer(one, other).words
        yield Finding(kind="sizes disagree", words=words, statements=statements, parts=ours, more=more)


def _number_between(links: Links, parts: dict[int, OurPart], at: int) -> object:
    for node in (links.right[at], links.left[at]):
        if node not in parts:
            return links.printed(at, node)
    return None


def _sizes(links: Links, parts: dict[int, OurPart], compare: Compare) -> dict[int, str]:
    """The size of each node that has a readable one: our parts' own, and those in numbers as first printed.

    A number of figures alone is not read: 6203 may be anybody's number for anything.
    """
    sizes = {node: part.size for node, part in parts.items() if part.size}
    seen = set(parts)
    for at, statement in enumerate(links.statements):
        for node, number in ((links.left[at], statement.left), (links.right[at], statement.right)):
            if node not in seen:
                seen.add(node)
                if not links.nodes[node][1].isdecimal():
                    sizes[node] = number.printed
    readable: dict[str, bool] = {}
    for text in sizes.values():
        if text not in readable:
            readable[text] = compare(text, text).verdict != "cannot be compared"
    return {node: text for node, text in sizes.items() if readable[text]}


def contradictions(links: Links) -> Iterator[Finding]:
    """Numbers a path leads to that must not serve, with the shortest such path; two numbers are told once."""
    told: dict[frozenset[int], list[int]] = {}
    ways: dict[int, list[int] | None] = {}
    for at, steps in _contradicted(links):
        told.setdefault(frozenset((links.left[at], links.right[at])), []).append(at)
        ways[at] = steps
    for bans in told.values():
        found = _contradiction(links, bans[0], ways[bans[0]])
        more = tuple(links.statements[at] for at in bans[1:])
        yield changed(found, statements=(*found.statements[:1], *more, *found.statements[1:]))


def _contradicted(links: Links) -> Iterator[tuple[int, list[int] | None]]:
    """Each such must-not with the statements of the way; None where that was not walked any more."""
    tied = _tied(links)
    walked = 0
    for start, bans in links.bans.items():
        goals = {links.right[at] for at in bans if tied(start, links.right[at])}
        tree = _walk(links, start, goals, MOST_WALKED - walked) if goals else {}
        walked += len(tree)
        for at in bans:
            goal = links.right[at]
            if goal in goals and (goal in tree or walked >= MOST_WALKED):
                yield at, steps_in(links, tree, goal) if goal in tree else None


def _contradiction(links: Links, ban: int, steps: list[int] | None) -> Finding:
    said = links.statements[ban]
    if steps is None:
        words = f"{said.right} must not serve for {said.left}, and many statements tie the two"
        return Finding(kind="same part and must not", words=words, statements=(said,))
    path = [links.statements[at] for at in steps]
    same = all(one.relation == "same part" for one in path)
    told = "is said to be the same part as" if same else "is said to serve for"
    words = f"{said.right} {told} {said.left}, and that it must not"
    shown = (said, *path[:MOST_SHOWN])
    return Finding(kind="same part and must not", words=words, statements=shown, more=1 + len(path) - len(shown))


def _tied(links: Links) -> Callable[[int, int], bool]:
    """Whether any statements to be followed tie two nodes, whatever their direction: a quick look before a walk."""
    if not links.bans:
        return lambda one, other: False
    followed: Iterable[int] = sorted({at for some in links.ahead.values() for at in some})
    starts, ends = [links.left[at] for at in followed], [links.right[at] for at in followed]
    labels = components(len(links.nodes), starts, ends)
    return lambda one, other: labels[one] == labels[other]


def _walk(links: Links, start: int, goals: set[int], most: int) -> Tree:
    """The walk from a node, layer by layer, until all goals are met or so many nodes are."""
    tree, layer, open_goals = {start: -1}, [start], goals - {start}
    while layer and open_goals and len(tree) < most:
        new = []
        for node in layer:
            for at in links.ahead.get(node, ()):
                other = links.other(at, node)
                if other not in tree:
                    tree[other] = at
                    new.append(other)
        open_goals -= set(new)
        layer = new
    return tree
