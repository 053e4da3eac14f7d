"""What the owner's page of all jobs holds, for its papers."""

from datetime import date
from decimal import Decimal

from sourcing.basics.margin import Group, LowLine, Margins, NamedLeak, WaitingBack
from sourcing.basics.value import changed
from sourcing.margins.figures import margin
from tests.builders import usd

QUOTED, KNOWN = margin(usd("1000.00"), usd("950.00")), margin(usd("1000.00"), usd("962.69"))


def group(name: str, title: str = "") -> Group:
    """A group of twelve lines, nine of them here."""
    return Group(
        name=name, title=title, lines=12, under_floor=1, quoted=QUOTED, ordered=QUOTED, ordered_lines=12,
        received=KNOWN, received_lines=9, known=KNOWN, leaked=usd("14.95"),
    )  # fmt: skip


NOTHING = margin(usd("0.00"), usd("0.00"))
MARGINS = Margins(
    by="supplier",
    currency="USD",
    jobs=3,
    low=(
        LowLine(
            job="2026-0001", label="1", title="Replace the auger drive belt", supplier="stonegarth", stage="received",
            margin=margin(usd("166.60"), usd("138.75")), floor_percent=Decimal(25),
        ),
    ),
    groups=(
        group("stonegarth", "Stonegarth Trade Parts"),
        changed(group("no supplier"), quoted=NOTHING, known=NOTHING),
    ),
    whole=group("all"),
    leaks=(
        NamedLeak(
            name="second freight on backorder", when="after the quote", count=2, amount=usd("14.95"),
            worst_job="2026-0001",
        ),
        NamedLeak(name="surplus pack", when="beside the margin", count=1, amount=usd("6.32"), worst_job="2026-0002"),
    ),
    months=(group("2026-03"),),
    back=(
        WaitingBack(
            order="PO-2026-0001", job="2026-0001", what="old part, 1 x NW-40388", by=date(2026, 4, 1), is_late=True
        ),
    ),
    notes=("quoted in another currency than USD and not counted: 2026-0003",),
)  # fmt: skip
