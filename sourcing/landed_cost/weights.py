"""The weight an order is charged by, freight by weight and by parcel, and what counts as oversize.

Exact: 1 lb is 0.45359237 kg and 1 in is 2.54 cm (international yard and pound agreement of 1959). Volumes are summed
before the one division by the divisor, and weights rounded up once, so that no third of a pound becomes a pound more.
"""

from collections.abc import Sequence
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from ..basics.freight import Dimensional, Freight, Oversize
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.value import Value
from .parcels import Load, Room, packed

GRAMS = {"kg": Decimal(1000), "lb": Decimal("453.59237")}
CM_PER_INCH = Decimal("2.54")
NOTHING = Decimal(0)


class Weighed(Value, frozen=True, kw_only=True):
    """The weight of an order's pieces. All weights are grams, as Decimal and not rounded.

    `grams` and `volume_grams` are of the pieces whose weight and size are stated; the larger is charged. `least` and
    `most` are the weight charged in the end: the same where all is known, a range where the freight says how much a
    piece not stated may weigh, None where it can't be said. `unknown` names every offer (by the supplier's number)
    that leaves the weight open, and `questions` says why in words, one for each.
    """

    grams: Decimal
    volume_grams: Decimal
    least: Decimal | None
    most: Decimal | None
    unknown: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()

    @property
    def charged(self) -> Decimal:
        """The larger of weight and volume, of the pieces that are stated: the order's where nothing is `unknown`."""
        return max(self.grams, self.volume_grams)


def weigh(items: Sequence[OrderItem], freight: Freight) -> Weighed:
    """The order's weight and, where the freight charges volume, its volume as weight.

    A weight or side of 0 or less is none: sheets round small goods down to it. Where the weight of a piece is not
    stated it is within the freight's `piece_weight`; where only its size is not, the piece counts as at least its
    weight and at most the larger of that and the upper end.
    """
    grams = sum((_grams(one.offer) * one.ordered for one in items), NOTHING)
    volume = _volume_grams(items, freight.dimensional)
    asked = [(one.offer.supplier_number, _question(one.offer, freight)) for one in items]
    open_ones = {number: words for number, words in asked if words}
    least, most = _range(items, freight, (grams, volume)) if open_ones else (max(grams, volume),) * 2
    return Weighed(
        grams=grams,
        volume_grams=volume,
        least=least,
        most=most,
        unknown=tuple(open_ones),
        questions=tuple(open_ones.values()),
    )


def freight_by_weight(freight: Freight, weight_grams: Decimal) -> tuple[Decimal, str] | None:
    """What the rules 'by weight', 'per weight' and 'per parcel' charge for that weight, and the rule in words.

    Of parcels it is the least, for pieces are not looked at: `freight_of_items` does.

    The charge is in the supplier's currency and not rounded. The weight is rounded up to whole `weight_step`s. None:
    the rule does not say (heavier than its last band; a figure left out). Parcels are as many full ones of the limit as
    go in and the rest in one more. Oversize and free freight are not looked at.
    """
    weight = _in_steps(weight_grams / GRAMS[freight.weight_unit], freight.weight_step)
    if freight.rule == "by weight":
        return _by_band(freight, weight)
    if freight.rule == "per weight":
        return _per_weight(freight, weight)
    return _by_parcel(freight, weight) if freight.rule == "per parcel" else None


def freight_of_items(
    freight: Freight, items: Sequence[OrderItem], weight_grams: Decimal, not_stated: Decimal = NOTHING
) -> tuple[Decimal, str] | None:
    """What `freight_by_weight` charges for the items' weight; for parcels what whole pieces need, if that is more.

    `not_stated`: the grams of a piece whose weight or size is not stated. Each parcel's weight is rounded up to whole
    `weight_step`s, but never beyond the limit.
    """
    found = freight_by_weight(freight, weight_grams)
    if found is None or freight.rule != "per parcel" or not freight.parcel_limit:
        return found
    parcels = _parcels(freight, items, not_stated)
    charges = [_parcel(freight, _parcel_weight(freight, one)) for one in parcels]
    charge = sum((each * one.number for one, each in zip(parcels, charges, strict=True) if each is not None), NOTHING)
    if None in charges or charge <= found[0]:
        return found
    shares = [(one.number, _parcel_weight(freight, one)) for one in parcels]
    words = _parcel_words(freight, shares, _in_steps(weight_grams / GRAMS[freight.weight_unit], freight.weight_step))
    return charge, f"{words}; whole pieces, packed heaviest first"


