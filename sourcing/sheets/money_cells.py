"""Prices: which decimal mark a column is written with, and each cell as Decimal, no price, or a problem.

The decimal mark is judged over all cells of the column. '12.50' tells it, '1,234' alone does not: where the column
never tells, such a cell is a problem with both readings as suggestions.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal

from sourcing.basics.currency import is_currency

from .cells import Bad, says_no_longer_available, word_set, words_of
from .worksheet import Cell, text_of

NO_PRICE = word_set(
    "call,call for price,call us,please call,n/a,na,n.a.,poa,p.o.a.,tba,tbd,-,--,---,–,—,on request,"
    "price on request,por,request,quote,rfq,ask,auf anfrage,a.a.,anfrage,preis auf anfrage,a. a."
)
DOLLARS = frozenset({"USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"})
SIGNS = {"€": frozenset({"EUR"}), "£": frozenset({"GBP"}), "$": DOLLARS, "us$": frozenset({"USD"})}
NUMBER = re.compile(r"-?[0-9][0-9.,' ]*-?|\([0-9][0-9.,' ]*\)|-?[.,][0-9]+")
PLAIN = re.compile(r"[0-9]{1,9}(?:([.,])[0-9]{1,2})?")
GROUPS = re.compile(r"[0-9]{1,3}(?:[.,' ][0-9]{3})+")
EACH = re.compile(r"(?:\s*/\s*|\s+)(?:per\s+)?(?:ea|each|pc|stk|stück)\.?$")
SPELLED = re.compile(r"(us\$|[€£$]|[a-z]{3}(?![a-z]))?\s*(.*?)\s*(us\$|[€£$]|(?<![a-z])[a-z]{3})?")
MOST_DIGITS = 12
BARE_AMOUNTS = frozenset("0123456789.,' -()")


def parse_money(cells: Sequence[Cell], currency: str) -> list[Decimal | Bad | None]:
    """The column's prices, unrounded, in `currency`. None: no price (blank, CALL, n/a). Zero or less is a problem."""
    return _parse(cells, lambda cell, mark: _price(cell, mark, currency))


def parse_core_charge(cells: Sequence[Cell], currency: str) -> list[Decimal | Bad | None]:
    """Like prices, but a stated 0 is read as it stands: no core is asked for."""

    def charge(cell: Cell, mark: str) -> Decimal | Bad | None:
        found = _amount(cell, mark, currency)
        return Bad("price-not-positive", found=text_of(cell)) if isinstance(found, Decimal) and found < 0 else found

    return _parse(cells, charge)


def _parse(cells: Sequence[Cell], parse: Callable[[Cell, str], Decimal | Bad | None]) -> list[Decimal | Bad | None]:
    """Each different cell once. Plain amounts above nothing, nearly all of a long column, take the short way."""
    different = dict.fromkeys(cells)
    plain = _plain_marks(different)
    mark = _mark_of(different, plain)
    known: dict[Cell, Decimal | Bad | None] = {
        cell: Decimal(cell) for cell, own in plain.items() if own != "," and (own != "." or mark != ",")
    }
    for cell in different:
        if not known.get(cell):
            known[cell] = parse(cell, mark)
    return list(map(known.__getitem__, cells))


def _price(cell: Cell, mark: str, currency: str) -> Decimal | Bad | None:
    found = _amount(cell, mark, currency)
    if isinstance(found, Decimal) and found <= 0:
        return Bad("price-not-positive", found=text_of(cell))
    return found


def _amount(cell: Cell, mark: str, currency: str) -> Decimal | Bad | None:
    if isinstance(cell, Decimal):
        return cell if abs(cell) < 10**MOST_DIGITS else Bad("price-unreadable", found=text_of(cell))
    words = words_of(cell)
    if not words or words in NO_PRICE or says_no_longer_available(cell):
        return None
    number, named = split_currency(words)
    if any(currency not in currencies for currencies in named):
        return Bad("price-other-currency", found=text_of(cell), currency=currency)
    if not NUMBER.fullmatch(number) or sum(map(str.isdigit, number)) > MOST_DIGITS:
        return Bad("price-unreadable", found=text_of(cell))
    return _decimal(number, mark, text_of(cell))


