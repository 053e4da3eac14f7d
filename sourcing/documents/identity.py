"""Which part a job's line needs, as text: the judgement, the evidence line by line, conflicts, next steps."""

from collections.abc import Sequence

from ..basics.evidence import EVIDENCE_KINDS, AcceptedAnyway, Evidence
from ..basics.identity import Identity, Seen
from .plain_text import document, wrapped

USES = {
    "decides": "decides",
    "agrees": "agrees",
    "overruled": "overruled",
    "size only": "size only",
    "clue": "clue",
    "open": "OPEN",
    "set aside": "set aside",
}


def identity_text(head: Sequence[str], identity: Identity, overrides: Sequence[AcceptedAnyway]) -> str:
    """`head` names the job's line and the machine."""
    lines = [line for words in head for line in wrapped(words)]
    sure = f"It is {identity.part}. " if identity.settled else ""
    lines += ["", *wrapped(f"{sure}{_capital(identity.words)}.")]
    asked = ", ".join(identity.asked.words())
    lines += wrapped(f"Asked of an offer: {asked}") if asked else []
    lines += _titled("Evidence, most trusted kind first", [line for one in _ordered(identity) for line in _seen(one)])
    lines += _titled("Conflicts", [line for words in identity.conflicts for line in wrapped(words, 2)])
    lines += _titled("Look for next", [line for words in identity.next_steps for line in wrapped(words, 2)])
    lines += _titled("Offers taken in spite of what is asked", [line for one in overrides for line in _override(one)])
    return document(lines)


def evidence_words(one: Evidence) -> str:
    """Where it was seen, by whom, when, and the picture."""
    about = [
        one.source,
        f"for {one.model}" if one.model else "",
        _span(one),
        f"photo {one.photo}" if one.photo else "",
        " on ".join(part for part in (one.seen_by, str(one.seen_on or "")) if part),
    ]
    return "; ".join(part for part in about if part)


def _span(one: Evidence) -> str:
    if one.serial_from and one.serial_to:
        return f"serial {one.serial_from} to {one.serial_to}"
    if one.serial_from:
        return f"serial {one.serial_from} and up"
    return f"serial up to {one.serial_to}" if one.serial_to else ""


def _ordered(identity: Identity) -> list[Seen]:
    return sorted(identity.seen, key=lambda one: (EVIDENCE_KINDS.index(one.evidence.kind), one.at))


def _seen(one: Seen) -> list[str]:
    evidence = one.evidence
    lines = wrapped(f"{one.at}. {evidence.kind}: {evidence.says}", 2)
    lines += wrapped(f"{USES[one.use]}: {one.words}", 6)
    about = evidence_words(evidence)
    return lines + (wrapped(about, 6) if about else [])


def _override(one: AcceptedAnyway) -> list[str]:
    lines = [*wrapped(f"{one.supplier} {one.number}", 2), *wrapped(one.sentence(), 6)]
    return lines + (wrapped(f"taken back by {one.taken_back}", 6) if one.taken_back else [])


def _titled(title: str, lines: Sequence[str]) -> list[str]:
    return ["", title, *lines] if lines else []


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
