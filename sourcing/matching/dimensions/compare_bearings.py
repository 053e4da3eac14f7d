"""Two rolling bearings compared: boundary dimensions, bore, snap ring, clearance, seals.

The basic number fixes bore, outside and width (ISO 15), whoever makes it; the suffix decides the rest. A snap ring
changes the fit; another clearance is not taken without a decision; shields and seals seat alike and serve otherwise
(makers' and distributors' pages). Dimensions without a number do not say which kind of bearing has them.
"""

from decimal import Decimal

from .plain_bearing import ROUNDED
from .size import BearingSize, shown
from .verdict import SizeCheck


def compare_bearings(want: BearingSize, have: BearingSize) -> SizeCheck:
    """The verdict on two bearings; symmetric but for the words. No difference in suffix goes unsaid."""
    both = f"asked {want.words()}; offered {have.words()}"
    if not (want.basic and have.basic):
        return _by_dimensions(want, have, both)
    return (
        _other_seat(want, have, both)
        or _unread(want, have, both)
        or _other_inside(want, have, both)
        or SizeCheck(verdict="same size", words=f"same boundary dimensions{_unsaid(want, have)} ({both})")
    )


def _by_dimensions(want: BearingSize, have: BearingSize, both: str) -> SizeCheck:
    for what, one, other in (
        ("bore", want.bore, have.bore),
        ("outside", want.outside, have.outside),
        ("width", want.width, have.width),
    ):
        in_doubt = what == "bore" and (want.doubt or have.doubt)
        if one is not None and other is not None and not in_doubt and _apart(one, other) > ROUNDED:
            reason = f"different {what}, {shown(_apart(one, other))} mm apart"
            return SizeCheck(verdict="different", words=f"{reason} ({both})")
    if want.closure and have.closure and want.closure != have.closure:
        words = f"the dimensions agree, but {want.closure} asked, {have.closure} offered ({both})"
        return SizeCheck(verdict="other duty", words=words)
    words = f"the dimensions may agree, but which kind of bearing is not said ({both})"
    return SizeCheck(verdict="cannot be compared", words=words, doubtful=want.doubt != have.doubt)


def _apart(one: Decimal, other: Decimal) -> Decimal:
    return abs(one - other)


def _other_seat(want: BearingSize, have: BearingSize, both: str) -> SizeCheck | None:
    if want.basic != have.basic:
        return SizeCheck(verdict="different", words=f"different bearing ({both})")
    if want.bore != have.bore and not (want.doubt or have.doubt):
        apart = shown(abs(want.bore - have.bore))
        return SizeCheck(verdict="different", words=f"different bore, {apart} mm apart ({both})")
    if want.ring != have.ring and want.doubt == have.doubt:
        words = f"different snap ring: {want.ring or 'none'} asked, {have.ring or 'none'} offered ({both})"
        return SizeCheck(verdict="different", words=words)
    return None


def _unread(want: BearingSize, have: BearingSize, both: str) -> SizeCheck | None:
    if want.doubt != have.doubt:
        words = f"in doubt: {want.doubt or have.doubt} ({both})"
        return SizeCheck(verdict="cannot be compared", words=words, doubtful=True)
    if want.tail != have.tail:
        words = f"suffix '{want.tail or have.tail}' is not known here ({both})"
        return SizeCheck(verdict="cannot be compared", words=words, doubtful=True)
    return None


def _other_inside(want: BearingSize, have: BearingSize, both: str) -> SizeCheck | None:
    differ = []
    if want.clearance != have.clearance:
        differ.append(f"clearance {_clearance(want)} asked, {_clearance(have)} offered")
    if want.closure and have.closure and want.closure != have.closure:
        differ.append(f"{want.closure} asked, {have.closure} offered")
    if not differ:
        return None
    return SizeCheck(verdict="other duty", words=f"fits but is made otherwise: {'; '.join(differ)} ({both})")


def _clearance(size: BearingSize) -> str:
    return size.clearance or "normal or not said"


def _unsaid(want: BearingSize, have: BearingSize) -> str:
    if bool(want.closure) == bool(have.closure):
        return ""
    return f"; seals or shields are said on one side only ({want.closure or have.closure})"
