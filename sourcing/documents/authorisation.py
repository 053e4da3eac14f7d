"""The record of a customer's answers as text for the shop's file: each occasion with who, when, how, lines, totals."""

from ..basics.approval import AgreedOnAlarm, AnsweredLine, AnswerRecord, Occasion, how_words
from .amounts import date_text, decimal_text, money_text
from .plain_text import document, table, wrapped

HEADER = ("line", "answer", "parts", "labour", "charges", "before tax", "work")
MOST = (4, 10, 12, 12, 12, 12, 36)
RIGHT = frozenset((2, 3, 4, 5))
LAW = (
    "What must be on such a record differs by place and trade; ask what holds for yours. Laid out after the list in "
    "California Code of Regulations, title 16, section 2722 (repair of appliances)."
)


def record_text(record: AnswerRecord) -> str:
    """All occasions in order of time, then what still waits. Amounts of lines are before tax, totals with tax."""
    lines = wrapped(f"{record.shop}: answers to the quotes of job {record.job}")
    lines += wrapped(f"Customer: {record.customer}. Machine: {record.machine}.")
    lines += wrapped(f"May answer: {', '.join(record.may_answer)}.")
    for one in record.occasions:
        lines += ["", *_occasion(one, record.locale)]
    if not record.occasions and not record.agreed:
        lines += ["", "No answer is recorded."]
    for agreed in record.agreed:
        lines += ["", *_agreed(agreed, record.locale)]
    if record.waiting:
        lines += ["", *wrapped(f"Waiting for an answer: {'; '.join(record.waiting)}. No answer is not a yes.")]
    return document([*lines, "", *wrapped(LAW)])


def _occasion(one: Occasion, locale: str) -> list[str]:
    contact = one.contact or ("number not noted" if one.how in ("telephone", "text") else "")
    how = f"{how_words(one.how)} ({contact})" if contact else how_words(one.how)
    lines = wrapped(
        f"{date_text(one.at.date(), locale)}, {one.at:%H:%M}: {one.who} {how}; taken down by {one.taken_by}"
    )
    lines += wrapped(f'Words and conditions: "{one.words}"' if one.words else "Words and conditions: none noted", 2)
    lines += [f"  To revision {one.revision}, paper {one.sha256}"]
    rows = [_line(line, locale) for line in one.lines]
    lines += [f"  {text}" for text in table([HEADER, *rows], MOST, RIGHT)]
    return lines + [f"  {text}" for text in _totals(one, locale)]


def _agreed(one: AgreedOnAlarm, locale: str) -> list[str]:
    """A yes to a later day or another number: kept with the decision, to no paper."""
    contact = one.contact or ("number not noted" if one.how in ("telephone", "text") else "")
    how = f"{how_words(one.how)} ({contact})" if contact else how_words(one.how)
    day = f"{date_text(one.at.date(), locale)}, {one.at:%H:%M}"
    lines = wrapped(f"{day}: {one.who} {how}; taken down by {one.taken_by}, deciding on an alarm")
    lines += wrapped(f'Noted: "{one.words}"', 2) if one.words else []
    return lines + wrapped(f"Yes to revision {one.revision}, line {one.line}: {one.what}", 2)


def _line(line: AnsweredLine, locale: str) -> tuple[str, ...]:
    parts = f"; {line.quantity} x {line.number}" if line.quantity else ""
    hours = f"; {decimal_text(line.hours, locale)} h" if line.hours else ""
    after = {"withdrawn": "; taken back later", "replaced": "; a later answer took its place", "yes": ""}[line.holds]
    money = [money_text(amount, locale) for amount in (line.parts, line.labour, line.charges, line.amount)]
    return line.label, line.answer, *money, f"{line.title}{parts}{hours}{'' if line.answer == 'taken back' else after}"


def _totals(one: Occasion, locale: str) -> list[str]:
    if all(line.answer == "taken back" for line in one.lines):
        return []
    if one.total_after is None:
        return ["Total after this answer: not written down then"]
    found = [f"Total of all approved, with tax: {money_text(one.total_after, locale)}"]
    if one.extra is not None:
        found += [f"Of that extra cost, beyond the work asked for: {money_text(one.extra, locale)}"]
    if one.total_before is not None:
        found += [f"Approved by the answer before: {money_text(one.total_before, locale)}"]
    return found
