"""The answers in force as what needs no asking any more, with makers under the name the shop uses."""

from collections.abc import Iterable, Mapping

from ..basics.equivalence import GOOD_STANDING
from ..basics.judgement import Judgement, RowKeys, reads_as
from ..basics.offer import Offer
from ..basics.part_number import OURS, number_key
from ..basics.value import changed
from ..matching.equivalences.family import Family
from ..matching.equivalences.makers import Makers
from ..matching.settled_rows import SettledRows


def settled_rows(answers: Iterable[Judgement], makers: Makers, families: Mapping[str, Family]) -> SettledRows:
    """All of these answers; leave out those taken back. `families`: our parts' numbers by code."""
    settled = SettledRows(lambda number, part: is_own(families, number, part))
    for one in answers:
        settled.add(keys_of_judgement(one, makers), one.part, one.answer)
    return settled


def is_own(families: Mapping[str, Family], number: tuple[str, str] | None, part: str) -> bool:
    """Whether the maker's number, by its keys, is one of the part's by statements of good standing.

    By a statement nobody checked it is not: a no then speaks of the number. A part that is ours no longer has none.
    """
    path = families[part].paths.get(number) if number is not None and part in families else None
    return path is not None and path.standing in GOOD_STANDING


def keys_of_judgement(one: Judgement, makers: Makers) -> RowKeys:
    """By what the row of an answer is known again."""
    return changed(
        _keys(one.supplier, one.supplier_number, one.maker, one.maker_number, makers), reads=reads_as(one.description)
    )


def keys_of_offer(offer: Offer, makers: Makers) -> RowKeys:
    """By what the row of an offer is known again."""
    keys = _keys(offer.supplier, offer.supplier_number, offer.maker, offer.maker_number, makers)
    return changed(keys, reads=reads_as(offer.description))


def named(keys: RowKeys, makers: Makers) -> RowKeys:
    """The keys with the maker as the shop names him, from those a sheet is kept with."""
    return changed(keys, maker=_maker(keys.maker, makers)) if keys.maker else keys


def _keys(supplier: str, number: str, maker: str, maker_number: str, makers: Makers) -> RowKeys:
    return RowKeys(
        supplier=supplier,
        supplier_key=number_key(number),
        maker=_maker(maker, makers),
        maker_number_key=number_key(maker_number),
    )


def _maker(name: str, makers: Makers) -> str:
    """Blank where the row names no maker, or calls him '(ours)': nobody but the shop may say that."""
    return "" if name == OURS else makers.key(name)
