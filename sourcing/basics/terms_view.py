"""Terms as they are looked at: a supplier's versions, what changed from one to the next, and what is not known."""

from collections.abc import Iterator
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


def field_values(value: Value, path: str = "") -> Iterator[tuple[str, object]]:
    """Every field that says something, dotted, with its value; a list stands whole."""
    for name, one in stated(value).items():
        where = f"{path}.{name}" if path else name
        if isinstance(one, Value):
            yield from field_values(one, where)
        else:
            yield where, one


def changed_fields(before: Terms | None, after: Terms | None) -> tuple[FieldChange, ...]:
    """What one version says otherwise than the other, in the order of the fields, but for whose and from when it is.

    30 and 30.00 are the same.
    """
    old = dict(field_values(before)) if before else {}
    new = dict(field_values(after)) if after else {}
    order = {field.name: at for at, field in enumerate(msgspec.structs.fields(Terms))}
    names = sorted(dict.fromkeys([*old, *new]), key=lambda name: order[name.partition(".")[0]])
    return tuple(
        FieldChange(field=name, before=_text(old, name), after=_text(new, name))
        for name in names
        if name not in ("supplier", "starts_on") and (name in old, old.get(name)) != (name in new, new.get(name))
    )


def _text(values: dict[str, object], name: str) -> str:
    if values.get(name) == CUT_OFF_NOT_KNOWN:
        return "not known"
    return toml_text(values[name]) if name in values else ""
