"""Whether two names may be one maker's: 'Norrowby Inc.' and 'Norrowby'. A hint for a person, never an answer.

Which words are a company's form and say nothing of who it is: common practice, no source.
"""

import re

from rapidfuzz.distance import OSA

from .words.text import unaccented

FORMS = frozenset(
    (
        *("inc", "incorporated", "ltd", "limited", "llc", "co", "corp", "corporation", "company", "plc", "pty", "mfg"),
        *("manufacturing", "gmbh", "mbh", "ag", "kg", "ohg", "ug", "sa", "sas", "sarl", "srl", "spa", "sl", "bv", "nv"),
        *("ab", "as", "oy", "the", "and", "und", "et", "group", "international", "intl", "usa"),
    )
)
LEAST = 4
"""A shorter name is not taken for the beginning of a longer one."""
ONE_SLIP, TWO_SLIPS = 6, 10
"""From these lengths names that differ by one slip of the pen, and by two, may be one."""

_WORD = re.compile(r"[^\W_]+")
_FIT_TO_TYPE = re.compile(r"[^\W_][\w .,&'()/+-]*")
"""A name that a shell takes between double quotes as it stands: sheets are written by others."""


def makers_alike(one: str, other: str) -> bool:
    """Whether the names differ only by a company's form, by words added behind, or by slips of the pen."""
    left, right = _bare(one), _bare(other)
    if not left or not right:
        return False
    short, long = sorted((left, right), key=len)
    if long[: len(short)] == short and len("".join(short)) >= LEAST:
        return True
    joined = ["".join(words) for words in (left, right)]
    length = min(map(len, joined))
    return OSA.distance(*joined) <= (length >= ONE_SLIP) + (length >= TWO_SLIPS)


def command_for(written: str, maker: str) -> str:
    """The command that lets the name `written` on sheets stand for `maker`; blank where they are not alike.

    Blank too where a name holds what a shell would not take as it stands.
    """
    names = (written.strip(), maker.strip())
    if not makers_alike(*names) or not all(map(_FIT_TO_TYPE.fullmatch, names)):
        return ""
    return f"sourcing table maker {' '.join(map(_quoted, names))}"


def _quoted(name: str) -> str:
    return name if name.isalnum() else f'"{name}"'


def _bare(name: str) -> list[str]:
    """The words of the name without a company's form; all of them where it is nothing else."""
    words = _WORD.findall(unaccented(name))
    return [word for word in words if word not in FORMS and len(word) > 1] or words
