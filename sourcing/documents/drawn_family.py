"""Where boxes, lines and words of a family's drawing go: columns by the length of the path, boxes grouped by maker.

Every link has a band of its own in front of its box, so that words never lie on one another however many there are.
Sizes are in units of the drawing, one to a pixel on a screen; they are whole numbers.
"""

import textwrap
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from ..basics.value import Value, changed
from .plain_text import shown

MARGIN = 24
BOX, GUTTER = 232, 286
NUMBER_LINE, WORD_LINE = 20, 16
PADDING, GAP, HEADING = 9, 16, 26
NUMBER_LETTERS, WORD_LETTERS, LINK_LETTERS = 23, 30, 30
"""How many letters a line takes: text in a drawing does not break by itself."""
TRUNK, TRUNKS, TIP = 9, 5, 10


class Number(Value, frozen=True, kw_only=True):
    """A box: a number under its maker. `column`: links from our part. `struck`: it must not serve."""

    name: str
    column: int
    maker: str
    printed: str
    words: tuple[str, ...] = ()
    struck: bool = False


class Link(Value, frozen=True, kw_only=True):
    """A line between two boxes, from a column to the next one. `look`: a standing, 'doubted' or 'must-not'.

    `tip`: 'arrow' where it holds one way only, 'cross' where it must not be gone, else blank.
    """

    left: str
    right: str
    look: str
    tip: str
    words: tuple[str, ...]


class Words(Value, frozen=True, kw_only=True):
    """A line of text where it begins."""

    x: int
    y: int
    text: str
    look: str


class Box(Value, frozen=True, kw_only=True):
    """A box where it stands."""

    x: int
    y: int
    width: int
    height: int
    look: str


class Trunk(Value, frozen=True, kw_only=True):
    """What the links of one box share: a line across from (x, y) to `at`, and one from `upper` down to `lower`."""

    x: int
    y: int
    at: int
    upper: int
    lower: int


class Line(Value, frozen=True, kw_only=True):
    """A link's own line, across from the trunk of the box at (x, y)."""

    x: int
    y: int
    trunk: int
    to_x: int
    to_y: int
    look: str
    tip: str


class Drawn(Value, frozen=True, kw_only=True):
    """One family, how wide it is and where it ends."""

    width: int
    height: int
    boxes: tuple[Box, ...]
    trunks: tuple[Trunk, ...]
    lines: tuple[Line, ...]
    words: tuple[Words, ...]


class _Placed(Value, frozen=True, kw_only=True):
    number: Number
    x: int
    y: int
    height: int
    lines: tuple[tuple[str, str], ...]


def drawn(numbers: Sequence[Number], links: Sequence[Link], top: int) -> Drawn:
    """Put everything in its place from `top` down; `height` is where it ends. Links run from a column to the next."""
    into: defaultdict[str, list[Link]] = defaultdict(list)
    for link in links:
        into[link.right].append(link)
    placed: dict[str, _Placed] = {}
    words: list[Words] = []
    for column in range(max((one.column for one in numbers), default=0) + 1):
        _fill_column([one for one in numbers if one.column == column], into, placed, words, top)
    boxes = [_box(one) for one in placed.values()]
    words += [line for one in placed.values() for line in _box_words(one)]
    lines: list[Line] = []
    for name, some in into.items():
        _draw_links(some, placed[name], placed, lines, words)
    lines = list(_apart(lines))
    return Drawn(
        width=max((box.x + box.width for box in boxes), default=0) + MARGIN,
        height=max((box.y + box.height for box in boxes), default=top),
        boxes=tuple(boxes),
        trunks=tuple(_trunks(lines)),
        lines=tuple(lines),
        words=tuple(words),
    )


