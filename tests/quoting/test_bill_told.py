"""The bill is never above what its lines came to when the customer answered them, whatever else she was told since."""

from decimal import Decimal

from sourcing.basics.bill import LeftOut
from sourcing.basics.settings import ChargeRules
from sourcing.basics.value import changed
from sourcing.quoting.bill import Billed
from tests.builders import usd
from tests.quoting.bill_values import RULES, answer, made, quote
from tests.quoting.test_bill import bill, codes

WITHOUT_B = LeftOut(labels=("B",), words="the old one is sound")


def dearer_supplies(answered_anew: tuple[str, ...] = ()) -> Billed:
    """Approved as revision 2 at 413.19; supplies at 6 % since revision 3. B is left out of the bill.

    Without B, by hand: 134.60 parts, 24.90 freight, 172.80 labour, 8.64 supplies (10.37 at 6 %), 7 % on 159.50 is
    11.165, so 11.17."""
    assert RULES.supplies is not None
    rules: ChargeRules = changed(RULES, supplies=changed(RULES.supplies, percent_of_labour=Decimal(6)))
    newest, before = quote(revision=3, rules=rules), quote()
    holding = {
        one.label: answer(
            one,
            "declined" if one.label == "C" else "approved",
            revision=3 if one.label in answered_anew else 2,
        )
        for one in newest.lines
    }
    return made(newest, holding=holding, answered={2: before, 3: newest}, told=usd("413.19"), left_out=WITHOUT_B)


def test_a_line_left_out_makes_no_room_for_a_fee_that_rose() -> None:
    """413.19 was told for more lines than are billed: without B they came to 352.11, and no cent more is billed."""
    assert codes(dearer_supplies()) == [
        ("bill-above-told", "the bill of job 2026-0001 would come to 353.84 USD; the customer was told 352.11 USD")
    ]


def test_a_yes_to_the_newest_revision_is_a_yes_to_its_fees() -> None:
    """One billed line that she answered there is enough: its total stood on the paper. One that is not billed is no
    such yes."""
    assert bill(dearer_supplies(("A",))).total.total == usd("353.84")
    assert [code for code, _ in codes(dearer_supplies(("B", "C")))] == ["bill-above-told"]


def test_the_total_is_known_from_the_revisions_where_none_was_written_down() -> None:
    """In records from before totals were kept."""
    assert [code for code, _ in codes(changed(dearer_supplies(), told=None))] == ["bill-above-told"]
