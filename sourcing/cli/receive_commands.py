"""Commands of what comes in and what goes back: receive goods, differences and claims, old parts and returns."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, Xlsx, amount, count, desk, one_word, pairs
from .output import show, write

if TYPE_CHECKING:
    from ..basics.part_number import PartNumber

Order = Annotated[str, typer.Argument(help="Number of the purchase order.")]
Many = list[str] | None


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("receive")(receive)
    app.command("receive-again")(receive_again)
    app.command("differences")(differences)
    app.command("claim")(claim)
    app.command("send-back")(send_back)
    app.command("going-back")(going_back)


def receive(
    number: Order,
    paper: Annotated[str, typer.Option("--paper", help="Number of the supplier's delivery note or invoice.")],
    freight: Annotated[str, typer.Option("--freight", help="Freight charged, in the supplier's currency; 0 if none.")],
    line: Annotated[
        Many, typer.Option("--line", help="Pieces that came for a line, such as 1=2. Left out: all open.")
    ] = None,
    price: Annotated[Many, typer.Option("--price", help="Price charged where it differs, such as 3=12.10.")] = None,
    charged: Annotated[
        Many, typer.Option("--charged", help="Pieces the paper charges where others came, such as 1=4.")
    ] = None,
    damaged: Annotated[Many, typer.Option("--damaged", help="Pieces that can't be used, such as 1=1.")] = None,
    other: Annotated[
        Many, typer.Option("--number", help="Number on the part where it is another, such as 1=CV-B880K.")
    ] = None,
    maker: Annotated[Many, typer.Option("--maker", help="Whose that number is, such as 1=Corrivane.")] = None,
    under_number: Annotated[
        Many, typer.Option("--under-number", help="Pieces that bear that number, such as 1=1. Left out: all.")
    ] = None,
    core: Annotated[Many, typer.Option("--core", help="Charge for old parts if it differs, such as 2=25.00.")] = None,
    charge: Annotated[Many, typer.Option("--charge", help="Other charge on the paper, such as Handling=5.00.")] = None,
    total: Annotated[str, typer.Option("--total", help="What the paper comes to in all, to be checked.")] = "",
    share_by: Annotated[str, typer.Option("--share-by", help="Share the freight by value or by weight.")] = "value",
    dated: Annotated[
        datetime | None, typer.Option("--dated", formats=["%Y-%m-%d"], help="Day on the paper. Left out: today.")
    ] = None,
    rate: Annotated[str, typer.Option("--rate", help="Rate the bank took, if it is not the one in your table.")] = "",
    keep_more: Annotated[bool, typer.Option("--keep-more", help="Keep what is more than ordered, and pay it.")] = False,
    words: Annotated[str, typer.Option("--words", help="What else is to be known of this delivery.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take goods in as they came: pieces, numbers, prices, freight. What differs is listed, and what to do about it."""
    from ..actions.receive import Delivery
    from ..actions.receive import receive as take_in
    from ..basics.value import changed
    from ..documents.receipts import freight_text, received_text

    delivery = Delivery(
        paper=paper,
        freight=amount(freight),
        quantities={count(at): count(pieces) for at, pieces in pairs(line or []).items()},
        prices={count(at): amount(each) for at, each in pairs(price or []).items()},
        charged={count(at): count(pieces) for at, pieces in pairs(charged or []).items()},
        damaged={count(at): count(pieces) for at, pieces in pairs(damaged or []).items()},
        numbers=_numbers(pairs(other or [], "1=CV-B880K"), pairs(maker or [], "1=Corrivane")),
        under_number={count(at): count(pieces) for at, pieces in pairs(under_number or []).items()},
        cores={count(at): amount(each) for at, each in pairs(core or []).items()},
        other_charges={name: amount(each) for name, each in pairs(charge or [], "Handling=5.00").items()},
        supplier_total=amount(total) if total else None,
        freight_by=one_word(share_by, "--share-by", ("value", "weight")),
        dated=dated.date() if dated else None,
        rate=amount(rate) if rate else None,
        keep_more=keep_more,
        words=words,
    )
    done = take_in(desk(database, at, who), number, delivery)
    text = received_text(done.order, done.receipt, done.differences, done.to_do, done.open_lines)
    # Keys of JSON objects are text.
    open_lines = {str(at): pieces for at, pieces in done.open_lines.items()}
    shares = {str(at): share for at, share in done.freight_shares.items()}
    plain = changed(done, open_lines=open_lines, freight_shares=shares)
    show(plain, text + freight_text(done.receipt, done.freight_shares), json)


