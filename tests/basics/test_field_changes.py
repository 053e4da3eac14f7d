"""What changed between two versions of terms or settings is told with the value that holds, also where it is the usual.

A cut-off of 12:00 was shown as "not set" before it was kept, for 12:00 is what a file may leave out.
"""

import tomllib
from collections.abc import Iterator
from datetime import date
from decimal import Decimal

import msgspec
import pytest

from sourcing.basics.settings import MarkupBand, Settings, Shop
from sourcing.basics.terms import CUT_OFF_NOT_KNOWN, Terms
from sourcing.basics.terms_view import field_changes
from sourcing.basics.toml_text import toml_text
from sourcing.basics.value import Value, changed
from tests.documents.test_settings_words import FULL as FULL_SETTINGS
from tests.full_terms import FREIGHTS, FULL

USUAL_TERMS = Terms(supplier=FULL.supplier, name="A", starts_on=FULL.starts_on, currency="USD")
USUAL_SETTINGS = Settings(
    shop=Shop(name="A"),
    currency="USD",
    locale="en_US",
    markup_bands=(MarkupBand(from_cost=Decimal(0), multiplier=Decimal(2)),),
    labour_rate=Decimal(90),
    technician_cost=Decimal(30),
)


def _pairs() -> Iterator[tuple[Value, Value]]:
    """Each field of full terms and settings set alone, and put back to what is usual."""
    for usual, full in ((USUAL_TERMS, FULL), (USUAL_SETTINGS, FULL_SETTINGS)):
        for field in msgspec.structs.fields(full):
            with_it = changed(usual, **{field.name: getattr(full, field.name)})
            if with_it != usual:
                yield usual, with_it
                yield with_it, usual
    for one in FREIGHTS[1:]:
        yield FULL, changed(FULL, freight=one)
        yield changed(FULL, freight=one), FULL


def _at(value: object, field: str) -> object:
    for name in field.split("."):
        value = getattr(value, name, None)
    return value


@pytest.mark.parametrize(("before", "after"), list(_pairs()))
def test_what_is_told_is_what_holds(before: Value, after: Value) -> None:
    """Both sides of every field that differs, and no field that does not."""
    told = field_changes(before, after)
    assert told
    for one in told:
        for text, value in ((one.before, _at(before, one.field)), (one.after, _at(after, one.field))):
            if one.field == "cut_off" and value == CUT_OFF_NOT_KNOWN:
                assert text == "not known"
            elif text:
                assert tomllib.loads(f"x = {text}", parse_float=Decimal)["x"] == _plain(value), one
            else:
                assert value in (None, "", ()), one


def _plain(value: object) -> object:
    return tomllib.loads(f"x = {toml_text(value)}", parse_float=Decimal)["x"]


def test_a_cut_off_set_to_the_usual_hour_is_told() -> None:
    """From not known to noon, and back."""
    unknown = changed(USUAL_TERMS, cut_off=CUT_OFF_NOT_KNOWN)
    assert [one.words() for one in field_changes(unknown, USUAL_TERMS)] == ["cut_off not known -> 12:00:00"]
    assert [one.words() for one in field_changes(USUAL_TERMS, unknown)] == ["cut_off 12:00:00 -> not known"]


def test_the_same_in_other_digits_is_no_change() -> None:
    """30 and 30.00."""
    one, other = (changed(USUAL_TERMS, minimum_order=Decimal(text)) for text in ("30", "30.00"))
    assert field_changes(one, other) == ()


def test_what_is_usual_is_told_as_what_it_is() -> None:
    """A default beside what was said; nothing where nothing was."""
    one = changed(USUAL_SETTINGS, quote_valid_days=3, cautions_dated=date(2026, 1, 2))
    words = [change.words() for change in field_changes(USUAL_SETTINGS, one)]
    assert words == ["quote_valid_days 7 -> 3", "cautions_dated not set -> 2026-01-02"]
