"""Numbers that a spreadsheet or an export has damaged beyond reading. They match nothing: a key of theirs is no number.

Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016) and Abeysooriya et al., PLoS Computational Biology 17(7) (2021)
counted dates, day counts and powers of ten in published tables; Microsoft KB 269370: a spreadsheet keeps 15 digits.
"""

import re
from collections.abc import Callable, Sequence
from string import ascii_uppercase, digits
from typing import Literal

from ...basics.value import Value

DoubtKind = Literal[
    "scientific notation", "digits lost", "date", "day count", "point and zero", "truth value", "infinity",
    "error value", "formula", "no number",
]  # fmt: skip

_MONTH = (
    "jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|mrz|mär|märz|mai|okt|dez|janv|févr|mars|avr|juin|juil|août|déc"
    "|ene|abr|ago|dic|mrt|mei"
)
"""Short names of months as spreadsheets write them in English, German, French, Spanish and Dutch."""
_MONTHS = re.compile(
    rf"\d{{1,2}}[-.]\s?(?P<first>{_MONTH})\.?(?:[-. ]\d{{2,4}})?|(?P<second>{_MONTH})\.?[- ]\d{{2,4}}", re.IGNORECASE
)
_DAY = re.compile(
    r"(?:(?:19|20)\d\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])|9999-12-31)(?:[ T]\d\d:\d\d:\d\d)?"
    r"|\d{1,2}/\d{1,2}/(?:19|20)\d\d|(?:0?[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])\.(?:19|20)\d\d"
)
_ISO_LIKE = re.compile(r"\d{4}-\d\d-\d\d")
_POWER = re.compile(r"\d{1,3}(?:[.,]\d+)?E(?:\+\d+|-\d{1,2})|\d[.,]\d+E-?\d+", re.IGNORECASE)
_ZEROS_FOR_DIGITS = re.compile(r"[1-9]\d{14}0+")
_POINT_ZERO = re.compile(r"(\d+)\.0")
_FRACTION = re.compile(r"\d+\.(?:[1-9]\d*|\d{2,})")
_FORMULA = re.compile(r'=(?!"[^"]*"$).*|[-+@]\s*\d+(?:[-+*/^]\d+)+|@.+')
_DASHED = re.compile(r"\d{1,2}-\d{1,2}(?:-\d{2,4})?")
_ONE_SHAPE = str.maketrans(dict.fromkeys(ascii_uppercase.replace("E", ""), "A") | dict.fromkeys(digits, "0"))
_PLAIN = re.compile(r"(?=[^0]*0)(?:[AE][AE0./ -]*|0[AE0]{0,14}(?:-[AE0]{3,20})?)")
"""Shapes of capitals and figures that none of the looks below can be: a look at one spares most numbers the rest."""
_DAY_COUNT = range(36526, 55154)
"""Days since 30 December 1899 from 2000 to 2050."""


class Doubt(Value, frozen=True, kw_only=True):
    """Why a number can't be believed. `instead`: what it may have been, for a person to choose, never taken for it."""

    kind: DoubtKind
    words: str
    instead: tuple[str, ...] = ()


def doubtful(printed: str) -> Doubt | None:
    """Why this number must not match anything, None where nothing is wrong with it. A blank is no number: None.

    'DEC-14' in capitals is a number, 'Dec-14' a date: spreadsheets write small letters.
    """
    text = printed.strip().removeprefix("'").strip()
    for look, kind, words in _LOOKS:
        if look(text):
            return Doubt(kind=kind, words=words.format(text=text), instead=_instead(kind, text))
    return None


