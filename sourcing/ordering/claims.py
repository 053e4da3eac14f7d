"""What did not come as ordered, told once for each cause, so that what is claimed sums to what was charged too much.

The goods of a receipt line are taken apart in this order: charged more than agreed; charged but not come; damaged;
under a number that does not count; more than ordered. All but the first are valued at the lower of the price charged
and the price agreed, so nothing is claimed twice (common practice, no source).
"""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.landed_cost import CostLine
from ..basics.money import Money, total, zero
from ..basics.order import Difference, DifferenceKind, GoodsBack, PurchaseOrder, Receipt, ReceiptLine
from ..basics.order_now import OrderNow
from ..basics.value import changed
from .order_now import good_pieces, open_pieces
from .receiving import core_for, goods_at

CLAIMED: frozenset[DifferenceKind] = frozenset(("price", "over", "short", "damaged", "number", "freight", "charge"))
"""What a supplier is asked to give back where it cost too much. How a currency moved is nobody's fault; a paper that
comes to more than its lines is a question: the line may only not have been taken down."""
AT_FAULT: frozenset[DifferenceKind] = frozenset(("over", "damaged", "number"))
"""What is credited where the pieces go back."""


def differences(
    now: OrderNow, receipts: Sequence[Receipt], later_charge: Decimal = Decimal(0)
) -> tuple[Difference, ...]:
    """Every difference of the order so far: paper by paper, then what is still open.

    `later_charge`: freight of each later delivery by the supplier's terms, in his currency; more than that is told.
    Of a delivery that was only counted nobody knows yet what was charged, so nothing of it has an amount.
    """
    found: list[Difference] = []
    for at, receipt in enumerate(receipts):
        before = receipts[:at]
        for line in receipt.lines:
            some = line_differences(now, before, receipt, line)
            found += (changed(one, amount=None) for one in some) if receipt.only_counted else some
        found += _freight(now, before, receipt, later_charge)
        found += _of_paper(now, before, receipt)
    return (*found, *_open(now, receipts))


def claimable(some: Sequence[Difference]) -> tuple[Difference, ...]:
    """Those that cost the shop something at the supplier, to be claimed of him."""
    return tuple(one for one in some if one.kind in CLAIMED and one.amount is not None and one.amount.amount > 0)


def without_claim(one: Difference) -> str:
    """Why nothing is claimed for a difference that has an amount; blank where it is claimed, or has none."""
    if one.amount is None or not one.amount.amount or claimable((one,)):
        return ""
    if one.kind == "total":
        return "not claimed, only asked about: a line of the paper may not have been taken down"
    return "not claimed: it is in our favour" if one.amount.amount < 0 else "not claimed, only told"


def claimed(some: Sequence[Difference], currency: str) -> Money:
    """The sum of what can be claimed."""
    return total((one.amount for one in claimable(some) if one.amount is not None), currency)


def credited(some: Sequence[Difference], steps: Sequence[GoodsBack], currency: str) -> Money:
    """What of the claim was given back already for pieces at fault: per line, at most what is claimed for them."""
    amounts: list[Money] = []
    for at in {step.line for step in steps if step.kind == "goods"}:
        given = total((one.credit for one in steps if one.line == at and one.kind == "goods" and one.credit), currency)
        fault = [one.amount for one in claimable(some) if one.line == at and one.kind in AT_FAULT and one.amount]
        amounts.append(min(given, total(fault, currency)))
    return total(amounts, currency)


def over_pieces(now: OrderNow, before: Sequence[Receipt], line: ReceiptLine) -> int:
    """Good pieces of a receipt line that are more than the order wants, what came before counted first."""
    one = now.line(line.line)
    wanted, came = one.pieces if one else 0, good_pieces(before).get(line.line, 0)
    return max(came + line.good - max(wanted, came), 0)


