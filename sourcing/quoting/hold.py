"""Whether an approved line may still be ordered as it was approved, or waits for a new answer."""

from ..basics.money import Money
from ..basics.quote import QuoteLine


def why_held(line: QuoteLine, price_now: Money | None, missing: str) -> str:
    """Why the line waits; blank where the customer's yes still covers it.

    `price_now` is what one piece would be priced at on today's cost, None where the offer is not there any more;
    `missing` says why not.
    """
    if price_now is None:
        return f"the offer it was quoted on can't be had: {missing}"
    if price_now > line.unit_price:
        return f"its price would now be {price_now} each, approved was {line.unit_price}"
    return ""
