"""A supplier's freight rule in words."""

from collections.abc import Callable

from ..basics.freight import Dimensional, Freight, Oversize


def freight_words(freight: Freight, currency: str) -> str:
    """The rule on one line, with what is free and what is oversize."""
    words = [RULES[freight.rule](freight, currency), *_weight(freight)]
    if freight.oversize:
        words.append(_oversize(freight.oversize, currency))
    if freight.free_from is not None:
        words.append(f"nothing from {freight.free_from} {currency} of goods on")
    return "; ".join(words)


def _flat(freight: Freight, currency: str) -> str:
    return f"{freight.charge} {currency} an order"


def _by_value(freight: Freight, currency: str) -> str:
    return ", ".join(f"{band.charge} {currency} from {band.from_value} of goods on" for band in freight.bands)


def _bands(freight: Freight, currency: str) -> str:
    unit = freight.weight_unit
    return ", ".join(f"{band.charge} {currency} up to {band.to_weight} {unit}" for band in freight.weight_bands)


def _per_weight(freight: Freight, currency: str) -> str:
    least = f", at least {freight.least} {currency}" if freight.least is not None else ""
    most = f", at most {freight.most} {currency}" if freight.most is not None else ""
    return f"{freight.per_weight} {currency} for each {freight.weight_unit}{least}{most}"


def _per_parcel(freight: Freight, currency: str) -> str:
    limit = f"a parcel of at most {freight.parcel_limit} {freight.weight_unit}"
    if freight.weight_bands:
        return f"for {limit}: {_bands(freight, currency)}"
    return f"{freight.charge} {currency} for {limit}"


def _pick_up(freight: Freight, currency: str) -> str:
    ways = {"miles": freight.round_trip_miles, "km": freight.round_trip_km, "hours": freight.round_trip_hours}
    said = [f"{number} {unit}" for unit, number in ways.items() if number is not None]
    return f"picked up by the shop: {', '.join(said)} there and back, at the shop's own rates"


def _asked(freight: Freight, currency: str) -> str:
    if freight.between is None:
        return "said only when asked"
    least, most = freight.between
    return f"said only when asked, between {least} and {most} {currency}"


RULES: dict[str, Callable[[Freight, str], str]] = {
    "flat": _flat,
    "by order value": _by_value,
    "by weight": _bands,
    "per weight": _per_weight,
    "per parcel": _per_parcel,
    "pick-up": _pick_up,
    "included": lambda freight, currency: "in the price",
    "asked": _asked,
}


def _weight(freight: Freight) -> list[str]:
    """How the weight that is charged comes about."""
    unit, words = freight.weight_unit, []
    if freight.weight_step is not None:
        words.append(f"weight rounded up to whole {freight.weight_step} {unit}")
    if freight.dimensional:
        words.append(_volume(freight.dimensional))
    if freight.piece_weight is not None:
        least, most = freight.piece_weight
        words.append(f"a piece without a stated weight weighs {least} to {most} {unit}")
    return words


def _volume(rule: Dimensional) -> str:
    sides = "" if rule.sides == "as they are" else f", sides {rule.sides}"
    return f"or its volume as weight where that is more, divided by {rule.divisor} {rule.unit}{sides}"


def _oversize(rule: Oversize, currency: str) -> str:
    longer = f", or longer than {rule.longer_than_cm} cm" if rule.longer_than_cm is not None else ""
    asked = "asked where the sheet says nothing" if rule.if_not_stated == "ask" else "not where the sheet says nothing"
    free = "" if rule.counts else "; such goods do not count towards free freight"
    per = "an order" if rule.per == "order" else "a piece"
    return f"{rule.charge} {currency} {per} for oversize{longer} ({asked}){free}"
