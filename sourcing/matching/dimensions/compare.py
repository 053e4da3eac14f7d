"""Two sizes that were read, compared: belts with belts, bearings with bearings, chains with chains."""

from .compare_bearings import compare_bearings
from .compare_belts import compare_belts
from .compare_chains import compare_chains
from .size import BearingSize, BeltSize, ChainSize, Size
from .verdict import SizeCheck


def compare_sizes(want: Size, have: Size) -> SizeCheck:
    """The verdict on two sizes; two families are different. A size that agrees never makes two parts the same."""
    if isinstance(want, BeltSize) and isinstance(have, BeltSize):
        return compare_belts(want, have)
    if isinstance(want, BearingSize) and isinstance(have, BearingSize):
        return compare_bearings(want, have)
    if isinstance(want, ChainSize) and isinstance(have, ChainSize):
        return compare_chains(want, have)
    words = f"a {want.family} asked, a {have.family} offered (asked {want.words()}; offered {have.words()})"
    return SizeCheck(verdict="different", words=words)
