"""Prices that contradict one another, headers and lines that change them, numbers that are none: asked, never taken.

The sheets are invented; that each may be misread is common practice of price sheets, no source.
"""

import pytest

from sourcing.basics.sheet import Field
from tests.sheets.test_paired_columns import codes, read

ROWS = {
    "net above list": ("Part No,List,Net\nA-1,10,20\nA-2,5,9\nA-3,7,8\n", "price-doubted"),
    "totals in break columns": ("Part No,1 pc,10 pcs,100 pcs\nA-1,5,45,400\nA-2,2,18,150\n", "price-doubted"),
    "per cents in break columns": ("Part No,Net,10+,50+\nA-1,50.50,5,10\nA-2,80.20,5,10\n", "price-doubted"),
    "a multiplier as a price": ("Part No,List,1-9\nA-1,50.50,0.60\nA-2,80.20,0.60\n", "price-doubted"),
    "net that equals list": ("Part No,List,Discount %,Net\nA-1,9.50,40,9.50\nA-2,5,40,5\n", "price-doubted"),
    "a discount beside a net price": ("Part No,Net,Discount %\nA-1,9.50,40\nA-2,5.20,40\n", "discount-beside-net"),
    "two years": ("Part No,List 2026,Net 2025\nA-1,10,8\nA-2,20,16\n", "price-years-differ"),
    "without tax, of the customer": (
        "Part No,Preis netto,Preis inkl. MwSt\nA-1,10.00,11.90\nA-2,20.00,23.80\n",
        "net-of-tax",
    ),
    "money that comes off": ("Part No,List,Discount\nA-1,125.50,25.10\nA-2,220.00,44.12\n", "column-contradicted"),
    "another dealer price": ("Part No,Jobber,WD\nA-1,12,11\nA-2,22,20\n", "price-column-unclear"),
    "another sign": ("Part No,Net (€)\nA-1,12.50\nA-2,22.20\n", "currency-differs"),
    "one slip decides for none": ("Part No,Net\nA-1,1.250\nA-2,2.400\nA-3,3.100\nA-4,12.50\n", "price-ambiguous"),
    "a box, counted by cases": ("Part No,Net,UOM,Case Qty\nA-1,15.00,BX,12\n", "pack-unknown"),
    "ditto": ("Part No,Net\nA-1,15.00\ndo.,16.00\n", "number-with-remark"),
    "two numbers": ('Part No,Net\n"A-1, A-2",15.00\nA-3 thru A-6,16.00\n', "number-with-remark"),
    "a note per pair": ("Part No,Net,Notes\nA-1,15.00,price per pair\nA-2,2.00,\n", "price-basis-differs"),
    "per dozen, in any row": (
        'Part No,Description,Net\nA-1,"Bolt, per dozen",5\nA-2,Belt,2.00\n',
        "price-basis-differs",
    ),
}


@pytest.mark.parametrize(("text", "code"), ROWS.values(), ids=list(ROWS))
def test_a_sheet_that_may_be_misread_is_asked_about(text: str, code: str) -> None:
    assert code in codes(read(text)), codes(read(text))


def test_a_discount_said_beside_a_net_price_comes_off_nothing_and_is_asked_of_every_column() -> None:
    """What a person has said of the discounts is never thrown away in silence."""
    text = "Código;Precio neto;Dto. 1 %;Dto. 2 %\nMN-1;60,00;30;10\nMN-2;0,80;30;10\n"
    said: dict[str, Field] = {"Dto. 1 %": "discount", "Dto. 2 %": "discount"}
    nets: tuple[dict[str, Field], ...] = ({}, {"Precio_neto": "net price"})
    for more in nets:
        asked = [(one.code, one.found) for one in read(text, **said, **more).summary.questions]
        assert asked == [("discount-beside-net", "Dto. 1 %"), ("discount-beside-net", "Dto. 2 %")]
    assert codes(read(text, **said, Precio_neto="list price")) == []
    left_out: dict[str, Field] = {"Dto. 1 %": "not used", "Dto. 2 %": "not used"}
    assert codes(read(text, **left_out)) == []


GROUPS = ["Retail", "Old prices", "Discount %", "Last year", "Competitor", "Canada"]


@pytest.mark.parametrize("group", GROUPS)
def test_a_word_above_a_price_that_makes_it_another_one(group: str) -> None:
    """The lower row alone would be a net price."""
    text = f"Part No,Description,{group},\n,,Net,10+\nA-1,Belt,12.50,11.00\nA-2,Bolt,1.20,1.10\n"
    assert "price-column-unclear" in codes(read(text))


def test_a_group_that_only_names_prices_asks_nothing() -> None:
    text = "Item,Item,Prices,Prices\nNo.,Name,List,Net\nA-1,Belt,20.00,12.50\nA-2,Bolt,2.00,1.20\n"
    assert codes(read(text)) == []


SOUND = [
    "Part No,List,Discount %,Net\nA-1,10.00,40,6.00\nA-2,5.00,40,3.00\n",
    "Part No,Net,10+,50+\nA-1,12.50,11.00,10.00\nA-2,1.20,1.10,1.00\n",
    "Part No,List 2026,Net 2026\nA-1,10,8\nA-2,20,16\n",
    "Part No,List,Multiplier\nA-1,10.00,0.62\nA-2,5.00,0.55\n",
    "Part No,List,Net\nA-1,10,20\nA-2,20,12\nA-3,30,18\n",
    "Artikelnummer,Händlernetto,UVP inkl. MwSt\nA-1,10.00,11.90\nA-2,20.00,23.80\n",
    'Part No,Description,Net\nA-1,"Chain, 24 links per foot",12.50\nA-2,Copper washer,1.20\n',
]


@pytest.mark.parametrize("text", SOUND)
def test_a_sound_sheet_is_not_doubted(text: str) -> None:
    assert codes(read(text)) == []


def test_what_a_person_has_said_is_not_doubted() -> None:
    text = "Part No,List,Net\nA-1,10,20\nA-2,5,9\n"
    said: dict[str, Field] = {"Net": "net price"}
    assert codes(read(text, **said)) == []


@pytest.mark.parametrize(
    "line",
    ["Fasteners - per 100", "Fasteners (box of 50)", "Hose by the foot", "Accessories (list prices)",
     "MSRP by quantity",
     "Canadian funds", "Imported items (CAD)", "All prices in Australian dollars", "Preise in Franken",
     "Prices include core", "Prices in cents"],
)  # fmt: skip
def test_more_lines_that_speak_of_prices(line: str) -> None:
    text = f"Part No,Description,Net\nA-1,Belt,12.50\n{line}\nA-2,Bolt,1.20\n"
    assert "line-about-prices" in codes(read(text))


def test_freight_and_totals_are_no_offers() -> None:
    found = read("Part No,Description,Net\nA-1,Belt,12.50\nBelts total,,44.00\nFreight,,25.00\n")
    assert list(found.offers["supplier_number"]) == ["A-1"]
