"""The names of what moves a job's earnings, as the owner reads them."""

COUNTER = "discount at the counter"
GIVEN_AWAY = "unapproved extra given away"
BILLED_MORE = "billed above the quote"
LEFT_OFF = "left off the bill"
DEAD = "dead special order"
UNUSED = "bought and not used"
PRICE = "price rise absorbed"
CHEAPER = "bought cheaper than quoted"
CHARGES = "freight and fees above the quote"
CHARGES_LESS = "freight and fees below the quote"
SENT_BACK = "sent back for credit"
RATE = "rate moved between order and invoice"
RATE_GAIN = "rate moved in the shop's favour"
SECOND = "second freight on backorder"
FREIGHT = "freight dearer than ordered"
FREIGHT_LESS = "freight cheaper than ordered"
FREIGHT_MOVED = "freight moved between lines"

IN_ORDER = (
    LEFT_OFF,
    COUNTER,
    GIVEN_AWAY,
    BILLED_MORE,
    DEAD,
    UNUSED,
    PRICE,
    CHEAPER,
    CHARGES,
    CHARGES_LESS,
    SECOND,
    FREIGHT,
    FREIGHT_LESS,
    FREIGHT_MOVED,
    RATE,
    RATE_GAIN,
    SENT_BACK,
)
"""The steps from the quoted to the received margin, as they are drawn."""

NO_LEAKS = frozenset((LEFT_OFF, FREIGHT_MOVED))
"""Earnings that fell away with work that was not done: the sale is gone and so is its cost. And freight that one line
bears and another does not."""

NOT_USED = frozenset((DEAD, UNUSED))
"""A part that was bought and is on no bill: one ordered specially for the job, or any other. What of it went back for
credit is not lost."""

NOT_BILLED = "freight not billed"
CAP = "list cap"
DRIVE = "pick-up drive"
SMALL = "small-order fee"
"""These four stand in the quoted margin already."""

SURPLUS = "surplus pack"
BAD = "damaged or wrong, not yet made good"
RESTOCKED = "return restocked"
RETURN_SHORT = "return credited short"
RETURN_MISSED = "return missed"
CORE_LOST = "core late or lost"
CORE_COSTS = "core sent back at a cost"
"""These stand beside the margin: on the shelf, with the supplier, or in a deposit."""

NOT_OFF_PARTS = frozenset((SURPLUS, COUNTER))
"""Of what stands beside the margin, what takes nothing from the earnings on parts: goods on the shelf are the shop's,
and a discount on labour is in the figure of the whole job."""
