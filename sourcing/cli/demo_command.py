"""`sourcing demo`: the whole way once, with the invented world of demo_prices/, in a new folder."""

from __future__ import annotations

import shutil
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import Json
from .output import show, write

if TYPE_CHECKING:
    from ..actions.desk import Desk
    from ..basics.choice import Candidate
    from ..basics.margin import JobMargin
    from ..basics.money import Money

CLERK, TECHNICIAN = "Oona Brandeth", "Piet Halloway-Rusk"
MORNING = datetime(2026, 1, 13, 10, 15)
TELEPHONE = datetime(2026, 1, 13, 11, 20)
ORDERING = datetime(2026, 1, 13, 11, 40)
DELIVERY = datetime(2026, 1, 15, 9, 30)
COLLECTED = datetime(2026, 1, 16, 16, 45)
NEED_BY = date(2026, 1, 16)
JOB = "2026-0001"
JUDGED, WHY_JUDGED = "DM-33125", "fitted on job 2025-0188, served"


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("demo")(demo)


def demo(
    folder: Annotated[Path, typer.Argument(help="New folder for everything the demo makes.")] = Path("sourcing-demo"),
    json: Json = False,
) -> None:
    """Run the whole way on invented data: sheets, comparison, plan, quote, answers, order, receipt, bill, margins."""
    _new_folder(folder)
    lines = [
        *_morning(folder, _at(folder, MORNING, CLERK)),
        *_customer(_at(folder, TELEPHONE, TECHNICIAN)),
        *_orders(folder, _at(folder, ORDERING, CLERK)),
        f"{_delivery(_at(folder, DELIVERY, CLERK))}; {_bill(folder, _at(folder, COLLECTED, TECHNICIAN))}",
        *_margins(folder, _at(folder, COLLECTED, CLERK)),
        f"Look around: cd {folder}; then sourcing compare NW-40388 --at 2026-01-13T10:15 --need-by {NEED_BY}; sourcing "
        f"identity {JOB} 1; sourcing candidates",
    ]
    show(lines, "\n".join(lines), json)


def _new_folder(folder: Path) -> None:
    from ..basics.problem import refused
    from ..documents.shipped_files import demo_folder

    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise refused("folder-not-empty", found=str(folder))
    try:
        shutil.copytree(demo_folder(), folder / "prices")
    except OSError as error:
        why = error.strerror or "the system refused"
        raise refused("can-not-write", found=str(folder), why=why) from None


def _at(folder: Path, moment: datetime, who: str) -> Desk:
    from ..actions.desk import open_desk

    return open_desk(str(folder / "sourcing.db"), moment, who)


def _morning(folder: Path, desk: Desk) -> list[str]:
    """The clerk's morning: set up, import, judge a row, find out which part it is, compare, plan, quote."""
    imported = [*_import(folder, desk), *_judge(desk)]
    return [*imported, *_identity(folder, desk), *_compare(folder, desk), *_plan(folder, desk), *_quote(folder, desk)]


def _import(folder: Path, desk: Desk) -> list[str]:
    from ..actions.import_sheets import Said, import_sheets
    from ..actions.left_by_import import left_by_import
    from ..actions.setup import set_up

    done = set_up(desk, folder / "prices")
    imported = left_by_import(desk, import_sheets(desk, [folder / "prices"], Said()))
    left = [one.left for one in imported if one.left]
    ours, waiting = sum(one.ours for one in left), sum(one.waiting for one in left)
    offers = sum(one.kept.offers for one in imported)
    structure = sum(one.kept.structure for one in imported)
    problems = sum(one.kept.problem_rows for one in imported)
    return [
        f"Set up Wickenby Yard Machine Repair (invented): {done.suppliers} suppliers, {done.parts} parts, "
        f"{done.statements} statements of equivalence.",
        f"Imported {len(imported)} sheets: {offers} offers + {structure} rows of structure + {problems} problems "
        f"= {offers + structure + problems} rows.",
        f"  On each supplier's newest {ours} rows are our parts by number and table; {waiting} more may be, for a "
        "person to judge.",
    ]


