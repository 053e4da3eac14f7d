"""A family of numbers put together by hand, with everything a family can have. All names are invented."""

from datetime import date

from sourcing.basics.equivalence import OurPart, Path, Relation, Statement
from sourcing.basics.family_view import (
    Banned,
    DeadEnd,
    FamilyEdge,
    FamilyView,
    KitItem,
    Member,
    NotFollowed,
    PartFamily,
)
from sourcing.basics.part_number import OURS, PartNumber

BELT = OurPart(code="BELT-AUGER", name="Auger drive belt", size="B36")
CODE = PartNumber(printed="BELT-AUGER", maker=OURS)


def by(maker: str, printed: str) -> PartNumber:
    """A maker's number."""
    return PartNumber(printed=printed, maker=maker)


def said(at: int, left: PartNumber, relation: Relation, right: PartNumber, **fields: object) -> Statement:
    """A statement of the table with its number."""
    values: dict[str, object] = {
        "standing": "maker",
        "source": "Norrowby parts list NW-826",
        "stated_on": date(2025, 10, 21),
        "stated_by": "Oona Brandeth",
        "number": at,
    }
    return Statement(left=left, relation=relation, right=right, **{**values, **fields})  # type: ignore[arg-type]


OLD, NEW = by("Norrowby", "NW-40388"), by("Norrowby", "NW-41388")
CROSS, CHEAP, LIGHT = by("Corrivane", "CV-B36K"), by("Dunmarrow", "DM-77120"), by("", "4L390 <light>")
KIT, KEEPER = by("Norrowby", "NW-K 900"), by("Norrowby", "NW-3120")
S1 = said(1, CODE, "same part", OLD)
S2 = said(2, OLD, "superseded by", NEW, source="Norrowby service letter 25-07", machine="NW-826", serial_from="0700")
S3 = said(3, OLD, "same part", CROSS, standing="fitted", source="fitted on job 2025-0193, served")
S4 = said(4, OLD, "same part", CHEAP, standing="supplier", source="Larkmoor's cross list", doubt="slips & burns")
S5 = said(5, OLD, "must not", LIGHT, standing="fitted", source="burned on job 2025-0101")
S6 = said(6, KIT, "kit contains", CODE, count=2, source="Norrowby kit list")
S7 = said(7, NEW, "same part", CROSS, standing="unchecked", source="a note on the wall")
S8 = said(8, CROSS, "substitute", by("Corrivane", "CV-B36H"), standing="unchecked", condition="sheave above 5 in")


def member(number: PartNumber, *links: Statement, **fields: object) -> Member:
    """A number at the end of that path."""
    path = Path(links=links)
    values: dict[str, object] = {"standing": path.standing, "conditions": path.conditions, "steps": len(links)}
    return Member(number=number, path=path, **{**values, **fields})  # type: ignore[arg-type]


FAMILY = PartFamily(
    part=BELT,
    members=(
        member(CODE),
        member(OLD, S1, sold=False, asked=True),
        member(CROSS, S1, S3, sold=True),
        member(CHEAP, S1, S4, sold=True),
        member(NEW, S1, S2, sold=True, newest=True),
        member(S8.right, S1, S3, S8, sold=False),
    ),
    edges=(
        FamilyEdge(left=0, right=1, statement=S1, on_path=True),
        FamilyEdge(left=1, right=2, statement=S3, on_path=True),
        FamilyEdge(left=1, right=3, statement=S4, on_path=True),
        FamilyEdge(left=1, right=4, statement=S2, on_path=True),
        FamilyEdge(left=4, right=2, statement=S7, on_path=False),
        FamilyEdge(left=2, right=5, statement=S8, on_path=True),
    ),
    banned=(Banned(number=LIGHT, statement=S5),),
    in_kits=(KitItem(number=KIT, count=2, links=(S6,)),),
    not_followed=(NotFollowed(statement=S8, why="it holds for machine NW-700; on the bench is NW-826"),),
    dead_ends=(DeadEnd(number=KEEPER, path=Path(links=(S2,))),),
)
VIEW = FamilyView(asked="nw 40388", families=(FAMILY,))
