"""The demo's offers written into a basket cost, come and rank as they do from the shop's database."""

import json
import shutil
from collections.abc import Sequence
from datetime import date, datetime
from typing import Any

import pytest

from sourcing.actions.basket import compare_basket, plan_basket
from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk, ShopNow, open_desk, shop_now
from sourcing.actions.evaluate import catalogue
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.jobs import all_jobs, take_in_job
from sourcing.actions.plan import evaluate_need, job_needs, plan_offers
from sourcing.actions.setup import set_up
from sourcing.actions.sorted_offers import Evaluated
from sourcing.basics.choice import Comparison, Priced, RankWishes
from sourcing.basics.plan import PlanNeed, PlanWishes
from sourcing.basics.value import to_json, to_plain
from sourcing.documents.shipped_files import demo_folder
from sourcing.storage.jobs import job as stored_job
from tests.basket.baskets import read

AT = datetime(2026, 1, 13, 10, 15)
NEED_BY = date(2026, 1, 16)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """The demo's shop with its sheets imported."""
    folder = tmp_path_factory.mktemp("demo")
    shutil.copytree(demo_folder(), folder / "prices")
    desk = open_desk(str(folder / "sourcing.db"), AT, "Oona Brandeth")
    set_up(desk, folder / "prices")
    import_sheets(desk, [folder / "prices"], Said())
    return desk


def basket_of(shop: ShopNow, offers: Sequence[Priced], needs: Sequence[dict[str, Any]]) -> bytes:
    """The same terms, rates and settings, and the offers with their standing, as a file."""
    settings = shop.settings
    kept = {
        "time_zone": settings.time_zone, "calendar": settings.calendar, "mileage_rate": settings.mileage_rate,
        "rate_per_km": settings.rate_per_km, "clerk_cost": settings.clerk_cost,
    }  # fmt: skip
    return to_json(
        {
            "currency": settings.currency,
            "at": f"{AT:%Y-%m-%dT%H:%M}",
            "shop": kept,
            "suppliers": list(shop.terms.values()),
            "rates": shop.rates.rates,
            "offers": [{**to_plain(one.offer), "our_part": "BELT", "standing": one.standing} for one in offers],
            "needs": needs,
        }
    )


def _with_rows(shop: ShopNow, seen: dict[str, Evaluated], needs: Sequence[PlanNeed]) -> bytes:
    """Every offer of the needs' parts once, ranked or set aside, as a basket with these needs."""
    offers: list[dict[str, Any]] = []
    for part, some in sorted(seen.items()):
        priced = [(one.offer, one.standing) for one in (*some.priced, *some.unknown)]
        known = [offer for offer, _ in priced]
        rest = [(one.offer, "fitted") for one in some.set_aside if one.offer not in known and not one.rejected]
        offers += [{**to_plain(offer), "our_part": part, "standing": how} for offer, how in [*priced, *rest]]
    head = json.loads(basket_of(shop, (), ()))
    return to_json({**head, "offers": offers, "needs": [to_plain(need) for need in needs]})


def _seen(found: Comparison) -> list[tuple[object, ...]]:
    """What a ranking says of each offer, but for how it matched."""
    return [
        (
            one.place,
            one.priced.offer,
            one.priced.landed.lines,
            one.priced.arrival,
            one.on_front,
            one.in_time,
            one.reason,
        )
        for one in found.ranked
    ]


@pytest.mark.parametrize("quantity", [1, 2, 12, 50])
def test_a_comparison_is_the_same_from_a_file(demo: Desk, quantity: int) -> None:
    """Every cost line, day, place and reason."""
    wishes = RankWishes(need_by=NEED_BY)
    kept = compare(demo, "NW-40388", quantity, wishes)
    with demo.store.reading() as connection:
        shop = shop_now(connection, AT)
    offers = [one.priced for one in kept.ranked]
    need = {"label": "1", "our_part": "BELT", "quantity": quantity}
    told = compare_basket(read(basket_of(shop, offers, [need])), "1", None, wishes)
    assert len(kept.ranked) > 2
    assert _seen(told) == _seen(kept)
    assert json.loads(to_json(told.turning_points)) == json.loads(to_json(kept.turning_points))


def test_another_quantity_may_be_asked_of_a_need(demo: Desk) -> None:
    """`--quantity` goes before the file's."""
    kept = compare(demo, "NW-40388", 12, RankWishes())
    with demo.store.reading() as connection:
        shop = shop_now(connection, AT)
    need = {"label": "1", "our_part": "BELT", "quantity": 1}
    data = basket_of(shop, [one.priced for one in kept.ranked], [need])
    assert _seen(compare_basket(read(data), "1", 12, RankWishes())) == _seen(kept)


@pytest.mark.parametrize("need_by", [None, date(2026, 1, 16), date(2026, 1, 14)])
def test_a_plan_is_the_same_from_a_file(demo: Desk, need_by: date | None) -> None:
    """Orders, cost lines, days, other ways, what is not filled."""
    number = take_in_once(demo)
    with demo.store.reading() as connection:
        found = catalogue(connection, AT)
        needs = job_needs(stored_job(connection, number), found)
        seen = {need.our_part: evaluate_need(found, need) for need in needs}
        offers = {need.label: evaluate_need(found, need) for need in needs}
        kept = plan_offers(found, needs, offers, PlanWishes(need_by=need_by, front=True))
        shop = found.shop
    told = plan_basket(read(_with_rows(shop, seen, needs)), PlanWishes(need_by=need_by, front=True))
    assert len(needs) > 4
    assert told.orders == kept.orders
    assert (told.total, told.latest, told.proven) == (kept.total, kept.latest, kept.proven)
    assert told.alternatives == kept.alternatives
    assert told.front == kept.front
    assert told.unfilled == kept.unfilled


def take_in_once(desk: Desk) -> str:
    """The number of the demo's job."""
    known = all_jobs(desk)
    return known[0].number if known else take_in_job(desk, demo_folder() / "job.toml").number
