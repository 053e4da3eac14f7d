"""Small makers of what margins stand on: whole quotes, orders, receipts and bills, read as margins read them.

The whole papers are made first and read from their own JSON, so that a field that is renamed on a paper and not in the
few that margins read is found here.
"""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from sourcing.basics.bill import Bill
from sourcing.basics.job import Customer, Machine
from sourcing.basics.landed_cost import CostKind, CostLine
from sourcing.basics.margin_facts import BillFacts, JobFacts, OrderFacts, Purchase, QuoteFacts, ReceiptFacts
from sourcing.basics.money import Money, total
from sourcing.basics.order import GoodsBack, PurchaseOrder, PurchaseOrderLine, Receipt, ReceiptLine
from sourcing.basics.quote import Behind, DocumentTotal, Quote, QuoteLine
from sourcing.basics.settings import Shop
from sourcing.basics.value import changed, from_json, to_json
from tests.builders import usd

JOB = "2026-0001"
AT = datetime(2026, 3, 2, 10, 15)
SHOP = Shop(name="Wickenby Yard Machine Repair")
MAUD, MACHINE = Customer(name="Maud Tilbrook"), Machine(description="snow thrower")
NOTHING = usd("0.00")


def quoted(label: str, price: str, goods: str, charges: str = "0.00", **fields: Any) -> QuoteLine:
    """A line with one piece of a part, or as many as `quantity` says: `price`, `goods` and `charges` are for all."""
    pieces = fields.get("quantity", 1)
    rule = fields.pop("price_rule", "")
    cost = usd(goods) + usd(charges)
    behind = Behind(
        supplier=fields.pop("supplier", "stonegarth"), supplier_number=f"N-{label}", sheet=1,
        unit_cost=Money(amount=usd(goods).amount / pieces, currency="USD"), cost=cost, surplus_cost=NOTHING,
        price_rule=rule, landed_rule=f"goods {usd(goods).amount}, share of duty and charges {usd(charges).amount}",
        latest=None, freight=fields.pop("freight", None), cost_alone=fields.pop("cost_alone", None),
    )  # fmt: skip
    unit = Money(amount=usd(price).amount / pieces, currency="USD")
    return plain(label, part=f"P{label}", unit_price=unit, parts_price=usd(price), behind=behind,
                 **{"quantity": 1, "number": f"N-{label}", **fields})  # fmt: skip


def freight(label: str, price: str, **fields: Any) -> QuoteLine:
    """A line that bills inbound freight."""
    return plain(label, title="Inbound freight", freight_price=usd(price), **fields)


def plain(label: str, **fields: Any) -> QuoteLine:
    """A line of nothing but what is said."""
    values: dict[str, Any] = dict(
        label=label, kind="agreed" if label.isdigit() else "add-on", title=f"Line {label}", part="", number="",
        description="", quantity=0, unit_price=NOTHING, parts_price=NOTHING, hours=Decimal(0), labour_price=NOTHING,
        freight_price=NOTHING, found="", why="", if_declined="", behind=None,
    )  # fmt: skip
    return QuoteLine(**{**values, **fields})


def document(lines: Sequence[QuoteLine]) -> DocumentTotal:
    """What lines come to without fees and taxes."""
    before_tax = total((line.price for line in lines), "USD")
    labels = tuple(line.label for line in lines)
    return DocumentTotal(labels=labels, sums=(), before_tax=before_tax, taxes=(), total=before_tax)


def quote(*lines: QuoteLine, job: str = JOB) -> Quote:
    """A quote of these lines."""
    return Quote(
        job=job, revision=1, shop=SHOP, customer=MAUD, machine=MACHINE, complaint="", made_at=AT,
        valid_to=date(2026, 3, 9), locale="en_US", currency="USD", lines=lines,
        agreed_total=document([line for line in lines if line.kind == "agreed"]), everything_total=document(lines),
        add_on_prices=(), arrives=None, terms_text=(), cautions=(), cautions_dated=None, warnings=(),
    )  # fmt: skip


def bill(of: Quote, *lines: QuoteLine) -> BillFacts:
    """The bill of a quote's job with these lines, as margins read it."""
    return from_json(to_json(whole_bill(of, *lines)), BillFacts)


def whole_bill(of: Quote, *lines: QuoteLine) -> Bill:
    """The bill of a quote's job with these lines."""
    return Bill(
        number="B-2026-0001", job=of.job, revision=of.revision, shop=SHOP, customer=MAUD, machine=MACHINE, complaint="",
        made_at=AT, made_by="Oona Brandeth", locale="en_US", currency="USD",
        lines=tuple(changed(line, behind=None) for line in lines), approvals=(), total=document(lines), declined=(),
        deposits=(), due=document(lines).total,
    )  # fmt: skip


