"""Stock columns of one warehouse: 'Stock East', 'WH1 Qty', 'Bestand Lager Nord', 'On hand - Lyon'.

What stands beside the stock word is the warehouse's name, unless it is a word that gives the header another meaning.
The words are common practice, no source.
"""

import re
from functools import lru_cache

from .header_keys import ALIASES, CAMEL, listed, plain_text

STOCK = re.compile(
    r"\b(?:(?:qty|quantity)\s+)?(?:in\s+stock|on\s+hand|en\s+stock|op\s+voorraad|auf\s+lager)(?:\s+qty)?\b"
    r"|\b(?:stock|stk|qoh|soh|onhand|instock|bestand|lagerbestand|inventory|existencias|inventario|voorraad|available|avail"
    r"|verfugbar|verfuegbar|disponible|dispo|beschikbaar|lager|lagermenge)\b",
)
QTY = re.compile(r"\b(?:qty|quantity|menge|quantite|qte|cantidad|cant|aantal)\b")
HOUSE = re.compile(
    r"\b(?:warehouse|whse|wh|branch|depot|store|location|loc|dc|lager|niederlassung|filiale|magasin|entrepot|agence|almacen"
    r"|deposito|sucursal|magazijn|vestiging|standort)\b"
)
FILLERS = frozenset(
    listed("qty quantity menge cantidad aantal pcs pieces units stk stuck at in our de en op im from level the")
)
TOTALS = frozenset(listed("total all gesamt overall company network totaal tout sum summe combined"))
OTHERS = frozenset(
    listed("""
    number id code sku price cost value net list unit units uom date eta due status min max order ordered orders
    incoming reserved bin type group class item items part parts description turn turns last next update updated
    as of note notes weeks week days day month months now soon low out not no non yes limited call special on
    off only while supplies if allocated committed backorder backordered backorders transit expected reorder
    safety age aged minimum maximum box case carton pack packs package pallet inner outer master layer bag skid
    ext extended
    bulk loose drum reel bundle sleeve roll each per pk ctn bx cs break breaks tier from to until up lead time size
    weight width length height discount core return returns sold sales ship shipped shipping usage used required
    requested needed usually ships same today tomorrow pieces nr artikel nummer ort platz preis wert art einheit
    datum stand mindest karton bestell bestellt reserviert verpackung rabatt ab bis prix valeur unite commande
    commandee mini par colis paquet delai precio valor fecha unidad pedido pedida minimo minima caja paquete
    prijs waarde eenheid bestel besteld minimale doos pak korting new old plus page line row model make brand
    maker mfr manufacturer supplier vendor oem ean upc gtin check checked verified firm hold quality grade color
    colour free good damaged scrap open blocked surplus clearance closeout take contact inquire percent rate
    flag indicator level2 price1 text info comment remark multiple increment factor basis currency
    """)
)
LETTERED = re.compile(r"\b(?:lager|warehouse|whse|wh|store|magasin|almacen|magazijn|branch|depot)\b")
"""'Bestand Lager A': one letter names a warehouse only beside the word."""
COMPASS = frozenset(listed("n s e w ne nw se sw"))


@lru_cache(maxsize=16384)
def stock_place(header: str) -> str | None:
    """The warehouse a stock header names, as written; '' for the stock of all; None: no stock header of this kind.

    'Qty' alone counts as a stock word only beside a name: 'Qty Dallas', not 'Qty ordered' or 'Qty per box'.
    """
    header = CAMEL.sub(" ", header)
    plain = " ".join(re.findall(r"[^\W_]+", plain_text(header)))
    if not STOCK.search(plain) and not QTY.search(plain):
        return None
    rest = _rest(plain)
    if rest and set(rest) <= TOTALS:
        return "" if STOCK.search(plain) else None
    lettered = len(rest) == 1 and len(rest[0]) == 1 and rest[0].isalpha() and LETTERED.search(plain)
    if not lettered and (not 1 <= len(rest) <= 3 or not all(map(_is_name, rest)) or not _named(rest, plain)):
        return None
    return _as_written(header, rest, plain)


def _rest(plain: str) -> list[str]:
    """The words that are no stock words. 'Lager' is one only while another word is left: 'Lager Nord'."""
    left = QTY.sub(" ", STOCK.sub(" ", plain)).split()
    return [word for word in left if word not in FILLERS]


def _is_name(word: str) -> bool:
    return (
        word not in OTHERS
        and ALIASES.get(word, word) not in OTHERS
        and (len(word) > 1 or word in COMPASS or word.isdigit())
    )


def _named(rest: list[str], plain: str) -> bool:
    """A name has letters; a bare figure names a warehouse only beside the word: 'Stock WH 1', 'Lager 2'."""
    names = [word for word in rest if not HOUSE.fullmatch(word)]
    if any(not word.isdigit() and not re.fullmatch(r"\d.*[a-z]{1,2}", word) for word in names):
        return True
    return bool(names) and HOUSE.search(plain) is not None and all(len(word) <= 3 for word in names)


def _as_written(header: str, rest: list[str], plain: str) -> str:
    """The name in the header's own letters; the word 'warehouse' stays only where a figure follows: 'WH 1'."""
    names = [word for word in rest if not HOUSE.fullmatch(word)]
    keep = set(rest if all(word.isdigit() for word in names) else names)
    if all(word.isdigit() for word in names) and (house := HOUSE.search(plain)):
        keep.add(house[0])
    return " ".join(word for word in re.findall(r"[^\W_]+", header) if plain_text(word) in keep)


def house_name(header: str) -> str:
    """The header where it is a warehouse word and a name of one or two words; '' otherwise."""
    plain = " ".join(re.findall(r"[^\W_]+", plain_text(header)))
    rest = HOUSE.sub(" ", plain, count=1).split()
    named = HOUSE.search(plain) is not None and 1 <= len(rest) <= 2 and OTHERS.isdisjoint(rest)
    return _as_written(header, plain.split(), plain) if named else ""
