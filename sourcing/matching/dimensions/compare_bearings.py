"""Two rolling bearings compared: boundary dimensions, bore, snap ring, clearance, seals.

The basic number fixes bore, outside and width (ISO 15), whoever makes it; the suffix decides the rest. A snap ring
changes the fit; another clearance is not taken without a decision; shields and seals seat alike and serve otherwise
(makers' and distributors' pages).
"""

from .size import BearingSize, shown
from .verdict import SizeCheck


def compare_bearings(want: BearingSize, have: BearingSize) -> SizeCheck:
    """The verdict on two bearings; symmetric but for the words. No difference in suffix goes unsaid."""
    both = f"asked {want.words()}; offered {have.words()}"
    return (
        _other_seat(want, have, both)
        or _unread(want, have, both)
        or _other_inside(want, have, both)
        or SizeCheck(verdict="same size", words=f"same boundary dimensions{_unsaid(want, have)} ({both})")
    )


def _other_seat(want: BearingSize, have: BearingSize, both: str) -> SizeCheck | None:
    if want.basic != have.basic:
        return SizeCheck(verdict="different", words=f"different bearing ({both})")
    if want.bore != have.bore and not (want.doubt or have.doubt):
        apart = shown(abs(want.bore - have.bore))
        return SizeCheck(verdict="different", words=f"different bore, {apart} mm apart ({both})")
    if want.ring != have.ring:
        words = f"different snap ring: {want.ring or 'none'} asked, {have.ring or 'none'} offered ({both})"
        return SizeCheck(verdict="different", words=words)
    return None


def _unread(want: BearingSize, have: BearingSize, both: str) -> SizeCheck | None:
    if want.doubt != have.doubt:
        words = f"the bore is in doubt: {want.doubt or have.doubt} ({both})"
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
