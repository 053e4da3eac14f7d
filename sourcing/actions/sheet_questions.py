"""What is asked about a sheet that was sent, as questions a form can hold, and what the answers say of its columns."""

from collections.abc import Iterator, Mapping, Sequence
from typing import get_args

from ..basics.problem import Problem, refused
from ..basics.sheet import Column, Field
from ..basics.sheet_sample import SheetSample
from ..basics.typed import count
from ..basics.value import Value, changed
from ..sheets.headers.column_questions import what_it_may_be
from .import_sheets import Said
from .sheet_sent import SheetTaken

PRICES: tuple[Field, ...] = ("net price", "list price", "not used")
APT: dict[str, tuple[Field, ...]] = {
    "price-column-unclear": PRICES,
    "price-with-tax": PRICES,
    "price-doubted": ("net price", "list price", "not used"),
    "price-years-differ": PRICES,
    "price-of-a-later-day": PRICES,
    "net-of-tax": PRICES,
    "price-unit-unread": ("not used",),
    "column-surcharge": ("not used",),
    "column-contradicted": ("not used",),
    "column-guess": ("not used",),
    "numbers-left-out": ("maker number", "not used"),
    "header-became-date": ("net price", "not used"),
    "discount-beside-net": ("not used", "discount"),
    "meaning-twice": ("not used",),
    "net-price-worked-out-now": ("list price", "net price"),
}
"""The answers that are likeliest, by what is asked of a column; every other meaning can be chosen too."""

WHOLE_SHEET = ("no-number-column", "no-price-column", "no-table", "net-price-gone", "no-such-header")
"""Asked of no column that is named: the person looks through all of them."""

CURRENCIES = "currency-by-column"
"""Answered by leaving out the columns of all but one currency."""

NO_PRICES = "sheet-without-prices"
OF_ANOTHER = "sheet-of-another"
LOOK_OVER = ("columns-shown-first", "sheet-much-shorter", NO_PRICES, OF_ANOTHER)
"""Nothing is asked: the person looks, and says that it is to be kept so."""

LINES: dict[str, tuple[Field, ...]] = {
    "line-about-prices": ("not used", "price basis"),
    "price-of-a-package": ("price basis", "not used"),
    "two-worksheets": ("not used",),
    "net-price-gone": ("not used",),
}
"""Asked of a line, a worksheet, a column that is gone, what the prices of a column are for."""


class AskedColumn(Value, frozen=True, kw_only=True):
    """A column, line or worksheet something may be said of. `key` is how it is named to the reader and remembered.

    `problems` are what is asked of it, () where nothing is. `apt` are the likeliest answers. `values`: some of its
    texts. `means`: what it is read as, blank where nothing. `why`: the reason for that.
    """

    key: str
    shown: str
    letter: str = ""
    worksheet: str = ""
    means: str = ""
    why: str = ""
    from_quantity: int | None = None
    suggested: Field | None = None
    apt: tuple[Field, ...] = ()
    values: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


class SheetAsked(Value, frozen=True, kw_only=True):
    """Everything a person is asked of one sheet.

    `asked` need an answer; `columns` are all others, to be corrected by whoever wants to. `look_at_all`: one of the
    columns must be named, and nobody knows which. `currencies`: columns of all but one must be left out. `look_over`:
    why it is shown where nothing is asked. `rest` can't be answered here, and their remedy says what helps.
    """

    asks_supplier: bool
    asks_day: bool
    look_at_all: tuple[Problem, ...]
    currencies: tuple[Problem, ...]
    look_over: tuple[Problem, ...]
    asked: tuple[AskedColumn, ...]
    columns: tuple[AskedColumn, ...]
    rest: tuple[Problem, ...]

    @property
    def can_answer(self) -> bool:
        """Whether there is anything a person can say that may help."""
        by_columns = self.look_at_all or self.currencies or self.asked
        return bool(self.asks_supplier or self.asks_day or by_columns or self.look_over)

    @property
    def opens_columns(self) -> bool:
        """Whether the columns that are not asked about are shown at once: one of them may have to be changed."""
        return bool(self.look_at_all or self.currencies or self.look_over)

    @property
    def may_be_a_part(self) -> bool:
        """Whether it is so much shorter than the sheet before it that it may be a part of one."""
        return any(one.code == "sheet-much-shorter" for one in self.look_over)

    @property
    def is_of_another(self) -> bool:
        """Whether the very file is kept as another supplier's."""
        return any(one.code == OF_ANOTHER for one in self.look_over)

    @property
    def has_no_prices(self) -> bool:
        """Whether no row of it has a net price as its columns are read now."""
        return any(one.code == NO_PRICES for one in self.look_over)

    @property
    def fields(self) -> tuple[AskedColumn, ...]:
        """What a form has a field for, in its order."""
        return (*self.asked, *self.columns)


