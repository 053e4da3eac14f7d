"""Values in the words of forms, where a change or a deed has them in the notation of the files a person edits."""

import re
import tomllib
from collections.abc import Callable, Collection
from datetime import date, time
from decimal import Decimal

BLANKS = ("not set", "not known")
"""What stands in a change for a value that is not there."""

ARROW = " -> "
FIELD = re.compile(r"(?<![\w.'-])([a-z]+(?:_[a-z]+)*(?:\.[a-z]+(?:_[a-z]+)*)*) ")
TOKEN = re.compile(r'"(?:[^"\\]|\\.)*"|[\[{]|[\]}]|[\s;)]|[^"\[\]{}\s;)]+|"')
"""Texts in quotes, brackets, ends, and anything else: a value ends at a blank outside of brackets."""


def changes_in_words(
    text: str, fields: Collection[str], worded: Callable[[str, str, str], str], rest: Callable[[str], str]
) -> str:
    """A sentence with its changes, 'field old -> new', as `worded` says each; the words between as `rest` does."""
    made, at = [], 0
    for found in FIELD.finditer(text):
        old_from = found.end()
        old_to = _value_end(text, old_from)
        if found.start() < at or found[1] not in fields or not text.startswith(ARROW, old_to):
            continue
        new_from = old_to + len(ARROW)
        new_to = _value_end(text, new_from)
        change = worded(found[1], text[old_from:old_to], text[new_from:new_to])
        made += [rest(text[at : found.start()]), change]
        at = new_to
    return "".join([*made, rest(text[at:])])


def value_of(text: str) -> object:
    """The value the notation of a file stands for; the text itself where it is none."""
    try:
        return tomllib.loads(f"x = {text}", parse_float=Decimal)["x"]
    except (tomllib.TOMLDecodeError, RecursionError):
        return text


def value_words(found: object) -> str:
    """'yes', '13:00', 'on 2026-01-14, 2026-01-20', 'Mon, Tue', '0 = 9.50, 75 = 6.00'."""
    if isinstance(found, bool):
        return "yes" if found else "no"
    if isinstance(found, time):
        return f"{found:%H:%M}"
    if isinstance(found, date):
        return f"on {found}"
    if isinstance(found, dict):
        return _entry(found)
    if not isinstance(found, list):
        return str(found)
    if found and all(isinstance(one, date) for one in found):
        return f"on {', '.join(map(str, found))}"
    are_entries = any(isinstance(one, dict) for one in found) and not all(map(_is_step, found))
    return ("; " if are_entries else ", ").join(map(value_words, found))


def _is_step(found: object) -> bool:
    """Whether it is a step of two figures, which forms have as 'left = right'."""
    return (
        isinstance(found, dict) and len(found) == 2 and all(isinstance(one, (int, Decimal)) for one in found.values())
    )


def _entry(found: dict[str, object]) -> str:
    if _is_step(found):
        return " = ".join(map(str, found.values()))
    return ", ".join(f"{name.replace('_', ' ')} {value_words(one)}" for name, one in found.items())


def _value_end(text: str, at: int) -> int:
    """Where the value that begins there ends."""
    for blank in BLANKS:
        if text.startswith(blank, at):
            return at + len(blank)
    depth = 0
    for token in TOKEN.finditer(text, at):
        word = token[0]
        depth += (word in "[{") - (word in "]}")
        if not depth and (word.isspace() or word in ";)"):
            return token.start()
    return len(text)