def _judge(desk: Desk) -> list[str]:
    """One row of the sheets that may be a part of ours, and the clerk's yes to it."""
    from ..actions.review import judge
    from ..actions.review_queue import review_queue

    waiting = review_queue(desk, most=None).shown
    one = next(one for one in waiting if one.kept.offer.supplier_number == JUDGED)
    judge(desk, one.kept.candidate, "yes", "fitted", WHY_JUDGED)
    return [
        f"  {desk.who} judges one: {one.supplier_name}'s '{one.kept.offer.description}', {one.kept.offer.maker} "
        f"{JUDGED}, is {one.part.code}: {WHY_JUDGED}."
    ]


def _identity(folder: Path, desk: Desk) -> list[str]:
    """Which part the job's first line needs, before any offer is looked at."""
    from ..actions.identity import show_identity
    from ..actions.jobs import take_in_job

    job = take_in_job(desk, folder / "prices" / "job.toml")
    found = show_identity(desk, job.number, "1").identity
    judged = f"{found.words[:1].upper()}{found.words[1:]}"
    return [
        f"Job {job.number}, {job.customer.name}'s {job.machine.description}: which belt? {judged}; asked of every "
        f"offer: {', '.join(found.asked.words())}.",
        *(f"  Not used, the belt that was on it: {_short(words)}." for words in found.conflicts),
    ]


def _compare(folder: Path, desk: Desk) -> list[str]:
    from ..actions.compare import compare
    from ..basics.choice import RankWishes
    from ..documents.comparison import comparison_text, comparison_xlsx

    found = compare(desk, "NW-40388", 1, RankWishes(need_by=NEED_BY))
    write(folder / "comparison.txt", comparison_text(found))
    write(folder / "comparison.xlsx", comparison_xlsx(found))
    lines = [f"Belt NW-40388 under any number, wanted by {NEED_BY}:"]
    for one in found.ranked:
        priced = one.priced
        late = {True: "in time", False: "late", None: "not dated"}[one.in_time]
        what = f"{priced.supplier_name}, {priced.matched_number}"
        lines.append(f"  {one.place}. {priced.landed.total} at the door, here {priced.arrival.latest}, {late}: {what}")
    lines.append(f"  Why the first: {found.ranked[0].reason}.")
    lines += [_held_back(one) for one in found.candidates if one.vetoed]
    return lines


def _held_back(one: Candidate) -> str:
    short = "; ".join(map(_short, one.reasons))
    return f"  Held back, {one.supplier_name} {one.offer.shown_number}: {short}."


def _short(reason: str) -> str:
    """A reason without the measures in brackets at its end."""
    return reason.split(" (")[0]


def _plan(folder: Path, desk: Desk) -> list[str]:
    from ..actions.plan import plan_job
    from ..documents.plan_paper import plan_text, plan_xlsx

    plan, alone = plan_job(desk, JOB, None), plan_job(desk, JOB, None, only_agreed=True)
    write(folder / "plan.txt", plan_text(plan))
    write(folder / "plan.xlsx", plan_xlsx(plan))
    suppliers = ", ".join(one.landed.supplier_name for one in plan.orders)
    line_by_line = next(one for one in plan.alternatives if one.name.startswith("cheapest"))
    return [
        f"Cheapest orders for the job: agreed parts alone {alone.total}, with all add-ons {plan.total} from "
        f"{suppliers}, here {plan.latest}.",
        f"  {'; '.join(plan.notes)}. Buying the {line_by_line.name} would cost {line_by_line.total}.",
    ]


def _quote(folder: Path, desk: Desk) -> list[str]:
    from ..actions.quotes import write_quote
    from ..documents.quote_message import quote_message
    from ..documents.quote_paper import quote_html, quote_text

    frozen = write_quote(desk, JOB, quote_html).frozen
    quote = frozen.quote
    write(folder / "quote-2026-0001-1.html", frozen.paper)
    write(folder / "quote-2026-0001-1.txt", quote_text(quote))
    write(folder / "quote-2026-0001-1-message.txt", quote_message(quote))
    extras = ", ".join(f"{one.label} {one.price}" for one in quote.add_on_prices)
    return [
        f"Quote, revision {quote.revision}: agreed work {quote.agreed_total.total} with tax; add-ons {extras}; "
        f"everything {quote.everything_total.total}."
    ]


