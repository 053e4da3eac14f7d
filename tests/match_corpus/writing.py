"""One listing: how one side prints a thing's number, maker, description and price."""

import re
from dataclasses import dataclass

from tests.match_corpus.chance import Chance
from tests.match_corpus.measures import Habit, Measure, written
from tests.match_corpus.mess import MARKETING, cut, dressed, mistyped, shortened
from tests.match_corpus.names import by_pattern
from tests.match_corpus.products import COLOUR_WORDS, COMPATIBLE, REFURBISHED, SIDES, Product
from tests.match_corpus.sides import Side


@dataclass(frozen=True)
class Listing:
    """A row as printed; a blank is ''."""

    number: str
    maker: str
    description: str
    price: str


@dataclass(frozen=True)
class Writer:
    """A side with the habits this seed gives it. `own` is the pattern of its own stock numbers."""

    side: Side
    habit: Habit
    own: str
    money: str


def writer(side: Side, chance: Chance) -> Writer:
    """A side's habits for this seed."""
    habit = Habit(chance.number(0, 6), chance.pick(("-", " ", ".")), side.converts, side.steady)
    return Writer(side, habit, chance.pick(("?????", "??????", "????????", "@?????")), chance.pick(("{}", "${}", "{}")))


def reformed(number: str, chance: Chance) -> str:
    """The same number otherwise printed: signs dropped, added or exchanged, small letters."""
    kind = chance.number(1, 6)
    if kind <= 2:
        return re.sub(r"[^A-Za-z0-9]", "", number)
    if kind == 3:
        return re.sub(r"[-/ ]", chance.pick((" ", "-", "/", ".")), number)
    if kind == 4:
        return re.sub(r"(?<=[A-Za-z])(?=\d)", chance.pick(("-", " ")), number, count=1)
    if kind == 5:
        return number.lower()
    return re.sub(r"[^A-Za-z0-9]", "", number).lower()


def _as_known(product: Product, side: Side, chance: Chance) -> tuple[str, bool]:
    """The number with the tail this side knows, and whether the tail was lost."""
    if product.tail and chance.odds(side.tail_lost):
        return product.stem, True
    if chance.odds(side.tail_added):
        return product.number + chance.pick(("/US", "-US", "#1", "/01", "-N", "-EF", ".00")), False
    return product.number, False


@dataclass(frozen=True)
class NumberCell:
    """The text of the number column; whether it is the maker's number; whether that lost the tail of its variant."""

    text: str
    is_makers: bool
    lost_tail: bool


def _number(product: Product, writer: Writer, chance: Chance) -> NumberCell:
    side = writer.side
    if not chance.odds(side.number_given):
        return NumberCell("", False, False)
    if chance.odds(side.number_own):
        return NumberCell(by_pattern(chance, writer.own), False, False)
    if chance.odds(side.number_generic):
        code = product.kind.nouns[0][:3].upper()
        return NumberCell(chance.pick((chance.digits(12), chance.digits(5), code, "N/A", "see desc.")), False, False)
    if product.stands_for and product.phrases is COMPATIBLE and chance.odds(0.25):
        return NumberCell(product.stands_for.number, False, False)
    number, lost = _as_known(product, side, chance)
    if chance.odds(side.number_reformed):
        number = reformed(number, chance)
    if chance.odds(0.2 * side.number_own):
        number = f"{product.maker.short}-{number}"
    return NumberCell(number, True, lost)


def _maker(product: Product, side: Side, chance: Chance) -> str:
    if not chance.odds(side.maker_given):
        return ""
    if product.stands_for and chance.odds(0.2):
        return chance.pick(("Generic", "Aftermarket", "", "Unbranded"))
    return chance.pick(product.maker.others) if chance.odds(side.maker_other) else product.maker.name


def _measure(measure: Measure, writer: Writer, chance: Chance) -> str:
    if measure.unit == "pk" and measure.amount == "1":
        return ""
    return written(measure, writer.habit, chance)


def _variant(product: Product, must: bool, side: Side, chance: Chance) -> str:
    words = []
    if product.colour and (must or chance.odds(side.colour_given)):
        words.append(chance.pick(COLOUR_WORDS[product.colour]) if chance.odds(side.synonym) else product.colour)
    if product.side and (must or chance.odds(side.colour_given)):
        words.append(chance.pick(SIDES[product.side]))
    if product.generation and (must or chance.odds(0.3)):
        words.append(chance.pick(("type {}", "gen {}", "({})", "version {}")).format(product.generation))
    return " ".join(words)


