"""Header spellings of five languages and the field each means, and the traps that must mean none.

The spellings are common practice in the trade, no source: written down from memory of price sheets, not from the
program's own lists.
"""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.sheet import Field
from sourcing.sheets.headers.header_keys import keys_of, spellings
from sourcing.sheets.headers.header_words import (
    AMBIGUOUS,
    LANGUAGES,
    NO_FIELD_KEYS,
    OLDER_KEYS,
    SURCHARGE_KEYS,
    UNCLEAR_KEYS,
    WORDS,
    currencies_named,
    field_of,
    header_key,
    is_unclear,
    known_words,
    meaning_of,
)

TABLE: dict[Field, str] = {
    "supplier number": """
        Part Number | PART NO. | Part # | P/N | Item # | Item No. | Item Code | SKU | Stock # | Stock Number
        Catalog No
        Cat. # | Our Part No. | Product Code | Order No. | Supplier Part Number | Part Nbr | Number
        Artikel-Nr. | Artikelnummer | Art.-Nr. | ArtNr | Bestell-Nr. | Bestellnummer | Teilenummer | Teile-Nr
        Sachnummer
        Materialnummer | Artikel Nr | Référence | Réf. | REF | N° article | Code article | Réf. fournisseur
        N° de pièce
        Référence article | Référencia | Referencia | Código | Cód. artículo | N° de artículo | Ref. | Código producto
        Artikelnummer | Bestelnummer | Artikelnr. | Onderdeelnummer | Artikelcode | Bestelcode | Productcode""",
    "maker number": """
        Mfr Part # | Mfg Part No | Manufacturer Part Number | MPN | OEM # | OEM Number | Maker's No.
        Manufacturer's P/N
        Mfr. No. | OEM Part No. | Herstellernummer | Hersteller-Nr. | Herst.-Nr. | OE-Nummer | Originalnummer
        Hersteller Artikelnummer | Réf. fabricant | Référence constructeur | N° OEM | Réf. d'origine
        Référence fabricant
        Ref. fabricante | Referencia original | Código OEM | Referencia fabricante | Fabrikantnummer | OEM-nummer
        Origineel nummer | Artikelnummer fabrikant""",
    "maker": """
        Brand | Make | Manufacturer | Mfr | MFG | Mfr. Name | Hersteller | Marke | Fabrikat | Marque | Fabricant
        Constructeur | Marca | Fabricante | Merk | Fabrikant""",
    "gtin": """
        GTIN | UPC | UPC Code | EAN | EAN-13 | EAN Code | Barcode | Bar Code | GTIN-14 | Strichcode | EAN-Nr.
        Code-barres | Code barre | Gencod | Código de barras | Cód. barras | Streepjescode | EAN-code""",
    "description": """
        Description | Desc. | Item Description | Descr | Part Name | Product | Bezeichnung | Artikelbezeichnung
        Beschreibung | Benennung | Désignation | Designation | Libellé | Descripción | Descripcion | Denominación
        Omschrijving | Artikelomschrijving | Benaming""",
    "list price": """
        List | List Price | LIST PRICE ($) | MSRP | MSRP (USD) | RRP | Retail | Suggested Retail | List $
        List Price Each
        Listenpreis | UVP | UVP EUR | Empf. VK | Listenpreis netto | Prix public | Prix public HT | Prix catalogue
        Prix conseillé | PVP | P.V.P. | PVR | Precio de lista | Tarifa PVP | Precio recomendado | Adviesprijs
        Catalogusprijs | Brutoprijs | Lijstprijs | List price 2026""",
    "net price": """
        Net | Net Price | Net Price USD | Net ($) | Dealer | Dealer Net | Dealer Net 2026 | Dealer Cost | Your Price
        Your Price (EUR) | Your Cost | Cost | Unit Cost | Wholesale | Jobber | Distributor | Net Each | Net/ea
        Net per 100
        Net (excl. VAT) | EK | EK netto EUR | EK-Preis | Einkaufspreis | Nettopreis | Händlerpreis
        Haendlerpreis | Ihr Preis
        EK netto / 100 | Nettopreis zzgl. MwSt. | Nettopreis je 100 Stück | HEK | Prix net | Prix net HT
        Prix d'achat
        Prix achat HT | Votre prix | PA HT | Precio neto | Neto | Coste | Precio de compra | Precio neto sin IVA
        Su precio
        Nettoprijs | Netto | Inkoopprijs | Uw prijs | Nettoprijs excl. btw | Dealerprijs | Dealer Price""",
    "discount code": """
        Disc Code | Discount Code | Discount Group | Price Code | Disc. Grp | Rabattgruppe | Rabattcode | Code remise
        Groupe de remise | Grupo de descuento | Código de descuento | Kortingsgroep | Kortingscode""",
    "discount": """
        Discount | Discount % | Disc % | Disc. % | % off | Rabatt | Rabatt % | Remise | Remise % | Taux de remise
        Descuento
        Dto. | % Descuento | Korting | Korting % | Kortingspercentage""",
    "multiplier": """
        Multiplier | Price Multiplier | Net Multiplier | Multiplikator | Multiplicateur | Multiplicador
        Vermenigvuldiger""",
    "price basis": """
        Price per | UOM | U/M | Unit of Measure | Price Unit | Per | Preiseinheit | PE | Mengeneinheit | Preis pro
        Unité de prix | Unité | Unidad de precio | Unidad | Prijseenheid | Eenheid | Prijs per""",
    "currency": "Currency | Curr. | CCY | Währung | Waehrung | Devise | Moneda | Divisa | Valuta",
    "pack": """
        Pack | Pack Qty | Pkg Qty | Pack Size | Std Pack | Qty per Pack | Box Qty | Case Qty | Pcs/Pack | VPE
        Verpackungseinheit | VE | Conditionnement | Colisage | Qté par carton | Envase | Uds. por caja
        Unidades por caja
        Verpakking | Verpakkingseenheid | Aantal per doos""",
    "order multiple": """
        Order Multiple | Multiples of | Multiple | Sold in Multiples of | Bestellvielfaches | Multiple de commande
        Múltiplo de pedido | Bestelveelvoud""",
    "minimum": """
        MOQ | Min Qty | Minimum Order Qty | Min. Order | Mindestmenge | Mindestbestellmenge | Quantité minimum
        Qté min
        Minimum de commande | Pedido mínimo | Cantidad mínima | Minimum aantal | Minimale afname""",
    "break quantity": """
        Qty From | From Qty | Break Qty | Price Break Qty | Quantity Break | Ab Menge | Staffelmenge | À partir de
        Quantité à partir de | Desde | Cantidad desde | Vanaf | Staffel aantal | Aantal vanaf""",
    "stock": """
        Stock | In Stock | Stock Qty | On Hand | QOH | Qty Avail. | Qty Available | Availability | Inventory
        Stock status
        Bestand | Lagerbestand | Verfügbarkeit | Verfuegbar | Lager | Stock dispo | Disponibilité | Qté en stock
        Dispo
        Existencias | Disponible | Cantidad disponible | Voorraad | Beschikbaar | Op voorraad | Total stock
        Stock (pcs)""",
    "lead time": """
        Lead Time | Leadtime | Lead Time (days) | Delivery Time | Ships In | Lieferzeit | Lieferzeit (Tage)
        Lieferfrist
        Lieferzeit in Wochen | WBZ | Délai | Délai de livraison | Délai (jours) | Plazo de entrega | Plazo (días)
        Levertijd
        Levertijd (dagen)""",
    "core charge": """
        Core | Core Charge | Core Deposit | Core ($) | Pfand | Altteilpfand | Consigne | Caution | Casco
        Importe casco
        Statiegeld""",
    "superseded by": """
        Superseded By | Supersedes To | Replaced By | Replacement | New Part Number | Ersetzt durch | Nachfolger
        Remplacé par | Nouvelle référence | Sustituido por | Reemplazado por | Vervangen door | Opvolger""",
    "no longer available": """
        NLA | Discontinued | Obsolete | No Longer Available | Entfällt | Entfaellt | Nicht mehr lieferbar | Supprimé
        Plus disponible | Obsolète | Descatalogado | Obsoleto | Vervallen | Niet meer leverbaar""",
    "weight": """
        Weight | Wt. | Weight (lbs) | Weight lb | Wt (kg) | Ship Wt | Unit Weight | Gewicht | Gewicht (kg)
        Gewicht in kg
        Poids | Poids (kg) | Peso | Peso kg | Gewicht (g) | Weight oz""",
    "oversize": """
        Oversize | Oversized | Oversize (Y/N) | Sperrgut | Sperrig | Hors gabarit | Encombrant | Voluminoso
        Overmaat""",
    "hazardous": """
        Hazmat | Haz | Hazardous | Hazardous Material | Dangerous Goods | ORM-D | Hazmat (Y/N) | Gefahrgut
        Gefahrstoff
        Matière dangereuse | Mercancía peligrosa | Gevaarlijke stof""",
    "origin": """
        Country of Origin | COO | C.O.O. | Origin | Made in | Ursprungsland | Ursprung | Pays d'origine | Origine
        País de origen | Origen | Land van herkomst | Herkomst""",
    "tariff code": """
        HS Code | HTS | HTS Code | HTS # | Tariff No. | Tariff Code | Commodity Code | Zolltarifnummer | Zolltarif-Nr.
        Code douanier | Nomenclature douanière | Partida arancelaria | Código arancelario | Goederencode | HS-code""",
    "valid from": """
        Effective Date | Valid From | Eff. Date | Effective | Gültig ab | Gueltig ab | Valable à partir de
        Valable dès le
        Date d'effet | Válido desde | Vigente desde | Geldig vanaf | Ingangsdatum""",
    "valid to": """
        Expires | Valid Until | Valid To | Expiration Date | Gültig bis | Valable jusqu'au | Date de fin
        Válido hasta
        Vencimiento | Geldig tot | Geldig t/m""",
    "note": """
        Note | Notes | Remarks | Comment | Bemerkung | Hinweis | Anmerkungen | Remarque | Commentaire
        Observaciones | Nota
        Opmerking | Opmerkingen""",
}  # fmt: skip
CASES = [(text.strip(), field) for field, lines in TABLE.items() for text in lines.replace("\n", "|").split("|")]
SPELLED = [(text, field) for text, field in CASES if text]


