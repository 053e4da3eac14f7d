"""A family of numbers as a drawing (SVG 1.1, W3C): our part at the left, every number by how many links lie between.

What a line means stands beside it in words; its look only helps. One file that needs nothing from outside.
"""

from collections.abc import Iterator

from ..basics.equivalence import Statement, only_words, when_words
from ..basics.family_view import FamilyEdge, FamilyView, KitItem, Member, PartFamily
from ..basics.part_number import OURS, PartNumber
from ..basics.value import Value, changed
from .drawn_family import BOX, GUTTER, MARGIN, WORD_LINE, Drawn, Link, Number, Words, drawn, lines_of
from .family_words import member_notes, more_words
from .pages import render

TOP = 62
BETWEEN = 44
NARROWEST = BOX + GUTTER + BOX + 2 * MARGIN
LETTER = 6
"""How wide a letter of the notes is, about, so that they end before the sheet does."""

LOOKS = (
    ("fitted", "fitted: the shop fitted it and it served"),
    ("maker", "maker: the maker's document"),
    ("supplier", "supplier: a supplier says so"),
    ("unchecked", "unchecked: nobody checked"),
    ("doubted", "doubted: counts as unchecked"),
    ("must-not", "must not serve"),
)

TIPS = {"superseded by": "arrow", "substitute": "arrow", "must not": "cross"}
"""What holds one way only has an arrow: from the old number to the new one, from what is asked to what serves."""


class Legend(Value, frozen=True, kw_only=True):
    """A line's look and what it means."""

    x: int
    y: int
    look: str
    text: str


