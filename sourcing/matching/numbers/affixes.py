"""What a supplier puts before or after every number: found in one sheet's column, proposed, applied once confirmed.

An affix is proposed where it stands on at least 95 of 100 numbers and any is known without it, or where at least twenty
are known without it and that is five times as many as chance would give; never where more than a tenth as many are
known with it, for then it belongs to the maker's number. Chance: of all numbers with so many letters and figures, the
share that is known; it is large among short numbers, and cutting proves little (common practice, no source).
"""

import re
from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from string import digits
from typing import Literal

from ...basics.number_rule import NumberRule
from ...basics.part_number import number_key, number_keys
from ...basics.value import Value

ON_ALL = 0.95
FEWEST_ROWS = 10
FEWEST_MET = 20
MET_FOR_EACH_KNOWN = 10
MET_FOR_EACH_BY_CHANCE = 5
SHORTEST_REST = 4
LONGEST_AFFIX = 6
"""Letters and figures of an affix at most; what is longer belongs to the number."""

_DASHES = str.maketrans(dict.fromkeys("‐‑‒–—―−－", "-") | {"\N{NO-BREAK SPACE}": " "})
_SIGNS = re.compile(r"[^\W_]+")
_SIDES = {"prefix": "before", "suffix": "after"}
Kind = Literal["prefix", "suffix"]


class AffixProposal(Value, frozen=True, kw_only=True):
    """A rule for a person to confirm or refuse, with the counts that speak for it.

    Of `rows` numbers `bearing` bear the affix; of those, `met` are known without it and `known` as they stand.
    """

    rule: NumberRule
    rows: int
    bearing: int
    met: int
    known: int

    @property
    def words(self) -> str:
        """The proposal as a sentence without a full stop."""
        said = f"{self.rule.supplier} puts '{self.rule.text}' {_SIDES[self.rule.kind]} {self.bearing} of {self.rows}"
        met = f"{self.met} of them are numbers we know without it, {self.known} as they stand"
        return f"{said} numbers; {met}"


def propose_affixes(supplier: str, printed: Sequence[str], known: Collection[str]) -> tuple[AffixProposal, ...]:
    """Rules that the numbers of one supplier's sheet suggest, the best founded first. `known`: keys of known numbers.

    Nothing is to be applied before a person has confirmed it.
    """
    numbers = sorted({text for one in printed if (text := _plain(one).upper())})
    keys = dict(zip(numbers, number_keys(numbers), strict=True))
    rows = sum(map(bool, keys.values()))
    tally = _tally(keys, frozenset(known), rows)
    proposals = [
        AffixProposal(
            rule=NumberRule(supplier=supplier, kind=kind, text=affix),
            rows=rows,
            bearing=found.bearing,
            met=found.met,
            known=found.known,
        )
        for (kind, affix), found in tally.items()
        if _is_founded(found, rows)
    ]
    proposals.sort(key=lambda one: (-one.met, -one.bearing, -len(one.rule.text), one.rule.kind, one.rule.text))
    return _without_pieces(proposals)


def strip(rules: Iterable[NumberRule], printed: str) -> str:
    """The number without the confirmed affixes: at most one prefix and one suffix, the longest that fits.

    Case and the kind of dash do not count, every other sign does: the rule 'PB-' leaves 'PB1234' as it is. What would
    leave fewer than four letters and figures stays on.
    """
    text = printed.strip()
    ordered = sorted(rules, key=lambda rule: -len(rule.text))
    for kind in ("prefix", "suffix"):
        text = next((rest for rule in ordered if rule.kind == kind and (rest := _rest(rule, text))), text)
    return text


def dressed(rules: Iterable[NumberRule], keys: Iterable[str]) -> set[str]:
    """The keys with each rule's affix put on, for looking numbers up as the suppliers print them."""
    every = list(keys)
    affixes = [(rule.kind, number_key(rule.text)) for rule in rules]
    return {affix + key if kind == "prefix" else key + affix for kind, affix in affixes for key in every}


@dataclass
class _Tally:
    """Of the numbers that bear one affix: how many, known without it, known with it, and known without it by chance."""

    bearing: int = 0
    met: int = 0
    known: int = 0
    by_chance: float = 0.0


Shape = tuple[int, int]
"""How many figures and how many other letters."""


