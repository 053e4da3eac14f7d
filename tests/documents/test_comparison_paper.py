"""A comparison in the terminal and as a workbook."""

import io
from datetime import date, datetime
from decimal import Decimal

import openpyxl
from python_calamine import CalamineWorkbook

from sourcing.basics.choice import DaySpan, OpenOffer, RankWishes, TurningPoint
from sourcing.basics.landed_cost import Arrival
from sourcing.basics.value import changed
from sourcing.documents.comparison import comparison_text, comparison_xlsx
from tests.documents.buying_values import COMPARISON, FAR, NEAR
from tests.documents.values import HOSTILE, usd


def sheets_of(data: bytes) -> dict[str, list[list[object]]]:
    """Every worksheet as rows, read by another reader than the one that wrote it."""
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    return {name: [list(row) for row in book.get_sheet_by_name(name).to_python()] for name in book.sheet_names}


def test_the_ranking_reads_in_a_terminal() -> None:
    lines = comparison_text(COMPARISON).splitlines()
    assert max(len(line) for line in lines) <= 100
    first = next(line for line in lines if line.startswith("1 Stone"))
    assert first.split() == [
        *("1", "Stonegarth", "Trade", "Parts", "SG-77120", "119.00", "USD", "131.50", "2026-01-16", "fitted", "front"),
        "yes",
    ]
    at = lines.index(first)
    assert lines[at + 1 : at + 4] == [
        "    cheapest at the door",
        "      goods 119.00, freight 12.50",
        "      core charge 15.00 USD beside it, back when the old part is returned",
    ]
    second = next(line for line in lines if line.startswith("2 "))
    assert second.split()[-4:] == ["140.94", "2026-01-20", "maker", "no"], "not on the front, not in time"


def test_the_comparison_says_all_that_speaks_against_an_offer() -> None:
    text = " ".join(comparison_text(COMPARISON).split())
    for words in (
        "HELD BACK: number differs in one character; B38 is 2.0 in longer than B36, tolerance 0.6 in",
        "Warning: the sheet is 30 days old",
        "Not ranked Pellbrook Power Parts: 0071-4438 (Corrivane CV-9036), belt, snow thrower auger freight is not",
        "1 piece more than needed, for the shelf at 11.00 USD",
        "WY-BELT-1 is the same part as Corrivane CV-9036 (maker: Corrivane list 2025)",
        "stonegarth-2026-01.csv, row 214, sheet of 2026-01-05",
        "Notes two sheets have expired",
    ):
        assert words in text, words
    assert text.count("HELD BACK") == 1


def test_nothing_to_rank_is_said() -> None:
    text = comparison_text(changed(COMPARISON, ranked=(), set_aside=(), candidates=(), notes=(), need_by=None))
    assert "No offer can be ranked." in text and "needed by" not in text and "Not ranked" not in text


def test_hostile_descriptions_forge_no_line_in_the_terminal() -> None:
    one = COMPARISON.set_aside[0]
    hostile = changed(one, supplier_name=HOSTILE, reason=HOSTILE, offer=changed(one.offer, description=HOSTILE))
    text = comparison_text(changed(COMPARISON, set_aside=(hostile,)))
    assert "\x1b" not in text and "\u202e" not in text
    assert not any(line.startswith("Total 0.00") for line in text.splitlines())
    assert max(len(line) for line in text.splitlines()) <= 100


def test_comparison_as_workbook() -> None:
    sheets = sheets_of(comparison_xlsx(COMPARISON))
    assert list(sheets) == [
        *("Ranked", "Cost lines", "Not known", "First place", "Not ranked", "To judge", "Chart"),
    ]
    ranked = [dict(zip(sheets["Ranked"][0], row, strict=True)) for row in sheets["Ranked"][1:]]
    assert [row["Supplier's number"] for row in ranked] == ["SG-77120", "0071-4438"]
    assert [(row["Landed cost"], row["Price"]) for row in ranked] == [(131.5, 119), (140.94, 10.995)]
    assert [(row["On the front"], row["In time"]) for row in ranked] == [("yes", "yes"), ("no", "no")]
    assert sheets["Cost lines"][2][2:] == ["Freight", 12.5, "USD", "by order value, from 0"]
    assert [row[5] for row in sheets["To judge"][1:]] == ["yes", "no"]
    assert sheets["Not ranked"][1][5:7] == ["no", "freight is not known"]


