"""What a core charge means for the customer: her old part goes back to the supplier, unless she wants to keep it.

Parts sold in exchange against the old one are common practice, no source. Only what the sheet says is known: that a
deposit is asked for the old part. What keeping it would cost her is the shop's to say, so the line is then quoted
anew; whether she has a right to her old parts is for the law of the place. No amount of the shop's own is told.
"""

from decimal import Decimal


def core_words(core_charge: Decimal | None, old_parts: int) -> tuple[str, ...]:
    """The sentences for so many old parts, the first by itself the shortest; none where the sheet states no core charge
    or one of 0."""
    if not core_charge:
        return ()
    one = old_parts == 1
    old, go, new, keep = ("part", "goes", "the new one", "it") if one else ("parts", "go", "the new ones", "them")
    return (
        f"Your old {old} {go} back to the supplier in exchange for {new}; this price counts on that.",
        f"If you want to keep {keep}, tell us before you say yes: the supplier then keeps a deposit that is not in "
        "this price, and we quote this line anew.",
        "Where the rules of your place give you a right to your old parts, they come first.",
    )
