"""Find: a part under any number with its offers; for the bench without anything the shop pays; numbers nobody knows."""

import re
from datetime import datetime
from decimal import Decimal

import pytest
from flask import Flask
from sqlalchemy import func, select

from sourcing.actions import find
from sourcing.actions.compare import ToCompare
from sourcing.actions.desk import Desk
from sourcing.actions.find import find_part
from sourcing.storage.match_tables import PART_LOOKUPS
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, Browser

BELT = "/find?number=NW-40388"

MONEY = re.compile(r"[$€]|\b(USD|EUR|GBP)\b|\d+\.\d\d\b(?! (in|mm)\b|-\d)")
"""An amount: a currency, or a figure with two decimals that is no measure."""


def desk_of(app: Flask, at: datetime = NOW) -> Desk:
    """The desk behind the counter."""
    return Desk(store=app.config[STORE], at=at, who=CLERK)


def lookups(app: Flask) -> int:
    """How often parts were looked up."""
    with app.config[STORE].reading() as connection:
        return int(connection.execute(select(func.count()).select_from(PART_LOOKUPS)).scalar_one())


def test_offers_stand_in_order_with_cost_day_and_reason(clerk: Browser) -> None:
    """Cheapest at the door first, though another asks less each; the reason is said in words."""
    page = clerk.get(BELT)
    places = [page.index(f'id="place-{at}"') for at in range(1, 6)]
    assert places == sorted(places) and page.index("Larkmoor Wholesale") < page.index("Kesselried Antriebsteile")
    assert "$116.00" in page and "$138.97" in page and "€89.40 each" in page
    assert "$7.50 dearer each than Kesselried Antriebsteile, $22.97 cheaper at the door" in page
    assert "BELT-AUGER is the same part as Norrowby NW-40388 (maker: Norrowby parts list NW-826)" in page


def test_the_named_parts_of_a_cost_sum_to_what_stands_at_the_door(app: Flask, clerk: Browser) -> None:
    """To the cent, as the page shows them."""
    page = clerk.get(BELT)
    tables = re.findall(r"<caption>Cost at the door</caption>(.*?)</table>", page, re.DOTALL)
    assert len(tables) == 5
    for table in tables:
        *parts, total = [Decimal(one.replace(",", "")) for one in re.findall(r'"figure">-?\$([\d,.]+)<', table)]
        assert sum(parts) == total


def test_the_size_is_checked_in_numbers(clerk: Browser) -> None:
    """B36 by RMA IP-20 as the program holds it: 0.656 in wide, 36 in inside; what a 4L lacks is said."""
    page = clerk.get(BELT)
    assert "Same size within 0.6 in (asked B36: B section, 0.656 in wide, 36 in inside" in page
    held = page[page.index("Held back") :]
    assert "NW-40338" in held and "0.156 in in width: too narrow" in held


def test_among_very_many_offers_look_alikes_are_looked_for_when_asked(
    clerk: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """That they were not is said, and a link looks for them."""
    monkeypatch.setattr(find, "FEW", 100)
    page = clerk.get(BELT)
    assert "NW-40338" not in page and "were not looked for" in page
    link = re.search(r'href="(/find\?[^"]*alike=yes[^"]*)"', page)
    assert link
    asked = clerk.get(link.group(1).replace("&amp;", "&"))
    assert "NW-40338" in asked and "were not looked for" not in asked


def test_a_day_and_the_price_of_waiting_count(clerk: Browser) -> None:
    """What is late is called so; a day's price moves the first place."""
    page = clerk.get(f"{BELT}&need_by=2026-01-20&a_day=5.20")
    assert ">too late<" in page
    first = page[page.index('id="place-1"') :][:300]
    assert "Tavishollow Engine Supply" in first
    late = clerk.get(f"{BELT}&need_by=2026-01-20&in_time=yes")
    ranked = late[late.index("<h2>Offers</h2>") : late.index("How long the first place holds")]
    assert "Tavishollow Engine Supply" in ranked and "Larkmoor Wholesale" not in ranked


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        ("a_day=cheap", "is not an amount of money"),
        ("in_time=yes", "day"),
        ("quantity=0", "at least 1"),
        ("need_by=tomorrow", "tomorrow"),
    ],
)
def test_a_wish_that_can_not_be_is_told_and_stays_typed(clerk: Browser, wish: str, said: str) -> None:
    """The form holds what was typed."""
    answer = clerk.client.get(f"{BELT}&{wish}")
    assert answer.status_code == 409 and said in answer.text
    assert 'value="NW-40388"' in answer.text and (wish.split("=")[1] in answer.text)


