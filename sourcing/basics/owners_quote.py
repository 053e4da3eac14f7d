"""A revision as the owner sees it: what each line's part earns, and how every figure came. Never for the customer."""

from decimal import Decimal

from .margin import Margin
from .quote import Explained, FrozenQuote, Quote
from .value import Value


class LineEarns(Value, frozen=True, kw_only=True):
    """What a line's part earns as quoted, and from whom it is bought. Freight billed apart is left out."""

    label: str
    title: str
    supplier_name: str
    supplier_number: str
    margin: Margin
    under_floor: bool


class OwnersQuote(Value, frozen=True, kw_only=True):
    """`agreed` and `everything`: parts with freight. `floor_percent` is the shop's on the day it is looked at."""

    frozen: FrozenQuote
    lines: tuple[LineEarns, ...]
    agreed: Margin
    everything: Margin
    floor_percent: Decimal
    explained: tuple[Explained, ...]


class CheckedQuote(Value, frozen=True, kw_only=True):
    """What a new revision would say at this moment; nothing of it is kept. `last` None: there is no revision yet.

    `changes` against the last one, in words, with the owner's side; `same`: writing would make no new revision.
    """

    now: Quote
    last: Quote | None
    same: bool
    changes: tuple[str, ...]
    warnings: tuple[str, ...]
    notes: tuple[str, ...]