def test_what_is_rejected_and_doubtful_is_told() -> None:
    """Rejected offers stand under a title of their own; doubts about the need come before any offer."""
    away = changed(COMPARISON.set_aside[0], reason="rejected: cord: asked is aramid", rejected=True)
    doubted = changed(COMPARISON, set_aside=(away,), asks=("B36", "cord aramid"), warnings=("the lists disagree",))
    text = comparison_text(doubted)
    assert text.index("WARNING: the lists disagree") < text.index("Ranked by cost")
    assert "Asked of an offer: B36, cord aramid\n" in text
    assert "Rejected: not what is asked\n" in text and "      cord: asked is aramid\n" in text
    assert "\nNot ranked\n" not in text
    assert sheets_of(comparison_xlsx(doubted))["Not ranked"][1][5] == "yes"


def test_the_chart_is_drawn_from_cells_and_the_front_goes_in_steps() -> None:
    """Read back by openpyxl: two series over the days, the front's first a step along, then down."""
    book = openpyxl.load_workbook(io.BytesIO(comparison_xlsx(COMPARISON)))
    sheet = book["Chart"]
    (chart,) = sheet._charts  # type: ignore[attr-defined]
    assert [one.xVal.numRef.f for one in chart.series] == ["'Chart'!$C$2:$C$4"] * 2
    assert [one.yVal.numRef.f for one in chart.series] == ["'Chart'!$D$2:$D$4", "'Chart'!$E$2:$E$4"]
    rows = [[cell.value for cell in row[2:5]] for row in sheet.iter_rows(min_row=2)]
    assert rows == [
        [datetime(2026, 1, 16), 131.5, None],
        [datetime(2026, 1, 20), 140.94, None],
        [datetime(2026, 1, 16), None, 131.5],
    ]


def test_the_steps_of_the_chart_keep_the_cost_until_the_later_day() -> None:
    late = changed(COMPARISON.ranked[0], priced=changed(COMPARISON.ranked[0].priced, arrival=FAR))
    soon = changed(COMPARISON.ranked[1], on_front=True, priced=changed(COMPARISON.ranked[1].priced, arrival=NEAR))
    rows = sheets_of(comparison_xlsx(changed(COMPARISON, ranked=(late, soon))))["Chart"][3:]
    assert [row[2:5] for row in rows] == [
        [NEAR.latest, "", 140.94],
        [FAR.latest, "", 140.94],
        [FAR.latest, "", 131.5],
    ]
    assert sheets_of(comparison_xlsx(changed(COMPARISON, ranked=())))["Chart"][0][0] == "Place"


OPEN = OpenOffer(
    priced=COMPARISON.ranked[1].priced, least=usd("136.00"), most=usd("153.00"), best_place=2, worst_place=4,
    reason="between 136.00 and 153.00 USD at the door: would stand 2nd at best, 4th at worst; freight is not known",
)  # fmt: skip
POINT = TurningPoint(
    figure="freight", place=1, supplier_name="Stonegarth Trade Parts", by=usd("9.43"), per=1,
    words="Stonegarth Trade Parts stays first until its freight rises by more than 9.43 USD",
)  # fmt: skip
WHOLE = changed(POINT, figure="landed cost", words="Stonegarth Trade Parts stays first until its cost rises")
SPANS = (
    DaySpan(
        from_price=usd("0.00"), to_price=usd("1.19"), place=1, supplier_name="Stonegarth Trade Parts",
        total=usd("131.50"), latest=date(2026, 1, 20),
    ),
    DaySpan(
        from_price=usd("1.20"), to_price=None, place=2, supplier_name="Pellbrook Power Parts",
        total=usd("140.94"), latest=date(2026, 1, 16),
    ),
)  # fmt: skip
FULL = changed(COMPARISON, open_offers=(OPEN,), turning_points=(WHOLE, POINT), day_spans=SPANS)


