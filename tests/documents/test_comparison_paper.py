"""Comparison and plan in the terminal and as workbooks."""

import io

from python_calamine import CalamineWorkbook

from sourcing.basics.landed_cost import Missing
from sourcing.basics.plan import Plan
from sourcing.basics.value import changed
from sourcing.documents.comparison import comparison_text, comparison_xlsx, plan_text, plan_xlsx
from tests.documents.buying_values import COMPARISON, PLAN
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
    assert list(sheets) == ["Ranked", "Cost lines", "Not ranked", "To judge"]
    ranked = [dict(zip(sheets["Ranked"][0], row, strict=True)) for row in sheets["Ranked"][1:]]
    assert [row["Supplier's number"] for row in ranked] == ["SG-77120", "0071-4438"]
    assert [(row["Landed cost"], row["Price"]) for row in ranked] == [(131.5, 119), (140.94, 10.995)]
    assert [(row["On the front"], row["In time"]) for row in ranked] == [("yes", "yes"), ("no", "no")]
    assert sheets["Cost lines"][2][2:] == ["Freight", 12.5, "USD", "by order value, from 0"]
    assert [row[5] for row in sheets["To judge"][1:]] == ["yes", "no"]
    assert sheets["Not ranked"][1][5:7] == ["no", "freight is not known"]


def test_the_plan_reads_in_a_terminal() -> None:
    text = plan_text(PLAN)
    assert max(len(line) for line in text.splitlines()) <= 100
    joined = " ".join(text.split())
    for words in (
        "2 orders: 272.44 USD at the door, proven to be the least, all of it here by 2026-01-20",
        "Core charges beside it: 15.00 USD",
        "Order 1: Stonegarth Trade Parts, 131.50 USD at the door, arrives 2026-01-15 to 2026-01-16",
        "line 1: 2 pieces of 0071-4438 (Corrivane CV-9036)",
        "Goods SG-77120 119.00 1 x 119.00 USD",
        "not possible not known does not sell the bearing",
        "Not filled C: 1 x WY-BAR-1: nobody offers it",
        "Notes the keepers pass free freight",
    ):
        assert words in joined, words


def test_an_unproven_and_an_empty_plan_say_so() -> None:
    assert "not proven to be the least" in plan_text(changed(PLAN, proven=False))
    assert "the last day is not known" in plan_text(changed(PLAN, latest=None))
    empty = Plan(
        needs=PLAN.needs, orders=(), total=usd("0"), core_charge=usd("0"), latest=None, proven=False,
        counted=usd("0"), unfilled=PLAN.unfilled,
    )  # fmt: skip
    assert plan_text(empty).startswith("No orders: none of the needs can be filled.\n\nNot filled\n")


def test_open_questions_and_a_refusal_stand_at_their_order() -> None:
    order = PLAN.orders[0]
    landed = changed(order.landed, missing=(Missing(what="freight of Stonegarth"),), refusal="below the minimum of 50")
    text = plan_text(changed(PLAN, orders=(changed(order, landed=landed),)))
    assert "    Not known: freight of Stonegarth\n    The supplier would refuse: below the minimum of 50" in text


def test_plan_as_workbook() -> None:
    sheets = sheets_of(plan_xlsx(PLAN))
    assert list(sheets) == ["Items", "Cost lines", "Other ways", "Notes"]
    items = [dict(zip(sheets["Items"][0], row, strict=True)) for row in sheets["Items"][1:]]
    assert [(row["Order"], row["Supplier's number"], row["Landed cost"]) for row in items] == [
        (1, "SG-77120", 131.5),
        (2, "0071-4438", 140.94),
    ]
    assert sheets["Other ways"][2][1] == "", "a way that is not possible has no cost, not zero"


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
    told = plan_text(changed(PLAN, warnings=("line 1: the lists disagree",)))
    assert "Before ordering\n  line 1: the lists disagree\n" in told