def test_the_table_is_long_enough() -> None:
    assert len(set(SPELLED)) >= 300


@pytest.mark.parametrize(("header", "field"), SPELLED)
def test_header_words(header: str, field: Field) -> None:
    assert field_of(header) == field


@pytest.mark.parametrize(
    "header",
    ["Price", "Prices", "Unit price", "Price each", "Price (USD)", "Amount", "Rate", "New price", "Price/C",
    "Price 2026",
     "Price per 100", "Price 1", "Price 2", "Price A", "Level 2", "Net B", "Staffel 2", "Sale price", "Our price",
     "Price excl. VAT", "Preis", "Einzelpreis", "Preis je 100 Stück", "Preis pro 100", "Stückpreis", "Bruttopreis",
     "VK netto", "Neuer Preis", "Prix", "Prix unitaire", "PU HT", "Prix de vente", "Tarif", "Prix HT", "Precio",
     "Precio unitario", "Precio sin IVA", "P.V.", "Importe", "Prijs", "Stuksprijs", "Prijs per stuk",
     "Prijs excl. btw",
     "Verkoopprijs"],
)  # fmt: skip
def test_a_price_that_says_not_whose_is_unclear(header: str) -> None:
    assert (field_of(header), is_unclear(header)) == (None, True)


@pytest.mark.parametrize(
    "header",
    ["Net incl. VAT", "Price incl. VAT", "Your price (inc. GST)", "UVP inkl. MwSt.", "Preis inkl. MwSt", "EK brutto",
     "Prix TTC", "Prix public T.T.C.", "Precio con IVA", "PVP IVA incluido", "Prijs incl. btw",
     "Nettoprijs incl. btw",
     "Net price with tax", "10+ incl. VAT"],
)  # fmt: skip
def test_a_price_with_tax_is_never_taken(header: str) -> None:
    assert (field_of(header), meaning_of(header).why) == (None, "a price with tax")


