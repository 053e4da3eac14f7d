"""What to look for next where it is not settled which part a need is, most telling first."""

from collections.abc import Iterator, Sequence

from ...basics.evidence import CLUES
from ...basics.identity import Certainty, Seen
from ...basics.job import Machine


def next_steps(seen: Sequence[Seen], machine: Machine, certainty: Certainty) -> tuple[str, ...]:
    """Steps in words; none where lists agree."""
    if certainty == "lists agree":
        return ()
    return tuple(dict.fromkeys(_steps(seen, machine, certainty)))


def _steps(seen: Sequence[Seen], machine: Machine, certainty: Certainty) -> Iterator[str]:
    kinds = {one.evidence.kind for one in seen if one.use != "set aside"}
    for one in seen:
        if one.use == "open":
            yield f"clear up the {one.evidence.kind}: {one.words}"
    if not (machine.model and machine.serial):
        yield "read model and serial number from the machine's own plate"
    if "machine list" not in kinds:
        yield f"find the maker's parts list for {_machine(machine)}"
    if "component list" not in kinds:
        what = machine.component or "the component the part sits in"
        yield f"read the tag on {what} and find its maker's list: it may have a number of its own"
    if certainty == "contradicted":
        yield "ask the maker or a dealer with model and serial number before anything is ordered"
    elif certainty != "one list" and "drive geometry" not in kinds:
        yield "for a belt: measure pulleys and centre distance ('sourcing belt-length'): it gives a size, not the part"
    if kinds and kinds <= CLUES:
        yield "what is printed on the removed part, or measured on it, is a clue only: it may be a wrong part"


def _machine(machine: Machine) -> str:
    name = " ".join(part for part in (machine.maker, machine.model) if part) or machine.description
    return f"{name}, serial {machine.serial}" if machine.serial else name
