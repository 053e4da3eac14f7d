"""Words and cells for landed costs that several papers share."""

from collections.abc import Sequence

from ..basics.landed_cost import CostLine, LandedItem
from .csv_text import Cell
from .plain_text import count


def titled(title: str, lines: Sequence[str]) -> list[str]:
    """A blank line, the title and the lines; nothing at all where there are no lines."""
    return ["", title, *lines] if lines else []


def beside_words(item: LandedItem, told: Sequence[str] = ()) -> list[str]:
    """What stands beside the cost: pieces for the shelf, the core charge (cash, not cost), whether it can go back.

    `told`: what is said elsewhere already, and is not said twice.
    """
    words = []
    if item.item.surplus:
        words.append(f"{count(item.item.surplus, 'piece')} more than needed, for the shelf at {item.surplus_cost}")
    if item.core_charge.amount and item.beside.core_lost is None:
        words.append(f"core charge {item.core_charge} beside it, back when the old part is returned")
    rest = [one for one in item.beside.words if one not in told]
    return [*words, *(["; ".join(rest)] if rest else [])]


def cost_name(line: CostLine) -> str:
    """The name of a cost line inside a sentence about one offer: 'goods', 'freight', 'small-order fee'."""
    return "goods" if line.name.startswith("Goods ") else line.name[:1].lower() + line.name[1:]


def cost_cells(line: CostLine) -> tuple[Cell, ...]:
    """A cost line in a table: name, amount, currency, rule."""
    return line.name, line.amount.amount, line.amount.currency, line.rule
