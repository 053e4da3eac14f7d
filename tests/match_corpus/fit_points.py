"""Fit the first points to made-up catalogues: `python -m tests.match_corpus.fit_points` prints them as Python.

Seeds 1 and 2 of the four worlds are used here and nowhere else; the yardstick judges with seeds of 100 and more. The
points start from values set by hand (below) and are held to them, so that a made-up world does not decide alone.
"""

from collections.abc import Sequence

import numpy as np

from sourcing.basics.part_number import maker_key, number_key
from sourcing.matching.likeness.compared import RESPECTS
from sourcing.matching.likeness.points import Examples, Points, moved
from sourcing.matching.likeness.prepared import Prepared, prepare
from sourcing.matching.likeness.said import Said, said
from sourcing.matching.likeness.scores import taught, with_leads
from tests.match_corpus.worlds import corpus
from tests.match_corpus.writing import Listing

BY_HAND: dict[str, tuple[float, ...]] = {
    "number": (3.2, 2.8, 2.0, 0.2, -0.3, -1.2, -2.0, -1.8),
    "shared code": (1.2, 0.3, -0.3, -1.2, 0.0),
    "other codes": (0.4, 0.0, -0.6, -1.0),
    "maker": (0.6, 0.5, 0.0, -1.6),
    "shorter words": (1.2, 0.8, 0.3, -0.2, -0.8, -1.5),
    "longer words": (1.2, 0.9, 0.6, 0.2, -0.3, -0.9),
    "spelling": (1.0, 0.7, 0.3, 0.0, -0.4, -0.9),
    "measures": (0.5, 0.0, -1.3),
    "short numbers": (0.3, 0.0, -0.7),
    "colour": (0.5, 0.0, -0.2, -1.6),
    "side": (0.5, 0.0, -0.2, -1.6),
    "generation": (0.5, 0.0, -1.0, -1.6),
    "used": (0.0, -2.5),
    "made for another": (0.0, -0.9),
    "kit": (0.0, -0.5),
    "number and words": (0.0,) * 9,
    "price": (1.6, 1.2, 0.8, 0.3, 0.0, -0.4, -1.0, -1.8),
}
LEADS = (1.6, 1.4, 1.0, 0.4, 0.0, -0.7, -1.5, -2.5)
START, BESIDE, HOLD, PAIRS = -2.2, 0.7, 1.0, 20_000
DAMAGED = 0.15
"""How much the world of damaged numbers weighs beside each of the others: sheets are rarely damaged throughout, and at
full weight it makes every number, word and lead worth less (measured on seeds 4 and 5)."""

Truth = tuple[Prepared, np.ndarray, float]
"""A corpus made ready, for each pair whether it is one, and how much the corpus weighs."""


def prepared(world: str, seed: int) -> tuple[Prepared, np.ndarray]:
    """One corpus made ready, and for each pair whether it is one."""
    made = corpus(world, seed)
    texts = tuple([f"{one.description} {one.maker}" for one in table] for table in (made.sheet, made.parts))
    ready = prepare(_said(made.sheet), _said(made.parts), texts)  # type: ignore[arg-type]
    pairs = zip(ready.compared.row.tolist(), ready.compared.part.tolist(), strict=True)
    return ready, np.array([part in made.gold.get(row, ()) for row, part in pairs], dtype=float)


def _said(table: Sequence[Listing]) -> list[Said]:
    return [
        said(
            [number_key(one.number)],
            [maker_key(one.maker)],
            one.description,
            one.price.lstrip("$").replace(",", "") or None,
        )
        for one in table
    ]


def fitted(worlds: Sequence[Truth]) -> tuple[Points, Points]:
    """Points without and with the leads, the latter on the leads that a table gives once its own pairs have taught."""
    same = np.concatenate([truth for _, truth, _ in worlds])
    weight = np.concatenate([np.full(len(truth), PAIRS * share / len(truth)) for _, truth, share in worlds])
    levels = np.concatenate([ready.compared.levels for ready, _, _ in worlds])
    by_hand = Points(START, tuple(np.array(BY_HAND[respect]) for respect in RESPECTS))
    alone = moved(by_hand, Examples(levels, same, weight), HOLD)
    beside = Points(START, (*(BESIDE * np.array(BY_HAND[r]) for r in RESPECTS), np.array(LEADS), np.array(LEADS)))
    facts = np.concatenate([_facts(ready, (alone, beside)) for ready, _, _ in worlds])
    return alone, moved(beside, Examples(facts, same, weight), HOLD)


def _facts(ready: Prepared, first: tuple[Points, Points]) -> np.ndarray:
    alone, _ = taught(ready.compared, ready.twins, first)
    return with_leads(ready.compared, ready.twins, alone)


def _printed(name: str, values: Sequence[np.ndarray]) -> str:
    rows = "\n".join(
        f'    "{r}": ({", ".join(f"{v:.1f}" for v in one)}),' for r, one in zip(RESPECTS, values, strict=False)
    )
    return f"{name}: dict[str, tuple[float, ...]] = {{\n{rows}\n}}"


def main() -> None:
    """Fit and print."""
    shares = {"W1": 1.0, "W2": 1.0, "W3": 1.0, "W4": DAMAGED}
    worlds = [(*prepared(world, seed), share) for world, share in shares.items() for seed in (1, 2)]
    alone, beside = fitted(worlds)
    print(_printed("FIRST_POINTS", alone.levels))
    print(f"START = {alone.start:.1f}")
    print(_printed("LEADS_BESIDE", beside.levels))
    print(f"START_WITH_LEADS = {beside.start:.1f}")
    print("LEAD_POINTS =", tuple(tuple(round(float(v), 1) for v in one) for one in beside.levels[-2:]))


if __name__ == "__main__":
    main()