@pytest.mark.parametrize(
    "header",
    ["Old price", "Previous price", "Last price", "Old Net", "Previous List", "Last cost", "Alter Preis",
    "Nettopreis alt",
     "Ancien prix", "Dernier prix", "Precio anterior", "Último precio", "Oude prijs", "Vorige prijs",
     "Old Net Price (USD)"],
)  # fmt: skip
def test_an_older_price_is_never_taken(header: str) -> None:
    assert (field_of(header), is_unclear(header), meaning_of(header).why) == (None, False, "an older price")


@pytest.mark.parametrize(
    "header", ["Tariff surcharge", "Surcharge", "Teuerungszuschlag", "Supplément", "Recargo", "Toeslag"]
)
def test_a_charge_on_top_of_the_price_is_told(header: str) -> None:
    assert (field_of(header), meaning_of(header).why) == (None, "a charge on top of the price")


@pytest.mark.parametrize(
    "header",
    ["", "10", "2026", "Page", "Colour", "Category", "Model", "Model Number", "Qty", "Quantité", "Menge", "Mult",
    "Disc",
     "Net %", "List %", "Cost %", "Price change %", "Discount $", "Discount (EUR)", "Min order ($)", "Stock USD",
     "Margin",
     "Net weight $", "List 10+", "List 10-49", "MSRP 10+", "Dealers", "Lists", "Parts", "Brand code", "Supplier",
     "Vendor code",
     "Lieferant", "Lieferantennummer", "Código proveedor", "Code fournisseur", "Stock date", "Tariff", "Net terms",
     "Line total", "Extended price", "Gesamtpreis", "Total", "Qty ordered", "Order qty", "Serial number", "Phone no.",
     "Net per kg", "Price per roll", "Cost center", "List date", "Case UPC count", "Netto-Fläche", "Core date",
     "Replacement cost group", "Box price", "Height", "Ht", "Length (mm)"],
)  # fmt: skip
def test_traps_mean_nothing(header: str) -> None:
    assert field_of(header) is None


