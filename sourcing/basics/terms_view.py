"""Terms as they are looked at: a supplier's versions, what changed from one to the next, and what is not known."""

from collections.abc import Iterator, Mapping
from datetime import date

import msgspec

from .deed import Deed
from .problem import Problem
from .terms import CUT_OFF_NOT_KNOWN, Terms
from .toml_text import stated, toml_text
from .value import Value


class FieldChange(Value, frozen=True, kw_only=True):
    """A field with its text before and after, in the notation of suppliers.toml; blank: not set."""

    field: str
    before: str
    after: str

    def words(self) -> str:
        """'minimum_order 25.00 -> 30.00'."""
        return f"{self.field} {self.before or 'not set'} -> {self.after or 'not set'}"


class NotKnown(Value, frozen=True, kw_only=True):
    """What the terms leave open, and what follows from it. `keeps_from_ranking`: offers of his can't be ranked."""

    what: str
    follows: str
    keeps_from_ranking: bool = False


class SupplierTerms(Value, frozen=True, kw_only=True):
    """All terms of one supplier, by the day from which they hold; `on` is the day that was asked about.

    `not_known` is of the terms that hold on that day. `deeds`: what persons changed since they were first taken in.
    """

    supplier: str
    name: str
    on: date
    versions: tuple[Terms, ...]
    not_known: tuple[NotKnown, ...] = ()
    deeds: tuple[Deed, ...] = ()

    @property
    def holds(self) -> Terms | None:
        """What holds on that day; None: nothing does yet."""
        begun = [one for one in self.versions if one.starts_on <= self.on]
        return begun[-1] if begun else None


class TermsChange(Value, frozen=True, kw_only=True):
    """What was done to a supplier's terms: `terms` None where they were withdrawn. `before` is what held until then.

    `past`: why days that are over were changed; blank: none were. `told`: what to mind about it.
    """

    supplier: str
    name: str
    starts_on: date
    before: Terms | None
    terms: Terms | None
    changes: tuple[FieldChange, ...]
    past: str = ""
    told: tuple[Problem, ...] = ()


def _stated(value: Value, path: str = "") -> Iterator[tuple[str, object]]:
    """Every field that says something, dotted, with its value; a list stands whole."""
    for name, one in stated(value).items():
        where = f"{path}.{name}" if path else name
        if isinstance(one, Value):
            yield from _stated(one, where)
        else:
            yield where, one


def field_changes(before: Value | None, after: Value | None) -> tuple[FieldChange, ...]:
    """What one says otherwise than the other, in the order of the fields; 30 and 30.00 are the same.

    Each with the value that holds, said or left to what is usual: a cut-off set to the usual hour is told as that hour.
    Where one of them is None only what is said of the other is told.
    """
    if before is None or after is None:
        old, new = (dict(_stated(one)) if one else {} for one in (before, after))
    else:
        old, new = dict(_every_field(before)), dict(_every_field(after))
    told = ((name, old.get(name), new.get(name)) for name in _in_order(old, new))
    return tuple(
        FieldChange(field=name, before=_text(name, was), after=_text(name, then))
        for name, was, then in told
        if was != then and (_text(name, was) or _text(name, then))
    )


def changed_fields(before: Terms | None, after: Terms | None) -> tuple[FieldChange, ...]:
    """The same of terms, but for whose and from when they are."""
    return tuple(one for one in field_changes(before, after) if one.field not in ("supplier", "starts_on"))


def _every_field(value: Value, path: str = "") -> Iterator[tuple[str, object]]:
    for field in msgspec.structs.fields(value):
        one, where = getattr(value, field.name), f"{path}.{field.name}" if path else field.name
        if isinstance(one, Value):
            yield from _every_field(one, where)
        else:
            yield where, one


def _in_order(old: Mapping[str, object], new: Mapping[str, object]) -> list[str]:
    """Both sides' fields, each table's together."""
    names = list(dict.fromkeys([*old, *new]))
    tables = list(dict.fromkeys(name.partition(".")[0] for name in names))
    return sorted(names, key=lambda name: tables.index(name.partition(".")[0]))


def _text(name: str, found: object) -> str:
    if name == "cut_off" and found == CUT_OFF_NOT_KNOWN:
        return "not known"
    return "" if found is None or found in ("", ()) else toml_text(found)
