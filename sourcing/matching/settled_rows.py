"""Which candidates need no asking any more, because a person has answered: on this sheet, a later one, or another's.

A refused part does not return for the same row: the same supplier, number and maker; a number of the maker's own that
stands on only one of the two sheets does not matter. Nor does it return where another supplier sells the same maker's
number, unless that number is the part's own: then it is this supplier's row that is wrong, and the others' still count.
A row that was accepted as one part is not offered as another. Where its number is that part's own by the table already,
a yes says how this row is meant that reads so: the same number in other words, or at another supplier, is asked about.
What is taken back is not among the answers.
"""

from collections.abc import Callable, Iterator

from ..basics.judgement import Answer, RowKeys

ANY_PART = ""
"""Stands for every part: the row is settled."""

IsOwn = Callable[[tuple[str, str], str], bool]
"""Whether a maker's number (the keys of both) is one of a part of ours, by the part's code."""


def none_own(number: tuple[str, str], part: str) -> bool:
    """No number is the part's own."""
    return False


class SettledRows:
    """Answers in force, ready to be asked about many rows. Nothing is settled before the first is added."""

    def __init__(self, is_own: IsOwn = none_own) -> None:
        """Begin without an answer. `is_own`: which numbers are the part's own by the table, as it stands by now."""
        self._is_own = is_own
        self._makers: set[tuple[tuple[str, str], str]] = set()
        self._rows: dict[tuple[str, str, str, str], set[str]] = {}
        self._meant: dict[tuple[str, ...], set[str]] = {}
        self._read: set[tuple[RowKeys, str]] = set()

    def add(self, keys: RowKeys, part: str, answer: Answer) -> None:
        """Take one answer: the keys of its row with the maker's name as the shop uses it, the part, yes or no."""
        if answer == "yes" and self._is_own_of(keys, part):
            self._read.add((keys, part))
            for number in _numbers(keys):
                self._meant.setdefault(number, set()).add(part)
            return
        about = part if answer == "no" else ANY_PART
        if keys.makers_number and not self._is_own_of(keys, part):
            self._makers.add((keys.makers_number, about))
        if keys.supplier_key:
            row = (keys.supplier, keys.supplier_key, keys.maker, about)
            self._rows.setdefault(row, set()).add(keys.maker_number_key)

    def settled(self, keys: RowKeys, part: str) -> bool:
        """Whether somebody has refused this part for the row, or accepted the row as any part."""
        meant = [self._meant[number] for number in _numbers(keys) if number in self._meant]
        if (keys, part) in self._read or any(part not in some for some in meant):
            return True
        return any(self._about(keys, about) for about in (part, ANY_PART))

    def _is_own_of(self, keys: RowKeys, part: str) -> bool:
        return keys.makers_number is not None and self._is_own(keys.makers_number, part)

    def _about(self, keys: RowKeys, about: str) -> bool:
        if keys.makers_number and (keys.makers_number, about) in self._makers:
            return True
        answered = self._rows.get((keys.supplier, keys.supplier_key, keys.maker, about), ())
        return any(number == keys.maker_number_key or not number or not keys.maker_number_key for number in answered)


def _numbers(keys: RowKeys) -> Iterator[tuple[str, ...]]:
    """Under what another row is the same number: the maker's at any supplier, and the supplier's own."""
    if keys.makers_number:
        yield keys.makers_number
    if keys.supplier_key:
        yield keys.supplier, keys.supplier_key, keys.maker
