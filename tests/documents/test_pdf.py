"""The PDF against its page: every letter and figure in the same order, the paper's size, nothing fetched."""

import hashlib
import io
import socket
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader

from sourcing.basics.problem import Refused
from sourcing.basics.quote import FrozenQuote, Quote
from sourcing.basics.value import changed
from sourcing.documents.paper_size import paper_size
from sourcing.documents.pdf import PaperSize, pdf_bytes
from sourcing.documents.quote_paper import quote_html, quote_pdf
from tests.documents.print_reader import FIGURE, Printed, letters, printed
from tests.documents.quote_values import exempt_quote, long_quote, one_line_quote, rich_quote, wide_words_quote
from tests.documents.values import OWNERS_WORDS, QUOTE, bare_quote, hostile_quote

plutoprint = pytest.importorskip("plutoprint", reason="no wheel of the PDF library for this machine")

QUOTES = {
    "full": QUOTE, "bare": bare_quote(), "rich": rich_quote(), "exempt": exempt_quote(), "long": long_quote(),
    "one line": one_line_quote(), "hostile": hostile_quote(),
}  # fmt: skip


def frozen(quote: Quote) -> FrozenQuote:
    """The quote as kept."""
    paper = quote_html(quote)
    return FrozenQuote(quote=quote, paper=paper, sha256=hashlib.sha256(paper.encode()).hexdigest())


def text_of(pdf: bytes) -> str:
    """All words of the file, page by page, as another library reads them."""
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)


@pytest.mark.parametrize("which", sorted(QUOTES))
def test_the_pdf_says_the_same_as_the_page_letter_by_letter(which: str) -> None:
    kept = frozen(QUOTES[which])
    page, pdf = letters(Printed(kept.paper).text), letters(text_of(quote_pdf(kept)))
    assert "Work you asked for" in Printed(kept.paper).text and len(page) > 500
    # U+FFFD stands for what was made harmless; a font without its sign prints an empty box, read as nothing or a box.
    assert pdf.replace("\ufffd", "") == page.replace("\ufffd", "")


@pytest.mark.parametrize("which", sorted(QUOTES))
def test_every_figure_of_the_page_is_in_the_pdf_in_the_same_order(which: str) -> None:
    kept = frozen(QUOTES[which])
    page, pdf = (FIGURE.findall(printed(text)) for text in (Printed(kept.paper).text, text_of(quote_pdf(kept))))
    assert page == pdf and len(page) > 10


def test_a_name_from_right_to_left_and_a_word_wider_than_the_page_are_there_whole() -> None:
    """A reader may give letters of such a script in the order seen, so they are compared as a heap."""
    kept = frozen(wide_words_quote())
    page, pdf = letters(Printed(kept.paper).text), letters(text_of(quote_pdf(kept)))
    assert sorted(pdf) == sorted(page)
    sizes = {page.mediabox.width for page in PdfReader(io.BytesIO(quote_pdf(kept))).pages}
    assert len(sizes) == 1


@pytest.mark.parametrize(("said", "box"), [("letter", (612, 792)), ("A4", (595, 842))])
def test_the_page_is_of_the_size_asked_for(said: PaperSize, box: tuple[int, int]) -> None:
    """US letter is 8.5 x 11 in (ANSI/ASME Y14.1), A4 210 x 297 mm (ISO 216); a point is 1/72 in (ISO 32000-1)."""
    for pdf in (quote_pdf(frozen(changed(QUOTE, paper_size=said))), pdf_bytes("<p>an order", said, "Order")):
        pages = PdfReader(io.BytesIO(pdf)).pages
        assert {(round(page.mediabox.width), round(page.mediabox.height)) for page in pages} == {box}


def test_the_size_follows_the_shop_then_its_place() -> None:
    assert [paper_size("", one) for one in ("en_US", "fr_CA", "es_MX", "en_GB", "sv_SE")] == [
        "letter", "letter", "letter", "A4", "A4",
    ]  # fmt: skip
    assert paper_size("A4", "en_US") == "A4"


def test_the_title_is_told_and_no_day_of_making() -> None:
    about = PdfReader(io.BytesIO(quote_pdf(frozen(QUOTE)))).metadata
    assert about is not None and about.title == "Quote for job 2026-0001, revision 2"
    assert "/CreationDate" not in about and "/ModDate" not in about


def test_the_same_paper_gives_the_same_bytes() -> None:
    kept = frozen(QUOTE)
    assert quote_pdf(kept) == quote_pdf(kept)


def test_the_kept_paper_is_printed_not_a_new_one() -> None:
    kept = changed(frozen(QUOTE), paper="<!DOCTYPE html><title>x</title><p>as it was sent")
    assert text_of(quote_pdf(kept)).strip() == "as it was sent"


@pytest.mark.parametrize("words", (*OWNERS_WORDS, "own words"))
def test_nothing_of_the_owners_side(words: str) -> None:
    found = text_of(quote_pdf(frozen(QUOTE))) + text_of(quote_pdf(frozen(rich_quote())))
    assert words.casefold() not in " ".join(found.casefold().split())


def test_no_file_of_the_machine_is_read(tmp_path: Path) -> None:
    sheet = tmp_path / "hide.css"
    sheet.write_text("p { display: none }")
    html = f'<style>@import "{sheet.as_uri()}";</style><link rel="stylesheet" href="{sheet.as_uri()}"><p>still here'
    assert "still here" in text_of(pdf_bytes(html, "A4", "x"))
    careless = plutoprint.Book()
    careless.load_html(html)
    out = io.BytesIO()
    careless.write_to_pdf_stream(out)
    assert "still here" not in text_of(out.getvalue()), "the library would have read the file"


def test_no_address_is_called() -> None:
    with socket.create_server(("127.0.0.1", 0)) as door:
        door.settimeout(0.2)
        host = f"http://127.0.0.1:{door.getsockname()[1]}"
        pdf_bytes(f'<style>@import "{host}/a.css";</style><p style="background: url({host}/b)">x', "A4", "x")
        with pytest.raises(TimeoutError):
            door.accept()


def test_without_the_library_one_sentence_says_what_to_do(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "plutoprint", None)
    with pytest.raises(Refused, match=r"leave out --pdf and print the HTML paper .*pip install '\.\[pdf\]'") as told:
        quote_pdf(frozen(QUOTE))
    assert [one.code for one in told.value.problems] == ["no-pdf"]


def test_the_library_is_loaded_only_for_a_pdf() -> None:
    asked = "import sys, sourcing.documents.quote_paper; print('plutoprint' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True).stdout == "False\n"
