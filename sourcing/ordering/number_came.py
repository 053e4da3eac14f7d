"""What stands on the part that came, against the line of the order: the part ordered, the same part, or not.

A number counts as the same part only where the equivalence table ties it to our part by a path of good standing and
nothing speaks against it, or a person took it for this line with her name. All else waits for a person.
"""

from typing import Literal

from ..basics.order import Came, PurchaseOrderLine
from ..basics.order_now import LineNow
from ..basics.part_number import number_key
from ..basics.value import Value


class Judged(Value, frozen=True, kw_only=True):
    """What the equivalence table says of the number, for the part and the machine of the line.

    `matched`: as offers are matched. `against`: what speaks against it. `banned`: a must-not, in words. `path`: the
    statements in words. `accepted`: a person's word for it. `warnings`: what to look at before it is fitted.
    """

    matched: Literal["automatic", "candidate", "none"]
    against: tuple[str, ...] = ()
    banned: str = ""
    vetoed: bool = False
    path: str = ""
    accepted: str = ""
    warnings: tuple[str, ...] = ()


class NumberCame(Value, frozen=True, kw_only=True):
    """What came for the line: its kind, why, and one sentence what to do; blank where there is nothing to do."""

    came: Came
    why: str
    to_do: str = ""


def is_ordered_number(line: PurchaseOrderLine, number: str) -> bool:
    """Whether it is the number ordered, the supplier's or the maker's, whatever its case, blanks and hyphens."""
    key = number_key(number)
    return bool(key) and key in {number_key(line.supplier_number), number_key(line.maker_number)}


def number_said(now: LineNow, typed: str) -> str:
    """The number to look at: as typed, else the other one the supplier said he sends; blank: as ordered."""
    if typed.strip():
        return typed.strip()
    return "" if is_ordered_number(now.line, now.number) else now.number


def what_came(line: PurchaseOrderLine, number: str, judged: Judged) -> NumberCame:
    """The number judged for the line. A must-not stands above every word for it."""
    came: Came
    if judged.banned:
        came, why = "not wanted", judged.banned
    elif judged.accepted or (judged.matched == "automatic" and not judged.against):
        came, why = "same part", "; ".join(part for part in (judged.accepted or judged.path, *judged.warnings) if part)
    elif judged.vetoed or judged.matched == "automatic":
        came, why = "not wanted", "; ".join(judged.against)
    else:
        came, why = "another part", "; ".join(judged.against) or f"no statement ties {number} to {line.part}"
    return NumberCame(came=came, why=why, to_do=what_to_do(line, number, came))


def what_to_do(line: PurchaseOrderLine, number: str, came: Came) -> str:
    """One sentence what to do with what came under that number; blank for what came as ordered."""
    ordered, order_line = line.supplier_number, f"line {line.line}"
    if came == "same part":
        ask = f"the customer's yes was for {ordered}, {number} came"
        return f"{order_line}: {ask}: see 'sourcing alarms {line.job}' before it is fitted"
    if came == "another part":
        aside = f"put {number} aside: it does not count as {ordered} until the table of equivalent numbers ties the two"
        return f"{order_line}: {aside} and its paper is taken in after that, or it goes back"
    return f"{order_line}: do not fit {number}; it goes back" if came == "not wanted" else ""


def ties_now(line: PurchaseOrderLine, number: str, paper: str, path: str) -> str:
    """What helps where the table has come to tie the number that was taken in as another part."""
    again = f"set paper {paper} aside and take it in again"
    counts = f"{again}, and {number} counts as {line.supplier_number}"
    return f"line {line.line}: the table ties the two by now ({path}): {counts}"
