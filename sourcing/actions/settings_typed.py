"""The shop's settings as a person fills them in: texts of a form to the values a file such as shop.toml would give."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

import msgspec

from ..basics.contradiction import Contradiction
from ..basics.problem import Problem, Refused, problem
from ..basics.settings import Settings
from ..basics.value import Value, from_plain
from .file_faults import faults_in, list_kind, table_kind
from .settings_file import settings_problems
from .settings_labels import label_of
from .terms_edit import plain_of, read_typed

Typed = str | Sequence[Any] | Mapping[str, Any]
"""A text, a list of such, or a table of such; a blank text is not set."""


def settings_from(before: Settings | None, typed: Mapping[str, Typed]) -> Settings:
    """The settings with these fields as they were typed; each stands for the whole field, blank for not set.

    Fields that were not typed stay as they were. An entry of a list that is blank throughout is left out; bands are put
    in rising order. Refuses with all that can't be read or can't hold.
    """
    kinds = {field.name: field.type for field in msgspec.structs.fields(Settings)}
    table = plain_of(before) if before else {}
    for name, one in typed.items():
        found = _read(one, kinds[name])
        if found is None:
            table.pop(name, None)
        else:
            table[name] = found
    for bands in (table.get("markup_bands"), *(one.get("bands") for one in table.get("category_bands", ()))):
        _in_order(bands)
    return _made(table)


def _made(table: Mapping[str, Any]) -> Settings:
    faults = list(faults_in(table, Settings))
    if faults:
        raise Refused(*(_told(one) for one in faults))
    settings = from_plain(table, Settings)
    wrong = settings_problems(settings, named=label_of)
    if wrong:
        raise Refused(*wrong)
    return settings


def _told(one: Contradiction) -> Problem:
    return problem("entry-contradicts", entry="", field=label_of(one.field), found=one.found)


def _read(typed: Typed, kind: Any, is_entry: bool = False) -> Any:
    """As a file would give it; None where nothing was typed. An empty list stays one, but in an entry of a list."""
    if isinstance(typed, Mapping):
        table = _table_of(kind)
        kinds = {field.name: field.type for field in msgspec.structs.fields(table)}
        made = {name: _read(one, kinds[name], is_entry) for name, one in typed.items()}
        return {name: one for name, one in made.items() if one is not None} or None
    if isinstance(typed, str):
        text = " ".join(typed.split())
        return read_typed(text, kind) if text else None
    found = [_read(one, list_kind(kind), True) for one in typed]
    return [one for one in found if one is not None] or (None if is_entry else [])


def _table_of(kind: Any) -> type[Value]:
    table = table_kind(kind)
    assert table, kind
    return table


def _in_order(bands: object) -> None:
    """Bands by the cost from which they hold, where all of them say one; the others are told when they are checked."""
    if isinstance(bands, list) and all(isinstance(one, dict) for one in bands):
        starts = [one.get("from_cost") for one in bands]
        if all(isinstance(start, (int, Decimal)) for start in starts):
            bands.sort(key=lambda one: one["from_cost"])
