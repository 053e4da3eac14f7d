"""A job's line as a need: its evidence judged, and what it asks of offers."""

from collections.abc import Sequence

from sqlalchemy import Connection

from ..basics.choice import Asks
from ..basics.equivalence import Bench, Path
from ..basics.identity import Identity, Tie
from ..basics.job import Job, JobLine, Machine
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..basics.value import changed
from ..matching.equivalences.bench import fits, why_not_followed
from ..matching.equivalences.family import Family
from ..matching.equivalences.must_nots import must_nots, perhaps
from ..matching.identity.identify import Question, identify
from ..matching.identity.verdict import ban_on
from ..storage.jobs import change_job
from .evaluate import Catalogue


def line_of(job: Job, label: str) -> JobLine:
    """The job's line with that label ('1', 'A'). Refuses where there is none."""
    lines = dict(job.labelled())
    if label not in lines:
        raise refused("no-such-job-line", job=job.number, found=label, known=", ".join(lines))
    return lines[label]


def line_with_part(job: Job, label: str) -> JobLine:
    """The same, refusing a line that asks for no part."""
    line = line_of(job, label)
    if not line.part:
        raise refused("line-without-part", job=job.number, label=label)
    return line


def keep_line(connection: Connection, job: Job, label: str, line: JobLine) -> None:
    """The job with this line in the place of the one with that label."""
    lines = {name: line if name == label else one for name, one in job.labelled()}
    agreed = tuple(one for name, one in lines.items() if name.isdigit())
    add_ons = tuple(one for name, one in lines.items() if not name.isdigit())
    change_job(connection, changed(job, agreed=agreed, add_ons=add_ons))


def identity_of(found: Catalogue, machine: Machine, line: JobLine) -> Identity:
    """Which of our parts the line needs, judged by its evidence."""
    parts = {code: found.families[code].part for code in _codes(found, line)}
    return identify(Question(line=line, machine=machine), lambda number: ties(found, number, bench_of(machine)), parts)


def asks_of(found: Catalogue, job: Job, line: JobLine) -> Asks:
    """What the line asks of offers, with what is doubtful about it. A line without evidence raises no doubt."""
    judged = identity_of(found, job.machine, line)
    doubts = list(judged.conflicts)
    if line.evidence and not judged.settled:
        doubts.insert(0, f"which part it is stands open: {judged.words}")
    elif judged.certainty == "sellers' lists only":
        doubts.insert(0, judged.words)
    return Asks(
        asked=judged.asked,
        overrides=line.overrides,
        warnings=tuple(doubts),
        bench=bench_of(job.machine),
        contradicted=judged.against_ordering(line.part),
    )


def bench_of(machine: Machine) -> Bench | None:
    """The machine on the bench as statements about machines are compared with it; None where its model is not noted."""
    if not number_key(machine.model):
        return None
    return Bench(
        machine=machine.model,
        serial=machine.serial,
        component=machine.component_model,
        component_serial=machine.component_serial,
    )


def ties(found: Catalogue, number: PartNumber, bench: Bench | None) -> Sequence[Tie]:
    """The parts of ours the number stands for. A number without a maker stands for whoever bears it.

    Where it stands for a part on other machines only, or for none and must not serve for some, the ties are banned,
    with the reason.
    """
    tied = (_tie(found, code, number, bench) for code in sorted(found.known.bearers.get(number.key, ())))
    return [one for one in tied if one is not None] or _only_forbidden(found, number, bench)


def _only_forbidden(found: Catalogue, number: PartNumber, bench: Bench | None) -> list[Tie]:
    """The parts a number that stands for none must not serve for; the path is then the must-not alone."""
    graph = found.families.graph
    bans: dict[str, Tie] = {}
    for one in must_nots(graph, perhaps(graph, number), bench):
        if one.part is not None:
            code = one.part.code
            bans.setdefault(code, Tie(part=code, path=Path(links=(one.statement,)), banned=str(one.statement)))
    return [bans[code] for code in sorted(bans)]


def _tie(found: Catalogue, code: str, number: PartNumber, bench: Bench | None) -> Tie | None:
    here, every = found.family(code, bench), found.families[code]
    own = _nodes(here, number)
    if own:
        best = min(own, key=lambda node: (len(here.paths[node].links), node))
        return Tie(part=code, path=here.paths[best], banned=ban_on((best,), here.forbidden))
    elsewhere = _nodes(every, number)
    if not elsewhere or bench is None:
        return None
    path = every.paths[elsewhere[0]]
    wrong = [f"{link}; {why_not_followed(link, bench)}" for link in path.links if fits(link, bench) == "contradicts"]
    return Tie(part=code, path=path, banned="; ".join(wrong))


def _nodes(family: Family, number: PartNumber) -> list[tuple[str, str]]:
    if number.maker:
        own = family.makers.node(number)
        return [own] if own in family.paths else []
    return [node for node in family.paths if node[1] == number.key]


def _codes(found: Catalogue, line: JobLine) -> set[str]:
    numbers = {number_key(one.number) for one in line.evidence if one.number}
    borne = {code for key in numbers for code in found.known.bearers.get(key, ())}
    return borne | ({line.part} if line.part in found.families else set())
