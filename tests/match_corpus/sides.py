"""How each side of a world writes its catalogue: shares of what is given, how it is formed, how much mess there is."""

from dataclasses import dataclass, fields, replace
from typing import Any

from tests.match_corpus.chance import Chance
from tests.match_corpus.kinds import Kind, goods


@dataclass(frozen=True)
class Side:
    """Every share lies between 0 and 1. `orders`: which chunks stand where, a letter each (see `writing.chunks`)."""

    number_given: float = 1.0
    number_own: float = 0.0
    number_generic: float = 0.0
    number_reformed: float = 0.3
    tail_lost: float = 0.0
    tail_added: float = 0.0
    maker_given: float = 1.0
    maker_other: float = 0.2
    brand_in_title: float = 0.5
    brand_again: float = 0.0
    model_in_title: float = 0.3
    model_if_no_number: float = 0.0
    model_reformed: float = 0.3
    line_in_title: float = 0.2
    measure_given: float = 0.8
    colour_given: float = 0.8
    feature_given: float = 0.4
    marketing: int = 0
    synonym: float = 0.3
    mistyped: float = 0.05
    shortened: float = 0.1
    dressed: float = 0.1
    reordered: float = 0.05
    upper: float = 0.05
    converts: float = 0.05
    steady: float = 0.7
    price_given: float = 0.95
    price_off: float = 0.7
    listed_twice: float = 0.02
    cut_at: int = 200
    orders: tuple[str, ...] = ("BLNMSUFCPK",)


@dataclass(frozen=True)
class World:
    """What is sold, by whom, and the two sides. `with_partner`: the share of sheet rows that have a part."""

    name: str
    kinds: tuple[Kind, ...]
    makers: tuple[str, ...]
    maker_count: int
    sheet_rows: int
    parts_rows: int
    with_partner: float
    sisters: int
    made_for: float
    parts: Side
    sheet: Side


W1 = World(
    "W1", goods("garden"), ("Norrowby", "Ostrevik", "Corrivane", "Dunmarrow"), 14, 2500, 8000, 0.6, 3, 0.08,
    Side(number_reformed=0.05, tail_lost=0, maker_other=0.05, brand_in_title=0.1, model_in_title=0.03, steady=0.85,
         feature_given=0.3, measure_given=0.93, price_given=0.98, listed_twice=0.004, upper=0.5,
         orders=("NUSFCPLB", "UNSFCPLB")),
    Side(number_given=0.95, number_own=0.12, number_generic=0.02, number_reformed=0.5, tail_lost=0.015,
         tail_added=0.01, model_if_no_number=0.8,
         maker_given=0.75, maker_other=0.3, brand_in_title=0.3, model_in_title=0.2, marketing=2, measure_given=0.88,
         feature_given=0.45, shortened=0.3, converts=0.1, cut_at=70, orders=("NSUMFCPLBK", "BNUSMCFPK", "UNMCSPFBK")),
)  # fmt: skip
W2 = World(
    "W2", goods("electronics"), (), 130, 2500, 2500, 0.5, 2, 0.04,
    Side(number_given=0.9, number_own=0.03, number_reformed=0.3, tail_lost=0.04, maker_given=0.5, maker_other=0.15,
         brand_in_title=0.95, model_in_title=0.92, model_reformed=0.2, line_in_title=0.88, measure_given=0.72,
         colour_given=0.65, feature_given=0.4, price_given=0.55, price_off=0.3, mistyped=0.03, cut_at=85,
         orders=("BLSNCPM", "BMLNSCP", "BLMSFNCP", "BLNSCPM", "BMLNSC")),
    Side(number_given=0.12, number_own=0.2, number_reformed=0.5, tail_lost=0.05, tail_added=0.04, maker_given=0.6,
         maker_other=0.3, brand_in_title=0.92, brand_again=0.2, model_in_title=0.93, model_reformed=0.3,
         line_in_title=0.9, measure_given=0.75, colour_given=0.75, feature_given=0.65, marketing=2, mistyped=0.08,
         shortened=0.15, dressed=0.2, reordered=0.12, converts=0.06, steady=0.4, price_given=0.7, price_off=0.85,
         listed_twice=0.03, cut_at=190,
         orders=("BMLNSFKCP", "BLNMFSKCP", "KBNSFCLMP", "FSNBLKCPM", "NKFSCPBLM", "BLNFKMSC")),
)  # fmt: skip
W3 = World(
    "W3", goods("household"), (), 340, 2500, 12000, 0.45, 2, 0.04,
    Side(number_given=0.93, number_own=0.04, number_generic=0.02, number_reformed=0.4, tail_lost=0.03, tail_added=0.03,
         maker_given=0.9, maker_other=0.15, brand_in_title=0.97, brand_again=0.1, model_in_title=0.85,
         model_reformed=0.2, line_in_title=0.94, measure_given=0.9, colour_given=0.75, feature_given=0.8, synonym=0.2,
         marketing=2, mistyped=0.05, shortened=0.1, dressed=0.15, reordered=0.06, converts=0.05, steady=0.5,
         price_given=0.9,
         price_off=0.4, listed_twice=0.02, cut_at=170,
         orders=("BLNSFCKPM", "BMLNFSCPK", "BNSFLCPKM", "LNSCFPKBM")),
    Side(number_given=0.9, number_own=0.06, number_generic=0.03, number_reformed=0.5, tail_lost=0.04, tail_added=0.02,
         maker_given=0.8, maker_other=0.25, brand_in_title=0.97, model_in_title=0.85, model_reformed=0.2,
         line_in_title=0.94, measure_given=0.9, colour_given=0.75, feature_given=0.75, synonym=0.2, marketing=1,
         mistyped=0.06,
         shortened=0.2, dressed=0.12, reordered=0.06, upper=0.1, converts=0.08, steady=0.6, price_given=0.85,
         price_off=0.85, listed_twice=0.02, cut_at=140,
         orders=("NSFBLCPMK", "BNSCPMLK", "BLSNFKCPM", "NBLSPCFMK", "KNSCPBLM")),
)  # fmt: skip
# W1 with clean numbers on both sides, which `damaged` then damages on the sheet.
W4 = replace(
    W1,
    name="W4",
    parts=replace(W1.parts, number_reformed=0.0, listed_twice=0.0),
    sheet=replace(
        W1.sheet,
        number_given=1.0,
        number_own=0.0,
        number_generic=0.0,
        number_reformed=0.25,
        tail_lost=0.0,
        tail_added=0.0,
        listed_twice=0.0,
    ),
)
WORLDS = {world.name: world for world in (W1, W2, W3, W4)}


def shaken(side: Side, chance: Chance) -> Side:
    """The side with every share a little other, so that no two seeds are the same shop: at most a fifth of it."""
    shares = [(one.name, getattr(side, one.name)) for one in fields(side)]
    changed: dict[str, Any] = {
        name: value + chance.between(-0.2, 0.2) * min(value, 1 - value)
        for name, value in shares
        if isinstance(value, float) and 0 < value < 1
    }
    return replace(side, **changed)
