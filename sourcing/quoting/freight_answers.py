"""Answers to freight that has a line of its own must go with the answers to the parts it brings."""

from collections.abc import Collection, Mapping

from ..basics.approval import AnswerWord
from ..basics.problem import refused
from ..basics.quote import Quote, QuoteLine


def check_freight_line(quote: Quote, words: Mapping[str, AnswerWord], answered: Collection[str] | None = None) -> None:
    """Refuse a yes to an extra part without a yes to the freight it needs, and a yes to freight where every part that
    it would bring is declined. `answered`: only what these lines have to do with (None: all).
    """
    for freight in quote.lines:
        if freight.freight_price.amount and not freight.part:
            parts = [line for line in quote.lines if line.part and _brings(freight, line)]
            seen = [line for line in parts if answered is None or {line.label, freight.label} & set(answered)]
            _check(freight, parts, seen, words)


def _brings(freight: QuoteLine, line: QuoteLine) -> bool:
    """Freight lines of old papers name no lines: they are for all parts of their kind."""
    return line.label in freight.freight_for if freight.freight_for else line.kind == freight.kind


def _check(freight: QuoteLine, parts: list[QuoteLine], seen: list[QuoteLine], words: Mapping[str, AnswerWord]) -> None:
    freight_said = words.get(freight.label, "waiting")
    for line in seen:
        if freight.kind == "add-on" and freight_said != "approved" and words.get(line.label) == "approved":
            raise refused("freight-not-answered", label=line.label, freight=freight.label)
    if freight_said == "approved" and seen and all(words.get(line.label) == "declined" for line in parts):
        raise refused("freight-for-nothing", freight=freight.label, found=", ".join(line.label for line in parts))
