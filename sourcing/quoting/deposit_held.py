"""What of a deposit is held and what is still open. A deposit is the customer's money until the work is billed."""

from collections.abc import Iterable

from ..basics.bill import DepositKept
from ..basics.money import Money, total, zero


def deposit_held(kept: Iterable[DepositKept], currency: str, billed: Money | None = None) -> Money:
    """What the shop holds of the customer's money: taken less given back. `billed` None: the job is not billed.

    Once it is billed the total of the bill has used it up, and only what is above that is still the customer's.
    """
    held = total((one.amount for one in kept), currency)
    if billed is None:
        return held
    return max(held - billed, zero(currency))


def deposit_open(asked: Money | None, kept: Iterable[DepositKept]) -> Money | None:
    """What of the asked amount is not taken yet; None where nothing is asked or all of it is held."""
    if asked is None:
        return None
    left = asked - deposit_held(kept, asked.currency)
    return left if left.amount > 0 else None
