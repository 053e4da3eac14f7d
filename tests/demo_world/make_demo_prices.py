"""Writes the demo world's price sheets and equivalence table into demo_prices/, the same bytes every time.

From the top of the checkout: python -m tests.demo_world.make_demo_prices [folder]
The terms, settings, rates, job and about files beside them are written by hand and not touched. A sheet edited by
hand is written over. The exact rows of the demo's story stand in story.py, the chance rows come from families.py.
"""

import sys
from pathlib import Path

from .catalogue import listings, parts
from .equivalences import equivalence_table
from .overseas_and_engine import kesselried, tavishollow
from .stonegarth import both_files
from .workbooks import larkmoor, pellbrook

HERE = Path(__file__).resolve().parents[2] / "demo_prices"


def files() -> dict[str, bytes]:
    """Every generated file by its name under demo_prices/."""
    all_parts = parts()
    everything = listings(all_parts)
    old, new = both_files(everything)
    return {
        "stonegarth/prices-2025-12-01.csv": old,
        "stonegarth/prices-2026-01-05.csv": new,
        "kesselried/prices-2026-01-02.csv": kesselried(everything),
        "larkmoor/prices-2026-01-07.xlsx": larkmoor(everything),
        "pellbrook/prices-2026-01-08.xlsx": pellbrook(everything),
        "tavishollow/prices-2026-01-06.tsv": tavishollow(everything),
        "equivalence.xlsx": equivalence_table(all_parts),
    }


def write(folder: Path) -> None:
    """Writes every generated file under the folder, making the folders it needs."""
    for name, content in files().items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content)


if __name__ == "__main__":
    write(Path(sys.argv[1]) if len(sys.argv) > 1 else HERE)
