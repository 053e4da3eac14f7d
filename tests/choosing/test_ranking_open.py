"""Offers of which something is not known: where they would stand, never a place they may not have."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.choice import RankWishes
from sourcing.basics.landed_cost import Missing
from sourcing.basics.value import changed
from sourcing.choosing.open_offers import ordinal
from sourcing.choosing.ranking import rank
from tests.builders import usd
from tests.choosing.priced_values import ASKED, priced

NOTHING = RankWishes()
RANKED = [priced(f"s{at}", goods, number=f"N{at}") for at, goods in enumerate(("130.00", "140.00", "150.00"))]


def freight(least: str | None, most: str | None) -> tuple[Missing, ...]:
    """Freight that is not known, with its range."""
    ends = {"least": usd(least) if least else None, "most": usd(most) if most else None}
    return (Missing(what="freight of Larkmoor is not known", **ends),)


@pytest.mark.parametrize(
    ("missing", "words", "places"),
    [
        (
            freight("8.10", "25.10"),
            "between 136.00 and 153.00 USD at the door: would stand 2nd at best, 4th at worst", (2, 4),
        ),
        (freight("14.00", "15.00"), "between 141.90 and 142.90 USD at the door: would stand 3rd", (3, 3)),
        (freight(None, None), "at least 127.90 USD at the door", (None, None)),
        (freight("8.10", None), "at least 136.00 USD at the door", (None, None)),
        (freight("0.00", "500.00") + freight(None, None), "at least 127.90 USD at the door", (None, None)),
    ],
)  # fmt: skip
def test_a_range_says_where_it_would_stand(
    missing: tuple[Missing, ...], words: str, places: tuple[int | None, int | None]
) -> None:
    found = rank([*RANKED, priced("larkmoor", "127.90", missing=missing)], NOTHING, ASKED)
    assert len(found.ranked) == 3
    (one,) = found.open_offers
    assert one.reason.startswith(f"{words}; freight of Larkmoor is not known")
    assert (one.best_place, one.worst_place) == places


@pytest.mark.parametrize(
    ("missing", "may"),
    [
        (freight("1.00", "25.10"), True),
        (freight(None, None), True),
        (freight("2.10", None), True),
        (freight("2.11", None), False),
        (freight("8.10", "25.10"), False),
    ],
)
def test_the_first_place_claims_nothing_against_what_may_come_before_it(
    missing: tuple[Missing, ...], may: bool
) -> None:
    """The first costs 130.00, an offer of 127.90 lacks its freight; a level one may come first by its last day."""
    first = rank([*RANKED, priced("larkmoor", "127.90", missing=missing)], NOTHING, ASKED).ranked[0].reason
    assert first.startswith("cheapest at the door and by unit price")
    assert ("of those that can be ranked" in first, "arkmoor, not ranked, may come before it" in first) == (may, may)


@given(st.integers(0, 4000), st.integers(0, 4000), st.sampled_from((None, Decimal("0.75"))))
def test_the_places_are_those_it_has_once_its_cost_is_known(one: int, other: int, value: Decimal | None) -> None:
    """Ranked anew with the least and with the most as its freight."""
    least, most = (str(Decimal(cents) / 100) for cents in sorted((one, other)))
    wishes = RankWishes(value_per_day=value)
    asked = priced("larkmoor", "120.00", days=4, missing=freight(least, most))
    (found,) = rank([*RANKED, asked], wishes, ASKED).open_offers
    for end, place in ((least, found.best_place), (most, found.worst_place)):
        known = rank([*RANKED, priced("larkmoor", "120.00", days=4, freight=end)], wishes, ASKED).ranked
        assert next(at.place for at in known if at.priced.offer.supplier == "larkmoor") == place


def test_where_nothing_is_ranked_no_place_is_said() -> None:
    (one,) = rank([priced("larkmoor", "127.90", missing=freight("1.00", "2.00"))], NOTHING, ASKED).open_offers
    assert one.reason == "between 128.90 and 129.90 USD at the door; freight of Larkmoor is not known"


def test_a_wish_takes_an_open_offer_out_too_and_says_at_least() -> None:
    asked = priced("larkmoor", "127.90", missing=freight("1.00", "2.00"), stock=0)
    found = rank([asked], RankWishes(in_stock_only=True), ASKED)
    assert not found.open_offers
    assert found.set_aside[0].reason == (
        "not in stock for the quantity: 0 of 1; at least 127.90 USD at the door, here by 2026-01-16"
    )


def test_open_offers_stand_by_their_least_whatever_the_order_of_input() -> None:
    some = [
        priced("larkmoor", "127.90", missing=freight("9.00", None)),
        priced("pellbrook", "130.00", missing=freight("1.00", None)),
    ]
    for order in (some, some[::-1]):
        found = rank(order, NOTHING, ASKED).open_offers
        assert [one.priced.offer.supplier for one in found] == ["pellbrook", "larkmoor"]


def test_the_known_total_alone_is_never_a_place() -> None:
    """Missing without figures: neither zero nor the total is taken for the cost."""
    asked = priced("larkmoor", "1.00", missing=freight(None, None))
    assert rank([asked, *RANKED], NOTHING, ASKED).ranked[0].priced == RANKED[0]
    assert rank([changed(asked, warnings=("x",))], NOTHING, ASKED).ranked == ()


@pytest.mark.parametrize(
    ("place", "words"), [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (112, "112th"), (121, "121st")]
)
def test_places_in_words(place: int, words: str) -> None:
    assert ordinal(place) == words
