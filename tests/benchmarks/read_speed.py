"""How long reading a long sheet takes, as a ratio to the plainest reader of the same file in the same run.

Run by hand: `python -m tests.benchmarks.read_speed [rows]`. Each measurement is a process of its own, so that peak
memory is its own too. CSV against `pandas.read_csv(dtype=str)`, XLSX against python-calamine's rows alone.
"""

import csv
import random
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median

ROWS, ROUNDS = 300_000, 5
WORDS = (
    "auger",
    "belt",
    "keeper",
    "shaft",
    "pin",
    "shear",
    "bolt",
    "bearing",
    "idler",
    "pulley",
    "cable",
    "spring",
    "washer",
    "skid",
    "shoe",
    "scraper",
    "chute",
)
MAKERS = ("Norrowby", "Ostrevik", "Corrivane", "Dunmarrow")
HEADER = (
    "Part No", "Manufacturer", "Mfr Part No", "Description", "List Price", "Net", "Pack", "Min Qty", "Stock",
    "Lead Time", "Core Charge", "Superseded By",
)  # fmt: skip


def rows(count: int) -> Iterator[list[str]]:
    """An invented sheet of twelve columns, the same every time."""
    chance = random.Random(5)
    for at in range(count):
        list_price = chance.randint(150, 30_000)
        yield [
            f"{chance.choice('ABCDEFG')}{at:06d}",
            chance.choice(MAKERS),
            f"{chance.choice(('NW', 'OS', 'CV'))}-{chance.randint(10_000, 99_999)}-{at % 97:02d}",
            " ".join(chance.choice(WORDS) for _ in range(4)).upper() + f", {chance.randint(1, 99)} in",
            f"{list_price // 100}.{list_price % 100:02d}",
            f"{list_price * 62 // 10_000}.{list_price * 62 // 100 % 100:02d}",
            str(chance.choice((1, 1, 1, 2, 10))),
            str(chance.choice((1, 1, 5))),
            str(chance.choice((0, 1, 5, 12, 40, 130))),
            chance.choice(("In stock", "2-3 weeks", "5 days", "")),
            chance.choice(("", "", "", "12.00")),
            chance.choice(("", "", "", f"A{at:06d}")),
        ]


def write_csv(path: Path, count: int) -> None:
    """The sheet as a comma-separated file."""
    with path.open("w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows([HEADER, *rows(count)])


def write_xlsx(path: Path, count: int) -> None:
    """The sheet as a workbook: prices and counts as number cells, the rest as text."""
    from openpyxl import Workbook

    book = Workbook(write_only=True)
    worksheet = book.create_sheet("Prices")
    worksheet.append(list(HEADER))
    for row in rows(count):
        worksheet.append([float(cell) if 4 <= at <= 8 or (at == 10 and cell) else cell for at, cell in enumerate(row)])
    book.save(path)


def ours(path: Path) -> int:
    """Bytes to offers."""
    from sourcing.sheets.reading import Hints, read_sheet

    return len(read_sheet(path.read_bytes(), path.name, Hints(supplier="x", currency="USD")).offers)


def by_pandas(path: Path) -> int:
    """The plainest reader of a text file."""
    import pandas as pd

    return len(pd.read_csv(path, dtype=str))


def by_calamine(path: Path) -> int:
    """The rows of the workbook as calamine gives them, and nothing else."""
    from python_calamine import CalamineWorkbook

    return len(CalamineWorkbook.from_path(str(path)).get_sheet_by_index(0).to_python(skip_empty_area=False))


READERS: dict[str, Callable[[Path], int]] = {"ours": ours, "pandas": by_pandas, "calamine": by_calamine}


def measure(reader: str, path: Path) -> tuple[float, float]:
    """Seconds and peak megabytes of one reading in a new process; the imports are not counted."""
    out = subprocess.run(
        [sys.executable, "-m", __spec__.name, "--one", reader, str(path)], check=True, capture_output=True, text=True
    ).stdout.split()
    return float(out[0]), float(out[1])


def one(reader: str, path: Path) -> None:
    """One measurement, printed for `measure`."""
    import pandas  # noqa: F401
    import python_calamine  # noqa: F401

    import sourcing.sheets.reading  # noqa: F401

    start = time.perf_counter()
    READERS[reader](path)
    spent = time.perf_counter() - start
    print(spent, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)


def compare(path: Path, plain: str, most: float) -> None:
    """Both readers in turns, the medians and their ratio."""
    pairs = [(measure(plain, path), measure("ours", path)) for _ in range(ROUNDS)]
    theirs, own = median(pair[0][0] for pair in pairs), median(pair[1][0] for pair in pairs)
    memory = max(pair[1][1] for pair in pairs)
    print(f"{path.name}: {plain} {theirs:.2f} s, ours {own:.2f} s, ratio {own / theirs:.2f} (at most {most});", end=" ")
    print(f"peak memory {memory:.0f} MB (at most 1024)")


def main() -> None:
    """Make both files and compare."""
    if "--one" in sys.argv:
        one(sys.argv[2], Path(sys.argv[3]))
        return
    count = int(sys.argv[1]) if len(sys.argv) > 1 else ROWS
    with tempfile.TemporaryDirectory() as folder:
        text, book = Path(folder) / "long.csv", Path(folder) / "long.xlsx"
        write_csv(text, count)
        compare(text, "pandas", 4)
        write_xlsx(book, count)
        compare(book, "calamine", 1.6)


if __name__ == "__main__":
    main()