def test_a_line_of_a_job_brings_its_quantity_and_what_it_asks(clerk: Browser, technician: Browser) -> None:
    """Two shear pins; for the bench too."""
    address = "/find?number=PIN-SHEAR&job=2026-0002&line=2"
    assert "For 2 pieces." in clerk.get(address)
    assert "For 2 pieces, the soonest first." in technician.get(address)
    assert clerk.status("/find?number=PIN-SHEAR&job=2026-0002&line=1") == 409


def test_open_jobs_that_need_the_part_are_named(clerk: Browser) -> None:
    """With a link to each, by the line that asks."""
    page = clerk.get(BELT)
    assert 'href="/jobs/2026-0004">Job 2026-0004, line 1</a>' in page
    assert "Open jobs that need it" not in clerk.get("/find?number=BELT-DECK")


def every_part(app: Flask) -> list[str]:
    """The codes of all parts."""
    from sourcing.storage.equivalence import our_parts

    with app.config[STORE].reading() as connection:
        return [part.code for part in our_parts(connection)]


def test_the_bench_sees_no_amount_of_any_part(app: Flask, clerk: Browser, technician: Browser) -> None:
    """Neither on the page nor in its source; warnings and notes that name prices are not there."""
    seen = 0
    for code in every_part(app):
        asked = f"/find?number={code}&quantity=3&need_by=2026-01-20&a_day=5"
        answer = technician.client.get(asked)
        found = MONEY.search(re.sub(r"<(script|link)[^>]*>", "", answer.text))
        assert found is None, f"{code}: {answer.text[max(0, found.start() - 80) : found.end() + 20]}"
        seen += bool(MONEY.search(clerk.client.get(asked).text))
    assert seen > 3


def test_the_bench_sees_who_has_it_by_day_and_never_by_cost(technician: Browser) -> None:
    """The soonest first; of the same day by name. What is no longer sold is not offered."""
    page = technician.get(BELT)
    names = re.findall(r"<h3>(\w+) [^<]*<span class=\"number\">", page)
    assert names == ["Tavishollow", "Pellbrook", "Stonegarth", "Kesselried", "Larkmoor", "Larkmoor", "Stonegarth"]
    not_sure = page[page.index("Not for certain") :]
    assert "DM-77120" in not_sure and "no longer available" in not_sure.lower()


@pytest.mark.parametrize(
    "address",
    [
        "/find/drawing.svg?number=NW-40388",
        "/find/offers.xlsx?number=NW-40388",
        "/find/offers.csv?number=NW-40388",
        "/find/offers.txt?number=NW-40388",
        "/find/offer?supplier=pellbrook&number=PB-4038",
        "/find/offer.csv?supplier=pellbrook&number=PB-4038",
    ],
)
def test_drawings_and_files_with_costs_are_closed_to_the_bench(
    clerk: Browser, technician: Browser, address: str
) -> None:
    """And open to who sees costs, as a picture or a file of our own naming."""
    assert technician.status(address) == 403
    answer = clerk.client.get(address)
    assert answer.status_code == 200 and len(answer.data) > 200
    if "/offers." in address:
        assert answer.headers["Content-Disposition"].startswith('attachment; filename="offers.')
    if address.startswith("/find/drawing"):
        assert answer.mimetype == "image/svg+xml" and "sandbox" in answer.headers["Content-Security-Policy"]


def test_an_unknown_kind_of_file_is_refused(clerk: Browser) -> None:
    """No fault of the program."""
    assert clerk.status("/find/offers.exe?number=NW-40388") == 409


def test_a_look_up_counts_once_though_drawing_and_file_work_it_out_again(app: Flask, clerk: Browser) -> None:
    """What waits to be judged is ordered by look-ups."""
    before = lookups(app)
    clerk.get(BELT)
    clerk.client.get("/find/drawing.svg?number=NW-40388")
    clerk.client.get("/find/offers.csv?number=NW-40388")
    assert lookups(app) == before + 1


