"""The words of the drawing of cost and day: what its marks mean, what it leaves out, and what it shows."""

from ..basics.choice import Comparison, OpenOffer
from .plain_text import count, wrapped

NOTE_LETTERS = 118
MOST_TOLD = 20


def with_a_range(comparison: Comparison) -> list[OpenOffer]:
    """Offers beneath the ranked ones that can be drawn: the most they cost is known too."""
    return [one for one in comparison.open_offers if one.most is not None]


def notes(comparison: Comparison, drawn: int, labelled: int, ranges: int) -> list[str]:
    """What the marks mean and what is not drawn, in lines. `drawn` points, of which `labelled` have words."""
    words = ["Filled points and the line: the front, nothing is both cheaper and sooner. Hollow: something is."]
    if comparison.need_by:
        words[0] += f" Broken line: needed by {comparison.need_by}."
    if comparison.wishes.value_per_day is not None:
        currency = comparison.ranked[0].priced.landed.total.currency
        words.append(
            f"Places count a day of waiting at {comparison.wishes.value_per_day} {currency}; the drawing does not."
        )
    if ranges:
        words.append("With '?': not ranked, for its cost or its day is not known; dotted from the least to the most.")
    without = len(comparison.open_offers) - ranges
    left = len(comparison.ranked) - drawn
    if without:
        words.append(f"Not drawn, for too little is known or for room: {count(without, 'offer')} that can't be ranked.")
    if left:
        many = f"{drawn} of {len(comparison.ranked):,} offers"
        words.append(f"{many} are drawn, the front and the first places; {left:,} are left out.")
    if labelled < drawn:
        words.append(f"{labelled} of {drawn} points have words: the front's and the first places'.")
    return [line.strip() for sentence in words for line in wrapped(sentence, width=NOTE_LETTERS)]


def told(comparison: Comparison) -> str:
    """The drawing in words, for who does not see it: the front, from the cheapest on."""
    front = [one for one in comparison.ranked if one.on_front][:MOST_TOLD]
    words = [
        f"{one.priced.supplier_name}, {one.priced.landed.total} at the door, here by {one.priced.arrival.latest}"
        for one in front
    ]
    said = f"The front: {'; '.join(words)}." if words else "No last day is known."
    return f"{count(len(comparison.ranked), 'offer')} by cost and last day. {said}"
