"""French header words of price sheets, as `header_words_english` writes them. Common practice, no source.

'PU' is the unit price and leaves open whose; 'prix public' and 'PVC' are the list price; 'HT' says without tax.
"""

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        référence|réf fournisseur|article|produit|pièce|commande|vendeur|interne,
        numéro|n°|code article|produit|pièce, n° commande, ref de commande, référence de commande, référence pièce,
        numéro d'article, n° d'article, numéro de pièce, n° de pièce, numéro de commande, n° de commande,
        code article|produit, notre référence|réf, réf fourn, références, référence de l'article, référence catalogue,
        n° catalogue, réf catalogue, numéro de produit, référence frs, réf frs""",
    "maker number": """
        référence|réf fabricant|constructeur|origine|marque|oem|oe, numéro|n° fabricant|constructeur|origine|oem|oe,
        référence|réf d'origine, numéro|n° d'origine, réf fab, réf constr, référence du fabricant|constructeur,
        numéro de pièce fabricant, n° oem, n° fabricant, référence pièce fabricant, n° de pièce fabricant""",
    "maker": "fabricant, marque, constructeur, nom du fabricant, nom fabricant, marque fabricant, fab",
    "gtin": """
        code barre|barres, code-barres, code à barres, gencod, gencode, code ean, code gtin, code upc, n° ean,
        numéro ean, ean code barres, gencode ean""",
    "description": """
        désignation, libellé, description, désignation|libellé|description article|produit|pièce,
        description de l'article, désignation de l'article|du produit, nom du produit, nom produit, intitulé,
        dénomination, libellé long, libellé court, descriptif, nom de l'article, désignation française,
        désign""",
    "list price": """
        prix public|catalogue|liste|conseillé|tarif|brut, prix de liste, prix public conseillé|ht|unitaire, ppc,
        prix de vente conseillé, prix de vente public, prix public indicatif, tarif public, tarif catalogue, pp ht,
        prix brut ht, prix conseillé ht, tarif brut, prix public htva, pv conseillé, prix détail, prix au détail,
        prix de vente recommandé, pvr, prix catalogue unitaire""",
    "net price": """
        prix net, prix d'achat, prix achat, prix net unitaire, prix unitaire net, pu net, votre prix net|-,
        prix revendeur, prix d'achat net, pa, pa net, net, prix net remisé, prix remisé, coût, coût unitaire,
        coût d'achat, coût net, prix concessionnaire, prix de revient, net unitaire, prix d'achat unitaire,
        prix unitaire d'achat, prix pro net, votre prix d'achat, prix nets, tarif net, tarif revendeur,
        prix client net, prix de gros, prix grossiste, votre net, prix d'achat revendeur, prix net client,
        prix réseau net""",
    "discount code": """
        code remise, code de remise, groupe de remise, groupe remise, famille de remise, famille remise,
        classe de remise, code prix, catégorie de remise, code rem, grille de remise, groupe de prix""",
    "discount": """
        remise, taux de remise, remise client|revendeur|accordée|en, rabais, remises, taux remise,
        pourcentage de remise, votre remise,
        rem, rem %""",
    "multiplier": """
        multiplicateur, coefficient multiplicateur, coefficient de remise, coef multiplicateur, coef de remise""",
    "price basis": """
        unité de prix, par, uv, lot de, prix par, unité, base de prix, unité de vente, unité prix,
        unité tarifaire, unité de mesure,
        udm, prix pour, base prix, unité de facturation, u vente, unité de tarification, unité vente""",
    "currency": "devise, monnaie, code devise, devise du prix, devise prix",
    "pack": """
        conditionnement, cond, condt, colisage, quantité par paquet|colis|carton|boîte|emballage,
        qté par paquet|colis|carton|boîte|emballage|conditionnement, unité d'emballage,
        pièces par paquet|colis|carton|boîte, par paquet, par carton, qté cond, qté emballage,
        quantité conditionnement, taille du paquet, unité de conditionnement, pcb, spcb, emballage, nb par colis,
        nombre par paquet|carton|boîte|colis, pqt, qté par lot,
        qté/colis, qté colis""",
    "order multiple": """
        multiple de commande, multiple, commande par multiple de, multiple de vente, par multiple de, multiples de,
        commander par multiple de, multiple d'achat, quantité multiple, vendu par""",
    "minimum": """
        minimum de commande, quantité minimum, quantité minimale, qté min, qté minimum, qté mini, mini, minimum,
        commande minimum, commande minimale, quantité minimum|minimale de commande, qté min de commande, quantité min,
        mini de commande, qmc, minimum d'achat, qté min commande, mini commande""",
    "break quantity": """
        à partir de, quantité à partir de, à partir de qté, dès, seuil, seuil de quantité, palier, palier de quantité,
        quantité palier, qté à partir de, palier qté, seuil quantité, qté seuil, quantité de palier, qté dès,
        à partir de quantité""",
    "stock": """
        stock, disponibilité, disponible, dispo, en stock, stock disponible, stock dispo, quantité en stock,
        qté en stock, quantité disponible, qté disponible, qté stock, qté dispo, stock actuel, état du stock,
        disponibilités, disponibilité stock, stock réel, niveau de stock, stocks, stock total""",
    "lead time": """
        délai, délai de livraison|fourniture|réappro, délai livraison, délai jours|semaines|en_jours|en_semaines,
        délais, délai de livraison jours|en_jours|en_semaines|semaines, délai d'expédition, délai d'approvisionnement,
        délai appro, délai de réapprovisionnement, livraison, délai de livraison jours ouvrés, livraison sous,
        expédié sous,
        délai j, délai (j), délai jrs""",
    "core charge": """
        consigne, montant de la consigne, consigne unitaire, caution, consigne pièce, prix consigne, valeur consigne,
        consigne échange standard, montant consigne, consigne ht""",
    "superseded by": """
        remplacé par, remplacée par, remplacement, référence de remplacement, réf de remplacement, réf remplacement,
        nouvelle référence, nouvelle réf, remplace par, nouveau numéro, nouveau code, nouveau code article,
        remplacé par réf, référence remplaçante, article de remplacement, réf remplaçante, pièce de remplacement,
        rempl par""",
    "no longer available": """
        supprimé, plus disponible, obsolète, arrêté, n'est plus disponible, épuisé définitivement, article supprimé,
        plus fabriqué, fin de vie, plus livrable""",
    "weight": "poids, poids unitaire, poids net, poids brut, poids en, poids article, poids pièce, poids produit",
    "package length": """
        longueur colis|emballage|emballé|carton|expédition, longueur du colis, longueur de l'emballage, long colis""",
    "package width": """
        largeur colis|emballage|emballé|carton|expédition, largeur du colis, largeur de l'emballage, larg colis""",
    "package height": """
        hauteur colis|emballage|emballé|carton|expédition, hauteur du colis, hauteur de l'emballage, haut colis""",
    "package dimensions": """
        dimensions|dim|mesures colis|emballage|emballé|carton|expédition|du_colis, dimensions de l'emballage,
        dimensions l x l x h, l x l x h, longueur x largeur x hauteur""",
    "oversize": """
        hors gabarit, hors norme, encombrant, volumineux, surdimensionné, hors format, colis hors norme,
        article encombrant""",
    "hazardous": """
        matière dangereuse, matières dangereuses, produit dangereux, produits dangereux, dangereux,
        marchandise dangereuse, marchandises dangereuses, article dangereux, adr, matière dang""",
    "returnable": """
        retournable, retour possible|accepté|autorisé, reprise possible|acceptée, non retournable|repris|reprise,
        sans retour|reprise, retour oui_non""",
    "origin": """
        pays d'origine, origine, pays origine, pays de fabrication, pays de provenance, provenance,
        code pays d'origine, fabriqué en, pays""",
    "tariff code": """
        code douanier, code douane, nomenclature douanière, code sh, code hs, n° tarifaire, numéro tarifaire,
        code nomenclature, tarif douanier, n° douanier, nomenclature douane, code nc, code taric, position tarifaire,
        code tarif douanier,
        nomenclature""",
    "valid from": """
        valable à partir de|du|dès|depuis, valable du|dès|depuis|dès le, date d'effet, date d'application,
        en vigueur le|depuis, date de début, valide à partir de|du, valide du|dès, applicable à partir du,
        date application, prix valable à partir du, date d'entrée en vigueur, date effet, date de validité début,
        début de validité""",
    "valid to": """
        valable jusqu'au|jusqu'à, valide jusqu'au|jusqu'à, date de fin, date d'expiration, expire le, fin de validité,
        date limite, valable au, date de fin de validité, jusqu'au, date fin, prix valable jusqu'au""",
    "note": """
        remarque, remarques, commentaire, commentaires, note, notes, observation, observations, info, infos,
        informations, complément, nota,
        obs""",
}  # fmt: skip

