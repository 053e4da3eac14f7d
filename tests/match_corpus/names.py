"""Invented makers with the ways others write them, and the patterns of their numbers."""

from dataclasses import dataclass

from tests.match_corpus.chance import Chance

HEADS = (
    "Vel", "Brom", "Thar", "Quen", "Ostr", "Dun", "Kess", "Morr", "Lund", "Pell", "Grim", "Harst", "Fenn", "Skal",
    "Torv", "Wex", "Yarr", "Zell", "Cald", "Norr", "Eck", "Ild", "Juv", "Tavis", "Corr", "Ambr", "Uth", "Plev",
)  # fmt: skip
TAILS = (
    "omarrick", "isholt", "avessen", "oquorn", "udravik", "elisk", "atharn", "ombry", "essick", "urven", "oskel",
    "ithane", "abrel", "ondric", "evrin", "owby", "imarl", "austry", "endahl", "ivorne", "ulbeck", "arroke",
)  # fmt: skip
LEGAL = ("Inc.", "Inc", "Corp.", "Ltd", "GmbH", "Co.", "LLC", "America", "International")
SECOND_WORDS = ("Products", "Industries", "Group", "Works", "Brands", "Technologies", "Supply")
LINE_HEADS = (
    "Sil",
    "Ver",
    "Lum",
    "Pro",
    "Max",
    "Aero",
    "Terra",
    "Nova",
    "Cryo",
    "Opti",
    "Dura",
    "Omni",
    "Ultra",
    "Tri",
)
LINE_TAILS = ("drex", "vanta", "loom", "mire", "shade", "quell", "tide", "brisk", "vire", "nook", "holm", "garde")

LINE_ENDS = ("", "", "II", "Plus", "Home", "Classic", "Select", "Elite", "Studio", "Go", "Mini")


@dataclass(frozen=True)
class Maker:
    """A maker: the usual name, other names for the same firm, and how its numbers look.

    `pattern` has '?' for a digit, '@' for a letter; the rest stands. `lines` are the names of its goods.
    """

    name: str
    short: str
    others: tuple[str, ...]
    pattern: str
    lines: tuple[str, ...]
    tail_mark: str


def invented_name(chance: Chance, taken: set[str]) -> str:
    """A name nobody in `taken` bears; it is added there."""
    while True:
        name = chance.pick(HEADS) + chance.pick(TAILS)
        if name not in taken:
            taken.add(name)
            return name


def _pattern(chance: Chance) -> str:
    lead, word = chance.letters(chance.number(1, 3)), chance.letters(2)
    return chance.pick(
        (
            f"{lead}-????", f"{lead}????", f"{lead}-???@", f"{lead}???@", f"{word}@-????", f"{lead}?@???", "??-?????",
            f"{lead}-??@??", f"{lead}-????", f"{word}-@?-???", "???@@??", f"{word}?????", "?????-??", f"{lead}@???",
            f"{word}@???@", f"{lead}-???", "??????", f"{lead}-?????", f"{lead} ????", f"{word}/???",
        )
    )  # fmt: skip


def _line(chance: Chance) -> str:
    word = chance.pick(LINE_HEADS) + chance.pick(LINE_TAILS)
    return f"{word} {chance.pick(LINE_ENDS)}".strip()


def maker(chance: Chance, taken: set[str], given: str = "") -> Maker:
    """A new maker, or one by the name given."""
    name = given or invented_name(chance, taken)
    consonants = [sign for sign in name.upper()[1:] if sign not in "AEIOU"]
    short = name[0].upper() + "".join(consonants[: chance.number(1, 2)])
    others = [f"{name} {chance.pick(LEGAL)}", f"{name} {chance.pick(SECOND_WORDS)}", name.upper()]
    if chance.odds(0.35):
        others.append(short)
    if chance.odds(0.2):
        others.append(invented_name(chance, taken))
    lines = tuple(_line(chance) for _ in range(14))
    return Maker(name, short, tuple(others), _pattern(chance), lines, chance.pick(("", "-", "-", "/", "")))


def by_pattern(chance: Chance, pattern: str) -> str:
    """A number by the pattern; it does not begin with 0 unless the pattern does."""
    signs = ""
    for sign in pattern:
        digit = str(chance.number(0 if signs else 1, 9))
        signs += digit if sign == "?" else chance.letters(1) if sign == "@" else sign
    return signs
