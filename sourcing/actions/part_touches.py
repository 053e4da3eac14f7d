"""What another name or size of a part of ours does: which offers it holds back or lets through, what contradicts it."""

from collections.abc import Iterator
from datetime import date

from sqlalchemy import Connection

from ..basics.equivalence import OurPart
from ..basics.offer import Offer
from ..basics.our_part import OfferTouched, Touched
from ..basics.value import changed
from ..matching.dimensions.reading import read_size
from ..matching.dimensions.size_check import check_size
from ..matching.equivalences.check import check_table
from ..matching.equivalences.graph import graph_of
from ..storage.look_up import open_jobs_with_part
from ..storage.offers import offers_by_keys
from ..storage.shop import terms_on
from .equivalences import hanging_together

MOST_NUMBERS = 400
"""Numbers of one part whose offers are looked at; more are nobody's family but a tangle."""


def touched_by(connection: Connection, day: date, before: OurPart, now: OurPart) -> Touched:
    """What follows from the change, by the sheets that count on that day; whether it is kept already or not."""
    if _size_of(before) == _size_of(now):
        return Touched()
    jobs = tuple(job.number for job in open_jobs_with_part(connection, now.code))
    table = hanging_together(connection, now.code)
    if table is None:
        return Touched(jobs=jobs, too_much=True)
    table = changed(table, parts=tuple(now if one.code == now.code else one for one in table.parts))
    keys = [key for _, key in graph_of(table).family(now.code).paths]
    offers = offers_by_keys(connection, keys[:MOST_NUMBERS], day)
    names = {one.supplier: one.name for one in terms_on(connection, day).values()}
    return Touched(
        offers=tuple(_offers(offers, before, now, names)),
        findings=tuple(one for one in check_table(table) if any(part.code == now.code for part in one.parts)),
        jobs=jobs,
    )


def _offers(offers: list[Offer], before: OurPart, now: OurPart, names: dict[str, str]) -> Iterator[OfferTouched]:
    for offer in offers:
        texts = (offer.supplier_number, offer.maker_number, offer.description)
        was, is_now = check_size(_size_of(before), *texts), check_size(_size_of(now), *texts)
        if was.vetoes != is_now.vetoes:
            yield OfferTouched(
                supplier_name=names.get(offer.supplier, offer.supplier),
                number=offer.shown_number,
                held=is_now.vetoes,
                words=is_now.words or "its size can't be compared any more",
            )


def _size_of(part: OurPart) -> str:
    """What stands for the part's size where offers are compared."""
    return part.size or (part.name if read_size(part.name) else "")
