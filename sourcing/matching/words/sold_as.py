"""Words for how a part is sold: pairs, sets, kits and packs, and numbers in words. Common practice, no source.

English, German, French, Spanish, Dutch.
"""

from types import MappingProxyType
from typing import Final

from .text import unaccented

PAIRS: Final = (
    *("pair", "pairs", "paar", "paare", "paaren", "paars", "paartje", "paire", "paires", "pares"),
    *("un par", "el par", "par de"),
)
PERHAPS_PAIRS: Final = ("pr",)
"""A pair to the quick reader, a question to the careful one."""

TWINS: Final = ("twin pack", "2er")
"""Two pieces, which need not be fitted as a pair."""

SETS: Final = ("set", "sets", "satz", "sätze", "jeu", "jeux", "juego", "juegos")
KITS: Final = ("kit", "kits", "bausatz", "reparatursatz", "reparatieset", "nécessaire")
ASSORTED: Final = ("bundle", "combo", "assortment")

PACKS: Final = (
    *("pack", "packs", "packet", "pkg", "pkt", "box", "case", "carton", "bag", "lot"),
    *("packung", "karton", "beutel", "paquet", "boîte", "sachet", "paquete", "caja", "bolsa", "lote"),
    *("pak", "doos", "zak"),
)
SHORT_PACKS: Final = ("pk", "bx", "cs", "ct", "bte", "ve", "vpe")
"""Only behind a number and a stroke: '10/pk'. Elsewhere PK is a ribbed belt's section and CT a saw's teeth."""

PIECES: Final = ("pcs", "pieces", "stk", "stück", "pièces", "piezas", "pzas", "uds", "unidades", "stuks")
"""Behind a number they count."""

NUMBERS: Final = MappingProxyType(
    {
        word: number
        for number, words in {
            2: "two zwei deux dos twee",
            3: "three drei trois tres drie",
            4: "four vier quatre cuatro",
            5: "five fünf cinq cinco vijf",
            6: "six sechs seis zes",
            7: "seven sieben sept siete zeven",
            8: "eight acht huit ocho",
            9: "nine neun neuf nueve negen",
            10: "ten zehn dix diez tien",
            12: "twelve zwölf douze doce twaalf",
        }.items()
        for word in words.split()
    }
)
"""A number's word to the number."""

DOZENS: Final = ("dozen", "doz", "dutzend", "dtzd", "douzaine", "docena", "dozijn")
HALF: Final = ("half", "half a", "halbes", "demi", "media")


_NUMBERS: Final = {spelling: number for word, number in NUMBERS.items() for spelling in (word, unaccented(word))}


def number_said(text: str) -> int:
    """'4', 'four' and 'vier' are 4. Raises where it is no number; patterns made of NUMBERS find only such."""
    return _NUMBERS.get(text) or int(text)
