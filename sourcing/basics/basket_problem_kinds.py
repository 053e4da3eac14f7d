"""The kinds of problem met in a basket: a JSON file of needs, offers, terms and rates. `at` is the place in it."""

from .problem_kind import ProblemKind, kind

BASKET_KINDS: dict[str, ProblemKind] = {
    "json-broken": kind(
        "Not JSON",
        "line {line}, column {column}: this is not JSON ({found})",
        "correct the file and try again",
    ),
    "json-too-deep": kind(
        "JSON nested too deep",
        "the file has lists or objects in one another beyond all reason",
        "compare it with the basket in the README",
    ),
    "field-not-known": kind(
        "Unknown field",
        "{at}: not a field",
        "correct its name or take it out",
    ),
    "field-left-out": kind(
        "Field left out",
        "{at} is left out",
        "write {wanted}",
    ),
    "field-twice": kind(
        "Field written twice",
        "{at} is written twice",
        "keep the one that holds",
    ),
    "field-not-fitting": kind(
        "Wrong kind of value",
        "{at} is {found}",
        "write {wanted}",
    ),
    "field-can-not-be": kind(
        "Value that can't be",
        "{at} is {found}",
        "{wanted}",
    ),
    "basket-contradicts": kind(
        "Basket contradicts itself",
        "{at}: {found}",
        "{wanted}",
    ),
    "no-such-need": kind(
        "Need not in the basket",
        "the basket has no need '{found}'",
        "name one of: {known}",
    ),
}
