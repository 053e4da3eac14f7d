"""What a price is for: a piece, a pack, a hundred, a foot or a metre; in cells and in headers.

C62, H87, EA, CEN, MIL, DZN, GRO, FOT, MTR, PR and SET are codes of UN/ECE Recommendation 20; XPK, XBX and their like
are those of Recommendation 21 behind an X. KT is left out: Recommendation 20 defines that 'kit' as a tub, barrel or
pail. 'C' for a hundred and 'M' for a thousand are common practice on US price sheets, no source.
"""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from sourcing.basics.currency import is_currency

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of

Unit = Literal["piece", "pack", "foot", "metre"]


class Basis(NamedTuple):
    """A price is for this many of these. A pack's pieces stand in the row's pack column, if anywhere.

    `packed`: the pieces come in one pack ('BX/25').
    """

    count: int  # type: ignore[assignment]  # the word of the trade, though tuples have a method of that name
    unit: Unit
    packed: bool = False


PIECE = Basis(1, "piece")
PACK = Basis(1, "pack")
SINGLE = word_set(
    "each,ea,pc,pcs,piece,pieces,unit,units,c62,h87,nar,xpp,1,one,set,kit,pair,pr,"
    "stk,stück,stueck,st,stck,eh,einheit,satz,paar,"
    "pièce,piece,pièces,pce,pces,unité,unite,u,un,jeu,paire,"
    "ud,uds,unidad,unidades,pieza,piezas,pza,pz,c/u,cada uno,juego,par,"
    "stuk,stuks,eenheid,stel"
)
"""A set, kit or pair is one thing sold under one number."""
COUNTS = {
    **dict.fromkeys(SINGLE, 1),
    **dict.fromkeys(word_set("dozen,doz,dz,dzn,dutzend,dtzd,douzaine,docena,dozijn"), 12),
    **dict.fromkeys(word_set("gro"), 144),
    **dict.fromkeys(word_set("hundred,cen,hundert,cien,ciento,honderd"), 100),
    **dict.fromkeys(word_set("thousand,mil,tsd,tausend,mille,millar,duizend"), 1000),
}
PACKS = word_set(
    "pack,pk,pkg,package,packet,box,bx,case,cs,carton,ctn,ct,bag,bg,xpk,xbx,xct,xpa,xbg,xcs,nmp,"
    "vpe,ve,packung,pck,pkt,paket,karton,beutel,schachtel,"
    "lot,paquet,boîte,boite,bte,sachet,colis,conditionnement,cdt,"
    "paquete,caja,bolsa,envase,bulto,doos,pak,verpakking,zak,zakje"
)
FEET = word_set("foot,feet,ft,',fot,lft,lin ft,linear foot,linear ft,fuß,fuss,pied,pieds,pie,pies,voet")
METRES = word_set(
    "metre,meter,metres,meters,mtr,mtrs,lfm,lfdm,lfd m,lfd. m,laufmeter,mètre,mètres,metro,metros,strekkende meter"
)
LEADING = re.compile(
    r"(?:(?:price|preis|prix|precio|prijs)\s+)?"
    r"(?:per\b|pro\b|je\b|par\b|por\b|p/|/|(?:au|aux|le|la|les|das|al|el|los|las|à la|per de)\s"
    r"|à\s|l'|the\s|voor\s|pour\s)?\s*"
)
COUNTED = re.compile(r"([1-9][0-9]{0,5})(?:[.,]0+)?\s*(.*)")
PACK_WORDS = "|".join(sorted(PACKS, key=len, reverse=True))
OF_PIECES = re.compile(
    rf"(?:{PACK_WORDS})\s*(?:of|à|zu|de|van|mit|met|/)\s*([1-9]\d{{0,5}})|(?:pk|bx|ctn|cs|bg)([1-9]\d{{0,5}})"
    rf"|([1-9]\d{{0,5}})\s?/\s?(?:{PACK_WORDS})"
)
"""'Box of 25', 'BX/25', 'PK10', '25/BX'. '10 pack' may be ten packs."""
PAIRS = frozenset({"pr", "pair", "pairs", "paar", "paire", "paires", "par", "pares"})
PAIR = 2
UNCLEAR = re.compile(r"[0-9]{1,3}[.,][0-9]{3}")


