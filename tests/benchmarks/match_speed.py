"""How fast matching is, as ratios to plain ways in the same run on the same cores.

Run by hand: `python -m tests.benchmarks.match_speed`. By key: 1,000,000 rows against 50,000 parts, beside a bare
pandas.merge on keys that are ready. By description: 20,000 rows without a number against 50,000 parts, beside
rapidfuzz.process.cdist with token_set_ratio, which is measured on a sample of the rows and scaled up; recall at five
of both on that sample. Each measurement is a process of its own, so that peak memory is its own; making the data is
not timed, but the memory it takes counts.
"""

import argparse
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from itertools import pairwise
from statistics import median

import numpy as np
import pandas as pd
from rapidfuzz import fuzz, process, utils

from sourcing.basics.part_number import number_keys
from sourcing.matching.by_key import pairs_by_key
from sourcing.matching.likeness.prepared import LEAST_COSINE
from sourcing.matching.likeness.words_near import Descriptions
from tests.match_corpus.corpus import make
from tests.match_corpus.sides import W3

PARTS, KEY_ROWS, TEXT_ROWS, SAMPLE, ROUNDS = 50_000, 1_000_000, 20_000, 200, 3
MAKERS = ("Norrowby", "Ostrevik", "Corrivane", "Dunmarrow")

Places = Sequence[Sequence[int]]


def by_key(sheet: pd.DataFrame, parts: pd.DataFrame) -> int:
    """Our matching by key, from the sheet's numbers as printed; gives how many rows found a part."""
    keys = number_keys(parts["number"].tolist())
    row, _ = pairs_by_key(number_keys(sheet["number"].tolist()), keys)
    return len(np.unique(row))


def by_description(sheet: Sequence[str], parts: Sequence[str]) -> Places:
    """Our candidates by description; of each text of the sheet the places of at most five parts."""
    near = Descriptions(parts).nearest(sheet, 5, LEAST_COSINE)
    order = np.lexsort((-near.cosine, near.row))
    ends = np.searchsorted(near.row[order], np.arange(len(sheet) + 1))
    places = near.part[order].tolist()
    return [places[start:end] for start, end in pairwise(ends.tolist())]


def key_tables() -> tuple[pd.DataFrame, pd.DataFrame]:
    """Invented numbers of three shapes, as printed; six rows in ten of the sheet are of a listed part."""
    chance = np.random.default_rng(5)
    serial = chance.permutation(PARTS * 3)
    shapes = ("{:02d}-{:05d}", "B{:02d}{:05d}", "{:02d} {:05d} A")
    numbers = pd.Series([shapes[at % 3].format(at % 89 + 10, at) for at in serial])
    makers = pd.Series([MAKERS[at % 4] for at in serial])
    every = pd.DataFrame({"number": numbers, "maker": makers})
    parts = every.iloc[:PARTS].reset_index(drop=True)
    known = chance.random(KEY_ROWS) < 0.6
    rows = np.where(known, chance.integers(0, PARTS, KEY_ROWS), chance.integers(PARTS, PARTS * 3, KEY_ROWS))
    sheet = every.iloc[rows].reset_index(drop=True)
    return sheet, parts


def _ready(table: pd.DataFrame) -> pd.DataFrame:
    """Numbers as keys: not timed."""
    key = table["number"].str.replace(r"[^A-Za-z0-9]", "", regex=True).str.upper()
    return pd.DataFrame({"key": key, "place": np.arange(len(table))})


def time_merge() -> list[float]:
    """A bare merge on ready keys."""
    sheet, parts = map(_ready, key_tables())
    start = time.perf_counter()
    found = sheet.merge(parts, on="key", how="left")
    return [time.perf_counter() - start, float(found["place_y"].notna().sum())]


def time_by_key() -> list[float]:
    """Ours, from numbers as printed."""
    sheet, parts = key_tables()
    start = time.perf_counter()
    found = by_key(sheet, parts)
    return [time.perf_counter() - start, found]


