"""What a ranking was asked for, and how long its first place holds, in words."""

from collections.abc import Iterator

from ..basics.choice import Comparison, DaySpan, RankWishes, TurningPoint


def wish_words(wishes: RankWishes) -> list[str]:
    """The wishes that take offers out of the ranking."""
    words = {
        f"what is here by {wishes.need_by}": wishes.only_in_time,
        "trusted matches": wishes.trusted_only,
        "what is in stock for the quantity": wishes.in_stock_only,
        "what leaves nothing over": wishes.without_surplus,
    }
    return [word for word, asked in words.items() if asked]


def first_place_words(comparison: Comparison) -> list[str]:
    """The turning points and the spans of the price of a day, a sentence each."""
    points = comparison.turning_points
    if not (points or comparison.day_spans):
        return []
    return [
        *_open_words(comparison),
        *(one.words for one in points if not _said_again(one, points)),
        *_span_words(comparison.day_spans if len(comparison.ranked) > 1 else (), _of_dated(comparison)),
    ]


def _open_words(comparison: Comparison) -> Iterator[str]:
    """That the figures are about ranked offers only, where one that is not ranked may come before all of them."""
    first = comparison.ranked[0]
    counted = first.counted or first.priced.landed.total
    names = dict.fromkeys(one.priced.supplier_name for one in comparison.open_offers if one.may_come_first(counted))
    if names:
        yield f"among the ranked offers only; not ranked, and perhaps before them: {', '.join(names)}"


def _said_again(one: TurningPoint, points: tuple[TurningPoint, ...]) -> bool:
    """Whether the landed cost moves by the same as one of its parts: then the part says it better."""
    parts = [other.by for other in points if other.figure != "landed cost" and other.place == one.place]
    return one.figure == "landed cost" and one.by in parts


def _of_dated(comparison: Comparison) -> str:
    """Whose waiting can't be counted: spans are about offers with a day only, and one without may be the first."""
    undated = [one.priced.supplier_name for one in comparison.ranked if one.priced.arrival.latest is None]
    if not undated:
        return ""
    return f" of the offers whose day is known; not counted, for no day is known: {', '.join(dict.fromkeys(undated))}"


def _span_words(spans: tuple[DaySpan, ...], of_dated: str) -> Iterator[str]:
    if not spans:
        return
    if len(spans) == 1:
        yield f"whatever a day of waiting is worth, {spans[0].supplier_name} comes first{of_dated}"
        return
    currency = spans[0].from_price.currency
    said = [_span(one) for one in spans]
    yield f"by the price of a day of waiting in {currency} first comes {', '.join(said[:-1])} and {said[-1]}{of_dated}"


def _span(one: DaySpan) -> str:
    if not one.from_price.amount:
        return f"{one.supplier_name} up to {one.to_price.amount if one.to_price else ''}"
    to = f"{one.from_price.amount} to {one.to_price.amount}" if one.to_price else f"{one.from_price.amount} on"
    return f"{one.supplier_name} from {to}"
