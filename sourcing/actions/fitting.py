"""A plain tree of JSON fitted onto a frozen value: every misfit is told with its place, not only the first."""

import re
from collections.abc import Callable, Mapping
from datetime import date, datetime, time
from decimal import Decimal, InvalidOperation
from typing import Any, TypeVar, cast

from msgspec import NODEFAULT, inspect
from rapidfuzz import process

from ..basics.problem import Place, Problem, Refused, problem
from ..basics.terms_checks import TermsRefused

V = TypeVar("V")
NUMBER = re.compile(r"-?\d+(\.\d+)?([eE][+-]?\d{1,3})?", re.ASCII)
MOST_DIGITS = 12
"""Before and after the point: no money, weight or rate needs more, and sums stay exact."""
MOST_COUNT = 10**9
MOMENT = "a moment on the shop's clock, such as 2026-01-13T10:15"
UNFIT = object()


def fitted(data: object, kind: type[V], file: str) -> V:
    """The tree as a value. Refuses with every misfit of the tree; what a value itself refuses counts among them."""
    fitting = _Fitting(file)
    value = fitting.fit(inspect.type_info(kind), data, "")
    if fitting.problems:
        raise Refused(*fitting.problems)
    return cast(V, value)


class _Fitting:
    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []

    def fit(self, node: inspect.Type, data: object, at: str) -> object:
        """The value for this place, or UNFIT with a problem noted."""
        if isinstance(node, inspect.UnionType):
            return self._either(node, data, at)
        if isinstance(node, inspect.StructType):
            return self._object(node, data, at)
        if isinstance(node, inspect.VarTupleType):
            return self._list(node, data, at)
        if isinstance(node, inspect.TupleType):
            return self._row(node, data, at)
        if isinstance(node, inspect.LiteralType):
            return self._word(node, data, at)
        reader, wanted = LEAVES[type(node)]
        value = reader(data)
        return self._unfit(data, wanted, at) if value is UNFIT else value

    def _either(self, node: inspect.UnionType, data: object, at: str) -> object:
        others = [one for one in node.types if not isinstance(one, inspect.NoneType)]
        if data is None and len(others) < len(node.types):
            return None
        return self.fit(others[0], data, at)

    def _object(self, node: inspect.StructType, data: object, at: str) -> object:
        if not isinstance(data, dict):
            return self._unfit(data, "an object with named fields, { ... }", at)
        before = len(self.problems)
        for name in getattr(data, "twice", ()):
            self._add("field-twice", at=_under(at, name))
        known = {field.name for field in node.fields}
        for name in sorted(data.keys() - known):
            near = tuple(hit[0] for hit in process.extract(name, sorted(known), limit=2, score_cutoff=70))
            self._add("field-not-known", near, at=_under(at, name))
        values = {
            field.name: self._field(field, data, _under(at, field.name))
            for field in node.fields
            if field.name in data or (field.default is NODEFAULT and field.default_factory is NODEFAULT)
        }
        return UNFIT if len(self.problems) > before else self._made(node.cls, values, at)

    def _made(self, kind: type, values: dict[str, object], at: str) -> object:
        try:
            return kind(**values)
        except TermsRefused as refusal:
            for wrong in refusal.found:
                self._add(
                    "basket-contradicts", at=_under(at, in_json(wrong.field)), found=wrong.found, wanted="correct it"
                )
            return UNFIT
        except Refused as refusal:
            for one in refusal.problems:
                self._add("basket-contradicts", at=at or "the file", found=one.what, wanted="correct it")
            return UNFIT

    def _field(self, field: inspect.Field, given: Mapping[str, Any], at: str) -> object:
        if field.name in given:
            return self.fit(field.type, given[field.name], at)
        return self._add("field-left-out", at=at, wanted=_wanted(field.type))

    def _list(self, node: inspect.VarTupleType, data: object, at: str) -> object:
        if not isinstance(data, list):
            return self._unfit(data, "a list, [ ... ]", at)
        return tuple(self.fit(node.item_type, one, f"{at}[{number}]") for number, one in enumerate(data))

    def _row(self, node: inspect.TupleType, data: object, at: str) -> object:
        if not isinstance(data, list) or len(data) != len(node.item_types):
            return self._unfit(data, f"a list of {len(node.item_types)}", at)
        return tuple(
            self.fit(one, item, f"{at}[{number}]")
            for number, (one, item) in enumerate(zip(node.item_types, data, strict=True))
        )

    def _word(self, node: inspect.LiteralType, data: object, at: str) -> object:
        if isinstance(data, str) and data in node.values:
            return data
        return self._unfit(data, _wanted(node), at)

    def _unfit(self, data: object, wanted: str, at: str) -> object:
        return self._add("field-not-fitting", at=at or "the file", found=_shown(data), wanted=wanted)

    def _add(self, code: str, near: tuple[str, ...] = (), **facts: object) -> object:
        self.problems.append(problem(code, place=Place(file=self.file), suggestions=near, **facts))
        return UNFIT


