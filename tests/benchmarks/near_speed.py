"""How fast near numbers are found and in how much memory, in seconds of one core; ratios to the plain way.

Run by hand: `python -m tests.benchmarks.near_speed [keys]`. Each table is measured in a process of its own, so that
peak memory is its own too. Beside it a dict of deletions (one slip only), the plainest quick way, and keys of a million
numbers with `number_keys`. The plain way is going through the table with rapidfuzz.
"""

import random
import re
import subprocess
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path

KEYS, QUERIES, BRUTE = 50_000, 20_000, 50
LEAST = 10_000


def mixed(dice: random.Random) -> str:
    """Three letters and six figures."""
    return "".join(dice.choice("ABCDEFGHJKMNPRTUVWXY") for _ in range(3)) + f"{dice.randrange(10**6):06d}"


def makers(dice: random.Random) -> str:
    """Makers' letters, five figures, generations: crowded as real catalogues are."""
    return f"{dice.choice(['NW', 'OS', 'CV', 'DM'])}{dice.randrange(10**5):05d}{dice.choice(['', 'A', 'B', '01'])}"


TABLES: dict[str, Callable[[random.Random], str]] = {
    "mixed": mixed,
    "makers": makers,
    "6 figures": lambda dice: f"{dice.randrange(10**6):06d}",
    "5 figures": lambda dice: f"{dice.randrange(10**5):05d}",
}


def table(kind: str, count: int) -> list[str]:
    """Different keys of a kind, the same every time; of five figures at most half of all there are."""
    dice, found = random.Random(7), set[str]()
    while len(found) < (min(count, 50_000) if kind == "5 figures" else count):
        found.add(TABLES[kind](dice))
    return sorted(found)


def queries(keys: list[str]) -> list[str]:
    """Keys with one slip."""
    dice = random.Random(8)

    def slip(key: str) -> str:
        at, figure = dice.randrange(len(key) - 1), dice.choice("0123456789")
        changed = key[:at] + figure + key[at + 1 :], key[:at] + key[at + 1 :], key[:at] + figure + key[at:]
        return dice.choice([*changed, key[:at] + key[at + 1] + key[at] + key[at + 2 :]])

    return [slip(dice.choice(keys)) for _ in range(QUERIES)]


def ours(keys: list[str], asked: list[str]) -> tuple[float, float, int]:
    """Seconds to build, seconds to look all up, pairs found."""
    from sourcing.matching.numbers.near_numbers import NearNumbers

    start = time.process_time()
    index = NearNumbers(keys)
    built = time.process_time()
    found = len(index.near(asked))
    return built - start, time.process_time() - built, found


def by_dict(keys: list[str], asked: list[str]) -> tuple[float, float, int]:
    """The same with a dict of deletions, one slip only, checked pair by pair."""
    from rapidfuzz.distance import OSA

    def shorter(key: str) -> Iterator[str]:
        yield key
        yield from (key[:at] + key[at + 1 :] for at in range(len(key)))

    start = time.process_time()
    filed: dict[str, list[int]] = defaultdict(list)
    for place, key in enumerate(keys):
        for text in shorter(key):
            filed[text].append(place)
    built = time.process_time()
    found = 0
    for query in asked:
        near = {place for text in shorter(query) for place in filed.get(text, ())}
        found += sum(OSA.distance(query, keys[place], score_cutoff=1) == 1 for place in near)
    return built - start, time.process_time() - built, found


def brute(keys: list[str], asked: list[str]) -> tuple[float, float, int]:
    """Through the whole table with rapidfuzz for each of the first queries."""
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    start = time.process_time()
    found = 0
    for query in asked[:BRUTE]:
        found += len(process.extract(query, keys, scorer=OSA.distance, score_cutoff=2, limit=None))
    return 0.0, (time.process_time() - start) * len(asked) / BRUTE, found


WAYS = {"ours": ours, "dict": by_dict, "brute": brute}


def peak() -> float:
    """Megabytes this process has had at most, as Linux tells them; `getrusage` would count the parent's too."""
    found = re.search(r"VmHWM:\s+(\d+)", Path("/proc/self/status").read_text(encoding="ascii"))
    return int(found[1]) / 1024 if found else 0.0


def one(way: str, kind: str, count: int) -> None:
    """One measurement, printed for `measure`: build, look-up, found, megabytes taken."""
    import pandas  # noqa: F401

    import sourcing.matching.numbers.near_numbers  # noqa: F401

    keys = table(kind, count)
    asked = queries(keys)
    before = peak()
    built, looked, found = WAYS[way](keys, asked)
    print(built, looked, found, peak() - before)


def measure(way: str, kind: str, count: int) -> list[float]:
    """One measurement in a process of its own."""
    command = [sys.executable, "-m", __spec__.name, "--one", way, kind, str(count)]
    return [float(word) for word in subprocess.run(command, check=True, capture_output=True, text=True).stdout.split()]


def keys_speed() -> None:
    """A million number keys, in a column and one by one."""
    from sourcing.basics.part_number import number_key, number_keys

    dice = random.Random(9)
    texts = [f"nw-{dice.randrange(10**5):05d} {dice.choice('ABC')}" for _ in range(1_000_000)]
    start = time.process_time()
    number_keys(texts)
    column = time.process_time() - start
    start = time.process_time()
    for text in texts:
        number_key(text)
    print(f"1,000,000 keys: column {column:.2f} s, one by one {time.process_time() - start:.2f} s")


def main() -> None:
    """All tables, ours against both others."""
    if "--one" in sys.argv:
        one(sys.argv[2], sys.argv[3], int(sys.argv[4]))
        return
    count = int(sys.argv[1]) if len(sys.argv) > 1 else KEYS
    for kind in TABLES:
        built, looked, _, memory = measure("ours", kind, count)
        dict_built, dict_looked, _, dict_memory = measure("dict", kind, count)
        whole = measure("brute", kind, count)[1]
        print(
            f"{kind}, {count:,} keys: {QUERIES / looked:,.0f} look-ups/s (at least {LEAST:,}), built in {built:.1f} s, "
            f"{memory:.0f} MB; {whole / looked:,.0f} times as fast as going through the table; a dict for one slip: "
            f"{QUERIES / dict_looked:,.0f} look-ups/s, built in {dict_built:.1f} s, {dict_memory:.0f} MB"
        )
    keys_speed()


if __name__ == "__main__":
    main()
