"""Numbers as people write them: which decimal mark a number shows, and the number as Decimal by a known mark.

A mark is judged over a column, not over a cell: '12.50' shows it, '1,234' alone does not.
"""

import re
from collections.abc import Mapping
from decimal import Decimal

NUMBER = re.compile(r"[0-9][0-9.,' ]*|[.,][0-9]+")
"""An amount without sign; `decimal_of` says whether its groups are right."""
GROUPS = re.compile(r"[0-9]{1,3}(?:[.,' ][0-9]{3})+")
FIRST_GROUP = re.compile(r"[1-9][0-9]{0,2}")
OTHER = {".": ",", ",": "."}


def clear_mark(digits: str) -> str:
    """The decimal mark this text shows by itself: '.' or ','; '?' where '1.234' may be either; '' where it has none.

    Two kinds of separator: the last is the decimal mark. One kind twice: thousands, so the other is the mark.
    """
    marks = re.sub(r"[^.,]", "", digits)
    if len(marks) > 1 and len(set(marks)) == 2:
        return marks[-1] if marks.count(marks[-1]) == 1 else ""
    if len(marks) > 1:
        return OTHER[marks[0]] if GROUPS.fullmatch(digits) else ""
    if not marks:
        return ""
    whole, part = re.split("[.,]", digits)
    return "?" if len(part) == 3 and FIRST_GROUP.fullmatch(whole) else marks


def common_mark(counts: Mapping[str, int]) -> str:
    """The mark at least nine in ten of the marks counted are; '' where there is none or both are common."""
    for mark, other in OTHER.items():
        if counts.get(mark, 0) and counts[mark] >= 9 * counts.get(other, 0):
            return mark
    return ""


def main_mark(counts: Mapping[str, int]) -> str:
    """The mark that most of the marks counted are, with a '?' behind it where they are fewer than nine in ten."""
    for mark, other in OTHER.items():
        if counts.get(mark, 0) > counts.get(other, 0):
            return common_mark(counts) or f"{mark}?"
    return ""


def readings_of(digits: str) -> tuple[str, str]:
    """Both readings of a number such as '1,234': with decimals, and in thousands."""
    return digits.replace(",", "."), re.sub("[.,]", "", digits)


def decimal_of(digits: str, mark: str) -> Decimal | None:
    """The number without sign, by this decimal mark ('': it has none). None where its groups are not right.

    Call `clear_mark` first where the number may be unclear.
    """
    whole, _, part = digits.partition(mark) if mark else (digits, "", "")
    if not _well_grouped(whole) or not (part.isdigit() or not part) or not whole + part:
        return None
    plain = re.sub("[^0-9]", "", whole)
    return Decimal(f"{plain}.{part}" if part else plain)


def _well_grouped(whole: str) -> bool:
    """Plain digits, or groups of three with one kind of separator."""
    if not whole or whole.isdigit():
        return True
    return bool(GROUPS.fullmatch(whole)) and len(set(re.sub("[0-9]", "", whole))) == 1
