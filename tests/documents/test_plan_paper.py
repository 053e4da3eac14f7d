"""A plan in the terminal and as a workbook."""

import io
from datetime import date
from decimal import Decimal
from typing import Any

import openpyxl

from sourcing.basics.landed_cost import Delivery, Missing
from sourcing.basics.plan import FrontPoint, Plan, PlanWishes
from sourcing.basics.value import changed
from sourcing.documents.plan_paper import plan_text, plan_xlsx
from tests.documents.buying_values import PLAN
from tests.documents.test_comparison_paper import sheets_of
from tests.documents.values import usd


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
        "not possible does not sell the",
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
    assert list(sheets) == ["Items", "Orders", "Cost lines", "Deliveries", "Other ways", "Front", "Notes"]
    items = [dict(zip(sheets["Items"][0], row, strict=True)) for row in sheets["Items"][1:]]
    assert [(row["Order"], row["Supplier's number"], row["Landed cost"]) for row in items] == [
        (1, "SG-77120", 131.5),
        (2, "0071-4438", 140.94),
    ]
    assert sheets["Other ways"][2][1] == "", "a way that is not possible has no cost, not zero"


def test_what_is_doubtful_is_told_before_ordering() -> None:
    told = plan_text(changed(PLAN, warnings=("line 1: the lists disagree",)))
    assert "Before ordering\n  line 1: the lists disagree\n" in told


def test_a_gap_is_told_in_words() -> None:
    """How much could be saved at most, from the bound."""
    plan = changed(PLAN, proven=False, counted=usd("272.44"), bound=usd("270.00"))
    told = " ".join(plan_text(plan).split())
    assert (
        "not proven to be the least: no plan can count less than 270.00 USD, so at most 0.90 % could be saved" in told
    )


def test_what_was_asked_stands_above_the_orders() -> None:
    """Objective, wishes, and what the objective counted where that is not the landed total."""
    wishes = PlanWishes(
        objective="cost and days", value_per_day=Decimal("5.00"), need_by=date(2026, 1, 20), most_suppliers=2,
        more_than_needed="never", surplus_credit_percent=Decimal(50), cores_lost=True, in_stock_only=True,
        trusted_only=True,
    )  # fmt: skip
    told = " ".join(plan_text(changed(PLAN, wishes=wishes, counted=usd("301.94"), waiting=usd("35.00"))).split())
    for words in (
        "Counted with surplus credited, core charges as cost: 301.94 USD",
        "Made least: cost at the door and 5.00 USD for each day of waiting: 35.00 USD for this plan's, in no total",
        "Asked: all of it here by 2026-01-20; from at most 2 suppliers; only what is in stock; only trusted standings "
        "(fitted, maker); never more than needs, packs and minimums call for; 50 % of surplus counted as got back; old "
        "parts do not go back, so core charges are cost",
    ):
        assert words in told, told
    soonest = plan_text(changed(PLAN, wishes=PlanWishes(objective="date")))
    assert "proven the soonest, and the least of these" in soonest


FRONT = (
    FrontPoint(
        total=usd("272.44"), counted=usd("272.44"), latest=date(2026, 1, 20), suppliers=("stonegarth", "pellbrook"),
        proven=True, chosen=True,
    ),
    FrontPoint(
        total=usd("310.00"), counted=usd("310.00"), latest=date(2026, 1, 16), suppliers=("stonegarth",), proven=False
    ),
)  # fmt: skip


def test_the_front_is_a_table_and_a_worksheet() -> None:
    """Cost against the last day, the plan shown marked."""
    lines = plan_text(changed(PLAN, front=FRONT)).splitlines()
    at = lines.index("The front: no plan is both cheaper and sooner than one of these")
    assert lines[at + 3].split() == [
        "chosen",
        "272.44",
        "USD",
        "272.44",
        "USD",
        "2026-01-20",
        "stonegarth,",
        "pellbrook",
        "yes",
    ]
    assert lines[at + 4].split() == ["310.00", "USD", "310.00", "USD", "2026-01-16", "stonegarth", "no"]
    sheet = sheets_of(plan_xlsx(changed(PLAN, front=FRONT)))["Front"]
    assert [row[:2] for row in sheet[1:]] == [["yes", 272.44], ["no", 310]]


def test_deliveries_and_a_range_of_what_is_missing_are_told() -> None:
    """What comes when, and what is not known at least and at most."""
    order = PLAN.orders[0]
    deliveries = (
        Delivery(pieces=4, leaves=(date(2026, 1, 13),) * 2, arrives=(date(2026, 1, 15),) * 2),
        Delivery(pieces=6, leaves=(date(2026, 1, 20),) * 2, arrives=(date(2026, 1, 22), date(2026, 1, 23))),
    )
    arrival = changed(order.arrival, deliveries=deliveries)
    landed = changed(order.landed, missing=(Missing(what="freight", least=usd("8.00"), most=usd("25.00")),))
    text = plan_text(changed(PLAN, orders=(changed(order, arrival=arrival, landed=landed),)))
    assert "comes in 2 deliveries: 4 pieces here on 2026-01-15; 6 pieces here from 2026-01-22 to 2026-01-23" in text
    assert "Not known: freight, between 8.00 USD and 25.00 USD" in text
    assert "at least 131.50 USD at the door" in text


def test_the_front_is_drawn_by_the_spreadsheet() -> None:
    """A scatter chart of the worksheet's own cells, read back by openpyxl; none where there is no front."""
    drawn, empty = (_front_sheet(plan_xlsx(plan)) for plan in (changed(PLAN, front=FRONT), PLAN))
    points, line = drawn._charts[0].series
    assert (points.xVal.numRef.f, points.yVal.numRef.f) == ("'Front'!$E$2:$E$3", "'Front'!$B$2:$B$3")
    assert line.yVal.numRef.f == "'Front'!$C$2:$C$3"
    assert not empty._charts
    assert plan_xlsx(changed(PLAN, front=FRONT)) == plan_xlsx(changed(PLAN, front=FRONT)), "the same bytes"


def _front_sheet(data: bytes) -> Any:
    return openpyxl.load_workbook(io.BytesIO(data))["Front"]
