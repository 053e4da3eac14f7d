"""A signature drawn on a screen, made anew as a small black-and-white picture so that nothing else is in it."""

import base64
import binascii
import struct
from io import BytesIO

from PIL import Image, ImageOps, UnidentifiedImageError

from ..basics.problem import refused

START = "data:image/png;base64,"
MOST_CHARACTERS = 700_000
"""Of the text a browser sends: a signature over a whole tablet is a tenth of it."""

MOST_PIXELS = 4_000_000
WIDTH, HEIGHT = 640, 240
PAPER = 255
MARGIN = 12


def drawn_signature(sent: str) -> bytes:
    """The drawing a browser sends (a data URL of a PNG, RFC 2397) as a PNG of what is drawn, at most 640 x 240.

    b'' where nothing was drawn. Refuses what is no PNG or is too large, before its pixels are unpacked.
    """
    if not sent:
        return b""
    if not sent.startswith(START) or len(sent) > MOST_CHARACTERS:
        raise refused("drawing-not-read")
    try:
        png = base64.b64decode(sent[len(START) :], validate=True)
        if _pixels(png) > MOST_PIXELS:
            raise refused("drawing-not-read")
        return _made_anew(Image.open(BytesIO(png), formats=["PNG"]))
    except (binascii.Error, struct.error, OSError, SyntaxError, UnidentifiedImageError, ValueError):
        raise refused("drawing-not-read") from None


def _pixels(png: bytes) -> int:
    """As its first chunk says (ISO/IEC 15948, 11.2.2): the library would look at it only with a warning."""
    width, height = struct.unpack_from(">II", png, 16)
    return int(width * height)


def _made_anew(picture: Image.Image) -> bytes:
    drawn = picture.convert("RGBA")
    page = Image.new("RGBA", drawn.size, "white")
    ink = Image.alpha_composite(page, drawn).convert("L")
    if ink.getextrema() == (PAPER, PAPER):
        return b""
    left, top, right, bottom = ImageOps.invert(ink).getbbox() or (0, 0, *ink.size)
    ink = ImageOps.expand(ink.crop((left, top, right, bottom)), MARGIN, PAPER)
    ink.thumbnail((WIDTH, HEIGHT))
    made = BytesIO()
    ink.quantize(8).save(made, format="PNG", optimize=True)
    return made.getvalue()
