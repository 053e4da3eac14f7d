"""The three ways out, to the cent: what the customer pays, what parts earn at the cost of now, what she is asked."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.alarm import WayOut
from sourcing.basics.money import from_minor
from sourcing.margins.figures import margin
from sourcing.quoting.ways_out import Buying, margin_as_approved, waiting_or_switching, ways_out
from tests.builders import usd
from tests.quoting.alarm_values import COVERED, belt, buying, freight, quote, yes

NOW = buying("154.54", "14.95")
OTHER = buying(
    "140.95",
    "9.95",
    supplier="pellbrook",
    supplier_name="Pellbrook Power Parts",
    supplier_number="CV-B880K",
    number="Corrivane CV-B880K",
    each=usd("183.40"),
)
NOBODY = Buying(why_not="nobody else has it in good standing today")


def three(stays: Buying = NOW, other: Buying = OTHER) -> tuple[WayOut, WayOut, WayOut]:
    """Hold, ask, switch."""
    hold, ask, switch = ways_out(yes(), stays, other, margin)
    return hold, ask, switch


def test_holding_keeps_the_total_and_earns_less() -> None:
    """192.61 - 154.54 = 38.07: 19.77 % of the price, 24.63 % on the cost."""
    hold, _, _ = three()
    assert (hold.total, hold.extra, hold.asks, hold.goods) == (usd("357.29"), usd("0.00"), "", usd("139.59"))
    assert hold.margin is not None
    figures = (hold.margin.earned, hold.margin.margin_percent, hold.margin.markup_percent)
    assert figures == (usd("38.07"), Decimal("19.77"), Decimal("24.63"))


def test_asking_anew_is_the_difference_of_two_document_totals() -> None:
    """210.38 with freight, tax 14.73: 376.31, 19.02 more; 55.84 earned."""
    _, ask, _ = three()
    assert (ask.total, ask.extra, ask.extra_percent) == (usd("376.31"), usd("19.02"), Decimal("5.32"))
    assert ask.margin is not None and ask.margin.earned == usd("55.84")
    assert ask.asks == (
        "Belt would be 195.43 USD each instead of 177.66 USD, 376.31 USD in all with tax, 19.02 USD more (5.32 %). "
        "May we go on?"
    )


def test_switching_holds_the_price_and_asks_about_the_number() -> None:
    """192.61 - 140.95 = 51.66; at actual freight 46.66; never another number without a question."""
    _, _, switch = three()
    assert (switch.total, switch.extra) == (usd("357.29"), usd("0.00"))
    assert switch.margin is not None and switch.margin.earned == usd("51.66")
    assert switch.asks == "May we fit Corrivane CV-B880K instead of Norrowby NW-77120, same price?"
    assert switch.notes == (
        "if freight is billed at what it comes to, 9.95 USD instead of 14.95 USD, parts earn 46.66 USD: "
        "margin 24.87 %, markup 33.10 %",
    )


def test_what_was_to_be_earned_is_said_apart_and_is_no_ways_margin() -> None:
    """50.76 on the old cost is named as approved; no way out shows it."""
    assert margin_as_approved(yes(), margin).earned == usd("50.76")
    assert usd("50.76") not in {one.margin.earned for one in three() if one.margin}


def test_a_day_later_than_covered_is_asked_in_every_way() -> None:
    """And one in time is not."""
    late = date(2026, 3, 17)
    ways = ways_out(yes(), buying("154.54", "14.95", latest=late), buying("140.95", "9.95", latest=late), margin)
    question = "Belt would be here by 2026-03-17 instead of 2026-03-12: is that all right?"
    assert all(question in one.asks for one in ways)
    assert not any("instead of 2026" in one.asks for one in three())


def test_no_day_at_all_is_asked_too() -> None:
    """Not known is not in time."""
    hold, _, _ = three(buying("154.54", "14.95", latest=None))
    assert hold.asks == "No day is known for Belt any more: may we wait?"


def test_a_price_the_bands_do_not_raise_leaves_nothing_to_ask_for() -> None:
    """Capped at the list price, say."""
    _, ask, _ = three(buying("154.54", "14.95", each=usd("177.66")))
    assert ask.why_not.endswith("177.66 USD is approved: there is no more to ask for")


def test_what_is_gone_can_only_be_asked_for_or_switched() -> None:
    """The price asked is then that of the other offer, with its number."""
    hold, ask, switch = three(Buying(why_not="it can't be had there any more: no longer available"))
    assert hold.why_not and hold.total is None and hold.margin is None
    assert (ask.supplier, ask.unit_price) == ("pellbrook", usd("183.40"))
    assert "May we fit Corrivane CV-B880K instead of Norrowby NW-77120?" in ask.asks and "same price" not in ask.asks
    assert switch.why_not == ""


def test_where_nobody_has_it_every_way_says_why_it_is_closed() -> None:
    """No figure is shown for what can't be done."""
    for one in three(Buying(why_not="gone"), NOBODY):
        assert one.why_not and one.total is None and one.margin is None


def test_a_cost_that_is_not_known_shows_no_margin() -> None:
    """Never the old one, never nothing."""
    hold, ask, _ = three(buying("154.54", "14.95", missing=("freight of Stonegarth is not known",)))
    assert hold.margin is None and ask.margin is None
    assert hold.notes == ("no margin is shown: freight of Stonegarth is not known",)


def test_waiting_against_switching_in_one_sentence() -> None:
    """0.25 for 20 days."""
    wait = buying("169.75", "14.95", latest=date(2026, 4, 1))
    switch = buying("170.00", "9.95", latest=date(2026, 3, 12))
    hold, _, other = ways_out(yes(), wait, switch, margin)
    assert waiting_or_switching(hold, other) == (
        "Switching costs 0.25 USD more, and the parts are here 20 days sooner: 2026-03-12 instead of 2026-04-01."
    )
    assert waiting_or_switching(other, hold).startswith(
        "Switching costs 0.25 USD less, and the parts are here 20 days later"
    )
    closed = ways_out(yes(), wait, NOBODY, margin)
    assert waiting_or_switching(closed[0], closed[2]) == ""


@pytest.mark.parametrize("word", ["stonegarth", "pellbrook", "margin", "markup", "154.54", "139.59", "131.00"])
def test_no_question_to_the_customer_names_supplier_cost_or_margin(word: str) -> None:
    """What is read out to her is hers to hear."""
    assert not any(word in one.asks.casefold() for one in three())


@given(st.integers(1, 90_000), st.integers(1, 90_000), st.integers(0, 5_000), st.integers(1, 12))
def test_the_extra_is_always_what_the_papers_would_differ_by(old: int, new: int, fee: int, pieces: int) -> None:
    """For any prices: total less approved total is the extra, and the margin's price moves by the parts alone."""
    line = belt(str(from_minor(old, "USD").amount), pieces)
    made = quote(line, freight(str(from_minor(fee, "USD").amount)))
    stays = buying("100.00", "1.00", each=from_minor(new, "USD"))
    hold, ask, _ = ways_out(yes(made), stays, NOBODY, margin)
    assert hold.total == yes(made).approved_total and hold.extra == usd("0.00")
    if new <= old:
        assert ask.why_not
        return
    assert ask.total is not None and ask.extra is not None and ask.margin is not None and hold.margin is not None
    assert ask.total - ask.extra == hold.total
    assert ask.margin.price - hold.margin.price == (from_minor(new, "USD") - from_minor(old, "USD")) * pieces
    assert yes(made).covered == COVERED