def line_differences(
    now: OrderNow, before: Sequence[Receipt], receipt: Receipt, line: ReceiptLine
) -> Iterator[Difference]:
    """What differs on one line of a receipt, the causes one after the other. `before`: the receipts before it.

    What came beyond what the paper charges is owed nothing, so it claims nothing."""
    one = now.line(line.line)
    if one is None:
        return
    paper, came = line.charged_pieces, line.quantity
    told = _Told(now, receipt, line)
    if line.unit_price != one.unit_price:
        gap = told.at(paper, line.unit_price) - told.at(paper, one.unit_price)
        yield told.one("price", f"charged {line.unit_price} instead of {one.unit_price} on paper {receipt.paper}", gap)
    if paper > came:
        yield told.one("short", f"{paper} charged on paper {receipt.paper}, {came} came", told.between(paper, came))
    elif paper < came:
        yield told.one("short", f"{came} came, only {paper} charged on paper {receipt.paper}", None)
    if line.damaged:
        loss = told.between(came, came - line.damaged)
        yield told.one("damaged", f"{line.damaged} of {came} damaged", loss)
    if line.number:
        right = came - line.damaged
        words = f"{came if line.under_number is None else line.under_number} came as {line.number}"
        yield told.one("number", words, told.between(right, line.good) if line.wrong else None)
    over = over_pieces(now, before, line)
    if over:
        kept = ", kept" if line.keeps_more else ""
        amount = None if line.keeps_more else told.between(line.good, line.good - over)
        yield told.one("over", f"{over} more than ordered{kept}", amount)
    yield from _core(told, line)


class _Told:
    """Makes the differences of one receipt line."""

    def __init__(self, now: OrderNow, receipt: Receipt, line: ReceiptLine) -> None:
        one = now.line(line.line)
        assert one is not None
        self._now, self._receipt, self._line = now, receipt, line
        self._number, self._lower = one.line.supplier_number, min(one.unit_price, line.unit_price)

    def at(self, pieces: int, price: Decimal) -> Money:
        """So many pieces of the line at that price."""
        return goods_at(self._now.order, self._line.line, pieces, price)

    def between(self, more: int, fewer: int) -> Money:
        """What the pieces between two counts were charged: the whole is taken apart, so that the parts sum to it."""
        paper = self._line.charged_pieces
        return self.at(min(more, paper), self._lower) - self.at(min(fewer, paper), self._lower)

    def one(self, kind: DifferenceKind, words: str, amount: Money | None) -> Difference:
        """A difference of this line."""
        return _difference(self._receipt, kind, f"{self._number}: {words}", amount, self._line.line)

    def core(self) -> Money:
        """What the order says for the old parts of the pieces charged."""
        one = self._now.line(self._line.line)
        stated = core_for(one.line, self._line.charged_pieces) if one else None
        return stated or zero(self._now.order.currency)


def _difference(
    receipt: Receipt, kind: DifferenceKind, what: str, amount: Money | None, line: int | None = None
) -> Difference:
    return Difference(order=receipt.order, line=line, what=what, amount=amount, kind=kind, paper=receipt.paper)


def _core(told: _Told, line: ReceiptLine) -> Iterator[Difference]:
    asked, stated = line.core_charge, told.core()
    if asked is not None and asked != stated:
        yield told.one("charge", f"{asked} charged for the old part, the order says {stated}", asked - stated)


def _freight(now: OrderNow, before: Sequence[Receipt], receipt: Receipt, later: Decimal) -> Iterator[Difference]:
    """Freight beyond the order's and beyond the terms' charge for each later delivery, all papers so far together."""
    papers = [one for one in (*before, receipt) if any(line.quantity for line in one.lines)]
    lines = [one for one in now.order.charges if _is_carriage(one)]
    allowed = freight_reckoned(now)
    if allowed is None:
        return
    allowed += Money(amount=later * max(len(papers) - 1, 0), currency=allowed.currency)
    charged = total((one.freight for one in before), allowed.currency)
    excess = _beyond(charged, receipt.freight, allowed, _least_that_shows(now.order))
    if excess is not None:
        rules = "; ".join(one.rule for one in lines if one.name != LATER_FREIGHT) or "none"
        if len(papers) > 1:
            rules += f"; for each later delivery {later} {allowed.currency}" if later else "; no more later"
        words = f"freight {receipt.freight} on paper {receipt.paper}, {excess} more than agreed ({rules})"
        yield _difference(receipt, "freight", words, excess)


def freight_reckoned(now: OrderNow) -> Money | None:
    """The carrier's freight the order reckoned with, later deliveries aside, in the supplier's currency; None: its rate
    is not known."""
    lines = [one for one in now.order.charges if _is_carriage(one) and one.name != LATER_FREIGHT]
    return _in_his_currency(now.order, [one.amount for one in lines])


