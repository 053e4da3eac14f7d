"""Numbers that are themselves, or what a spreadsheet left of another known one: the same key, and still a question."""

from collections import defaultdict
from collections.abc import Sequence

from .characters import without_zeros
from .exponents import written_out


def same_after_spreadsheet(keys: Sequence[str], known: Sequence[str]) -> dict[int, tuple[str, ...]]:
    """For each place of `keys` (one sheet's column): the other known keys that a spreadsheet would show as this one.

    12345 where 0012345 is known too; 12300000 where 123E5 is known. Only keys all of figures can be meant. Where any
    all-figure key of the column begins with a zero, the column kept its zeros, and only powers of ten are looked for.
    """
    kept = any(key[:1] == "0" and key.isdigit() for key in keys)
    became: dict[str, set[str]] = defaultdict(set)
    for key in known:
        if written := written_out(key):
            became[written].add(key)
        if not kept and key[:1] == "0" and key.isdigit():
            became[without_zeros(key)].add(key)
    became.pop("", None)
    return {at: tuple(sorted(became[key])) for at, key in enumerate(keys) if key in became}


def spreadsheet_made(known: Sequence[str]) -> dict[int, tuple[str, ...]]:
    """For each place of known keys: the other known ones a spreadsheet would show as this one; zeros lost or not."""
    became: dict[str, set[str]] = defaultdict(set)
    for key in known:
        if written := written_out(key):
            became[written].add(key)
        if key[:1] == "0" and key.isdigit():
            became[without_zeros(key)].add(key)
    became.pop("", None)
    return {at: tuple(sorted(became[key])) for at, key in enumerate(known) if key in became}
