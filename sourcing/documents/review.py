"""Candidates that wait for a person, her answers and what follows from them, as text and as a workbook to fill in."""

from collections.abc import Sequence
from decimal import Decimal

from ..basics.judgement import (
    AnswerKept,
    ByScore,
    JudgedFile,
    Judgement,
    KeptCandidate,
    ReviewQueue,
    SheetLookedThrough,
    Waiting,
)
from ..basics.kept_number_rule import KeptNumberRule, NumberRules
from ..basics.part_number import PartNumber
from .csv_text import Cell
from .plain_text import count, document, shown, wrapped, yes_no
from .review_reasons import for_and_against
from .side_by_side import side_by_side
from .workbook import Table, workbook_bytes

HEADER = (
    "candidate", "answer", "words", "supplier", "number", "maker", "maker's number", "description", "our part", "name",
    "size", "score", "place", "against", "reasons", "price", "worth", "currency", "asked", "sheet of", "row",
)  # fmt: skip
"""Columns of the workbook. 'answer' and 'words' are to be filled in; 'candidate', 'number', 'our part' are checked."""

LOOK_AGAIN = "sourcing candidates --again"

LEFT = 15
"""Columns of the words at the left of a candidate's lines."""


def queue_text(queue: ReviewQueue) -> str:
    """The rows that wait, most worth first, each with its candidates, likeliest first."""
    whose = f"of {queue.supplier}" if queue.supplier else "of all suppliers"
    rows = len({_row_of(one.kept) for one in queue.shown})
    if not queue.rows:
        lines = [f"No candidate {whose} waits for an answer."]
    else:
        most = f"; the {count(rows, 'row')} worth most" if rows < queue.rows else ""
        likely = f", {queue.likely:,} of the rows likely ('--at-least 0.5')" if 0 < queue.likely < queue.rows else ""
        lines = wrapped(
            f"Candidates {whose}: {count(queue.rows, 'row')} and {count(queue.candidates, 'candidate')} wait{likely}"
            f"{most}. None is ordered by itself."
        )
    for one in queue.shown:
        lines += ["", *_candidate(one)]
    if queue.not_looked_through:
        sheets = ", ".join(map(str, queue.not_looked_through))
        lines += ["", *wrapped(f"Not looked through yet: sheet {sheets}; 'sourcing candidates --again' does it.")]
    if queue.table_changed_since:
        sheets = ", ".join(map(str, queue.table_changed_since))
        words = "Our parts, statements, makers' names or number rules changed after these sheets were looked through"
        lines += ["", *wrapped(f"{words}: {sheets}; '{LOOK_AGAIN}' looks again.")]
    return document(lines)


def queue_xlsx(queue: ReviewQueue) -> bytes:
    """The rows shown, as a workbook whose column 'answer' a person fills in: yes fitted, yes, no, or nothing."""
    return candidates_xlsx(queue.shown)


def candidates_xlsx(every: Sequence[Waiting]) -> bytes:
    """The same of these candidates."""
    rows = tuple(_cells(one) for one in every)
    return workbook_bytes([Table(title="Candidates", headers=HEADER, rows=rows)])


def looked_through_text(done: Sequence[SheetLookedThrough]) -> str:
    """What looking through each sheet gave; every row is accounted for."""
    lines = []
    for one in done:
        lines += wrapped(
            f"{one.supplier}, sheet {one.sheet} ({one.file}) of {one.sheet_date}: {count(one.rows, 'row')}, "
            f"{one.automatic:,} automatic, {one.with_candidates:,} with candidates, {one.like_none:,} like none."
        )
    return document(lines)


def answer_text(one: AnswerKept) -> str:
    """What follows from one answer."""
    return document(wrapped(f"{one.told}."))


def judged_file_text(done: JudgedFile) -> str:
    """Row by row: what is kept with what follows, then what could not be taken and why."""
    lines = wrapped(
        f"{done.file}: {count(len(done.kept), 'answer')} kept, {count(len(done.problems), 'row')} not taken, "
        f"{count(done.blank, 'row')} without an answer{_beside_kept(done)}."
    )
    lines += [line for one in done.kept for line in wrapped(f"row {one.row}: {one.told}.", 2)]
    if done.problems:
        lines += ["", "Not taken"]
        lines += [line for one in done.problems for line in wrapped(one.sentence(), 2)]
    return document(lines)


def _beside_kept(done: JudgedFile) -> str:
    noted = f" ({done.noted:,} of them with words, which are not kept)" if done.noted else ""
    again = f", {count(done.again, 'row')} answered so before" if done.again else ""
    return noted + again


def by_score_text(found: ByScore) -> str:
    """What would be accepted, or was, and what was left out and why."""
    number = len(found.done) if found.done else len(found.shown)
    said = f"{count(number, 'candidate')} of {found.supplier} with a score of {found.least} or more, nothing against"
    if found.done:
        lines = wrapped(f"Accepted as unchecked: {said}.")
        lines += [line for one in found.done for line in wrapped(f"{one.judgement.candidate}: {one.told}.", 2)]
    else:
        lines = wrapped(f"{said[0].upper()}{said[1:]}. Nothing is kept yet.")
        lines += [line for one in found.shown for line in wrapped(short_words(one), 2)]
        if number:
            lines += wrapped(f"To accept them all as unchecked, say the same with --accept {number}.")
    if found.left_out:
        lines += ["", "Left out", *(line for words in found.left_out for line in wrapped(words, 2))]
    return document(lines)


def judgements_text(every: Sequence[Judgement]) -> str:
    """Every answer, oldest first, those taken back among them."""
    lines = [line for one in every for line in wrapped(judgement_words(one))]
    return document(lines or ["Nobody has judged a candidate yet."])


