"""Words for what lies between two keys, the one that came first and ours second; characters are counted from 1."""

from .characters import first_difference
from .slip_kinds import Kind

NTH = {1: "st", 2: "nd", 3: "rd"}


def words_of(kind: Kind, left: str, right: str) -> str:
    """One clause without a full stop. For the kinds with something glued on see `damage`, which has the print."""
    at = first_difference(left, right)
    if kind in ("look-alike character", "weak look-alike character"):
        return "; ".join(
            f"{one} where {other} stands, {nth(place)} character" for place, one, other in _pairs(left, right)
        )
    if kind in ("left and right", "other letter at the end"):
        return f"{left[at]} where {right[at]} stands at the end: {_ENDS[kind]}"
    if kind in _WHOLE:
        return _WHOLE[kind].format(left=left, right=right, done="lost" if len(left) < len(right) else "added")
    if kind == "character left out":
        return f"{right[at]} left out, {nth(at)} character"
    if kind in ("character doubled", "character added"):
        return f"{left[at]} {kind.removeprefix('character ')}, {nth(at)} character"
    return _of_changes(kind, left, right, at)


_ENDS = {
    "left and right": "left and right are different parts",
    "other letter at the end": "makers tell articles apart so",
}
_WHOLE: dict[Kind, str] = {
    "leading zeros": "leading zeros {done}: {left} for {right}",
    "leading zeros and look-alike character": "leading zeros {done} and characters that look alike: {left} for {right}",
    "read as a power of ten": "a number with E read as a power of ten: {left} for {right}",
}


def _of_changes(kind: Kind, left: str, right: str, at: int) -> str:
    if kind == "neighbours swapped":
        return f"neighbours swapped: {left[at : at + 2]} for {right[at : at + 2]} at the {nth(at)}"
    if kind == "swapped across a character":
        return f"swapped across a character: {left[at : at + 3]} for {right[at : at + 3]} at the {nth(at)}"
    count = 1 if kind == "one character different" else 2
    different = f"{count} character{'s' if count > 1 else ''} different"
    if len(left) != len(right):
        return f"{different}: {left} for {right}"
    changes = (f"{one} for {other} at the {nth(place)}" for place, one, other in _pairs(left, right))
    return f"{different}: {', '.join(changes)}"


def nth(place: int) -> str:
    """'1st' for place 0."""
    count = place + 1
    return f"{count}{'th' if count % 100 in (11, 12, 13) else NTH.get(count % 10, 'th')}"


def _pairs(left: str, right: str) -> list[tuple[int, str, str]]:
    together = enumerate(zip(left, right, strict=True))
    return [(at, one, other) for at, (one, other) in together if one != other]
