"""Whether the customer's yes covers the number that would be bought: a number is its maker and its letters and digits.

Everything that holds a line back, or tells that it is not as approved, asks here, so that they never disagree.
"""

from ..basics.alarm import Decision
from ..basics.part_number import number_key
from ..basics.quote import QuoteLine


def covers_number(line: QuoteLine, number: str, decision: Decision | None) -> bool:
    """Whether `number`, its maker before it, is the one approved, or one that the customer said yes to by a decision.

    A sheet that leaves the maker out now names the same number where it is still the supplier's own for the line.
    """
    key = number_key(number)
    if not key:
        return False
    agreed = (decision.number,) if decision is not None and decision.agreed_by else ()
    return key in {number_key(one) for one in (line.number, *agreed)} or _maker_left_out(line, key)


def _maker_left_out(line: QuoteLine, key: str) -> bool:
    own = number_key(line.behind.supplier_number) if line.behind else ""
    return key == own and number_key(line.number).endswith(key)