def split_currency(words: str) -> tuple[str, list[frozenset[str]]]:
    """The number without 'each' and currency, and for each sign or code the currencies it may stand for."""
    match = SPELLED.fullmatch(EACH.sub("", words))
    if match is None:
        return words, []
    tokens = [token for token in (match[1], match[3]) if token]
    if any(token not in SIGNS and not is_currency(token.upper()) for token in tokens):
        return words, []
    return match[2], [SIGNS.get(token, frozenset({token.upper()})) for token in tokens]


def _decimal(number: str, mark: str, shown: str) -> Decimal | Bad:
    negative = "-" in number or number.startswith("(")
    digits = number.strip("()- ")
    own = clear_mark(digits)
    if own == "?" and not mark:
        readings = (digits.replace(",", "."), re.sub("[.,]", "", digits))
        return Bad("price-ambiguous", found=shown, suggestions=readings)
    if own in (".", ",") and mark and own != mark:
        return Bad("price-mark-differs", found=shown, mark=mark)
    whole, part = _split(digits, mark or own)
    if not _well_grouped(whole) or not (part.isdigit() or not part) or not whole + part:
        return Bad("price-unreadable", found=shown)
    value = Decimal(f"{re.sub('[^0-9]', '', whole)}.{part}" if part else re.sub("[^0-9]", "", whole))
    return -value if negative else value


def _split(digits: str, mark: str) -> tuple[str, str]:
    """The whole part as written and the decimals, '' where there are none."""
    whole, _, part = digits.partition(mark) if mark else (digits, "", "")
    return whole, part


def _well_grouped(whole: str) -> bool:
    """Plain digits, or groups of three with one kind of separator."""
    if not whole or whole.isdigit():
        return True
    return bool(GROUPS.fullmatch(whole)) and len(set(re.sub("[0-9]", "", whole))) == 1


def clear_mark(digits: str) -> str:
    """The decimal mark this text shows by itself: '.' or ','; '?' where '1.234' may be either; '' where it has none.

    Two kinds of separator: the last is the decimal mark. One kind twice: thousands, so the other is the mark.
    """
    marks = re.sub(r"[^.,]", "", digits)
    if len(marks) > 1 and len(set(marks)) == 2:
        return marks[-1] if marks.count(marks[-1]) == 1 else ""
    if len(marks) > 1:
        return {".": ",", ",": "."}[marks[0]] if GROUPS.fullmatch(digits) else ""
    if not marks:
        return ""
    whole, part = re.split("[.,]", digits)
    return "?" if len(part) == 3 and re.fullmatch(r"[1-9][0-9]{0,2}", whole) else marks


def decimal_mark(cells: Iterable[Cell]) -> str:
    """The decimal mark of a column: shown by at least nine in ten of the cells that show one; '' where none does.

    A column in which both are common has none either: clear cells are read each by itself, unclear ones are problems.
    """
    return _mark_of(cells, _plain_marks(cells))


def _plain_marks(cells: Iterable[Cell]) -> dict[str, str]:
    """The decimal mark of each plain amount, '' where it has none."""
    match = PLAIN.fullmatch
    return {cell: found[1] or "" for cell in cells if isinstance(cell, str) and (found := match(cell))}


def _mark_of(cells: Iterable[Cell], plain: Mapping[str, str]) -> str:
    others = (_shown_mark(cell) for cell in cells if isinstance(cell, str) and cell not in plain)
    counts = Counter(plain.values()) + Counter(others)
    for mark, other in (".,", ",."):
        if counts[mark] and counts[mark] >= 9 * counts[other]:
            return mark
    return ""


def _shown_mark(cell: str) -> str:
    number, _ = split_currency(words_of(cell))
    return clear_mark(number.strip("()- ")) if NUMBER.fullmatch(number) else ""


def currencies_in(cells: Sequence[Cell]) -> set[str]:
    """The currencies that codes or signs of one currency name in more than half of the column's different prices.

    Fewer are slips: each such cell is judged by itself.
    """
    texts = [cell for cell in dict.fromkeys(cells) if isinstance(cell, str)]
    if BARE_AMOUNTS.issuperset("".join(texts)):
        return set()
    named = [split_currency(words_of(text)) for text in texts if not PLAIN.fullmatch(text)]
    sure = [next(iter(one)) for number, names in named if NUMBER.fullmatch(number) for one in names if len(one) == 1]
    return set(sure) if 2 * len(sure) > sum(map(bool, texts)) else set()
