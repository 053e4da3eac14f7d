"""Which of our parts bears a number somebody typed: by the table, or by a supplier's own number on his sheet."""

from rapidfuzz import process

from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..matching.equivalences.must_nots import must_nots, perhaps
from ..storage.offers import offers_by_keys
from .evaluate import Catalogue
from .our_side import OurSide


def part_under(found: Catalogue, number: str) -> str:
    """The code of our part that bears the number under any maker, or under a supplier's own number on his sheet."""
    key = number_key(number)
    codes = found.known.bearers.get(key, frozenset()) or _by_supplier_number(found, key)
    if len(codes) > 1:
        raise refused("number-of-several", found=number, codes=", ".join(sorted(codes)))
    if not codes:
        graph = found.families.graph
        bans = must_nots(graph, perhaps(graph, PartNumber(printed=number)))
        if bans:
            raise refused("number-must-not", found=number, ban="; ".join(str(one.statement) for one in bans))
        raise refused("number-not-known", found=number, suggestions=_near(found, key))
    return next(iter(codes))


def _by_supplier_number(found: Catalogue, key: str) -> frozenset[str]:
    offers = offers_by_keys(found.connection, {key}, found.at.date()) if key else []
    side = OurSide(found.families, found.known, found.families.graph.makers, found.families)
    return frozenset(code for offer in offers for code, match in side.matches(offer) if match.tier == "automatic")


def _near(found: Catalogue, key: str) -> tuple[str, ...]:
    printed = {node[1]: str(number) for family in found.families.values() for node, number in family.printed.items()}
    return tuple(printed[hit[0]] for hit in process.extract(key, list(printed), limit=3, score_cutoff=75))
