"""What the header words of price sheets mean, in English and German. Exact words only; an unknown one is not guessed.

The words are common practice in the trade, no source.
"""

import re
import unicodedata
from collections.abc import Iterable
from functools import lru_cache

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        number, no., nr., nummer,
        part number, part #, part no, part no., p/n, pn, part, item number, item #, item no, item, item code,
        item id, sku, stock number, stock #, stock no, stock code, product number, product code, product no,
        product id, order number, order no, order code, catalog number, catalogue number, catalog no, cat no, cat #,
        our number, our part number, our part no, our no, supplier number, supplier part number, supplier part no,
        vendor part number, vendor part no, dealer part number, material, material number, article, article number,
        article no, artikel, artikel-nr., artikelnummer, art.-nr., art. nr., artnr, bestell-nr., bestellnummer,
        best.-nr., teilenummer, teile-nr., sachnummer, materialnummer, material-nr., lieferantennummer""",
    "maker number": """
        manufacturer number, manufacturer no, manufacturer #, manufacturer part number, manufacturer part no,
        manufacturer part #, manufacturer's number, manufacturer's part number, mfr number, mfr no, mfr #, mfr part,
        mfr part number, mfr part no, mfr part #, mfr p/n, mfg number, mfg no, mfg #, mfg part, mfg part number,
        mfg part no, mfg part #, mfg p/n, mpn, oem, oem number, oem no, oem #, oem part number, oem part no,
        oem part #, maker number, maker no, maker #, maker part number, maker part no, maker's number,
        maker's part number, maker's no, brand part number, brand part no, make number, make no, herstellernummer,
        hersteller-nr., hersteller-artikelnummer, hersteller artikel-nr., hersteller-teilenummer, herst.-nr.,
        originalnummer, original-nr., oe-nummer, oe-nr., oem-nummer, oem-nr.""",
    "maker": """
        manufacturer, manufacturer name, mfr, mfr name, mfg, mfg name, mfgr, brand, brand name, make, maker,
        maker name, hersteller, herstellername, fabrikat, marke""",
    "description": """
        description, desc, item description, part description, product description, product, product name, name,
        part name, item name, article description, designation, bezeichnung, artikelbezeichnung, beschreibung,
        artikelbeschreibung, benennung, teilebezeichnung, artikeltext""",
    "list price": """
        list, list price, price list, list each, list price each, msrp, rrp, srp, retail, retail price,
        suggested retail, suggested retail price, suggested list, manufacturer list, uvp, listenpreis, liste,
        empf. vk, unverbindliche preisempfehlung, vk, verkaufspreis""",
    "net price": """
        net, net price, price net, net each, net ea, net price each, net unit price, dealer, dealer price,
        dealer net, dealer cost, dealer net price, dealer each, your price, your net, your net price, your cost,
        cost, net cost, cost each, cost price, unit cost, wholesale, wholesale price, trade price, trade net, trade,
        jobber, ek, ek netto, ek-preis, ek-preis netto, netto-ek, ek netto preis, einkaufspreis, nettopreis, netto,
        preis netto, netto preis, nettopreis stück, hek, händlerpreis, händler-ek, ihr preis, ihr ek""",
    "price basis": """
        price per, price basis, per, priced per, price unit, pricing unit, price uom, pricing uom, uom, u/m, u.o.m.,
        unit of measure, unit, unit of sale, sold by, sell unit, preiseinheit, pe, preis pro, preis je, me,
        mengeneinheit, einheit, preisbasis""",
    "currency": "currency, curr, cur, ccy, currency code, währung, whg, währungscode",
    "pack": """
        pack, pack qty, pack quantity, pack size, pk qty, pkg qty, package qty, package quantity, package size, pkg,
        qty per pack, quantity per pack, pieces per pack, pcs per pack, pcs/pack, pcs/pk, qty/pk, qty/pack, std pack,
        standard pack, std pkg, standard package, box qty, box quantity, case qty, case pack, case quantity,
        carton qty, units per pack, vpe, verpackungseinheit, ve, packung, packungsgröße, stück pro packung,
        stück/vpe, verpackungsmenge, gebinde""",
    "order multiple": """
        order multiple, order multiples, multiple, multiples, multiples of, mult, order in multiples of, sold in,
        bestellvielfaches""",
    "minimum": """
        minimum, min, min qty, minimum qty, minimum quantity, min order, min order qty, minimum order,
        minimum order qty, minimum order quantity, moq, min quantity, mindestmenge, mindestbestellmenge,
        mindestabnahme, mindestabnahmemenge, mbm""",
    "stock": """
        stock, in stock, stock qty, stock quantity, stock level, qty in stock, quantity in stock, on hand, qty on hand,
        quantity on hand, qoh, qty available, quantity available, available qty, available quantity, available, avail,
        avail qty, qty avail, availability, inventory, bestand, lagerbestand, lager, verfügbar, verfügbarkeit,
        verfügbare menge, lagermenge, menge verfügbar""",
    "lead time": """
        lead time, leadtime, lead, lt, lead time days, lead days, lt days, lead time (days), lead time working days,
        lead time (working days), lead time weeks, lead time (weeks), delivery time, delivery days,
        ships, ships in, ship time, shipping time, usually ships, availability lead time, days to ship, lieferzeit,
        lieferzeit tage, lieferzeit (tage), lieferzeit in tagen, lieferzeit wochen, lieferzeit (wochen),
        lieferzeit in wochen, lieferfrist, wiederbeschaffungszeit, wbz, wbz tage""",
    "core charge": """
        core, core charge, core deposit, core price, core value, core chg, core cost, core each, core charge each,
        pfand, altteilpfand, altteilepfand, altteilwert, pfandwert, pfandbetrag""",
    "superseded by": """
        superseded by, supersedes to, superseded to, superseding number, superseding part, super to, supersession,
        supersession to, replaced by, replacement, replacement number, replacement part, replacement part number,
        new number, new part number, new part no, new no, new p/n, use instead, sub to, ersetzt durch, nachfolger,
        nachfolgeartikel, nachfolgenummer, neue nummer, neue artikelnummer, ersatz durch, neue nr.""",
    "no longer available": """
        no longer available, nla, discontinued, obsolete, entfällt, entfallen, nicht mehr lieferbar, nml""",
    "note": """
        note, notes, remark, remarks, comment, comments, info, bemerkung, bemerkungen, hinweis, hinweise, anmerkung,
        anmerkungen, kommentar""",
}  # fmt: skip

UNCLEAR = """
    price, prices, unit price, price each, price ea, each price, price/each, sell price, sale price, preis,
    einzelpreis, stückpreis, preis stück, preis/stück, preis je stück, verkaufspreis netto"""
"""Words that could be the shop's net price or the list price: a person says which, once."""

