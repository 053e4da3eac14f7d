"""What is known now against what was approved: a sentence with both figures for each thing that is otherwise."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.alarm import Decision
from sourcing.basics.money import from_minor
from sourcing.basics.settings import Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.alarm import Known, differences
from sourcing.quoting.alarm_notes import THIRTY_DAYS, Beside, alarm_notes
from tests.builders import usd
from tests.quoting.alarm_values import BY, COVERED, belt, decided, quote

AS_APPROVED = Known(unit_cost=usd("126.90"), each=usd("177.66"), number="Norrowby NW-77120", latest=BY)


def told(decision: Decision | None = None, **fields: Any) -> list[tuple[str, str]]:
    """What differs where these things are known now, as kind and sentence."""
    found = differences(quote(), belt(), COVERED, changed(AS_APPROVED, **fields), decision)
    return [(one.what, one.words) for one in found]


def test_nothing_is_told_where_all_is_as_approved_or_better() -> None:
    """Cheaper and sooner is covered by the yes."""
    assert told() == []
    assert told(unit_cost=usd("120.00"), latest=date(2026, 3, 10)) == []


def test_a_risen_price_is_told_with_both_figures_and_per_cent() -> None:
    """126.90 x 1.10 = 139.59."""
    words = "approved on 126.90, now 139.59 each: 12.69 more, 10.00 %"
    assert told(unit_cost=usd("139.59"), each=usd("195.43")) == [("price", words)]


def test_a_risen_cost_is_told_even_where_the_list_price_caps_the_price() -> None:
    """The customer's price stays, and the shop would carry it: the owner must know."""
    (one,) = told(unit_cost=usd("139.59"), each=usd("177.66"))
    assert one[0] == "price"


def test_the_shops_own_bands_are_named_where_the_part_costs_no_more() -> None:
    """A price raised by new settings is no supplier's doing."""
    (one,) = told(each=usd("180.00"))
    assert one == (
        "price",
        "approved at 177.66, now 180.00 each: 2.34 more, 1.32 %, by the shop's own bands, for the part costs no more",
    )


def test_once_it_is_ordered_for_no_more_the_shops_own_bands_are_no_question() -> None:
    """The customer's yes binds the price, and what was bought is bought; a dearer part is told as ever."""
    assert told(ordered=True, each=usd("180.00")) == []
    assert told(ordered=True, unit_cost=usd("120.00"), each=usd("180.00")) == []
    assert [kind for kind, _ in told(ordered=True, unit_cost=usd("126.91"), each=usd("180.00"))] == ["price"]


def test_another_number_is_told_and_the_same_one_written_otherwise_is_not() -> None:
    """Case, spaces and punctuation are no difference; the supplier's own number is the same part of his."""
    assert told(number="nw 77120") == [] and told(number="NORROWBY NW77120") == []
    assert told(number="NW-77121") == [("number", "approved was Norrowby NW-77120, now it is NW-77121")]


def test_a_later_day_and_no_day_are_told() -> None:
    """Both are questions to the customer."""
    assert told(latest=date(2026, 3, 18)) == [("date", "approved was by 2026-03-12, now 2026-03-18: 6 days later")]
    assert told(latest=None) == [("date", "approved was by 2026-03-12, now no day is known")]
    assert told(latest=None, came=True) == []


def test_what_is_gone_is_told_alone() -> None:
    """There is no price or day of what can't be had."""
    (one,) = told(gone="no longer available; the supplier names NW-77121 instead", unit_cost=None, latest=None)
    assert one[0] == "gone" and one[1].endswith("the supplier names NW-77121 instead")


def test_a_cost_that_is_not_known_is_no_silence() -> None:
    """Unknown is told, never taken as unchanged."""
    (one,) = told(unit_cost=None, missing="freight is not known")
    assert one == ("price", "approved at 177.66 each, what it costs now is not known: freight is not known")


def test_a_held_price_is_quiet_until_it_is_dearer_again() -> None:
    """And a decision about the price says nothing of the day or the number."""
    held = decided()
    assert told(held, unit_cost=usd("139.59"), each=usd("195.43")) == []
    assert [kind for kind, _ in told(held, unit_cost=usd("139.60"), each=usd("195.44"))] == ["price"]
    assert [kind for kind, _ in told(held, latest=date(2026, 3, 18), number="NW-9")] == ["number", "date"]


