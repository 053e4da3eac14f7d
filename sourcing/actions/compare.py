"""Compare one part under any of its numbers: who has it, what it costs at the door, when it comes, and why."""

from collections.abc import Sequence
from datetime import date

from rapidfuzz import process

from ..basics.choice import Comparison, RankedOffer
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..choosing.ranking import rank
from ..matching.offer_match import match_offer
from ..storage.offers import offers_by_keys
from .desk import Desk
from .evaluate import Catalogue, catalogue, evaluate


def compare(desk: Desk, number: str, quantity: int, need_by: date | None) -> Comparison:
    """The comparison of the part that bears the number. Refuses a number no part of ours is known under."""
    with desk.store.reading() as connection:
        found = catalogue(connection, desk.at)
        code = part_under(found, number)
        seen = evaluate(found, code, quantity)
        ranked = rank(seen.priced, need_by)
        return Comparison(
            asked=number,
            our_part=code,
            name=found.families[code].part.name,
            quantity=quantity,
            need_by=need_by,
            ranked=ranked,
            set_aside=seen.set_aside,
            candidates=seen.candidates,
            notes=_notes(need_by, ranked),
        )


def part_under(found: Catalogue, number: str) -> str:
    """The code of our part that bears the number under any maker, or under a supplier's own number on his sheet."""
    key = number_key(number)
    codes = found.bearers.get(key, frozenset()) or _by_supplier_number(found, key)
    if len(codes) > 1:
        raise refused("number-of-several", found=number, codes=", ".join(sorted(codes)))
    if not codes:
        raise refused("number-not-known", found=number, suggestions=_near(found, key))
    return next(iter(codes))


def _by_supplier_number(found: Catalogue, key: str) -> frozenset[str]:
    offers = offers_by_keys(found.connection, {key}) if key else []
    return frozenset(
        code
        for offer in offers
        for code, family in found.families.items()
        if match_offer(offer, family, found.bearers).tier == "automatic"
    )


def _near(found: Catalogue, key: str) -> tuple[str, ...]:
    printed = {node[1]: str(number) for family in found.families.values() for node, number in family.printed.items()}
    return tuple(printed[hit[0]] for hit in process.extract(key, list(printed), limit=3, score_cutoff=75))


def _notes(need_by: date | None, ranked: Sequence[RankedOffer]) -> tuple[str, ...]:
    if not ranked or need_by is None or any(one.in_time for one in ranked):
        return ()
    dated = [one.priced for one in ranked if one.priced.arrival.latest]
    if not dated:
        return (f"no offer can be promised by {need_by}",)
    nearest = min(dated, key=lambda one: one.arrival.latest or date.max)
    return (f"no offer is here by {need_by}; nearest is {nearest.supplier_name} on {nearest.arrival.latest}",)
