"""The corpora by the name of their world."""

from tests.match_corpus.corpus import Corpus, make
from tests.match_corpus.damaged import make_damaged
from tests.match_corpus.sides import WORLDS

NAMES = tuple(WORLDS)


def corpus(world: str, seed: int, sheet_rows: int | None = None, parts_rows: int | None = None) -> Corpus:
    """The corpus of that world and seed, in its usual size if none is given."""
    if world == "W4":
        return make_damaged(seed, sheet_rows, parts_rows)
    return make(WORLDS[world], seed, sheet_rows, parts_rows)
