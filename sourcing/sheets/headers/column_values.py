"""Where the values of a column contradict its header or say what it may be. Questions for a person, never answers.

All of it is common practice, no source.
"""

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal

from sourcing.basics.sheet import Column, Field

from ..worksheet import Cell, text_of
from .header_keys import plain_text
from .value_looks import (
    BASIS_COUNTS,
    CENTS,
    DATE,
    FEWEST,
    LOOKS,
    MOST,
    NUMERIC,
    UNITS,
    Test,
    is_gtin,
    is_percent,
    is_prose,
    looks,
    looks_like,
    sample_of,
    share_of,
)

__all__ = ["compared", "doubts", "looks_like", "propose", "suggest_price"]

OF_PRICE = re.compile(r"pric|prc|preis|prix|prec|prij|tarif|\b(?:per|pro|je|par|por|peh)\b|basis")
"""Words that say what a price is for; other units may be what one orders or sells at once."""
DIMENSIONS = re.compile(r"[\d.,/ ]{1,12}[a-z\"']{0,6}\s*[x×*]\s*\d[\d.,/ ]{0,12}[a-z\"']{0,6}\s*[x×*]\s*\d")
NEARLY_ALL = 0.95
COMPARED = 2000
"""How many rows of two price columns are compared."""


def _no_digit(text: str) -> bool:
    return not any(map(str.isdigit, text))


def _has_cents(text: str) -> bool:
    return CENTS.fullmatch(text) is not None and not text.endswith((".00", ",00"))


def _is_date(text: str) -> bool:
    return DATE.fullmatch(text) is not None


def _is_number(text: str) -> bool:
    return NUMERIC.fullmatch(text) is not None


def _is_dimensions(text: str) -> bool:
    return DIMENSIONS.match(text) is not None


ABOVE_ONE = "above 1, which makes the net price dearer than the list price"
WORDS, PRICES, DATES, NUMBERS = "words without figures", "prices", "dates", "plain numbers"
MONEY_TESTS: tuple[tuple[str, Test], ...] = ((WORDS, _no_digit), (DATES, _is_date), ("GTINs", is_gtin))
COUNT_TESTS: tuple[tuple[str, Test], ...] = (
    (DATES, _is_date),
    (PRICES, _has_cents),
    ("GTINs", is_gtin),
    (WORDS, lambda text: _no_digit(text) and text not in UNITS),
    ("units", lambda text: text in UNITS),
    ("dimensions", _is_dimensions),
)
AGAINST: Mapping[Field, tuple[tuple[str, Test], ...]] = {
    "net price": MONEY_TESTS,
    "list price": MONEY_TESTS,
    "core charge": MONEY_TESTS,
    "supplier number": ((PRICES, lambda text: CENTS.fullmatch(text) is not None), (DATES, _is_date)),
    "maker number": ((PRICES, lambda text: CENTS.fullmatch(text) is not None), (DATES, _is_date)),
    "superseded by": ((PRICES, _has_cents), (WORDS, _no_digit)),
    "gtin": ((WORDS, _no_digit), (PRICES, _has_cents), (DATES, _is_date)),
    "maker": ((PRICES, _has_cents), (NUMBERS, _is_number)),
    "description": ((NUMBERS, _is_number),),
    "stock": ((DATES, _is_date), (PRICES, _has_cents), ("GTINs", is_gtin)),
    "lead time": ((PRICES, _has_cents),),
    "pack": COUNT_TESTS,
    "minimum": COUNT_TESTS,
    "order multiple": COUNT_TESTS,
    "break quantity": COUNT_TESTS,
    "price basis": ((PRICES, _has_cents), (DATES, _is_date)),
    "currency": ((NUMBERS, _is_number),),
    "discount": ((WORDS, _no_digit), (DATES, _is_date)),
    "multiplier": (
        (ABOVE_ONE, lambda text: re.fullmatch(r"[1-9]\d*[.,]\d*[1-9]\d*", text) is not None),
        (WORDS, _no_digit),
        (DATES, _is_date),
        ("percentages", is_percent),
    ),
    "discount code": (("percentages", is_percent), (PRICES, _has_cents)),
    "weight": ((WORDS, _no_digit), (DATES, _is_date)),
    "package length": ((WORDS, _no_digit), (DATES, _is_date)),
    "package width": ((WORDS, _no_digit), (DATES, _is_date)),
    "package height": ((WORDS, _no_digit), (DATES, _is_date)),
    "package dimensions": ((WORDS, _no_digit), (NUMBERS, _is_number), (DATES, _is_date)),
    "returnable": ((PRICES, _has_cents),),
    "origin": ((NUMBERS, _is_number), (DATES, _is_date)),
    "valid from": ((PRICES, _has_cents), (WORDS, _no_digit)),
    "valid to": ((PRICES, _has_cents), (WORDS, _no_digit)),
    "no longer available": ((PRICES, _has_cents),),
    "oversize": ((PRICES, _has_cents),),
    "hazardous": ((PRICES, _has_cents),),
    "tariff code": ((WORDS, _no_digit),),
}
"""What nearly all values must not be under a header of this meaning."""


