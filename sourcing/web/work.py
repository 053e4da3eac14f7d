"""Long work in the background, one piece at a time: whoever started it may close the page and come back.

It lives as long as the counter: after a restart nobody remembers it, and the page of it says so.
"""

import secrets
import traceback
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from queue import Queue
from threading import Event, Lock, Thread
from typing import Any, Literal

from ..basics.problem import Problem, Refused

Tell = Callable[[str], None]
Task = Callable[[Tell], Any]
"""What is to be done: it is told with a few words at each step, and gives what came of it or raises Refused."""

MOST_KEPT = 200
"""Pieces of work remembered; the oldest that are over are forgotten first."""

How = Literal["waiting", "going on", "done", "refused", "broken off"]


@dataclass
class Work:
    """One piece. `words` say how far it is; `result` is what came of it; `problems` why it was refused."""

    name: str
    title: str
    who: str
    at: datetime
    task: Task | None
    how: How = "waiting"
    words: str = ""
    result: Any = None
    problems: tuple[Problem, ...] = ()
    ended: Event = field(default_factory=Event)

    @property
    def is_over(self) -> bool:
        """Whether nothing more will come of it."""
        return self.ended.is_set()


class Works:
    """All pieces of work of one counter, in the order they were given."""

    def __init__(self) -> None:
        self._every: dict[str, Work] = {}
        self._waiting: Queue[Work] = Queue()
        self._lock = Lock()
        self._thread: Thread | None = None

    def add(self, title: str, who: str, at: datetime, task: Task) -> Work:
        """Have it done when its turn comes."""
        work = Work(name=secrets.token_urlsafe(9), title=title, who=who, at=at, task=task)
        with self._lock:
            self._every[work.name] = work
            self._forget()
            if self._thread is None:
                self._thread = Thread(target=self._go, name="long work", daemon=True)
                self._thread.start()
        self._waiting.put(work)
        return work

    def get(self, name: str) -> Work | None:
        """The piece of that name; None where the counter was started anew since, or it is long over."""
        return self._every.get(name)

    def every(self) -> tuple[Work, ...]:
        """All that are remembered, the newest first."""
        with self._lock:
            return tuple(reversed(self._every.values()))

    def before(self, work: Work) -> int:
        """How many pieces come before it."""
        with self._lock:
            names = [one.name for one in self._every.values() if not one.is_over]
        return names.index(work.name) if work.name in names else 0

    def _forget(self) -> None:
        over = [one.name for one in self._every.values() if one.is_over]
        for name in over[: max(len(self._every) - MOST_KEPT, 0)]:
            del self._every[name]

    def _go(self) -> None:
        while True:
            work = self._waiting.get()
            task, work.task = work.task, None
            if task is not None:
                _do(work, task)


def _do(work: Work, task: Task) -> None:
    def tell(words: str) -> None:
        work.words = words

    work.how = "going on"
    try:
        work.result = task(tell)
        work.how = "done"
    except Refused as refusal:
        work.problems, work.how = refusal.problems, "refused"
    except Exception as error:  # a fault of the program: told as such, and the next piece of work goes on
        print(f"sourcing serve: {work.title}: {''.join(traceback.format_exception_only(error)).strip()}")
        work.how = "broken off"
    finally:
        work.ended.set()
