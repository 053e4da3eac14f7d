"""Headers of the size of a package and of returns, and the lengths that are the part's own and no package's.

The spellings are common practice in the trade, no source.
"""

import pytest

from sourcing.basics.sheet import Field
from sourcing.sheets.headers.header_words import field_of

TABLE: dict[Field, str] = {
    "package length": """
        Pkg length | Package Length (in) | Shipping Length | Ship Length cm | Carton Length (") | Box length mm | Pkg L
        Verpackungslänge | Packlaenge in cm | Länge verpackt | Longueur colis (cm) | Longueur emballage | Largo caja
        Largo del paquete (cm) | Verpakkingslengte | Lengte verpakking mm""",
    "package width": """
        Pkg width | Shipping Width (in) | Carton W | Verpackungsbreite | Largeur colis | Ancho caja | Breedte doos""",
    "package height": """
        Pkg height | Ship Height in. | Box H | Verpackungshöhe | Pakethoehe | Hauteur colis | Alto caja
        Hoogte verpakking""",
    "package dimensions": """
        L x W x H | LxWxH (cm) | Carton dims | Pkg Dims (in) | Shipping dimensions | Dimensions (L x W x H)
        Verpackungsmaße | Packmaß (cm) | L x B x H | Maße LxBxH in cm | Dimensions colis | Dimensiones caja
        Medidas embalaje (cm) | Afmetingen verpakking | Verpakkingsmaten""",
    "returnable": """
        Returnable | Returnable (Y/N) | NCNR | Non-Returnable | No Returns | Retournierbar | Rückgabe | Keine Rückgabe
        Retournable | Non repris | Retornable | Sin devolución | Retourneerbaar | Geen retour""",
}
SPELLED = [(text.strip(), field) for field, lines in TABLE.items() for text in lines.replace("\n", "|").split("|")]


@pytest.mark.parametrize(("header", "field"), [(text, field) for text, field in SPELLED if text])
def test_header_words(header: str, field: Field) -> None:
    assert field_of(header) == field


@pytest.mark.parametrize(
    "header",
    ["Length", "Width", "Length (in)", "Belt length", "Outside length", "Dimensions", "Dims", "Size",
    "Product dimensions",
     "ID x OD x W", "Master carton dims", "Item length", "Länge", "Longueur", "Largo", "Lengte", "Maße",
     "Abmessungen", "Carton HT", "Returns", "Return number", "Restocking fee"]
)  # fmt: skip
def test_what_may_be_the_parts_own_size_is_no_package(header: str) -> None:
    """A belt's length taken for a parcel's would ship it at the wrong price."""
    assert field_of(header) is None


@pytest.mark.parametrize("header", ["Box size", "Pack size", "Package size"])
def test_a_pack_size_is_a_count(header: str) -> None:
    assert field_of(header) == "pack"