WEAK_NUMBERS = "référence, réf, numéro, n°, article, code, pièce"

UNCLEAR = """
    prix, prix unitaire, pu, p.u., prix de vente, pv, pvu, tarif, tarifs, prix unité, prix pièce, prix à l'unité,
    montant, prix unit, nouveau prix, prix actuel, prix de base, prix client, prix à la pièce, prix la pièce,
    prix promo, prix unitaires, nouveau tarif, prix par pièce, prix par unité, prix professionnel, prix pro,
    tarif client, prix base, tarif unitaire, prix spécial, brut, prix de vente unitaire"""

OLDER = """
    ancien prix|tarif, ancien prix net|public|d'achat, prix précédent, prix ancien, dernier prix|tarif,
    tarif précédent, prix d'avant, ancien net, dernier prix d'achat, prix année précédente"""

SURCHARGE = """
    supplément, surcharge, majoration, surtaxe, éco-participation, eco participation, ecotaxe, éco-contribution, deee,
    supplément matière, hausse matière, surcoût, taxe éco"""

NO_FIELD = """
    modèle, couleur, longueur, largeur, hauteur, page, taille, type, groupe, famille, sous-famille, catégorie, gamme,
    image, photo, total, prix total, quantité commandée, date, fournisseur, client, numéro client, n° client,
    position, ligne, numéro de série, n° de série, n° de facture, section, diamètre, usage, utilisation, marge, série,
    date de stock"""
