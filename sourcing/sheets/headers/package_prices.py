"""Price headers that name a package and leave open whether the price is for one: 'Pkg Price', 'VPE-Preis', 'Box net'.

'Price per box' and 'Price/box' say it and are not asked. The words are common practice of price sheets, no source.
"""

import re
from collections.abc import Iterator, Mapping, Sequence

from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Column, Field

from ..cells.basis_cells import NAMED, PACK, PIECE, Basis, basis_in_header
from ..cells.cell import words_of
from ..worksheet import Cell, text_of
from .column_names import PRICES, name_of, plain_key
from .header_keys import plain_text

PACKAGE = (
    r"(?:packs?|pk|pkgs?|pck|package|packet|box|bx|case|cs|carton|ctn|bag|vpe|ve|packung|paket|karton|beutel|schachtel"
)
PACKAGE += (
    r"|lot|paquet|boite|sachet|colis|conditionnement|cdt|condt|paquete|caja|bolsa|envase|doos|pak|zak|verpakking)"
)
JOINED = r"(?:packungs?|verpackungs?|karton|beutel|schachtel|vpe|paket|doos|verpakkings?|pack|box|case)"
JOINED += r"-?(?:preis|prijs|price)"
NAMES_PACKAGE = re.compile(rf"(?<!\w){PACKAGE}(?!\w)|(?<!\w){JOINED}(?!\w)")
ANSWERS: dict[Field, Basis] = {"price basis": PACK, "not used": PIECE}
"""What a person says of 'Pkg Price: per pack': it is what the prices are for, or it is not."""


def per_pack_key(column: Column) -> str:
    """Under which name a person's answer is given and remembered: 'Pkg Price: per pack'."""
    return f"{name_of(column)}: per pack"


def said_bases(columns: Sequence[Column], said: Mapping[str, Field]) -> tuple[tuple[int, Basis], ...]:
    """Of the columns a person has spoken of: where each stands, and what its prices are for."""
    answers = {plain_key(name): ANSWERS[field] for name, field in said.items() if field in ANSWERS}
    keys = ((column.at, plain_key(per_pack_key(column))) for column in columns)
    return tuple((at, answers[key]) for at, key in keys if key in answers)


def leaves_open(header: str) -> bool:
    """Whether a price's header names a package, and not that the price is for one, for a piece or for so many."""
    if not NAMES_PACKAGE.search(plain_text(header)) or words_of(header).rstrip(".").endswith((" each", " ea")):
        return False
    return basis_in_header(header) in (None, PACK) and not NAMED.search(words_of(header))


def package_questions(
    columns: Sequence[Column], packs: Sequence[Cell] | None, said: Sequence[int], place: Place
) -> Iterator[Problem]:
    """A question for each price column that leaves it open. `said`: where those stand that a person has spoken of.

    `packs`: the different cells of the pack column, None where there is none. Nothing is asked where a column says of
    each row what its price is for, or where every pack is of one piece: then both readings are the same.
    """
    single = packs is not None and {text_of(cell) for cell in packs} <= {"", "1"}
    if single or any(column.field == "price basis" for column in columns):
        return
    pack = next((name_of(column) for column in columns if column.field == "pack"), "")
    beside = f"beside '{pack}', which counts the pieces in one" if pack else "and no column counts the pieces in one"
    for column in columns:
        if column.field in PRICES and column.at not in said and leaves_open(column.header):
            key = per_pack_key(column)
            yield problem("price-of-a-package", place=place, found=key, column=name_of(column), beside=beside)
