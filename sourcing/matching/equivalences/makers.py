"""Makers under all their names: the key of the one the shop uses, from any spelling."""

from collections.abc import Iterable, Mapping

from ...basics.equivalence import MakerAlias
from ...basics.part_number import OURS, PartNumber, maker_key, number_key

Node = tuple[str, str]
"""Maker key and number key: what a number is, however it is printed."""


class Makers:
    """Aliases resolved, through several steps too. An alias of two makers and a loop of aliases resolve nothing.

    Case, spaces and punctuation are set aside in aliases as in every maker's name; a blank stays blank: not known.
    """

    def __init__(self, aliases: Iterable[MakerAlias] = ()) -> None:
        """Take the shop's aliases; their order does not matter."""
        told: dict[str, set[str]] = {}
        for one in aliases:
            alias, maker = maker_key(one.alias), maker_key(one.maker)
            if alias and maker and alias != maker and OURS not in (alias, maker):
                told.setdefault(alias, set()).add(maker)
        self._ends = _ends({alias: makers.pop() for alias, makers in told.items() if len(makers) == 1})
        self._known: dict[str, str] = {}

    def key(self, name: str) -> str:
        """The key of the maker the shop uses; of a name that is no alias, its own."""
        known = self._known.get(name)
        if known is None:
            own = maker_key(name)
            known = self._known[name] = self._ends.get(own, own)
        return known

    def node(self, number: PartNumber) -> Node:
        """The number's node under the maker the shop uses."""
        return self.key(number.maker), number_key(number.printed)


def _ends(next_of: Mapping[str, str]) -> dict[str, str]:
    """Where following the aliases ends for each; an alias that leads into a loop stays itself."""
    ends: dict[str, str] = {}
    for alias in next_of:
        trail: dict[str, None] = {}
        at = alias
        while at in next_of and at not in ends and at not in trail:
            trail[at] = None
            at = next_of[at]
        looped = at in trail or (at in ends and ends[at] == at)
        for one in trail:
            ends[one] = one if looped else ends.get(at, at)
    return ends
