"""German header words of price sheets, as `header_words_english` writes them. Common practice, no source.

Umlauts may stand as 'ü', 'u' or 'ue'. 'Verkaufspreis' and 'VK' are what the dealer asks of his customer.
"""

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        artikel|art|bestell|best|teile|teil|sach|material|ident|produkt|waren|lieferantenartikel|lief-art|
        katalog|kat|unsere_artikel|unsere|bestell-artikel number, artikelnummern, artnr, artikelnr, bestellnr, bestnr,
        teilenr, materialnr, sachnr, identnr, produktnr, lieferantenartikelnr, artikelcode, bestellcode,
        unsere artikelnr, artikel id, produktcode, katalognr, lief artnr, teilenummern,
        mat-nr, matnr, mat nr, ersatzteilnummer, ersatzteil-nr, et-nr, ersatzteilnr""",
    "maker number": """
        hersteller|herst|hersteller-artikel|herstellerartikel|hersteller-teile|herstellerteile|herst-art|
        original|orig|original-teile|originalteile|oe|oem|oe-teile|oem-teile|marken number, herstellernr,
        herstellerartikelnr, herstellerteilenr, herst artnr, herst teilenr, hersteller artnr, hersteller teilenr,
        originalnr, originalteilenr, oenr, oemnr, vergleichs-oe number, teilenummer hersteller,
        artikelnummer hersteller, artikelnr hersteller, herstellerbestellnummer""",
    "maker": """
        hersteller, herstellername, herst, fabrikat, marke, markenname, produzent, hersteller marke,
        hersteller name""",
    "gtin": """
        ean-code, ean-nummer, eannr, gtin-nummer, gtinnr, strichcode, strichcodenummer, barcodenummer, ean stück,
        gtin stück, ean gtin""",
    "description": """
        bezeichnung, artikel|teile|produkt|waren|kurz|lang bezeichnung|beschreibung|text|name, beschreibung,
        benennung, artikelbenennung, teilebenennung, artikeltext, produktname, artikelname, bezeichnung 1,
        bezeichnung deutsch, bez, artikelbez, warenbezeichnung, kurztext, langtext,
        text""",
    "list price": """
        listenpreis, liste, listenpreis je stück, listpreis, uvp, uvp je stück, uvp preis, empf vk,
        empf verkaufspreis, empfohlener verkaufspreis, unverbindliche preisempfehlung, unverb preisempfehlung,
        unv preisempfehlung, vk, vk preis, verkaufspreis, katalogpreis, listenpreis netto, liste netto, uvp netto,
        listenpreise, lp, lvp, uvpe, listenverkaufspreis,
        upe""",
    "net price": """
        ek|hek|einkaufs|händler-ek|ihr|ihr_ek|netto-ek|einstands|händler|händlernetto preis, ek,
        hek|händler-ek|ihr-ek netto, ek netto,
        ek-preis netto, netto-ek, ek netto preis, nettopreis, netto, preis netto, nettopreis stück, hek, händler-ek,
        händlerek, ihr ek, ihr preis, ihr nettopreis, händlerpreis netto, hep, nettopreise, netto einzelpreis,
        nettoeinzelpreis, einzelpreis netto, stückpreis netto, netto stückpreis, netto-einkaufspreis,
        einkaufspreis netto, ep netto, händlernetto, händlereinkaufspreis, händler netto, ihr netto,
        ihr einkaufspreis, ek stück, netto stück, bezugspreis, einstandspreis, netto je stück, werkstattpreis netto,
        ihr preis netto, ek je stück, netto preis""",
    "discount code": """
        rabattgruppe, rabattcode, rabattkennzeichen, rabattschlüssel, rabattklasse, rab gr, rabattgr, rabgr,
        preisgruppe, preiscode, rabattkz, rabatt gruppe|code, konditionsgruppe""",
    "discount": """
        rabatt, rabattsatz, rabatt prozent, rabatt in, nachlass, händlerrabatt, ihr rabatt, grundrabatt, rab""",
    "multiplier": "multiplikator, rabattmultiplikator, preismultiplikator",
    "price basis": """
        preiseinheit, pe, preis pro|je|per, mengeneinheit, me, einheit, preisbasis, preis-einheit, preis einheit,
        verkaufseinheit, vke, preis gilt für, preismenge, mengen-einheit, einh, preis je menge, basismengeneinheit,
        bme, preis bezieht sich auf, peh, preiseinh,
        pro, je, je stk, je stück, pro stk, pro stück""",
    "currency": "währung, whg, währungscode, preiswährung, wrg, währungsschlüssel, waehrg, währg, waehrg, währ",
    "pack": """
        vpe, verpackungseinheit, ve, packung, packungsgröße, packungseinheit, stück pro|je packung|vpe|ve|karton|pack,
        stück/vpe, stk/vpe, verpackungsmenge, gebinde, gebindegröße, packungsinhalt, vpe stück, menge pro vpe,
        menge je vpe, packgröße, packmenge, verp-einheit, verp einh, karton menge, vpe menge, stück vpe, vpe-größe,
        verpackung""",
    "order multiple": """
        bestellvielfaches, bestellschritt, bestellschritte, bestellstaffel, losgröße, vielfaches, vielfache von,
        bestellung in vielfachen von, abnahme in vielfachen von, bestelleinheit vielfaches""",
    "minimum": """
        mindestmenge, mindestbestellmenge, mindestabnahme, mindestabnahmemenge, mbm, mindest menge, min menge,
        min bestellmenge, mindestbestellung, mindestbestellwert menge, mindestauftragsmenge, min abnahme,
        abnahmemenge, mindest abnahme,
        bestellmenge min|mind|minimum|minimal, menge min,
        mind-menge, mind menge, mindest-menge""",
    "break quantity": """
        ab menge, staffelmenge, staffel ab, menge ab, staffelmenge ab, mengenstaffel, staffel menge, ab stück, ab stk,
        von menge, menge von, ab stückzahl, staffelgrenze""",
    "stock": """
        bestand, lagerbestand, lager, verfügbar, verfügbarkeit, verfügbare menge, lagermenge, menge verfügbar,
        verfügb, auf lager, bestand stück, lagerstand, lagerbestände, verfügb menge, bestandsmenge, freier bestand,
        aktueller bestand, bestand aktuell, lagerverfügbarkeit, lagerstatus, lagermenge stück, verf bestand, vorrat,
        gesamtbestand,
        lieferbar, lag-best, lag best""",
    "lead time": """
        lieferzeit tage|wochen|in_tagen|in_wochen|werktage|arbeitstage|in_werktagen|at|wt|-, lieferfrist, wbz,
        wbz tage, wiederbeschaffungszeit tage|in_tagen|-, lieferdauer, lz, lieferbar in, lieferzeiten, lieferzeit ca,
        versandzeit, versandfertig in, lieferfrist tage|wochen,
        wiederbesch tage, wiederbesch zeit""",
    "core charge": """
        pfand, altteilpfand, altteilepfand, altteilwert, pfandwert, pfandbetrag, altteil-pfand, altteile-pfand,
        tauschpfand, austauschpfand, kaution altteil""",
    "superseded by": """
        ersetzt durch, nachfolger, nachfolgeartikel, nachfolgenummer, neue nummer, neue artikelnummer, ersatz durch,
        neue nr, nachfolgeartikelnummer, nachfolgeartikel nr, ersatznummer, ersatzartikel, neue artnr,
        neue teilenummer, nachfolgenr, ersetzt d, ablöseartikel, wird ersetzt durch, nachfolgetyp, neue artikelnr,
        ersatz, nachf-nr, nachf nr""",
    "no longer available": """
        entfällt, entfallen, nicht mehr lieferbar, nml, ausgelaufen, nicht mehr verfügbar, abgekündigt,
        entfällt ja nein, eingestellt,
        auslauf""",
    "weight": """
        gewicht, gew, nettogewicht, netto-gewicht, bruttogewicht, brutto-gewicht, stückgewicht, artikelgewicht,
        gewicht stück, gewicht je stück, gewicht netto, gewicht brutto, versandgewicht, einzelgewicht""",
    "package length": """
        verpackungslänge, paketlänge, packlänge, versandlänge, kartonlänge, packstücklänge, länge verpackt|verpackung|
        paket|versand|karton, verpackung länge""",
    "package width": """
        verpackungsbreite, paketbreite, packbreite, versandbreite, kartonbreite, packstückbreite, breite verpackt|
        verpackung|paket|versand|karton, verpackung breite""",
    "package height": """
        verpackungshöhe, pakethöhe, packhöhe, versandhöhe, kartonhöhe, packstückhöhe, höhe verpackt|verpackung|paket|
        versand|karton, verpackung höhe""",
    "package dimensions": """
        verpackungsmaß|verpackungsmaße|packmaß|packmaße|paketmaß|paketmaße|versandmaß|versandmaße|kartonmaß|kartonmaße|
        packstückmaße|verpackungsabmessungen|paketabmessungen l_x_b_x_h|-, maße|abmessungen
        verpackt|verpackung|paket|versand|karton|l_x_b_x_h, l x b x h, verpackungsgröße, länge x breite x höhe""",
    "oversize": """
        sperrgut, sperrig, sperrgutartikel, übergröße, überlänge, sperrgut ja nein, übermaß, speditionsware,
        sperrgut kz""",
    "hazardous": """
        gefahrgut, gefahrstoff, gefahrgutkennzeichen, gefahrgut kz, gefahrgut ja nein, gefährlich, adr, gefahrstoffkz,
        gefahrengut, gefahrgutartikel, gefahrguthinweis""",
    "returnable": """
        rückgabe möglich|erlaubt|-, rückgabefähig, rücknahme möglich|-, retournierbar, umtausch möglich|-, umtauschbar,
        keine rückgabe|rücknahme, kein umtausch, nicht rückgabefähig|retournierbar|umtauschbar,
        vom umtausch ausgeschlossen, rückgabe ja_nein""",
    "origin": """
        ursprungsland, ursprung, herkunftsland, herkunft, land ursprung, ursprungsl, uld, warenursprung,
        länderkennung ursprung, ursprungsländer, herkunft land,
        urspr-land""",
    "tariff code": """
        zolltarif, zolltarifnummer, zolltarifnr, ztn, ztnr, statistische warennummer, stat warennummer, stat nr,
        hs-code, statistische nummer, zollnummer, warentarifnummer, hs nummer, warennummer zoll, zolltarifcode,
        intrastatnummer, statistische warennr, stat warennr""",
    "valid from": """
        gültig ab, gültig von, gültig seit, preis gültig ab, gültigkeit ab, preis ab datum, ab datum,
        gültigkeitsbeginn, preise gültig ab, preisdatum gültig ab, gültig ab datum""",
    "valid to": """
        gültig bis, preis gültig bis, gültigkeit bis, gültigkeitsende, preise gültig bis, ablaufdatum, bis datum,
        gültig bis datum""",
    "note": """
        bemerkung, bemerkungen, hinweis, hinweise, anmerkung, anmerkungen, kommentar, kommentare, notiz, notizen,
        zusatzinfo, zusatzinformation, zusatztext, infotext, bem""",
}  # fmt: skip

WEAK_NUMBERS = "nummer, artikel, material, referenz"

UNCLEAR = """
    preis, preise, einzelpreis, stückpreis, preis stück, preis/stück, preis je stück, verkaufspreis netto, vk netto,
    preis pro stück, stück preis, stückpreise, einheitspreis, e-preis, epreis, ep, einzel-preis, grundpreis,
    neuer preis, aktueller preis, preis neu, bruttopreis, brutto, bruttoliste, bruttolistenpreis, betrag,
    preis einzeln, tarif, preis je einheit, preis pro einheit, brutto-preis, sonderpreis, aktionspreis, unser preis,
    preis aktuell, basispreis, werkstattpreis"""

OLDER = """
    alter|bisheriger|vorheriger|letzter|früherer preis|nettopreis|listenpreis|ek|ek-preis, alt preis, altpreis,
    preis alt, ek alt, netto alt, nettopreis alt, listenpreis alt, vorjahrespreis, preis vorjahr, preis bisher,
    ek bisher, uvp alt, liste alt"""

SURCHARGE = """
    zuschlag, teuerungszuschlag, materialteuerungszuschlag, mtz, rohstoffzuschlag, legierungszuschlag,
    energiezuschlag, preiszuschlag, aufpreis, zuschlag je stück, zollzuschlag, metallzuschlag, stahlzuschlag,
    umweltabgabe"""

NO_FIELD = """
    modell, farbe, länge, breite, höhe, seite, größe, typ, gruppe, warengruppe, produktgruppe, artikelgruppe,
    kategorie, bild, gesamtpreis, summe, menge bestellt, bestellmenge, datum, stand, lieferant, kunde, kundennummer,
    position, pos, rechnungsnummer, seriennummer, zeichnungsnummer, lagerort, lagerplatz, bestelldatum, lieferdatum,
    modellnummer, vergleichsnummer, preisänderung, lagerart, hauptgruppe, untergruppe, verwendung, durchmesser,
    gesamt, steuersatz"""