def doubts(column: Column, cells: Sequence[Cell]) -> str | None:
    """Why the values contradict the header: 'all 40 values looked at are dates'; None where they do not.

    A person's word is not doubted, nor a column with fewer than five cells that say something.
    """
    if column.field is None or column.why == "confirmed":
        return None
    sample = sample_of(cells)
    if column.field == "discount" and (why := _money_doubt(column.header, sample)):
        return why
    if column.field == "price basis" and (why := _selling_unit_doubt(column.header, sample)):
        return why
    if len(sample) < FEWEST:
        return None
    for kind, test in AGAINST.get(column.field, ()):
        if (share := share_of(sample, test)) >= NEARLY_ALL:
            return f"{'all' if share == 1 else 'nearly all'} of the {len(sample)} values looked at are {kind}"
    return _number_doubt(sample) if column.field == "supplier number" else None


def _money_doubt(header: str, sample: Sequence[str]) -> str | None:
    """'Discount' 25.10: an amount that comes off, not a per cent of so odd a figure."""
    if "%" in header or "%" in "".join(sample) or "pct" in header.casefold() or "cent" in header.casefold():
        return None
    odd = [
        text for text in sample if re.fullmatch(r"\d+[.,]\d\d", text) and not text.endswith(("00", "50", "25", "75"))
    ]
    return f"{odd[0]} may be money that comes off, or per cent" if len(odd) * 2 > len(sample) else None


def _selling_unit_doubt(header: str, sample: Sequence[str]) -> str | None:
    """'Sell unit' 5: a price for five, or five to order at once. 'Price unit' and 'Per' speak of the price."""
    odd = [text for text in sample if text != "1"]
    if plain_text(header) == "pe" and set(odd) <= BASIS_COUNTS:
        return None
    if not odd or not all(map(str.isdecimal, odd)) or OF_PRICE.search(plain_text(header)):
        return None
    return f"{odd[0]} may be the pieces a price is for or the pieces to order at once"


def _number_doubt(sample: Sequence[str]) -> str | None:
    """Numbers that count the rows, words, or one number over and over are no part numbers."""
    if sample[:FEWEST] == [str(at) for at in range(1, FEWEST + 1)] and all(map(str.isdigit, sample)):
        return f"the values count the rows: {', '.join(sample[:3])} and so on"
    if share_of(sample, lambda text: is_prose(text) and _no_digit(text)) >= NEARLY_ALL:
        return f"nearly all of the {len(sample)} values looked at are words without figures"
    few = len(set(sample))
    if share_of(sample, _no_digit) >= NEARLY_ALL and few * 2 <= len(sample):
        return f"the values are words without figures, and only {few} of the {len(sample)} looked at differ"
    if len(sample) >= 40 and few * 20 < len(sample):
        return f"only {few} of the {len(sample)} values looked at differ"
    return None


def propose(columns: Sequence[Sequence[Cell]]) -> tuple[Column, ...]:
    """Columns of a table without headers, each with what its values look like as a suggestion; `field` stays None.

    Each meaning is suggested once, for the column that fits best and is filled most; of two price columns the higher
    is the list price. The columns' cells stand row by row.
    """
    filled = [sum(map(bool, map(text_of, cells[:COMPARED]))) / max(1, len(cells[:COMPARED])) for cells in columns]
    fits = [
        (share * filled[at], at, field) for at, cells in enumerate(columns) for field, share in _fitting(cells).items()
    ]
    fits.sort(key=lambda fit: (-round(fit[0], 2), list(LOOKS).index(fit[2]), fit[1]))
    suggested: dict[int, Field] = {}
    for _, at, field in fits:
        if at not in suggested and (field not in suggested.values() or field == "net price"):
            suggested[at] = field
    _name_prices(suggested, columns)
    return tuple(
        Column(at=at, header="", field=None, suggested=suggested.get(at), why=_why(suggested.get(at)))
        for at in range(len(columns))
    )


