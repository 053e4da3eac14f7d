"""Match a whole sheet, column by column: each row automatic, candidate or none, with score and reasons in words."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from types import MappingProxyType

import numpy as np

from ..basics.match import Judged, RowMatch, Tier
from .automatic import against, automatic, opposed
from .dimensions.size_check import check_size
from .judged_pairs import Answers, examples, refused
from .likeness.prepared import Prepared, prepare
from .likeness.reasons import reasons
from .likeness.said import Said, said
from .likeness.scores import Scored, score
from .numbers.after_spreadsheet import same_after_spreadsheet

LEAST_ASKED = 0.05
"""A likelier pair is worth a person's look; a less likely one is shown, if at all, as none."""

LEAST_SHOWN = 0.0005


@dataclass(frozen=True)
class Columns:
    """Rows by position. Of each: the keys of its numbers and makers (blank ones left out), description, price.

    Prices are in one currency, per piece; None: not stated. `damaged`: by position, a number as a spreadsheet left it;
    its key is not among the numbers; `instead`: what it may have been, a hint and never a number. `size`: a designation
    by a published standard, where one is known to be meant. `owners`: of each row by number key the keys of its makers,
    where a row bears numbers of several.
    """

    numbers: Sequence[Sequence[str]]
    makers: Sequence[Sequence[str]]
    description: Sequence[str]
    price: Sequence[Decimal | None]
    damaged: Mapping[int, str] = field(default_factory=dict)
    instead: Mapping[int, Sequence[str]] = field(default_factory=dict)
    size: Sequence[str] = ()
    owners: Sequence[Mapping[str, frozenset[str]]] = ()

    def said(self) -> list[Said]:
        """Each row taken apart."""
        texts = list(self.description)
        for at, hints in self.instead.items():
            texts[at] = " ".join((texts[at], *hints))
        found = list(map(said, self.numbers, self.makers, texts, self.price))
        return [one._replace(owners=of) for one, of in zip(found, self.owners, strict=True)] if self.owners else found

    def texts(self) -> list[str]:
        """Description and makers of each row, for the likeness of words."""
        return [" ".join((text, *makers)) for text, makers in zip(self.description, self.makers, strict=True)]


def match_rows(
    rows: Columns,
    parts: Columns,
    codes: Sequence[str],
    judged: Sequence[Judged] = (),
    most: int = 5,
    answers: Answers = MappingProxyType({}),
) -> list[RowMatch]:
    """At most `most` parts of each row, likeliest first; one entry without a part for a row that is like none.

    `codes`: what each part is called in the answer. `judged`: a person's answers to earlier candidates, to learn from;
    `answers`: those about these very rows and parts, to learn from too; a pair refused does not return.
    """
    if not rows.numbers or not parts.numbers:
        return [_none(at, rows) for at in range(len(rows.numbers))]
    ready = prepare(rows.said(), parts.said(), (rows.texts(), parts.texts()))
    scored = score(ready.compared, ready.twins, [*judged, *examples(ready, answers)])
    if answers:
        scored = scored._replace(score=np.where(refused(ready, answers), 0.0, scored.score))
    return list(_matches(rows, parts, codes, (ready, scored), most))


def _matches(
    rows: Columns, parts: Columns, codes: Sequence[str], found: tuple[Prepared, Scored], most: int
) -> Iterator[RowMatch]:
    ready, scored = found
    asked = _asked(ready.rows, ready.parts)
    sure, contradicted = automatic(ready, scored, asked), against(scored.facts)
    by_row = _ranked(ready, scored, sure, most)
    for row in range(len(rows.numbers)):
        pairs = by_row.get(row, ())
        if not pairs:
            yield _none(row, rows)
        for rank, at in enumerate(pairs, 1):
            part = int(ready.compared.part[at])
            facts = tuple(scored.facts[at].tolist())
            why = reasons(ready.rows[row], ready.parts[part], facts)
            size = check_size(_designation(parts, part), rows.description[row], *rows.numbers[row])
            doubts = tuple(asked[row]) if row in asked else ()
            words = opposed(ready.rows[row], ready.parts[part])
            yield RowMatch(
                row=row,
                part=codes[part],
                tier=_tier(bool(sure[at]) and not size.vetoes, scored.score[at]),
                score=round(scored.score[at].item(), 4),
                rank=rank,
                reasons=(
                    *why,
                    *((size.words,) if size.vetoes else ()),
                    *((words,) if words else ()),
                    *doubts,
                    *_damaged(row, rows),
                ),
                against=bool(contradicted[at]) or size.vetoes or bool(words),
                facts=facts,
            )


def _designation(parts: Columns, part: int) -> str:
    """What is known of the part's size: its designation, else all its words and numbers."""
    return parts.size[part] if parts.size else " ".join((parts.description[part], *parts.numbers[part]))


def _tier(sure: bool, score: float) -> Tier:
    return "automatic" if sure else "candidate" if score >= LEAST_ASKED else "none"


def _ranked(ready: Prepared, scored: Scored, sure: np.ndarray, most: int) -> dict[int, list[int]]:
    """Of each row the pairs worth showing: what matches by itself first, then by score, then by the part's place."""
    order = np.lexsort((ready.compared.part, -scored.score, ~sure, ready.compared.row))
    found: dict[int, list[int]] = {}
    for at in order.tolist():
        pairs = found.setdefault(int(ready.compared.row[at]), [])
        if len(pairs) < most and (scored.score[at] >= LEAST_SHOWN or sure[at]):
            pairs.append(at)
    return found


def _asked(rows: Sequence[Said], parts: Sequence[Said]) -> dict[int, tuple[str, ...]]:
    """Rows whose number a spreadsheet may have made of another known one, with what to ask."""
    places = [(at, key) for at, one in enumerate(rows) for key in sorted(one.keys)]
    known = sorted({key for one in parts for key in one.keys})
    found = same_after_spreadsheet([key for _, key in places], known)
    return {
        places[at][0]: (f"a spreadsheet may have made this number of {' or '.join(others)}",)
        for at, others in found.items()
    }


def _none(row: int, rows: Columns) -> RowMatch:
    why = _damaged(row, rows) or ("like none of the parts",)
    return RowMatch(row=row, part="", tier="none", score=0.0, rank=0, reasons=why)


def _damaged(row: int, rows: Columns) -> tuple[str, ...]:
    if row not in rows.damaged:
        return ()
    hint = f"; it may have been {' or '.join(rows.instead[row])}" if rows.instead.get(row) else ""
    return (f"its number {rows.damaged[row]} is damaged and counts as none{hint}",)