def texts() -> tuple[list[str], list[str], dict[int, frozenset[int]]]:
    """Descriptions only, with the truth."""
    world = make(W3, 7, TEXT_ROWS, PARTS)
    return [one.description for one in world.sheet], [one.description for one in world.parts], dict(world.gold)


def _sample(rows: int, gold: dict[int, frozenset[int]]) -> list[int]:
    with_part = [row for row in range(rows) if row in gold]
    return with_part[:: max(1, len(with_part) // SAMPLE)][:SAMPLE]


def _recall(places: Places, rows: Sequence[int], gold: dict[int, frozenset[int]]) -> float:
    return sum(bool(gold[row].intersection(found)) for row, found in zip(rows, places, strict=True)) / len(rows)


def time_brute_force() -> list[float]:
    """Every row of the sample against every part on both cores, scaled to all rows; recall at five of the sample."""
    sheet, parts, gold = texts()
    rows = _sample(len(sheet), gold)
    choices = [utils.default_process(text) for text in parts]
    start = time.perf_counter()
    queries = [utils.default_process(sheet[row]) for row in rows]
    scores = process.cdist(queries, choices, scorer=fuzz.token_set_ratio, dtype=np.uint8, workers=2)
    best = np.argsort(-scores.astype(np.int16), axis=1, kind="stable")[:, :5]
    spent = time.perf_counter() - start
    return [spent * len(sheet) / len(rows), _recall(best.tolist(), rows, gold)]


def time_by_description() -> list[float]:
    """Ours on all rows; recall at five of the same sample."""
    sheet, parts, gold = texts()
    start = time.perf_counter()
    places = by_description(sheet, parts)
    spent = time.perf_counter() - start
    rows = _sample(len(sheet), gold)
    return [spent, _recall([places[row][:5] for row in rows], rows, gold)]


WAYS: dict[str, Callable[[], list[float]]] = {
    "merge": time_merge,
    "by_key": time_by_key,
    "brute_force": time_brute_force,
    "by_description": time_by_description,
}


def measure(way: str, rounds: int) -> tuple[float, float, float] | None:
    """Seconds (in the middle of the rounds), what was found, peak megabytes; None where the way is not wired."""
    found = []
    for _ in range(rounds):
        told = [sys.executable, "-m", __spec__.name, "--one", way]
        done = subprocess.run(told, capture_output=True, text=True)
        if "NotImplementedError" in done.stderr:
            return None
        if done.returncode:
            sys.exit(done.stderr)
        found.append([float(text) for text in done.stdout.split()])
    return median(one[0] for one in found), found[0][1], max(one[2] for one in found)


def compare(plain: str, own: str, rounds: int) -> None:
    """Both ways and their ratio."""
    found = {}
    for way in (plain, own):
        measured = measure(way, rounds)
        if measured is None:
            print(f"  {way}: not wired yet")
            return
        found[way] = measured
        print(f"  {way}: {measured[0]:.2f} s, found {measured[1]:.3f}, peak memory {measured[2]:.0f} MB", flush=True)
    time_ratio, found_ratio = (found[own][at] / found[plain][at] for at in (0, 1))
    print(f"  {own} / {plain}: time {time_ratio:.4f}, found {found_ratio:.3f}; peak memory at most 1536 MB", flush=True)


def main() -> None:
    """Both comparisons, or one measurement for `measure`."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--one", choices=WAYS)
    told = options.parse_args()
    if told.one:
        print(*WAYS[told.one](), resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)
        return
    print(f"By key, {KEY_ROWS:,} rows against {PARTS:,} parts: ratio of time at most 3, the same found")
    compare("merge", "by_key", ROUNDS)
    print(
        f"By description, {TEXT_ROWS:,} rows against {PARTS:,} parts: brute force measured on {SAMPLE} rows and scaled;"
    )
    print("ratio of time at most 0.005, of recall at five at least 0.98")
    compare("brute_force", "by_description", 1)


if __name__ == "__main__":
    main()
