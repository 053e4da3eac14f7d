"""The QR code of a link (ISO/IEC 18004), to be scanned from paper or from a screen."""

import segno

MARGIN = 4
"""Light modules around the code, as the standard asks."""


def qr_code(address: str) -> str:
    """The code as an SVG image in a data address (RFC 2397), dark on white whatever the page's colours are.

    Error correction M: a code on paper in a workshop gets a stain or a fold.
    """
    code = segno.make(address, error="m", micro=False)
    return code.svg_data_uri(scale=5, border=MARGIN, dark="#000000", light="#ffffff", xmldecl=False)
