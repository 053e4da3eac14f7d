"""What the caller already knows of a supplier's sheet, and what reading it gives."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import pandas as pd

from sourcing.basics.sheet import Field, SheetSummary


@dataclass(frozen=True)
class Hints:
    """What is known before reading.

    `currency`: ISO 4217 code of the supplier's terms, "" where not known. `meanings`: header text, or 'column D'
    for a column by its letter, to what it means; remembered or confirmed by a person, compared without case and
    spaces. They win over the dictionary of header words.
    """

    supplier: str
    currency: str = ""
    meanings: Mapping[str, Field] = field(default_factory=dict)


@dataclass(frozen=True)
class SheetReading:
    """What was found in a file: the summary, and one row an offer (object columns, see `frame.OFFER_COLUMNS`)."""

    summary: SheetSummary
    offers: pd.DataFrame
