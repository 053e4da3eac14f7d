"""What a special order means for the customer: the shop's terms, and whether and how the part can go back.

Restocking and no return of goods ordered specially are common practice, no source: nothing is assumed, only what the
shop's settings, the sheet and the supplier's terms say. No supplier and no amount of the shop's own cost is told.
"""

from collections.abc import Sequence

from ..basics.terms import Returns


def is_special_order(stated: bool | None, returnable: bool | None) -> bool:
    """The job's own word where it gives one; else what can't go back is a special order."""
    return stated if stated is not None else returnable is False


def return_words(shop_terms: Sequence[str], returnable: bool | None, rules: Returns) -> tuple[str, ...]:
    """The shop's terms for special orders, then a sentence about going back."""
    return (*shop_terms, _going_back(returnable, rules))


def _going_back(returnable: bool | None, rules: Returns) -> str:
    if returnable is False:
        return "Once ordered, this part can't be sent back."
    if returnable is None:
        return "Whether this part can be sent back is not known; ask us before you approve it."
    parts = [f"within {rules.within_days} days after it came" if rules.within_days is not None else ""]
    if rules.restocking_percent:
        parts.append(f"less {rules.restocking_percent.normalize():f} % for restocking")
    elif rules.restocking_percent is None:
        parts.append("less what restocking costs; ask us")
    said = ", ".join(part for part in parts if part)
    return f"Unused, this part can be sent back{' ' if said else ''}{said}; the way back is not in the price."
