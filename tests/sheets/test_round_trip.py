"""Whatever layout, dialect, language and encoding a list of offers is written in, the same offers are read back."""

import csv
import io
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import openpyxl
from babel.numbers import format_decimal
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sourcing.basics.offer import PriceBreak
from sourcing.basics.sheet import Field
from sourcing.sheets.reading import Hints, read_sheet

HEADERS: dict[str, dict[Field, str]] = {
    "en": {
        "supplier number": "Part Number", "maker": "Manufacturer", "description": "Description",
        "list price": "List Price", "net price": "Your Net", "pack": "Pack Qty", "stock": "Qty Available",
        "superseded by": "Superseded By",
    },
    "de": {
        "supplier number": "Artikelnummer", "maker": "Hersteller", "description": "Bezeichnung",
        "list price": "Listenpreis", "net price": "Nettopreis", "pack": "VPE", "stock": "Bestand",
        "superseded by": "Ersetzt durch",
    },
    "fr": {
        "supplier number": "Référence", "maker": "Fabricant", "description": "Désignation",
        "list price": "Prix public", "net price": "Prix net", "pack": "Conditionnement", "stock": "Stock",
        "superseded by": "Remplacé par",
    },
    "es": {
        "supplier number": "Referencia", "maker": "Fabricante", "description": "Descripción",
        "list price": "PVP", "net price": "Precio neto", "pack": "Unidades por paquete", "stock": "Existencias",
        "superseded by": "Sustituido por",
    },
    "nl": {
        "supplier number": "Artikelnummer", "maker": "Fabrikant", "description": "Omschrijving",
        "list price": "Adviesprijs", "net price": "Nettoprijs", "pack": "Verpakkingseenheid", "stock": "Voorraad",
        "superseded by": "Vervangen door",
    },
}  # fmt: skip
WORDS = {
    "en": ["belt", "auger, drive", 'keeper 3/8"', "shear pin"],
    "de": ["Keilriemen", "für Schnecke", "Lager", 'Stück 3/8"'],
    "fr": ["courroie", "goupille, vis", "palier", "déflecteur"],
    "es": ["correa", "tornillo, pasador", "cojinete", "muñón"],
    "nl": ["riem", "breekpen, vijzel", "lager", "geleider"],
}
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252")
NUMBERS = st.from_regex(r"[A-Z]{2}-[0-9]{5}|0[0-9]{5}[A-Z]|[A-Z]{1,2}[0-9]{2}\.[0-9]{4}", fullmatch=True)
PRICES = st.integers(min_value=1, max_value=9_999_999).map(lambda cents: Decimal(cents) / 100)


@dataclass(frozen=True)
class Row:
    """What is written and must be read back."""

    number: str
    maker: str
    description: str
    list_price: Decimal
    net: Decimal | None
    pack: int
    stock: int | None
    superseded_by: str


def row_of(language: str) -> st.SearchStrategy[Row]:
    """Any offer of the project's own world."""
    return st.builds(
        Row,
        number=NUMBERS,
        maker=st.sampled_from(["Norrowby", "Ostrevik", "Corrivane"]),
        description=st.lists(st.sampled_from(WORDS[language]), min_size=2, max_size=4).map(" ".join),
        list_price=PRICES,
        net=st.none() | PRICES,
        pack=st.integers(1, 50),
        stock=st.none() | st.integers(0, 900),
        superseded_by=st.just("") | NUMBERS,
    )


def cells_of(row: Row, money: Callable[[Decimal], Any]) -> dict[Field, Any]:
    """The row as cells by meaning."""
    return {
        "supplier number": row.number,
        "maker": row.maker,
        "description": row.description,
        "list price": money(row.list_price),
        "net price": "" if row.net is None else money(row.net),
        "pack": str(row.pack),
        "stock": "" if row.stock is None else str(row.stock),
        "superseded by": row.superseded_by,
    }


@st.composite
def layouts(draw: st.DrawFn) -> tuple[list[Row], str, list[Field], list[list[str]]]:
    """Rows, language, order of the columns, preamble."""
    language = draw(st.sampled_from(sorted(HEADERS)))
    rows = draw(st.lists(row_of(language), min_size=5, max_size=12, unique_by=lambda row: row.number))
    order = draw(st.permutations(list(HEADERS[language])))
    preamble = draw(st.sampled_from([[], [["Stonegarth Trade Parts"], []], [["Stonegarth"], ["2026"], []]]))
    return rows, language, order, preamble


def table_of(layout: tuple[list[Row], str, list[Field], list[list[str]]], money: Callable[[Decimal], Any]) -> list[Any]:
    """The rows of the file."""
    rows, language, order, preamble = layout
    body = [[cells_of(row, money)[field] for field in order] for row in rows]
    return [*preamble, [HEADERS[language][field] for field in order], *body]


def read_back(data: bytes, name: str) -> list[Row]:
    """The offers as rows again."""
    reading = read_sheet(data, name, Hints(supplier="stonegarth", currency="EUR"))
    asked = [one for one in reading.summary.questions if one.code != "price-doubted"]  # the prices are any
    assert not reading.summary.problems and not asked
    assert all(one.adds_up for one in reading.summary.accounting)
    found: list[Any] = reading.offers.to_dict("records")
    return [
        Row(
            number=one["supplier_number"],
            maker=one["maker"],
            description=one["description"],
            list_price=one["list_price"],
            net=_net(one["breaks"]),
            pack=one["pack"],
            stock=one["stock"],
            superseded_by=one["superseded_by"],
        )
        for one in found
    ]


def _net(breaks: Sequence[PriceBreak]) -> Decimal | None:
    return breaks[0].price if breaks else None


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    layout=layouts(),
    delimiter=st.sampled_from([",", ";", "\t", "|"]),
    quoting=st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
    end=st.sampled_from(["\n", "\r\n", "\r"]),
    encoding=st.sampled_from(ENCODINGS),
    grouped=st.booleans(),
)
def test_any_text_file(
    layout: tuple[list[Row], str, list[Field], list[list[str]]],
    delimiter: str,
    quoting: Any,
    end: str,
    encoding: str,
    grouped: bool,
) -> None:
    def money(price: Decimal) -> str:
        return format_decimal(price, format="#,##0.00" if grouped else "0.00", locale=layout[1])

    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter, quoting=quoting, lineterminator=end).writerows(table_of(layout, money))
    text = out.getvalue() if encoding.startswith("utf") else out.getvalue().replace("\u202f", "\xa0")
    assert read_back(text.encode(encoding), "sheet.csv") == layout[0]


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(layout=layouts(), as_numbers=st.booleans())
def test_any_workbook(layout: tuple[list[Row], str, list[Field], list[list[str]]], as_numbers: bool) -> None:
    def money(price: Decimal) -> Any:
        return float(price) if as_numbers else format_decimal(price, format="#,##0.00", locale=layout[1])

    book = openpyxl.Workbook()
    assert book.active is not None
    for row in table_of(layout, money):
        book.active.append([cell if cell != "" else None for cell in row])
    out = io.BytesIO()
    book.save(out)
    assert read_back(out.getvalue(), "sheet.xlsx") == layout[0]
