"""Landed cost against the last day as a drawing: what it shows, says and leaves out; no words on one another."""

import re
from collections.abc import Iterator
from datetime import timedelta
from decimal import Decimal
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from sourcing.basics.choice import Comparison, RankWishes
from sourcing.basics.landed_cost import Missing
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.choosing.ranking import rank
from sourcing.documents.scatter import BOTTOM, EDGE, LEFT, TOP, scatter_svg
from sourcing.documents.scatter_scales import costs_for, days_for
from tests.builders import usd
from tests.choosing.priced_values import ASKED, priced
from tests.documents.values import HOSTILE

SVG = "{http://www.w3.org/2000/svg}"
NAMES = ("Larkmoor Wholesale", "Pellbrook Power Parts", "Kesselried Antriebsteile", "Tavishollow Engine Supply")


def comparison(some: list[tuple[int, int | None]], wishes: RankWishes = RankWishes()) -> Comparison:  # noqa: B008
    """Offers from (cents, days), the first ones without words for what is missing."""
    offers = [
        changed(
            priced(f"s{at:05}", str(Decimal(cents) / 100), days, number=f"N{at}"),
            supplier_name=NAMES[at % len(NAMES)],
        )
        for at, (cents, days) in enumerate(some)
    ]
    ranking = rank(offers, wishes, ASKED)
    return Comparison(
        asked="NW-40388", our_part="BELT-AUGER", name="Auger drive belt", quantity=2, need_by=wishes.need_by,
        wishes=wishes, ranked=ranking.ranked, open_offers=ranking.open_offers,
    )  # fmt: skip


def scattered(count: int, seed: int) -> list[tuple[int, int | None]]:
    """Costs and days spread by a fixed rule; every ninth without a day."""
    return [
        (9000 + (at * 7919 + seed * 104729) % 6000, None if at % 9 == 8 else 1 + (at * 31 + seed * 17) % 15)
        for at in range(count)
    ]


def words(svg: str, look: str) -> list[str]:
    """The texts of that class."""
    return [one.text or "" for one in elements(svg, "text") if look in (one.get("class") or "").split()]


def elements(svg: str, kind: str) -> Iterator[ElementTree.Element]:
    """Every element of a kind; the parse itself says whether the file is well formed."""
    yield from ElementTree.fromstring(svg).iter(f"{SVG}{kind}")


def boxes(svg: str) -> list[tuple[int, int, int, int]]:
    """The words at the points as (left, top, right, bottom): letters of 12 px are 6.5 px wide, bold ones 7.5."""
    found = []
    for one in elements(svg, "text"):
        looks = (one.get("class") or "").split()
        if "label" in looks:
            wide = len(one.text or "") * (15 if "front" in looks else 13) // 2
            x, y = int(one.get("x", "")), int(one.get("y", ""))
            found.append((x, y - 9, x + wide, y + 2))
    return found


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("count", [1, 5, 10, 15])
def test_no_words_lie_on_others_nor_on_points_and_all_have_a_place(count: int, seed: int) -> None:
    svg = scatter_svg(comparison(scattered(count, seed)))
    labels = boxes(svg)
    assert len(labels) == count
    for at, one in enumerate(labels):
        assert one[0] >= LEFT and one[2] <= EDGE and one[1] >= TOP and one[3] <= BOTTOM
        for other in labels[at + 1 :]:
            assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
        for mark in elements(svg, "circle"):
            x, y = int(mark.get("cx", "")), int(mark.get("cy", ""))
            assert not (one[0] < x + 5 and x - 5 < one[2] and one[1] < y + 5 and y - 5 < one[3])


def test_points_stand_where_cost_and_day_say() -> None:
    """Sooner is more to the left, cheaper farther down; the same day and the same cost are the same pixel."""
    svg = scatter_svg(comparison([(10000, 2), (12000, 2), (12000, 9), (11000, 5)]))
    at = {
        label.split()[0]: mark
        for label, mark in zip(_places(svg), _marks(svg), strict=True)
    }  # fmt: skip
    assert at["1"][0] == at["3"][0] < at["2"][0] < at["4"][0]
    assert at["1"][1] > at["2"][1] > at["3"][1] == at["4"][1]


def _marks(svg: str) -> list[tuple[int, int]]:
    return [(int(one.get("cx", "")), int(one.get("cy", ""))) for one in elements(svg, "circle")]


def _places(svg: str) -> list[str]:
    """Labels in the order of places, as the marks are."""
    return sorted(words(svg, "label"), key=lambda text: int(text.split()[0]))


def test_the_front_is_filled_and_drawn_as_steps() -> None:
    """From the soonest along its cost to the next day, down to that cost, and on to the edge."""
    svg = scatter_svg(comparison([(10000, 9), (12000, 2), (12500, 5)]))
    (line,) = (one.get("d", "") for one in elements(svg, "path") if one.get("class") == "line")
    corners = [tuple(map(int, corner.split())) for corner in re.findall(r"\d+ \d+", line)]
    (cheap, soon), others = _marks(svg)[:2], _marks(svg)[2:]
    assert corners == [soon, (cheap[0], soon[1]), cheap, (EDGE, cheap[1])]
    looks = [one.get("class", "").split() for one in elements(svg, "circle")]
    assert ["front" in look for look in looks] == [True, True, False] and len(others) == 1


