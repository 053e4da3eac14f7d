"""An arrival worked out from a sheet, after what the supplier has said since of the same goods on order."""

from ..basics.landed_cost import Arrival, Delivery
from ..basics.offer import Offer
from ..basics.value import changed
from .door import Door


def after_word(by_sheet: Arrival, door: Door, offer: Offer, pieces: int) -> Arrival:
    """The arrival, no sooner than he has said; as it is where he has said nothing, or nothing later.

    Where the sheet names no day, his holds for as many pieces as he said it of, and no others: more is nobody's word.
    """
    word = next((one for one in door.later_words if one.is_about(offer)), None)
    if word is None:
        return by_sheet
    sheet = f"his sheet of {offer.source.sheet_date}, which is older, would make it {by_sheet.words()}"
    if by_sheet.latest is None and pieces > word.pieces:
        more = f"{word.words}; of {pieces} pieces he has said nothing"
        return changed(by_sheet, steps=(*by_sheet.steps, more), deliveries=(), told=more)
    if by_sheet.latest is not None and by_sheet.latest >= word.latest:
        return by_sheet
    days = (max(word.earliest, by_sheet.earliest or word.earliest), word.latest)
    return Arrival(
        earliest=days[0],
        latest=days[1],
        steps=(by_sheet.steps[0], f"{word.words}; {sheet}"),
        deliveries=(Delivery(pieces=pieces, leaves=days, arrives=days),),
        told=word.words,
    )
