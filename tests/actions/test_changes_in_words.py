"""Every field of terms and settings in the words of its page: nothing of a value is lost, nothing of a file is left."""

import re
from collections.abc import Callable, Iterator
from datetime import date, time

import pytest

from sourcing.actions.settings_labels import CHOICES, as_filled_in
from sourcing.actions.terms_labels import RULES, in_the_form
from sourcing.basics.terms_view import FieldChange, field_changes
from sourcing.basics.toml_text import stated
from sourcing.basics.value import Value, changed
from tests.basics.test_field_changes import USUAL_SETTINGS, USUAL_TERMS
from tests.documents.test_settings_words import FULL as FULL_SETTINGS
from tests.full_terms import FREIGHTS, FULL

Words = Callable[[str, str], str]
OF_FEES = {"document": "once on a paper", "piece": "for each piece"}


def _every() -> Iterator[tuple[FieldChange, Value, Words]]:
    for one in field_changes(USUAL_SETTINGS, FULL_SETTINGS):
        yield one, FULL_SETTINGS, as_filled_in
    for at, freight in enumerate(FREIGHTS):
        terms = changed(FULL, freight=freight)
        for one in field_changes(USUAL_TERMS, terms):
            if at == 0 or one.field.startswith("freight."):
                yield one, terms, in_the_form


def _leaves(found: object) -> Iterator[object]:
    if isinstance(found, Value):
        for one in stated(found).values():
            yield from _leaves(one)
    elif isinstance(found, tuple):
        for one in found:
            yield from _leaves(one)
    elif found is not None:
        yield found


def _said(field: str, leaf: object) -> str:
    """How the page has a value."""
    if field in CHOICES and isinstance(leaf, (str, bool)):
        return CHOICES[field][leaf]
    if isinstance(leaf, bool):
        return "yes" if leaf else "no"
    if isinstance(leaf, time):
        return f"{leaf:%H:%M}"
    words = str(leaf)
    return {"freight.rule": RULES, "fee_rules": OF_FEES}.get(field, {}).get(words, words)


@pytest.mark.parametrize(("change", "value", "words"), list(_every()))
def test_nothing_of_a_value_is_lost(change: FieldChange, value: Value, words: Words) -> None:
    """Each figure, name and day of what will hold stands in what is shown; no mark of a file does."""
    found: object = value
    for name in change.field.split("."):
        found = getattr(found, name)
    shown = words(change.after, change.field)
    for leaf in _leaves(found):
        assert _said(change.field, leaf) in shown, (change, shown)
    assert not re.search(r"[\[\]{}]|[a-z]_[a-z]", shown)
    if not isinstance(found, (str, date)):
        assert '"' not in shown


@pytest.mark.parametrize("words", [as_filled_in, in_the_form])
def test_nothing_is_said_where_nothing_is_set(words: Words) -> None:
    """And never an empty cell."""
    for field in ("taxes", "calendar.closed", "cut_off", "prices_hold_days", "tax.name"):
        assert words("", field) in ("none", "not set", "not known", "until the next sheet")