def number_rules_text(found: NumberRules) -> str:
    """Rules that hold, rules withdrawn, and what is proposed with how to confirm it."""
    lines = [line for one in found.kept for line in wrapped(rule_words(one))]
    if found.proposed:
        lines += [*([""] if lines else []), "Proposed; nothing is done before somebody confirms it"]
    for one in found.proposed:
        lines += wrapped(f"{one.words}.", 2)
        lines += [f"    sourcing number-rules confirm {one.rule.supplier} --{one.rule.kind}='{one.rule.text}'"]
    return document(lines or ["No number rule is kept, and the sheets suggest none."])


def rule_words(one: KeptNumberRule) -> str:
    """One rule with who confirmed it on what grounds, and who withdrew it."""
    words = f"Rule {one.number}: {one.rule}. {one.confirmed_by} confirmed it on {one.confirmed_at:%Y-%m-%d}: "
    words += f"{one.grounds}."
    if not one.holds:
        words += f" Withdrawn on {one.withdrawn_at:%Y-%m-%d} by {one.withdrawn_by}: {one.withdrawn_why}."
    return words


def rule_changed_text(one: KeptNumberRule) -> str:
    """One rule that was just confirmed or withdrawn, and what to do for it to count."""
    return f"{rule_words(one)}\nSay '{LOOK_AGAIN}': what waits on the sheets was found before."


def _candidate(one: Waiting) -> list[str]:
    kept, source = one.kept, one.kept.offer.source
    lines = [f"Candidate {kept.candidate}: score {kept.score:.2f}, place {kept.rank} of its row"]
    lines += _beside("worth", worth_words(one))
    lines += _beside("from", f"{one.supplier_name}, sheet of {source.sheet_date}, row {source.row}")
    lines += _beside("its row", _named(kept))
    part = ", ".join(text for text in (one.part.code, one.part.name, one.part.size) if text)
    lines += _beside("our part", part)
    lines += _numbers(one.near) if one.near else []
    return lines + _reasons(kept)


def _reasons(kept: KeptCandidate) -> list[str]:
    speaks_for, speaks_against = for_and_against(kept.reasons, kept.against)
    lines = _beside("speaks for", speaks_for) if speaks_for else []
    return lines + (_beside("speaks against", speaks_against) if speaks_against else [])


def _numbers(near: tuple[PartNumber, PartNumber]) -> list[str]:
    above, below, marks = side_by_side(*(shown(one.printed) for one in near))
    width = max(len(above), len(below)) + 2
    lines = [
        f"  {title:<{LEFT}}{text:<{width}}{maker}"
        for title, text, maker in (
            ("its number", above, near[0].maker or "no maker named"),
            ("ours", below, near[1].maker or "no maker named"),
        )
    ]
    return [*lines, *([f"  {'differs':<{LEFT}}{marks}"] if marks else [])]


def _beside(title: str, text: str) -> list[str]:
    first, *more = wrapped(text, width=96 - LEFT)
    return [f"  {title:<{LEFT}}{first}", *(f"  {'':<{LEFT}}{line.strip()}" for line in more)]


def worth_words(one: Waiting) -> str:
    """What the row is worth to be judged, and why."""
    times = f"asked for {count(one.asked, 'time')}" if one.asked else "never asked for, which counts as a tenth"
    if one.price is None:
        return f"not known, no price in the shop's currency; {times}"
    return f"{one.worth}: {one.price} a piece, {times}"


def short_words(one: Waiting) -> str:
    """The candidate on one line: its number, its score, the row, and the part it may be."""
    return f"{one.kept.candidate}: score {one.kept.score:.2f}, {_named(one.kept)} is {one.part.code}, {one.part.name}"


def _named(kept: KeptCandidate) -> str:
    """The row's numbers, maker and description; a maker's number with its maker stands in the first already."""
    offer = kept.offer
    maker = offer.maker if offer.maker_number in ("", offer.supplier_number) else ""
    return ", ".join(text for text in (offer.shown_number, maker, offer.description) if text)


def judgement_words(one: Judgement) -> str:
    """One answer, and whether it was taken back."""
    standing = f", {one.standing}, statement {one.statement}" if one.answer == "yes" else ""
    number = " ".join(text for text in (one.supplier_number, one.maker and f"({one.maker})") if text)
    words = f": {one.words}" if one.words else ""
    said = (
        f"Candidate {one.candidate}, {one.supplier} {number}: {one.answer} to {one.part}{standing}, by {one.who} on "
        f"{one.at:%Y-%m-%d}{' by its score' if one.how == 'by score' else ''}{words}."
    )
    if one.taken_back_at is None:
        return said
    return f"{said} Taken back on {one.taken_back_at:%Y-%m-%d} by {one.taken_back_by}: {one.taken_back_why}."


def _row_of(kept: KeptCandidate) -> tuple[int, str, int]:
    return kept.offer.source.sheet, kept.offer.source.worksheet, kept.offer.source.row


def _cells(one: Waiting) -> tuple[Cell, ...]:
    kept, offer = one.kept, one.kept.offer
    return (
        kept.candidate,
        None,
        None,
        one.supplier_name,
        offer.supplier_number,
        offer.maker,
        offer.maker_number,
        offer.description,
        one.part.code,
        one.part.name,
        one.part.size,
        Decimal(f"{kept.score:.4f}"),
        kept.rank,
        yes_no(kept.against),
        "; ".join(kept.reasons),
        one.price.amount if one.price else None,
        one.worth.amount if one.worth else None,
        one.price.currency if one.price else "",
        one.asked,
        offer.source.sheet_date,
        offer.source.row,
    )
