"""A drawn signature: made anew as a small picture, or refused."""

import base64
from io import BytesIO

import pytest
from PIL import Image

from sourcing.actions.drawn_signature import MOST_CHARACTERS, START, drawn_signature
from sourcing.basics.problem import Refused
from tests.actions.linked_shop import drawing


def test_a_drawing_is_made_anew_small_and_cropped() -> None:
    """Dark on white, nothing but the picture in it."""
    made = drawn_signature(drawing())
    picture = Image.open(BytesIO(made))
    assert picture.format == "PNG" and picture.width <= 640 and picture.height <= 240 and len(made) < 20_000
    assert not picture.info.get("comment") and not picture.getexif()
    grey = picture.convert("L")
    assert grey.getpixel((0, 0)) == 255 and grey.getextrema()[0] == 0


def test_an_empty_canvas_is_no_signature() -> None:
    """Transparent or white, and where nothing was sent."""
    made = BytesIO()
    Image.new("RGB", (300, 100), "white").save(made, format="PNG")
    assert drawn_signature("") == b"" == drawn_signature(START + base64.b64encode(made.getvalue()).decode())


def bomb() -> str:
    """A PNG of 100 megapixels in a few kilobytes."""
    made = BytesIO()
    Image.new("1", (10_000, 10_000)).save(made, format="PNG")
    return START + base64.b64encode(made.getvalue()).decode()


@pytest.mark.parametrize(
    "sent",
    [
        "nonsense", START, START + "!!!", START + base64.b64encode(b"<script>alert(1)</script>").decode(),
        START + base64.b64encode(b"\x89PNG\r\n\x1a\n" + b"0" * 60).decode(), START + "A" * MOST_CHARACTERS,
        drawing(kind="JPEG"), drawing(kind="GIF"), bomb(), drawing()[:-400],
    ],
    ids=range(10),
)  # fmt: skip
def test_what_is_no_small_png_is_refused(sent: str) -> None:
    """By its content, not by what it says it is; a bomb before it is unpacked."""
    with pytest.raises(Refused, match="could not be read"):
        drawn_signature(sent)
