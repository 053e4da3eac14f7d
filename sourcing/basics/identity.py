"""Which of our parts a need is, on what evidence, how sure, and what contradicts it: the judgement as a value."""

from typing import Literal

from .asked import Asked
from .equivalence import Path
from .evidence import Evidence
from .value import Value

Use = Literal["decides", "agrees", "overruled", "size only", "clue", "open", "set aside"]
"""What was made of a line of evidence. Decides: it names the part. Agrees: it says the same and is less trusted.
Overruled: it says another part than more trusted evidence. Open: a person must first find something out. Set aside:
it is not about this machine, or was taken back."""

Certainty = Literal["lists agree", "one list", "sellers' lists only", "contradicted", "not settled"]


class Tie(Value, frozen=True, kw_only=True):
    """One of our parts that a number stands for, and the path of statements. `banned`: why it can't be it, in words.

    Of a number that only must not serve for the part, the path is that must-not alone.
    """

    part: str
    path: Path
    banned: str = ""


class Seen(Value, frozen=True, kw_only=True):
    """A line of evidence with what was made of it, the parts its number is tied to, and why, in words.

    `at` is its place among the line's evidence, counted from 1.
    """

    at: int
    evidence: Evidence
    use: Use
    ties: tuple[Tie, ...]
    words: str


class Identity(Value, frozen=True, kw_only=True):
    """`part` is blank where it is not settled; `leaning` is then the part the most trusted evidence names, if any.

    `conflicts` are sentences, each naming both sides. `next_steps` say what to look for. `asked` is what the need asks
    of an offer, from the job's line, our part and the lists together.
    """

    part: str
    leaning: str
    certainty: Certainty
    words: str
    seen: tuple[Seen, ...]
    conflicts: tuple[str, ...]
    next_steps: tuple[str, ...]
    asked: Asked

    @property
    def settled(self) -> bool:
        """Whether it is known which part it is."""
        return bool(self.part)

    def against_ordering(self, part: str) -> str:
        """Why `part` is not to be ordered on this evidence; blank where the evidence does not contradict it.

        Evidence that is missing or open is a doubt and no contradiction.
        """
        if self.certainty == "contradicted":
            return self.words
        return f"the evidence says {self.leaning} and not {part}" if self.leaning not in ("", part) else ""
