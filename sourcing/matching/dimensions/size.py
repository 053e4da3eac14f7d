"""What a designation says: a belt, a rolling bearing, a roller chain. Lengths keep their kind and where it is known
from.

A number alone never says what kind of length it is: a length is (value, unit, kind, source), and two lengths of
different kinds meet only through an addition that a table prints.
"""

from decimal import Decimal
from typing import Literal

from ...basics.value import Value

LengthKind = Literal["inside", "datum", "outside", "effective", "pitch", "nominal", "not said"]
Unit = Literal["in", "mm"]
FamilyName = Literal["belt", "bearing", "chain"]
Ground = Literal["form", "context", "word"]

MM_PER_INCH = Decimal("25.4")
"""Exact: the international inch (1959)."""


def in_mm(value: Decimal, unit: Unit) -> Decimal:
    """The value in millimetres, exact."""
    return value * MM_PER_INCH if unit == "in" else value


def shown(value: Decimal, places: str = "0.001") -> str:
    """A number for words: rounded to `places`, without trailing zeros, never in scientific notation."""
    return f"{value.quantize(Decimal(places)).normalize():f}"


class Length(Value, frozen=True, kw_only=True):
    """A length with its kind; the source in words.

    'not said': the text does not tell whether inside, datum or outside. 'nominal': the standard's own number, of
    which no table that was read says what length it is; it compares with its like only.
    """

    value: Decimal
    unit: Unit
    kind: LengthKind
    source: str

    def mm(self) -> Decimal:
        """Exact millimetres."""
        return in_mm(self.value, self.unit)

    def words(self) -> str:
        """'36 in inside'."""
        kind = "(kind of length not said)" if self.kind == "not said" else self.kind
        return f"{shown(self.value)} {self.unit} {kind}"


class Addition(Value, frozen=True, kw_only=True):
    """What to add to a section's base length to get length `to`. Holds for base lengths over `over` up to `up_to`.

    Where sources differ there are several additions to the same kind; the first is the one shown in words.
    """

    to: LengthKind
    add: Decimal
    source: str
    over: Decimal = Decimal(0)
    up_to: Decimal = Decimal(100000)


class Section(Value, frozen=True, kw_only=True):
    """A belt section. `widths` in `unit`, the first shown, the others printed by other tables.

    `groove` names what it runs in: sections sharing it fit alike. `base` is the kind of length its number means, and
    the kind its additions start from. For a V-ribbed belt the width is the pitch of one rib; for a synchronous belt
    there is none, and `pitch` is that of its teeth.
    """

    name: str
    family: str
    groove: str
    unit: Unit
    base: LengthKind
    widths: tuple[Decimal, ...] = ()
    thickness: Decimal | None = None
    pitch: Decimal | None = None
    light_duty: bool = False
    cogged: bool = False
    additions: tuple[Addition, ...] = ()
    note: str = ""

    def widths_mm(self) -> tuple[Decimal, ...]:
        """All printed top widths in millimetres, exact."""
        return tuple(in_mm(width, self.unit) for width in self.widths)


class BeltSize(Value, frozen=True, kw_only=True):
    """A belt by its designation. `count`: ribs or teeth; `width`: of a synchronous belt, in `width_unit`, None
    unsaid. `strands`: how many V-belts are joined side by side, None: several, how many is not said."""

    designation: str
    section: Section
    length: Length
    count: int | None = None
    width: Decimal | None = None
    width_unit: Unit = "mm"
    strands: int | None = 1

    @property
    def family(self) -> FamilyName:
        """'belt'."""
        return "belt"

    def words(self) -> str:
        """'B36: B section, 0.656 in wide, 36 in inside, 39 in outside'."""
        parts = [part for part in (*self._what(), self._wide(), self._lengths()) if part]
        return f"{self.designation}: {', '.join(parts)}"

    def _what(self) -> tuple[str, ...]:
        return self._section(), strands_words(self.strands, "joined "), self._count()

    def _section(self) -> str:
        if self.section.family == "plain":
            return "section not said"
        return f"{self.section.name} section"

    def _count(self) -> str:
        what = {"V-ribbed": "ribs", "synchronous": "teeth"}.get(self.section.family, "")
        return f"{self.count} {what}" if self.count and what else ""

    def _wide(self) -> str:
        if self.section.family == "synchronous":
            return f"{shown(self.width)} {self.width_unit} wide" if self.width is not None else "width not said"
        if self.section.family == "V-ribbed" or not self.section.widths:
            return ""
        # Three decimals of an inch always, so that widths stand under one another: 0.500 against 0.656.
        width = self.section.widths[0].quantize(Decimal("0.001")) if self.section.unit == "in" else None
        return f"{width} in wide" if width is not None else f"{shown(self.section.widths[0])} mm wide"

    def _lengths(self) -> str:
        others = [
            lengths[0].words()
            for kind in ("inside", "outside")
            if self.section.family in ("classical", "light duty") and (lengths := lengths_as(self, kind))
        ]
        return ", ".join(others) or self.length.words()


