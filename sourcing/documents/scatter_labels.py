"""Words beside the points of a drawing so that none lies on another, nor on a point; far ones get a thin line."""

from collections.abc import Iterator, Sequence

from ..basics.value import Value

LETTER, BOLD = 7, 8
"""How wide a letter is, about, and rather too wide."""
HIGH = 14
SPACE = 8
"""From a point to its words."""
AROUND = ((1, 0), (-1, 0), (0, -1), (0, 1), (1, -1), (-1, -1), (1, 1), (-1, 1), (2, -1), (-2, -1), (2, 1), (-2, 1))
FARTHER = (0, 18, 36, 54, 80, 110, 150, 200, 260, 330)


class Box(Value, frozen=True, kw_only=True):
    """A rectangle: its left and upper edge, its width and height, in whole pixels."""

    x: int
    y: int
    width: int
    height: int

    def meets(self, other: "Box") -> bool:
        """Whether they share anything."""
        return (
            self.x < other.x + other.width
            and other.x < self.x + self.width
            and self.y < other.y + other.height
            and other.y < self.y + self.height
        )

    def within(self, other: "Box") -> bool:
        """Whether it lies inside the other."""
        return (
            other.x <= self.x
            and other.y <= self.y
            and self.x + self.width <= other.x + other.width
            and self.y + self.height <= other.y + other.height
        )


class Wanted(Value, frozen=True, kw_only=True):
    """Words for the point at x and y; any look but none is bold."""

    x: int
    y: int
    text: str
    look: str = ""


class Label(Value, frozen=True, kw_only=True):
    """Words in their place: x and y of their base line's start, and the path of the line to the point, or blank."""

    x: int
    y: int
    text: str
    look: str
    leader: str = ""


def placed(
    wanted: Sequence[Wanted], room: Box, taken: Sequence[Box], rather_not: Sequence[Sequence[Box]]
) -> list[Label]:
    """The words in their places, nearest first; what finds none is left out.

    `taken` is where nothing may lie. `rather_not` is what is better kept clear of too, the most important first.
    """
    busy, labels = list(taken), []
    for one in wanted:
        clear = [[box for some in rather_not[:most] for box in some] for most in range(len(rather_not), -1, -1)]
        found = next((place for more in clear if (place := _place(one, room, [*busy, *more]))), None)
        if found:
            box, line = found
            busy += [box, *line]
            leader = _leader(one, box) if line else ""
            labels.append(Label(x=box.x + 2, y=box.y + HIGH - 3, text=one.text, look=one.look, leader=leader))
    return labels


def _place(one: Wanted, room: Box, busy: Sequence[Box]) -> tuple[Box, list[Box]] | None:
    for box, far in _candidates(one):
        line = _along(one, box) if far else []
        # The line begins at the point itself, which is taken by its own mark.
        others = [other for other in busy if not _holds(other, one)]
        if box.within(room) and not _meet([box], busy) and not _meet(line, others):
            return box, line
    return None


def _meet(some: Sequence[Box], others: Sequence[Box]) -> bool:
    return any(one.meets(other) for one in some for other in others)


def _candidates(one: Wanted) -> Iterator[tuple[Box, bool]]:
    """Places from near to far, and whether one is so far that it needs a line."""
    width = len(one.text) * (BOLD if one.look else LETTER) + 4
    for more in FARTHER:
        for right, down in AROUND:
            away = SPACE + more
            x = one.x + (away * min(1, right) if right > 0 else 0)
            x = one.x - away * (1 if right == -1 else 2) - width if right < 0 else x + (away if right == 2 else 0)
            x = one.x - width // 2 if right == 0 else x
            y = one.y - HIGH // 2 + down * (HIGH // 2 + away)
            yield Box(x=x, y=y, width=width, height=HIGH), more > 0


def _end(one: Wanted, box: Box) -> tuple[int, int]:
    """The point of the box's edge nearest to the point."""
    return (
        min(max(one.x, box.x), box.x + box.width),
        min(max(one.y, box.y), box.y + box.height),
    )


def _along(one: Wanted, box: Box) -> list[Box]:
    """Small boxes along the line from the point to the words."""
    x, y = _end(one, box)
    steps = max(2, max(abs(x - one.x), abs(y - one.y)) // 6)
    ways = [(one.x + (x - one.x) * at // steps, one.y + (y - one.y) * at // steps) for at in range(2, steps)]
    return [Box(x=x - 1, y=y - 1, width=2, height=2) for x, y in ways]


def _holds(box: Box, one: Wanted) -> bool:
    return box.x <= one.x <= box.x + box.width and box.y <= one.y <= box.y + box.height


def _leader(one: Wanted, box: Box) -> str:
    end = _end(one, box)
    return f"M{one.x} {one.y}L{end[0]} {end[1]}"
