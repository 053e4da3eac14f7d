"""Orders: one for each supplier from many jobs, approved lines only, nothing twice, reasons and days on them."""

import json
import threading
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest
from sqlalchemy import text

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import OrdersPlaced, all_orders, list_orders, listed_order, look_at_orders, place_orders
from sourcing.actions.setup import set_up
from sourcing.basics.problem import Refused
from sourcing.storage.after_order import promises
from tests.actions.order_shop import (
    BELT,
    IDLER,
    KEEPER,
    MONDAY,
    approved,
    lines,
    orders_shop,
    quote_again,
    quoted,
    say_yes,
)
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, desk_at, job_file, sheet


def refusal(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of the first problem."""
    return caught.value.problems[0].code


def test_many_jobs_share_an_order_and_its_freight(tmp_path: Path) -> None:
    """154.80 passes free freight; with the other job's keepers on it the freight stays free, and that is the reason."""
    desk = orders_shop(tmp_path)
    jobs = [approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 1)), approved(desk, tmp_path, ("KEEPER", 2))]
    (order,) = place_orders(desk, jobs).orders
    assert [(line.job, line.label, line.ordered) for line in order.lines] == [
        (jobs[0], "1", 1), (jobs[0], "2", 1), (jobs[1], "1", 2),
    ]  # fmt: skip
    assert order.landed_total == usd("186.40") == order.goods_total
    assert order.reasons == ("the order passes free freight: free from 150.00 USD of goods; this order has 186.40",)
    assert [one.deed for one in history(desk, jobs[1])][-1] == "order"


def test_an_order_knows_all_that_later_steps_need(tmp_path: Path) -> None:
    """Rate, ship-to with telephone, note, paper, weight, core charge, category, why; and the days are promises."""
    desk = orders_shop(tmp_path)
    settings = SHOP.replace('[shop]\nname = "', 'paper_size = "A4"\n[shop]\ntelephone = "555 0142"\nname = "')
    (tmp_path / "shop.toml").write_text(settings)
    set_up(desk, tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1))
    (order,) = place_orders(desk, [job], note="Side door").orders
    assert (order.rate, order.shop_telephone, order.supplier_note) == (Decimal(1), "555 0142", "Side door")
    assert (order.paper_size, order.locale) == ("A4", "en_US")
    assert order.lines[0].reasons[0].startswith("quoted from it: goods 139.00")
    with desk.store.reading() as connection:
        (promise,) = promises(connection, job)
    assert (promise.order, promise.line, promise.latest) == (order.number, 1, date(2026, 3, 4))


def test_unapproved_lines_are_never_ordered(tmp_path: Path) -> None:
    """Neither waiting nor declined, by name or with the rest; a look does not show them either."""
    desk = orders_shop(tmp_path)
    waiting = quoted(desk, tmp_path, ("BELT", 1))
    for act in (place_orders, look_at_orders):
        with pytest.raises(Refused) as caught:
            act(desk, [waiting])
        assert refusal(caught) == "nothing-approved"
    job = quoted(desk, tmp_path, ("BELT", 1), ("KEEPER", 1))
    record(desk, job, Spoken(yes=("1",), no=("2",), who="Maud Tilbrook", how="telephone"))
    with pytest.raises(Refused, match=r"is declined, .* --yes 2 --instead' first"):
        place_orders(desk, [job], ["2"])
    with pytest.raises(Refused) as caught:
        place_orders(desk, [job], ["Z"])
    assert refusal(caught) == "not-approved"
    assert [line.label for line in look_at_orders(desk, [job]).orders[0].lines] == ["1"]
    assert [line.label for line in place_orders(desk, [job]).orders[0].lines] == ["1"]
    assert len(all_orders(desk, None)) == 1


