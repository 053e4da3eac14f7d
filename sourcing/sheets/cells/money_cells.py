"""Prices: which decimal mark a column is written with, and each cell as Decimal, no price, or a problem.

The decimal mark is judged over all cells of the column. '12.50' tells it, '1,234' alone does not: where the column
never tells, such a cell is a problem with both readings as suggestions. A cell is judged by its shape (`shapes_of`),
so that a long column costs little more than making its Decimals.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal
from typing import NamedTuple, cast

from sourcing.basics.currency import is_currency

from ..worksheet import Cell
from .amounts import NUMBER, clear_mark, decimal_of, main_mark, readings_of
from .basis_cells import PIECE, Basis, basis_of
from .cell import DASHES, Bad, parse_column, says_no_longer_available, shapes_of, shown_of, word_set, words_of
from .currency_signs import DOLLARS, SIGNS
from .number_cells import readings_of_date

NO_PRICE = word_set(
    "call,call for price,call for pricing,call us,please call,n/a,na,n.a.,n.a,poa,p.o.a.,p.o.a,tba,tbd,tbc,-,--,---,"
    "on request,price on request,price on application,por,request,quote,rfq,ask,ask for price,none,no price,?,"
    "auf anfrage,a.a.,a. a.,anfrage,preis auf anfrage,a/a,bitte anfragen,k.a.,k. a.,keine angabe,kein preis,"
    "sur demande,prix sur demande,nous consulter,sur devis,n.c.,nc,n/c,n.d.,nd,non disponible,à définir,"
    "consultar,a consultar,consultar precio,consulte,consúltenos,bajo consulta,a petición,precio a consultar,"
    "op aanvraag,prijs op aanvraag,op verzoek,n.v.t.,nvt,n.t.b.,ntb,n.b.,"
    "tagespreis,market price,daily price,prix du jour,precio del día,dagprijs"
)
TOKEN = "|".join([re.escape(sign) for sign in sorted(SIGNS, key=len, reverse=True)] + ["[a-z]{3}"])
SPELLED = re.compile(
    rf"(?P<before>(?:{TOKEN})(?![a-z$]))?\s*(?P<number>[-(]?\s*[-0-9.,' ]*[0-9][-0-9.,' ]*\)?)\s*"
    rf"(?P<after>(?<![a-z])(?:{TOKEN})(?![a-z$.]))?\s*"
    r"(?P<basis>(?:/|per\b|pro\b|je\b|par\b|por\b|p/).*|each|ea\.?|pcs?\.?|stk\.?|stück|pce|pièce|uds?\.?|stuk)?"
)
LAST = re.compile(rf"(.*\S)\s+({TOKEN})")
"""A currency behind what the price is for: '12,50/100 EUR'."""
SIGN_FIRST = re.compile(rf"^([-(])\s*({TOKEN})(?![a-z$])\s*")
LONGEST = 60
PLAIN = re.compile(r"[0-9]{1,9}(?:([.,])[0-9]{1,2})?")
THREE_DECIMALS = re.compile(r"1[01]{0,2}[.,][01]{3}")
NO_CENTS = re.compile(r"(.*[0-9])[.,](?:-{1,3})")
"""'12.-' and '12,--' are whole amounts, as Swiss, German and Dutch sheets write them."""
FOOTNOTE = re.compile(r"(.*[0-9€$£a-z.])\s*(?:[*†‡#°]+|[¹²³⁴⁵⁶⁷⁸⁹⁰]+|\(?[0-9]\))")
BARE_COUNT = re.compile(r"/\s*(?!100\b|1000\b)[0-9][0-9.,' ]*|/\s*1000?[.,].*")
MOST_DIGITS = 12
BARE_AMOUNTS = frozenset("0123456789.,' -()")
ENGLISH_MONEY = DOLLARS | {"GBP"}


class BasedPrice(NamedTuple):
    """A price whose cell says itself what it is for: '12.50/C', '$4.10/ft'."""

    price: Decimal
    basis: Basis


class Spelled(NamedTuple):
    """A price cell taken apart: its number without sign, whether it is below nothing, currencies, what it is for."""

    number: str
    negative: bool
    currencies: tuple[frozenset[str], ...]
    per: str


Cut = tuple[int, int, str, str]
"""Where a number starts and stops in its text, its thousands mark, its decimal mark (a line feed: it has none)."""
Price = Decimal | BasedPrice | Bad | None


def parse_money(cells: Sequence[Cell], currency: str, beside: Callable[[], str] = str) -> list[Price]:
    """The column's prices, unrounded, in `currency` ("": not known). None: no price (blank, CALL, n/a).

    Zero or less is a problem. A `BasedPrice` only where the cell states something else than one piece. `beside`
    gives the decimal mark the other price columns are written with; it is asked where the column shows none itself.
    """
    texts = cells if set(map(type, cells)) == {str} else [cell for cell in cells if isinstance(cell, str)]
    read = _read_texts(cast(Sequence[str], texts), currency, beside)
    if len(texts) == len(cells):
        return read
    in_turn = iter(read)
    return [next(in_turn) if isinstance(cell, str) else _number_price(cell) for cell in cells]


def _read_texts(texts: Sequence[str], currency: str, beside: Callable[[], str]) -> list[Price]:
    """Each text by its shape: taken as it is, cut out, or (the few that are no plain price) read as a whole."""
    shapes = shapes_of(texts)
    counts = Counter(shapes)
    mark = _mark_of(counts) or beside()
    plain = {
        shape
        for shape in counts
        if "1" in shape and (own := PLAIN.fullmatch(shape)) and own[1] in (None, mark[:1] or ".")
    }
    if counts and len(plain) == len(counts):
        return list(map(Decimal, "\n".join(texts).replace(",", ".").split("\n")))
    as_is = {shape for shape in plain if "," not in shape}
    cuts = {shape: _cut_of(shape, mark, currency) for shape in counts.keys() - as_is}
    whole: dict[str, Price] = {}
    for text, shape in zip(texts, shapes, strict=True):
        if shape not in as_is and cuts[shape] is None and text not in whole:
            whole[text] = _price(text, mark, currency)
    return [
        Decimal(text) if shape in as_is else _cut_out(text, cut) if (cut := cuts[shape]) else whole[text]
        for text, shape in zip(texts, shapes, strict=True)
    ]


def _cut_out(text: str, cut: Cut) -> Decimal:
    start, stop, group, mark = cut
    return Decimal(text[start:stop].replace(group, "").replace(mark, "."))


def _cut_of(shape: str, mark: str, currency: str) -> Cut | None:
    """Where the price stands in every text of this shape; None where more than its digits must be looked at."""
    found = None if len(shape) > LONGEST or any(map(_is_odd, shape)) else _price(shape, mark, currency)
    if not isinstance(found, Decimal):
        return None
    figures = [at for at, sign in enumerate(shape) if sign in "01"]
    start, stop = figures[0], figures[-1] + 1
    between = re.sub("[01]", "", shape[start:stop])
    own = between[-1:] if found.as_tuple().exponent else ""
    groups = set(between) - {own}
    if len(groups) > 1:
        return None
    cut = (start, stop, next(iter(groups), "\n"), own or "\n")
    # Tried on the shape itself: a 1 of '12.50/1 ea' must not get into the price.
    same = re.fullmatch(r"[01.]+", shape[start:stop].replace(cut[2], "").replace(cut[3], "."))
    return cut if same and str(_cut_out(shape, cut)) == str(found) else None


def _is_odd(sign: str) -> bool:
    """Figures other than 0 to 9, which become those only when the text is normalised."""
    return sign.isnumeric() and not "0" <= sign <= "9"


def _price(cell: str, mark: str, currency: str) -> Price:
    return _above_nothing(_amount(cell, mark, currency), shown_of(cell))


def _above_nothing(found: Price, shown: str) -> Price:
    amount = found.price if isinstance(found, BasedPrice) else found
    return Bad("price-not-positive", found=shown) if isinstance(amount, Decimal) and amount <= 0 else found


def _number_price(cell: Decimal) -> Price:
    return cell if 0 < cell < 10**MOST_DIGITS else _above_nothing(_number_cell(cell), shown_of(cell))


def _number_cell(cell: Decimal) -> Decimal | Bad:
    return cell if abs(cell) < 10**MOST_DIGITS else Bad("price-unreadable", found=shown_of(cell))


def parse_core_charge(cells: Sequence[Cell], currency: str) -> list[Decimal | Bad | None]:
    """Like prices, but a stated 0 is read as it stands: no core is asked for. Always for one piece."""
    mark = decimal_mark(cells)

    def charge(cell: Cell) -> Decimal | Bad | None:
        found = _number_cell(cell) if isinstance(cell, Decimal) else _amount(cell, mark, currency)
        if isinstance(found, BasedPrice):
            return Bad("price-unreadable", found=shown_of(cell))
        return Bad("price-not-positive", found=shown_of(cell)) if isinstance(found, Decimal) and found < 0 else found

    return parse_column(cells, charge)


def _amount(cell: str, mark: str, currency: str) -> Price:
    words = _plain_dashes(words_of(cell))
    if not words or words in NO_PRICE or words.strip(" .!") in NO_PRICE or says_no_longer_available(cell):
        return None
    spelled = spelled_of(cell)
    if spelled is None or sum(map(str.isdigit, spelled.number)) > MOST_DIGITS:
        return Bad("price-unreadable", found=shown_of(cell), suggestions=_suggestions(words, shown_of(cell)))
    if currency and any(currency not in currencies for currencies in spelled.currencies):
        return Bad("price-other-currency", found=shown_of(cell), currency=currency)
    found = _decimal(spelled, mark, shown_of(cell))
    return _with_basis(found, spelled.per, currency, shown_of(cell)) if isinstance(found, Decimal) else found


def _plain_dashes(words: str) -> str:
    return words if words.isascii() else words.translate(DASHES)


def _suggestions(words: str, shown: str) -> tuple[str, ...]:
    """What may have been meant: the price before a footnote mark, the number a spreadsheet made a date of."""
    if (note := FOOTNOTE.fullmatch(words)) and spelled_of(note[1]):
        return (note[1].strip(),)
    return tuple(reading.replace("-", ".") for reading in readings_of_date(shown))


def spelled_of(text: str) -> Spelled | None:
    """The cell taken apart; None where it is no amount, or has a sign or code no currency is known by."""
    words = SIGN_FIRST.sub(r"\2 \1", _plain_dashes(words_of(text)))
    match = SPELLED.fullmatch(words) if len(words) <= LONGEST else None
    if match is None:
        return None
    per, last = _per_and_currency(match["basis"] or "")
    tokens = [token for token in (match["before"], match["after"], last) if token]
    if any(token not in SIGNS and not is_currency(token.upper()) for token in tokens):
        return None
    number = match["number"].strip()
    if whole := NO_CENTS.fullmatch(number):
        number = whole[1]
    bare = number.strip("()- ")
    if not _is_signed(number) or not NUMBER.fullmatch(bare):
        return None
    currencies = tuple(SIGNS.get(token, frozenset({token.upper()})) for token in tokens)
    return Spelled(bare, bare != number, currencies, _as_written(text, per))


def _per_and_currency(basis: str) -> tuple[str, str]:
    match = LAST.fullmatch(basis)
    known = match and (match[2] in SIGNS or is_currency(match[2].upper()))
    return (match[1], match[2]) if match and known else (basis, "")


def _is_signed(number: str) -> bool:
    """At most one sign, and brackets in a pair."""
    signs = re.sub("[^-()]", "", number)
    return signs in ("", "-", "()") and (signs != "()" or (number[0] == "(" and number[-1] == ")"))


def _as_written(text: str, per: str) -> str:
    """What the price is for, as the cell writes it: a small m is a metre, a capital M a thousand."""
    at = text.casefold().rfind(per) if per else -1
    return text[at : at + len(per)] if at >= 0 else per


def _decimal(spelled: Spelled, mark: str, shown: str) -> Decimal | Bad:
    own, usual = clear_mark(spelled.number), mark[:1]
    if own == "?" and (not mark or mark != usual):
        return Bad("price-ambiguous", found=shown, suggestions=readings_of(spelled.number))
    if own in (".", ",") and usual and own != usual:
        return Bad("price-mark-differs", found=shown, mark=usual)
    value = decimal_of(spelled.number, usual or own)
    if value is None:
        return Bad("price-unreadable", found=shown)
    return -value if spelled.negative else value


def _with_basis(price: Decimal, per: str, currency: str, shown: str) -> Price:
    """'/M' is a thousand on sheets in dollars or pounds only, '/m' a metre on all but those in US dollars.

    A bare number behind a slash is a count only where it is 100 or 1000: '44.00 / 41.00' are two prices.
    """
    basis = basis_of(per) if per and not BARE_COUNT.fullmatch(per) else None if per else PIECE
    letter = re.fullmatch(r"(?:/|per)\s*([mM])\.?", per)
    if letter and (currency == "USD" if letter[1] == "m" else currency not in ENGLISH_MONEY):
        basis = None
    if basis is None:
        return Bad("price-basis-unreadable", found=shown)
    return price if basis == PIECE else BasedPrice(price, basis)


def decimal_mark(cells: Iterable[Cell]) -> str:
    """The decimal mark of a column: what most of the cells that show one show; '' where none does or both do alike.

    Cells with the other mark are problems. A question mark behind it: fewer than nine in ten show it, so that a cell
    such as '1,234' stays unclear.
    """
    return _mark_of(Counter(shapes_of([cell for cell in cells if isinstance(cell, str)])))


def _mark_of(shapes: Counter[str]) -> str:
    counts: Counter[str] = Counter()
    for shape, count in shapes.items():
        counts[_shown_mark(shape)] += count
    mark = main_mark(counts)
    # '1.250' four times and '12.50' once: one slip does not make 1.25 of all the others.
    alike = sum(count for shape, count in shapes.items() if THREE_DECIMALS.fullmatch(shape) and mark and mark in shape)
    return "" if alike > counts[mark] else mark


def _shown_mark(shape: str) -> str:
    if plain := PLAIN.fullmatch(shape):
        return plain[1] or ""
    spelled = spelled_of(shape)
    return clear_mark(spelled.number) if spelled else ""


def currencies_in(cells: Sequence[Cell]) -> set[str]:
    """The currencies that codes or signs of one currency name in more than half of the column's different prices.

    Fewer are slips: each such cell is judged by itself.
    """
    texts = [cell for cell in dict.fromkeys(cells) if isinstance(cell, str) and cell]
    if BARE_AMOUNTS.issuperset("".join(texts)):
        return set()
    sure: Counter[str] = Counter()
    for shape, count in Counter(shapes_of(texts)).items():
        spelled = spelled_of(shape)
        for named in spelled.currencies if spelled else ():
            sure[next(iter(named))] += count if len(named) == 1 else 0
    return {code for code, count in sure.items() if count} if 2 * sum(sure.values()) > len(texts) else set()