def _fitting(cells: Sequence[Cell]) -> dict[Field, float]:
    sample = sample_of(cells)
    return {field: share for field, share in looks(sample).items() if share >= MOST and len(sample) >= FEWEST}


def _name_prices(suggested: dict[int, Field], columns: Sequence[Sequence[Cell]]) -> None:
    """Tells list price from net price where there are two columns of prices; of three or more, none is suggested."""
    prices = [at for at, field in suggested.items() if field == "net price"]
    if len(prices) == 2:
        low, high = sorted(prices)
        if not compared(columns[low], columns[high])[2]:
            suggested[high] = "list price"
        elif not compared(columns[high], columns[low])[2]:
            suggested[low] = "list price"
        else:
            prices.append(-1)
    if len(prices) > 2:
        for at in prices:
            suggested.pop(at, None)


def _why(field: Field | None) -> str:
    return f"the values look like those of a column '{field}'" if field else "not known"


def compared(one: Sequence[Cell], other: Sequence[Cell]) -> tuple[int, int, int]:
    """Rows in which both are amounts; of these, in how many the first is lower, and in how many higher.

    The cells stand row by row; columns of different lengths can't be compared and give no rows.
    """
    if len(one) != len(other):
        return 0, 0, 0
    step = max(1, len(one) // COMPARED)
    pairs = [(_amount(a), _amount(b)) for a, b in zip(one[::step], other[::step], strict=True)]
    both = [(a, b) for a, b in pairs if a is not None and b is not None]
    return len(both), sum(a < b for a, b in both), sum(a > b for a, b in both)


def steady_ratio(upper: Sequence[Cell], lower: Sequence[Cell], between: tuple[Decimal, Decimal]) -> bool:
    """Whether in nearly all rows the first amount is the same multiple of the second, and that lies in between."""
    pairs = [(_amount(a), _amount(b)) for a, b in zip(upper, lower, strict=True)]
    ratios = [a / b for a, b in pairs if a is not None and b]
    if len(ratios) < 2:
        return False
    middle = sorted(ratios)[len(ratios) // 2]
    near = sum(abs(ratio - middle) < Decimal("0.01") for ratio in ratios)
    return between[0] < middle < between[1] and 20 * near >= 19 * len(ratios)


def _amount(cell: Cell) -> Decimal | None:
    """The amount of a price cell for comparing only; None where it is none or '1,234' leaves its mark open."""
    if isinstance(cell, Decimal):
        return cell
    match = re.fullmatch(r"[^\d]{0,4}(\d[\d.,' ]*)[^\d]{0,5}", text_of(cell))
    if match is None:
        return None
    whole, mark, part = re.fullmatch(r"(.*?)(?:([.,])(\d*))?", match[1].strip()).groups()  # type: ignore[union-attr]
    if mark and len(part) == 3:
        return None
    digits = re.sub(r"\D", "", whole or "")
    return Decimal(f"{digits or 0}.{part or 0}")


def suggest_price(cells: Sequence[Cell], known: Mapping[Field, Sequence[Cell]]) -> tuple[Field | None, str]:
    """What an unclear price may be, by the columns that are known, and the reason with its counts.

    Beside a list price: the net price, if it is never higher and lower in most rows. Beside a net price the other
    way about. (None, ''): the values do not tell.
    """
    if "list price" in known and "net price" not in known:
        rows, lower, higher = compared(cells, known["list price"])
        if rows and not higher and 2 * lower > rows:
            return "net price", f"lower than the list price in {lower} of {rows} rows, never higher"
    if "net price" in known and "list price" not in known:
        rows, lower, higher = compared(cells, known["net price"])
        if rows and not lower and 2 * higher > rows:
            return "list price", f"higher than the net price in {higher} of {rows} rows, never lower"
    return None, ""