TRADE_CURRENCIES = "USD|EUR|GBP|CAD|AUD|NZD|CHF|SEK|NOK|DKK|PLN|CZK|JPY|CNY|MXN"
"""Codes looked for inside headers and preambles. The full list of ISO 4217 holds ALL, TOP, TRY, CUP: plain words."""

CODE = re.compile(rf"(?<![A-Za-z])({TRADE_CURRENCIES})(?![A-Za-z])")
SIGNS = {"€": "EUR", "£": "GBP"}
"""Signs of one currency. '$' belongs to several, so it tells none."""

ALIASES = {"no": "number", "num": "number", "nbr": "number", "nr": "number", "#": "number", "quantity": "qty"}


def header_key(header: str) -> str:
    """The header without currency, case, spaces and punctuation: 'EK netto EUR' and 'ek-netto (€)' share 'eknetto'."""
    plain = CODE.sub(" ", unicodedata.normalize("NFKC", header))
    words = re.findall(r"[^\W_]+|#", re.sub(r"[$€£]", " ", plain).casefold())
    return "".join(ALIASES.get(word, word) for word in words).replace("nummer", "number")


def _keys(words: str) -> Iterable[str]:
    return (header_key(word) for word in words.split(","))


FIELD_OF: dict[str, Field] = {key: field for field, words in WORDS.items() for key in _keys(words)}
UNCLEAR_KEYS = frozenset(_keys(UNCLEAR))

PLAIN = re.compile(r"[^\w+≥>=&#-]+|_")
BEFORE = r"(?:(?:net|netto|price|preis|unit|dealer|your|cost|ek|staffel|staffelpreis|qty|quantity|menge|each)\s+)*"
AFTER = r"(?:\s*(?:pcs|pc|pieces|ea|each|stk|stück|st|units|price|preis|net))*"
BREAKS = tuple(
    re.compile(rf"{BEFORE}{pattern}{AFTER}")
    for pattern in (
        r"(?P<least>[1-9]\d{0,5})\s*(?:-|to|bis|thru|through)\s*(?P<most>[1-9]\d{0,5})",
        r"(?P<least>[1-9]\d{0,5})\s*(?:\+|(?:and|&|or)\s+(?:up|more|over)|up|plus|und mehr)",
        r"(?:from|ab|≥|>=)\s*(?P<least>[1-9]\d{0,5})",
    )
)
BARE_BREAK = re.compile(rf"(?:qty|quantity|menge|staffel)\s+(?P<least>[1-9]\d{{0,5}}){AFTER}")


@lru_cache(maxsize=4096)
def break_quantity(header: str) -> int | None:
    """From how many pieces a quantity-break column holds: '10-49', '50+', 'Qty 5+', 'ab 10'. None: no such header."""
    plain = CODE.sub(" ", unicodedata.normalize("NFKC", header)).casefold().replace("–", "-").replace("—", "-")
    text = " ".join(PLAIN.sub(" ", plain).split())
    for pattern in (*BREAKS, BARE_BREAK):
        if match := pattern.fullmatch(text):
            least, most = int(match["least"]), match.groupdict().get("most")
            return least if most is None or int(most) >= least else None
    return None


@lru_cache(maxsize=4096)
def field_of(header: str) -> Field | None:
    """What the header means by the dictionary; None where it does not know or the word is unclear."""
    if break_quantity(header) is not None:
        return "net price"
    return FIELD_OF.get(header_key(header))


def is_unclear(header: str) -> bool:
    """Whether the header is a price of which it is not said whose."""
    return header_key(header) in UNCLEAR_KEYS


def known_words(cells: Iterable[str]) -> int:
    """How many different known header words the cells hold."""
    texts = {" ".join(cell.split()) for cell in cells if len(cell) <= 60}
    return len({header_key(text) for text in texts if field_of(text) or is_unclear(text)})


def currencies_named(text: str) -> set[str]:
    """The trade currencies a header or a preamble line names by code or by a sign of one currency only."""
    return set(CODE.findall(text)) | {code for sign, code in SIGNS.items() if sign in text}
