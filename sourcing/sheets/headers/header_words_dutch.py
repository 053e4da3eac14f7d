"""Dutch header words of price sheets, as `header_words_english` writes them. Common practice, no source.

'Bruto' is the list price before the dealer's discount; 'adviesprijs' and 'verkoopadviesprijs' are the list price too.
"""

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        artikel|bestel|onderdeel|product|catalogus|ons_artikel|materiaal|lev-art|art number, onderdeelnummer,
        artikelnr, bestelnr, onderdeelnr, productnr, leveranciersartikelnummer, leverancier artikelnummer,
        leverancier artnr, artikelcode, bestelcode, productcode, onderdelennummer, onze referentie, ons artnr,
        lev artnr, artikelnummer leverancier, artikelref, leveranciersartikelnr""",
    "maker number": """
        fabrikant|fabrikants|fabrikantsartikel|fabrieks|origineel|orig|origineel_onderdeel|
        fabrikant_artikel|fabrikant_onderdeel|oe|oem number, fabrikantnr, fabrieksnr, artikelnummer fabrikant,
        onderdeelnummer fabrikant, origineelnummer, artikelcode fabrikant, oemnr, referentie fabrikant,
        fabrikantartikelnummer,
        fabr nr""",
    "maker": "fabrikant, merk, merknaam, fabrikantnaam, producent, naam fabrikant, fabrikaat, merk fabrikant",
    "gtin": """
        streepjescode, ean-code, barcodenummer, ean-nummer, ean-barcode, gtin-code, eannr, streepjes code, ean stuk""",
    "description": """
        omschrijving, beschrijving, artikelomschrijving, productomschrijving, onderdeelomschrijving, benaming,
        productnaam, artikelnaam, omschrijving artikel, naam, omschr, artikel omschrijving, product omschrijving,
        omschrijving 1, artikelbenaming, onderdeelnaam""",
    "list price": """
        adviesprijs, verkoopadviesprijs, consumentenadviesprijs, catalogusprijs, lijstprijs, brutoprijs, bruto prijs,
        winkelprijs, consumentenprijs, adviesverkoopprijs, particuliere prijs, aanbevolen verkoopprijs,
        prijs bruto, bruto stuksprijs, richtprijs, verkoopadvies, bruto lijstprijs, advies verkoopprijs""",
    "net price": """
        nettoprijs, netto prijs, netto, prijs netto, inkoopprijs, uw prijs, dealerprijs, dealer prijs, dealer netto,
        netto inkoopprijs, inkoop, uw nettoprijs, uw netto prijs, uw inkoopprijs, kostprijs, nettoprijs per stuk,
        netto stuksprijs, netto per stuk, inkoopprijs netto, handelsprijs, groothandelsprijs, netto inkoop,
        nettoprijzen, wederverkopersprijs, uw netto, inkoopprijs per stuk, uw dealerprijs, stuksprijs netto,
        dealernetto, inkp""",
    "discount code": """
        kortingsgroep, kortingscode, kortingsklasse, kortinggroep, korting groep, korting code, prijsgroep, prijscode,
        rabatgroep, kortingsletter""",
    "discount": """
        korting, kortingspercentage, kortingsperc, korting in, rabat, korting percentage, uw korting, handelskorting,
        dealerkorting,
        kort, krt, kort %, krt %""",
    "multiplier": "vermenigvuldiger, vermenigvuldigingsfactor, multiplicator, prijsvermenigvuldiger",
    "price basis": """
        prijseenheid, prijs per, eenheid, verkoopeenheid, prijs eenheid, prijsbasis, maateenheid, prijs per eenheid,
        meeteenheid, eenh, hoeveelheidseenheid, prijs per aantal, eenheid prijs""",
    "currency": "valuta, munteenheid, muntsoort, valutacode, munt, valuta code",
    "pack": """
        verpakking, verpakkingseenheid, verpakkingsgrootte, verpakkingsaantal, verpakkingshoeveelheid,
        stuks per verpakking|doos|pak|karton|zak, aantal per verpakking|doos|pak|karton, doosinhoud, verp,
        verp eenheid, verp eenh, verpakt per, per verpakking, per doos, verpakking stuks, aantal in verpakking,
        omdoos,
        per pak""",
    "order multiple": """
        bestelveelvoud, veelvoud, bestellen per veelvoud van, veelvoud van, veelvouden van, bestellen in veelvoud van,
        bestelstap, afname per veelvoud, besteleenheid veelvoud|-, per veelvoud""",
    "minimum": """
        minimum bestelhoeveelheid, minimale bestelhoeveelheid, minimumaantal, minimum aantal, minimale afname,
        min aantal, minimum afname, minimumafname, min bestelaantal, minimaal, minimale hoeveelheid, min afname,
        minimum bestelaantal, minimumbestelling, minimale bestelling, minimale bestelgrootte, min hoeveelheid,
        minimumhoeveelheid,
        min bestel""",
    "break quantity": """
        vanaf, staffel aantal, vanaf aantal, staffelaantal, aantal vanaf, staffel vanaf, staffelhoeveelheid,
        vanaf stuks, staffelgrens, hoeveelheid vanaf, vanaf hoeveelheid, prijsstaffel aantal""",
    "stock": """
        voorraad, beschikbaar, beschikbaarheid, op voorraad, voorraad aantal, beschikbare voorraad, voorraadaantal,
        beschikbaar aantal, voorraadstatus, vrije voorraad, aantal beschikbaar, magazijnvoorraad, actuele voorraad,
        aantal op voorraad, voorraad stuks, voorraadstand, totale voorraad, voorraadniveau, voorraad totaal, vrd,
        leverbaar,
        vrrd""",
    "lead time": """
        levertijd, leveringstermijn, levertermijn, levertijd dagen|in_dagen|weken|in_weken|werkdagen|in_werkdagen,
        doorlooptijd, leverbaar binnen, leveringstijd, levertijden, lev tijd, levering, verzendtijd, levering binnen""",
    "core charge": """
        statiegeld, inruilwaarde, ruilwaarde, cassatiewaarde, borg, borgsom, inleverwaarde, emballage borg,
        ruildeel borg, ruilstatiegeld, inruil statiegeld, statiegeld per stuk""",
    "superseded by": """
        vervangen door, opvolger, nieuw nummer, nieuw artikelnummer, vervangend artikel, vervangt door,
        opgevolgd door, vervangingsnummer, vervangend nummer, vervangend artikelnummer, nieuw artnr,
        vervangen door artikel, opvolgend artikel, vervangingsartikel, nieuw onderdeelnummer""",
    "no longer available": """
        vervallen, niet meer leverbaar, uitgefaseerd, nml, niet meer verkrijgbaar, uit assortiment, einde levensduur,
        niet meer leverbaar ja nee""",
    "weight": """
        gewicht, gewicht per stuk, nettogewicht, brutogewicht, netto gewicht, bruto gewicht, stuksgewicht, gewicht in,
        gewicht stuk""",
    "package length": """
        verpakkingslengte, pakketlengte, dooslengte, verzendlengte, lengte verpakking|pakket|doos|verpakt""",
    "package width": """
        verpakkingsbreedte, pakketbreedte, doosbreedte, verzendbreedte, breedte verpakking|pakket|doos|verpakt""",
    "package height": """
        verpakkingshoogte, pakkethoogte, dooshoogte, verzendhoogte, hoogte verpakking|pakket|doos|verpakt""",
    "package dimensions": """
        verpakkingsafmetingen|pakketafmetingen|doosafmetingen|verpakkingsmaten l_x_b_x_h|-,
        afmetingen|maten verpakking|pakket|doos|verpakt|l_x_b_x_h, lengte x breedte x hoogte""",
    "oversize": "overmaat, bovenmaats, volumineus, overmaats, extra groot, grote zending, buitenmaats",
    "hazardous": """
        gevaarlijke stof, gevaarlijke stoffen, gevaarlijk, gevaarlijke goederen, adr, gevarengoed, gevaarlijk goed,
        gevaarlijk product, gevaarlijke stof ja nee""",
    "returnable": """
        retourneerbaar, retour mogelijk|toegestaan, te retourneren, niet retourneerbaar, geen retour,
        retourneerbaar ja_nee""",
    "origin": """
        land van|v herkomst, herkomst, land van oorsprong, oorsprong, oorsprongsland, herkomstland, herkomst land,
        gemaakt in""",
    "tariff code": """
        goederencode, hs-code, gn-code, douanecode, taric-code, goederennummer, douanetarief code, statistieknummer,
        statistiek nr, intrastat nummer, hs nummer, tariefnummer, cbs nummer, cbs-code, goederen code""",
    "valid from": """
        geldig vanaf, ingangsdatum, geldig van, geldig per, prijs geldig vanaf, datum ingang, geldigheid vanaf,
        vanaf datum, ingang, geldig m.i.v., prijzen geldig vanaf""",
    "valid to": """
        geldig tot, geldig t/m, vervaldatum, einddatum, geldig tot en met, geldigheid tot, prijs geldig tot,
        tot datum, prijs geldig t/m, prijzen geldig tot, geldig t m""",
    "note": """
        opmerking, opmerkingen, notitie, notities, toelichting, bijzonderheden, commentaar, info, aantekening, opm""",
}  # fmt: skip

WEAK_NUMBERS = "nummer, artikel, referentie, code, onderdeel"

UNCLEAR = """
    prijs, prijzen, stuksprijs, prijs per stuk, eenheidsprijs, verkoopprijs, prijs stuk, prijs/stuk, bedrag,
    nieuwe prijs, huidige prijs, basisprijs, tarief, prijs p/st, prijs per st, prijs excl, prijs p st, actieprijs,
    vkp, speciale prijs, stukprijs, klantprijs, prijs ex, netto verkoopprijs, verkoopprijs netto"""

OLDER = """
    oude prijs|nettoprijs|inkoopprijs|adviesprijs|brutoprijs, vorige prijs|nettoprijs|inkoopprijs,
    laatste prijs|inkoopprijs, prijs oud, netto oud, prijs vorig jaar, eerdere prijs, vorige inkoopprijs,
    inkoopprijs oud, bruto oud"""

SURCHARGE = """
    toeslag, brandstoftoeslag, grondstoftoeslag, prijstoeslag, materiaaltoeslag, verwijderingsbijdrage, meerprijs,
    milieutoeslag, metaaltoeslag"""

NO_FIELD = """
    model, kleur, lengte, breedte, hoogte, pagina, maat, type, groep, productgroep, artikelgroep, categorie,
    afbeelding, foto, totaal, totaalprijs, aantal besteld, besteld aantal, datum, leverancier, klant, klantnummer,
    positie, regel, serienummer, factuurnummer, tekeningnummer, magazijnlocatie, locatie, doorsnede, diameter,
    toepassing, gebruik, marge, hoofdgroep, subgroep"""
