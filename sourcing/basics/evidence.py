"""Evidence which part a need is: what a list, a tag or the removed part says; and a person's word for a rejected offer.

Trust runs in the order of the kinds (common practice, no source). The last two are clues: a printed number may be that
of a wrong part an earlier owner made fit, and a worn part measures wrong. Clues alone never settle which part it is.
"""

from datetime import date, datetime
from typing import Literal

from .part_number import PartNumber
from .problem import refused
from .value import Value

EvidenceKind = Literal[
    "machine list",
    "component list",
    "drive geometry",
    "seller's list",
    "printed on the removed part",
    "removed part measured",
]
"""Most trusted first. Machine list: for the machine's model and serial number. Component list: for the number on the
component's own tag. Drive geometry: pulleys and centre distance measured or read; gives a size, never a number."""

EVIDENCE_KINDS: tuple[EvidenceKind, ...] = (
    "machine list",
    "component list",
    "drive geometry",
    "seller's list",
    "printed on the removed part",
    "removed part measured",
)

MAKERS_LISTS: frozenset[EvidenceKind] = frozenset(("machine list", "component list"))
"""What the maker of the machine or of the component says himself."""

CLUES: frozenset[EvidenceKind] = frozenset(("printed on the removed part", "removed part measured"))


class Evidence(Value, frozen=True, kw_only=True):
    """One thing that speaks for a part: a number (of `maker`, blank: not known), a size ('B88'), words, or several.

    `model`, `serial_from` and `serial_to` (both inclusive, blank: open) say which machines a list is for; of a
    component list, which component. Blank: the list was read for this machine. `source` names the list, `photo` the
    file of a picture. `seen_by`, `seen_on`: who took it down, when; blank in a job file: whoever takes the job in.
    `taken_back` is who took it back and why; it then stays to be read and counts for nothing.
    """

    kind: EvidenceKind
    maker: str = ""
    number: str = ""
    size: str = ""
    words: str = ""
    model: str = ""
    serial_from: str = ""
    serial_to: str = ""
    source: str = ""
    photo: str = ""
    seen_by: str = ""
    seen_on: date | None = None
    taken_back: str = ""

    def __post_init__(self) -> None:
        if not (self.number or self.size or self.words):
            raise refused("evidence-says-nothing", found=self.kind)
        if self.number and not self.part_number.key:
            raise refused("blank-number", found=self.number)

    @property
    def part_number(self) -> PartNumber:
        """The number it names, with its maker."""
        return PartNumber(printed=self.number, maker=self.maker)

    @property
    def says(self) -> str:
        """What it says in one line: 'Norrowby NW-77120, B88, aramid cord'."""
        number = str(self.part_number) if self.number else ""
        return ", ".join(part for part in (number, self.size, self.words) if part)


class AcceptedAnyway(Value, frozen=True, kw_only=True):
    """A person's word that a rejected offer is taken for this line. It covers the objections known then, and no other.

    `number` is the supplier's number as his sheet prints it. `objections` are what spoke against the offer, to the
    letter: an objection that comes later, by a new sheet, rejects the offer again. `taken_back`: who and why.
    """

    supplier: str
    number: str
    objections: tuple[str, ...]
    words: str
    who: str
    at: datetime
    taken_back: str = ""

    def sentence(self) -> str:
        """'accepted by Oona Brandeth on 2026-03-02: she fits an idler of her own (although: ...)'."""
        return f"accepted by {self.who} on {self.at.date()}: {self.words} (although: {'; '.join(self.objections)})"
