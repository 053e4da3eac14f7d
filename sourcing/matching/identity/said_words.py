"""Words in which sheets and lists say how a part is made and sold, in five languages. Common practice, no source.

English, German, French, Spanish, Dutch. Patterns are matched against text in lower case without accents. Generic words
only: no letter of a belt's designation says its cord (K means an aramid cord, a ribbed section or a pulley series).
"""

import re
from typing import Final

from ..words.other_things import FOR, IN_PLACE_OF
from ..words.sides import ALSO_STRAIGHT, CHAIN_WORDS, LEFT, RIGHT, SHORT_LEFT, SHORT_RIGHT, SIDE_OF_IT
from ..words.sold_as import KITS, NUMBERS, PAIRS, PERHAPS_PAIRS, PIECES, SETS
from ..words.text import any_of

Words = tuple[tuple[str, "re.Pattern[str]"], ...]


def _words(**patterns: str) -> Words:
    return tuple((value, re.compile(rf"\b(?:{pattern})")) for value, pattern in patterns.items())


_FABRIC: Final = (
    r"(?![ /-]*(?:and )?(?:cotton|fabric|cover|jacket|wrap(?!ped)|gewebe|baumwoll|tissu|coton|tejido|doek|katoen))"
)

CORD: Final = _words(
    aramid=rf"(?:para)?aramid\w*\b{_FABRIC}",
    polyester=rf"pol[yi]ester\w*\b{_FABRIC}",
    glass=r"glass? ?-?(?:fib(?:re|er)s?|faser\w*|vezel\w*)|fib(?:re|er)glass\w*|fibre de verre|fibra de vidrio",
    steel=r"steel[ -]cords?\b|stahl(?:cord|zug|litze)\w*|cables? d.?acier|cable de acero|staalkoord\w*",
    carbon=r"carbon[ -]?(?:cord|fib(?:re|er)|faser|vezel)\w*|fibre de carbone|fibra de carbono",
)

COVER: Final = _words(
    wrapped=r"(?:fully |fabric )?wrapped\b|fabric[ -]covered\b|ummantelt\w*|umhullt\w*"
    r"|envelopp?ees?\b|enrobees?\b|gainees?\b|envuelt[oa]s?\b|forrad[oa]s?\b|omwikkeld\w*|omhuld\w*|ommanteld\w*",
)
_RAW: Final = (
    r"raw[ -]?edge[ds]?\b|cut[ -]edge[ds]?\b|flankenoffen\w*|flancs (?:nus|ouverts|vifs)\b|flancos abiertos\b"
    r"|(?:rauwe|open|naakte) flank\w*|flankopen\w*"
)
COVER_WORDS: Final[Words] = (*COVER, ("raw edge", re.compile(rf"\b(?:{_RAW})")))

COGS: Final = _words(
    cogged=r"cogged\b|notched\b|mou?lded[ -](?:notch|cog)\w*|(?:form)?gezahnt\w*|formverzahnt\w*|verzahnt\w*"
    r"|crante[es]?s?\b|dentad[oa]s?\b|getande?\b",
    plain=r"smooth[ -](?:back|bottom|sided?)\b|without (?:cogs|notches)\b|unnotched\b|uncogged\b|ohne zahne\b"
    r"|unverzahnt\w*|sans crans\b|sin dientes\b|zonder tanden\b",
)

_NOT_THREAD: Final = r"(?![ -]*(?:angle[ds]?|away|over)\b)"

_HAND: Final = r"(?:[ -]?hand(?:ed)?)?(?:[ -]?side)?"

SIDE: Final = _words(
    left=rf"(?:left{_HAND}|{any_of(LEFT)}|(?<!\d-){any_of(SHORT_LEFT)}|l/h|l\.h\.?)\b{_NOT_THREAD}",
    right=rf"(?:right{_HAND}|{any_of(RIGHT)}|(?<!\d-){any_of(SHORT_RIGHT)}|r/h|r\.h\.?"
    rf"|{any_of(SIDE_OF_IT)} {any_of(ALSO_STRAIGHT)})\b{_NOT_THREAD}",
)

CHAIN_LINKS: Final = re.compile(rf"\b(?:\d+|{any_of(CHAIN_WORDS)}|with|of)[ -]+links\b")
"""'44 links' of a chain are no left side."""

THREAD: Final = re.compile(
    r"^[ -]*(?:hand )?(?:thread\w*|gewinde\w*|filet\w*|rosca\w*|(?:schroef)?draad\w*|turn|rotation)\b"
)
"""After a side: a thread or a turning direction, not the side the part sits on."""

EITHER_SIDE: Final = re.compile(
    r"\b(?:either|both) (?:side|hand)s?\b|\breversible\b|\bbeidseitig\w*|\bdes deux cotes\b|\bambos lados\b"
    r"|\bbeide zijden\b"
)