def facts(of: Quote, approved: Sequence[str] | None = None, billed: BillFacts | None = None, day: str = "2026-03-02",
          no: Sequence[str] = ()) -> JobFacts:  # fmt: skip
    """A job whose customer said yes to `approved` (None: everything) on that day."""
    labels = [line.label for line in of.lines] if approved is None else list(approved)
    yes = [line for line in of.lines if line.label in labels]
    return JobFacts(
        quote=from_json(to_json(of), QuoteFacts),
        approved={label: date.fromisoformat(day) for label in labels},
        answers={**dict.fromkeys(labels, "approved"), **dict.fromkeys(no, "declined")},
        bill=billed,
        before_tax=document(yes).before_tax.amount,
    )


def bought(
    line: int, label: str, goods: str, charges: str = "0.00", needed: int = 1, ordered: int = 1, **fields: Any
) -> PurchaseOrderLine:
    """A line of an order in the shop's currency: `goods` and `charges` are for all pieces ordered."""
    surplus = (usd(goods) * (ordered - needed)).amount / ordered
    values: dict[str, Any] = dict(
        line=line, job=JOB, revision=1, label=label, part=f"P{label}", supplier_number=f"N-{label}", maker_number="",
        description=f"Part of line {label}", needed=needed, ordered=ordered, pack=1, price_basis=1,
        unit_price=usd(goods).amount / ordered, goods=usd(goods), goods_cost=usd(goods),
        landed=usd(goods) + usd(charges), surplus_cost=Money(amount=surplus, currency="USD").rounded(),
    )  # fmt: skip
    return PurchaseOrderLine(**{**values, **fields})


def charge(kind: CostKind, amount: str, name: str = "") -> CostLine:
    """A charge of an order."""
    return CostLine(name=name or kind.capitalize(), amount=usd(amount), rule="", kind=kind)


def order(*lines: PurchaseOrderLine, charges: Sequence[CostLine] = (), **fields: Any) -> PurchaseOrder:
    """An order at Stonegarth, in the shop's currency unless said."""
    values: dict[str, Any] = dict(
        number="PO-2026-0001", supplier="stonegarth", supplier_name="Stonegarth Trade Parts", supplier_address=(),
        shop_name="", ship_to=(), currency="USD", placed_at=AT, placed_by="Oona Brandeth", need_by=None, expected=None,
        lines=lines, charges=tuple(charges), goods_total=total((one.goods_cost for one in lines), "USD"),
        landed_total=total((one.landed for one in lines), "USD"), rate=Decimal(1),
    )  # fmt: skip
    return PurchaseOrder(**{**values, **fields})


def receipt(of: PurchaseOrder, lines: Sequence[ReceiptLine] | None = None, freight: str = "0.00",
            **fields: Any) -> Receipt:  # fmt: skip
    """All of an order come as ordered, or these lines."""
    came = [ReceiptLine(line=one.line, quantity=one.ordered, unit_price=one.unit_price) for one in of.lines]
    values: dict[str, Any] = dict(
        order=of.number, paper="DN-1", at=AT, received_by="Piet Halloway-Rusk",
        lines=tuple(came if lines is None else lines),
        freight=Money(amount=Decimal(freight), currency=of.currency), rate=Decimal(1),
    )  # fmt: skip
    return Receipt(**{**values, **fields})


def purchase(of: PurchaseOrder, *came: Receipt, back: Sequence[GoodsBack] = (),
             pieces: Mapping[int, int] | None = None) -> Purchase:  # fmt: skip
    """An order with what followed it."""
    goods = {}
    for line in of.lines:
        if pieces and line.line in pieces:
            goods[line.line] = line.goods.amount * pieces[line.line] / line.ordered
    return Purchase(
        order=from_json(to_json(of), OrderFacts),
        receipts=tuple(from_json(to_json(one), ReceiptFacts) for one in came),
        back=tuple(back),
        pieces=pieces or {},
        goods=goods,
    )


def went_back(step: str, pieces: int = 1, kind: str = "goods", line: int = 1, **fields: Any) -> GoodsBack:
    """A step of something going back."""
    values: dict[str, Any] = dict(
        order="PO-2026-0001", line=line, kind=kind, step=step, pieces=pieces, at=AT, who="Oona Brandeth"
    )
    return GoodsBack(**{**values, **fields})