def _tally(keys: Mapping[str, str], known: frozenset[str], rows: int) -> Mapping[tuple[Kind, str], _Tally]:
    """What speaks for each beginning and end that enough numbers bear, as printed in capitals."""
    counts = Counter(affix for text in keys for affix in _affixes_of(text))
    fewest = min(FEWEST_MET, max(FEWEST_ROWS, ON_ALL * rows))
    judged = {affix: _Tally() for affix, count in counts.items() if count >= fewest}
    shapes = Counter(map(_shape, known))
    sizes = {(kind, affix): _shape(number_key(affix)) for kind, affix in judged}
    for text, key in keys.items():
        shape, as_it_stands = _shape(key), key in known
        for affix in _affixes_of(text):
            if (found := judged.get(affix)) is None:
                continue
            figures, letters = sizes[affix]
            cut = figures + letters
            if len(key) - cut < SHORTEST_REST:
                continue
            found.bearing += 1
            found.known += as_it_stands
            found.met += (key[cut:] if affix[0] == "prefix" else key[:-cut]) in known
            found.by_chance += _share_known((shape[0] - figures, shape[1] - letters), shapes)
    return judged


def _affixes_of(text: str) -> Iterator[tuple[Kind, str]]:
    """'PB-', 'P' and 'PB' of 'PB-1234': up to a sign between, or letters without one; figures alone need a sign."""
    pieces = list(_SIGNS.finditer(text))
    if not pieces:
        return
    first, last, more = pieces[0], pieces[-1], len(pieces) > 1
    if more and len(first[0]) <= LONGEST_AFFIX:
        yield "prefix", text[: pieces[1].start()]
    if more and len(last[0]) <= LONGEST_AFFIX:
        yield "suffix", text[pieces[-2].end() :]
    yield from (("prefix", text[: first.start() + length]) for length in _letters(first[0], more))
    yield from (("suffix", text[last.end() - length :]) for length in _letters(last[0][::-1], more))


def _letters(piece: str, more: bool) -> Iterator[int]:
    """Lengths of the beginnings of a piece that are letters and, where the number has no more, leave some of it."""
    for length in range(1, min(LONGEST_AFFIX, len(piece) - (not more)) + 1):
        if not piece[length - 1].isalpha():
            return
        yield length


def _is_founded(found: _Tally, rows: int) -> bool:
    """Whether the counts are enough to ask a person: see the head of this file."""
    if not found.met or found.met < MET_FOR_EACH_KNOWN * found.known:
        return False
    everywhere = rows >= FEWEST_ROWS and found.bearing >= ON_ALL * rows
    return everywhere or (found.met >= FEWEST_MET and found.met >= MET_FOR_EACH_BY_CHANCE * found.by_chance)


def _shape(key: str) -> Shape:
    figures = sum(map(key.count, digits))
    return figures, len(key) - figures


def _share_known(shape: Shape, shapes: Mapping[Shape, int]) -> float:
    """Of all keys with as many figures and letters, the share that is known."""
    figures, letters = shape
    possible: int = 10**figures * 26**letters
    return shapes.get(shape, 0) / possible


def _without_pieces(proposals: Sequence[AffixProposal]) -> tuple[AffixProposal, ...]:
    """Without rules that are part of a better one of the same numbers: 'P' beside 'PB-'."""
    kept: dict[Kind, list[AffixProposal]] = defaultdict(list)
    for one in proposals:
        if not any(_same_numbers(one, other) for other in kept[one.rule.kind]):
            kept[one.rule.kind].append(one)
    best = {id(one) for every in kept.values() for one in every}
    return tuple(one for one in proposals if id(one) in best)


def _same_numbers(one: AffixProposal, other: AffixProposal) -> bool:
    short, long = sorted((one.rule.text, other.rule.text), key=len)
    return long.startswith(short) if one.rule.kind == "prefix" else long.endswith(short)


def _rest(rule: NumberRule, text: str) -> str:
    """The text without the rule's affix; '' where it has none or nothing would be left."""
    plain, affix = _plain(text).upper(), _plain_affix(rule.text)
    if len(plain) != len(text):
        return ""  # a letter with a longer capital: places would be wrong
    if rule.kind == "prefix" and plain.startswith(affix):
        rest = text[len(affix) :]
    elif rule.kind == "suffix" and plain.endswith(affix):
        rest = text[: len(text) - len(affix)]
    else:
        return ""
    return rest.strip(" -./_") if len(number_key(rest)) >= SHORTEST_REST else ""


def _plain_affix(text: str) -> str:
    return text.translate(_DASHES).upper()


def _plain(text: str) -> str:
    return text.strip().translate(_DASHES)
