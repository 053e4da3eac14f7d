"""Match a whole sheet, column by column: each row automatic, candidate or none, with score and reasons in words."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from types import MappingProxyType

import numpy as np

from ..basics.match import Judged, RowMatch, Tier
from ..basics.part_number import number_key
from .automatic import LITTLE_IN_COMMON, MUCH_NEARER, BorneOnce, against, automatic, rival_by_words
from .dimensions.reading import read_names
from .dimensions.size_check import SizeCheck, check_size
from .held_back import AT, SAME_CODE, SAME_NUMBER, held_back
from .judged_pairs import Answers, examples, refused
from .likeness.compared import shared_codes
from .likeness.prepared import Prepared, prepare
from .likeness.reasons import reasons
from .likeness.said import Said, said
from .likeness.scores import Scored, score
from .numbers.after_spreadsheet import same_after_spreadsheet, spreadsheet_made
from .opposites import excluded
from .words.text import LONGEST_TEXT

LEAST_ASKED = 0.05
"""A likelier pair is worth a person's look; a less likely one is shown, if at all, as none."""

LEAST_SHOWN = 0.0005

NEARER = "another part is nearer by its words"
SHARED = "another part bears this number too"
ONLY_SIZE = "only a standard size agrees, no number: cord, cover and maker may differ"
FAR_BEFORE = "far before the next best"
"""What `likeness.reasons` says where the score leads far."""


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
    doubts = _Doubts((rows.description, parts.description), ready, scored)
    sure, contradicted = automatic(ready, scored, doubts) & ~doubts.nearer, against(scored.facts)
    by_row = _ranked(ready, scored, sure, most)
    for row in range(len(rows.numbers)):
        pairs = by_row.get(row, ())
        if not pairs:
            yield _none(row, rows)
        for rank, at in enumerate(pairs, 1):
            part = int(ready.compared.part[at])
            facts = tuple(scored.facts[at].tolist())
            size = check_size(_designation(parts, part), rows.description[row], *rows.numbers[row])
            why = (one for one in reasons(ready.rows[row], ready.parts[part], facts) if not doubts.denies(at, one))
            yield RowMatch(
                row=row,
                part=codes[part],
                tier=_tier(bool(sure[at]) and not size.vetoes, scored.score[at]),
                score=round(scored.score[at].item(), 4),
                rank=rank,
                reasons=(
                    *why,
                    *((size.words,) if size.vetoes or size.verdict == "same size" else ()),
                    *doubts(at),
                    *((NEARER,) if doubts.nearer[at] and NEARER not in doubts(at) else ()),
                    *_damaged(row, rows),
                ),
                against=size.vetoes or bool(doubts(at)) or bool(contradicted[at] and not _only_words(facts, size)),
                facts=facts,
            )


def _is_size(one: Said, other: Said, text: str) -> bool:
    """Whether all they share of codes is a designation by a standard, which whoever makes the thing uses."""
    _, shared = shared_codes(one, other)
    names = {number_key(name.designation) for name in read_names(text[:LONGEST_TEXT])}
    return bool(shared) and shared <= names


def _only_words(facts: Sequence[int], size: SizeCheck) -> bool:
    """Whether only its words speak against a pair, as those of another language do, while its size agrees."""
    if size.verdict != "same size" or facts[AT["shorter words"]] != LITTLE_IN_COMMON:
        return False
    agreeing = list(facts)
    agreeing[AT["shorter words"]] = 0
    return not against(np.array([agreeing], dtype=np.int8))[0]


class _Doubts:
    """What in words speaks against each pair, worked out when it is asked for: none of it is taken in bulk."""

    def __init__(self, texts: tuple[Sequence[str], Sequence[str]], ready: Prepared, scored: Scored) -> None:
        """`texts`: the descriptions of the rows and of the parts."""
        self._texts, self._ready, self._facts = texts, ready, scored.facts
        self._asked = _asked(ready.rows, ready.parts)
        same = scored.facts[:, AT["number"]] == SAME_NUMBER
        self.nearer = rival_by_words(ready, scored) & same
        self._much_nearer = rival_by_words(ready, scored, MUCH_NEARER) & same
        self._unmistakable = BorneOnce(ready)
        self._known: dict[int, tuple[str, ...]] = {}

    def __call__(self, at: int) -> tuple[str, ...]:
        if at not in self._known:
            self._known[at] = tuple(dict.fromkeys(self._of(at)))
        return self._known[at]

    def _of(self, at: int) -> Iterator[str]:
        row, part = int(self._ready.compared.row[at]), int(self._ready.compared.part[at])
        one, other = self._ready.rows[row], self._ready.parts[part]
        facts = self._facts[at].tolist()
        texts = self._texts[0][row], self._texts[1][part]
        if words := excluded(*texts):
            yield words
        yield from held_back(one, other, texts, facts)
        yield from self._asked.get(row, ())
        if self._much_nearer[at]:
            yield NEARER
        if facts[AT["number"]] == SAME_NUMBER and self._unmistakable.other_parts(row, part):
            yield SHARED
        if SAME_NUMBER < facts[AT["number"]] <= SAME_CODE and _is_size(one, other, texts[0]):
            yield ONLY_SIZE

    def denies(self, at: int, reason: str) -> bool:
        """Whether a reason of the score is not so: nothing is far before another part of the same number."""
        return reason == FAR_BEFORE and SHARED in self(at)


def _designation(parts: Columns, part: int) -> str:
    """What is known of the part's size: its designation, else its words where they name one, else its numbers too."""
    if parts.size:
        return parts.size[part]
    words = parts.description[part]
    return words if read_names(words[:LONGEST_TEXT], certain=True) else " ".join((words, *parts.numbers[part]))


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
    lost = same_after_spreadsheet([key for _, key in places], known)
    # Where both numbers are known it is asked, even in a column that keeps its zeros: sheets are put together.
    both = {known[at]: others for at, others in spreadsheet_made(known).items()}
    asked = ((row, lost.get(at) or both.get(key, ())) for at, (row, key) in enumerate(places))
    return {
        row: (f"a spreadsheet may have made this number of {' or '.join(others)}",) for row, others in asked if others
    }


def _none(row: int, rows: Columns) -> RowMatch:
    why = _damaged(row, rows) or ("like none of the parts",)
    return RowMatch(row=row, part="", tier="none", score=0.0, rank=0, reasons=why)


def _damaged(row: int, rows: Columns) -> tuple[str, ...]:
    if row not in rows.damaged:
        return ()
    hint = f"; it may have been {' or '.join(rows.instead[row])}" if rows.instead.get(row) else ""
    return (f"its number {rows.damaged[row]} is damaged and counts as none{hint}",)