def test_what_is_not_known_and_how_long_the_first_stays_are_told() -> None:
    """A landed cost that moves by as much as the freight is not said twice."""
    text = " ".join(comparison_text(FULL).split())
    assert "would stand 2nd at best, 4th at worst; freight is not known" in text
    assert POINT.words in text and WHOLE.words not in text
    assert "in USD first comes Stonegarth Trade Parts up to 1.19 and Pellbrook Power Parts from 1.20 on" in text
    only = " ".join(comparison_text(changed(FULL, day_spans=(changed(SPANS[0], to_price=None),))).split())
    assert "whatever a day of waiting is worth, Stonegarth Trade Parts comes first" in only


def test_the_worth_of_a_day_is_told_of_offers_with_a_day_only() -> None:
    """Another one may be first and name no day: then nothing is said of it but that."""
    first, *others = COMPARISON.ranked
    undated = changed(first, priced=changed(first.priced, arrival=Arrival(earliest=None, latest=None, steps=())))
    none_known = changed(FULL, ranked=(undated, *others))
    one_span = changed(none_known, day_spans=(changed(SPANS[1], from_price=usd("0.00")),))
    left_out = f"of the offers whose day is known; not counted, for no day is known: {first.priced.supplier_name}"
    for given in (none_known, one_span):
        assert left_out in " ".join(comparison_text(given).split())
    assert left_out not in " ".join(comparison_text(FULL).split())


def test_the_workbook_has_every_new_figure() -> None:
    sheets = sheets_of(comparison_xlsx(FULL))
    (unknown,) = [dict(zip(sheets["Not known"][0], row, strict=True)) for row in sheets["Not known"][1:]]
    assert (unknown["At least"], unknown["At most"], unknown["Place at worst"]) == (136, 153, 4)
    first = sheets["First place"][1:]
    assert [row[2] for row in first] == ["landed cost rises", "freight rises", *["first at a day's price from, to"] * 2]
    assert [row[3:6] for row in first] == [["", 9.43, "USD"], ["", 9.43, "USD"], [0, 1.19, "USD"], [1.2, "", "USD"]]


def test_a_price_of_a_day_stands_in_the_heading_and_both_figures_in_the_table() -> None:
    wishes = RankWishes(value_per_day=Decimal("2.50"))
    one = changed(COMPARISON.ranked[0], days=4, waiting=usd("10.00"), counted=usd("141.50"))
    text = comparison_text(changed(COMPARISON, ranked=(one,), wishes=wishes, asked_on=date(2026, 1, 12)))
    assert max(len(line) for line in text.splitlines()) <= 100
    assert "and 2.50 USD for each day of waiting from 2026-01-12 to the last day" in " ".join(text.split())
    line = next(line for line in text.splitlines() if line.startswith("1 Stone"))
    assert line.split()[-7:] == ["131.50", "10.00", "141.50", "2026-01-16", "fitted", "front", "yes"]
    ranked = sheets_of(comparison_xlsx(changed(COMPARISON, ranked=(one,))))["Ranked"]
    assert dict(zip(ranked[0], ranked[1], strict=True))["Landed and waiting"] == 141.5


def test_wishes_that_take_offers_out_stand_at_the_head() -> None:
    wishes = RankWishes(need_by=date(2026, 1, 16), only_in_time=True, trusted_only=True, without_surplus=True)
    text = comparison_text(changed(COMPARISON, wishes=wishes))
    assert "Ranked only: what is here by 2026-01-16, trusted matches, what leaves nothing over\n" in text
