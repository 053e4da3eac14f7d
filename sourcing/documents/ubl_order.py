"""The purchase order as an Order document of OASIS UBL 2.1 (also ISO/IEC 19845), which a supplier's system can read.

Elements stand in the order of the published schema UBL-Order-2.1.xsd; a test holds a document against that schema. On
it stands what is on the order's paper: nothing of the customer, the job, our own part codes, costs or prices.

Quantities are pieces: code H87 of UN/ECE Recommendation 20, 'piece', "a single item, article or exemplar". C62, 'one',
is a bare number there and says nothing of pieces. Packs are told by PackQuantity and PackSizeNumeric.

Totals: a line is its price times pieces by the price's base quantity, rounded once, less the line's discount; the sum
of lines plus core charges is what is payable. Freight and tax are left to the supplier's terms and are in no sum; the
document says so.
"""

import xml.etree.ElementTree as ET
from decimal import Decimal

from ..basics.money import Money, total
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from .plain_text import shown

ORDER = "urn:oasis:names:specification:ubl:schema:xsd:Order-2"
CAC = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2"
CBC = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2"
PIECE, PACKS = "H87", "NMP"
"""Codes of UN/ECE Recommendation 20: piece, number of packs."""
FREIGHT_NOTE = "Freight, fees and tax by your terms are in no sum of this order."


def order_ubl(order: PurchaseOrder) -> bytes:
    """The order as it was placed, as UTF-8 XML. Text that XML can't hold is shown as in all papers."""
    for prefix, name in (("", ORDER), ("cac", CAC), ("cbc", CBC)):
        ET.register_namespace(prefix, name)
    root = ET.Element(f"{{{ORDER}}}Order")
    _head(root, order)
    _party(_part(root, "BuyerCustomerParty"), order.shop_name, order.ship_to, order)
    _party(_part(root, "SellerSupplierParty"), order.supplier_name, order.supplier_address, None)
    _delivery(root, order)
    cores = [line.core_charge for line in order.lines if line.core_charge is not None and line.core_charge.amount]
    core = total(cores, order.currency)
    if cores:
        _allowance(root, core, charge=True, why="Core charges, to be credited when the old parts come back")
    _totals(root, order, core)
    for line in order.lines:
        _order_line(root, line, order)
    ET.indent(root)
    body: str = ET.tostring(root, encoding="unicode")
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{body}\n'.encode()


def _head(root: ET.Element, order: PurchaseOrder) -> None:
    _text(root, "UBLVersionID", "2.1")
    _text(root, "ID", order.number)
    _text(root, "IssueDate", order.placed_at.date().isoformat())
    _text(root, "IssueTime", order.placed_at.time().replace(microsecond=0).isoformat())
    for note in (order.supplier_note, FREIGHT_NOTE):
        if note:
            _text(root, "Note", note)
    _text(root, "DocumentCurrencyCode", order.currency)
    _text(root, "LineCountNumeric", str(len(order.lines)))


def _party(at: ET.Element, name: str, address: tuple[str, ...], by: PurchaseOrder | None) -> None:
    """A party with its address in lines as they are written; `by`: the shop's own, with whom to ask."""
    party = _part(at, "Party")
    _text(_part(party, "PartyName"), "Name", name)
    _address(party, "PostalAddress", address)
    if by is not None:
        contact = _part(party, "Contact")
        for element, words in (
            ("Name", by.placed_by),
            ("Telephone", by.shop_telephone),
            ("ElectronicMail", by.shop_email),
        ):
            if words:
                _text(contact, element, words)


def _address(at: ET.Element, name: str, lines: tuple[str, ...]) -> None:
    if lines:
        address = _part(at, name)
        for words in lines:
            _text(_part(address, "AddressLine"), "Line", words)


def _delivery(root: ET.Element, order: PurchaseOrder) -> None:
    if not order.ship_to and order.need_by is None:
        return
    delivery = _part(root, "Delivery")
    _address(delivery, "DeliveryAddress", order.ship_to)
    if order.need_by is not None:
        _text(_part(delivery, "RequestedDeliveryPeriod"), "EndDate", order.need_by.isoformat())


def _totals(root: ET.Element, order: PurchaseOrder, core: Money) -> None:
    goods = total((line.goods for line in order.lines), order.currency)
    totals = _part(root, "AnticipatedMonetaryTotal")
    _amount(totals, "LineExtensionAmount", goods)
    if core.amount:
        _amount(totals, "ChargeTotalAmount", core)
    _amount(totals, "PayableAmount", goods + core)


def _order_line(root: ET.Element, line: PurchaseOrderLine, order: PurchaseOrder) -> None:
    item = _part(_part(root, "OrderLine"), "LineItem")
    _text(item, "ID", str(line.line))
    _pieces(item, "Quantity", line.ordered)
    _amount(item, "LineExtensionAmount", line.goods)
    full = _full(line, order.currency)
    if full.amount != line.goods.amount:
        _allowance(item, full - line.goods, charge=False, why="Discount by your terms", base=full)
    price = _part(item, "Price")
    _amount(price, "PriceAmount", Money(amount=line.unit_price, currency=order.currency))
    _pieces(price, "BaseQuantity", line.price_basis)
    _item(item, line)


def _item(at: ET.Element, line: PurchaseOrderLine) -> None:
    item = _part(at, "Item")
    if line.description:
        _text(item, "Description", line.description)
    if line.pack > 1:
        if not line.ordered % line.pack:
            _text(item, "PackQuantity", str(line.ordered // line.pack)).set("unitCode", PACKS)
        _text(item, "PackSizeNumeric", str(line.pack))
    _text(item, "Name", line.description or line.supplier_number)
    _text(_part(item, "SellersItemIdentification"), "ID", line.supplier_number)
    if line.maker_number:
        _text(_part(item, "ManufacturersItemIdentification"), "ID", line.maker_number)


def _full(line: PurchaseOrderLine, currency: str) -> Money:
    return Money(amount=line.unit_price * line.ordered / Decimal(line.price_basis), currency=currency).rounded()


def _allowance(at: ET.Element, amount: Money, charge: bool, why: str, base: Money | None = None) -> None:
    """A discount or a charge. One that would be below zero is told as the other kind, for amounts here are positive."""
    below = amount.amount < 0
    part = _part(at, "AllowanceCharge")
    _text(part, "ChargeIndicator", "true" if charge is not below else "false")
    _text(part, "AllowanceChargeReason", why)
    _amount(part, "Amount", -amount if below else amount)
    if base is not None:
        _amount(part, "BaseAmount", base)


def _part(at: ET.Element, name: str) -> ET.Element:
    return ET.SubElement(at, f"{{{CAC}}}{name}")


def _text(at: ET.Element, name: str, words: str) -> ET.Element:
    element = ET.SubElement(at, f"{{{CBC}}}{name}")
    element.text = shown(words)
    return element


def _pieces(at: ET.Element, name: str, pieces: int) -> None:
    _text(at, name, str(pieces)).set("unitCode", PIECE)


def _amount(at: ET.Element, name: str, amount: Money) -> None:
    _text(at, name, f"{amount.amount:f}").set("currencyID", amount.currency)
