"""An offer: what one supplier asks for one part number on one sheet."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .part_number import PartNumber
from .value import Value


class PriceBreak(Value, frozen=True, kw_only=True):
    """From this many pieces on the price is this (per the offer's price basis, in the sheet's currency).

    Whether that holds for all pieces or for those above is said by the supplier's terms (`Terms.breaks`).
    """

    from_quantity: int
    price: Decimal


class LeadTime(Value, frozen=True, kw_only=True):
    """Working days until the goods leave the supplier, as a range, and the words on the sheet.

    `least` and `most` are None where the words say no time ('backorder', 'call'): the date is unknown.
    `leaves_on`: the words name the day itself ('backorder, due 5 December'); then there are no days.
    """

    text: str
    least: int | None = None
    most: int | None = None
    leaves_on: date | None = None


class PlaceStock(Value, frozen=True, kw_only=True):
    """Pieces in one warehouse, named as the sheet names it. None: not stated."""

    place: str
    pieces: int | None


class SheetRow(Value, frozen=True, kw_only=True):
    """Where an offer stands: file name, worksheet (blank in a CSV), row counted from 1 as the file shows it."""

    sheet: int
    file: str
    worksheet: str
    row: int
    sheet_date: date


class Offer(Value, frozen=True, kw_only=True):
    """One row of a sheet as a value.

    Quantities are pieces. `price_basis` is how many pieces a price is for (1, the pack, 100, 1000). Goods are sold
    in whole packs and whole order multiples, at least the minimum. A blank on the sheet is None (no price, stock
    not stated, no core charge stated) and never zero. `breaks` is sorted; its first entry is the net price from
    the smallest quantity. Empty `breaks`: no net price.

    `sold_by` other than piece: every quantity counts feet or metres, so the offer can't be compared with pieces.
    `stock` is the sum over warehouses where the sheet has several (`stock_places`). `weight_kg` is one piece.
    `discount_code` stands for a discount the supplier's own table gives. `origin` is an ISO 3166-1 alpha-2 code,
    `gtin` has a right check digit. `oversize`, `hazardous`, `returnable`: None where the sheet does not say.
    `length_cm`, `width_cm`, `height_cm` are of one piece, packed.
    """

    supplier: str
    supplier_number: str
    currency: str
    source: SheetRow
    maker: str = ""
    maker_number: str = ""
    description: str = ""
    breaks: tuple[PriceBreak, ...] = ()
    list_price: Decimal | None = None
    price_basis: int = 1
    pack: int = 1
    order_multiple: int = 1
    minimum: int = 1
    stock: int | None = None
    lead_time: LeadTime | None = None
    core_charge: Decimal | None = None
    superseded_by: str = ""
    no_longer_available: bool = False
    note: str = ""
    sold_by: Literal["piece", "foot", "metre"] = "piece"
    gtin: str = ""
    discount_code: str = ""
    stock_places: tuple[PlaceStock, ...] = ()
    weight_kg: Decimal | None = None
    oversize: bool | None = None
    hazardous: bool | None = None
    origin: str = ""
    tariff_code: str = ""
    valid_from: date | None = None
    valid_to: date | None = None
    length_cm: Decimal | None = None
    width_cm: Decimal | None = None
    height_cm: Decimal | None = None
    returnable: bool | None = None

    def numbers(self) -> tuple[PartNumber, ...]:
        """The numbers it is sold under: the maker's with its maker first, then the supplier's own.

        Where the sheet has one number column only, that number belongs to the maker named in the row, or to
        nobody known.
        """
        own = PartNumber(printed=self.supplier_number, maker=self.supplier if self.maker_number else self.maker)
        if not self.maker_number:
            return (own,)
        return (PartNumber(printed=self.maker_number, maker=self.maker), own)

    @property
    def shown_number(self) -> str:
        """The supplier's number, with the maker's beside it where it differs."""
        if self.maker_number and self.maker_number != self.supplier_number:
            return f"{self.supplier_number} ({self.maker} {self.maker_number})".replace("( ", "(")
        return self.supplier_number

    @property
    def identity(self) -> tuple[str, str, str, int]:
        """A stable order that does not depend on the order of input: supplier, number, worksheet, row."""
        return self.supplier, self.supplier_number, self.source.worksheet, self.source.row
