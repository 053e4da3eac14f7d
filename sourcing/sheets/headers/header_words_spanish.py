"""Spanish header words of price sheets, as `header_words_english` writes them. Common practice, no source.

'PVP' and 'PVR' are the list price; 'precio de venta' leaves open whose; 'sin IVA' says without tax.
"""

from sourcing.basics.sheet import Field

WORDS: dict[Field, str] = {
    "supplier number": """
        referencia|ref artículo|producto|pieza|proveedor|pedido|prov|recambio|repuesto,
        código|cód|número artículo|producto|pieza|recambio|repuesto,
        referencia|ref|código|número del|de artículo|producto|pieza|repuesto|recambio,
        referencia|ref del|de proveedor, nuestra referencia|ref, código interno, referencia interna, referencias,
        clave, clave de producto, núm de parte, número de parte, n° de parte, no de parte, número de catálogo,
        n° de catálogo, cod articulo, cod art, cód de artículo, número de pieza, n° de pieza, n° de artículo,
        código de parte""",
    "maker number": """
        referencia|ref fabricante|original|oem|marca|oe, número fabricante|original|oem|oe, código original|oem,
        referencia|ref|número del|de fabricante, referencia de origen, ref fab, número de parte del fabricante,
        n° de fabricante, n° oem, n° original, número de pieza del fabricante, código oem, núm de parte fabricante""",
    "maker": "fabricante, marca, nombre del fabricante, nombre fabricante, marca fabricante, marca del fabricante",
    "gtin": """
        código de barras, cód de barras, cod barras, código barras, código ean, código gtin, código upc, ean código,
        número ean, cód ean""",
    "description": """
        descripción, denominación, designación, nombre, descripción|denominación|nombre artículo|producto|pieza,
        descripción|denominación|nombre de la|del|de artículo|producto|pieza, concepto, detalle, desc producto,
        descripción corta, descripción larga, descripción del material, descrip, descrip artículo""",
    "list price": """
        pvp, p.v.p., pvpr, pvr, p.v.r., precio de lista|catálogo|tarifa,
        precio lista|tarifa|catálogo|público|recomendado, precio de venta al público|recomendado, precio al público,
        precio de venta público, precio público sugerido, precio sugerido, pvp recomendado, pvp unitario,
        precio venta público, tarifa pvp, precio recomendado de venta, precio al por menor, precio minorista""",
    "net price": """
        precio neto, neto, coste, costo, coste|costo unitario|neto|unidad, precio de compra|coste|costo,
        precio compra, precio coste, precio costo, su precio neto|-, precio neto unitario, precio unitario neto,
        precio distribuidor|taller|concesionario neto, precio de distribuidor, precio mayorista, precio al por mayor,
        neto unitario, importe neto unitario, su neto, su coste, su costo, precio distribuidor, precio concesionario,
        tarifa neta, precio de mayoreo, precios netos, precio final neto, precio revendedor, tu precio,
        su precio de compra, precio cliente neto""",
    "discount code": """
        grupo de descuento, código de descuento, cód descuento, grupo descuento, código descuento, grupo dto,
        clase de descuento, familia de descuento, código dto, cód dto, grupo de precio, grupo de precios,
        código de precio, letra de descuento""",
    "discount": """
        descuento, dto, dcto, desc dto, descuento en, descuentos, su descuento, porcentaje de descuento, dto en,
        tasa de descuento""",
    "multiplier": "multiplicador, factor multiplicador, multiplicador de precio, coeficiente multiplicador",
    "price basis": """
        unidad de precio, precio por, unidad, base de precio, unidad de venta, unidad precio, unidad de medida, udm,
        u.m., base precio, precio por cantidad, unidad medida, ud medida, ud venta, ud de venta,
        unidad de facturación""",
    "currency": "moneda, divisa, código de moneda, moneda del precio, código moneda, moneda precio, mon",
    "pack": """
        envase, unidades por caja|paquete|envase|bolsa|embalaje, uds por caja|paquete|envase|bolsa,
        ud por caja|paquete|envase, uds caja|paquete|envase, cantidad por caja|paquete|envase|embalaje|bolsa,
        piezas por caja|paquete|envase, paquete, embalaje, empaque, unidad de embalaje,
        unid|ud|uds|u|unidades embalaje|envase|empaque|caja|paquete|bolsa, embal, unidad de envase,
        unidades caja, unidades paquete, unidades envase, tamaño del paquete, cantidad empaque, cantidad envase,
        cantidad caja, piezas por empaque, unidad de empaque,
        unid caja, unid por caja, unid/caja, uds/caja, unid envase""",
    "order multiple": """
        múltiplo de pedido, múltiplo, múltiplos de, múltiplo de venta, pedido en múltiplos de, múltiplo de compra,
        venta en múltiplos de, múltiplos, se vende en múltiplos de""",
    "minimum": """
        pedido mínimo, cantidad mínima, mínimo, cant mín, cantidad mínima de pedido, mínimo de pedido, compra mínima,
        mín, pedido mín, cantidad mín, cant mínima, mínimo de compra, unidades mínimas, cantidad mínima de compra,
        mínimo pedido, cantidad mínima pedido""",
    "break quantity": """
        desde, desde cantidad, cantidad desde, a partir de, a partir de unidades, desde unidades, desde uds, escala,
        tramo, cantidad a partir de, escala de cantidad, cantidad tramo, tramo desde, cantidad escala""",
    "stock": """
        existencias, stock, disponible, disponibilidad, en stock, en existencia, stock disponible,
        cantidad disponible, cantidad en stock, existencia, inventario, cant disponible, uds disponibles,
        unidades disponibles, stock actual, en existencias, cantidad en existencia, disp, nivel de stock,
        estado de stock, stock total, unidades en stock, existencias totales""",
    "lead time": """
        plazo de entrega, plazo, plazo entrega, tiempo de entrega, entrega, días de entrega,
        plazo de entrega días|en_días|semanas|en_semanas, plazo días|en_días, tiempo de entrega días|en_días|semanas,
        plazo de envío, tiempo de envío, plazo de suministro, plazos de entrega, días entrega, tiempo entrega,
        plazo de reposición""",
    "core charge": """
        casco, depósito por casco, importe casco, cargo por casco, valor del casco, valor casco, depósito casco,
        depósito de casco, fianza, precio casco, cargo de núcleo, depósito de núcleo,
        depósito""",
    "superseded by": """
        sustituido por, reemplazado por, sustituida por, reemplazada por, referencia sustituta, nueva referencia,
        nueva ref, nuevo código, nuevo número, nuevo n°, sustituto, reemplazo, reemplazado x, sustituye por,
        referencia nueva, número de reemplazo, código de reemplazo, nuevo número de parte, código sustituto""",
    "no longer available": """
        descatalogado, obsoleto, descontinuado, discontinuado, ya no disponible, no disponible definitivo,
        dado de baja, agotado definitivo, fuera de catálogo, suprimido, anulado, fin de vida""",
    "weight": """
        peso, peso unitario, peso neto, peso bruto, peso en, peso unidad, peso artículo, peso producto,
        peso por unidad""",
    "package length": """
        largo|longitud paquete|embalaje|caja|bulto|envío|del_paquete|del_bulto""",
    "package width": """
        ancho|anchura paquete|embalaje|caja|bulto|envío|del_paquete|del_bulto""",
    "package height": """
        alto|altura paquete|embalaje|caja|bulto|envío|del_paquete|del_bulto""",
    "package dimensions": """
        dimensiones|medidas paquete|embalaje|caja|bulto|envío|del_paquete|del_bulto, largo x ancho x alto,
        dimensiones|medidas largo x ancho x alto""",
    "oversize": """
        sobredimensionado, voluminoso, fuera de medida, sobremedida, gran tamaño, gran volumen, exceso de medidas,
        bulto grande""",
    "hazardous": """
        mercancía peligrosa, mercancías peligrosas, material peligroso, peligroso, producto peligroso,
        materia peligrosa, sustancia peligrosa, adr, materiales peligrosos, productos peligrosos""",
    "returnable": """
        retornable, devolución|devoluciones permitida|permitidas|posible|aceptada, admite devolución|devoluciones,
        no retornable, no admite devolución|devoluciones, sin devolución|devoluciones, se puede devolver""",
    "origin": """
        país de origen, origen, país origen, procedencia, país de fabricación, país de procedencia, fabricado en,
        país, hecho en""",
    "tariff code": """
        partida arancelaria, código arancelario, código taric, código hs, código sa, fracción arancelaria,
        posición arancelaria, código aduanero, código aduana, cód arancelario, nomenclatura arancelaria, código nc,
        clasificación arancelaria""",
    "valid from": """
        válido desde, vigente desde, válido a partir de, fecha de vigencia, vigencia desde, fecha de inicio,
        fecha inicio, fecha efectiva, en vigor desde, precio válido desde, fecha de entrada en vigor, válido del,
        fecha desde""",
    "valid to": """
        válido hasta, vigente hasta, vigencia hasta, fecha de vencimiento, vencimiento, fecha fin, fecha de fin,
        caduca, fecha de caducidad, expira, precio válido hasta, hasta fecha, fecha hasta""",
    "note": """
        observaciones, observación, nota, notas, comentario, comentarios, info, información, aclaraciones,
        anotaciones""",
}  # fmt: skip

