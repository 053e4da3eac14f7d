"""English header words of price sheets. Common practice in the trade, no source.

One entry a comma; `a|b c|d` stands for 'a c', 'a d', 'b c', 'b d', and `-` for leaving the word out. Case, accents,
spaces and punctuation do not count, 'no', 'nr', '#' are 'number' and so on (`header_keys.ALIASES`).
"""

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        our|supplier|supplier's|vendor|vendor's|dealer|distributor|- part|item|product|stock|order|ordering|
        catalog|catalogue|cat|article|material|sku|inventory|parts number|code|id,
        our|supplier|supplier's|vendor number, our ref, our code, our part|item|sku|reference,
        supplier|vendor part|item|sku|ref, p/n, pn, sku, item numbers, part numbers, part numb, part numbe, pt number,
        prt number, part id, order as, number p/n, product ref, product reference, item ref, part ref, stock ref,
        part reference, stk number, part number sku, item part number, our number sku, sku item, distributor sku""",
    "maker number": """
        manufacturer|maker|brand|make|oem|original|oe|producer|genuine|factory part|item|product|
        parts number|code|id, manufacturer|maker|make|oem|original|oe|genuine number, manufacturer|oem|maker part,
        manufacturer|maker|oem part|p/n|pn|ref|reference|sku|model number,
        manufacturer catalog|catalogue|cat|model number, mpn, oem, oe, manufacturer part number mpn, mpn number,
        oem ref, oem reference, oem cross, original equipment number, original equipment part number,
        orig part number, orig number, oem p/n, manufacturer p/n, man part number, man number""",
    "maker": """
        manufacturer|maker|brand|make|producer name|-, manufacturer brand, brand manufacturer, manufacturers, brands,
        make brand, product brand, part manufacturer, part brand, brand label""",
    "gtin": """
        gtin|upc|ean|barcode|jan code|number|-, bar code, bar code number, gtin|ean 8|12|13|14 code|number|-,
        upc a code|-, upc ean, ean upc, gtin ean, gtin upc, upc gtin, ean gtin, each|unit|item upc|gtin|ean|barcode,
        upc code number, upc barcode, ean barcode, product barcode, global trade item number, upc 12""",
    "description": """
        item|part|product|article|long|short|full|english|parts|line description, description english|en|1,
        item|part|product|article|parts name|title|designation, description, description of item|part|goods|product,
        product, name, designation, descriptions, part description english, description text, item text,
        nomenclature description, title, details description, product details, item product description,
        text, material description, item|part|product|material description 1, description 1, description line 1|-,
        noun, text 1""",
    "list price": """
        list|msrp|rrp|srp|retail|mrp|rrsp, list|retail|msrp|rrp|srp|consumer price|prices, price list, list each,
        manufacturer|suggested|sugg|mfg|published|current|catalog|catalogue|factory|book| standard list price|-,
        list price each, list each price, list unit price, unit list price|-, retail each, retail price each,
        suggested|recommended|sugg|manufacturer|rec retail price|-, suggested|recommended list price|-,
        manufacturer suggested retail price|-, sug retail, catalog price, catalogue price, price list each,
        end user list price, recommended selling price, public price, retail list, list retail, sugg list each,
        list px, sug|sugg list price|each|-, price retail|msrp|rrp|srp""",
    "net price": """
        net|dealer|your|wholesale|trade|jobber|distributor|contract|invoice|purchase|buy|buying|
        acquisition price|cost, net|dealer|wholesale|trade|jobber|distributor, your net|dealer,
        dealer|your|distributor|trade|unit|contract net, net|dealer|your|distributor|trade|jobber|cost|wholesale each,
        price net, cost, net unit price|cost, dealer|your|trade|distributor net price|cost|each, net price|cost each,
        your price|cost each, unit cost|net, dealer|wholesale|trade|jobber|distributor price|cost each,
        unit net price, cost price|unit, landed price net, dealer unit price|cost, your unit price|cost,
        net each price, each net, each cost, net amount each, nett, nett price, your nett price,
        stocking dealer price|net|cost|-, customer net|cost, your discounted price|cost, net dealer price|cost|-,
        your dealer price|cost|-, our cost, my cost, my price, your special price, contract price each, costs,
        nett cost, regular|standard dealer price|net|cost|-, price|cost dealer|wholesale|distributor|net,
        wholesale price|-, dealer price|-, net to you, net your price""",
    "discount code": """
        discount|disc|price|pricing|dis code|group|class|category|schedule|letter|grp|cd, price discount code,
        discount|disc code|group letter|id, discount price code, multiplier code|group|class""",
    "discount": """
        discount, discount percent|pct|rate|off|percentage, disc percent|pct|rate|percentage,
        percent|pct discount|disc, dealer|your|trade|net|standard|base|line|customer discount, discount off list,
        percent|pct off list|-, discounts, discount from list, off list percent,
        dealer|your|trade|net|customer disc, disc off list""",
    "multiplier": """
        multiplier, price|discount|list|net|dealer|your|cost|customer|trade multiplier, price factor multiplier,
        multiplier off|of|on list, list price multiplier, net price multiplier, list mult, net mult, dealer mult,
        net|price factor""",
    "price basis": """
        price per, price|pricing|priced|prices basis|per|unit|uom|um|unit_of_measure, per, uom, u/m, u.o.m., um,
        unit of measure|measurement|sale|issue|price, unit, units, sold by|per, sell|selling|sales|stock unit|uom,
        unit measure, measure unit, uom code, base uom|unit, price per qty, price per number, priced by,
        per qty, uom of price, price each per, net per, list per,
        pricing|price qty""",
    "currency": "currency code|-, curr code|-, cur, ccy, price|sheet|list currency, currency of price, currency iso",
    "pack": """
        pack|box|case|carton|std_pack|standard_pack|bag|sleeve|bundle|ctn|cs|bx|standard|std qty,
        pack size|count|of|-, qty|pieces|pcs|units|pc|each per pack|box|case|carton|bag|bx|ctn, qty|pcs|each pack|box,
        std|standard|unit|order|sales|sell|package pack, pack pcs|pieces|units, case pack|size, box size,
        pack quantity pcs, pieces in pack, number per pack, package contents, qty in pack|box|pack, inner pack,
        qty|pcs|units|pieces uom|u/m, qty per uom,
        inner, per box|pack|case|carton""",
    "order multiple": """
        order multiple|multiples|increment|increments, multiple|multiples of|qty|-,
        order|sold|sell|buy in multiples of, order|sold|sell|buy in, order qty multiple, ordering multiple,
        increments of, increment, order mult, mult of, sales multiple, order in increments of, multiple order qty,
        multiples to order,
        qty increment, order qty increment,
        cut mult|multiple|increment,
        mult qty""",
    "minimum": """
        min, min order|buy|purchase|sell|sale|sales|ord qty|-, min qty, moq, min qty order,
        min order pcs|pieces|units, min pcs|pieces|units, minimums, moq pcs, min qty to order, least qty""",
    "break quantity": """
        qty from, from qty, qty break|breaks, break qty, price break qty|at, price break quantities, min break qty,
        breaks at, break at, qty break from, qty at least, starting qty, from pieces|pcs|units, qty min break,
        break level qty, tier qty, qty tier, price break from, volume break, volume qty, from quantity of""",
    "stock": """
        in|current|on_hand|total|available|free|actual|warehouse|our stock qty|level|-, stock, stk, stk qty,
        stock on hand, stock qty|level|levels|status|balance|avail|available|count|units|pcs|pieces|position|total,
        soh, qoh, oh, atp, on hand qty|inventory|stock|pcs|-, qty on_hand|available|in_stock,
        avail qty|stock|inventory|pcs|-, in stock qty, inventory level|qty|count|status|on_hand|-, qty avail now,
        stock availability, inventory available, avail to sell, units available, pieces available, pcs available,
        available now, onhand, instock, avl qty, qty avl, free stock""",
    "lead time": """
        lead|delivery|ship|shipping|dispatch|leadtime|supply|replenishment time|times, leadtime, lead, lt,
        lead_time|leadtime|lt|lead|delivery days|weeks|wks|working_days|business_days|in_days|in_weeks|text| note,
        ships, ships in|within, ship in, usually ships|ships_in, availability lead time, days to ship, delivery,
        ships in days, days to delivery, ship days, shipping days, dispatch days, eta days, std lead time,
        delivery in days, typical lead time, estimated lead time, est lead time, current lead time, factory lead time,
        weeks to ship, normal lead time, ship lead time, lead time aro,
        ship""",
    "core charge": """
        core charge|deposit|price|value|chg|cost|amount|fee|exchange|-, core each, core charge each, core dep,
        exchange core, cores, core refund, core deposit each, old unit deposit, core surcharge,
        exch deposit""",
    "superseded by": """
        superseded|superceded|supersede|supersedes|replaced|substituted by|to|with,
        superseding|superceding number|part|item|part_number, super to,
        supersession|supercession to|number|part|part_number|-, replacement|new number|part_number|item_number|p/n,
        replacement part|item|sku|code, replacement, use instead|number|part, sub to,
        superseded by|to part_number|number, now use, succeeded by, successor, successor number,
        replaced by number|part|part number, supersedes to number, new number sku, superseded number by,
        superseded|replaced by part|item|part_number, super, super part|number, replace by|with,
        repl|repl. by, supers|supers. by, replaced, superseded, supersed by, rplcd by""",
    "no longer available": """
        no longer available, nla, discontinued, obsolete, disco, discont, discontinued flag|item|part,
        nla flag, obsolete flag|part|item, no longer supplied, no longer stocked nla, not available nla, eol,
        end of life, discontinued yes no,
        is obsolete|discontinued|nla, obsolete|discontinued yn""",
    "weight": """
        weight, unit|item|ship|shipping|shpg|gross|net|each|product|part|package|pack weight,
        weight each|unit|per_each|per_unit|per_piece, weights, lbs, pounds, kg, kilos, weight per pc, ship wgt, wgt,
        unit wgt, item wgt,
        net weight kg|lb|lbs, weight kg|lb|lbs|g|oz, gross weight kg|lb|lbs""",
    "package length": """
        package|packed|packaging|shipping|ship|carton|parcel|box length|len|lgth|l, length packed|package|shipping,
        package|packed|packaging|shipping|ship|carton|parcel dim|dims|dimension length|l""",
    "package width": """
        package|packed|packaging|shipping|ship|carton|parcel|box width|wid|wdth|w, width packed|package|shipping,
        package|packed|packaging|shipping|ship|carton|parcel dim|dims|dimension width|w""",
    "package height": """
        package|packed|packaging|shipping|ship|carton|parcel|box height|hgt|h, height packed|package|shipping,
        package|packed|packaging|shipping|ship|carton|parcel dim|dims|dimension height|h""",
    "package dimensions": """
        package|packed|packaging|shipping|ship|carton|parcel|box|case dims|dim|dimension|dimensions|measurements,
        packed|shipping|ship|parcel size, dimensions packed|package|shipping, l x w x h, dims|dim|dimensions l x w x h,
        package|packed|packaging|shipping|ship|carton|parcel|box dims|dim|dimension|dimensions|size|- l x w x h,
        length x width x height""",
    "oversize": """
        oversize|oversized item|flag|part|package|pkg|yes_no|-, over size, oversize shipping, ships oversize,
        truck only, truck freight only, ltl only, over length, overlength, oversize freight, bulky,
        oversize item flag""",
    "hazardous": """
        hazmat|haz|hazardous|hazard|dangerous item|material|materials|mat|goods|flag|yes_no|class_flag|-, dg, dg flag,
        haz mat flag, dangerous good, orm d, ormd, orm-d item, hazardous goods flag, hazardous substance, is hazmat,
        hazmat indicator, hazardous indicator""",
    "returnable": """
        returnable item|part|flag|yes_no|-, is|item|part returnable, returns allowed|accepted|ok, return allowed|ok,
        can be returned, may be returned, non|not returnable item|part|flag|-, nonreturnable, is non_returnable,
        no return|returns, ncnr flag|item|-, nc/nr, non cancelable|cancellable non returnable, returnable yn|y_n""",
    "origin": """
        origin, country of origin|manufacture, origin country|code|cntry, coo, c of o, ctry of origin,
        cntry of origin, made in, country origin, country of orig, country, origin country code,
        country of origin code, coo code,
        ctry, ctry of origin""",
    "tariff code": """
        hs|hts|htsus|hs_tariff|hts_us|harmonized|harmonised|harmonized_tariff|tariff|commodity|customs|
        customs_tariff|taric|schedule_b|intrastat|harmonized_system|import_tariff|cn code|number, hs, hts, htsus,
        hts usa, harmonized tariff schedule, customs commodity code, tariff heading, hs hts code, schedule b,
        comm code, commodity code number|-,
        taric""",
    "valid from": """
        effective|eff|price_effective|valid|start|starting|prices_effective date|from, effective, valid as of, eff,
        price valid from, effective from date, from date, price start date, date effective, price eff date,
        price effective, in effect from, valid from date, pricing effective date, new price effective date""",
    "valid to": """
        expires, expire|expires|expiry|expiration|exp|end|price_expiration|price_expiry|price_end date, expiry,
        expiration,
        valid until|to|through|thru|till date|-, price valid until|to|through, price expires, good through|until,
        until, effective to|until|through, quote expires, expires on, effective end date, to date valid""",
    "note": """
        note|notes|remark|remarks|comment|comments|memo, info, information,
        item|part|product|price|order|ordering|special|sales|general note|notes|comment|comments|remarks,
        additional info|information, footnote, footnotes, special instructions, message, notes comments,
        notes remarks,
        rmk, rmks""",
}  # fmt: skip

WEAK_NUMBERS = "number, part, item, ref, reference, code, material, article"
"""Words for the supplier's number only where no outspoken one stands beside them."""