def test_a_look_keeps_nothing(tmp_path: Path) -> None:
    """No order, no deed, no promise; what is shown is what would be placed."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1))
    before = history(desk, job)
    seen = look_at_orders(desk, [job])
    assert all_orders(desk, None) == () and history(desk, job) == before
    (placed,) = place_orders(desk, [job]).orders
    assert seen.orders[0].number == "" and seen.orders[0].lines == placed.lines


def test_a_look_names_the_last_moment_to_order(tmp_path: Path) -> None:
    """Here in two working days, ordered before 14:00: for Friday the 6th it must leave on Wednesday."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), head="need_by = 2026-03-06\n")
    seen = look_at_orders(desk, [job])
    assert "Stonegarth Trade Parts: to be here by 2026-03-06 it must be ordered by 2026-03-04 14:00" in seen.warnings


@pytest.mark.parametrize(
    ("head", "need_by"),
    [
        ("need_by = 2026-03-05\n", date(2026, 3, 5)),
        # Common practice, no source: a day of work between the parts and the machine; Monday's is Friday.
        ("ready_by = 2026-03-09\n", date(2026, 3, 6)),
        ("ready_by = 2026-03-12\nneed_by = 2026-03-05\n", date(2026, 3, 5)),
        ("ready_by = 2026-03-05\nneed_by = 2026-03-05\n", date(2026, 3, 4)),
        ("", None),
    ],
)
def test_the_need_works_backwards_from_the_customers_day(tmp_path: Path, head: str, need_by: date | None) -> None:
    """The earliest of what the jobs of an order say."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), head=head)
    assert look_at_orders(desk, [job]).orders[0].need_by == need_by
    other = approved(desk, tmp_path, ("KEEPER", 1), head="need_by = 2026-03-10\n")
    (order,) = place_orders(desk, [job, other]).orders
    assert order.need_by == (need_by or date(2026, 3, 10))


def test_an_order_that_comes_too_late_says_so(tmp_path: Path) -> None:
    """Approved for the 6th of a machine that is needed on the 5th: told when it is ordered."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), head="ready_by = 2026-03-04\n")
    assert (
        "Stonegarth Trade Parts: here 2026-03-04 at the latest, needed by 2026-03-03"
        in place_orders(desk, [job]).warnings
    )


def test_a_line_on_order_is_not_ordered_again(tmp_path: Path) -> None:
    """Nor after a new revision: what tear-down found beside it is ordered alone."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1))
    place_orders(desk, [job])
    for act in (place_orders, look_at_orders):
        with pytest.raises(Refused, match=r"is ordered: PO-2026-0001; .*'sourcing order-paper PO-2026-0001'"):
            act(desk, [job])
    change_job_from(desk, job, job_file(tmp_path, lines(("BELT", 1), ("IDLER", 1))))
    quote_again(desk, job)
    say_yes(desk, job)
    (order,) = place_orders(desk, [job]).orders
    assert [line.part for line in order.lines] == ["IDLER"]


def test_two_orders_at_once_from_two_desks(tmp_path: Path) -> None:
    """Two clerks press at the same moment: one order, one refusal, never two."""
    job = approved(orders_shop(tmp_path), tmp_path, ("BELT", 1))
    desks = [desk_at(tmp_path, MONDAY, who) for who in ("Oona Brandeth", "Piet Halloway-Rusk")]
    start = threading.Barrier(2)
    done: list[OrdersPlaced | str] = []

    def order(desk: Desk) -> None:
        start.wait()
        try:
            done.append(place_orders(desk, [job]))
        except Refused as refusal:
            done.append(refusal.problems[0].code)

    threads = [threading.Thread(target=order, args=(desk,)) for desk in desks]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert sorted(isinstance(one, OrdersPlaced) for one in done) == [False, True] and "all-on-order" in done
    assert len(all_orders(desks[0], None)) == 1


def test_parts_that_had_better_go_together_are_named(tmp_path: Path) -> None:
    """The keepers alone pay 14.95; with the other job's belt none is paid. After that nothing is to be saved."""
    desk = orders_shop(tmp_path)
    belt, keepers = approved(desk, tmp_path, ("BELT", 1)), approved(desk, tmp_path, ("KEEPER", 2))
    seen = look_at_orders(desk, [keepers])
    # 14.95 each alone; together 170.60 of goods pass free freight.
    together = (
        f"job {belt} also waits for parts of Stonegarth Trade Parts: ordered together 29.90 USD is saved; "
        "orders can't be joined once they are sent"
    )
    assert together in seen.warnings
    assert together in place_orders(desk, [keepers]).warnings
    assert not [words for words in place_orders(desk, [belt]).warnings if "together" in words]