def _pack(product: Product, must: bool, chance: Chance) -> str:
    kit = chance.pick(("kit", "Kit", "set", "combo kit")) if product.is_kit else ""
    if product.pack and (must or chance.odds(0.85)):
        forms = ("{}-pack", "{}/pk", "pack of {}", "{} pk", "({} Pack)", "qty {}")
        return f"{kit} {chance.pick(forms).format(product.pack)}".strip()
    return kit


def _model(product: Product, side: Side, is_elsewhere: bool, chance: Chance) -> str:
    share = side.model_in_title if is_elsewhere else max(side.model_in_title, side.model_if_no_number)
    if not chance.odds(share):
        return ""
    number, _ = _as_known(product, side, chance)
    if chance.odds(side.model_reformed):
        number = reformed(number, chance)
    return chance.weighted([("{}", 6), ("- {}", 3), ("({})", 2), ("#{}", 0.7), ("Model {}", 0.7)]).format(number)


def _marketing(side: Side, chance: Chance) -> str:
    count = chance.number(0, side.marketing) if side.marketing else 0
    return " ".join(chance.some(MARKETING, count))


def chunks(product: Product, writer: Writer, cell: NumberCell, chance: Chance) -> dict[str, str]:
    """B brand, L line, N noun, U use, S sizes, F features, C colour or side, P pack or kit, M model, K other words."""
    side, must = writer.side, cell.lost_tail
    nouns = product.kind.nouns
    sizes = [_measure(one, writer, chance) for one in product.measures if chance.odds(side.measure_given)]
    features = [group for group in product.features if chance.odds(side.feature_given)]
    return {
        "B": product.maker.name if chance.odds(side.brand_in_title) else "",
        "L": product.line if chance.odds(side.line_in_title) else "",
        "N": chance.pick(nouns) if chance.odds(side.synonym) else nouns[0],
        "U": product.use,
        "S": chance.pick((" ", ", ", " ")).join(size for size in sizes if size),
        "F": chance.pick((" ", ", ", " with ")).join(
            chance.pick(group) if chance.odds(side.synonym) else group[0] for group in features
        ),
        "C": _variant(product, must, side, chance),
        "P": _pack(product, must, chance),
        "M": _model(product, side, cell.is_makers, chance),
        "K": _marketing(side, chance),
    }


def _for_other(product: Product, noun: str, chance: Chance) -> str:
    other = product.stands_for
    if other is None:
        return noun
    number = reformed(other.number, chance) if chance.odds(0.3) else other.number
    target = f"{chance.pick(product.phrases)} {other.maker.name} {number}"
    return f"{noun} {target}" if product.phrases is COMPATIBLE else f"{target} {noun}"


def _description(product: Product, writer: Writer, cell: NumberCell, chance: Chance) -> str:
    side = writer.side
    parts = chunks(product, writer, cell, chance)
    parts["N"] = _for_other(product, parts["N"], chance)
    order = chance.pick(side.orders)
    if parts["U"] and parts["N"].startswith(parts["U"]):
        parts["U"] = ""
    if "U" not in order and parts["U"]:
        parts["N"] = f"{parts['U']} {parts['N']}"
    words = [parts[letter] for letter in order if parts[letter]]
    if chance.odds(side.reordered):
        words = chance.shuffled(words)
    if parts["B"] and chance.odds(side.brand_again):
        words.append(product.maker.name)
    text = shortened(chance.weighted([(" ", 6), (", ", 2), (" - ", 1)]).join(words), side.shortened, chance)
    if chance.odds(side.mistyped):
        text = mistyped(text, chance)
    text = cut(text, side.cut_at)
    if product.is_refurbished:
        # Never cut off: what nobody can see no program can be blamed for.
        mark = chance.pick(REFURBISHED)
        text = f"{mark} {text}" if chance.odds(0.4) else f"{text} {mark}"
    if chance.odds(side.dressed):
        text = dressed(text, product.maker.name, chance)
    return text.upper() if chance.odds(side.upper) else text


def _price(product: Product, writer: Writer, chance: Chance) -> str:
    if not chance.odds(writer.side.price_given):
        return ""
    cents = product.cents
    if chance.odds(writer.side.price_off):
        off = chance.between(0.05, 0.35)
        cents = int(cents * (1 - off if chance.odds(0.6) else 1 + off))
    whole = f"{cents // 100:,}" if writer.money != "{}" else str(cents // 100)
    return writer.money.format(f"{whole}.{cents % 100:02d}")


def listing(product: Product, writer: Writer, chance: Chance) -> Listing:
    """The product as this side lists it. A variant that the number lost is told."""
    cell = _number(product, writer, chance)
    return Listing(
        number=cell.text,
        maker=_maker(product, writer.side, chance),
        description=_description(product, writer, cell, chance),
        price=_price(product, writer, chance),
    )
