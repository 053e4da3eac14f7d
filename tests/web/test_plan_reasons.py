"""Why a line of a plan has no offer: what is there for a person to judge is counted, also beside good offers."""

import sqlite3
from datetime import date
from pathlib import Path

from sourcing.actions.desk import open_desk
from sourcing.actions.plan import plan_job
from sourcing.basics.plan import PlanWishes
from tests.web.world import CLERK, NOW, TAKEN_IN, new_database


def test_rows_to_judge_are_counted_where_good_offers_can_not_be_had(tmp_path: Path) -> None:
    """Nothing is in stock anywhere: two rows look like the belt, and may be it."""
    database = new_database(tmp_path)
    with sqlite3.connect(database) as store:
        store.execute("UPDATE offers SET stock = 0")
    store.close()
    desk = open_desk(str(database), NOW, CLERK)
    plan = plan_job(desk, TAKEN_IN, date(2026, 3, 1), wishes=PlanWishes(in_stock_only=True))
    desk.store.close()
    (belt,) = (words for words in plan.unfilled if "BELT-AUGER" in words)
    assert "6 offers, and none can be ordered" in belt and belt.endswith("2 offers are for a person to judge")