def test_no_word_has_two_meanings() -> None:
    meanings: dict[str, set[str]] = {}
    for field, lists in WORDS.items():
        for key in keys_of(*lists):
            meanings.setdefault(key, set()).add(field)
    sets = {"unclear": UNCLEAR_KEYS, "older": OLDER_KEYS, "surcharge": SURCHARGE_KEYS, "other": NO_FIELD_KEYS}
    for name, keys in {**sets, "ambiguous": AMBIGUOUS.keys()}.items():
        for key in keys:
            meanings.setdefault(key, set()).add(name)
    assert {key: names for key, names in meanings.items() if len(names) > 1} == {}


def test_every_language_has_words_for_every_field() -> None:
    for language in LANGUAGES:
        assert language.WORDS.keys() == WORDS.keys(), language.__name__


def test_word_lists_are_read_as_written() -> None:
    assert list(spellings("a|b_c d|-, größe")) == ["a d", "a", "b c d", "b c", "größe", "groeße"]


def test_case_accents_and_punctuation_do_not_count() -> None:
    assert header_key("Réf. d’origine") == header_key("REF D'ORIGINE") == header_key("ref d origine")
    assert header_key("N° d'article") == header_key("No. d'article") == header_key("nº d'article")
    assert header_key("Part #") == header_key("PART_NO.") == header_key("part nummer")


@pytest.mark.parametrize(
    ("text", "codes"),
    [("EK netto EUR", {"EUR"}), ("Net (USD)", {"USD"}), ("Netto €", {"EUR"}), ("Net $", set()), ("ALL PRICES", set()),
     ("Net (US$)", {"USD"}), ("Net C$", {"CAD"}), ("Net CA$", {"CAD"}), ("Net A$", {"AUD"}),
     ("Prix net Euro", {"EUR"}),
     ("Precio euros", {"EUR"}), ("Netto CHF", {"CHF"}), ("Preis kr", set()), ("Net dollar", set()),
     ("Net usd", {"USD"}),
     ("CAD drawing", {"CAD"}), ("cad drawing", set()), ("US dollars", {"USD"}), ("Price/C $", set())],
)  # fmt: skip
def test_currencies_a_header_names(text: str, codes: set[str]) -> None:
    assert currencies_named(text) == codes


def test_known_words_are_counted_once_and_need_no_second() -> None:
    cells = ["Part Number", "PART NO.", "Net", "Price", "Colour", "12.50", "x" * 200]
    assert known_words(cells) == 3
    rows = [[f"NW-{n}", f"Belt, auger drive {n}", f"{n}.50", str(n)] for n in range(1000)]
    started = time.perf_counter()
    assert sum(map(known_words, rows)) == 0
    assert time.perf_counter() - started < 2


@given(st.text(max_size=70))
def test_no_header_text_crashes_it(header: str) -> None:
    meaning = meaning_of(header)
    assert meaning.field or not meaning.place
    currencies_named(header)
