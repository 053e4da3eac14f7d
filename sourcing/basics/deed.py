"""A deed: who did what when, kept for ever in the order it happened."""

from datetime import datetime

from .value import Value


class Deed(Value, frozen=True, kw_only=True):
    """One entry of the ledger. `subject` is the job, order or sheet it is about; `detail` is one plain sentence."""

    at: datetime
    who: str
    deed: str
    subject: str
    detail: str