LATER_FREIGHT = "Freight of later deliveries"
"""The name under which an order's costs hold the freight of deliveries beyond the first."""


def _is_carriage(one: CostLine) -> bool:
    """Whether the supplier charges it as freight: not the shop's own drive. Old papers have no kind but a name."""
    return one.kind == "freight" if one.kind else one.name == "Freight"


def _beyond(charged: Money, more: Money, allowed: Money, least: Decimal) -> Money | None:
    """What of `more` lies beyond the allowed sum when so much is charged already; None: nothing that shows."""
    before = max(charged - allowed, zero(allowed.currency))
    excess = charged + more - allowed - before
    return excess if excess.amount >= least and excess.amount > 0 else None


def _in_his_currency(order: PurchaseOrder, amounts: Sequence[Money]) -> Money | None:
    """Charges kept in the shop's currency, in the supplier's; None where the rate of the order is not known."""
    here = total(amounts, order.landed_total.currency)
    if here.currency == order.currency:
        return here
    if order.rate is None:
        return None
    return Money(amount=here.amount / order.rate, currency=order.currency).rounded()


def _least_that_shows(order: PurchaseOrder) -> Decimal:
    """Less than this (supplier's currency) may come of turning the order's charges into the shop's and back."""
    here, his = (Decimal(1).scaleb(-minor_units(one)) for one in (order.landed_total.currency, order.currency))
    return his if order.rate is None or order.currency == order.landed_total.currency else here / order.rate + his


def _of_paper(now: OrderNow, before: Sequence[Receipt], receipt: Receipt) -> Iterator[Difference]:
    if receipt.only_counted:
        yield _difference(receipt, "", f"paper {receipt.paper}: what it charges is not taken in yet", None)
    yield from _other_charges(now, before, receipt)
    said, comes_to = receipt.supplier_total, paper_total(now, receipt)
    if said is not None and said != comes_to:
        words = f"paper {receipt.paper} says {said} in all, its lines come to {comes_to}"
        yield _difference(receipt, "total", words, said - comes_to)
    rate = now.order.rate
    if rate is not None and receipt.rate != rate:
        moved = f"1 {now.order.currency} is {receipt.rate} {now.order.landed_total.currency} on paper {receipt.paper}"
        yield _difference(receipt, "rate", f"{moved}, {rate} when ordered", None)


def paper_total(now: OrderNow, receipt: Receipt) -> Money:
    """What a paper comes to by what was taken down of it: goods charged, old parts, freight, other charges."""
    amounts = [goods_at(now.order, line.line, line.charged_pieces, line.unit_price) for line in receipt.lines]
    amounts += [line.core_charge for line in receipt.lines if line.core_charge is not None]
    return total((*amounts, receipt.freight, *(one.amount for one in receipt.other_charges)), now.order.currency)


def _other_charges(now: OrderNow, before: Sequence[Receipt], receipt: Receipt) -> Iterator[Difference]:
    """Charges the order does not have, or has lower; each by its name or its kind, all papers so far together."""
    earlier = [one for paper in before for one in paper.other_charges]
    for charge in receipt.other_charges:
        name = charge.name.casefold()
        stated = [one.amount for one in now.order.charges if name in (one.name.casefold(), one.kind)]
        allowed = _in_his_currency(now.order, stated)
        if allowed is None:
            continue
        charged = total((one.amount for one in earlier if one.name.casefold() == name), allowed.currency)
        excess = _beyond(charged, charge.amount, allowed, _least_that_shows(now.order))
        earlier.append(charge)
        if excess is not None:
            words = f"{charge.name} {charge.amount} on paper {receipt.paper}, the order has {allowed}"
            yield _difference(receipt, "charge", words, excess)


def _open(now: OrderNow, receipts: Sequence[Receipt]) -> Iterator[Difference]:
    for at, pieces in open_pieces(now, good_pieces(receipts)).items():
        one = now.line(at)
        if one is not None:
            what = f"{one.line.supplier_number}: {pieces} of {one.pieces} still open"
            yield Difference(order=now.order.number, line=at, what=what, amount=None)
