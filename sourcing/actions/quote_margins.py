"""What a quote earns as it is quoted, in margin and markup, for the owner. Cores and deposits are in neither.

Where freight is billed on lines of its own, a part's own margin leaves its share of the freight out; sums of parts with
freight have it on both sides.
"""

from collections.abc import Sequence

from ..basics.margin import Margin
from ..basics.money import Money, percent_of, total
from ..basics.quote import Behind, Quote, QuoteLine
from ..basics.settings import Settings
from ..margins.figures import margin
from ..quoting.freight_at_cost import at_cost


def margin_words(one: Margin) -> str:
    """'margin 26.35 % on price, markup 35.78 % on cost'; no base, no per cent."""
    on_price, on_cost = (
        "none" if figure is None else f"{figure:f} %" for figure in (one.margin_percent, one.markup_percent)
    )
    return f"margin {on_price} on price, markup {on_cost} on cost"


def parts_margins(of: Quote) -> tuple[tuple[QuoteLine, Margin], ...]:
    """Every line with a part, and what the part earns by itself."""
    billed = any(line.freight_price.amount for line in of.lines)
    return tuple((line, _of_part(line, line.behind, billed)) for line in of.lines if line.behind is not None)


def _of_part(line: QuoteLine, behind: Behind, billed: bool) -> Margin:
    apart = behind.freight if billed else None
    return margin(line.parts_price, behind.cost - apart if apart is not None else behind.cost)


def agreed_margin(of: Quote) -> Margin:
    """Parts with freight of the agreed lines, at what they cost when every add-on is declined where that is kept."""
    agreed = [line for line in of.lines if line.kind == "agreed"]
    behind = (line.behind for line in agreed if line.behind is not None)
    costs = (one.cost if one.cost_alone is None else one.cost_alone for one in behind)
    return margin(_price(agreed, of), total(costs, of.currency))


def everything_margin(of: Quote) -> Margin:
    """Parts with freight of all lines together."""
    return margin(_price(of.lines, of), total((line.behind.cost for line in of.lines if line.behind), of.currency))


def under_floor(one: Margin, settings: Settings) -> bool:
    """Whether it earns less than the shop's floor asks, to the cent. Nothing bought and sold is not under it."""
    something = one.price.amount or one.cost.amount
    return bool(something) and one.earned < percent_of(one.price, settings.margin_floor_percent)


def _price(lines: Sequence[QuoteLine], of: Quote) -> Money:
    return total((line.parts_price + line.freight_price for line in at_cost(lines)), of.currency)
