"""A kind of goods: what it is called, what sizes it comes in, in what its sisters differ. Read from short lines."""

from dataclasses import dataclass
from pathlib import Path

CHANGES = {
    "c": "colour",
    "p": "pack",
    "h": "side",
    "g": "generation",
    "k": "kit",
    "z": "size",
    "r": "refurbished",
    "a": "compatible",
    "n": "number",
}
"""What a sister may differ in, by the letter used in the lines."""


@dataclass(frozen=True)
class Kind:
    """Nouns (the first is the usual one), uses, measures by unit, letters of CHANGES, prices in cents, features.

    A feature is a group of words for the same thing.
    """

    nouns: tuple[str, ...]
    uses: tuple[str, ...]
    measures: tuple[tuple[str, tuple[str, ...]], ...]
    changes: str
    cents: tuple[int, int]
    features: tuple[tuple[str, ...], ...]


def _measures(text: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    return tuple(
        (unit.strip(), tuple(choices.split()))
        for unit, _, choices in (part.partition(":") for part in text.split(" / "))
        if choices
    )


def kinds(table: str) -> tuple[Kind, ...]:
    """One kind a line: nouns | uses | unit: amounts / unit: amounts | changes | cents low-high | features.

    Nouns and uses are separated by commas, features by commas with '=' between words for the same.
    """
    made = []
    for line in table.strip().splitlines():
        if line.startswith("#"):
            continue
        nouns, uses, measures, changes, cents, features = (part.strip() for part in line.split("|"))
        low, high = cents.split("-")
        made.append(
            Kind(
                tuple(nouns.split(", ")),
                tuple(uses.split(", ")) if uses else ("",),
                _measures(measures),
                changes,
                (int(low), int(high)),
                tuple(tuple(group.split("=")) for group in features.split(", ")),
            )
        )
    return tuple(made)


def goods(name: str) -> tuple[Kind, ...]:
    """The kinds of the table `goods/<name>.txt`."""
    return kinds(Path(__file__).with_name("goods").joinpath(f"{name}.txt").read_text(encoding="utf-8"))
