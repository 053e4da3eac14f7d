"""A rejected offer taken for a job's line on a person's word, with name and words; and that word taken back."""

from ..basics.evidence import AcceptedAnyway
from ..basics.job import Job, JobLine
from ..basics.offer import Offer
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..matching.identity.verdict import Verdict
from ..storage.jobs import job as stored_job
from .desk import Desk
from .evaluate import Catalogue, catalogue, judged_offers
from .needs import asks_of, keep_line, line_with_part


class OfferNamed(Value, frozen=True, kw_only=True):
    """An offer by its supplier's short name and a number it bears, his own or the maker's."""

    supplier: str
    number: str


def accept_anyway(desk: Desk, number: str, label: str, offer: OfferNamed, words: str) -> AcceptedAnyway:
    """Take a rejected offer, or one a person must judge, for this line: the person's name and words stay on it.

    It covers what speaks against the offer now, and nothing that comes later. Refuses an offer that is not there, one
    nothing speaks against, and one a must-not stands against: that statement must be withdrawn first.
    """
    if not words.strip() or not desk.who.strip():
        raise refused("words-missing", found="an offer accepted in spite of what is asked")
    with desk.writing("accept anyway") as pen:
        found = catalogue(pen.connection, desk.at)
        job = stored_job(pen.connection, number)
        line = line_with_part(job, label)
        judged, theirs = _standing_against(found, job, label, offer)
        if judged.banned:
            raise refused("must-not-stands", found=theirs.supplier_number, supplier=theirs.supplier, ban=judged.banned)
        if judged.stands:
            named = theirs.supplier_number
            raise refused("nothing-against-it", found=named, supplier=theirs.supplier, job=number, label=label)
        one = AcceptedAnyway(
            supplier=theirs.supplier,
            number=theirs.supplier_number,
            objections=judged.objections,
            words=words.strip(),
            who=desk.who,
            at=desk.at,
        )
        keep_line(pen.connection, job, label, changed(line, overrides=(*line.overrides, one)))
        pen.note(number, f"line {label}: {one.supplier} {one.number} {one.sentence()}")
        return one


def take_acceptance_back(desk: Desk, number: str, label: str, offer: OfferNamed, words: str) -> JobLine:
    """The offer is rejected again for this line; who and why is kept beside the word that let it in."""
    if not words.strip():
        raise refused("words-missing", found="taking an acceptance back")
    with desk.writing("take acceptance back") as pen:
        job = stored_job(pen.connection, number)
        line = line_with_part(job, label)
        why = f"{desk.who} on {desk.at.date()}: {words.strip()}"
        kept = tuple(
            changed(one, taken_back=why) if _was_named(one, offer) and not one.taken_back else one
            for one in line.overrides
        )
        if kept == line.overrides:
            raise refused("not-accepted-before", found=offer.number, supplier=offer.supplier, job=number, label=label)
        new = changed(line, overrides=kept)
        keep_line(pen.connection, job, label, new)
        pen.note(number, f"line {label}: {offer.supplier} {offer.number} is no longer accepted: {words.strip()}")
        return new


def _standing_against(found: Catalogue, job: Job, label: str, offer: OfferNamed) -> tuple[Verdict, Offer]:
    """The offer and what speaks against it for this line; of several rows with its number one that does not stand."""
    line = line_with_part(job, label)
    rows = [
        (one.verdict, one.offer)
        for one in judged_offers(found, line.part, asks_of(found, job, line), line.quantity)
        if _is_named(found, one.offer, offer)
    ]
    if not rows:
        raise refused(
            "offer-not-there", found=offer.number, supplier=offer.supplier, part=line.part, job=job.number, label=label
        )
    return next((row for row in rows if row[0].banned or not row[0].stands), rows[0])


def _is_named(found: Catalogue, one: Offer, named: OfferNamed) -> bool:
    """Whether it is that supplier's, by his short name or his name on paper, and bears that number."""
    names = {one.supplier.casefold(), found.supplier_name(one.supplier).casefold()}
    keys = {number.key for number in one.numbers()}
    return named.supplier.strip().casefold() in names and number_key(named.number) in keys


def _was_named(one: AcceptedAnyway, named: OfferNamed) -> bool:
    same = one.supplier.casefold() == named.supplier.strip().casefold()
    return same and number_key(one.number) == number_key(named.number)