def doubtful_numbers(column: Sequence[str]) -> dict[int, Doubt]:
    """The doubts of a column of numbers, by place. What the others look like counts.

    45942 among numbers like 10-14 is a day count; days among numbers like 2024-44-17 are none; '40.0' is what it seems
    where a quarter of the column are numbers like 8.5.
    """
    odd = _odd_ones(column)
    known = {text: doubtful(text) for text in set(odd.values())}
    filled = [text.strip() for text in odd.values()]
    half = sum(map(bool, map(str.strip, column))) / 2
    if 2 * sum(map(bool, map(_FRACTION.fullmatch, filled))) > half:
        _forget(known, "point and zero", _POINT_ZERO)
    alike = [text for text in filled if _ISO_LIKE.fullmatch(text)]
    if alike and len(alike) > half and not all(map(_DAY.fullmatch, alike)):
        _forget(known, "date", _ISO_LIKE)
    found = {at: doubt for at, text in odd.items() if (doubt := known[text]) is not None}
    if filled and sum(map(bool, map(_DASHED.fullmatch, filled))) > half:
        found |= {at: _day_count(text.strip()) for at, text in enumerate(column) if _is_day_count(text.strip())}
    return found


def _odd_ones(column: Sequence[str]) -> dict[int, str]:
    """The numbers that `_PLAIN` does not clear, by place: letters as one letter and figures as one, shapes are few."""
    shapes = "\n".join(column).translate(_ONE_SHAPE).split("\n")
    if len(shapes) != len(column):
        return dict(enumerate(column))  # line ends in some, or no numbers at all
    plain = {shape for shape in set(shapes) if not shape or _PLAIN.fullmatch(shape)}
    return {at: column[at] for at, shape in enumerate(shapes) if shape not in plain}


def _forget(known: dict[str, Doubt | None], kind: DoubtKind, of: re.Pattern[str]) -> None:
    for text, doubt in known.items():
        if doubt is not None and doubt.kind == kind and of.fullmatch(text.strip()):
            known[text] = None


def _is_day_count(text: str) -> bool:
    return len(text) == 5 and text.isascii() and text.isdecimal() and int(text) in _DAY_COUNT


def _day_count(text: str) -> Doubt:
    words = f"{text} among dashed numbers: the day count a spreadsheet keeps for a date it made of one"
    return Doubt(kind="day count", words=words)


def _is_date(text: str) -> bool:
    found = _MONTHS.fullmatch(text)
    return bool(_DAY.fullmatch(text)) or (found is not None and not (found["first"] or found["second"]).isupper())


def _instead(kind: DoubtKind, text: str) -> tuple[str, ...]:
    found = _POINT_ZERO.fullmatch(text) if kind == "point and zero" else None
    return (found[1],) if found else ()


def _one_of(words: str) -> Callable[[str], bool]:
    every = frozenset(words.split(","))
    return lambda text: text.casefold() in every


_LOOKS: tuple[tuple[Callable[[str], object], DoubtKind, str], ...] = (
    (_POWER.fullmatch, "scientific notation", "{text} is a number as a spreadsheet shortens it; its digits are lost"),
    (_ZEROS_FOR_DIGITS.fullmatch, "digits lost", "{text} has more than 15 digits and ends in zeros: digits are lost"),
    (_is_date, "date", "{text} is a date, which a spreadsheet may have made of a number"),
    (_POINT_ZERO.fullmatch, "point and zero", "{text} ends in '.0', which a spreadsheet may have added"),
    (_one_of("true,false,wahr,falsch,vrai,faux,verdadero,falso,waar,onwaar"), "truth value", "{text} is a yes or no"),
    (_one_of("inf,+inf,-inf,infinity,-infinity,∞"), "infinity", "{text} is what a program makes of a number too large"),
    (re.compile(r"#(?:REF!|N/A|NAME\?|VALUE!|DIV/0!|NUM!|NULL!)|#{3,}").fullmatch, "error value",
     "{text} is a spreadsheet's error"),
    (_FORMULA.fullmatch, "formula", "{text} is a formula, not a number"),
    (_one_of("na,n/a,n.a.,n. a.,none,null,nan,nil,tbd,tba,unknown,various,keine,ohne,unbekannt,aucun,inconnu,ninguno,"
             "geen,onbekend"), "no number", "'{text}' says that there is no number"),
)  # fmt: skip