def _customer(desk: Desk) -> list[str]:
    from ..actions.answers import Spoken, record

    spoken = Spoken(
        yes=("agreed", "A", "B"),
        no=("C",),
        who="Maud Tilbrook",
        how="telephone",
        contact="555-0142",
        words="Leave the scraper bar for the spring.",
    )
    standing = record(desk, JOB, spoken)
    return [
        f"Maud Tilbrook by telephone: yes to the agreed work, A and B, no to C; she pays "
        f"{standing.answers.approved_total}, {standing.answers.extra} more than agreed."
    ]


def _orders(folder: Path, desk: Desk) -> list[str]:
    from ..actions.orders import place_orders
    from .order_commands import write_order

    lines = []
    for one in place_orders(desk, [JOB]).orders:
        path = write_order(one, folder)
        items = ", ".join(f"{line.ordered} x {line.supplier_number}" for line in one.lines)
        lines.append(f"{one.number} to {one.supplier_name}: {items}; {one.landed_total} at the door ({path.name}).")
    return lines


def _delivery(desk: Desk) -> str:
    from decimal import Decimal

    from ..actions.receive import Delivery, receive

    # The supplier charges the bearing half a dollar more than agreed, so that there is a difference to see.
    order = _line_of("BRG-IDLER", desk)
    prices = {order[1]: Decimal("12.10")}
    done = receive(desk, order[0], Delivery(paper="DN-88213", freight=Decimal(0), prices=prices))
    differs = "; ".join(f"{one.what}, {one.amount}" for one in done.differences)
    return f"Delivery DN-88213 taken in; differs: {differs}"


def _bill(folder: Path, desk: Desk) -> str:
    """What the bill would be; writing it would close the job, and there is more to look at."""
    from ..actions.bill import look_at_bill
    from ..documents.bill_paper import bill_html

    bill = look_at_bill(desk, JOB)
    write(folder / "bill-look.html", bill_html(bill))
    declined = ", ".join(f"{one.label} as declined, offered at {one.offered_with_tax}" for one in bill.declined)
    return f"the bill would come to {bill.total.total}, and print {declined}."


def _line_of(part: str, desk: Desk) -> tuple[str, int]:
    from ..actions.orders import all_orders

    return next((one.number, line.line) for one in all_orders(desk, JOB) for line in one.lines if line.part == part)


def _margins(folder: Path, desk: Desk) -> list[str]:
    from ..actions.margins import margins
    from ..documents.bridge import bridge_svg
    from ..documents.margins import margins_html, margins_text, margins_xlsx

    found = margins(desk)
    write(folder / "margins.txt", margins_text(found))
    write(folder / "margins.xlsx", margins_xlsx(found))
    write(folder / "margins.html", margins_html(found))
    job = found[0]
    write(folder / "bridge.svg", bridge_svg(job))
    stages = ", ".join(f"{stage} {one.margin_percent} %" for stage, one in job.parts)
    leaks = ", ".join(f"{name} {amount}" for name, amount in _by_name(job)) or "none"
    whole = job.whole[-1][1]
    return [
        f"Margin on parts: {stages}; the whole job earned {whole.earned} (margin {whole.margin_percent} % on price, "
        f"markup {whole.markup_percent} % on cost).",
        f"Leaks: {leaks}.",
        f"All of it is in {folder}: comparison, plan, quote, order, bill-look, margins, sourcing.db, and prices/.",
    ]


def _by_name(job: JobMargin) -> list[tuple[str, Money]]:
    """The leaks of the job, those of one name together."""
    from ..basics.money import total

    names, currency = dict.fromkeys(leak.name for leak in job.leaks), job.whole[0][1].price.currency
    return [(name, total((one.amount for one in job.leaks if one.name == name), currency)) for name in names]
