"""What changed between two sheets of one supplier.

Stock, lead times and descriptions are not compared: they change with every sheet and say nothing of the price.
"""

from decimal import Decimal
from typing import Literal

from .sheet import KeptSheet
from .value import Value

ChangeKind = Literal[
    "no longer available", "superseded", "came back", "currency changed", "price gone", "price appeared", "rose",
    "fell", "rose and fell", "sold differently", "core charge changed", "discount code changed", "list price changed",
]  # fmt: skip
"""What can happen to a number that is on both sheets, weightiest first.

'superseded': by a number it was not superseded by before. 'came back': is no longer marked as no longer available or
superseded, and no other number is named instead. 'price gone', 'price appeared': the net price, or the list price
where neither sheet has a net one; the other sheet says nothing or 'CALL'. 'rose', 'fell': net prices per piece, where
none of those moved the list price. 'rose and fell': one price break up, another down. 'sold differently': pack, price
basis, order multiple, minimum, the quantity a price holds from, or by the foot and no longer by the piece.
'list price changed': it is there on one sheet only, beside a net price on both.
"""

Figure = Literal["net price", "list price", "core charge"]


class PriceChange(Value, frozen=True, kw_only=True):
    """One price on both sheets, as written there: for `before_basis` and `now_basis` pieces. None: not stated.

    `from_quantity`: the pieces ordered it is for, None for a list price and a core charge (which is for one piece).
    `percent`: of the price per piece, half up to one decimal, exact before that; None where one of the two is missing
    or in another currency.
    """

    figure: Figure
    before: Decimal | None
    now: Decimal | None
    before_basis: int = 1
    now_basis: int = 1
    from_quantity: int | None = None
    percent: Decimal | None = None


class WordChange(Value, frozen=True, kw_only=True):
    """Something of an offer that is no price: 'pack' from '10' to '12'. Blank: not stated."""

    what: str
    before: str
    now: str


class SheetPart(Value, frozen=True, kw_only=True):
    """A number as one sheet lists it, with its price at the least quantity. `price` None: no net price.

    `row` and `worksheet` say where it stands. `core_charge` and `list_price` as on the sheet.
    """

    supplier_number: str
    worksheet: str
    row: int
    currency: str
    maker: str = ""
    maker_number: str = ""
    description: str = ""
    price: Decimal | None = None
    price_basis: int = 1
    list_price: Decimal | None = None
    core_charge: Decimal | None = None
    superseded_by: str = ""
    no_longer_available: bool = False


class Changed(Value, frozen=True, kw_only=True):
    """A number that is on both sheets and changed: how, weightiest first, and every price and word that did.

    `headline`: the price that moved most per cent (of the net prices where one moved), None where none did.
    `instead`: how the new sheet lists the number that supersedes this one; None where it does not, or more than once.
    """

    before: SheetPart
    now: SheetPart
    kinds: tuple[ChangeKind, ...]
    prices: tuple[PriceChange, ...] = ()
    words: tuple[WordChange, ...] = ()
    headline: PriceChange | None = None
    instead: SheetPart | None = None

    @property
    def kind(self) -> ChangeKind:
        """The weightiest kind: every changed number is counted under this one."""
        return self.kinds[0]


class Several(Value, frozen=True, kw_only=True):
    """A number with several offers on one of the sheets that can't be told apart: never compared, a person looks."""

    before: tuple[SheetPart, ...]
    now: tuple[SheetPart, ...]


class KindCount(Value, frozen=True, kw_only=True):
    """`numbers`: counted under this kind as their weightiest, so that counts add up. `in_all`: that have it at all."""

    kind: ChangeKind
    numbers: int
    in_all: int


class SheetChanges(Value, frozen=True, kw_only=True):
    """Two sheets compared. `before`, `now` are the sheets as kept, None where offers were compared by themselves.

    `changed` stands with the biggest rise first, then what fell, most first, then the rest by number. `vanished` and
    `appeared` stand in the order of the sheet. `median_rise`: of the headlines of what rose, per cent,
    half up to one decimal.
    """

    supplier: str
    before_offers: int
    now_offers: int
    unchanged: int
    changed: tuple[Changed, ...]
    vanished: tuple[SheetPart, ...]
    appeared: tuple[SheetPart, ...]
    several: tuple[Several, ...]
    counts: tuple[KindCount, ...]
    median_rise: Decimal | None = None
    before: KeptSheet | None = None
    now: KeptSheet | None = None

    @property
    def several_before(self) -> int:
        """Offers of the old sheet under a number that can't be compared."""
        return sum(len(one.before) for one in self.several)

    @property
    def several_now(self) -> int:
        """The same of the new sheet."""
        return sum(len(one.now) for one in self.several)

    @property
    def adds_up(self) -> bool:
        """Whether every offer of both sheets is in exactly one place, and the counts of kinds are all that changed."""
        both = self.unchanged + len(self.changed)
        return (
            self.before_offers == both + len(self.vanished) + self.several_before
            and self.now_offers == both + len(self.appeared) + self.several_now
            and sum(one.numbers for one in self.counts) == len(self.changed)
        )
