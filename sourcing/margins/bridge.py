"""From a job's quoted to its received margin, cause by cause. The steps sum to the difference to the cent."""

from collections.abc import Sequence

from ..basics.margin import Bridge, Step
from ..basics.money import Money
from . import names
from .figures import margin
from .line import Change, LineFigures
from .minor import money


def bridge(lines: Sequence[LineFigures], currency: str) -> Bridge | None:
    """The bridge over these lines; None where there are none. Each line goes as far as it is known."""
    if not lines:
        return None
    at = sum(line.price - line.cost for line in lines)
    steps = []
    for name in names.IN_ORDER:
        found = [(line.label, change) for line in lines for change in line.steps if change.name == name]
        amount = sum(change.amount for _, change in found)
        if not amount:
            continue
        at += amount
        steps.append(
            Step(
                name=name,
                amount=money(amount, currency),
                after=money(at, currency),
                labels=tuple(dict.fromkeys(label for label, _ in found)),
                why=_why(found, currency),
            )
        )
    return Bridge(
        start=margin(*_sums([(line.price, line.cost) for line in lines], currency)),
        steps=tuple(steps),
        end=margin(*_sums([(line.billed, line.last_cost) for line in lines], currency)),
        is_complete=all(line.received is not None for line in lines),
    )


def _why(found: Sequence[tuple[str, Change]], currency: str) -> tuple[str, ...]:
    """Each reason once, with the lines it holds for."""
    lines: dict[str, list[str]] = {}
    for label, change in found:
        lines.setdefault(in_words(change, currency), []).append(label)
    return tuple(f"line{'s' * (len(some) > 1)} {', '.join(some)}: {words}" for words, some in lines.items())


def in_words(change: Change, currency: str) -> str:
    """Why, with the figures: money with the decimals of the currency, counts as they are."""
    figures = (one if isinstance(one, str) else str(money(one, currency).amount) for one in change.figures)
    return change.words.format(*figures)


def _sums(figures: Sequence[tuple[int, int]], currency: str) -> tuple[Money, Money]:
    price, cost = (sum(column) for column in zip(*figures, strict=True))
    return money(price, currency), money(cost, currency)
