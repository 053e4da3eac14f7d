"""Purchase orders from approved lines, and receipts of what came."""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .landed_cost import CostLine
from .money import Money
from .value import Value


class PurchaseOrderLine(Value, frozen=True, kw_only=True):
    """A line of a purchase order. Quantities in pieces; `unit_price` per `price_basis` pieces, `goods` their
    total, both in the supplier's currency and after discount for `goods`. `landed` is in the shop's currency.

    `needed` is what the job uses, the rest goes on the shelf at `surplus_cost`. `core_charge` is for all pieces, in the
    supplier's currency; None: none is stated. `weight_kg` is one piece; None: not known. `reasons`: why this offer, for
    the shop's own eyes.
    """

    line: int
    job: str
    revision: int
    label: str
    part: str
    supplier_number: str
    maker_number: str
    description: str
    needed: int
    ordered: int
    pack: int
    price_basis: int
    unit_price: Decimal
    goods: Money
    goods_cost: Money
    landed: Money
    surplus_cost: Money
    core_charge: Money | None = None
    weight_kg: Decimal | None = None
    reasons: tuple[str, ...] = ()
    category: str = ""


class PurchaseOrder(Value, frozen=True, kw_only=True):
    """An order at one supplier. `lines` are goods; `charges` what the supplier's terms add, in the shop's currency.

    `discount_percent` is taken off each line's price times pieces. `reasons`: why the goods are bought together here,
    for the shop's own eyes. `rate`: one unit of the supplier's currency in the shop's on the day of the order; None in
    orders kept before it was written down. `locale` and `paper_size` are the shop's, for the paper to be printed on.
    """

    number: str
    supplier: str
    supplier_name: str
    supplier_address: tuple[str, ...]
    shop_name: str
    ship_to: tuple[str, ...]
    currency: str
    placed_at: datetime
    placed_by: str
    need_by: date | None
    expected: tuple[date, date] | None
    lines: tuple[PurchaseOrderLine, ...]
    charges: tuple[CostLine, ...]
    goods_total: Money
    landed_total: Money
    discount_percent: Decimal = Decimal(0)
    reasons: tuple[str, ...] = ()
    rate: Decimal | None = None
    shop_telephone: str = ""
    shop_email: str = ""
    supplier_note: str = ""
    locale: str = ""
    paper_size: Literal["", "letter", "A4"] = ""


EventKind = Literal["confirmed", "changed", "cancelled"]


class LineEvent(Value, frozen=True, kw_only=True):
    """What an event says of one line; None or blank: nothing. `pieces` is the number wanted from now on (0: cancelled).

    `unit_price` is per the line's price basis in the supplier's currency; `earliest` and `latest` the days at the shop.
    """

    line: int
    pieces: int | None = None
    unit_price: Decimal | None = None
    number: str = ""
    earliest: date | None = None
    latest: date | None = None


class OrderEvent(Value, frozen=True, kw_only=True):
    """What happened to an order after it was placed, kept for ever: confirmed by the supplier, or changed or cancelled
    by us, line by line. `said_by`: who at the supplier's; `words`: what was said."""

    order: str
    what: EventKind
    at: datetime
    who: str
    said_by: str = ""
    words: str = ""
    lines: tuple[LineEvent, ...] = ()


Came = Literal["as ordered", "same part", "another part", "not wanted"]
"""What came for a line: the number ordered; another number that the equivalence table holds for the same part; a number
that it does not; or something that must not go to the bench."""


class ReceiptLine(Value, frozen=True, kw_only=True):
    """What came for a line of the order: pieces, and the price charged per price basis (supplier's currency).

    `quantity` is all that came, `damaged` of them can't be used. `on_paper`: pieces the paper charges; None: as many as
    came. `number` is what stands on the part where it is not the number ordered, `under_number` how many pieces bear it
    (None: all); `came` says what the equivalence table holds of it and `why` shows the path. Only good pieces that came
    'as ordered' or as 'same part' count as received. `keeps_more`: what came beyond the order is kept and paid.
    `core_charge` is what the paper charges for the old parts of this line.
    """

    line: int
    quantity: int
    unit_price: Decimal
    damaged: int = 0
    number: str = ""
    came: Came = "as ordered"
    why: str = ""
    on_paper: int | None = None
    under_number: int | None = None
    keeps_more: bool = False
    core_charge: Money | None = None

    @property
    def wrong(self) -> int:
        """Pieces that came as another part, or that are not wanted."""
        if self.came in ("as ordered", "same part"):
            return 0
        return self.quantity if self.under_number is None else self.under_number

    @property
    def good(self) -> int:
        """Pieces that can go to the bench."""
        return max(self.quantity - self.damaged - self.wrong, 0)

    @property
    def charged_pieces(self) -> int:
        """Pieces the supplier's paper charges."""
        return self.quantity if self.on_paper is None else self.on_paper


class PaperCharge(Value, frozen=True, kw_only=True):
    """A charge on a supplier's paper beside goods, freight and old parts, by the name it has there."""

    name: str
    amount: Money


class Receipt(Value, frozen=True, kw_only=True):
    """One delivery. `paper` is the number of the supplier's delivery note or invoice: the same paper counts once.

    `freight` is what the supplier charged beside the goods, in his currency. `rate` turns his currency into the
    shop's (1 where they are the same). `freight_by`: how it is shared over the lines. `supplier_total`: what the paper
    says it comes to, where it was typed in to be checked; None: not given. `dated`: the day on the paper; None: not
    given. `sets_aside`: this is no delivery but the word that the one of that paper was recorded wrongly.
    `only_counted`: the goods were counted, and what the paper charges is still to be said; prices are as agreed till
    then and freight is none.
    """

    order: str
    paper: str
    at: datetime
    received_by: str
    lines: tuple[ReceiptLine, ...]
    freight: Money
    rate: Decimal
    freight_by: Literal["value", "weight"] = "value"
    supplier_total: Money | None = None
    words: str = ""
    other_charges: tuple[PaperCharge, ...] = ()
    dated: date | None = None
    sets_aside: str = ""
    only_counted: bool = False


ReturnStep = Literal["sent", "credited", "refused", "lost"]


class GoodsBack(Value, frozen=True, kw_only=True):
    """An old part (core) or goods on their way back to the supplier: one step of it, kept for ever.

    `credit` is what he gave back, `fee` his restocking, `freight` what sending cost; all in his currency, None: not
    part of this step. 'refused': he does not take it; 'lost': it will not go back (kept by the customer, too late).
    `takes_back`: this is no step but the word that the last one of that line and kind was taken down wrongly.
    """

    order: str
    line: int
    kind: Literal["core", "goods"]
    step: ReturnStep
    pieces: int
    at: datetime
    who: str
    paper: str = ""
    credit: Money | None = None
    fee: Money | None = None
    freight: Money | None = None
    words: str = ""
    takes_back: bool = False


DifferenceKind = Literal["price", "over", "short", "damaged", "number", "freight", "charge", "total", "rate", ""]


class Difference(Value, frozen=True, kw_only=True):
    """Something that did not come as ordered, for the talk with the supplier. `amount` in his currency, if any."""

    order: str
    line: int | None
    what: str
    amount: Money | None
    kind: DifferenceKind = ""
    paper: str = ""
