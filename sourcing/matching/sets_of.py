"""A part that is a set by its own name, against an offer: one loose piece must not serve for the set unseen.

Only where nobody has said how the part is sold ('sold as'): that is compared in `identity/asked_check.py`.
"""

from typing import NamedTuple

from ..basics.equivalence import OurPart
from ..basics.offer import Offer
from .identity.said_of import Stated, said_of
from .likeness.said import said

FILL_IN = "say how it is sold in the column 'sold as' of our part"


class SetSaid(NamedTuple):
    """What speaks against the offer, and what is to be asked of it; blank where nothing does."""

    against: str = ""
    warning: str = ""


def set_said(offer: Offer, part: OurPart) -> SetSaid:
    """Compare how many our part holds by its name with how many the offer says it holds.

    An offer of single pieces or of another count speaks against; one that does not say is a question.
    """
    ours = pieces_of(part.name)
    if ours < 2 or part.asked.sold_as:
        return SetSaid()
    its = said_of(offer.description, offer.note, numbers=(offer.supplier_number, offer.maker_number))
    one, held = f"ours is a set of {ours}", _held(its, offer)
    if its.sold_as.value == "each":
        loose = f"sold by the piece ('{its.sold_as.text}')"
        return SetSaid(against=f"{loose}, where {one}: {ours} are needed for one; {FILL_IN}")
    if held and held != ours:
        return SetSaid(against=f"holds {held}, where {one}")
    if held:
        return SetSaid()
    ask = f"ask whether its price is for one piece or for all {ours}"
    return SetSaid(warning=f"{one}, and the offer does not say how many it holds: {ask}; {FILL_IN}")


def pieces_of(name: str) -> int:
    """How many pieces a pair or set holds by its name; 0 where the name speaks of none or does not count them."""
    said = said_of(name)
    return said.pieces if said.sold_as.value in ("pair", "set", "matched set") else 0


def _held(its: Stated, offer: Offer) -> int:
    """How many it holds by its words, else by its pack; 0: not said, or two counts are."""
    counts = {amount for kind, amount in said((), (), offer.description).measures if kind == "count"}
    counted = int(only) if len(counts) == 1 and (only := counts.pop()).isdigit() else 0
    return its.pieces or its.packed or counted or (offer.pack if offer.pack > 1 else 0)