def _parcels(freight: Freight, items: Sequence[OrderItem], not_stated: Decimal) -> list[Load]:
    """In grams; volume is not yet divided by the divisor, so that no division decides whether a piece still fits."""
    rule, limit = freight.dimensional, (freight.parcel_limit or NOTHING) * GRAMS[freight.weight_unit]
    pieces = [
        Load(_grams(one.offer) or not_stated, _undivided(one.offer, rule, not_stated), one.ordered) for one in items
    ]
    return packed(pieces, Room(limit, limit * rule.divisor if rule else None))


def _undivided(offer: Offer, rule: Dimensional | None, not_stated: Decimal) -> Decimal:
    if rule is None:
        return NOTHING
    return _volume(offer, rule) * _grams_of(rule) if _measured(offer) else not_stated * rule.divisor


def _parcel_weight(freight: Freight, parcel: Load) -> Decimal:
    """The weight a parcel is charged by, in the freight's unit."""
    volume = parcel.volume / freight.dimensional.divisor if freight.dimensional else NOTHING
    weight = _in_steps(max(parcel.weight, volume) / GRAMS[freight.weight_unit], freight.weight_step)
    return min(weight, freight.parcel_limit) if freight.parcel_limit else weight


def is_oversize(offer: Offer, oversize: Oversize) -> bool | None:
    """Whether a piece is oversize: the sheet's own word, or a side longer than the limit; None: to be asked.

    A stated length is taken as the longest side unless another is longer. Goods of which the sheet gives neither word
    nor length are what the rule says of them.
    """
    limit = oversize.longer_than_cm
    sides = [side for side in (offer.length_cm, offer.width_cm, offer.height_cm) if side is not None]
    if offer.oversize or (limit is not None and any(side > limit for side in sides)):
        return True
    if offer.oversize is False or (limit is not None and offer.length_cm is not None):
        return False
    return False if oversize.if_not_stated == "not oversize" else None


def _grams(offer: Offer) -> Decimal:
    """The stated weight of a piece; nothing where none is stated, which `_question` tells."""
    return offer.weight_kg * 1000 if offer.weight_kg is not None and offer.weight_kg > 0 else NOTHING


def _volume_grams(items: Sequence[OrderItem], rule: Dimensional | None) -> Decimal:
    if rule is None:
        return NOTHING
    volume = sum((_volume(one.offer, rule) * one.ordered for one in items), NOTHING)
    return volume * _grams_of(rule) / rule.divisor


def _grams_of(rule: Dimensional) -> Decimal:
    return GRAMS["lb" if rule.unit == "in3/lb" else "kg"]


def _volume(offer: Offer, rule: Dimensional) -> Decimal:
    """Of one piece, in the rule's cubic inches or centimetres; nothing where a side is not stated."""
    if not _measured(offer):
        return NOTHING
    length, width, height = (
        _side(side or NOTHING, rule) for side in (offer.length_cm, offer.width_cm, offer.height_cm)
    )
    return length * width * height


def _side(cm: Decimal, rule: Dimensional) -> Decimal:
    side = cm if rule.unit == "cm3/kg" else cm / CM_PER_INCH
    if rule.sides == "as they are":
        return side
    return side.quantize(Decimal(1), ROUND_HALF_UP if rule.sides == "rounded" else ROUND_CEILING)


def _measured(offer: Offer) -> bool:
    sides = (offer.length_cm, offer.width_cm, offer.height_cm)
    return all(side is not None and side > 0 for side in sides)


def _question(offer: Offer, freight: Freight) -> str:
    """Why the weight charged for the offer is not known; blank where it is."""
    if not _grams(offer):
        return f"weight of {offer.supplier_number} is not stated"
    if freight.dimensional and not _measured(offer):
        return f"size of {offer.supplier_number} is not stated, and volume is charged as weight"
    if _too_heavy(_piece_grams(offer, freight), freight):
        limit = f"{_shown(freight.parcel_limit or NOTHING)} {freight.weight_unit}"
        return f"a piece of {offer.supplier_number} is heavier than a parcel may be ({limit})"
    return ""