def parse_basis(cells: Sequence[Cell]) -> list[Basis | Bad]:
    """What each price is for. Blank is one piece.

    '/M' is a thousand, '/m' and 'per m' a metre; a bare 'm' may be either and is a problem, and so is a bare 'M' in a
    column without the 'C' or 'E' it goes with on US price sheets.
    """
    letters = {text for cell in cells if len(text := shown_of(cell).strip(" .")) == 1}
    found = parse_column(cells, read_basis)
    if "M" not in letters or letters & {"C", "E"}:
        return found
    is_m = [shown_of(cell).strip(" .") == "M" for cell in cells]
    return [_may_be_metre(cell) if bare else one for cell, bare, one in zip(cells, is_m, found, strict=True)]


def _may_be_metre(cell: Cell) -> Bad:
    return Bad("price-basis-unreadable", found=shown_of(cell))


def read_basis(cell: Cell) -> Basis | Bad:
    """As `parse_basis`, for one cell."""
    shown = shown_of(cell)
    found = basis_of(shown)
    return found or Bad("price-basis-unreadable", found=shown)


def basis_of(shown: str) -> Basis | None:
    """What the text says, None where it is not understood; a text without words is one piece."""
    words = words_of(shown).rstrip(".")
    if shown == "E":  # each, beside C and M: common practice on US price sheets, no source
        return PIECE
    bare = LEADING.sub("", words, count=1).strip(" .")
    if not bare:
        return PIECE if not words.strip("-/ ") else None
    if bare == "cent" and re.match("(?:au|le|par) ", words):
        return Basis(100, "piece")
    if bare in ("m", "c"):
        return _letter(shown.strip(" ./")[-1:], alone=bare == words)
    if match := OF_PIECES.fullmatch(bare):
        return Basis(int(match[1] or match[2] or match[3]), "piece", packed=True)
    return _counted(bare, shown)


def _letter(letter: str, *, alone: bool) -> Basis | None:
    """C, c: a hundred. M: a thousand. m: a metre where 'per' or a slash stands before it."""
    if letter in "Cc":
        return Basis(100, "piece")
    if letter == "M":
        return Basis(1000, "piece")
    return None if alone else Basis(1, "metre")


def _counted(bare: str, shown: str) -> Basis | None:
    if bare in COUNTS:
        return Basis(COUNTS[bare], "piece")
    if unit := _unit(bare):
        return Basis(1, unit)
    if letters := re.fullmatch(r"([cm])\s+(.+)", bare):
        unit = _unit(letters[2])
        count = 100 if letters[1] == "c" else 1000
        return Basis(count, unit) if unit in ("foot", "metre") else None
    match = COUNTED.fullmatch(bare)
    return _with_count(match, shown) if match and not UNCLEAR.fullmatch(bare) else None


def _with_count(match: re.Match[str], shown: str) -> Basis | None:
    count, word = int(match[1]), match[2].strip(" ./")
    if not word or COUNTS.get(word) == 1:
        return Basis(count, "piece")
    if word == "m":
        return Basis(count, "metre") if "m" in shown else None
    unit = _unit(word)
    # '10 pack' may be ten packs or a pack of ten.
    return Basis(count, unit) if unit in ("foot", "metre") else None


def _unit(word: str) -> Unit | None:
    if word in PACKS:
        return "pack"
    if word in FEET:
        return "foot"
    return "metre" if word in METRES else None


IN_TEXT = re.compile(
    r"(?:^|[,;(–—-])[^\S\n]*(?P<said>(?:(?:price[ds]?|sold|preis|prix|precio|prijs) +(?:is +|for +)?)?"
    r"(?:per|by the|pro|je|par|por) +"
    r"(?:[1-9]\d{1,3}(?: ?(?:pcs|pc|pieces|stk|stück))?|hundred|thousand|c|dozen|dz|foot|feet|ft|metre|meter|mtr"
    r"|pair|paar|paire|(?:box|pack|pkg|bag|case|carton) of [1-9]\d*))"
    r"\b(?![^\S\n]+\w)",
    re.IGNORECASE | re.MULTILINE,
)
"""'Nut, price per 100', 'Hose, per foot' in a description; '24 links per foot' is a size."""


IN_TEXT_WORDS = (" per ", "(per ", "\nper ", ",per ", " pro ", " je ", " par ", " por ", " by the ")
"""One of them stands in every such text; looking for them takes a tenth of the pattern's time."""


