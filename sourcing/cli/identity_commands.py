"""Commands around the question which part it is: evidence, judgement, an offer taken all the same, belt length."""

from __future__ import annotations

from pathlib import Path, PurePath
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk, measure, one_word
from .output import show

if TYPE_CHECKING:
    from ..actions.identity import LineIdentity

Job = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]
Line = Annotated[str, typer.Argument(help="Label of the line: 1, 2 or A, B.")]
TakeBack = Annotated[bool, typer.Option("--take-back", help="Take an earlier acceptance back instead.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("identity")(identity)
    app.command("evidence")(evidence)
    app.command("accept-anyway")(accept_anyway)
    app.command("belt-length")(belt_length)


def identity(
    job: Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")] = "",
    line: Annotated[str, typer.Argument(help="Label of the line: 1, 2 or A, B.")] = "",
    file: Annotated[
        Path | None, typer.Option("--file", help="TOML file with [machine] and [[evidence]] instead of a job's line.")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show which part a job's line needs, on what evidence, and what contradicts it."""
    from ..actions.identity import look_up_identity, show_identity

    if bool(file) == bool(job) or bool(job) != bool(line):
        raise typer.BadParameter("say a job and its line, or --file")
    at_desk = desk(database, at, "")
    _show(look_up_identity(at_desk, file) if file else show_identity(at_desk, job, line), json)


def evidence(
    job: Job,
    line: Line,
    kind: Annotated[
        str,
        typer.Option(
            "--kind",
            help="machine list, component list, drive geometry, seller's list, printed on the removed part, or "
            "removed part measured.",
        ),
    ] = "",
    number: Annotated[str, typer.Option("--number", help="The part number it names.")] = "",
    maker: Annotated[str, typer.Option("--maker", help="Whose number that is.")] = "",
    size: Annotated[str, typer.Option("--size", help="The size it names, such as B88.")] = "",
    says: Annotated[str, typer.Option("--says", help="What else it says: 'aramid cord, wrapped'.")] = "",
    model: Annotated[str, typer.Option("--model", help="The model the list is for; a component list: its model.")] = "",
    serial_from: Annotated[str, typer.Option("--serial-from", help="First serial number it is for, inclusive.")] = "",
    serial_to: Annotated[str, typer.Option("--serial-to", help="Last serial number it is for, inclusive.")] = "",
    source: Annotated[str, typer.Option("--list", help="Which list it is: its name, edition, page.")] = "",
    photo: Annotated[str, typer.Option("--photo", help="File name of a photo.")] = "",
    take_back: Annotated[
        int | None, typer.Option("--take-back", help="Take this line of evidence back instead; --says why.")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Add evidence which part a job's line needs, or take some back; what then follows is shown."""
    from ..actions.identity import add_evidence, take_evidence_back
    from ..basics.evidence import EVIDENCE_KINDS, Evidence

    at_desk = desk(database, at, who)
    if take_back is not None:
        _show(take_evidence_back(at_desk, job, line, take_back, says), json)
        return
    new = Evidence(
        kind=one_word(kind, "kind", EVIDENCE_KINDS),
        number=number,
        maker=maker,
        size=size,
        words=says,
        model=model,
        serial_from=serial_from,
        serial_to=serial_to,
        source=source,
        photo=PurePath(photo).name,
    )
    _show(add_evidence(at_desk, job, line, new), json)


def accept_anyway(
    job: Job,
    line: Line,
    supplier: Annotated[str, typer.Argument(help="The supplier's short name.")],
    number: Annotated[str, typer.Argument(help="A number the offer bears.")],
    words: Annotated[str, typer.Option("--words", help="Why it is taken all the same, or taken back.")],
    take_back: TakeBack = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take an offer for a job's line although something speaks against it. Your name and words stay on it."""
    from ..actions.accept_anyway import OfferNamed, accept_anyway, take_acceptance_back

    at_desk, offer = desk(database, at, who), OfferNamed(supplier=supplier, number=number)
    if take_back:
        kept = take_acceptance_back(at_desk, job, line, offer, words)
        show(kept, f"{supplier} {number} is no longer accepted for line {line} of job {job}.", json)
        return
    one = accept_anyway(at_desk, job, line, offer, words)
    show(one, f"{one.supplier} {one.number} for line {line} of job {job}: {one.sentence()}", json)


def belt_length(
    driver: Annotated[str, typer.Option("--driver", help="Diameter of the driving pulley.")],
    driven: Annotated[str, typer.Option("--driven", help="Diameter of the driven pulley.")],
    centers: Annotated[str, typer.Option("--centers", help="Distance between the shafts' centres.")] = "",
    length: Annotated[str, typer.Option("--length", help="Belt length, to work out the centre distance instead.")] = "",
    unit: Annotated[str, typer.Option("--unit", help="Of all measures: in or mm.")] = "in",
    kind: Annotated[
        str,
        typer.Option("--diameters", help="outside, datum, pitch, effective or inside: gives a length of that kind."),
    ] = "outside",
    crossed: Annotated[bool, typer.Option("--crossed", help="The belt runs crossed.")] = False,
    json: Json = False,
) -> None:
    """Work out a belt's length from two pulleys and their centre distance, or the distance from a length."""
    from ..actions.belt_length import CAUTION, CAUTION_HANDS, DIAMETERS, UNITS, TwoPulleys, belt_for, centres_for

    if bool(centers) == bool(length):
        raise typer.BadParameter("say either --centers or --length")
    drive = TwoPulleys(
        driver=measure(driver),
        driven=measure(driven),
        unit=one_word(unit, "unit", UNITS),
        kind=one_word(kind, "diameters", DIAMETERS),
        crossed=crossed,
    )
    found = belt_for(drive, measure(centers)) if centers else centres_for(drive, measure(length))
    show(found, "\n".join((found.words, CAUTION, CAUTION_HANDS)), json)


def _show(found: LineIdentity, json: bool) -> None:
    from ..documents.identity import identity_text

    asks = f" (asks for {found.asked_for})" if found.asked_for else ""
    what = f"Job {found.job}, line {found.label}: {found.title}{asks}" if found.job else f"Look-up{asks}"
    head = (what, f"Machine: {found.machine}")
    show(found, identity_text(head, found.identity, found.overrides), json)