def test_a_yes_to_another_number_covers_that_number_only() -> None:
    """Without a name of who said yes it covers nothing."""
    agreed = decided(number="CV-B880K", agreed_by="Maud Tilbrook")
    assert told(agreed, number="CV-B880K") == []
    assert told(agreed, number="CV-B881K") and told(decided(number="CV-B880K"), number="CV-B880K")


@pytest.mark.parametrize(("cost", "quiet"), [("133.23", True), ("133.24", False)])
def test_a_rise_within_the_tolerance_is_quiet(cost: str, quiet: bool) -> None:
    """5 % of 126.90 is 6.345: 133.24 is within it, 133.25 is half a cent above."""
    made = quote(tolerance=Tolerance(percent=Decimal(5)))
    cents = usd(cost) + usd("0.01")
    known = changed(AS_APPROVED, unit_cost=cents)
    assert (differences(made, belt(), COVERED, known) == ()) == quiet


@pytest.mark.parametrize(
    ("each", "words"),
    [
        ("187.66", []),
        ("187.67", ["the line was approved at 321.66 USD before tax, now it would be 331.67 USD"]),
    ],
)
def test_rises_over_revisions_are_reckoned_together_from_the_amount_approved(each: str, words: list[str]) -> None:
    """Approved at 321.66, carried at 326.66 within 10.00; the cost rose within it too, yet together it is too much."""
    line = belt("182.66")
    made = quote(line, tolerance=Tolerance(amount=Decimal("10.00")))
    known = changed(AS_APPROVED, unit_cost=usd("130.00"), each=usd(each))
    found = differences(made, line, COVERED, known, None, usd("321.66"))
    assert [one.words for one in found] == words


@given(st.integers(1, 50_000), st.integers(1, 50_000), st.integers(1, 20))
def test_every_cent_of_a_rise_is_told_and_no_fall_is(before: int, now: int, pieces: int) -> None:
    """With no tolerance, for any cost in cents and any number of pieces."""
    behind = belt().behind
    assert behind is not None
    line = belt(quantity=pieces, behind=changed(behind, unit_cost=from_minor(before, "USD")))
    known = changed(AS_APPROVED, unit_cost=from_minor(now, "USD"))
    assert bool(differences(quote(line), line, COVERED, known)) == (now > before)


def notes(kinds: dict[str, Any], deposit: str = "0.00", **fields: Any) -> tuple[str, ...]:
    """The notes beside an alarm that differs so."""
    made = quote(**fields)
    differs = differences(made, belt(), COVERED, changed(AS_APPROVED, **kinds))
    days = (date(2026, 3, 4), date(2026, 3, 18), date(2026, 4, 1))
    beside = Beside(approved_total=usd("357.29"), today=date(2026, 3, 12), deposit=usd(deposit), days=days)
    return alarm_notes(made, differs, beside)


def test_inside_its_validity_the_printed_price_binds_the_shop() -> None:
    """After it the question is not the program's."""
    inside, outside = (notes({"unit_cost": usd("139.59")}, valid_to=date(2026, 3, day))[0] for day in (16, 11))
    assert inside == (
        "the quote is valid to 2026-03-16: as printed it binds the shop to 357.29 USD unless the customer agrees "
        "otherwise"
    )
    assert "was valid to 2026-03-11" in outside and "rules of the place" in outside


def test_a_deposit_goes_back_in_full_and_the_rule_is_asked_and_not_decided() -> None:
    """The remark on goods paid ahead stands only where the day slipped, money is held, and in its own country."""
    late = {"latest": date(2026, 4, 1)}
    found = notes(late, "113.10")
    assert "113.10 USD is held as deposit: if Maud Tilbrook cancels, all of it goes back, special order or not" in found
    assert THIRTY_DAYS in found and "ask, do not decide" in THIRTY_DAYS
    assert THIRTY_DAYS not in notes(late) and THIRTY_DAYS not in notes({"unit_cost": usd("139.59")}, "113.10")
    assert THIRTY_DAYS not in notes(late, "113.10", locale="en_CA")
    assert "the day has moved twice already: 2026-03-04, then 2026-03-18, then 2026-04-01" in found
