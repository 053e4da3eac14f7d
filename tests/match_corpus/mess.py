"""What happens to text on its way into a catalogue: slips of typing, short forms, entities, marks, cuts."""

from html import escape

from tests.match_corpus.chance import Chance

SHORT_FORMS = {
    "assembly": ("assy", "asm", "ASSY."), "with": ("w/",), "without": ("w/o",), "stainless": ("SS", "stnls"),
    "black": ("blk",), "white": ("wht",), "replacement": ("repl.", "replcmt"), "rechargeable": ("rechg", "rechrg"),
    "wireless": ("wrls", "wless"), "capacity": ("cap.", "cpcty"), "cartridge": ("cart", "crtg", "ctg"),
    "carburetor": ("carb", "carbu"), "bearing": ("brg", "brng"), "pulley": ("pul", "plly"), "digital": ("dig.", "dgtl"),
    "portable": ("port.", "prtbl"), "system": ("sys", "syst"), "speaker": ("spkr",), "camera": ("cam",),
    "television": ("TV",), "adjustable": ("adj.", "adj"), "heavy duty": ("HD", "hvy duty"), "engine": ("eng",),
    "starter": ("strtr", "start."), "and": ("&", "+"), "remote control": ("remote", "RC"), "filter": ("fltr", "filt"),
    "hydrostatic": ("hydro",), "refrigerator": ("refrig", "fridge"), "spring": ("sprg",),
    "electric": ("elec", "elect."),
    "magnetic": ("mag",), "count": ("ct",), "laminated": ("lam.",), "standard": ("std",), "cable": ("cbl",),
}  # fmt: skip
MARKETING = (
    "new", "premium", "best value", "genuine", "original", "high performance", "professional grade",
    "great for home use",
    "free shipping", "limited warranty", "1-year warranty", "factory sealed", "retail packaging", "top quality",
    "as seen in stores", "energy saver", "easy to use", "all-in-one solution", "for home and office", "sold each",
    "brand new in box", "bulk", "OEM", "exclusive", "hot deal", "customer favorite", "value bundle", "stylish design",
    "ultra slim", "durable construction", "discontinued by manufacturer", "newest model", "made to last", "heavy use",
    "package contents 1", "ready to ship", "in stock", "special order", "unit", "item", "model", "series", "color",
)  # fmt: skip


def slip(word: str, chance: Chance) -> str:
    """A word mistyped: neighbours swapped, a letter lost, doubled or wrong."""
    at = chance.number(1, len(word) - 2)
    kind = chance.number(1, 4)
    if kind == 1:
        return word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    if kind == 2:
        return word[:at] + word[at + 1 :]
    if kind == 3:
        return word[: at + 1] + word[at:]
    return word[:at] + chance.letters(1).lower() + word[at + 1 :]


def mistyped(text: str, chance: Chance) -> str:
    """One slip in a word of letters only; numbers are damaged elsewhere, and on purpose."""
    words = text.split(" ")
    places = [at for at, word in enumerate(words) if len(word) > 4 and word.isalpha()]
    if places:
        at = chance.pick(places)
        words[at] = slip(words[at], chance)
    return " ".join(words)


def shortened(text: str, share: float, chance: Chance) -> str:
    """Words by their short forms, each with that chance."""
    for word, forms in SHORT_FORMS.items():
        for known in (word, word.capitalize()):
            if f" {known} " in f" {text} " and chance.odds(share):
                text = f" {text} ".replace(f" {known} ", f" {chance.pick(forms)} ").strip()
    return text


def dressed(text: str, maker: str, chance: Chance) -> str:
    """Entities, signs and blanks as they come out of web shops and word processors."""
    kind = chance.number(1, 8)
    if kind <= 3:
        return escape(text).replace("&#x27;", "&#39;")
    if kind == 4 and maker and maker in text:
        return text.replace(maker, maker + chance.pick(("®", "™", "&trade;", "(R)")), 1)
    if kind == 5:
        return text.replace('"', chance.pick(("”", "″", "&#34;", "''"))).replace(" x ", " × ")
    if kind == 6:
        return text.replace(" - ", " – ").replace("-", chance.pick(("‑", "–")), 1)
    if kind == 7:
        return text.replace(" ", " ", 1).replace(" ", "  ", 1)
    return text.replace("é", "e") + chance.pick((" *", " !", ".", ",", " &nbsp;", " <br>"))


def cut(text: str, length: int) -> str:
    """The first so many characters, as a field of that width keeps them."""
    return text if len(text) <= length else text[:length].rstrip()
