"""How good the matching of two files is, on invented catalogues whose truth is known.

`python -m tests.benchmarks.match_quality [--world W2]... [--seed 7]... [--rows n] [--parts n] [--labels]`.
W1 parts for outdoor power equipment, W2 consumer electronics, W3 printers to household, W4 damaged numbers. Every
pair of files goes through the `sourcing match` command, as a user's would. With --labels half of the rows are judged
by the truth first, as a shop would judge what it is shown, and the figures are of the other half, without and with
that. Two plain baselines say how hard the files are (on a sample of rows): token-set ratio, and numbers equal or
contained.
"""

import argparse
import csv
import json
import subprocess
import sys
import tempfile
import time
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.match_corpus import baselines, judge
from tests.match_corpus.corpus import Corpus, write_listings
from tests.match_corpus.figures import (
    EDGES,
    Figures,
    bins_text,
    by_kind,
    figures,
    figures_text,
    kinds_text,
    summed,
    together,
)
from tests.match_corpus.judge import Bin, Line
from tests.match_corpus.worlds import NAMES, corpus

COMMAND = (str(Path(sys.executable).with_name("sourcing")), "match")
FIRST_ROW = 2
"""Under the header, as the command counts the rows of a file; the corpora count from 0."""

JUDGED_OPTION = "--judged"
"""The option by which the command takes a CSV of sheet row, part row and the shop's yes or no."""

SEEDS = (101, 102, 103)
"""Smaller seeds are for developing the matching; nobody looks at the rows of these."""
BASELINE_SAMPLE = 400


def read_lines(text: str) -> list[Line]:
    """The command's JSON: a list of lines, or an object that holds one. Lines without a part are left out."""
    found = json.loads(text)
    if isinstance(found, dict):
        (found,) = [
            value for key, value in found.items() if isinstance(value, list) and key in ("lines", "rows", "matches")
        ]
    return [
        Line(
            one["row"] - FIRST_ROW,
            one["part_row"] - FIRST_ROW,
            one["tier"],
            float(one["score"]),
            one["rank"],
            one.get("against", False),
        )
        for one in found
        if one.get("part_row") is not None
    ]


def run(folder: Path, options: Sequence[str] = ()) -> list[Line]:
    """The command on the two files of the folder."""
    told = [
        *COMMAND,
        str(folder / "sheet.csv"),
        "--against",
        str(folder / "parts.csv"),
        "--top",
        "5",
        "--json",
        *options,
    ]
    done = subprocess.run(told, capture_output=True, text=True)
    if done.returncode not in (0, 1) or not done.stdout.strip():
        sys.exit(f"{' '.join(told)}\n{done.stderr or done.stdout}")
    return read_lines(done.stdout)


def write_judged(path: Path, judged: Iterable[Line], world: Corpus) -> None:
    """The shop's answers to lines it was shown."""
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow(("row", "part_row", "answer"))
        for one in judged:
            out.writerow(
                (one.row + FIRST_ROW, one.part + FIRST_ROW, "yes" if one.part in world.gold.get(one.row, ()) else "no")
            )


@dataclass(frozen=True)
class Outcome:
    """One seed: figures, bins, and text on the kinds of rows."""

    figures: Figures
    bins: list[Bin]
    kinds: str


def judged_outcome(world: Corpus, lines: list[Line], rows: Collection[int]) -> Outcome:
    """The figures of these rows."""
    gold, here = judge.of_rows(world.gold, lines, rows)
    kinds = kinds_text(by_kind(world.kinds, gold, here), 8)
    return Outcome(figures(gold, here), judge.calibration(gold, here, EDGES), kinds)


def outcomes(world: Corpus, with_labels: bool) -> dict[str, Outcome]:
    """One seed, by name of the way: 'untrained', and with labels 'with the shop's answers'."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_listings(folder / "sheet.csv", world.sheet)
        write_listings(folder / "parts.csv", world.parts)
        start = time.perf_counter()
        lines = run(folder)
        print(f"  {len(world.sheet)} rows against {len(world.parts)} parts: {time.perf_counter() - start:.1f} s")
        every = range(len(world.sheet))
        if not with_labels:
            return {"untrained": judged_outcome(world, lines, every)}
        path, unseen = folder / "judged.csv", every[1::2]
        write_judged(path, (one for one in lines if one.row % 2 == 0 and one.rank <= 3), world)
        learnt = run(folder, (JUDGED_OPTION, str(path)))
        return {
            "untrained": judged_outcome(world, lines, unseen),
            "with the shop's answers to the other half": judged_outcome(world, learnt, unseen),
        }


def print_baselines(world: Corpus) -> None:
    """The two plain ways, on evenly spaced rows."""
    rows = range(0, len(world.sheet), max(1, len(world.sheet) // BASELINE_SAMPLE))
    gold, _ = judge.of_rows(world.gold, [], rows)
    number = judge.pairs(gold, baselines.by_number(world.sheet, world.parts, rows), 0.5)
    lines = baselines.token_set(world.sheet, world.parts, rows)
    threshold, likeness = judge.best_pairs(gold, lines)
    print(
        f"  baselines on {len(rows)} rows: number equal or contained F1 {number.f1:.3f}; token-set ratio F1"
        f" {likeness.f1:.3f} at its best threshold {threshold:.2f}, recall at precision 0.99"
        f" {judge.recall_at(gold, lines, 0.99):.3f}"
    )


def measure(name: str, told: argparse.Namespace) -> None:
    """One world over its seeds, printed."""
    by_way: dict[str, list[Outcome]] = {}
    for seed in told.seed or SEEDS:
        world = corpus(name, seed, told.rows, told.parts)
        print(f"{name}, seed {seed}: {len(world.gold)} of {len(world.sheet)} rows have a part", flush=True)
        for way, outcome in outcomes(world, told.labels).items():
            by_way.setdefault(way, []).append(outcome)
        if not told.no_baselines:
            print_baselines(world)
    for way, found in by_way.items():
        print(f"{name}, {way}, mean and worst of {len(found)} seeds")
        print(figures_text(*together([one.figures for one in found])))
        print("  what the score says, and how often it was right")
        print(bins_text(summed([one.bins for one in found])))
        print(f"  kinds of rows of the last seed, the most wrong first\n{found[-1].kinds}", flush=True)


def main() -> None:
    """Reads the options and measures world by world."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--world", action="append", choices=NAMES, help="all if none is named")
    options.add_argument("--seed", action="append", type=int, help=f"{SEEDS} if none is named")
    options.add_argument("--rows", type=int, help="rows of the sheet")
    options.add_argument("--parts", type=int, help="rows of the parts")
    options.add_argument("--labels", action="store_true", help="judge half of the rows, measure the other half")
    options.add_argument("--no-baselines", action="store_true")
    told = options.parse_args()
    for name in told.world or NAMES:
        measure(name, told)


if __name__ == "__main__":
    main()