UNCLEAR = """
    price|prices|pricing, unit|each|sell|sale|selling|sales|base|new|current|standard|std|gross|regular|our price,
    price each, each price, unit price each, amount, rate, unit rate, each, price usd each, price per each,
    new price each, selling price each, gross price, price amount, unit amount, rate each, price per item, cash price,
    special price, promotional price"""
"""Words that could be the shop's net price or the list price: a person says which, once."""

OLDER = """
    old|previous|prev|last|prior|former|original|was|superseded|expired price|net|list|cost|net_price|
    list_price|dealer_price|retail|msrp|your_price|dealer_net|unit_price|dealer|retail_price, last year price,
    price old|before|previous, was, last purchase price, last paid, last cost, before price"""

SURCHARGE = """
    surcharge, freight, frt, freight|frt charge|cost|fee|amount|each,
    tariff|steel|material|metal|fuel|alloy|energy|price|import|duty surcharge|adder,
    tariff charge|fee|cost|amount, surcharges, surcharge each|amount|percent, adder, import duty, duty amount,
    environmental fee, eco fee"""

NO_FIELD = """
    model, models, category, colour, color, length, width, height, section, page, line, size, application, series,
    type, group, class, family, image, picture, url, link, warranty, status, material type, brand code, maker code,
    pitch, bore, diameter, depth, volume, cube, rank, priority, margin, markup, profit, total, subtotal, sum,
    extended, ext price, extension, line total, qty ordered, order qty, date, updated, stock date, sub category,
    product group, product line, product type, product class, price change, price increase, price type, net change,
    keyword, vendor, supplier, supplier name, vendor name, customer, customer number, account number, invoice number,
    quote number, fits, catalog page, page number, line number, row number, serial number, phone number, model number,
    un number, tax code, drawing number, position, item type, item group, item class, list date, price date,
    net terms, cost center"""
"""Common headers that mean none of the fields: they are never taken for a slip of the pen of one that does."""