WEAK_NUMBERS = "referencia, código, número, n°, artículo, pieza, cód"

UNCLEAR = """
    precio, precios, precio unitario, precio unidad, p.u., precio por unidad, precio de venta, pv, p.v., tarifa,
    importe, precio ud, precio por ud, nuevo precio, precio actual, precio base, precio bruto, precio venta,
    precio unit, bruto, precio pieza, precio c/u, precio cliente, precio especial, precio taller, valor unitario,
    precio por pieza, p unitario, precio oferta, tarifas, precios unitarios, precio de oferta, precio x unidad"""

OLDER = """
    precio anterior, antiguo precio, precio antiguo, precio viejo, último precio, tarifa anterior, pvp anterior,
    neto anterior, coste anterior, precio previo, precio neto anterior, costo anterior, último costo,
    último precio de compra"""

SURCHARGE = "recargo, sobrecargo, suplemento, sobrecoste, sobreprecio, ecotasa, recargo unitario, cargo adicional"

NO_FIELD = """
    modelo, color, longitud, largo, ancho, altura, página, tamaño, tipo, grupo, familia, subfamilia, categoría, gama,
    imagen, foto, total, precio total, cantidad pedida, fecha, proveedor, cliente, número de cliente, posición, línea,
    número de serie, n° de serie, sección, diámetro, aplicación, uso, margen, serie, código de cliente,
    código postal"""
