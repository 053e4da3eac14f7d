"""How a part number gets damaged between the maker and a supplier's sheet, one function a class.

Shares and kinds of typing errors: Verhoeff 1969 (via N. Wagner's text); look-alike signs: ISMP 12 January 2000 and
ISO 3779, which leaves I, O and Q out; spreadsheets: Ziemann et al. 2016 (Genome Biology 17:177), Abeysooriya et al.
2021 (PLoS Computational Biology), and what readers of tables were measured to do. What says none of these is common
practice, no source.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from tests.match_corpus.chance import Chance

Harm = Callable[[str, Chance], str]


@dataclass(frozen=True)
class Damage:
    """A class of damage. `shape`: the number it needs, '?' a digit, '@' a letter ('': any number will do).

    `is_harmless`: the key is still the same, by case, blanks and signs set aside. `weight`: how often.
    """

    name: str
    harm: Harm
    shape: str = ""
    is_harmless: bool = False
    weight: float = 1.0


def _swap(signs: str) -> Harm:
    """Each pair of `signs`, 'O0' or several by blanks, read as the other."""
    pairs = [(one, other) for pair in signs.split() for one, other in ((pair[0], pair[1]), (pair[1], pair[0]))]

    def harm(number: str, chance: Chance) -> str:
        found = [(at, to) for at, sign in enumerate(number) for one, to in pairs if sign == one]
        if not found:
            return number
        at, to = chance.pick(found)
        return number[:at] + to + number[at + 1 :]

    return harm


def _digits(number: str) -> list[int]:
    return [at for at, sign in enumerate(number) if sign.isdigit()]


def _substituted(number: str, chance: Chance) -> str:
    at = chance.pick(_digits(number))
    return number[:at] + str((int(number[at]) + chance.number(1, 9)) % 10) + number[at + 1 :]


def _other(digit: str, chance: Chance) -> str:
    return str((int(digit) + chance.number(1, 9)) % 10)


def _transposed(gap: int) -> Harm:
    def harm(number: str, chance: Chance) -> str:
        places = [
            at for at in range(len(number) - gap)
            if number[at].isalnum() and number[at + gap].isalnum() and number[at] != number[at + gap]
        ]  # fmt: skip
        if not places:
            return number
        at = chance.pick(places)
        signs = list(number)
        signs[at], signs[at + gap] = signs[at + gap], signs[at]
        return "".join(signs)

    return harm


def _left_out(number: str, chance: Chance) -> str:
    at = chance.pick(_digits(number))
    return number[:at] + number[at + 1 :]


def _added(number: str, chance: Chance) -> str:
    at = chance.pick(_digits(number))
    return number[:at] + (number[at] if chance.odds(0.6) else chance.digits(1)) + number[at:]


def _twin(gap: int) -> Harm:
    """aa becomes bb, or a?a becomes b?b."""

    def harm(number: str, chance: Chance) -> str:
        for at in range(len(number) - gap):
            if number[at].isdigit() and number[at] == number[at + gap]:
                to = _other(number[at], chance)
                return number[:at] + to + number[at + 1 : at + gap] + to + number[at + gap + 1 :]
        return number

    return harm


def _phonetic(number: str, chance: Chance) -> str:
    """Thirty heard as thirteen: 30 becomes 13, 13 becomes 30."""
    for at in range(len(number) - 1):
        two = number[at : at + 2]
        if two[0] in "3456789" and two[1] == "0":
            return number[:at] + "1" + two[0] + number[at + 2 :]
        if two[0] == "1" and two[1] in "3456789":
            return number[:at] + two[1] + "0" + number[at + 2 :]
    return number


def _date_serial(number: str, chance: Chance) -> str:
    month, day = map(int, number.split("-"))
    return str((date(2025, month, day) - date(1899, 12, 30)).days)


def _month_name(number: str, chance: Chance) -> str:
    return f"{number[4:]}-{number[:3].title()}"


def _scientific(number: str, chance: Chance) -> str:
    return f"{int(number):.5E}".replace("E+0", "E+")


def _full_width(number: str, chance: Chance) -> str:
    return "".join(chr(ord(sign) + 0xFEE0) if "!" <= sign <= "~" else sign for sign in number)


CLASSES = (
    Damage("case", lambda n, c: n.lower(), is_harmless=True),
    Damage("punctuation dropped", lambda n, c: "".join(filter(str.isalnum, n)), is_harmless=True),
    Damage("typographic dash", lambda n, c: n.replace("-", c.pick("–—‑−")), "@@-?????", is_harmless=True),
    Damage("full-width digits", _full_width, is_harmless=True),
    Damage("surrounding blank or quote", lambda n, c: c.pick(("\u00a0{} ", "'{}", " {}\u00a0", "' {} '")).format(n),
           is_harmless=True),
    Damage("O/0", _swap("O0")), Damage("I/1", _swap("I1")), Damage("l/1", _swap("l1")), Damage("Z/2", _swap("Z2")),
    Damage("1/7", _swap("17")), Damage("S/5", _swap("S5")), Damage("B/8", _swap("B8")),
    Damage("D/0 and Q/0", _swap("D0 Q0")),
    Damage("G/6", _swap("G6")), Damage("6/G 4/A 7/T U/V C/G E/F", _swap("4A 7T UV CG EF")),
    Damage("0/8/9 misread", _swap("08 89 09")), Damage("single substitution", _substituted),
    Damage("adjacent transposition", _transposed(1)), Damage("digit left out", _left_out),
    Damage("digit doubled or added", _added), Damage("twin error", _twin(1)),
    Damage("jump transposition", _transposed(2)),
    Damage("jump twin", _twin(2)), Damage("phonetic", _phonetic),
    Damage("leading zeros lost", lambda n, c: n.lstrip("0"), "00?????"),
    Damage("E read as exponent", lambda n, c: n.split("E")[0] + "0" * int(n.split("E")[1]), "???E?"),
    Damage("scientific notation", _scientific, "????????????"),
    Damage("more than 15 digits", lambda n, c: n[:15] + "0" * (len(n) - 15), "???????????????????"),
    Damage("trailing .0", lambda n, c: n + ".0", "?????"),
    Damage("thousands separator", lambda n, c: f"{int(n):,}", "??????", is_harmless=True),
    Damage("date", _month_name, "MAR-1?"), Damage("date serial number", _date_serial, "12-1?"),
    Damage("ISO date-like number", lambda n, c: f"{n[8:]}/{n[5:7]}/{n[:4]}", "20??-11-1?"),
    Damage("fraction", lambda n, c: "02-Jan", "1/2", weight=0.1),
    Damage("boolean", lambda n, c: "1", "TRUE", weight=0.1),
    Damage("NA", lambda n, c: "", "NA", weight=0.1), Damage("infinity", lambda n, c: "9999-12-31", "1e400", weight=0.1),
    Damage("hex", lambda n, c: str(int(n, 16)), "0x1?", weight=0.2),
    Damage("plus sign", lambda n, c: n[1:], "+?????", is_harmless=True),
    Damage("formula", lambda n, c: str(int(n[:3]) + int(n[4:])), "-1?+?", weight=0.2),
    Damage("decimal tail", lambda n, c: n[:-1], "?.?0", weight=0.3),
    Damage(".50", lambda n, c: f"0{n[:2]}", ".?0", weight=0.1),
    Damage("prefix of a distributor", lambda n, c: f"PLB{c.pick(('', '-', ' '))}{n}"),
)  # fmt: skip
"""43 classes that leave the thing the same. Suffix, side, pack, compatible and superseded make another thing of it."""