_COUNT: Final = rf"\d{{1,2}}|{any_of(NUMBERS)}"
_SET: Final = any_of(SETS, ("kit", "kits"))
_NO_SCREW: Final = r"(?! ?-?(?:screw|bolt|collar|nut|pin)s?\b)"

SET_OF: Final = re.compile(
    rf"\b(?P<set>{_SET})(?: of | von | zu je | zu | de | van | a |/| ?x ?|-)(?P<n>{_COUNT})\b"
    rf"|\b(?P<m>{_COUNT})[ -]?(?:er|pcs?|pieces?|tlg|teilig(?:e[rs]?)?|st|delige?)?\.?[ -]{{1,2}}(?P<set2>{_SET})\b"
    rf"{_NO_SCREW}"
    rf"|\b(?P<set3>pack)s? of (?P<k>{_COUNT})\b"
    rf"|\b(?P<set4>{_SET}),? ?\(?(?P<j>{_COUNT})[ -]?{any_of(PIECES)}(?![^\W_])"
)
"""'set of 2', 'set/2', 'jeu de 2', '3er-Satz', '2 pc set', 'pack of 2', 'Satz 2 Stück', 'set (2 pcs)'."""

ORDER_SO_MANY: Final = rf"(?<!min )(?<!min\. )(?<!minimum )\border (?:{_COUNT})\b(?! ?(?:or|and|\+|more))"
"""'(order 2)': what is sold is one of them. A least quantity is none."""

SHAPE: Final[Words] = (
    ("matched set", re.compile(r"\b(?<!colour )(?<!color )(?<!colour-)(?<!color-)matched(?: (?:set|pair)s?)?\b(?! to\b)"
                               r"|\bsatzkonstant\w*|\b(?:aufeinander )?abgestimmt\w*|\bappariee?s?\b"
                               r"|\bemparejad[oa]s?\b|\bigualad[oa]s?\b|\b(?:op elkaar )?afgestemde?\b")),
    ("kit", re.compile(rf"\b{any_of(KITS)}\b")),
    ("pair", re.compile(rf"\b{any_of(PAIRS)}\b")),
    ("each", re.compile(r"\beach\b|\bea\b|\bloose\b|\bsingly\b|\bsold single\b|\bsingle belt\b|\bunmatched\b"
                        rf"|{ORDER_SO_MANY}|\beinzeln\w*|\bpro stuck\b|\ba l.?unite\b|\bpor unidad\b|\bsuelt[oa]s?\b"
                        r"|\bper stuk\b")),
)  # fmt: skip

OPEN_SET: Final = re.compile(rf"\b(?:{any_of(SETS, PERHAPS_PAIRS)}|\w+satz)\b{_NO_SCREW}")
"""A set without a count, or 'pr': a question. Words that only end in -satz are told apart by NO_SET."""

NO_SET: Final = re.compile(r"\b(?:er|ein|zu|ab|an|auf|be|um|ver|vor|grund)satz\b")

DENIED: Final = re.compile(
    r"(?:\b(?:not?|non|without|w/o|never|ohne|nicht|kein\w{0,2}|sans|pas|sin|zonder|geen|niet|nie)\b(?![.:#])"
    r"[ -]*(?:(?:an?|any|in|of|de|d.|un|une|een|ein\w{0,2}|the|supplied|sold|verkauft|as)[ -]+){0,3})$"
)
"""Before a word: it is denied ('not matched', 'non-aramid', 'ohne Aramid')."""

REFERRED: Final = re.compile(
    rf"(?:\b(?:{any_of(IN_PLACE_OF)}|instead of|in place of|similar to|like)\b[ -]+(?:\w+[ -]+)?"
    rf"|\b(?:{any_of(FOR)}|from|one of|half of|part of|aus|per)\b[ -]+"
    r"(?:an?|the|de|een|ein\w{0,2}|une?)?[ -]*)$"
)
"""Before a word: it speaks of another thing ('replaces aramid', 'for a pair'). A question, never an answer."""

LOOKS: Final = re.compile(r"^[ -]*(?:type|style|look|like|optional|option|on request|auf wunsch|imitat\w*)\b|^ ?\?")
"""After a word: the word is not meant outright ('aramid type')."""

PACKING: Final = re.compile(r"(?:\b(?:shrink|bubble|gift|plastic|individually|singly|foil|single|paper)[ -]*)$")
"""Before 'wrapped': its packing, not its cover."""

GLUED_SIDE: Final = re.compile(r"\d[ -]?(?P<side>[LR])H?$")
"""A letter at the end of a number: perhaps a side, perhaps not."""

LONE_SIDE: Final = re.compile(
    r"(?:^|[\s,;(/-])(?P<side>[LR])(?:[\s,;)]|$)|(?<=\d)-?(?P<glued>[LR])H\b|\b\d+-?(?P<last>[LR])\b"
)
"""A letter that stands alone or on a number in a description: a question too."""
