"""Compare the size our part has with the size an offer says it has; hold back what differs, with the numbers."""

from collections.abc import Iterator
from functools import lru_cache

from .beside import with_words
from .compare import compare_sizes
from .reading import agree, every_name, is_whole, may_hold_size, read_names
from .size import FamilyName, Size
from .text import LONGEST_TEXT, blocked_in, has_words, plain, spoken_of
from .verdict import NOT_COMPARED, SizeCheck, Verdict

__all__ = ["NOT_COMPARED", "SizeCheck", "Verdict", "check_size"]

_Families = frozenset[FamilyName]
_Named = tuple[tuple[Size, ...], ...]


def check_size(asked: str, *offered: str) -> SizeCheck:
    """Compare a designation we ask for with what an offer's texts say; the most cautious answer where they say several.

    `asked` is known to be a designation. The offer's texts belong together: 'belt' in the description makes a size of
    'A36' in the number. A size that agrees never makes two parts the same: cord, cover and cogs decide too.
    """
    wanted = read_names(asked[:LONGEST_TEXT], certain=True)
    if not wanted:
        return NOT_COMPARED
    families = frozenset(want.family for want in wanted)
    texts = tuple(text[:LONGEST_TEXT] for text in offered)
    checks = [check for names in _offered_names(families, texts) for check in _checks(wanted, names)]
    return max(checks, key=lambda check: check.caution, default=NOT_COMPARED)


def is_designation(text: str) -> bool:
    """Whether the whole text reads as a size by a standard this program knows."""
    return bool(read_names(text[:LONGEST_TEXT], certain=True))


def _checks(wanted: tuple[Size, ...], names: tuple[Size, ...]) -> Iterator[SizeCheck]:
    """One check for each name of one thing. Names of several things in one text are a question, or all different."""
    checks = [_best(wanted, have) for have in names]
    if agree(names) or all(check.verdict == "different" for check in checks):
        yield from checks
        return
    words = f"one text names several sizes, which is it: {'; '.join(name.words() for name in names)}"
    yield SizeCheck(verdict="cannot be compared", words=words, doubtful=True)


def _best(wanted: tuple[Size, ...], have: Size) -> SizeCheck:
    """The part may bear several names ('A44 / 4L460'): any of them will do."""
    return min((compare_sizes(want, have) for want in wanted), key=lambda check: abs(check.caution - 1))


@lru_cache(maxsize=20_000)
def _offered_names(families: _Families, offered: tuple[str, ...]) -> _Named:
    """The names in each text, by family."""
    joined = plain(" | ".join(offered))
    if not may_hold_size(joined):
        return _bare_names(families, offered, joined)
    spoken, blocked = spoken_of(joined), blocked_in(joined)
    named = [names for text in offered for names in every_name(text, False, spoken, blocked)]
    if not named and not spoken:
        return _bare_names(families, offered, joined)
    # 'B36' in the number, 'banded, 2 strands' in the description: what any of the texts says holds for the thing.
    same = [tuple(with_words(name, joined) for name in names) for names in named if names[0].family in families]
    # A name of another family counts only where the offer does not speak of ours: 'belt kit with bearing 6203-2RS'.
    return tuple(same or ([] if spoken & families else named))


def _bare_names(families: _Families, offered: tuple[str, ...], joined: str) -> _Named:
    """Of an offer without a word: a text that is a designation of what is asked for, and nothing else."""
    if has_words(joined) or blocked_in(joined):
        return ()
    named = [names for text in offered for names in every_name(text, False, families) if is_whole(text, names[0])]
    return tuple(names for names in named if names[0].family in families)
