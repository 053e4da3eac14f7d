"""Sheets sent to the counter: held, read in the background, asked about, kept; and comparisons of two sheets.

What is here is forgotten when the counter ends: nothing of it was kept then but what the list of sheets shows.
"""

import secrets
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import cast

from flask import Flask, current_app
from werkzeug.datastructures import FileStorage

from ..actions.import_sheets import Said
from ..actions.sheet_list import SheetWhole
from ..actions.sheet_questions import SheetAsked, sheet_asked
from ..actions.sheet_sent import SheetTaken, file_name
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.value import from_json, to_json
from ..documents.changes_shown import ChangesShown
from .desks import counter, desk
from .errands import Compare, Runner, TakeIn, do, in_a_process
from .held_files import HeldFiles
from .work import Task, Tell, Work, Works

PLACE = "sourcing.sheets"
HELD_FOR = timedelta(hours=12)
"""How long a file waits for an answer."""

MOST_AT_ONCE = 40
MOST_COMPARED = 40
SOON = 4_000
"""Offers of two sheets that are compared while the page waits."""

Pair = tuple[int, int, str]


@dataclass
class Sent:
    """A sheet that was sent. `asks` counts how often it was read, so that an answer to an older question is noticed."""

    name: str
    file: str
    path: Path
    said: Said
    who: str
    at: datetime
    work: Work
    asks: int = 1
    is_told: bool = False

    @property
    def taken(self) -> SheetTaken | None:
        """What came of it; None where nothing did yet."""
        return cast(SheetTaken, self.work.result) if self.work.how == "done" else None

    @property
    def asked(self) -> SheetAsked | None:
        """What is asked; None where nothing is."""
        taken = self.taken
        return sheet_asked(taken) if taken and taken.sheet is None else None


@dataclass
class SheetDesk:
    """All of one counter."""

    run: Runner = in_a_process
    works: Works = field(default_factory=Works)
    held: HeldFiles = field(default_factory=HeldFiles)
    sent: dict[str, Sent] = field(default_factory=dict)
    compared: dict[Pair, Work] = field(default_factory=dict)

    def take(self, files: list[FileStorage], said: Said, look: bool = False) -> list[Sent]:
        """Hold what was sent, to be read one after the other. Refuses nothing at all, and too many.

        `look`: none is kept before somebody has seen what its columns are read as.
        """
        chosen = [one for one in files if one.filename]
        if not chosen:
            raise refused("no-file-chosen")
        if len(chosen) > MOST_AT_ONCE:
            raise refused("too-many-sheets", count=len(chosen), most=MOST_AT_ONCE)
        self._forget(desk().at)
        return [self._take(one, said, look) for one in chosen]

    def in_hand(self) -> list[Sent]:
        """What was sent and is not told yet, the newest first."""
        return [one for one in reversed(self.sent.values()) if not one.is_told]

    def again(self, sent: Sent, said: Said) -> None:
        """Read it once more with what was said now."""
        if not sent.path.exists():
            raise refused("sheet-not-held", found=sent.file)
        sent.said, sent.asks = said, sent.asks + 1
        sent.work = self.works.add(sent.file, sent.who, desk().at, self._reading(sent.path, sent.file, said))

    def let_go(self, sent: Sent) -> None:
        """Forget it, and its file."""
        self.held.release(sent.path)
        self.sent.pop(sent.name, None)

    def compare(self, whole: SheetWhole, before: KeptSheet, kind: str) -> Work:
        """The comparison, begun if nobody has; the file of it is at `compared_file`."""
        pair = (before.sheet, whole.kept.sheet, kind)
        if pair not in self.compared:
            while len(self.compared) >= MOST_COMPARED:
                (self.held.folder / _named(oldest := next(iter(self.compared)))).unlink(missing_ok=True)
                del self.compared[oldest]
            self.compared[pair] = self._compare(whole, before, kind)
        return self.compared[pair]

    def compared_file(self, whole: SheetWhole, before: KeptSheet, kind: str) -> Path:
        """Where the file of a comparison is."""
        return self.held.folder / _named((before.sheet, whole.kept.sheet, kind))

    def _take(self, one: FileStorage, said: Said, look: bool) -> Sent:
        file, path = file_name(one.filename or ""), self.held.hold(one)
        at = desk()
        work = self.works.add(file, at.who, at.at, self._reading(path, file, said, look))
        sent = Sent(name=secrets.token_urlsafe(9), file=file, path=path, said=said, who=at.who, at=at.at, work=work)
        self.sent[sent.name] = sent
        return sent

    def _reading(self, path: Path, file: str, said: Said, look: bool = False) -> Task:
        at, run, held = desk(), self.run, self.held
        errand = TakeIn(
            database=counter().database,
            at=at.at,
            who=at.who,
            path=str(path),
            file=file,
            said=to_json(said).decode(),
            look=look,
        )

        def task(tell: Tell) -> SheetTaken:
            is_asked = False
            try:
                taken = from_json(run(errand, tell), SheetTaken)
                is_asked = taken.sheet is None and sheet_asked(taken).can_answer
                return taken
            finally:
                if not is_asked:  # nobody will ask for the file again
                    held.release(path)

        return task

    def _compare(self, whole: SheetWhole, before: KeptSheet, kind: str) -> Work:
        at, run = desk(), self.run
        errand = Compare(
            database=counter().database,
            at=at.at,
            file=whole.kept.file,
            supplier=whole.kept.supplier,
            sheet=whole.kept.sheet,
            against=before.sheet,
            folder=str(self.held.folder),
            kind="xlsx" if kind == "xlsx" else "csv",
        )
        is_short = whole.kept.offers + before.offers <= SOON

        def task(tell: Tell) -> ChangesShown:
            return from_json((do if is_short else run)(errand, tell), ChangesShown)

        work = self.works.add(whole.kept.file, at.who, at.at, task)
        if is_short:
            work.ended.wait(2)
        return work

    def _forget(self, now: datetime) -> None:
        for one in list(self.sent.values()):
            if now - one.at > HELD_FOR and one.work.is_over:
                self.let_go(one)


def prepare(app: Flask) -> None:
    """Give a counter its desk for sheets."""
    app.extensions[PLACE] = SheetDesk()


def sheet_desk() -> SheetDesk:
    """The desk for sheets of this counter."""
    return cast(SheetDesk, current_app.extensions[PLACE])


def _named(pair: Pair) -> str:
    return f"{pair[0]}-{pair[1]}.{pair[2]}"
