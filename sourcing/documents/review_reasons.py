"""Reasons of a candidate under the heading that is true of them: what speaks for it, and what against.

A reason is kept as the sentence it was shown as, so it is told by its beginning; what is not known speaks against.
"""

from collections.abc import Sequence

SPEAKS_FOR = (
    *("number ", "both name ", "near number: ", "same ", "the maker is named"),
    *("descriptions agree", "price the same to the cent", "price within ", "far before the next best"),
    *("asked in spite of its score", "section and length agree"),
)
"""How sentences begin that speak for a candidate. A number that is near is why it is asked about at all."""

ONLY_IN_WORDS = "nothing by itself, but too little agrees to take it in bulk"


def for_and_against(reasons: Sequence[str], against: bool) -> tuple[str, str]:
    """(what speaks for it, what against), each in one text; blank where nothing does.

    `against`: whether it is kept from being taken in bulk. Then something stands under that heading always.
    """
    speaks_for, speaks_against = apart(reasons, against)
    return "; ".join(speaks_for), "; ".join(speaks_against)


def apart(reasons: Sequence[str], against: bool) -> tuple[list[str], list[str]]:
    """The same, reason by reason."""
    speaks_for = [one for one in reasons if one.startswith(SPEAKS_FOR)]
    speaks_against = [one for one in reasons if not one.startswith(SPEAKS_FOR)]
    if against and not speaks_against:
        speaks_against = [ONLY_IN_WORDS]
    return speaks_for, speaks_against
