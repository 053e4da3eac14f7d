"""Compare the size our part has with the size an offer says it has; hold back what differs, with the numbers."""

from functools import lru_cache

from .compare import compare_sizes
from .reading import is_whole, read_names
from .size import FamilyName, Size
from .text import blocked_in, has_words, plain, spoken_of
from .verdict import NOT_COMPARED, SizeCheck, Verdict

__all__ = ["NOT_COMPARED", "SizeCheck", "Verdict", "check_size"]

_Families = frozenset[FamilyName]

LONGEST_TEXT = 3000
"""A longer text is cut: nobody describes a part in more, and hostile cells are that long."""


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
    checks = [_best(wanted, have) for have in _offered_names(families, texts)]
    return max(checks, key=lambda check: check.caution, default=NOT_COMPARED)


def _best(wanted: tuple[Size, ...], have: Size) -> SizeCheck:
    """The part may bear several names ('A44 / 4L460'): any of them will do."""
    return min((compare_sizes(want, have) for want in wanted), key=lambda check: abs(check.caution - 1))


@lru_cache(maxsize=20_000)
def _offered_names(families: _Families, offered: tuple[str, ...]) -> list[Size]:
    joined = plain(" | ".join(offered))
    spoken, blocked = spoken_of(joined), blocked_in(joined)
    names = [name for text in offered for name in read_names(text, False, spoken, blocked)]
    if not names and not spoken and not blocked and not has_words(joined):
        names = [name for text in offered for name in read_names(text, False, families) if is_whole(text, name)]
    same = [name for name in names if name.family in families]
    # A name of another family counts only where the offer does not speak of ours: 'belt kit with bearing 6203-2RS'.
    return same or ([] if spoken & families else names)
