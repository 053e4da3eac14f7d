"""One matched offer against what a need asks: let in, rejected, or let in on a person's word."""

from collections.abc import Iterable, Mapping, Sequence

from ...basics.asked import Asked
from ...basics.equivalence import Statement
from ...basics.evidence import AcceptedAnyway
from ...basics.offer import Offer
from ...basics.part_number import number_key
from ...basics.value import Value
from .asked_check import check_asked


class Verdict(Value, frozen=True, kw_only=True):
    """`objections` speak against the offer, to the letter as an acceptance must name them.

    `accepted`: the person's word that covers all of them. `banned`: a must-not, which no word covers. `needed`: the
    quantity in the offer's own unit. `warnings`: what to ask or to know if it is taken.
    """

    objections: tuple[str, ...]
    accepted: AcceptedAnyway | None
    banned: str
    warnings: tuple[str, ...]
    needed: int

    @property
    def stands(self) -> bool:
        """Whether the offer may be ranked."""
        return not self.objections or self.accepted is not None


def verdict(
    offer: Offer,
    against: Sequence[str],
    asked: Asked,
    overrides: Sequence[AcceptedAnyway],
    banned: str,
    quantity: int,
) -> Verdict:
    """`against` is what matching says against the offer (a size, a doubt about the number), blank where nothing does.

    A must-not is the shop's own word that the part fails: whoever knows better withdraws that statement first, so that
    the next job knows it too.
    """
    check = check_asked(asked, "", offer, quantity)  # the size is among what matching says
    objections = (*against, *check.failures)
    accepted = None if banned or not objections else _covering(offer, objections, overrides)
    told = (accepted.sentence(),) if accepted else ()
    return Verdict(
        objections=objections,
        accepted=accepted,
        banned=banned,
        warnings=(*told, *check.unknowns, *check.notes),
        needed=check.needed,
    )


def ban_on(nodes: Iterable[tuple[str, str]], forbidden: Mapping[tuple[str, str], Statement]) -> str:
    """The must-not that stands against one of these numbers, in words; blank where there is none.

    Where a maker is not known, the number may be the forbidden one.
    """
    return next(
        (
            str(ban)
            for maker, key in nodes
            for (other, banned), ban in forbidden.items()
            if key == banned and (maker == other or not maker or not other)
        ),
        "",
    )


def _covering(offer: Offer, objections: Sequence[str], overrides: Sequence[AcceptedAnyway]) -> AcceptedAnyway | None:
    """The newest word that is about this offer and knew of every objection."""
    return next(
        (
            one
            for one in reversed(overrides)
            if is_about(one, offer) and not one.taken_back and set(objections) <= set(one.objections)
        ),
        None,
    )


def is_about(one: AcceptedAnyway, offer: Offer) -> bool:
    """Whether a person's word is about this offer: the same supplier and his own number."""
    return one.supplier == offer.supplier and number_key(one.number) == number_key(offer.supplier_number)
