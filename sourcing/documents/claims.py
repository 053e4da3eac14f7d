"""A claim as the supplier reads it: a page to print, text for a message, CSV and workbook. Nothing of the customer."""

from ..basics.claim import Claim
from ..basics.order import Difference, DifferenceKind
from .csv_text import Cell, csv_text
from .pages import render
from .plain_text import document, wrapped
from .workbook import Table, workbook_bytes

HEADERS = ("Order", "Line", "Your paper", "What", "Amount", "Currency", "Claimed")
ASKED: dict[DifferenceKind, str] = {
    "price": "Prices: please credit the difference to the price agreed.",
    "short": "Missing pieces: please send them, or credit them.",
    "damaged": "Damaged pieces: please credit them, and tell us whether you want them back.",
    "number": "Other numbers: please credit them; they are put aside until you say how they go back.",
    "over": "More than ordered: please credit it; it is put aside until you say how it goes back.",
    "freight": "Freight: please credit what is beyond your terms.",
    "charge": "Charges: please say what they are for, or credit them.",
    "total": "Total: please send a paper whose lines sum to it.",
}
"""What is asked for each kind of difference."""


def claim_html(claim: Claim) -> str:
    """The claim as a paper."""
    return render(
        "claim.html",
        order=claim.order,
        ordered_on=claim.ordered_on,
        supplier=(claim.supplier_name, *claim.supplier_address),
        shop=claim.shop_name,
        shop_lines=_shop(claim),
        made_on=claim.made_at.date(),
        made_by=claim.made_by,
        claimed=str(claim.claimed),
        credited=str(claim.credited) if claim.credited.amount else "",
        still_claimed=str(claim.still_claimed),
        lines=[_shown(one) for one in claim.lines],
        told=[_shown(one) for one in claim.told],
        asked=_asked(claim),
        language="en",
    )


def claim_text(claim: Claim) -> str:
    """The claim as text for a letter or a message."""
    lines = [
        f"Claim on our order {claim.order} of {claim.ordered_on}",
        f"To {claim.supplier_name}",
        *wrapped(f"From {', '.join((claim.shop_name, *_shop(claim)))}; {claim.made_by}, {claim.made_at.date()}"),
        "",
    ]
    for one in claim.lines:
        lines += wrapped(f"- {_where(one)}{one.what}: {one.amount}", 0)
    lines += ["", f"In all: {claim.claimed}"]
    if claim.credited.amount:
        lines += [f"Credited so far: {claim.credited}", f"Still claimed: {claim.still_claimed}"]
    lines.append("")
    lines += [line for words in _asked(claim) for line in wrapped(words)]
    if claim.told:
        lines += ["", "Also, without a claim:"]
        lines += [line for one in claim.told for line in wrapped(f"- {_where(one)}{one.what}{_amount(one)}")]
    return document(lines)


def claim_csv(claim: Claim) -> str:
    """Every difference as a row."""
    return csv_text(HEADERS, _rows(claim))


def claim_xlsx(claim: Claim) -> bytes:
    """The same as a workbook."""
    return workbook_bytes([Table(title="Claim", headers=HEADERS, rows=tuple(map(tuple, _rows(claim))))])


def _rows(claim: Claim) -> list[tuple[Cell, ...]]:
    return [_row(one, claim, "yes") for one in claim.lines] + [_row(one, claim, "no") for one in claim.told]


def _row(one: Difference, claim: Claim, word: str) -> tuple[Cell, ...]:
    amount = one.amount.amount if one.amount is not None else None
    return claim.order, one.line, one.paper, one.what, amount, claim.currency, word


def _shown(one: Difference) -> dict[str, str]:
    return {
        "line": "" if one.line is None else str(one.line),
        "paper": one.paper,
        "what": one.what,
        "amount": "" if one.amount is None else str(one.amount),
    }


def _where(one: Difference) -> str:
    return "" if one.line is None else f"line {one.line}, "


def _amount(one: Difference) -> str:
    return f" ({one.amount})" if one.amount else ""


def _asked(claim: Claim) -> list[str]:
    """What is asked for the kinds there are, each said once."""
    return list(
        dict.fromkeys(ASKED[one.kind] for one in (*claim.lines, *claim.told) if one.kind in ASKED and _is_asked(one))
    )


def _is_asked(one: Difference) -> bool:
    return one.kind == "total" or bool(one.amount and one.amount.amount > 0)


def _shop(claim: Claim) -> tuple[str, ...]:
    return tuple(part for part in (*claim.shop_address, claim.shop_telephone, claim.shop_email) if part)