def test_a_refused_order_names_the_job_that_would_help(tmp_path: Path) -> None:
    """A minimum of 30.00: two keepers are too few, with the idler they are enough; nothing is kept of the attempt."""
    desk = orders_shop(tmp_path)
    terms = SUPPLIERS.replace("cut_off = 14:00:00", "cut_off = 14:00:00\nminimum_order = 30.00", 1)
    (tmp_path / "suppliers.toml").write_text(terms)
    jobs = [approved(desk, tmp_path, ("KEEPER", 1)), approved(desk, tmp_path, ("IDLER", 1))]
    set_up(desk, tmp_path)
    with pytest.raises(Refused) as caught:
        place_orders(desk, jobs[:1])
    assert refusal(caught) == "supplier-refuses"
    assert f"job {jobs[1]} also waits for parts of Stonegarth Trade Parts: ordered together" in str(caught.value)
    assert "takes no order below 30" in look_at_orders(desk, jobs[:1]).warnings[0]
    assert all_orders(desk, None) == ()
    assert len(place_orders(desk, jobs).orders) == 1


def test_a_line_whose_price_rose_is_held_and_the_rest_ordered(tmp_path: Path) -> None:
    """The belt is 10 % dearer on a newer sheet; the keepers are ordered, the belt waits for the customer."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 1))
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", [BELT.replace("139.00", "152.90"), KEEPER, IDLER])
    placed = place_orders(desk, [job])
    assert [line.label for line in placed.orders[0].lines] == ["2"]
    assert "line 1 of job" in placed.held[0] and "approved was 194.60 USD" in placed.held[0]


def test_a_later_day_than_approved_is_held(tmp_path: Path) -> None:
    """A yes covers that number at that price by that date: a week later it is a new question."""
    job = approved(orders_shop(tmp_path), tmp_path, ("BELT", 1))
    with pytest.raises(Refused, match="approved was by 2026-03-04"):
        place_orders(desk_at(tmp_path, datetime(2026, 3, 9, 9, 0)), [job])


def test_the_list_shows_what_is_open(tmp_path: Path) -> None:
    """Every order, those of a job, one by its number."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("KEEPER", 2))
    (order,) = place_orders(desk, [job]).orders
    assert [one.left for one in list_orders(desk, None)] == [{1: 2}] == [one.left for one in list_orders(desk, job)]
    assert listed_order(desk, order.number).now.order == order
    with pytest.raises(Refused, match="PO-2026-0001"):
        listed_order(desk, "PO-2026-0009")


def test_an_order_kept_by_the_version_before_still_opens(tmp_path: Path) -> None:
    """Its JSON lacks all that was added since."""
    desk = orders_shop(tmp_path)
    place_orders(desk, [approved(desk, tmp_path, ("KEEPER", 2))])
    new = ("reasons", "rate", "shop_telephone", "shop_email", "supplier_note", "locale", "paper_size")
    with desk.store.writing() as connection:
        body = json.loads(connection.execute(text("SELECT body FROM purchase_orders")).scalar_one())
        for name in new:
            del body[name]
        for line in body["lines"]:
            for name in ("core_charge", "weight_kg", "reasons", "category"):
                del line[name]
        connection.execute(text("UPDATE purchase_orders SET body = :body"), {"body": json.dumps(body)})
    (listed,) = list_orders(desk, None)
    assert listed.now.order.rate is None and listed.left == {1: 2}
    assert listed.now.order.lines[0].reasons == ()
