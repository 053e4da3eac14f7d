"""Answers to candidates from a workbook that was written out, filled in and read back; told row by row."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from pathlib import Path

from ..basics.judgement import JudgedFile, KeptCandidate
from ..basics.part_number import number_key
from ..basics.problem import Problem, Refused, problem
from ..basics.value import changed
from ..matching.judged_file import AnsweredRow, place_of, read_answers, twice
from ..storage.candidates import kept_candidates
from .answering import Answering, Said, answering, give, outcomes
from .desk import Desk
from .files import read_bytes


def judge_file(desk: Desk, path: Path) -> JudgedFile:
    """The answers of a file of this computer, as `judge_sent`."""
    return judge_sent(desk, read_bytes(path), path.name)


def judge_sent(desk: Desk, content: bytes, name: str) -> JudgedFile:
    """Keep the good answers of the file and say what is wrong with the others, in one transaction.

    A row whose number or part was edited is not taken, nor is a candidate that is answered twice, nor a row of the
    supplier's sheet with a yes to two parts. An answer that holds already is left as it is, so that a file can be read
    in again.
    """
    answered, (blank, noted), problems = read_answers(content, name)
    wrong: dict[int, Problem] = {one.row: said for one, said in twice(answered, name)}
    with desk.writing("judge file") as pen:
        there = kept_candidates(pen.connection, {one.candidate for one in answered})
        at = answering(pen)
        good = [one for one in answered if one.row not in wrong]
        wrong |= {one.row: said for one in good if (said := _edited(at, one, there, name))}
        good = [one for one in good if one.row not in wrong]
        wrong |= _two_parts(good, there, name)
        same = _same_answers(at, good, there)
        given = {}
        for one in (one for one in good if one.row not in wrong and one.row not in same):
            kept = there[one.candidate]
            try:
                given[one.row] = give(at, kept, _said(one)), kept.offer
            except Refused as refusal:
                wrong[one.row] = changed(refusal.problems[0], place=place_of(one, name))
        done = outcomes(at, given)
    every = sorted((*problems, *wrong.values()), key=lambda one: one.place.row or 0 if one.place else 0)
    kept_rows = tuple(changed(one, row=row) for row, one in sorted(done.items()))
    again = len(same - wrong.keys())
    return JudgedFile(file=name, kept=kept_rows, blank=blank, problems=tuple(every), noted=noted, again=again)


def _said(one: AnsweredRow) -> Said:
    return Said(answer=one.answer, standing=one.standing, words=one.words, how="file")


def _same_answers(at: Answering, rows: Sequence[AnsweredRow], there: Mapping[int, KeptCandidate]) -> set[int]:
    """The rows that say what was answered to their candidate before and holds: answer, standing and words."""
    holds = {
        (one.candidate, one.supplier_number, one.part): (one.answer, one.standing, one.words)
        for one in at.before
        if one.in_force
    }
    found = set[int]()
    for one in (one for one in rows if one.candidate in there):
        kept = there[one.candidate]
        said = one.answer, one.standing if one.answer == "yes" else "", one.words.strip()
        if holds.get((one.candidate, kept.offer.supplier_number, kept.part)) == said:
            found.add(one.row)
    return found


def _edited(at: Answering, one: AnsweredRow, there: Mapping[int, KeptCandidate], file: str) -> Problem | None:
    """Why the row can't be what was written out; None where it is."""
    place, kept = place_of(one, file), there.get(one.candidate)
    if kept is None or kept.part not in at.side.families:
        return problem("no-such-candidate", place=place, found=one.candidate)
    for column, ours, theirs in (
        ("number", kept.offer.supplier_number, one.number),
        ("our part", kept.part, one.part),
    ):
        if not _same(ours, theirs):
            where = changed(place, column=column)
            return problem(
                "judged-row-edited", place=where, candidate=one.candidate, kept=ours, column=column, found=theirs
            )
    return None


def _same(ours: str, theirs: str) -> bool:
    """Whether the file still has what was written; characters that can't be shown were written as others."""
    return " ".join(ours.split()) == theirs or (not ours.isprintable() and number_key(ours) == number_key(theirs))


def _two_parts(answered: list[AnsweredRow], there: Mapping[int, KeptCandidate], file: str) -> dict[int, Problem]:
    rows: defaultdict[tuple[int, str, int], list[AnsweredRow]] = defaultdict(list)
    for one in answered:
        if one.answer == "yes":
            source = there[one.candidate].offer.source
            rows[source.sheet, source.worksheet, source.row].append(one)
    wrong: dict[int, Problem] = {}
    for (_, _, row), some in rows.items():
        if len(some) > 1:
            parts = ", ".join(sorted(there[one.candidate].part for one in some))
            wrong |= {
                one.row: problem("row-of-two-parts", place=place_of(one, file), found=row, parts=parts) for one in some
            }
    return wrong
