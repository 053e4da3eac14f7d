"""Where evidence contradicts evidence: each conflict as a sentence that names both sides and says what follows."""

from collections.abc import Iterator, Sequence

from ...basics.equivalence import OurPart
from ...basics.evidence import MAKERS_LISTS
from ...basics.identity import Seen
from ...basics.value import Value
from ..dimensions.size_check import SizeCheck, check_size

_VERB = {
    "printed on the removed part": "stamped",
    "removed part measured": "measured",
    "drive geometry": "the drive asks for",
}


class Known(Value, frozen=True, kw_only=True):
    """What clues are held against: the part the evidence names, the lists that name it, and lists that only agree in
    size.
    """

    part: OurPart | None
    lists: tuple[Seen, ...]
    alike: tuple[Seen, ...] = ()

    @property
    def size(self) -> tuple[str, str]:
        """(who says it, the size): the lists' own word first, then our part's; blanks where nobody says one."""
        saying = [one for one in (*self.lists, *self.alike) if one.evidence.size]
        if saying:
            return list_words(saying), saying[0].evidence.size
        if self.part and self.part.size:
            return f"our part {self.part.code} is", self.part.size
        return "", ""


def silent_lists(seen: Sequence[Seen], deciding: Sequence[Seen]) -> list[Seen]:
    """Lists about this machine that name a size and no number, as far as they are heard beside the deciding ones.

    Sellers' lists are heard where no maker's list decides.
    """
    makers = any(one.evidence.kind in MAKERS_LISTS for one in deciding)
    heard = MAKERS_LISTS if makers else MAKERS_LISTS | {"seller's list"}
    return [one for one in seen if one.use == "size only" and one.evidence.size and one.evidence.kind in heard]


def alike_in_size(silent: Sequence[Seen], deciding: Sequence[Seen], part: OurPart | None) -> list[Seen]:
    """Of these lists, those whose size is the one the deciding lists name, or else our part's."""
    named = [one.evidence.size for one in deciding if one.evidence.size] or ([part.size] if part and part.size else [])
    return [
        one for one in silent if named and all(check_size(n, one.evidence.size).verdict == "same size" for n in named)
    ]


def overruled_sizes(seen: Sequence[Seen], known: Known) -> Iterator[str]:
    """What sellers' lists that name only a size say against makers' lists."""
    who, size = known.size
    if not known.lists or known.lists[0].evidence.kind not in MAKERS_LISTS:
        return
    for one in seen:
        if one.use == "size only" and one.evidence.kind == "seller's list" and one.evidence.size:
            check = check_size(size, one.evidence.size)
            if check.vetoes:
                yield (
                    f"a seller's list says {one.evidence.size}, {who} {size}: {check.words}; makers' lists are trusted"
                    " before it"
                )


def list_words(lists: Sequence[Seen]) -> str:
    """'the machine list says', 'both lists say', 'all lists say'."""
    if len(lists) == 1:
        return f"the {lists[0].evidence.kind} says"
    return "both lists say" if len(lists) == 2 else "all lists say"


def list_conflicts(seen: Sequence[Seen], deciding: Sequence[Seen], codes: Sequence[str]) -> Iterator[str]:
    """Lists believed alike that name different parts; makers' lists that are open and name another or a banned one."""
    if len(codes) > 1:
        says = "; ".join(
            f"the {one.evidence.kind} says {one.evidence.says}, which is {one.ties[0].part}" for one in deciding
        )
        yield f"the lists disagree on the part: {says}"
    for one in seen:
        if one.use != "open" or one.evidence.kind not in MAKERS_LISTS:
            continue
        others = {tie.part for tie in one.ties if tie.part not in codes}
        if any(tie.banned for tie in one.ties) or (codes and others):
            yield f"the {one.evidence.kind} says {one.evidence.says}{_which(others)}, and it is open: {one.words}"
        elif deciding and deciding[0].evidence.kind not in MAKERS_LISTS and one.evidence.number:
            yield f"the {one.evidence.kind} says {one.evidence.says} ({one.words}): a seller's list does not settle it"


def _which(parts: set[str]) -> str:
    return f", which is {' or '.join(sorted(parts))}" if parts else ""


def size_conflicts(seen: Sequence[Seen], known: Known) -> Iterator[str]:
    """A list's size against our part's, the lists' sizes among themselves, and the drive against a seller's list.

    A list that names a size and no number is heard too. Geometry is trusted after makers' lists: against them it is
    told as a clue is (see `clue_words`).
    """
    stated = [one for one in (*known.lists, *silent_lists(seen, known.lists)) if one.evidence.size]
    for one in stated:
        if known.part and known.part.size:
            check = check_size(known.part.size, one.evidence.size)
            if check.vetoes:
                told = (
                    f"the {one.evidence.kind} says {one.evidence.size}, our part {known.part.code} is {known.part.size}"
                )
                yield f"{told}: {check.words}"
    for at, one in enumerate(stated):
        for other in stated[at + 1 :]:
            check = check_size(one.evidence.size, other.evidence.size)
            if check.vetoes:
                yield (
                    f"the {one.evidence.kind} says {one.evidence.size}, the {other.evidence.kind} says "
                    f"{other.evidence.size}: {check.words}"
                )
    if known.lists and known.lists[0].evidence.kind == "seller's list":
        yield from _drives(seen, known)


def _drives(seen: Sequence[Seen], known: Known) -> Iterator[str]:
    for one in seen:
        if one.evidence.kind == "drive geometry" and one.use == "size only":
            yield from _against(one, known)


def clue_words(clue: Seen, known: Known) -> Iterator[str]:
    """What a clue, or the drive, contradicts; nothing where it agrees or says nothing that can be compared."""
    own = {tie.part for tie in clue.ties if not tie.banned}
    if own and known.part and known.part.code not in own:
        yield (
            f"{_VERB[clue.evidence.kind]} {clue.evidence.says}, which is {' or '.join(sorted(own))}; {_named(known)}: "
            "an earlier owner may have fitted another part"
        )
    elif not own:
        yield from _against(clue, known)


def clue_note(clue: Seen, known: Known) -> str:
    """What a clue comes to, beside that it is one."""
    if not (known.part or known.size[1]):
        return clue.words
    if any(clue_words(clue, known)):
        return "contradicts it: recorded, explained below, not used"
    if banned := next((tie.banned for tie in clue.ties if tie.banned), ""):
        return f"a number that must not be fitted again: {banned}"
    if clue.ties:
        return "another number of the same part: agrees"
    check = _compared(known.size[1], clue)
    if check.verdict == "same size":
        return f"agrees in size, which alone settles nothing: {check.words}"
    return f"{clue.words}; it can't be compared with {known.size[1] or 'what the lists say'}"


def _named(known: Known) -> str:
    return f"{list_words(known.lists)} {known.part.code}" if known.part and known.lists else "the lists name no part"


def _against(one: Seen, known: Known) -> Iterator[str]:
    who, size = known.size
    text = one.evidence.size or one.evidence.number or one.evidence.words
    check = _compared(size, one)
    if check.vetoes:
        yield f"{_VERB[one.evidence.kind]} {text}, {who} {size}: {check.words}"


def _compared(size: str, one: Seen) -> SizeCheck:
    return check_size(size, one.evidence.size, one.evidence.number, one.evidence.words)