def sheet_asked(taken: SheetTaken) -> SheetAsked:
    """The questions of a sheet that was not kept."""
    codes = {one.code for one in taken.problems}
    columns = list(_columns(taken.samples, taken.problems))
    lines = [_line(one) for one in taken.problems if one.code in LINES]
    told = {id(one) for column in columns for one in column.problems}
    known = ("supplier-not-named", "no-terms", "sheet-not-dated", CURRENCIES, *LOOK_OVER, *WHOLE_SHEET, *LINES)
    has_columns = bool(columns)
    return SheetAsked(
        asks_supplier=bool(codes.intersection(("supplier-not-named", "no-terms"))),
        asks_day="sheet-not-dated" in codes,
        look_at_all=tuple(one for one in taken.problems if one.code in WHOLE_SHEET and has_columns),
        currencies=tuple(one for one in taken.problems if one.code == CURRENCIES),
        look_over=tuple(one for one in taken.problems if one.code in LOOK_OVER),
        asked=(*(one for one in columns if one.problems), *lines),
        columns=tuple(one for one in columns if not one.problems),
        rest=tuple(
            one
            for one in taken.problems
            if id(one) not in told and (one.code not in known or (one.code in WHOLE_SHEET and not has_columns))
        ),
    )


def said_of(asked: SheetAsked, answers: Mapping[int, str], quantities: Mapping[int, str], said: Said) -> Said:
    """What was said before and what is said now of the fields, by their places in `asked.fields`.

    A blank answer says nothing. Refuses a question left open, an unknown meaning, and a quantity of what is no price.
    """
    columns, pieces = dict(said.columns), dict(said.quantities)
    for at, one in enumerate(asked.fields):
        meaning = answers.get(at, "")
        if not meaning:
            if one.problems:
                raise refused("column-not-answered", found=one.shown)
            continue
        if meaning not in get_args(Field):
            raise refused("unknown-word", found=meaning, column=one.shown, known=", ".join(get_args(Field)))
        columns[one.key] = meaning  # type: ignore[assignment]
        pieces.pop(one.key, None)
        if quantity := quantities.get(at, ""):
            if meaning != "net price":
                raise refused("quantity-of-no-price", found=one.shown, meaning=meaning)
            pieces[one.key] = count(quantity)
    if (asked.look_at_all or asked.currencies) and not any(answers.get(at) for at, _ in enumerate(asked.fields)):
        raise refused("columns-not-answered")
    _check_discounts(asked, columns)
    looked_over = said.looked_over or bool(asked.look_over)
    without_prices = said.without_prices or asked.has_no_prices
    return changed(said, columns=columns, quantities=pieces, looked_over=looked_over, without_prices=without_prices)


def _check_discounts(asked: SheetAsked, columns: Mapping[str, Field]) -> None:
    """Refuses a discount beside a net price that nobody calls a list price: what it comes off would be a guess."""
    beside = [one for one in asked.asked if any(two.code == "discount-beside-net" for two in one.problems)]
    has_list = "list price" in columns.values()
    for one in beside:
        if columns.get(one.key) == "discount" and not has_list:
            raise refused("discount-of-what", found=one.shown)


def _columns(samples: Sequence[SheetSample], problems: Sequence[Problem]) -> Iterator[AskedColumn]:
    """Every different column of the tables shown; two of one header in a table are told apart by letter."""
    seen: set[str] = set()
    for sample in samples:
        headers = [column.header for column in sample.columns]
        for column, values in zip(sample.columns, sample.values, strict=True):
            twice = not column.header or headers.count(column.header) > 1
            key = f"column {column.letter}" if twice else column.header
            if key in seen:
                continue
            seen.add(key)
            about = tuple(one for one in problems if _is_about(one, column))
            yield _asked_column(key, column, sample.worksheet, values, about)


def _asked_column(
    key: str, column: Column, worksheet: str, values: tuple[str, ...], about: tuple[Problem, ...]
) -> AskedColumn:
    guessed = any(one.code == "column-guess" for one in about)
    suggested = what_it_may_be(column) if guessed else column.suggested
    likely = [*([suggested] if suggested else []), *([column.field] if column.field and about else [])]
    apt = dict.fromkeys([*likely, *(field for one in about for field in APT[one.code])])
    return AskedColumn(
        key=key,
        shown=column.header or f"column {column.letter}",
        letter=column.letter,
        worksheet=worksheet,
        means=_means(column),
        why=column.why,
        from_quantity=column.from_quantity,
        suggested=column.suggested,
        apt=(*(one for one in apt if one != "not used"), *(one for one in apt if one == "not used")),
        values=values,
        problems=about,
    )


def _means(column: Column) -> str:
    return f"{column.field or ''}{f' in {column.place}' if column.place else ''}"


def _is_about(one: Problem, column: Column) -> bool:
    """Whether this question is about that column. Where several are named, the letter beside the name decides."""
    if one.code not in APT:
        return False
    name = column.header or f"column {column.letter}"
    if one.code == "meaning-twice":
        return f"'{name}' (column {column.letter})" in one.found
    if one.code == "price-years-differ":
        return column.field in ("net price", "list price") and name in one.found
    return one.found == name


def _line(one: Problem) -> AskedColumn:
    key = f"worksheet {one.found}" if one.code == "two-worksheets" else one.found
    return AskedColumn(
        key=key,
        shown=key,
        worksheet=one.place.worksheet if one.place else "",
        apt=LINES[one.code],
        problems=(one,),
    )