def test_unknown_days_have_a_band_of_their_own() -> None:
    svg = scatter_svg(comparison([(10000, 3), (9000, None)]))
    (band,) = (int(one.get("x", "")) for one in elements(svg, "text") if one.text == "day not known")
    days = [int(one.get("x", "")) for one in elements(svg, "text") if (one.text or "").startswith("2026-")]
    assert max(days) < _marks(svg)[0][0] < EDGE and band > max(days)
    assert "day not known" not in scatter_svg(comparison([(10000, 3)]))
    alone = scatter_svg(comparison([(10000, None)]))
    assert "day not known" in alone and 'class="line"' not in alone


def test_it_says_what_a_screen_reader_needs_and_what_the_marks_mean() -> None:
    wishes = RankWishes(need_by=ASKED + timedelta(days=4), value_per_day=Decimal("2.50"))
    svg = scatter_svg(comparison([(10000, 9), (12000, 2), (12500, 5)], wishes))
    root = ElementTree.fromstring(svg)
    assert root.get("role") == "img" and root.get("aria-labelledby") == "title what"
    told = next(elements(svg, "desc")).text or ""
    assert "3 offers by cost and last day" in told and "100.00 USD at the door, here by 2026-01-22" in told
    notes = " ".join(words(svg, "note"))
    assert "needed by 2026-01-17" in notes and "at the door, USD" in notes
    assert "a day of waiting at 2.50 USD; the drawing does not" in notes
    assert any(one.get("class") == "by" for one in elements(svg, "path"))


def test_of_ten_thousand_few_are_drawn_and_the_rest_is_told() -> None:
    found = comparison([(9000 + at * 7 % 6007, 1 + at % 40) for at in range(10_000)])
    svg = scatter_svg(found)
    assert len(list(elements(svg, "circle"))) == 60 and len(svg) < 40_000
    notes = " ".join(words(svg, "note"))
    assert "60 of 10,000 offers are drawn, the front and the first places; 9,940 are left out." in notes
    front = sum(one.on_front for one in found.ranked)
    assert sum("front" in one.get("class", "").split() for one in elements(svg, "circle")) == front <= 60


def test_what_can_not_be_ranked_is_drawn_as_a_range_or_told() -> None:
    found = comparison([(10000, 3), (12000, 5)])
    ends = [Missing(what="freight is not known", least=usd("1.00"), most=usd("9.00")), Missing(what="freight unknown")]
    some = [priced(f"t{at}", "105.00", days=4, missing=(one,)) for at, one in enumerate(ends)]
    open_offers = rank([*(one.priced for one in found.ranked), *some], RankWishes(), ASKED).open_offers
    svg = scatter_svg(changed(found, open_offers=open_offers))
    assert sum(one.get("class") == "range" for one in elements(svg, "path")) == 1
    assert "? T0" in words(svg, "label") and "? T1" not in words(svg, "label")
    assert "Not drawn, for too little is known or for room: 1 offer" in " ".join(words(svg, "note"))


def test_hostile_names_stay_words() -> None:
    found = comparison([(10000, 3)])
    hostile = changed(found.ranked[0], priced=changed(found.ranked[0].priced, supplier_name=HOSTILE[:40]))
    svg = scatter_svg(changed(found, name=HOSTILE, our_part=HOSTILE, ranked=(hostile,)))
    assert not list(elements(svg, "script")) and "\x1b" not in svg and "\u202e" not in svg


def test_nothing_to_draw_is_refused() -> None:
    with pytest.raises(Refused, match="nothing to draw"):
        scatter_svg(changed(comparison([(10000, 3)]), ranked=()))


def test_the_file_needs_nothing_from_outside() -> None:
    svg = scatter_svg(comparison(scattered(5, 0)))
    assert re.findall(r'https?://[^"\s]+', svg) == ["http://www.w3.org/2000/svg"]
    assert "@import" not in svg and "url(" not in svg and "@font-face" not in svg


@pytest.mark.parametrize(("least", "most"), [(0, 0), (1, 2), (9999, 10000), (12345, 678900), (0, 10**9)])
def test_marks_on_the_cost_axis_are_round_and_hold_all(least: int, most: int) -> None:
    """At most about eight, a step of 1, 2 or 5 and zeros, and no cost beyond the ends."""
    scale = costs_for(least, most, 470, 78, "USD")
    assert scale.least <= least and most <= scale.most and 2 <= len(scale.ticks()) <= 10
    assert str(scale.step).rstrip("0") in ("1", "2", "5")
    assert 78 <= scale.at(most) <= scale.at(least) <= 470


@pytest.mark.parametrize("days", [0, 1, 6, 14, 45, 200, 800, 4000])
def test_days_on_the_axis_are_few_and_apart(days: int) -> None:
    """Ten letters of 7 px each fit between two."""
    ticks = days_for(ASKED, ASKED + timedelta(days=days), 90, 690).ticks()
    assert 1 <= len(ticks) <= 9
    assert all(after.at - one.at >= 70 for one, after in pairwise(ticks))