def _fill_column(
    numbers: Sequence[Number],
    into: Mapping[str, Sequence[Link]],
    placed: dict[str, _Placed],
    words: list[Words],
    top: int,
) -> None:
    y, maker = top, None
    for one in sorted(numbers, key=lambda one: (one.maker.casefold(), one.maker, one.printed, one.name)):
        x = MARGIN + one.column * (BOX + GUTTER)
        if one.maker != maker:
            words.append(Words(x=x, y=y + HEADING - 9, text=_cut(one.maker, WORD_LETTERS), look="heading"))
            y, maker = y + HEADING, one.maker
        lines = (
            *((text, "struck number" if one.struck else "number") for text in lines_of(one.printed, NUMBER_LETTERS)),
            *((text, "note") for words_of in one.words for text in lines_of(words_of, WORD_LETTERS)),
        )
        height = max(_height(lines), sum(_band(link) for link in into.get(one.name, ())))
        placed[one.name] = _Placed(number=one, x=x, y=y, height=height, lines=lines)
        y += height + GAP


def _height(lines: Sequence[tuple[str, str]]) -> int:
    return 2 * PADDING + sum(WORD_LINE if look == "note" else NUMBER_LINE for _, look in lines)


def _band(link: Link) -> int:
    return WORD_LINE * len(_link_lines(link)) + 14


def _link_lines(link: Link) -> list[str]:
    return [line for words in link.words for line in lines_of(words, LINK_LETTERS)]


def lines_of(text: str, letters: int) -> list[str]:
    """The text in lines of so many letters, harmless to look at; at least one line."""
    return textwrap.wrap(shown(text), letters, break_on_hyphens=False) or [""]


def _cut(text: str, letters: int) -> str:
    """A maker's name on one line."""
    said = shown(text)
    return said if len(said) <= letters else f"{said[: letters - 1]}…"


def _box(one: _Placed) -> Box:
    look = "ours" if one.number.column == 0 else "struck" if one.number.struck else "other"
    return Box(x=one.x, y=one.y, width=BOX, height=one.height, look=look)


def _box_words(one: _Placed) -> Iterable[Words]:
    y = one.y + PADDING
    for text, look in one.lines:
        y += WORD_LINE if look == "note" else NUMBER_LINE
        yield Words(x=one.x + PADDING + 1, y=y - 4, text=text, look=look)


def _draw_links(
    links: Sequence[Link],
    to: _Placed,
    placed: Mapping[str, _Placed],
    lines: list[Line],
    words: list[Words],
) -> None:
    """Each link's words in its band, its line under them."""
    y = to.y
    for link in links:
        start = placed[link.left]
        text_x = to.x - GUTTER + TRUNKS * TRUNK + 22
        for text in _link_lines(link):
            y += WORD_LINE
            words.append(Words(x=text_x, y=y - 3, text=text, look="link"))
        line_y = y + 4
        y += 14
        lines.append(
            Line(
                x=start.x + BOX,
                y=start.y + min(start.height, NUMBER_LINE + 2 * PADDING) // 2,
                trunk=to.x - GUTTER + 14,
                to_x=to.x - (TIP if link.tip else 0),
                to_y=line_y,
                look=link.look,
                tip=link.tip,
            )
        )


def _apart(lines: Sequence[Line]) -> Iterable[Line]:
    """Lines from different boxes of a column go down on different trunks, so that nobody follows the wrong one."""
    starts = sorted({(line.x, line.y) for line in lines})
    turn: dict[tuple[int, int], int] = {}
    for x, y in starts:
        turn[x, y] = sum(1 for other in turn if other[0] == x) % TRUNKS
    for line in lines:
        shift = (TRUNKS - 1 - turn[line.x, line.y]) * TRUNK
        yield changed(line, trunk=line.trunk + shift)


def _trunks(lines: Sequence[Line]) -> Iterable[Trunk]:
    shared: defaultdict[tuple[int, int, int], list[int]] = defaultdict(list)
    for line in lines:
        shared[line.x, line.y, line.trunk].append(line.to_y)
    for (x, y, at), ends in shared.items():
        yield Trunk(x=x, y=y, at=at, upper=min(y, *ends), lower=max(y, *ends))