def receive_again(
    number: Order,
    paper: Annotated[str, typer.Option("--paper", help="Number of the paper that was taken in wrongly.")],
    words: Annotated[str, typer.Option("--words", help="What was wrong.")],
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Set a receipt aside that was taken in wrongly, so that its paper can be taken in again. It stays to be read."""
    from ..actions.receive import receive_again as set_aside

    gone = set_aside(desk(database, at, who), number, paper, words)
    told = (
        f"Paper {gone.paper} of {number} is set aside and no longer counts. Take it in again with 'sourcing receive'."
    )
    show(gone, told, json)


def differences(number: Order, database: Database = DEFAULT_DATABASE, at: At = None, json: Json = False) -> None:
    """List what of an order did not come as ordered, and what of it can be claimed of the supplier."""
    from ..actions.claims import differences_of
    from ..documents.receipts import differences_text

    found = differences_of(desk(database, at, ""), number)
    text = differences_text(found.order, found.supplier_name, found.differences, found.claimed, found.credited)
    show(found, text, json)


def claim(
    number: Order,
    html: Annotated[Path | None, typer.Option("--html", help="Also write the paper to this file.")] = None,
    csv: Annotated[Path | None, typer.Option("--csv", help="Also write its lines to this file.")] = None,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write what the supplier owes for goods that did not come as ordered. Nothing is sent."""
    from ..actions.claims import claim as write_claim
    from ..documents.claims import claim_csv, claim_html, claim_text, claim_xlsx

    made = write_claim(desk(database, at, who), number)
    if html:
        write(html, claim_html(made))
    if csv:
        write(csv, claim_csv(made))
    if xlsx:
        write(xlsx, claim_xlsx(made))
    show(made, claim_text(made), json)


def send_back(
    number: Order,
    line: Annotated[int, typer.Option("--line", help="Line of the order.")],
    core: Annotated[bool, typer.Option("--core/--goods", help="The old part, or the goods themselves.")],
    pieces: Annotated[int, typer.Option("--pieces", help="How many.")] = 1,
    paper: Annotated[str, typer.Option("--paper", help="Number of your paper, or of the supplier's credit note.")] = "",
    credited: Annotated[str, typer.Option("--credited", help="The supplier gave this much back.")] = "",
    fee: Annotated[str, typer.Option("--fee", help="What of it he kept for taking it back.")] = "",
    freight: Annotated[str, typer.Option("--freight", help="What sending it cost.")] = "",
    refused: Annotated[bool, typer.Option("--refused", help="The supplier does not take it.")] = False,
    lost: Annotated[bool, typer.Option("--lost", help="It will not go back; say why with --words.")] = False,
    words: Annotated[str, typer.Option("--words", help="What was said.")] = "",
    take_back: Annotated[
        bool, typer.Option("--take-back", help="Take the last step of it back instead; say why with --words.")
    ] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record that an old part or goods were sent back; and later that they were credited, refused or lost."""
    from ..actions.goods_back import BackStep, LastStep, take_step_back
    from ..actions.goods_back import send_back as record
    from ..basics.order import ReturnStep
    from ..documents.goods_back import taken_back_text, went_back_text

    kind: Literal["core", "goods"] = "core" if core else "goods"
    if take_back:
        if credited or fee or freight or refused or lost or paper:
            raise typer.BadParameter("--take-back goes with --words alone")
        gone = take_step_back(desk(database, at, who), LastStep(order=number, line=line, kind=kind, words=words))
        show(gone, taken_back_text(gone.step, gone.still_open), json)
        return
    ends: dict[ReturnStep, bool] = {"credited": bool(credited), "refused": refused, "lost": lost}
    said = [step for step, is_said in ends.items() if is_said]
    if len(said) > 1:
        raise typer.BadParameter(f"one step at a time: {' or '.join(said)}")
    step: ReturnStep = said[0] if said else "sent"
    back = BackStep(
        line=line,
        kind=kind,
        step=step,
        pieces=pieces,
        paper=paper,
        credit=amount(credited) if credited else None,
        fee=amount(fee) if fee else None,
        freight=amount(freight) if freight else None,
        words=words,
    )
    done = record(desk(database, at, who), number, back)
    show(done, went_back_text(done.step, done.notes, done.still_open), json)


def going_back(
    number: Annotated[str | None, typer.Argument(help="Only this purchase order.")] = None,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """List old parts and goods that wait to be sent back or credited, the earliest last day first."""
    from ..actions.goods_back import going_back as waiting
    from ..documents.goods_back import going_back_text, going_back_xlsx

    here = desk(database, at, "")
    found = waiting(here, number)
    if xlsx:
        write(xlsx, going_back_xlsx(found))
    show(found, going_back_text(found, here.at.date()), json)


def _numbers(numbers: dict[str, str], makers: dict[str, str]) -> dict[int, PartNumber]:
    from ..basics.part_number import PartNumber

    stray = [at for at in makers if at not in numbers]
    if stray:
        raise typer.BadParameter(f"say --number for line {', '.join(stray)} too: a maker alone names no part")
    return {count(at): PartNumber(printed=printed, maker=makers.get(at, "")) for at, printed in numbers.items()}
