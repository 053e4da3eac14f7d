"""What waits between two pages of the table and of look-alikes: files to be agreed to, and what became of a file.

It lives as long as the counter, and no longer than so many others came after it.
"""

import secrets
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeVar, cast

from flask import current_app

from ..basics.judgement import JudgedFile
from ..basics.problem import refused

PLACE = "sourcing.tables"
MOST_HELD = 4
MOST_TOLD = 40

V = TypeVar("V")


@dataclass
class HeldTables:
    """All of one counter. Files of a table are small: they are kept in memory."""

    files: dict[str, Mapping[str, bytes]] = field(default_factory=dict)
    outcomes: dict[str, JudgedFile] = field(default_factory=dict)

    def hold(self, files: Mapping[str, bytes]) -> str:
        """Hold files by their names; the word they are asked for by."""
        return _put(self.files, files, MOST_HELD)

    def held(self, word: str) -> Mapping[str, bytes]:
        """The files. Refuses where they are held no more."""
        if word not in self.files:
            raise refused("table-not-held")
        return self.files[word]

    def release(self, word: str) -> None:
        """Let files go."""
        self.files.pop(word, None)

    def tell(self, done: JudgedFile) -> str:
        """Keep what became of a file of answers; the word it is asked for by."""
        return _put(self.outcomes, done, MOST_TOLD)

    def told(self, word: str) -> JudgedFile | None:
        """What became of it; None where it is forgotten."""
        return self.outcomes.get(word)


def _put(there: dict[str, V], new: V, most: int) -> str:
    while len(there) >= most:
        del there[next(iter(there))]
    word = secrets.token_urlsafe(9)
    there[word] = new
    return word


def held_tables() -> HeldTables:
    """What is held at this counter."""
    return cast(HeldTables, current_app.extensions.setdefault(PLACE, HeldTables()))
