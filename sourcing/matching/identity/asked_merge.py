"""What a need asks altogether: the job's line first, then our part, then what the makers' lists say of it.

The nearer word holds; where two differ both are said, for one of them is wrong.
"""

from collections.abc import Sequence

from ...basics.asked import Asked
from ...basics.value import to_plain
from .said_of import asked_by


def merged(*sources: tuple[str, Asked]) -> tuple[Asked, tuple[str, ...]]:
    """(what is asked, contradictions in words). `sources` are (whose word, what it asks), the nearest word first."""
    taken: dict[str, object] = {}
    whose: dict[str, str] = {}
    conflicts: list[str] = []
    for name, asked in sources:
        for field, value in to_plain(asked).items():
            if not value:
                continue
            if field not in taken:
                taken[field], whose[field] = value, name
            elif not _same(field, taken[field], value):
                shown = "sold as" if field == "sold_as" else field
                both = f"{whose[field]} asks for {shown} {taken[field]}, {name} for {value}"
                conflicts.append(f"{both}; the first holds until one is mended")
    return Asked(**taken), tuple(conflicts)  # type: ignore[arg-type]  # fields of Asked, from Asked


def _same(field: str, one: object, other: object) -> bool:
    if field not in ("cord", "cover"):
        return one == other
    left, right = str(one), str(other)
    read = [getattr(asked_by(text), field) or text.casefold().strip() for text in (left, right)]
    return bool(read[0] == read[1])


def asked_of_lists(words: Sequence[tuple[str, str]]) -> tuple[tuple[str, Asked], ...]:
    """(whose word, what its words ask) of each list that says something of the part's make."""
    return tuple((name, asked) for name, text in words if (asked := asked_by(text)) != Asked())
