"""What every kind of cell shares: a cell that can't be read, and parsing a column by its different texts."""

import re
import unicodedata
from collections.abc import Callable, Sequence
from typing import Any, TypeVar, cast

from sourcing.basics.problem import Place, Problem, problem

from ..worksheet import Cell, text_of

T = TypeVar("T")

OTHER_SPACES = [c for code in range(0x3001) if (c := chr(code)).isspace() and c not in " \n"]
"""Every character Python splits text at, but the space and the line feed."""


def word_set(words: str) -> frozenset[str]:
    """The words of a list with commas; a list that begins with a comma holds the blank too."""
    return frozenset(word.strip() for word in words.split(","))


NO_LONGER_AVAILABLE = word_set(
    "nla,n.l.a,n/l/a,no longer available,no longer supplied,not available anymore,discontinued,obsolete,eol,"
    "end of life,nicht mehr lieferbar,nicht mehr verfügbar,entfällt,entfallen,ausgelaufen,eingestellt,obsolet,"
    "plus disponible,n'est plus disponible,plus fabriqué,supprimé,arrêté,obsolète,ya no disponible,descatalogado,"
    "discontinuado,obsoleto,fuera de catálogo,niet meer leverbaar,vervallen,niet meer verkrijgbaar,uitgelopen"
)
"""Words that say the part is no longer available, wherever they fill a price, stock, lead time or note cell."""
BY = (
    r"(?:(?:superseded|superceded|supd|replaced|repl|substituted)\.?\s+(?:by|with)|remplacée?s?\s+par"
    r"|(?:wird\s+|wurde\s+)?(?:ersetzt|abgelöst)\s+durch|(?:sustituid|reemplazad)[oa]\s+por|vervangen\s+door)"
)
SEE = r"(?:use|see|now|order|siehe|nachfolger|ersatz|neu|voir|utiliser|ver|zie|gebruik|->|→)"
GONE = "|".join(re.escape(word) for word in sorted(NO_LONGER_AVAILABLE, key=len, reverse=True))
NAMED_NUMBER = r"(?P<number>(?:[a-z]{1,5} )?[\w./-]*\d[\w./-]*(?: [\w./-]*\d[\w./-]*){0,3})"
SUCCEEDED = re.compile(
    rf"\W*(?:(?:{GONE})[\s,;:.()/–—-]*(?:{BY}|{SEE})|{BY})[\s:.#]*{NAMED_NUMBER}[\s.!)*]*", re.IGNORECASE
)
"""'Superseded by BW-2', 'NLA use BW-2', 'entfällt, ersetzt durch BW-2': the row can't be had, and what to ask for."""
SUCCESSOR_STEMS = (
    *("superseded", "superceded", "supd", "repl", "substituted", "rempl", "ersetzt", "abgelöst", "sustituid"),
    *("reemplazad", "vervang"),
)
"""One of them, or a word for 'no longer available', stands in every such cell: most columns have none."""
LONGEST_SUCCEEDED = 80
LONGEST_SAID = max(map(len, NO_LONGER_AVAILABLE)) + 10
SAID = {max(re.split(r"[\s']", word), key=len) for word in NO_LONGER_AVAILABLE}
"""The longest part of each: a column in which none of them occurs says nothing."""
DASHES = dict.fromkeys(map(ord, "‐‑‒–—―−"), "-")
LONGEST_SHOWN = 200
LONGEST_WORDS = 500
LONGEST_TEXT = 20_000
ZEROS_AND_ONES = str.maketrans("23456789", "11111111")


class Bad:
    """A cell that can't be read: the code of the problem, the text as it stood, facts for the sentence.

    Of a text longer than anyone reads only the start is kept.
    """

    __slots__ = ("code", "facts", "found", "suggestions")

    def __init__(self, code: str, *, found: str, suggestions: tuple[str, ...] = (), **facts: str) -> None:
        self.code, self.suggestions, self.facts = code, suggestions, facts
        self.found = found if len(found) <= LONGEST_SHOWN else f"{found[:LONGEST_SHOWN]}…"

    def problem(self, place: Place) -> Problem:
        """The problem at its place in the file."""
        facts: dict[str, Any] = {**self.facts, "found": self.found}
        return problem(self.code, place=place, suggestions=self.suggestions, **facts)


def is_plain_count(cell: Cell) -> bool:
    """Whether the cell is nothing but one to nine digits, as nearly all cells of counts and stocks are."""
    return isinstance(cell, str) and cell.isdigit() and cell.isascii() and len(cell) < 10


def parse_column(cells: Sequence[Cell], parse: Callable[[Cell], T]) -> list[T]:
    """Every cell parsed, each different text once: a column of 300,000 cells has few different stocks or packs."""
    known = {cell: parse(cell) for cell in dict.fromkeys(cells)}
    return list(map(known.__getitem__, cells))


