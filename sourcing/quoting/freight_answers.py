"""Answers to freight that has a line of its own must go with the answers to the parts it brings."""

from collections.abc import Collection, Mapping

from ..basics.approval import AnswerWord
from ..basics.problem import refused
from ..basics.quote import Quote, QuoteLine


def check_freight_line(quote: Quote, words: Mapping[str, AnswerWord], answered: Collection[str] | None = None) -> None:
    """Refuse a yes to a part without a yes to the freight it needs, a yes to freight where every part that it would
    bring is declined, and one to freight alone. `answered`: only what these lines have to do with (None: all).
    """
    for freight in freight_lines(quote):
        parts = [line for line in quote.lines if line.part and brings(freight, line)]
        seen = [line for line in parts if answered is None or {line.label, freight.label} & set(answered)]
        _check(freight, parts, seen, words)
        if parts and answered is not None and freight.label in answered:
            _not_alone(freight, parts, words)


def without_freight(quote: Quote, words: Mapping[str, AnswerWord], line: QuoteLine) -> tuple[str, AnswerWord] | None:
    """The freight line without which the part can't be brought, and how that was answered; None where all of it is
    approved. Freight may have changed in a later revision, so that its yes fell while that to the part stands."""
    for freight in freight_lines(quote):
        said = words.get(freight.label, "waiting")
        if brings(freight, line) and said != "approved":
            return freight.label, said
    return None


def freight_lines(quote: Quote) -> list[QuoteLine]:
    """Lines that bill inbound freight and nothing else."""
    return [line for line in quote.lines if line.freight_price.amount and not line.part]


def brings(freight: QuoteLine, line: QuoteLine) -> bool:
    """Whether the freight line is for that line. Those of old papers name no lines: they are for all of their kind."""
    return line.label in freight.freight_for if freight.freight_for else line.kind == freight.kind


def _check(freight: QuoteLine, parts: list[QuoteLine], seen: list[QuoteLine], words: Mapping[str, AnswerWord]) -> None:
    freight_said = words.get(freight.label, "waiting")
    for line in seen:
        if freight_said != "approved" and words.get(line.label) == "approved":
            raise refused("freight-not-answered", label=line.label, freight=freight.label, found=freight.label)
    if freight_said == "approved" and seen and all(words.get(line.label) == "declined" for line in parts):
        raise refused("freight-for-nothing", freight=freight.label, found=", ".join(line.label for line in parts))


def _not_alone(freight: QuoteLine, parts: list[QuoteLine], words: Mapping[str, AnswerWord]) -> None:
    if words.get(freight.label) == "approved" and not any(words.get(line.label) == "approved" for line in parts):
        raise refused("freight-alone", freight=freight.label, found=", ".join(line.label for line in parts))
