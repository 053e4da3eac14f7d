"""Sentences about fields of a file in the words of the form in which a person fills those fields in."""

import re
from collections.abc import Callable, Mapping

from ..basics.problem import Refused
from ..basics.value import changed

STEP = re.compile(r"\{ [a-z_]+ = ([^,{}]+), [a-z_]+ = ([^,{}]+) \}")
"""An entry of a list of steps, which forms have as 'left = right'."""

QUOTED = re.compile(r"'([a-z_]+(?:\.[a-z0-9_]+)*(?: (?:or|and) [a-z_]+)*)'")
NAME = re.compile(r"\b[a-z]+(?:_[a-z]+|\.[a-z0-9_]+)+\b")
"""A name with a dot or an underline is a file's wherever it stands; a plain word is one only in quotation marks."""


def in_form_words(text: str, labels: Mapping[str, str]) -> str:
    """The text with fields called as the form calls them. `labels` by dotted field, entries of a list not counted.

    Of a field the form does not have by itself, the one it belongs to is named; what no label is for stays as it is.
    """
    text = QUOTED.sub(lambda found: f"'{_each(found[1], labels)}'", STEP.sub(r"\1 = \2", text))
    return NAME.sub(lambda found: f"'{label}'" if (label := label_in(found[0], labels)) else found[0], text)


def refused_in_words(refusal: Refused, words: Callable[[str], str]) -> Refused:
    """The refusal with what is wrong in the words of a form."""
    return Refused(*(changed(one, what=words(one.what)) for one in refusal.problems))


def label_in(field: str, labels: Mapping[str, str]) -> str:
    """What the form calls a field; blank where it has none. A last part alone will do where it is of one field only."""
    name = re.sub(r"\.\d+", "", field)
    while name not in labels and "." in name:
        name = name.rpartition(".")[0]
    if name in labels:
        return labels[name]
    last = {label for one, label in labels.items() if one.endswith(f".{name}")}
    return last.pop() if len(last) == 1 else ""


def _each(names: str, labels: Mapping[str, str]) -> str:
    """'Charge an order or a parcel' for 'freight.charge'; each of 'freight.charge or weight_bands'."""
    return "".join(
        one if one in (" or ", " and ") else label_in(one, labels) or one for one in re.split("( or | and )", names)
    )