def parse_texts(cells: Sequence[Cell]) -> list[str]:
    """A text column, white space collapsed. A column that is tidy already, as most are, is taken as it is."""
    if set(map(type, cells)) <= {str} and _is_tidy(cast(Sequence[str], cells)):
        return cast(list[str], list(cells))
    known = {cell: text_of(cell) for cell in dict.fromkeys(cells)}
    return list(map(known.__getitem__, cells))


def _is_tidy(texts: Sequence[str]) -> bool:
    """Whether no text has white space other than single spaces between words. Looks at all of them as one text."""
    whole = f"\n{chr(10).join(texts)}\n"
    if whole.count("\n") != len(texts) + 1 or "\n " in whole or " \n" in whole or "  " in whole:
        return False
    return not any(space in whole for space in OTHER_SPACES)


def bad_cells(values: Sequence[object]) -> dict[int, Bad]:
    """The cells of a parsed column that could not be read, by row."""
    return {at: value for at, value in enumerate(values) if type(value) is Bad}


def shown_of(cell: Cell) -> str:
    """The cell's text as `text_of` gives it, only the start of one of millions of characters."""
    if isinstance(cell, str) and len(cell) > LONGEST_TEXT:
        cell = f"{cell[:LONGEST_TEXT]}_cut"
    return text_of(cell)


def words_of(cell: Cell) -> str:
    """The cell's text for comparing: one form of each character, straight apostrophes, lower case, single spaces.

    Raised and circled figures stay what they are: '12.50²' has a footnote and is not 12.502. A text too long for any
    word, number or day is cut, with an end that fits none of them, so that a huge cell costs no time.
    """
    text = shown_of(cell)
    if len(text) > LONGEST_WORDS:
        text = f"{text[:LONGEST_WORDS]}_cut"
    if not text.isascii():
        odd = any(sign.isnumeric() and not sign.isdecimal() for sign in text)
        text = " ".join(unicodedata.normalize("NFC" if odd else "NFKC", text).replace("\u2019", "'").split())
    return text.casefold()


def shapes_of(texts: Sequence[str]) -> list[str]:
    """Each text with a 1 for every digit above 0: hundreds of thousands of prices have a few hundred shapes.

    What a text means but for the digits' own values (marks, signs, words, a leading zero, whether it is nothing) can
    be judged once for a shape.
    """
    shapes = "\n".join(texts).translate(ZEROS_AND_ONES).split("\n")
    return shapes if len(shapes) == len(texts) else [text.translate(ZEROS_AND_ONES) for text in texts]


def column_says_no_longer_available(cells: Sequence[Cell]) -> list[bool] | None:
    """For each cell whether it says so, or that another number took its place; None where none does."""
    texts = [cell for cell in cells if type(cell) is str]
    whole = "\n".join(texts).casefold()
    if not any(word in whole for word in (*SAID, *SUCCESSOR_STEMS)):
        return None
    if (named := successors(cells)) is not None:
        return [bool(one) or says_no_longer_available(cell) for one, cell in zip(named, cells, strict=True)]
    said = {text for text in set(texts) if 2 < len(text) <= LONGEST_SAID and not text[:1].isdigit()}
    said = {cell for cell in said if says_no_longer_available(cell)}
    return [cell in said for cell in cells] if said else None


def successors(cells: Sequence[Cell]) -> list[str] | None:
    """For each cell the number it says took the row's place, as printed, '' mostly; None where none says so."""
    found = [successor_in(cell) for cell in cells]
    return found if any(found) else None


def successor_in(cell: Cell) -> str:
    """The number that took its place, where the cell says nothing else but that; else ''."""
    text = text_of(cell) if isinstance(cell, str) and len(cell) <= LONGEST_SUCCEEDED else ""
    match = SUCCEEDED.fullmatch(text) if text else None
    return match["number"].strip(" .") if match else ""


IN_FRONT = re.compile(r"^\W{0,3}(?:nla|n/l/a|discontinued|obsolete|no longer available)\b\s*[-:*.)\]]", re.I | re.M)


FRONT_WORDS = ("nla", "n/l/a", "discontinued", "obsolete", "no longer available")


def description_says_no_longer_available(cells: Sequence[Cell], whole: str) -> list[bool] | None:
    """For each description whether it begins with the words and a mark, as in 'NLA - Shear pin'; None: none does.

    `whole`: all of them as one text in small letters, a line each.
    """
    if not any(word in whole for word in FRONT_WORDS) or not IN_FRONT.search(whole):
        return None
    return [isinstance(cell, str) and bool(IN_FRONT.match(cell)) for cell in cells]


def says_no_longer_available(cell: Cell) -> bool:
    """Whether the cell holds nothing but words for 'no longer available', or for the number that took its place."""
    return says_only_gone(cell) or bool(successor_in(cell))


def says_only_gone(cell: Cell) -> bool:
    """Whether the cell holds nothing but words for 'no longer available'."""
    return words_of(cell).strip(" .!*") in NO_LONGER_AVAILABLE