def _under(at: str, name: str) -> str:
    shown = name if len(name) <= 60 else f"{name[:57]}..."
    return f"{at}.{shown}" if at else shown


def in_json(field: str) -> str:
    """A dotted field with entries counted from 1 as a place in JSON: 'freight.bands.2.charge' is
    'freight.bands[1].charge'."""
    return re.sub(r"\.(\d+)", lambda found: f"[{int(found[1]) - 1}]", field)


def _shown(data: object) -> str:
    """The value as the file has it, shortened: a dict as 'an object', a list as 'a list'."""
    if isinstance(data, dict):
        return "an object"
    if isinstance(data, list):
        return f"a list of {len(data)}"
    if data is None or isinstance(data, bool):
        return {None: "null", True: "true", False: "false"}[data]
    words = f"'{data}'" if isinstance(data, str) else str(data)
    return words if len(words) <= 60 else f"{words[:57]}..."


def _wanted(node: inspect.Type) -> str:
    """What may stand in a place, in words."""
    if isinstance(node, inspect.UnionType):
        return _wanted(next(one for one in node.types if not isinstance(one, inspect.NoneType)))
    if isinstance(node, inspect.LiteralType):
        return "one of: " + ", ".join(f"'{one}'" for one in sorted(map(str, node.values)))
    if type(node) in LEAVES:
        return LEAVES[type(node)][1]
    return "an object with named fields" if isinstance(node, inspect.StructType) else "a list"


def _decimal(data: object) -> object:
    """A number to the digit, written as a number or as text; none that is endless or beyond all reason."""
    if isinstance(data, bool) or not isinstance(data, (int, Decimal, str)):
        return UNFIT
    if isinstance(data, str) and not NUMBER.fullmatch(data):
        return UNFIT
    try:
        number = Decimal(data)
    except InvalidOperation:  # an exponent no Decimal can have
        return UNFIT
    if number.is_zero():
        return Decimal(0)
    exponent = number.as_tuple().exponent
    fits = isinstance(exponent, int) and exponent >= -MOST_DIGITS and number.adjusted() < MOST_DIGITS
    return number if fits else UNFIT


def _count(data: object) -> object:
    return data if isinstance(data, int) and not isinstance(data, bool) and abs(data) <= MOST_COUNT else UNFIT


def _day(data: object) -> object:
    return _iso(date.fromisoformat, data, r"\d{4}-\d{2}-\d{2}")


def _clock(data: object) -> object:
    return _iso(time.fromisoformat, data, r"\d{2}:\d{2}(:\d{2})?")


def _moment(data: object) -> object:
    return _iso(datetime.fromisoformat, data, r"\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(:\d{2})?")


def _iso(read: Callable[[str], object], data: object, form: str) -> object:
    if not isinstance(data, str) or not re.fullmatch(form, data, re.ASCII):
        return UNFIT
    try:
        return read(data)
    except ValueError:
        return UNFIT


LEAVES: Mapping[type, tuple[Callable[[object], object], str]] = {
    inspect.StrType: (lambda data: data if isinstance(data, str) else UNFIT, "text in quotes"),
    inspect.BoolType: (lambda data: data if isinstance(data, bool) else UNFIT, "true or false"),
    inspect.IntType: (_count, "a whole number up to a thousand million"),
    inspect.DecimalType: (
        _decimal,
        f'a number with a point, such as 12.50 or "12.50", of at most {MOST_DIGITS} digits on either side',
    ),
    inspect.DateType: (_day, "a day, such as 2026-01-13"),
    inspect.TimeType: (_clock, "a time of day, such as 13:00"),
    inspect.DateTimeType: (_moment, MOMENT),
}
