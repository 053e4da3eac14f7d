"""Parts bought and on no bill: named by what they are, and without what of them went back for credit. By hand."""

from decimal import Decimal

import pytest

from sourcing.basics.order import ReceiptLine
from tests.builders import usd
from tests.margins.facts import bill, bought, charge, facts, order, purchase, quote, quoted, receipt, went_back
from tests.margins.test_lines_and_leaks import leaks, made, steps

QUOTE = quote(quoted("1", "28.00", "13.80", "0.44", quantity=2), quoted("2", "20.00", "10.00"))
ORDER = order(bought(1, "1", "13.80", "0.44", needed=2, ordered=2), charges=[charge("handling", "0.44")])


@pytest.mark.parametrize(("special", "name"), [(True, "dead special order"), (False, "bought and not used")])
def test_bought_and_not_billed_is_a_leak_by_what_it_is(special: bool, name: str) -> None:
    """What it would have earned fell away and is no leak; what was paid for it is."""
    one = order(bought(1, "1", "100.00"))
    of = quote(quoted("1", "150.00", "100.00", special_order=special), quoted("2", "20.00", "10.00"))
    found = made(facts(of, billed=bill(of, of.lines[1])), purchase(one, receipt(one)))
    assert leaks(found) == {name: "100.00"}
    assert dict(found.lines[0].stages)["received"].earned == usd("-100.00")


def test_what_went_back_for_credit_is_not_lost_a_second_time() -> None:
    """Two keepers, 13.80 and 0.44 of handling, go back for 11.04: lost are the handling and 2.76, no more."""
    back = went_back("credited", 2, credit=usd("11.04"))
    paper = receipt(ORDER)
    found = made(facts(QUOTE, billed=bill(QUOTE, QUOTE.lines[1])), purchase(ORDER, paper, back=[back]))
    assert leaks(found) == {"bought and not used": "0.44", "return credited short": "2.76"}
    assert found.leaks[0].why == "bought for 14.24 as quoted, neither used nor billed; 13.80 of it went back"
    assert steps(found)["bought and not used"] == "-14.24", "the way from quote to bill shows both"


def test_a_dearer_price_that_was_credited_is_not_lost_either() -> None:
    """Charged 15.00 in place of 13.80 and credited in full: only the handling is lost."""
    paper = receipt(ORDER, [ReceiptLine(line=1, quantity=2, unit_price=Decimal("7.50"))])
    back = went_back("credited", 2, credit=usd("15.00"))
    found = made(facts(QUOTE, billed=bill(QUOTE, QUOTE.lines[1])), purchase(ORDER, paper, back=[back]))
    assert leaks(found) == {"bought and not used": "0.44"}
