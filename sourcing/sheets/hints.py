"""What the caller already knows of a supplier's sheet, and what reading it gives."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from datetime import date

import pandas as pd

from sourcing.basics.sheet import Field, SheetSummary, StructureRow

Tell = Callable[[str], None]


def silent(_words: str) -> None:
    """Tells nobody."""


@dataclass(frozen=True)
class Hints:
    """What is known before reading.

    `currency`: ISO 4217 code of the supplier's terms, "" where not known. `meanings`: header text, or 'column D'
    for a column by its letter, to what it means; remembered or confirmed by a person, compared without case and
    spaces. They win over the dictionary of header words. `dated`: the day of the sheet where it is known, for days
    that are written without a year. `quantities`: for columns meant as net prices, from how many pieces on they hold.
    `ours`: keys of the numbers in the shop's table of same parts, for columns nobody knows that hold some. `tell` is
    given a few words at each step, for somebody who waits.
    """

    supplier: str
    currency: str = ""
    meanings: Mapping[str, Field] = field(default_factory=dict)
    dated: date | None = None
    quantities: Mapping[str, int] = field(default_factory=dict)
    ours: Collection[str] = ()
    tell: Tell = silent


@dataclass(frozen=True)
class SheetReading:
    """What was found in a file: the summary, one row an offer (object columns, see `frame.OFFER_COLUMNS`), structure.

    `structure`: every row that is no offer and no problem, in the order of the file.
    """

    summary: SheetSummary
    offers: pd.DataFrame
    structure: tuple[StructureRow, ...] = ()