def said_in_text(cells: Sequence[Cell], whole: str) -> list[str] | None:
    """What each description says its price is for, in its own words, '' mostly; None where none says anything.

    `whole`: all of them as one text in small letters, a line each.
    """
    if not any(word in whole for word in IN_TEXT_WORDS) or not IN_TEXT.search(whole):
        return None
    found = (IN_TEXT.search(cell) if isinstance(cell, str) else None for cell in cells)
    return [match["said"] if match else "" for match in found]


VAGUE = word_set("unit,units,unité,unite,einheit,eh,eenheid,unidad,item,article,artikel,1")
NAMED = re.compile(
    r"[(\[]?\b(?:per|pro|je|par|por|au|aux|le|les|à la|al|el|los|las|the|p)\b\.?\s*(?P<word>[^()\[\]]+)"
    r"|(?<!\d)\s?/\s*(?P<slash>[^()\[\]/]+(?:/u)?)"
)
TAIL = re.compile(
    r"[\s,;:]+(?:(?:in\s+)?(?:(?P<code>[a-z]{3})|us\$|[$€£])"
    r"|net|netto|ht|(?:excl|incl|exkl|zzgl|ohne|hors|sin|zonder)\b.*)$"
)
YEARS = range(1990, 2100)
"""'Price list / 2026' is no price for 2026 pieces."""
COMPOUND = re.compile(
    r"(?:(?P<pack>pack|box|case|carton|vpe|packungs|karton)|(?P<metre>meter|mtr)|(?P<foot>foot|ft))[\s-]?(?:price|preis|prijs)"
)
THOUSAND = re.compile(
    r"\bprice\s*(?:per\s*|/\s*)M\b|^(?!.*(?:preis|prix|precio|prijs|€|eur|chf)).*(?:/\s*|\bper\s+)M\b", re.I
)


def basis_in_header(header: str) -> Basis | None:
    """What a price column's header says its prices are for; None where it says nothing, or only 'per unit'.

    'Price/M' is a thousand in English headers; '/m', and '/M' in the others, a metre: such an offer is compared with
    no other, which is the safe mistake.
    """
    words = words_of(header)
    if words.rstrip(".").endswith((" each", " ea")):
        return PIECE
    if compound := COMPOUND.search(words):
        return PACK if compound["pack"] else Basis(1, "metre" if compound["metre"] else "foot")
    for match in NAMED.finditer(words):
        shown = header[match.start() : match.end()] if len(header) == len(words) else match[0]
        if found := _in_phrase(shown, header):
            return found
    return None


def _in_phrase(shown: str, header: str) -> Basis | None:
    phrase = re.sub(r"^[(\[\s]+", "", shown).strip()
    words = words_of(phrase)
    words = _without_tail(re.sub(r"\b([1-9]\d{0,2})[.,' ](?=000\b)", r"\1", words))
    bare = LEADING.sub("", words, count=1).strip(" .")
    if bare in VAGUE:
        return None
    if bare == "m":
        thousand = re.search(r"M\W*$", phrase[: len(words)]) and THOUSAND.search(header)
        return Basis(1000, "piece") if thousand else Basis(1, "metre")
    found = basis_of(words) if bare else None
    return None if found and found.count in YEARS else found


CENTS = re.compile(r"(?:\(|\bin |/ ?)(p|pence|cents?|cts?|¢)\)?$|\b(pence|cents|centimes)\b")
OTHER_UNITS = word_set(
    "lb,lbs,pound,kg,kilo,gram,litre,liter,ltr,l,gal,gallon,quart,qt,oz,ounce,yd,yard,in,inch,cm,mm,roll,rolle,reel,"
    "spool,coil,rouleau,rollo,rol,bobine,sq ft,m2,m²,pallet,palette,bundle,skid,cft,mft,km,mi,tube,sheet,tafel"
)


def _without_tail(words: str) -> str:
    """The words without a currency, 'net' or 'without tax' behind them."""
    while (tail := TAIL.search(words)) and (not tail["code"] or is_currency(tail["code"].upper())):
        words = words[: tail.start()]
    return words


def unread_unit_in_header(header: str) -> str:
    """The unit a price header names that is none of ours, such as 'kg' or 'roll'; '' where there is none.

    Such prices are not for pieces, so a header that names one is a question.
    """
    if cents := CENTS.search(words_of(header)):
        return cents[1] or cents[2]
    for match in NAMED.finditer(words_of(header)):
        words = _without_tail(match["word"] or match["slash"] or "")
        bare = re.sub(r"^[0-9]+\s*", "", words).strip(" .")
        if bare in OTHER_UNITS:
            return bare
    return ""