def test_the_drawing_is_told_in_words(clerk: Browser) -> None:
    """For who does not see it."""
    assert 'alt="5 offers by cost and last day. The front: Larkmoor Wholesale, 116.00 USD at the door' in clerk.get(
        BELT
    )


def test_a_number_nobody_knows_leads_on(clerk: Browser, technician: Browser) -> None:
    """Near numbers with what differs, and rows that bear it read otherwise: never taken instead."""
    for browser in (clerk, technician):
        answer = browser.client.get("/find?number=NW-4O388")
        assert answer.status_code == 409 and 'id="place-1"' not in answer.text
        assert 'href="/find?number=NW-40388">NW-40388</a> O where 0 stands, 4th character' in answer.text
        assert "Stonegarth Trade Parts" in answer.text and not (browser is technician and MONEY.search(answer.text))


def test_a_number_that_must_not_serve_is_told_with_the_reason(clerk: Browser) -> None:
    """The bolt that must never take a shear pin's place finds no shear pin."""
    answer = clerk.client.get("/find?number=NW-18478")
    assert answer.status_code == 409 and "must not serve" in answer.text and 'id="place-1"' not in answer.text


def test_a_suppliers_own_number_finds_the_part(clerk: Browser) -> None:
    """PB-4038 stands in no statement; the row beside it bears a number of the belt."""
    page = clerk.get("/find?number=pb 4038")
    assert "No statement names pb 4038" in page and 'id="place-1"' in page


def test_hostile_text_is_only_text(clerk: Browser) -> None:
    """Typed into the address."""
    answer = clerk.client.get("/find", query_string={"number": '"><script>alert(1)</script>', "job": '"x'})
    assert answer.status_code == 409 and "<script>alert" not in answer.text


def test_nothing_asked_is_a_field_to_scan_into(technician: Browser) -> None:
    """It has the focus; the first Enter sends it."""
    page = technician.get("/find")
    assert re.search(r'<input id="number"[^>]* autofocus>', page)


def test_one_offer_in_any_quantity(clerk: Browser) -> None:
    """From 150.00 of goods on Pellbrook's freight is free, so two cost no freight."""
    two = clerk.get("/find/offer?supplier=pellbrook&number=PB-4038&quantity=2")
    assert "$238.00" in two and "free from $150.00 of goods" in two
    assert "$131.50" in clerk.get("/find/offer?supplier=pellbrook&number=PB-4038")
    answer = clerk.client.get("/find/offer?supplier=pellbrook&number=PB-4O38")
    assert answer.status_code == 409 and "PB4038" in answer.text


def test_a_belt_from_two_pulleys_is_worked_out_and_called_a_clue(technician: Browser) -> None:
    """L = 2C + pi(D + d)/2 + (D - d)^2/(4C), Machinery's Handbook, from memory: 24 + 19.635 + 0.630 = 44.27."""
    page = technician.get("/find/belt?driver=3-1/2&driven=9&centres=12&unit=in&kind=outside")
    assert "44.27 in" in page and "is a clue" in page and "spark-plug wire off" in page
    both = technician.client.get("/find/belt?driver=3-1/2&driven=9&centres=12&length=44")
    assert both.status_code == 409 and 'value="3-1/2"' in both.text
    assert technician.status("/find/belt?driver=3&driven=9&centres=1") == 409
    assert technician.status("/find/belt") == 200


def test_the_same_part_is_found_as_by_the_command(app: Flask) -> None:
    """The page stands on the comparison the command prints."""
    from sourcing.actions.compare import compare

    found = find_part(desk_of(app), ToCompare(number="NW-40388"))
    assert found.comparison == compare(desk_of(app), "NW-40388", None)
    assert len(found.sizes) == len(found.comparison.ranked)


def test_the_bench_is_sent_to_no_page_it_does_not_have(technician: Browser, clerk: Browser) -> None:
    """A part nobody knows: the clerk may state it or add it, the technician says it in words or asks the clerk."""
    fields = {"number": "recoil spring"}
    his, hers = (one.client.get("/find", query_string=fields).text for one in (technician, clerk))
    assert "Add a statement" in hers and "Add a part of ours" in hers
    assert "ask the clerk which part it is" in his and "Add a statement" not in his