def _piece_grams(offer: Offer, freight: Freight) -> Decimal:
    one = OrderItem(need="", offer=offer, needed=1, ordered=1)
    return max(_grams(offer), _volume_grams([one], freight.dimensional))


def _too_heavy(grams: Decimal, freight: Freight) -> bool:
    limit = freight.parcel_limit if freight.rule == "per parcel" else None
    return limit is not None and grams > limit * GRAMS[freight.weight_unit]


def _range(
    items: Sequence[OrderItem], freight: Freight, stated: tuple[Decimal, Decimal]
) -> tuple[Decimal | None, Decimal | None]:
    """The weight charged at least and at most, where some pieces are not stated."""
    if freight.piece_weight is None or any(_too_heavy(_piece_grams(one.offer, freight), freight) for one in items):
        return None, None
    low, high = (end * GRAMS[freight.weight_unit] for end in freight.piece_weight)
    light = sum(one.ordered for one in items if not _grams(one.offer))
    flat = sum(one.ordered for one in items if freight.dimensional and not _measured(one.offer))
    least = max(stated[0] + low * light, stated[1])
    most = max(stated[0] + high * light, stated[1] + high * flat)
    return least, None if _too_heavy(high, freight) else most


def _in_steps(weight: Decimal, step: Decimal | None) -> Decimal:
    return (weight / step).to_integral_value(ROUND_CEILING) * step if step else weight


def _by_band(freight: Freight, weight: Decimal) -> tuple[Decimal, str] | None:
    band = next((one for one in freight.weight_bands if weight <= one.to_weight), None)
    if band is None:
        return None
    unit = freight.weight_unit
    return (
        band.charge,
        f"{band.charge} up to {_shown(band.to_weight)} {unit}; this order weighs {_shown(weight)} {unit}",
    )


def _per_weight(freight: Freight, weight: Decimal) -> tuple[Decimal, str] | None:
    if freight.per_weight is None:
        return None
    unit = freight.weight_unit
    charge, rule = freight.per_weight * weight, f"{_shown(weight)} {unit} at {freight.per_weight} per {unit}"
    if freight.least is not None and charge < freight.least:
        charge, rule = freight.least, f"{rule}, at least {freight.least}"
    if freight.most is not None and charge > freight.most:
        charge, rule = freight.most, f"{rule}, at most {freight.most}"
    return charge, rule


def _by_parcel(freight: Freight, weight: Decimal) -> tuple[Decimal, str] | None:
    full, rest = divmod(weight, freight.parcel_limit) if freight.parcel_limit else (NOTHING, weight)
    parcels = [(int(full), freight.parcel_limit or NOTHING), (1 if rest or not full else 0, rest)]
    charge = NOTHING
    for count, each in parcels:
        one = _parcel(freight, each) if count else NOTHING
        if one is None:
            return None
        charge += one * count
    return charge, _parcel_words(freight, parcels, weight)


def _parcel(freight: Freight, weight: Decimal) -> Decimal | None:
    """What one parcel of that weight costs; None: no band holds it, or no charge is given."""
    if not freight.weight_bands:
        return freight.charge
    return next((one.charge for one in freight.weight_bands if weight <= one.to_weight), None)


def _parcel_words(freight: Freight, parcels: list[tuple[int, Decimal]], weight: Decimal) -> str:
    count, unit = sum(count for count, _ in parcels), freight.weight_unit
    limit = f" of at most {_shown(freight.parcel_limit)} {unit}" if freight.parcel_limit else ""
    each = f" at {freight.charge} each" if not freight.weight_bands else ", each by its weight"
    return f"{count} parcel{'s' if count > 1 else ''}{limit} for {_shown(weight)} {unit}{each}"


def _shown(weight: Decimal) -> str:
    """A weight in words: up to three decimals, without empty ones."""
    short = weight.quantize(Decimal("0.001"), ROUND_HALF_UP)
    text = f"{short:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
