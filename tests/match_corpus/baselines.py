"""Two plain ways of matching, to say how hard a corpus is: likeness of descriptions, and numbers equal or contained.

Token-set ratio is rapidfuzz.fuzz.token_set_ratio over default_process, the best part for each row.
"""

import re
from collections import defaultdict
from collections.abc import Callable, Sequence

import numpy as np
from rapidfuzz import fuzz, process, utils

from tests.match_corpus.judge import Line
from tests.match_corpus.writing import Listing

MIXED = re.compile(r"\d.*[A-Z]|[A-Z].*\d")
SIZE = re.compile(r"\d+[A-Z]+$")


def token_set(sheet: Sequence[Listing], parts: Sequence[Listing], rows: Sequence[int]) -> list[Line]:
    """The best part for each of these rows by token-set ratio of the descriptions."""
    choices = [utils.default_process(one.description) for one in parts]
    lines: list[Line] = []
    for start in range(0, len(rows), 200):
        block = rows[start : start + 200]
        queries = [utils.default_process(sheet[row].description) for row in block]
        scores = process.cdist(queries, choices, scorer=fuzz.token_set_ratio, dtype=np.uint8, workers=2)
        best = scores.argmax(axis=1)
        lines += [
            Line(row, int(at), "candidate", int(scores[i, at]) / 100, 1)
            for i, (row, at) in enumerate(zip(block, best, strict=True))
        ]
    return lines


def _key(text: str) -> str:
    return re.sub(r"[\W_]", "", text).upper()


def _numbers(one: Listing) -> set[str]:
    """The number column's key, where it is no single digit or word."""
    key = _key(one.number)
    return {key} if len(key) >= 4 and any(sign.isdigit() for sign in key) else set()


def _words(one: Listing) -> set[str]:
    """Words of the description that mix letters and digits and are no size: 'DX4270B', not '24in'."""
    words = {_key(word) for word in one.description.split()}
    return {word for word in words if len(word) >= 5 and word.isascii() and MIXED.search(word) and not SIZE.match(word)}


def _runs(one: Listing) -> set[str]:
    """One to three neighbouring words of the description, in which a number may stand."""
    words = [word for word in map(_key, one.description.split()) if word]
    return {"".join(words[at : at + size]) for size in (1, 2, 3) for at in range(len(words) - size + 1)}


def _places(parts: Sequence[Listing], codes: Callable[[Listing], set[str]]) -> dict[str, list[int]]:
    places: dict[str, list[int]] = defaultdict(list)
    for at, one in enumerate(parts):
        for code in codes(one):
            places[code].append(at)
    return places


def by_number(sheet: Sequence[Listing], parts: Sequence[Listing], rows: Sequence[int]) -> list[Line]:
    """The part whose number equals the row's or stands in its description, or the other way round, or shares a word.

    A code that more than three parts have says nothing. The longest code wins, ties go to the better token-set ratio.
    """
    numbers, words, runs = (_places(parts, codes) for codes in (_numbers, _words, _runs))
    lines = []
    for row in rows:
        one = sheet[row]
        ways = ((_numbers(one), numbers), (_numbers(one), runs), (_runs(one), numbers), (_words(one), words))
        found: dict[int, int] = {}
        for codes, places in ways:
            for code in codes:
                for at in places.get(code, ()) if len(places.get(code, ())) <= 3 else ():
                    found[at] = max(found.get(at, 0), len(code))
        if found:
            likeness = {at: fuzz.token_set_ratio(one.description, parts[at].description) for at in found}
            best = max(found, key=lambda at: (found[at], likeness[at], -at))
            lines.append(Line(row, best, "candidate", 1.0, 1))
    return lines
