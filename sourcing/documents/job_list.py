"""Jobs as text for the shop: the list of them, everything of one, its deposits. For the shop's eyes, not a customer's.

Days are ISO 8601; amounts are before tax where a line stands alone and with tax where it says so.
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from ..basics.bill import DepositKept
from ..basics.deed import Deed
from ..basics.job import Machine
from ..basics.job_state import JobRow, JobState, WholeJob
from ..basics.money import Money
from ..basics.order import PurchaseOrder, ReceiptLine
from .csv_text import csv_text
from .given_away import given_away_lines
from .plain_text import count, document, wrapped


def jobs_text(rows: Sequence[JobRow], left_out: int) -> str:
    """Each job in two lines or more: who and what, where it is since when, who waits for whom and what comes next."""
    lines = [line for one in rows for line in (*_row_lines(one), "")]
    if not rows:
        lines = ["No job is open." if left_out else "No job has been taken in yet."]
    if left_out:
        verb = "is" if left_out == 1 else "are"
        lines.append(f"{count(left_out, 'closed job')} {verb} not shown; --all shows every job.")
    return document(lines)


def job_text(whole: WholeJob, sheets_gone: Sequence[Deed] = ()) -> str:
    """Everything of one job on a page. `sheets_gone`: deeds that took out sheets its quote came from, where it would
    come out otherwise now."""
    job = whole.job
    lines = wrapped(f"Job {job.number}: {job.customer.name}, {job.machine.description}")
    lines += wrapped(_state_words(whole.state), 2)
    parts = (
        ("Customer", _customer(whole)),
        ("Machine", _machine(job.machine)),
        ("What the customer said", [job.complaint]),
        ("Found", _findings(whole)),
        ("Lines", _lines(whole)),
        ("Answers", _answers(whole)),
        ("Papers given", _given(whole)),
        ("Orders", [words for one in whole.orders for words in _order(whole, one)]),
        ("Promised", _promises(whole)),
        ("Deposits", [_deposit(one) for one in whole.deposits]),
        ("Given away: never approved, never billed", given_away_lines(whole.given_away)),
        ("Bill", _bill(whole)),
        ("Look at this", (*whole.alarms, *map(_gone, sheets_gone))),
        ("Done so far", [f"{_moment(one.at)}  {one.who}: {one.deed}, {one.detail}" for one in whole.deeds]),
    )
    for heading, found in parts:
        words = list(found)
        if words:
            lines += ["", heading, *(line for one in words for line in wrapped(one, 2))]
    return document(lines)


def _gone(one: Deed) -> str:
    told = f"{_moment(one.at)}  {one.who} {one.detail}"
    return f"{told}; it would come out otherwise now: write the quote anew before it goes out or is ordered on"


def same_again_text(kept: Sequence[DepositKept], same_today: int) -> str:
    """Where the deposit taken just now is not the first of its day and amount; blank where it is."""
    if same_today < 2:
        return ""
    place = {2: "second", 3: "third"}.get(same_today, f"{same_today}th")
    last = kept[-1]
    words = f"Look at this: it is the {place} of {last.amount} on {last.at.date()}. If it was recorded twice: "
    return document(wrapped(f"{words}sourcing deposit {last.job} --back {last.amount.amount} --how '{last.how}'."))


def deposits_text(
    job: str, kept: Sequence[DepositKept], asked: Money, held: Money, left: Money | None, over: Money | None = None
) -> str:
    """What is asked for the approved lines, what was taken and given back, what is held, what is open or too much."""
    lines = [f"Deposit of job {job}: asked {asked if asked.amount else 'nothing'}, held {held}."]
    lines += [line for one in kept for line in wrapped(_deposit(one), 2)]
    lines += [f"Not taken yet: {left}."] if left is not None else []
    if over is not None:
        more = f"{over} more than is asked" if asked.amount else f"{over}, though none is asked"
        lines += wrapped(
            f"Look at this: held {more}. It comes off the bill; to give it back: sourcing deposit {job} --back."
        )
    return document(lines)


def _row_lines(one: JobRow) -> Iterator[str]:
    yield from wrapped(f"{one.job}  {one.customer}: {one.machine}")
    yield from wrapped(_state_words(one.state), 4)


def _state_words(state: JobState) -> str:
    waits = {"us": "waits for us", "nobody": "nobody waits"}.get(state.waits_for, f"waits for {state.waits_for}")
    beside = "".join(f" {words[:1].upper()}{words[1:]}." for words in state.beside)
    return f"{state.words} since {state.since:%Y-%m-%d}; {waits}: {state.next_step}.{beside}"


def _moment(at: datetime) -> str:
    return f"{at:%Y-%m-%d %H:%M}"


def _customer(whole: WholeJob) -> Iterator[str]:
    customer = whole.job.customer
    reach = (customer.telephone, customer.text_number and f"text to {customer.text_number}", customer.email)
    yield ", ".join(words for words in (customer.name, *customer.address, *reach) if words)
    if customer.may_also_approve:
        yield f"may also say yes: {', '.join(customer.may_also_approve)}"
    if customer.tax_exempt:
        yield f"pays no tax: {customer.exempt_because}"


def _machine(machine: Machine) -> Iterator[str]:
    tag = (machine.maker, machine.model, machine.serial and f"serial {machine.serial}")
    yield ", ".join(words for words in (machine.description, *tag) if words)
    own = (machine.component_maker, machine.component_model, machine.component_serial)
    tag = (*own[:2], machine.component_serial and f"serial {machine.component_serial}")
    if machine.component or any(own):
        words = ", ".join(words for words in tag if words)
        yield f"with {machine.component or 'a component'}{f'; its own tag: {words}' if words else ''}"


def _findings(whole: WholeJob) -> Iterator[str]:
    for one in whole.job.findings:
        seen = ", ".join(str(words) for words in (one.found_by, one.found_on) if words)
        photos = f"; photos {', '.join(one.photos)}" if one.photos else ""
        yield f"{one.what}{f' ({seen})' if seen else ''}{photos}"


def _lines(whole: WholeJob) -> Iterator[str]:
    if whole.quote is None:
        for label, line in whole.job.labelled():
            yield f"{label}  {line.title}: not quoted yet"
        return
    words = dict(whole.words)
    for one in whole.quote.lines:
        number = f", {one.quantity} x {one.number or one.part}" if one.part else ""
        yield f"{one.label}  {one.title}{number}: {one.price} before tax, {words.get(one.label, 'waiting')}"
    quote = whole.quote
    yield f"revision {quote.revision} of {_moment(quote.made_at)}, valid to {quote.valid_to}"
    if whole.approved is not None and whole.approved.amount:
        yield f"approved: {whole.approved} with tax"


def _answers(whole: WholeJob) -> Iterator[str]:
    for one in whole.answers:
        gone = "" if one.holds == "yes" else f" ({one.holds} later)"
        said = f': "{one.words}"' if one.words else ""
        how = f"{one.how}, {one.contact}" if one.contact else one.how
        yield (
            f"{_moment(one.at)}  {one.label} {one.answer}{gone}, {one.amount} before tax, revision {one.revision}: "
            f"{one.who}, {how}, taken down by {one.taken_by}{said}"
        )


def _given(whole: WholeJob) -> Iterator[str]:
    for one in whole.given:
        to = f" to {one.sent_to}" if one.sent_to else ""
        yield f"{_moment(one.at)}  revision {one.revision}, {one.how}{to}, by {one.who}"


def _order(whole: WholeJob, one: PurchaseOrder) -> Iterator[str]:
    expected = f", expected {' to '.join(dict.fromkeys(map(str, one.expected)))}" if one.expected else ""
    yield f"{one.number} to {one.supplier_name}, {one.placed_at:%Y-%m-%d}{expected}"
    deliveries = [receipt for receipt in whole.receipts if receipt.order == one.number]
    for line in one.lines:
        if line.job != whole.job.number:
            continue
        came = [(receipt.paper, part) for receipt in deliveries for part in receipt.lines if part.line == line.line]
        good = sum(part.good for _, part in came)
        yield f"   {line.label}  {line.ordered} x {line.supplier_number}: {good} good{_papers(came)}"


def _papers(came: Iterable[tuple[str, ReceiptLine]]) -> str:
    words = [f"{part.quantity} on paper {paper}{_trouble(part)}" for paper, part in came]
    return f" ({', '.join(words)})" if words else ", nothing came yet"


def _trouble(part: ReceiptLine) -> str:
    damaged = f", {part.damaged} damaged" if part.damaged else ""
    return f"{damaged}{'' if part.came == 'as ordered' else f', {part.came} {part.number}'}"


def _promises(whole: WholeJob) -> Iterator[str]:
    """What was said of several lines of an order in one breath is told once, with the lines."""
    lines: dict[tuple[str, str], list[str]] = {}
    for one in whole.promises:
        days = " to ".join(dict.fromkeys((str(one.earliest), str(one.latest))))
        of = f" of {one.order}" if one.order else ""
        said = (f"{one.kind}{of}", f"{days}, said by {one.said_by} on {_moment(one.said_at)}")
        lines.setdefault(said, []).extend([str(one.line)] if one.line is not None else [])
    for (what, words), named in lines.items():
        which = f" line{'s' if len(named) > 1 else ''} {', '.join(named)}" if named else ""
        yield f"{what}{which}: {words}"


def _deposit(one: DepositKept) -> str:
    deed, amount = ("taken", one.amount) if one.amount.amount >= 0 else ("given back", -one.amount)
    return f"{_moment(one.at)}  {amount} {deed}, {one.how}, by {one.taken_by}{f': {one.words}' if one.words else ''}"


def _bill(whole: WholeJob) -> Iterator[str]:
    if whole.bill:
        yield f"{whole.bill}, due {whole.due}"
    for one in whole.off:
        yield f"less {one.amount} on line {one.label}: {one.words}"


def jobs_csv(rows: Sequence[JobRow]) -> str:
    """The jobs as a table: a row each."""
    head = ("job", "customer", "machine", "where it is", "since", "waits for", "next")
    return csv_text(head, [(one.job, one.customer, one.machine, *_state_cells(one.state)) for one in rows])


def _state_cells(state: JobState) -> tuple[str, ...]:
    return state.words, _moment(state.since), state.waits_for, state.next_step
