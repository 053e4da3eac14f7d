"""What differs between an expectation and a reading, in lines a person can act on."""

from decimal import Decimal
from typing import Any

from tests.traps.expectation import Plain, same_form


def differences(expected: Plain, found: Plain, currency: str) -> list[str]:
    """One line for each thing that differs; none where the reading is what was expected."""
    if expected.get("asked"):
        asked = found.get("refused") or found.get("questions")
        return [] if asked else ["file: expected a question or a refusal, the sheet was read without asking"]
    want, have = same_form(expected, currency), same_form(found, currency)
    if "refused" in want or "refused" in have:
        return _refusals(want.get("refused"), have.get("refused"))
    lines = _offers(want["offers"], have["offers"])
    lines += _structure(want["structure"], have["structure"])
    for key in ("problems", "questions", "notes"):
        lines += _lists(key[:-1], want[key], have[key])
    return lines


def _refusals(want: str | None, have: str | None) -> list[str]:
    if want == have or (want and have in want.split(" or ")):
        return []
    return [f"file: expected {_refusal(want)}, {_refusal(have)} came"]


def _refusal(code: str | None) -> str:
    return f"the file refused with '{code}'" if code else "a file that is read"


def _offers(want: list[Plain], have: list[Plain]) -> list[str]:
    wanted = {(offer["worksheet"], offer["row"]): offer for offer in want}
    came = {(offer["worksheet"], offer["row"]): offer for offer in have}
    lines = [f"{_where(place)}: two offers came for one row" for place in came if _count(have, place) > 1]
    for place in sorted(wanted.keys() | came.keys()):
        if place not in came:
            lines.append(f"{_where(place)}: no offer came for {wanted[place]['supplier_number']!r}")
        elif place not in wanted:
            lines.append(f"{_where(place)}: an offer came that should not: {came[place]['supplier_number']!r}")
        else:
            lines += _fields(_where(place), wanted[place], came[place])
    return lines


def _count(offers: list[Plain], place: tuple[str, int]) -> int:
    return sum((offer["worksheet"], offer["row"]) == place for offer in offers)


def _where(place: tuple[str, int]) -> str:
    worksheet, row = place
    return f"worksheet {worksheet!r} row {row}" if worksheet else f"row {row}"


def _fields(where: str, want: Plain, have: Plain) -> list[str]:
    return [
        f"{where}: {name} should be {_shown(want[name])}, {_shown(have[name])} came"
        for name in want
        if want[name] != have[name]
    ]


def _shown(value: Any) -> str:
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, list):
        return "[" + ", ".join(_shown(one) for one in value) + "]"
    return repr(value)


def _structure(want: list[list[Any]], have: list[list[Any]]) -> list[str]:
    wanted = {(worksheet, row): kind for worksheet, row, kind in want}
    came = {(worksheet, row): kind for worksheet, row, kind in have}
    lines = []
    for place in sorted(wanted.keys() | came.keys()):
        kinds, kind = wanted.get(place, "").split(" or "), came.get(place, "")
        if kind not in kinds:
            lines.append(f"{_where(place)}: structure should be {' or '.join(kinds)!r}, {kind!r} came")
    return lines


def _lists(what: str, want: list[Any], have: list[Any]) -> list[str]:
    missing, extra = list(want), []
    for one in have:
        meant = next((wanted for wanted in missing if _is_meant(wanted, one)), None)
        if meant is None:
            extra.append(one)
        else:
            missing.remove(meant)
    return [f"{what} missing: {one}" for one in missing] + [f"{what} not expected: {one}" for one in extra]


def _is_meant(want: Any, have: Any) -> bool:
    """Whether this is what was expected; a code may be several joined by ' or '."""
    if isinstance(want, list):
        return bool(want[:-1] == have[:-1] and _is_meant(want[-1], have[-1]))
    return have in want.split(" or ")
