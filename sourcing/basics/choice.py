"""What choosing gives: one part's offers in order with reasons, and the plan of orders for many needs."""

from datetime import date

from .asked import Asked
from .equivalence import Bench, Path, Standing
from .evidence import AcceptedAnyway
from .landed_cost import Arrival, LandedOrder
from .offer import Offer
from .value import Value


class Asks(Value, frozen=True, kw_only=True):
    """What a job's line asks of offers, which rejected ones a person took for it, and what is doubtful about it.

    `warnings` are sentences: evidence that contradicts itself or the line, an asked attribute said in two ways. `bench`
    is the machine it is for, None where its model is not known. `contradicted`: why nothing is ordered for the line
    until a person has settled which part it is; blank: nothing is in the way.
    """

    asked: Asked = Asked()
    overrides: tuple[AcceptedAnyway, ...] = ()
    warnings: tuple[str, ...] = ()
    bench: Bench | None = None
    contradicted: str = ""


class Priced(Value, frozen=True, kw_only=True):
    """An offer that matches, with its cost and date for the asked quantity, ordered alone."""

    offer: Offer
    supplier_name: str
    path: Path
    matched_number: str
    landed: LandedOrder
    arrival: Arrival
    warnings: tuple[str, ...] = ()

    @property
    def standing(self) -> Standing:
        """The standing of the path."""
        return self.path.standing


class RankedOffer(Value, frozen=True, kw_only=True):
    """A place in the order: 1 is cheapest at the door. `on_front`: no other offer is both cheaper and sooner."""

    place: int
    priced: Priced
    on_front: bool
    in_time: bool | None
    reason: str


class SetAside(Value, frozen=True, kw_only=True):
    """An offer that is shown and not ranked, with the reason.

    `rejected`: it contradicts what is asked; only a named person's word for a job's line lets it in.
    """

    offer: Offer
    supplier_name: str
    reason: str
    rejected: bool = False


class Candidate(Value, frozen=True, kw_only=True):
    """An offer that may or may not be the part: a person judges. `vetoed`: its size speaks against it, in numbers."""

    offer: Offer
    supplier_name: str
    reasons: tuple[str, ...]
    vetoed: bool
    score: float


class Comparison(Value, frozen=True, kw_only=True):
    """All that is known of one part's offers, for one quantity, at one moment.

    `asks` is what the need asks of them, in words; `warnings` is what is doubtful about the need itself.
    """

    asked: str
    our_part: str
    name: str
    quantity: int
    need_by: date | None
    ranked: tuple[RankedOffer, ...]
    set_aside: tuple[SetAside, ...]
    candidates: tuple[Candidate, ...]
    notes: tuple[str, ...] = ()
    asks: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