def strands_words(strands: int | None, joined: str = "") -> str:
    """'2 joined strands'; blank for a single one."""
    if strands is None:
        return f"several {joined}strands, how many is not said"
    return f"{strands} {joined}strands" if strands > 1 else ""


def lengths_as(size: BeltSize, kind: LengthKind) -> tuple[Length, ...]:
    """The belt's length as another kind: one value for each printed addition, none where no table prints one."""
    if size.length.kind == kind:
        return (size.length,)
    if "not said" in (kind, size.length.kind):
        return ()
    return tuple(length for base in _as_base(size) for length in _from_base(size.section, base, kind))


def kinds_of(section: Section) -> tuple[LengthKind, ...]:
    """The kinds of length that can be told of a section: its base and what its additions lead to."""
    return tuple(dict.fromkeys([section.base, *(addition.to for addition in section.additions)]))


def _as_base(size: BeltSize) -> tuple[Length, ...]:
    section, length = size.section, size.length
    if length.kind == section.base:
        return (length,)
    return tuple(
        Length(value=length.value - one.add, unit=length.unit, kind=section.base, source=one.source)
        for one in section.additions
        if one.to == length.kind and one.over < length.value - one.add <= one.up_to
    )


def _from_base(section: Section, base: Length, kind: LengthKind) -> tuple[Length, ...]:
    if kind == section.base:
        return (base,)
    return tuple(
        Length(value=base.value + one.add, unit=base.unit, kind=kind, source=one.source)
        for one in section.additions
        if one.to == kind and one.over < base.value <= one.up_to
    )


class BearingSize(Value, frozen=True, kw_only=True):
    """A rolling bearing. Millimetres; outside and width None where the table has no row for the number.

    `basic` blank: told by its dimensions only; which kind of bearing has them is not said.
    `closure` blank: nothing said of seals or shields. `clearance` blank: normal, or nothing said. `bore_in`: an inch
    bore in an otherwise metric bearing. `doubt`: what the designation may mean beside its plain reading. `tail`: a
    suffix nobody here can read.
    """

    designation: str
    basic: str
    bore: Decimal
    outside: Decimal | None = None
    width: Decimal | None = None
    bore_in: Decimal | None = None
    closure: str = ""
    clearance: str = ""
    ring: str = ""
    doubt: str = ""
    tail: str = ""

    @property
    def family(self) -> FamilyName:
        """'bearing'."""
        return "bearing"

    def words(self) -> str:
        """'6203-2RS: 17 x 40 x 12 mm, two rubber seals'."""
        bore = f"{shown(self.bore_in, '0.0001')} in bore ({shown(self.bore)} mm)" if self.bore_in else shown(self.bore)
        rest = self._rest()
        parts = [f"{bore}{rest}", self.closure or "seals or shields not said", self.clearance, self.ring, self.doubt]
        return f"{self.designation}: {', '.join(part for part in parts if part)}"

    def _rest(self) -> str:
        if self.outside is None:
            return " mm bore"
        wide = f" x {shown(self.width)} mm" if self.width is not None else " mm, width not said"
        return f" x {shown(self.outside)}{wide}"


class ChainSize(Value, frozen=True, kw_only=True):
    """A roller chain. Millimetres. `pitches`: how long it is, None where not said (one link is one pitch).

    `number` blank, `roller` None: told by pitch and width only. `counted`: the length was a count of links or pitches,
    and is exact; in feet or metres it may be rounded. `bare`: a length without a unit, links or feet ('#40 x 44').
    `piece`: 'chain', 'connecting link' or 'offset link'. `strands` None: several, how many is not said.
    """

    designation: str
    number: str
    standard: str
    pitch: Decimal
    roller: Decimal | None
    width: Decimal
    heavy: bool = False
    strands: int | None = 1
    pitches: Decimal | None = None
    counted: bool = True
    bare: Decimal | None = None
    piece: str = "chain"

    @property
    def family(self) -> FamilyName:
        """'chain'."""
        return "chain"

    def words(self) -> str:
        """'#40: 12.7 mm pitch, roller 7.92 mm, 7.92 mm wide inside'."""
        parts = [
            f"{shown(self.pitch)} mm pitch",
            f"roller {shown(self.roller)} mm" if self.roller is not None else "roller not said",
            f"{shown(self.width)} mm wide inside",
            "heavy" if self.heavy else "",
            strands_words(self.strands),
            f"{shown(self.pitches, '0.1')} pitches" if self.pitches is not None else "",
            f"{shown(self.bare)} long, links or feet not said" if self.bare is not None else "",
            self.piece if self.piece != "chain" else "",
        ]
        return f"{self.designation}: {', '.join(part for part in parts if part)}"


Size = BeltSize | BearingSize | ChainSize


class Found(Value, frozen=True, kw_only=True):
    """A designation found in a text from `start` to `end`, and the ground it needs to be believed.

    'form': its form is distinctive. 'context': it must be known from elsewhere that the text speaks of such a thing.
    'word': a word of the trade for it must stand in the text.
    """

    size: Size
    start: int
    end: int
    ground: Ground
