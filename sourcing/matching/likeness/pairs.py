"""Which pairs of a row and a part are worth comparing: by the same code, or one with an ending more."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np

from .said import Said
from .words_near import Positions

BORNE_BY_MANY = 40
"""A code that more parts or more rows bear than this finds no pair by itself."""

SHORTEST_STEM = 5
"""A code with an ending more is looked for where at least this many characters agree, and at least two thirds."""


def pairs_by_code(rows: Sequence[Said], parts: Sequence[Said]) -> tuple[Positions, Positions]:
    """Pairs that share a code, written with gaps or not, or of which one's code is the other's with an ending more."""
    by_form, by_code = _index(parts)
    row_forms = _counted(rows)
    found = {(at, part) for at, row in enumerate(rows) for part in _found(row, by_form, by_code, row_forms)}
    if not found:
        return np.empty(0, dtype=np.int64), np.empty(0, dtype=np.int64)
    both = np.array(sorted(found), dtype=np.int64)
    return both[:, 0], both[:, 1]


def codes_of(one: Said) -> frozenset[str]:
    """The codes as they stand, the numbers among them."""
    return one.codes | one.keys


def forms_of(one: Said) -> frozenset[str]:
    """Every way a code may be meant: as it stands, joined over a gap, or a part of a longer one."""
    return one.codes | one.keys | one.joined | one.runs


def _index(parts: Sequence[Said]) -> tuple[dict[str, list[int]], dict[str, list[int]]]:
    by_form: dict[str, list[int]] = defaultdict(list)
    by_code: dict[str, list[int]] = defaultdict(list)
    for at, part in enumerate(parts):
        own = codes_of(part)
        for code in own:
            by_code[code].append(at)
        for form in forms_of(part) | {stem for code in own for stem in stems(code)}:
            by_form[form].append(at)
    return by_form, by_code


def _counted(rows: Sequence[Said]) -> dict[str, int]:
    counts: dict[str, int] = defaultdict(int)
    for row in rows:
        for form in forms_of(row):
            counts[form] += 1
    return counts


def _found(
    row: Said, by_form: dict[str, list[int]], by_code: dict[str, list[int]], row_forms: dict[str, int]
) -> Iterator[int]:
    """At least one of the two codes stands as it is: two joins of neighbouring words meet by chance."""
    own = codes_of(row)
    for code in own:
        yield from _few(by_form.get(code), row_forms[code])
        for stem in stems(code):
            yield from _few(by_code.get(stem), 0)
    for form in (row.joined | row.runs) - own:
        yield from _few(by_code.get(form), row_forms[form])


def _few(parts: list[int] | None, rows: int) -> list[int]:
    return parts if parts and len(parts) <= BORNE_BY_MANY and rows <= BORNE_BY_MANY else []


def stems(code: str) -> list[str]:
    """The beginnings of a code of which it may be a variant: at least five characters and two thirds of it."""
    shortest = max(SHORTEST_STEM, -(-len(code) * 2 // 3))
    return [code[:end] for end in range(shortest, len(code))]