def family_svg(view: FamilyView) -> str:
    """The drawing. A number that belongs to no part of ours is drawn by itself."""
    parts, y = [], TOP
    for family in view.families:
        parts.append(_family(family, y))
        y = parts[-1].height + BETWEEN
    width = max((part.width for part in parts), default=0)
    width = max(width, NARROWEST)
    notes = list(_notes(view, y, width))
    bottom = (notes[-1].y + 34) if notes else y
    legend = [
        Legend(x=MARGIN + at % 3 * (width - 2 * MARGIN) // 3, y=bottom + at // 3 * 22, look=look, text=text)
        for at, (look, text) in enumerate(LOOKS)
    ]
    return render(
        "family.svg",
        asked=view.asked,
        width=width,
        height=legend[-1].y + MARGIN,
        boxes=[box for part in parts for box in part.boxes],
        trunks=[trunk for part in parts for trunk in part.trunks],
        lines=[line for part in parts for line in part.lines],
        words=[word for part in parts for word in part.words],
        notes=notes,
        legend=legend,
    )


def _family(family: PartFamily, top: int) -> Drawn:
    numbers = [_member(at, one, family) for at, one in enumerate(family.members)]
    links, also = _links(family)
    numbers = [changed(one, words=(*one.words, *also.get(at, ()))) for at, one in enumerate(numbers)]
    others = list(_others(family))
    return drawn([*numbers, *(one for one, _ in others)], [*links, *(link for _, link in others)], top)


def _column(member: Member) -> int:
    return len(member.path.links)


def _member(at: int, member: Member, family: PartFamily) -> Number:
    # One link says its own standing; of several the weakest counts, and that is not to be read off at a glance.
    trust = (f"the whole path counts as {member.standing}",) if _column(member) > 1 else ()
    if member.forbidden:
        trust = (f"must not serve: {member.forbidden.source}",)
    return Number(
        name=f"member {at}",
        column=_column(member),
        maker=_maker(member.number),
        printed=member.number.printed,
        words=(*member_notes(at, family), *trust),
        struck=member.forbidden is not None,
    )


def _maker(number: PartNumber) -> str:
    if number.maker == OURS:
        return "Our part"
    return number.maker or "Maker not known"


def _links(family: PartFamily) -> tuple[list[Link], dict[int, list[str]]]:
    """Lines between neighbouring columns; a link that would run across boxes is said in words in the later box."""
    links: list[Link] = []
    also: dict[int, list[str]] = {}
    for edge in family.edges:
        first, second = sorted((edge.left, edge.right), key=lambda at: (_column(family.members[at]), at))
        if edge.on_path and _column(family.members[second]) == _column(family.members[first]) + 1:
            links.append(_link(f"member {first}", f"member {second}", edge.statement))
        else:
            also.setdefault(second, []).append(f"also: {_also(edge, family)}")
    return links, also


def _also(edge: FamilyEdge, family: PartFamily) -> str:
    left, right = family.members[edge.left].number, family.members[edge.right].number
    said = changed(edge.statement, left=left, right=right).claim
    return f"{said} ({_trust(edge.statement)}){_number(edge.statement)}"


def _link(left: str, right: str, statement: Statement) -> Link:
    return Link(
        left=left,
        right=right,
        look=_look(statement),
        tip=TIPS.get(statement.relation, ""),
        words=tuple(_link_words(statement)),
    )


def _look(statement: Statement) -> str:
    if statement.relation == "must not":
        return "must-not"
    return "doubted" if statement.doubt else statement.standing


def _trust(statement: Statement) -> str:
    return f"{statement.standing}; doubted: {statement.doubt}" if statement.doubt else statement.standing


def _number(statement: Statement) -> str:
    return "" if statement.number is None else f", statement {statement.number}"


def _link_words(statement: Statement) -> Iterator[str]:
    count = f" {statement.count} x" if statement.relation == "kit contains" else ""
    yield f"{statement.relation}{count} ({_trust(statement)})"
    if statement.holds_when:
        said = when_words if statement.relation == "must not" else only_words
        yield said(statement.holds_when)
    number = "" if statement.number is None else f"{statement.number}: "
    yield f"{number}{statement.source}, {statement.stated_on}"


def _others(family: PartFamily) -> Iterator[tuple[Number, Link]]:
    """What stands beside the family: numbers banned, what the part contains as a kit, kits it is in."""
    for at, banned in enumerate(family.banned):
        start = _place(family, banned.statement.left)
        column = _column(family.members[start]) + 1
        box = Number(
            name=f"banned {at}",
            column=column,
            maker=_maker(banned.number),
            printed=banned.number.printed,
            words=("must not serve",),
            struck=True,
        )
        yield box, _link(f"member {start}", box.name, banned.statement)
    for at, item in enumerate(family.contents):
        yield _kit(f"content {at}", item, "in the kit", "kit contains")
    for at, item in enumerate(family.in_kits):
        yield _kit(f"kit {at}", item, "a kit, not the part itself", "is in this kit")


def _kit(name: str, item: KitItem, what: str, relation: str) -> tuple[Number, Link]:
    count = "count disputed" if item.count is None else f"{item.count} in one kit"
    maker, printed = _maker(item.number), item.number.printed
    box = Number(name=name, column=1, maker=maker, printed=printed, words=(what, count))
    last = item.links[-1]
    words = (f"{relation} ({_trust(last)})", *(w for one in item.links for w in list(_link_words(one))[1:]))
    return box, Link(left="member 0", right=name, look=_look(last), tip="", words=words)


def _place(family: PartFamily, number: PartNumber) -> int:
    """Which member the number is: by maker and key, else by key alone, for a maker may stand under another name."""
    members = [one.number for one in family.members]
    same = [at for at, one in enumerate(members) if one.node == number.node]
    return next(iter(same + [at for at, one in enumerate(members) if one.key == number.key]), 0)


def _notes(view: FamilyView, y: int, width: int) -> Iterator[Words]:
    letters = (width - 2 * MARGIN) // LETTER
    for text in more_words(view):
        for line in lines_of(text, letters):
            yield Words(x=MARGIN, y=y, text=line, look="note")
            y += WORD_LINE
        y += 4
